/* SPDX-License-Identifier: MIT */
#include "giveway/names.h"

#include <stddef.h>

const char *const GW_AXLE_NAMES[] = { "front", "rear", NULL };
const char *const GW_SIDE_NAMES[] = { "outer", "inner", NULL };
const char *const GW_WHEEL_NAMES[] = { "left", "right", NULL };

const char *gw_axle_name(gw_axle axle)
{
    return GW_AXLE_NAMES[axle];
}

const char *gw_side_name(gw_side side)
{
    return GW_SIDE_NAMES[side];
}
