/* SPDX-License-Identifier: MIT */
/** Whole numbers as a text that is short: most of what moves in the drawing is a character. */
#ifndef PAGE_PACK_H
#define PAGE_PACK_H

#include "base/buf.h"

/**
 * The digits, which stand for 0, 1, ... in the order of the text. The page's script is told them.
 *
 * A number is written with the low digit first. The digits count in their lower half; one of the upper half
 * is that of the lower half with more to come. What is written is twice the number, or, where that is
 * negative, twice its size less one. None of them has a meaning in JSON or in mark-up.
 */
const char *gw_pack_digits(void);

void gw_pack(gw_buf *out, double value); /**< rounded to a whole number */
void gw_pack_nothing(gw_buf *out);       /**< a number that is not known: a blank */

#endif
