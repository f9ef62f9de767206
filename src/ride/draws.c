/* SPDX-License-Identifier: MIT */
/* The draws that a range is made of. */
#include "giveway/ride_unknowns.h"

#include "giveway/units.h"

#include <math.h>

void gw_draw_levels(int draw, double u[GW_UNKNOWNS])
{
    double a = draw & 4 ? 1.0 : -1.0, b = draw & 2 ? 1.0 : -1.0, c = draw & 1 ? 1.0 : -1.0;
    const double level[GW_UNKNOWNS] = { a, b, c, a * b, a * c, b * c, a * b * c };
    for (int i = 0; i < GW_UNKNOWNS; i++) u[i] = level[i] / sqrt(3.0);
}

/* Ranges are common practice; a lug of a pressed arm gives some hundredths of a millimetre per kilonewton. */
gw_ride_draw gw_draw_at(const double u[GW_UNKNOWNS])
{
    const double mm_per_kN = GW_MM / 1e3;
    return (gw_ride_draw){ .bracket = pow(2.0, u[GW_UNKNOWN_BRACKETS]),
                           .bracket_loss = sqrt(0.02 * 0.3) * pow(15.0, 0.5 * u[GW_UNKNOWN_BRACKET_LOSS]),
                           .kept = pow(1.3, u[GW_UNKNOWN_KEPT]),
                           .changed = pow(1.3, u[GW_UNKNOWN_CHANGED]),
                           .loss = pow(2.0, u[GW_UNKNOWN_LOSS]),
                           .give = (1.0 + u[GW_UNKNOWN_GIVE]) / 50.0 * mm_per_kN,
                           .belt = pow(1.15, u[GW_UNKNOWN_BELT]) };
}

gw_ride_draw gw_draw_nominal(const gw_ride *settings)
{
    return (gw_ride_draw){ .bracket = 1.0,
                           .bracket_loss = settings->bracket_loss,
                           .kept = 1.0,
                           .changed = 1.0,
                           .loss = 1.0,
                           .belt = 1.0 };
}
