/* SPDX-License-Identifier: MIT */
/* Lengths that are possible and yet no car's: mostly metres where millimetres are asked for. */
#include "casefile/section.h"
#include "giveway/units.h"

#include <math.h>

/* Less than this in all three directions is no place on a car: the origin is on the ground, on the centre
 * line. */
static const double NEAR_ORIGIN_MM = 3.0;

void gw_warn_short(const gw_reader *rd, const gw_node *object, const char *key, double metres,
                   double least_mm)
{
    gw_node at = gw_node_key(object, key);
    double mm = metres / GW_MM;
    if (mm > 0.0 && mm < least_mm)
        gw_warn(rd, &at, "%.6g mm is very little for this: are these metres? Lengths are in mm", mm);
}

void gw_warn_near_origin(const gw_reader *rd, const gw_node *at, gw_vec3 p)
{
    double largest = fmax(fabs(p.x), fmax(fabs(p.y), fabs(p.z))) / GW_MM;
    if (largest > 0.0 && largest < NEAR_ORIGIN_MM)
        gw_warn(rd, at,
                "this place is within %.0f mm of the ground on the centre line: are these metres? "
                "Points are in mm",
                NEAR_ORIGIN_MM);
}
