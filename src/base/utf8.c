/* SPDX-License-Identifier: MIT */
#include "base/utf8.h"

#include <stddef.h>

/* Length of the sequence that begins with `lead`; 0: no valid lead byte. */
static int sequence_length(unsigned char lead)
{
    if (lead < 0x80) return 1;
    if (lead >= 0xC2 && lead <= 0xDF) return 2;
    if (lead >= 0xE0 && lead <= 0xEF) return 3;
    if (lead >= 0xF0 && lead <= 0xF4) return 4;
    return 0;
}

gw_codepoint gw_utf8_next(const char **s)
{
    static const gw_codepoint LEAST[] = { 0, 0, 0x80, 0x800, 0x10000 };
    const unsigned char *p = (const unsigned char *)*s;
    int n = sequence_length(p[0]);
    (*s)++;
    if (n == 0) return GW_UTF8_BAD;
    if (n == 1) return p[0];
    gw_codepoint c = p[0] & (0xFFu >> (n + 1));
    for (int i = 1; i < n; i++) {
        if ((p[i] & 0xC0) != 0x80) return GW_UTF8_BAD; /* the terminator stops it too */
        c = c << 6 | (p[i] & 0x3F);
    }
    if (c < LEAST[n] || c > 0x10FFFF || (c >= 0xD800 && c <= 0xDFFF)) return GW_UTF8_BAD;
    *s += n - 1;
    return c;
}

typedef struct span {
    gw_codepoint from, to;
} span;

static bool in_spans(gw_codepoint c, const span *spans, size_t n)
{
    for (size_t i = 0; i < n; i++)
        if (c >= spans[i].from && c <= spans[i].to) return true;
    return false;
}

bool gw_utf8_is_control(gw_codepoint c)
{
    /* The overrides U+202A..E and U+2066..9 can make a line read otherwise than it is. */
    static const span SPANS[] = { { 0x00, 0x1F },     { 0x7F, 0x9F },     { 0x2028, 0x202E },
                                  { 0x2066, 0x2069 }, { 0xFFFE, 0xFFFF }, { 0xFEFF, 0xFEFF } };
    return in_spans(c, SPANS, sizeof SPANS / sizeof *SPANS);
}

int gw_utf8_columns(gw_codepoint c)
{
    /* The ranges that names can plausibly hold, after Unicode's EastAsianWidth and general category Mn. */
    static const span NONE[] = { { 0x0300, 0x036F }, { 0x0483, 0x0489 }, { 0x0591, 0x05BD },
                                 { 0x0610, 0x061A }, { 0x064B, 0x065F }, { 0x1AB0, 0x1AFF },
                                 { 0x1DC0, 0x1DFF }, { 0x200B, 0x200F }, { 0x20D0, 0x20FF },
                                 { 0xFE00, 0xFE0F }, { 0xFE20, 0xFE2F } };
    static const span WIDE[] = { { 0x1100, 0x115F },   { 0x2E80, 0x303E },  { 0x3041, 0xA4CF },
                                 { 0xAC00, 0xD7A3 },   { 0xF900, 0xFAFF },  { 0xFE30, 0xFE6F },
                                 { 0xFF00, 0xFF60 },   { 0xFFE0, 0xFFE6 },  { 0x1F300, 0x1F64F },
                                 { 0x1F900, 0x1F9FF }, { 0x20000, 0x3FFFD } };
    if (c < 0x300) return 1;
    if (in_spans(c, NONE, sizeof NONE / sizeof *NONE)) return 0;
    return in_spans(c, WIDE, sizeof WIDE / sizeof *WIDE) ? 2 : 1;
}

int gw_utf8_width(const char *s)
{
    int width = 0;
    while (s && *s) {
        gw_codepoint c = gw_utf8_next(&s);
        width += c == GW_UTF8_BAD || gw_utf8_is_control(c) ? 1 : gw_utf8_columns(c);
    }
    return width;
}

int gw_utf8_fit(const char *s, int most)
{
    const char *end = s;
    while (*end) {
        const char *next = end;
        gw_utf8_next(&next);
        if (next - s > most) break;
        end = next;
    }
    return (int)(end - s);
}
