/* SPDX-License-Identifier: MIT */
/** The hatchback by the rules with twenty figures uncertain, and twenty invented values read on a ramp. */
#ifndef TESTS_MATCH_SAMPLE_H
#define TESTS_MATCH_SAMPLE_H

#include "giveway/casefile.h"
#include "giveway/match.h"

typedef struct match_sample {
    gw_material_set materials;
    gw_case c;
    gw_readings readings;
    gw_laws laws;
    gw_selection wanted; /**< everything, with the laws; good while the sample stays where it is */
    gw_faults faults;
} match_sample;

/** Run from the top of the source. False: what is wrong stands on standard error. */
bool match_sample_open(match_sample *out);
void match_sample_close(match_sample *sample);

#endif
