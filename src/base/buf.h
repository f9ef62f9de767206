/* SPDX-License-Identifier: MIT */
/**
 * A text that grows. Everything that is shown is made in memory first and written in one go, so that a
 * failure half way leaves no half output. Running out of memory sticks: later additions do nothing
 * and gw_buf_status tells.
 */
#ifndef BASE_BUF_H
#define BASE_BUF_H

#include "giveway/arena.h"
#include "giveway/status.h"

#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>

typedef struct gw_buf {
    char *s;  /**< zero-terminated; NULL while empty */
    size_t n; /**< bytes without the terminator      */
    size_t cap;
    bool failed; /**< memory ran out */
} gw_buf;

/** Adds `n` bytes as they are. */
void gw_buf_bytes(gw_buf *buf, const char *bytes, size_t n);

/** Adds a string as it is; NULL adds nothing. */
void gw_buf_add(gw_buf *buf, const char *s);

/** Adds formatted text. Numbers that people or programs read go through number.h instead. */
void gw_buf_fmt(gw_buf *buf, const char *fmt, ...) __attribute__((format(printf, 2, 3)));

void gw_buf_vfmt(gw_buf *buf, const char *fmt, va_list args) __attribute__((format(printf, 2, 0)));

/** Adds `count` times the character `c`. */
void gw_buf_repeat(gw_buf *buf, char c, int count);

/**
 * Adds text that came from outside for people to read: control characters (also those that steer a
 * terminal) become blanks and bytes that are not UTF-8 become U+FFFD.
 */
void gw_buf_clean(gw_buf *buf, const char *s);

/** Adds formatted text, cleaned the same way. */
void gw_buf_say(gw_buf *buf, const char *fmt, ...) __attribute__((format(printf, 2, 3)));
void gw_buf_vsay(gw_buf *buf, const char *fmt, va_list args) __attribute__((format(printf, 2, 0)));

/** Adds a user's text in quotes, cut to what a line of a message can hold, control characters as '?'. */
void gw_buf_quote(gw_buf *buf, const char *s);

/** The text; "" while empty. */
const char *gw_buf_str(const gw_buf *buf);

/** GW_OK, or GW_E_NOMEM where an addition failed. */
gw_status gw_buf_status(const gw_buf *buf, gw_error *err);

void gw_buf_free(gw_buf *buf);

/** The text, as the arena keeps it; `buf` is freed. NULL: memory was out, now or before. */
const char *gw_buf_keep(gw_buf *buf, gw_arena *arena);

/** The same; "" where memory was out, which sets `*failed`. */
const char *gw_buf_kept(gw_buf *buf, gw_arena *arena, bool *failed);

/** Formatted text, kept in that way. */
const char *gw_buf_vkept(gw_arena *arena, bool *failed, const char *fmt, va_list args)
    __attribute__((format(printf, 3, 0)));

/** Frees a text that went into another; that it failed is handed on. */
void gw_buf_drop(gw_buf *buf, gw_buf *into);

#endif
