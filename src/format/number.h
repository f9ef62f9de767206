/* SPDX-License-Identifier: MIT */
/**
 * Numbers as people and programs read them. The decimal point is always a point, the minus sign
 * always ASCII, and what is no finite number is shown as a dash: "nan" is never printed.
 */
#ifndef FORMAT_NUMBER_H
#define FORMAT_NUMBER_H

#include "base/buf.h"

enum { GW_NUMBER_MAX = 48 };

/** One formatted number, by value, so that it can stand in an argument list. */
typedef struct gw_number {
    char s[GW_NUMBER_MAX];
} gw_number;

#define GW_NO_NUMBER "-" /**< what stands where there is no number */

/** `decimals` (0 to 12) places after the point; what rounds to zero has no sign. */
gw_number gw_fixed(double value, int decimals);

/** As gw_fixed, with a plus sign before what is above zero. */
gw_number gw_signed(double value, int decimals);

/** `digits` (1 to 15) significant digits without an exponent between 1e-6 and 1e9; 12400 at 3 digits stays
 * 12400. */
gw_number gw_significant(double value, int digits);

/** The shortest decimal text that reads back as exactly this double; a dash where it is not finite. */
gw_number gw_exact(double value);

/** Where a hyphen in `text` at `at` stands for a minus: a digit follows and no letter, figure, point or
 * hyphen goes before. */
bool gw_is_minus(const char *text, const char *at);

/** Adds a text in which each such hyphen is a minus sign (U+2212): for people, not for programs. */
void gw_minus_signs(gw_buf *out, const char *text);

/** An angle [rad] in degrees and minutes of arc, e.g. 0°12' or -1°05.5'; `decimals` (0 to 3) of a minute. */
gw_number gw_degrees_minutes(double angle, int decimals);

/**
 * Toe of one wheel at the rim [m]: how much nearer the front edge of a rim of `diameter` [m] is to
 * the car's centre line than the rear edge, for a toe angle [rad].
 */
double gw_toe_at_rim(double toe, double diameter);

#endif
