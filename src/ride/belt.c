/* SPDX-License-Identifier: MIT */
/*
 * Belt b, wheel z, road r: (k_w + k_r + p^2 m) b = k_w z + k_r r. Taken out of the equations it leaves the
 * wheel a stiffness and the road a way to it, so that modes and matrices stay as they are without it.
 */
#include "ride/belt.h"

#include "giveway/units.h"
#include "ride/lanes.h"

#include <math.h>

/* Under a sidewall that is as soft as the whole tyre there is nothing left to give. */
static const double STIFFEST_BELOW = 1e4;

gw_belt gw_belt_of(const gw_wheel *wheel, double factor)
{
    gw_belt belt = { .mass = GW_BELT_SHARE * wheel->tyre_mass };
    double w = 2.0 * GW_PI * wheel->belt_hz * factor;
    if (!(belt.mass > 0.0)) return belt;
    belt.on = true;
    belt.sidewall = belt.mass * w * w;
    belt.loss = wheel->belt_loss;
    double give = 1.0 / wheel->tyre_vertical - 1.0 / belt.sidewall;
    belt.below = 1.0 / fmax(give, 1.0 / (STIFFEST_BELOW * wheel->tyre_vertical));
    return belt;
}

static double complex sidewall_of(const gw_belt *belt)
{
    return belt->sidewall * gw_complex(1.0, belt->loss);
}

double complex gw_belt_stiffness(const gw_belt *belt, double complex road, double complex p)
{
    double complex wall = sidewall_of(belt), mass = p * p * belt->mass;
    return gw_quotient(wall * (road + mass), wall + road + mass) - mass;
}

double complex gw_belt_passes(const gw_belt *belt, double complex road, double complex p)
{
    double complex wall = sidewall_of(belt);
    return gw_quotient(wall, wall + road + p * p * belt->mass);
}
