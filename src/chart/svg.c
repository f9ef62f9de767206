/* SPDX-License-Identifier: MIT */
#include "chart/set.h"

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
    gw_buf_drop(&clean, out);
}

static bool starts(const char *s, const char *with)
{
    return strncmp(s, with, strlen(with)) == 0;
}

/* Length of what stands from `before` to `after`, both included; 0: it does not begin here. */
static size_t between(const char *s, const char *before, const char *after)
{
    if (!starts(s, before)) return 0;
    const char *end = strstr(s + strlen(before), after);
    return end ? (size_t)(end + strlen(after) - s) : 0;
}

/* Ids of gnuplot's groups, which nothing points to, and their titles, which are its commands. */
static size_t own_words(const char *s)
{
    size_t n = between(s, " id=\"gnuplot_", "\"");
    return n ? n : between(s, "<title>", "</title>");
}

/* Other ids and what points to them begin with the stem; gnuplot's own beginning goes. */
static size_t pointer(const char *s, const char *stem, gw_buf *out)
{
    static const char *const POINTERS[] = { " id='", " id=\"", "href='#", "href=\"#", "url(#" };
    for (size_t i = 0; i < sizeof POINTERS / sizeof *POINTERS; i++) {
        size_t n = strlen(POINTERS[i]);
        if (!starts(s, POINTERS[i])) continue;
        gw_buf_bytes(out, s, n);
        gw_buf_fmt(out, "%s-", stem);
        if (starts(s + n, "gp")) n += 2;
        return n;
    }
    return 0;
}

/* Bold as an attribute of its own; what a line is without being told so is left out. The first line of a
 * picture is black or the page's own ink, as the picture before it left the pen. Styles in attributes are
 * what a page's policy refuses; what they say can be said in attributes of its own. */
static size_t other_words(const char *s, gw_buf *out)
{
    static const char *const SAID[][2] = {
        { "font-family=\"sans-serif:Bold\"", "font-family=\"sans-serif\" font-weight=\"bold\"" },
        { "stroke=\"black\"", "stroke=\"currentColor\"" },
        { " style='fill:none; stroke:", " fill='none' stroke='" },
        { " stroke-width=\"1\"", "" },
        { " stroke-linecap=\"butt\"", "" },
        { " stroke-linejoin=\"miter\"", "" },
    };
    for (size_t i = 0; i < sizeof SAID / sizeof *SAID; i++) {
        if (!starts(s, SAID[i][0])) continue;
        gw_buf_add(out, SAID[i][1]);
        return strlen(SAID[i][0]);
    }
    return 0;
}

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

/* "239.00" says no more than "239", nor "67.50" than "67.5": how much of it goes. `begin` is where the line
 * does. */
static size_t nought(const char *s, const char *begin)
{
    if (s - begin < 3) return 0;
    if (is_digit(s[-1]) && starts(s, ".00") && !is_digit(s[3])) return 3;
    return s[-2] == '.' && is_digit(s[-3]) && is_digit(s[-1]) && s[0] == '0' && !is_digit(s[1]);
}

/* Whatever is left out or said otherwise begins with one of these: of the others nothing need be asked. */
static bool may_begin(char c)
{
    return c == ' ' || c == '<' || c == 'h' || c == 'f' || c == 'u' || c == 's' || c == '.' || c == '0';
}

/* One line of markup (never of text). */
static void tidy_markup(const char *line, size_t n, const char *stem, gw_buf *out)
{
    const char *end = line + n, *begin = line;
    while (line < end) {
        size_t plain = 0;
        while (line + plain < end && !may_begin(line[plain])) plain++;
        gw_buf_bytes(out, line, plain);
        line += plain;
        if (line == end) break;
        size_t taken = own_words(line);
        if (!taken) taken = pointer(line, stem, out);
        if (!taken) taken = other_words(line, out);
        if (!taken) taken = nought(line, begin);
        if (!taken) {
            gw_buf_bytes(out, line, 1);
            taken = 1;
        }
        line += taken;
    }
}

static void tidy_head(const char *line, size_t n, const char *stem, gw_buf *out)
{
    gw_buf_fmt(out, "<svg role=\"img\" aria-labelledby=\"%s-title\" aria-describedby=\"%s-description\"",
               stem, stem);
    gw_buf_bytes(out, line + 4, n - 4);
}

static void put_titles(const char *stem, const char *title, const char *description, gw_buf *out)
{
    gw_buf_fmt(out, "<title id=\"%s-title\">", stem);
    add_xml(out, title);
    gw_buf_fmt(out, "</title>\n<desc id=\"%s-description\">", stem);
    add_xml(out, description);
    gw_buf_add(out, "</desc>");
}

/* A group with nothing in it: its two lines; 0: it is none. */
static size_t empty_group(const char *line)
{
    size_t n = strcspn(line, "\n");
    if (!starts(line, "<g ") || !n || line[n - 1] != '>') return 0;
    return starts(line + n, "\n</g>\n") ? n + strlen("\n</g>\n") : 0;
}

/* A mark that gnuplot defines and nothing in the picture uses. */
static bool unused_mark(const char *svg, const char *line, size_t n)
{
    static const char ID[] = " id='gpPt";
    char pointed[32] = "#";
    const char *id = strstr(line, ID);
    if (!id || id >= line + n) return false;
    size_t name = strcspn(id + strlen(" id='"), "'") + 1;
    if (name + 2 > sizeof pointed) return false;
    memcpy(pointed + 1, id + strlen(" id='"), name);
    return !strstr(svg, pointed);
}

void gw_svg_tidy(const char *svg, const char *stem, const char *title, const char *description, gw_buf *out)
{
    bool titled = false;
    for (const char *line = svg; *line;) {
        size_t empty = empty_group(line);
        if (empty) {
            line += empty;
            continue;
        }
        size_t n = strcspn(line, "\n"), before = out->n;
        const char *ink = line + strspn(line, "\t ");
        if (unused_mark(svg, line, n)) {
            line += n + (line[n] == '\n');
            continue;
        }
        if (starts(ink, "<text"))
            gw_buf_bytes(out, ink, n - (size_t)(ink - line)); /* what it says is not ours to touch */
        else if (starts(line, "<svg "))
            tidy_head(line, n, stem, out);
        else if (starts(ink, "<title>") && !titled)
            put_titles(stem, title, description, out), titled = true;
        else if (!starts(ink, "<title>") && !starts(ink, "<desc>"))
            tidy_markup(ink, n - (size_t)(ink - line), stem, out);
        line += n;
        if (*line) line++;
        if (out->n > before) gw_buf_add(out, "\n");
    }
}
