/* SPDX-License-Identifier: MIT */
/* Road profile as a spectrum. Source: ISO 8608:2016; class values from memory. */
#include "giveway/ride.h"
#include "giveway/units.h"

#include <math.h>

double gw_road_class_roughness(char road_class)
{
    /* Geometric means go up by four a class: 16, 64, 256 ... x 1e-6 m^3 for A, B, C ... */
    if (road_class < 'A' || road_class > 'H') return 0.0;
    return ldexp(16e-6, 2 * (road_class - 'A'));
}

double gw_road_spectrum(double roughness, double speed, double hz)
{
    /* Gd(n) dn = Gd(f) df and n = f / v. */
    double ratio = hz / speed / GW_ROAD_N0;
    return roughness / (ratio * ratio) / speed;
}

double gw_road_contact_filter(double contact_length, double speed, double hz)
{
    double x = GW_PI * hz * contact_length / speed;
    return fabs(x) < 1e-4 ? 1.0 - x * x / 6.0 : sin(x) / x;
}
