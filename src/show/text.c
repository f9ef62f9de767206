/* SPDX-License-Identifier: MIT */
#include "show/text.h"

#include "show/utf8.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Room for `more` bytes and the terminator. */
static bool reserve(gw_text *text, size_t more)
{
    if (text->failed) return false;
    size_t need = text->n + more + 1;
    if (need <= text->cap) return true;
    size_t cap = text->cap ? text->cap : 256;
    while (cap < need) cap *= 2;
    char *s = realloc(text->s, cap);
    if (!s) {
        text->failed = true;
        return false;
    }
    text->s = s;
    text->cap = cap;
    return true;
}

void gw_text_bytes(gw_text *text, const char *bytes, size_t n)
{
    if (!reserve(text, n)) return;
    if (n) memcpy(text->s + text->n, bytes, n);
    text->n += n;
    text->s[text->n] = '\0';
}

void gw_text_add(gw_text *text, const char *s)
{
    if (s) gw_text_bytes(text, s, strlen(s));
}

void gw_text_fmt(gw_text *text, const char *fmt, ...)
{
    va_list args;
    va_start(args, fmt);
    va_list again;
    va_copy(again, args);
    int n = vsnprintf(NULL, 0, fmt, args);
    va_end(args);
    if (n < 0) {
        text->failed = true;
    } else if (reserve(text, (size_t)n)) {
        vsnprintf(text->s + text->n, (size_t)n + 1, fmt, again);
        text->n += (size_t)n;
    }
    va_end(again);
}

void gw_text_repeat(gw_text *text, char c, int count)
{
    for (int i = 0; i < count; i++) gw_text_bytes(text, &c, 1);
}

void gw_text_clean(gw_text *text, const char *s)
{
    while (s && *s) {
        const char *from = s;
        gw_codepoint c = gw_utf8_next(&s);
        if (c == GW_UTF8_BAD)
            gw_text_add(text, GW_UTF8_REPLACEMENT);
        else if (gw_utf8_is_control(c))
            gw_text_add(text, " ");
        else
            gw_text_bytes(text, from, (size_t)(s - from));
    }
}

const char *gw_text_str(const gw_text *text)
{
    return text->s ? text->s : "";
}

gw_status gw_text_status(const gw_text *text, gw_error *err)
{
    return text->failed ? gw_fail(err, GW_E_NOMEM, "out of memory while the output was made") : GW_OK;
}

void gw_text_free(gw_text *text)
{
    free(text->s);
    *text = (gw_text){ 0 };
}
