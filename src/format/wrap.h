/* SPDX-License-Identifier: MIT */
/** Breaking text into lines by its width on a terminal. */
#ifndef FORMAT_WRAP_H
#define FORMAT_WRAP_H

#include <stddef.h>

/** Columns of `n` bytes. */
int gw_bytes_width(const char *s, size_t n);

/** Columns of the widest line of a text. */
int gw_lines_width(const char *s);

/**
 * The next line of at most `width` columns: up to a line break, else up to the last blank that fits,
 * else of one word as many letters as fit (at least one), broken behind a full stop or an underscore where
 * one stands in the second half of the line. Returns where it begins, its bytes in `*n`, and moves
 * `*s` to what is left, past the blanks between.
 */
const char *gw_wrap_next(const char **s, int width, size_t *n);

#endif
