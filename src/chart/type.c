/* SPDX-License-Identifier: MIT */
#include "chart/type.h"

#include "base/utf8.h"
#include "format/number.h"

#include <math.h>
#include <string.h>

enum { CLEAN_BYTES = 2048 }; /* more than GW_MAX_TEXT_LINES lines can hold */

static const double BOLD = 1.16; /* the bold face over the plain one; no letter of ASCII exceeds it much */

/* Advance widths of ASCII in thousandths of the type size: DejaVu Sans 2.37, table hmtx; among the faces
 * that "sans-serif" gives one of the widest. */
static const short ADVANCE[] = {
    318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361,  318, 337, 636, 636, 636,
    636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632,
    575, 775, 752, 295, 295, 656, 557, 863, 748, 787, 603, 787, 695, 635,  611, 732, 684, 989, 685,
    611, 685, 390, 337, 390, 838, 500, 500, 613, 635, 550, 635, 615, 352,  635, 634, 278, 278, 579,
    278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592,  525, 636, 337, 636, 838,
};

static double letter_width(gw_codepoint c)
{
    if (c >= ' ' && c < 0x7F) return ADVANCE[c - ' '] / 1000.0;
    if (c == GW_UTF8_BAD) return 1.0;
    if (c == 0x2026) return 1.0;   /* ellipsis */
    if (c == 0x2212) return 0.838; /* minus */
    if (gw_utf8_columns(c) == 0) return 0.0;
    return gw_utf8_columns(c) == 2 ? 1.05 : 0.84;
}

static double bytes_pixels(const char *s, size_t n, int size, bool bold)
{
    double width = 0.0;
    for (const char *end = s + n, *p = s; p < end;) {
        const bool minus = gw_is_minus(s, p); /* as it will stand there */
        const gw_codepoint c = gw_utf8_next(&p);
        width += letter_width(minus ? 0x2212 : c);
    }
    return width * size * (bold ? BOLD : 1.0);
}

double gw_text_pixels(const char *s, int size, bool bold)
{
    return bytes_pixels(s, strlen(s), size, bold);
}

double gw_text_room(const char *s, int size, bool bold)
{
    return GW_TYPE_WIDER * gw_text_pixels(s, size, bold);
}

double gw_text_height(int size)
{
    return 1.2 * size;
}

/* Bytes of the longest beginning that fits; breaks at a blank where there is one. */
static size_t fitting(const char *s, double room, int size, bool bold, bool anywhere)
{
    const char *p = s, *good = s;
    while (*p) {
        const char *next = p;
        gw_utf8_next(&next);
        if (GW_TYPE_WIDER * bytes_pixels(s, (size_t)(next - s), size, bold) > room && p > s) break;
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
        if (cut) n = fitting(rest, room - GW_TYPE_WIDER * size, size, bold, true);
        put(out.line[out.n++], rest, n, cut);
        rest += n;
        rest += strspn(rest, " ");
    }
    return out;
}

double gw_text_lines_room(const gw_text_lines *lines, int size)
{
    double room = 0.0;
    for (int i = 0; i < lines->n; i++) room = fmax(room, gw_text_room(lines->line[i], size, false));
    return room;
}
