/* SPDX-License-Identifier: MIT */
/** A text that grows while it is put together. */
#ifndef GW_CASEFILE_TEXT_H
#define GW_CASEFILE_TEXT_H

#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>

/** Starts as `{0}`; `failed` once memory was out, after which it stays as it was. */
typedef struct gw_text {
    char *s;
    size_t n, capacity;
    bool failed;
} gw_text;

void gw_text_bytes(gw_text *text, const char *bytes, size_t n);
void gw_text_add(gw_text *text, const char *s);
void gw_text_format(gw_text *text, const char *fmt, ...) __attribute__((format(printf, 2, 3)));
void gw_text_vformat(gw_text *text, const char *fmt, va_list args) __attribute__((format(printf, 2, 0)));

/** A user's text in quotes, cut to what a line of a message can hold, control characters as '?'. */
void gw_text_quote(gw_text *text, const char *s);

/** What was put together, "" before anything was. */
const char *gw_text_get(const gw_text *text);
void gw_text_free(gw_text *text);

#endif
