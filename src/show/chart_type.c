/* SPDX-License-Identifier: MIT */
/* How wide text is, where it breaks, and how gnuplot is kept from reading anything into it. */
#include "show/chart_canvas.h"

#include "show/utf8.h"

#include <string.h>

enum { CLEAN_BYTES = 2048 }; /* more than GW_MAX_TEXT_LINES lines can hold */

/* Width in hundredths of the type size: DejaVu Sans, the widest of the faces that "sans-serif" may give. */
static int letter_width(gw_codepoint c)
{
    if (c == GW_UTF8_BAD) return 100;
    if (gw_utf8_columns(c) == 0) return 0;
    if (gw_utf8_columns(c) == 2) return 105;
    if (c > 0x7F) return 72;
    if (strchr("ijl'|.,:;I! ", (int)c)) return 33;
    if (strchr("frt()[]/\\-\"", (int)c)) return 42;
    if (strchr("mwMWQ%@&+=<>~#", (int)c)) return 95;
    if (c >= 'A' && c <= 'Z') return 72;
    return 63;
}

double gw_text_pixels(const char *s, int size, bool bold)
{
    double width = 0.0;
    while (*s) width += letter_width(gw_utf8_next(&s));
    return width / 100.0 * size * (bold ? 1.14 : 1.0);
}

static double bytes_pixels(const char *s, size_t n, int size, bool bold)
{
    double width = 0.0;
    for (const char *end = s + n; s < end;) width += letter_width(gw_utf8_next(&s));
    return width / 100.0 * size * (bold ? 1.14 : 1.0);
}

/* Bytes of the longest beginning that fits; breaks at a blank or after a hyphen where there is one. */
static size_t fitting(const char *s, double room, int size, bool bold, bool anywhere)
{
    const char *p = s, *good = s;
    while (*p) {
        const char *next = p;
        gw_utf8_next(&next);
        if (bytes_pixels(s, (size_t)(next - s), size, bold) > room && p > s) break;
        if (*p == ' ' || p[1] == '\0') good = *p == ' ' ? p : next;
        p = next;
    }
    if (!*p) return (size_t)(p - s);
    return good > s && !anywhere ? (size_t)(good - s) : (size_t)(p - s);
}

static void put(char line[256], const char *s, size_t n, bool cut)
{
    if (n > 250) n = 250;
    while (n > 0 && ((unsigned char)s[n] & 0xC0) == 0x80) n--; /* not inside a letter */
    memcpy(line, s, n);
    memcpy(line + n, cut ? "\xE2\x80\xA6" : "", cut ? 4 : 1);
}

/* Without control characters, and no longer than what lines can hold: a text that is lost for want of memory
 * would leave a chart that looks whole. */
static void clean_copy(const char *s, char *to, size_t room)
{
    while (*s && room > 4) {
        const char *from = s;
        gw_codepoint c = gw_utf8_next(&s);
        const char *bytes = c == GW_UTF8_BAD ? GW_UTF8_REPLACEMENT : gw_utf8_is_control(c) ? " " : from;
        size_t n = bytes == from ? (size_t)(s - from) : strlen(bytes);
        memcpy(to, bytes, n);
        to += n;
        room -= n;
    }
    *to = '\0';
}

gw_text_lines gw_text_break(const char *s, double room, int most, int size, bool bold)
{
    gw_text_lines out = { 0 };
    char clean[CLEAN_BYTES];
    clean_copy(s ? s : "", clean, sizeof clean);
    const char *rest = clean;
    if (most > GW_MAX_TEXT_LINES) most = GW_MAX_TEXT_LINES;
    while (*rest && out.n < most) {
        bool last = out.n == most - 1;
        size_t n = fitting(rest, room, size, bold, false);
        bool cut = last && rest[n];
        if (cut) n = fitting(rest, room - 0.9 * size, size, bold, true);
        put(out.line[out.n++], rest, n, cut);
        rest += n;
        rest += strspn(rest, " ");
    }
    return out;
}

void gw_plot_quote(gw_buf *out, const char *s)
{
    gw_buf clean = { 0 };
    gw_buf_clean(&clean, s);
    if (clean.failed) out->failed = true;
    gw_buf_add(out, "'"); /* between single quotes nothing but the quote itself means anything */
    for (const char *p = gw_buf_str(&clean); *p; p++)
        gw_buf_bytes(out, *p == '\'' ? "''" : p, *p == '\'' ? 2 : 1);
    gw_buf_add(out, "'");
    gw_buf_free(&clean);
}
