/* SPDX-License-Identifier: MIT */
#include "giveway/verdict.h"

#include <stddef.h>

const char *const GW_JUDGED_WORDS[GW_JUDGED_FIGURES + 1] = {
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

const gw_dimension GW_JUDGED_DIMENSIONS[GW_JUDGED_FIGURES] = {
    GW_FORCE,  GW_RATIO,  GW_STRESS, GW_STRESS, GW_FORCE, GW_RATIO,
    GW_STRESS, GW_LENGTH, GW_ANGLE,  GW_ANGLE,  GW_RATIO,
};
