/* SPDX-License-Identifier: MIT */
#include "show/chart_set.h"

#include <string.h>

static void add_xml(gw_buf *out, const char *s)
{
    gw_buf clean = { 0 };
    gw_buf_clean(&clean, s);
    for (const char *p = gw_buf_str(&clean); *p; p++) {
        const char *as = *p == '<'   ? "&lt;"
                         : *p == '>' ? "&gt;"
                         : *p == '&' ? "&amp;"
                         : *p == '"' ? "&quot;"
                                     : NULL;
        if (as)
            gw_buf_add(out, as);
        else
            gw_buf_bytes(out, p, 1);
    }
    if (clean.failed) out->failed = true;
    gw_buf_free(&clean);
}

static bool starts(const char *s, const char *with)
{
    return strncmp(s, with, strlen(with)) == 0;
}

/* One line of markup (never of text): ids and what points to them, and the bold face. */
static void tidy_markup(const char *line, size_t n, const char *stem, gw_buf *out)
{
    static const char *const POINTERS[] = { " id='", " id=\"", "href='#", "href=\"#", "url(#" };
    static const char BOLD[] = "font-family=\"sans-serif:Bold\"";
    const char *end = line + n;
    while (line < end) {
        size_t taken = 0;
        for (size_t i = 0; i < sizeof POINTERS / sizeof *POINTERS && !taken; i++) {
            if (!starts(line, POINTERS[i])) continue;
            taken = strlen(POINTERS[i]);
            gw_buf_bytes(out, line, taken);
            gw_buf_add(out, stem);
            gw_buf_add(out, "-");
        }
        if (!taken && starts(line, BOLD)) {
            taken = sizeof BOLD - 1;
            gw_buf_add(out, "font-family=\"sans-serif\" font-weight=\"bold\"");
        }
        if (!taken) {
            gw_buf_bytes(out, line, 1);
            taken = 1;
        }
        line += taken;
    }
}

static void tidy_line(const char *line, size_t n, const char *stem, const char *title, gw_buf *out)
{
    const char *ink = line + strspn(line, "\t ");
    if (starts(ink, "<text></text>")) return; /* a tick without a figure */
    if (starts(ink, "<text")) {
        gw_buf_bytes(out, line, n); /* what it says is not ours to touch */
    } else if (starts(line, "<svg ")) {
        gw_buf_fmt(out, "<svg role=\"img\" aria-labelledby=\"%s-title\"", stem);
        gw_buf_bytes(out, line + 4, n - 4);
    } else if (starts(line, "<title>")) {
        gw_buf_fmt(out, "<title id=\"%s-title\">", stem);
        add_xml(out, title);
        gw_buf_add(out, "</title>");
    } else if (!starts(line, "<desc>")) {
        tidy_markup(line, n, stem, out);
    }
}

void gw_svg_tidy(const char *svg, const char *stem, const char *title, gw_buf *out)
{
    while (*svg) {
        size_t n = strcspn(svg, "\n");
        size_t before = out->n;
        tidy_line(svg, n, stem, title, out);
        svg += n;
        if (*svg) svg++;
        if (out->n > before) gw_buf_add(out, "\n");
    }
}
