/* SPDX-License-Identifier: MIT */
#include "base/buf.h"

#include "base/utf8.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { QUOTE_BYTES = 60 };

/* Room for `more` bytes and the terminator. */
static bool reserve(gw_buf *buf, size_t more)
{
    if (buf->failed) return false;
    size_t need = buf->n + more + 1;
    if (need <= buf->cap) return true;
    size_t cap = buf->cap ? buf->cap : 256;
    while (cap < need) cap *= 2;
    char *s = realloc(buf->s, cap);
    if (!s) {
        buf->failed = true;
        return false;
    }
    buf->s = s;
    buf->cap = cap;
    return true;
}

void gw_buf_bytes(gw_buf *buf, const char *bytes, size_t n)
{
    if (!reserve(buf, n)) return;
    if (n) memcpy(buf->s + buf->n, bytes, n);
    buf->n += n;
    buf->s[buf->n] = '\0';
}

void gw_buf_add(gw_buf *buf, const char *s)
{
    if (s) gw_buf_bytes(buf, s, strlen(s));
}

void gw_buf_vfmt(gw_buf *buf, const char *fmt, va_list args)
{
    va_list again;
    va_copy(again, args);
    int n = vsnprintf(NULL, 0, fmt, args);
    if (n < 0) {
        buf->failed = true;
    } else if (reserve(buf, (size_t)n)) {
        vsnprintf(buf->s + buf->n, (size_t)n + 1, fmt, again);
        buf->n += (size_t)n;
    }
    va_end(again);
}

void gw_buf_fmt(gw_buf *buf, const char *fmt, ...)
{
    va_list args;
    va_start(args, fmt);
    gw_buf_vfmt(buf, fmt, args);
    va_end(args);
}

void gw_buf_repeat(gw_buf *buf, char c, int count)
{
    for (int i = 0; i < count; i++) gw_buf_bytes(buf, &c, 1);
}

void gw_buf_clean(gw_buf *buf, const char *s)
{
    while (s && *s) {
        const char *from = s;
        gw_codepoint c = gw_utf8_next(&s);
        if (c == GW_UTF8_BAD)
            gw_buf_add(buf, GW_UTF8_REPLACEMENT);
        else if (gw_utf8_is_control(c))
            gw_buf_add(buf, " ");
        else
            gw_buf_bytes(buf, from, (size_t)(s - from));
    }
}

void gw_buf_vsay(gw_buf *buf, const char *fmt, va_list args)
{
    gw_buf raw = { 0 };
    gw_buf_vfmt(&raw, fmt, args);
    gw_buf_clean(buf, gw_buf_str(&raw));
    gw_buf_drop(&raw, buf);
}

void gw_buf_say(gw_buf *buf, const char *fmt, ...)
{
    va_list args;
    va_start(args, fmt);
    gw_buf_vsay(buf, fmt, args);
    va_end(args);
}

/* A cut must not split a character of several bytes: step back over continuation bytes. */
static size_t cut(const char *s, size_t n)
{
    if (n <= QUOTE_BYTES) return n;
    n = QUOTE_BYTES;
    while (n > 0 && ((unsigned char)s[n] & 0xC0) == 0x80) n--;
    return n;
}

void gw_buf_quote(gw_buf *buf, const char *s)
{
    size_t n = strlen(s), shown = cut(s, n);
    gw_buf_add(buf, "\"");
    for (size_t i = 0; i < shown; i++) {
        char c = (unsigned char)s[i] < 0x20 || s[i] == 0x7F ? '?' : s[i];
        gw_buf_bytes(buf, &c, 1);
    }
    gw_buf_add(buf, shown < n ? "...\"" : "\"");
}

const char *gw_buf_str(const gw_buf *buf)
{
    return buf->s ? buf->s : "";
}

gw_status gw_buf_status(const gw_buf *buf, gw_error *err)
{
    return buf->failed ? gw_fail(err, GW_E_NOMEM, "out of memory while the output was made") : GW_OK;
}

void gw_buf_free(gw_buf *buf)
{
    free(buf->s);
    *buf = (gw_buf){ 0 };
}

const char *gw_buf_keep(gw_buf *buf, gw_arena *arena)
{
    const char *kept = buf->failed ? NULL : gw_arena_strdup(arena, gw_buf_str(buf));
    gw_buf_free(buf);
    return kept;
}

const char *gw_buf_kept(gw_buf *buf, gw_arena *arena, bool *failed)
{
    const char *kept = gw_buf_keep(buf, arena);
    if (!kept) *failed = true;
    return kept ? kept : "";
}

const char *gw_buf_vkept(gw_arena *arena, bool *failed, const char *fmt, va_list args)
{
    gw_buf text = { 0 };
    gw_buf_vfmt(&text, fmt, args);
    return gw_buf_kept(&text, arena, failed);
}

void gw_buf_drop(gw_buf *buf, gw_buf *into)
{
    if (buf->failed) into->failed = true;
    gw_buf_free(buf);
}
