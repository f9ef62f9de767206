/* SPDX-License-Identifier: MIT */
/** Differences of ride in words. */
#ifndef SHOW_RIDE_WORDS_H
#define SHOW_RIDE_WORDS_H

#include "base/buf.h"
#include "giveway/ride_unknowns.h"

/** The word of one grade: of what is felt ("a little firmer") or of what is heard ("a little more"). */
const char *gw_ride_grade_word(int grade, bool heard);

/** What is not known for sure, and between what it is taken, in words; index of a gw_ride_unknown. */
const char *gw_ride_unknown_name(int unknown);
const char *gw_ride_unknown_limits(int unknown);

/** One grade where both are the same, else both: "a little to clearly firmer". */
void gw_ride_say_grades(const int grade[2], bool heard, gw_buf *out);

/** "+15.0, +12.2 or +8.6 dB": what is heard where other paths carry a half, three quarters, nine tenths. */
void gw_ride_say_beside(const double beside[GW_OTHER_PATHS], gw_buf *out);

#endif
