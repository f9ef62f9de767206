/* SPDX-License-Identifier: MIT */
#include "giveway/verdict.h"

#include <stddef.h>

const char *const gw_judged_words[GW_JUDGED_FIGURES + 1] = {
    "axial hold of the press fit",
    "compressive strain of the wall",
    "hoop stress in the housing",
    "hoop stress in the sleeve",
    "peak load times shock factor",
    "shear strain from sleeve travel",
    "specific load",
    "thinnest wall beside the off-centre bore",
    "tilt",
    "tilt, 60 mm rebound to 60 mm bump",
    "total strain",
    NULL,
};

gw_dimension gw_judged_dimension(gw_judged what)
{
    static const gw_dimension OF[GW_JUDGED_FIGURES] = { GW_FORCE, GW_RATIO, GW_STRESS, GW_STRESS,
                                                        GW_FORCE, GW_RATIO, GW_STRESS, GW_LENGTH,
                                                        GW_ANGLE, GW_ANGLE, GW_RATIO };
    return OF[what];
}

gw_verdict gw_verdict_of(gw_judged what, double value, gw_bound bound, double limit, const char *source)
{
    bool holds = bound == GW_AT_MOST ? value <= limit : value >= limit;
    gw_verdict made = { what, source, value, limit, bound, holds };
    return made;
}
