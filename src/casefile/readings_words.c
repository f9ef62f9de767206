/* SPDX-License-Identifier: MIT */
/* What both forms of readings share: keys, words, units and allowed numbers. */
#include "casefile/readings.h"
#include "giveway/units.h"

const char *const GW_READ_KEYS[GW_READ_FIGURES + 1] = { "toe_change_deg",
                                                        "camber_change_deg",
                                                        "caster_change_deg",
                                                        "wheel_fore_aft_mm",
                                                        "wheel_lateral_mm",
                                                        "wheel_rate_N_per_mm",
                                                        NULL };
const char *const GW_OTHER_WORDS[3] = { "same", "opposite", "still" };
const char *const GW_WHEELS_WORDS[3] = { "together", "opposite", "one" };
const char *const GW_WITHIN_KEYS[4] = { "within_deg", "within_mm", "within_N_per_mm", NULL };
const gw_range GW_READ_ANGLE = GW_FROM(-90, 90), GW_READ_LENGTH = GW_FROM(-1000, 1000),
               GW_READ_RATE = GW_FROM(-1e6, 1e6), GW_READ_FORCE = GW_FROM(-1e9, 1e9),
               GW_READ_TRAVEL = GW_FROM(-1000, 1000);

const char *gw_read_key(gw_read_figure figure)
{
    return GW_READ_KEYS[figure];
}

double gw_read_unit(gw_read_figure figure)
{
    return figure <= GW_READ_CASTER ? GW_DEG : figure == GW_READ_WHEEL_RATE ? GW_N_PER_MM : GW_MM;
}

int gw_read_within(gw_read_figure figure)
{
    return figure <= GW_READ_CASTER ? 0 : figure == GW_READ_WHEEL_RATE ? 2 : 1;
}

gw_range gw_read_range(gw_read_figure figure)
{
    return figure <= GW_READ_CASTER       ? GW_READ_ANGLE
           : figure == GW_READ_WHEEL_RATE ? GW_READ_RATE
                                          : GW_READ_LENGTH;
}
