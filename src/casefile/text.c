/* SPDX-License-Identifier: MIT */
#include "casefile/text.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { QUOTE_BYTES = 60 };

static bool reserve(gw_text *text, size_t more)
{
    if (text->failed) return false;
    size_t need = text->n + more + 1;
    if (need <= text->capacity) return true;
    size_t capacity = need < 128 ? 128 : 2 * need;
    char *s = realloc(text->s, capacity);
    if (!s) {
        text->failed = true;
        return false;
    }
    text->s = s;
    text->capacity = capacity;
    return true;
}

void gw_text_bytes(gw_text *text, const char *bytes, size_t n)
{
    if (!reserve(text, n)) return;
    memcpy(text->s + text->n, bytes, n);
    text->n += n;
    text->s[text->n] = '\0';
}

void gw_text_add(gw_text *text, const char *s)
{
    gw_text_bytes(text, s, strlen(s));
}

void gw_text_vformat(gw_text *text, const char *fmt, va_list args)
{
    va_list again;
    va_copy(again, args);
    int n = vsnprintf(NULL, 0, fmt, args);
    if (n >= 0 && reserve(text, (size_t)n)) {
        vsnprintf(text->s + text->n, (size_t)n + 1, fmt, again);
        text->n += (size_t)n;
    }
    va_end(again);
}

void gw_text_format(gw_text *text, const char *fmt, ...)
{
    va_list args;
    va_start(args, fmt);
    gw_text_vformat(text, fmt, args);
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

void gw_text_quote(gw_text *text, const char *s)
{
    size_t n = strlen(s), shown = cut(s, n);
    gw_text_add(text, "\"");
    for (size_t i = 0; i < shown; i++) {
        char c = (unsigned char)s[i] < 0x20 || s[i] == 0x7F ? '?' : s[i];
        gw_text_bytes(text, &c, 1);
    }
    gw_text_add(text, shown < n ? "...\"" : "\"");
}

const char *gw_text_get(const gw_text *text)
{
    return text->s ? text->s : "";
}

void gw_text_free(gw_text *text)
{
    free(text->s);
    *text = (gw_text){ 0 };
}
