/* SPDX-License-Identifier: MIT */
/**
 * A growing text. Everything that is shown is made in memory first and written in one go, so that a
 * failure half way leaves no half output. Running out of memory sticks: later additions do nothing
 * and gw_text_status tells.
 */
#ifndef SHOW_TEXT_H
#define SHOW_TEXT_H

#include "giveway/status.h"

#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>

typedef struct gw_text {
    char *s;  /**< zero-terminated; NULL while empty */
    size_t n; /**< bytes without the terminator      */
    size_t cap;
    bool failed; /**< memory ran out */
} gw_text;

/** Adds `n` bytes as they are. */
void gw_text_bytes(gw_text *text, const char *bytes, size_t n);

/** Adds a string as it is; NULL adds nothing. */
void gw_text_add(gw_text *text, const char *s);

/** Adds formatted text. Numbers that people or programs read go through number.h instead. */
void gw_text_fmt(gw_text *text, const char *fmt, ...) __attribute__((format(printf, 2, 3)));

/** Adds `count` times the character `c`. */
void gw_text_repeat(gw_text *text, char c, int count);

/**
 * Adds text that came from outside for people to read: control characters (also those that steer a
 * terminal) become blanks and bytes that are not UTF-8 become U+FFFD.
 */
void gw_text_clean(gw_text *text, const char *s);

/** The text; "" while empty. */
const char *gw_text_str(const gw_text *text);

/** GW_OK, or GW_E_NOMEM where an addition failed. */
gw_status gw_text_status(const gw_text *text, gw_error *err);

void gw_text_free(gw_text *text);

#endif
