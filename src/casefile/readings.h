/* SPDX-License-Identifier: MIT */
/** What the readers of readings share: a list that grows, and the rules that hold for both forms. */
#ifndef GW_CASEFILE_READINGS_H
#define GW_CASEFILE_READINGS_H

#include "casefile/get.h"
#include "giveway/readings.h"

/** The keys of what can be read, in the order of gw_read_figure. */
extern const char *const GW_READ_KEYS[GW_READ_FIGURES + 1];

/** Allowed numbers. */
extern const gw_range GW_READ_ANGLE, GW_READ_LENGTH, GW_READ_RATE, GW_READ_FORCE, GW_READ_TRAVEL;
gw_range gw_read_range(gw_read_figure figure);

/** Words of gw_other_wheel, beside a load and along a travel. */
extern const char *const GW_OTHER_WORDS[3], *const GW_WHEELS_WORDS[3];

/** 0: within_deg, 1: within_mm, 2: within_N_per_mm. */
int gw_read_within(gw_read_figure figure);
extern const char *const GW_WITHIN_KEYS[4];

/** A table of readings into `out`; faults are told. */
gw_status gw_read_table(const gw_reader *rd, const char *text, size_t size, const gw_case *c,
                        gw_readings *out);

#endif
