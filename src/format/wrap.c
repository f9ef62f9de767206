/* SPDX-License-Identifier: MIT */
#include "format/table.h"

#include "base/utf8.h"

static int columns_of(gw_codepoint c)
{
    return c == GW_UTF8_BAD ? 1 : gw_utf8_columns(c);
}

int gw_bytes_width(const char *s, size_t n)
{
    int width = 0;
    for (const char *end = s + n; s < end;) width += columns_of(gw_utf8_next(&s));
    return width;
}

int gw_lines_width(const char *s)
{
    int width = 0, widest = 0;
    while (*s) {
        gw_codepoint c = gw_utf8_next(&s);
        width = c == '\n' ? 0 : width + columns_of(c);
        if (width > widest) widest = width;
    }
    return widest;
}

/* Where one word too long for a line is broken: behind a full stop, as paths of a case have them, else behind
 * an underscore; where neither stands in the second half of the line, at its end. */
static const char *seam_of(const char *start, const char *end)
{
    const char *underscore = NULL;
    for (const char *p = end; p - start > (end - start) / 2; p--) {
        if (p[-1] == '.') return p;
        if (p[-1] == '_' && !underscore) underscore = p;
    }
    return underscore ? underscore : end;
}

const char *gw_wrap_next(const char **s, int width, size_t *n)
{
    const char *start = *s, *p = start, *blank = NULL;
    int used = 0;
    while (*p && *p != '\n') {
        if (*p == ' ') blank = p;
        const char *next = p;
        int w = columns_of(gw_utf8_next(&next));
        if (used + w > width && p > start) break;
        used += w;
        p = next;
    }
    const char *end = p;
    if (*p && *p != '\n' && *p != ' ') end = blank && blank > start ? blank : seam_of(start, p);
    *n = (size_t)(end - start);
    p = end;
    while (*p == ' ') p++;
    if (*p == '\n') p++;
    *s = p;
    return start;
}
