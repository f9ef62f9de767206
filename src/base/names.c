/* SPDX-License-Identifier: MIT */
#include "giveway/names.h"

#include <stddef.h>

const char *const GW_AXLE_NAMES[] = { "front", "rear", NULL };
const char *const GW_SIDE_NAMES[] = { "outer", "inner", NULL };
const char *const GW_WHEEL_NAMES[] = { "left", "right", NULL };
const char *const GW_GOAL_FIGURES[] = { "toe_change_deg",    "camber_change_deg",  "caster_change_deg",
                                       "wheel_fore_aft_mm", "camber_to_road_deg", NULL };
const char *const GW_LIMIT_NAMES[] = { "price", "fit_minutes", "cost", "harshness_dB", "road_noise_dB", NULL };

const char *gw_axle_name(gw_axle axle)
{
    return GW_AXLE_NAMES[axle];
}

const char *gw_side_name(gw_side side)
{
    return GW_SIDE_NAMES[side];
}
