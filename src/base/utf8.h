/* SPDX-License-Identifier: MIT */
/** What is needed of UTF-8: decoding that never reads past the end, and the width on a terminal. */
#ifndef BASE_UTF8_H
#define BASE_UTF8_H

#include <stdbool.h>
#include <stdint.h>

typedef uint32_t gw_codepoint;

#define GW_UTF8_BAD         UINT32_MAX
#define GW_UTF8_REPLACEMENT "\xEF\xBF\xBD" /* U+FFFD */

/**
 * The next code point of a zero-terminated string; moves `*s` past it. Where the bytes are not
 * UTF-8 (stray or cut sequence, overlong form, surrogate, beyond U+10FFFF: RFC 3629) it moves one
 * byte and returns GW_UTF8_BAD. Must not be called at the end of the string.
 */
gw_codepoint gw_utf8_next(const char **s);

/** Control characters (C0, DEL, C1), line and paragraph separators, bidirectional overrides, and what XML
 * forbids. */
bool gw_utf8_is_control(gw_codepoint c);

/** Columns on a terminal: 0 for combining marks, 2 for East Asian wide letters, else 1. */
int gw_utf8_columns(gw_codepoint c);

/** Columns of a whole string, after cleaning as in gw_buf_clean. */
int gw_utf8_width(const char *s);

/** Bytes of the whole characters of a string that fit into `most` bytes: what "%.*s" may print of it. */
int gw_utf8_fit(const char *s, int most);

#endif
