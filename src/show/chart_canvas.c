/* SPDX-License-Identifier: MIT */
#include "show/chart_canvas.h"

#include "show/number.h"

#include <math.h>
#include <stdio.h>

enum { TITLE_LEADING = 24, TEXT_LEADING = 19, NOTE_LEADING = 16 };

static double screen_x(const gw_canvas *cv, double x)
{
    return x / cv->width;
}

static double screen_y(const gw_canvas *cv, double y)
{
    return 1.0 - y / cv->height;
}

void gw_canvas_text(gw_canvas *cv, double x, double y, const char *s, int size, const char *colour,
                    gw_text_side side)
{
    static const char *const SIDES[] = { "left", "centre", "right" };
    gw_buf_fmt(cv->out, "set label %d ", ++cv->tag);
    gw_plot_quote(cv->out, s);
    gw_buf_fmt(cv->out, " at screen %.5f,%.5f %s front tc rgb '%s' font '%s,%d'\n", screen_x(cv, x),
               screen_y(cv, y), SIDES[side], colour, size == GW_TYPE_TITLE ? "sans-serif:Bold" : "sans-serif",
               size);
}

void gw_canvas_block(gw_canvas *cv, double x, double y, const gw_text_lines *lines, const char *colour,
                     gw_text_side side)
{
    for (int i = 0; i < lines->n; i++)
        gw_canvas_text(cv, x, y + (i - 0.5 * (lines->n - 1)) * (TEXT_LEADING - 2), lines->line[i],
                       GW_TYPE_TEXT, colour, side);
}

static void line(gw_canvas *cv, const double end[4], const char *colour, double width, const char *layer)
{
    gw_buf_fmt(cv->out, "set arrow %d from screen %.5f,%.5f to screen %.5f,%.5f nohead ", ++cv->tag,
               screen_x(cv, end[0]), screen_y(cv, end[1]), screen_x(cv, end[2]), screen_y(cv, end[3]));
    gw_buf_fmt(cv->out, "lw %.2f dt solid lc rgb '%s' %s\n", width, colour, layer);
}

void gw_canvas_line(gw_canvas *cv, double x0, double y0, double x1, double y1, const char *colour,
                    double width)
{
    line(cv, (const double[4]){ x0, y0, x1, y1 }, colour, width, "front");
}

static void box(gw_canvas *cv, const double end[4], const char *fill)
{
    gw_buf_fmt(cv->out, "set object %d rect from screen %.5f,%.5f to screen %.5f,%.5f behind %s\n", ++cv->tag,
               screen_x(cv, end[0]), screen_y(cv, end[1]), screen_x(cv, end[2]), screen_y(cv, end[3]), fill);
}

void gw_canvas_box(gw_canvas *cv, double x0, double y0, double x1, double y1, const char *colour)
{
    char fill[96];
    snprintf(fill, sizeof fill, "fs solid 1.0 noborder fc rgb '%s'", colour);
    box(cv, (const double[4]){ x0, y0, x1, y1 }, fill);
}

typedef struct word_lines {
    gw_text_lines title, subtitle, note;
} word_lines;

int gw_charts_width(const gw_charts *charts)
{
    return charts->inlined ? GW_INLINED_WIDTH : GW_PAGE_WIDTH;
}

int gw_charts_height(const gw_charts *charts)
{
    return charts->inlined ? GW_INLINED_HEIGHT : GW_PAGE_HEIGHT;
}

static word_lines break_words(const gw_charts *charts, const gw_chart_words *words)
{
    double room = gw_charts_width(charts) - 2 * GW_EDGE;
    bool bare = charts->inlined;
    return (word_lines){ gw_text_break(bare ? NULL : words->title, room, 2, GW_TYPE_TITLE, true),
                         gw_text_break(bare ? NULL : words->subtitle, room, 2, GW_TYPE_TEXT, false),
                         gw_text_break(words->note, room, 3, GW_TYPE_NOTE, false) };
}

static double height_above(const gw_charts *charts, const word_lines *lines, const gw_chart_words *words)
{
    if (charts->inlined) return words->y_title ? 34 : 8;
    return 14 + TITLE_LEADING * lines->title.n + TEXT_LEADING * lines->subtitle.n +
           (words->y_title ? 38 : 16);
}

static double height_below(const word_lines *lines, const gw_chart_words *words)
{
    return 26 + (words->x_title ? 24 : 0) + (lines->note.n ? 8 + NOTE_LEADING * lines->note.n : 8);
}

int gw_canvas_words_height(const gw_charts *charts, const gw_chart_words *words)
{
    word_lines lines = break_words(charts, words);
    return (int)(height_above(charts, &lines, words) + height_below(&lines, words));
}

static void put_words(gw_canvas *cv, const word_lines *lines, const gw_chart_words *words)
{
    double y = 24;
    for (int i = 0; i < lines->title.n; i++, y += TITLE_LEADING)
        gw_canvas_text(cv, GW_EDGE, y, lines->title.line[i], GW_TYPE_TITLE, GW_INK, GW_TEXT_LEFT);
    for (int i = 0; i < lines->subtitle.n; i++, y += TEXT_LEADING)
        gw_canvas_text(cv, GW_EDGE, y, lines->subtitle.line[i], GW_TYPE_TEXT, GW_SOFT_INK, GW_TEXT_LEFT);
    if (words->y_title)
        gw_canvas_text(cv, GW_EDGE, cv->top - 16, words->y_title, GW_TYPE_TEXT, GW_INK, GW_TEXT_LEFT);
    y = cv->height - 12 - NOTE_LEADING * (lines->note.n - 1);
    for (int i = 0; i < lines->note.n; i++, y += NOTE_LEADING)
        gw_canvas_text(cv, GW_EDGE, y, lines->note.line[i], GW_TYPE_NOTE, GW_SOFT_INK, GW_TEXT_LEFT);
}

void gw_canvas_begin(gw_canvas *cv, const gw_charts *charts, gw_buf *out, int height,
                     const gw_chart_words *words)
{
    word_lines lines = break_words(charts, words);
    *cv = (gw_canvas){ .out = out, .width = gw_charts_width(charts), .height = height };
    cv->top = height_above(charts, &lines, words);
    cv->bottom = height - height_below(&lines, words);
    cv->left = GW_EDGE;
    cv->right = cv->width - GW_EDGE;
    gw_buf_add(out, "reset\nset encoding utf8\nunset key\nset datafile separator whitespace\n");
    put_words(cv, &lines, words);
}

static double share(const gw_chart_axis *axis, double value)
{
    if (axis->log) return log(value / axis->from) / log(axis->to / axis->from);
    return (value - axis->from) / (axis->to - axis->from);
}

double gw_canvas_x(const gw_canvas *cv, double value)
{
    return cv->left + share(&cv->x, value) * (cv->right - cv->left);
}

double gw_canvas_y(const gw_canvas *cv, double value)
{
    return cv->bottom - share(&cv->y, value) * (cv->bottom - cv->top);
}

double gw_canvas_figures_width(const gw_chart_axis *axis)
{
    double widest = 0.0;
    char figure[32];
    for (int i = 0; i < axis->n_ticks; i++) {
        if (axis->ticks[i].minor) continue;
        gw_axis_figure(axis, i, figure);
        widest = fmax(widest, gw_text_pixels(figure, GW_TYPE_TICK, false));
    }
    return widest;
}

/* The range and the ticks without figures; figures are texts of their own, so that none can be clipped. */
static void set_axis(gw_canvas *cv, char letter, const gw_chart_axis *axis, bool rules)
{
    gw_buf_fmt(cv->out, "set %crange [%s:%s]\n", letter, gw_exact(axis->from).s, gw_exact(axis->to).s);
    if (axis->log) gw_buf_fmt(cv->out, "set logscale %c\n", letter);
    gw_buf_fmt(cv->out, "set %ctics nomirror out scale 0.5,0.3 (", letter);
    for (int i = 0; i < axis->n_ticks; i++)
        gw_buf_fmt(cv->out, "%s'' %s %d", i ? ", " : "", gw_exact(axis->ticks[i].at).s, axis->ticks[i].minor);
    if (axis->n_ticks == 0) gw_buf_fmt(cv->out, "'' %s", gw_exact(axis->from).s);
    gw_buf_add(cv->out, ")\n");
    if (rules) gw_buf_fmt(cv->out, "set grid %ctics lt 1 dt solid lw 0.8 lc rgb '%s'\n", letter, GW_RULE);
}

static void put_figures(gw_canvas *cv)
{
    char figure[32];
    for (int i = 0; i < cv->x.n_ticks; i++) {
        if (cv->x.ticks[i].minor) continue;
        gw_axis_figure(&cv->x, i, figure);
        gw_canvas_text(cv, gw_canvas_x(cv, cv->x.ticks[i].at), cv->bottom + 17, figure, GW_TYPE_TICK, GW_INK,
                       GW_TEXT_CENTRE);
    }
    for (int i = 0; i < cv->y.n_ticks; i++) {
        if (cv->y.ticks[i].minor) continue;
        gw_axis_figure(&cv->y, i, figure);
        gw_canvas_text(cv, cv->left - 9, gw_canvas_y(cv, cv->y.ticks[i].at), figure, GW_TYPE_TICK, GW_INK,
                       GW_TEXT_RIGHT);
    }
}

static void put_zero_lines(gw_canvas *cv)
{
    if (!cv->y.log && cv->y.n_ticks && cv->y.from < 0 && cv->y.to > 0) {
        double y = gw_canvas_y(cv, 0);
        line(cv, (const double[4]){ cv->left, y, cv->right, y }, GW_SOFT_INK, 1.0, "back");
    }
    if (!cv->x.log && cv->x.n_ticks && cv->x.from < 0 && cv->x.to > 0) {
        double x = gw_canvas_x(cv, 0);
        line(cv, (const double[4]){ x, cv->top, x, cv->bottom }, GW_SOFT_INK, 1.0, "back");
    }
}

void gw_canvas_axes(gw_canvas *cv, bool x_rules, bool y_rules)
{
    gw_buf_fmt(cv->out, "set lmargin at screen %.5f\nset rmargin at screen %.5f\n", screen_x(cv, cv->left),
               screen_x(cv, cv->right));
    gw_buf_fmt(cv->out, "set tmargin at screen %.5f\nset bmargin at screen %.5f\n", screen_y(cv, cv->top),
               screen_y(cv, cv->bottom));
    gw_buf_fmt(cv->out, "set border 3 lw 1 lc rgb '%s'\nset style fill solid 1.0 noborder\n", GW_SOFT_INK);
    set_axis(cv, 'x', &cv->x, x_rules);
    set_axis(cv, 'y', &cv->y, y_rules);
    put_figures(cv);
    put_zero_lines(cv);
}

double gw_canvas_keys(gw_canvas *cv, double y, const char *const *names, const int *styles, int n,
                      bool letters)
{
    double x = GW_EDGE, begin = y;
    for (int i = 0; i < n; i++) {
        int style = styles ? styles[i] : i;
        gw_text_lines name = gw_text_break(names[i], cv->width - 2 * GW_EDGE - 24, 1, GW_TYPE_TEXT, false);
        double width = 22 + gw_text_pixels(name.line[0], GW_TYPE_TEXT, false) + 18;
        if (x + width > cv->width && x > GW_EDGE) {
            x = GW_EDGE;
            y += TEXT_LEADING + 2;
        }
        char fill[96];
        gw_style_fill(style, !letters, fill);
        box(cv, (const double[4]){ x, y - 7, x + 15, y + 8 }, fill);
        char letter[2] = { (char)('A' + i % 26), '\0' };
        if (letters)
            gw_canvas_text(cv, x + 7.5, y, letter, GW_TYPE_NOTE, gw_style_text_on(style), GW_TEXT_CENTRE);
        gw_canvas_text(cv, x + 21, y, name.line[0], GW_TYPE_TEXT, GW_INK, GW_TEXT_LEFT);
        x += width;
    }
    return y - begin + TEXT_LEADING + 2;
}

void gw_canvas_empty(gw_canvas *cv)
{
    gw_canvas_text(cv, cv->width / 2.0, cv->height / 2.0, "no finite values to show", GW_TYPE_TEXT,
                   GW_SOFT_INK, GW_TEXT_CENTRE);
    gw_buf_add(cv->out, "unset border\nunset xtics\nunset ytics\nset xrange [0:1]\nset yrange [0:1]\n");
}

/* Blocks that touch move as one, centred on the mean of where its members want to be. */
void gw_spread(double *centre, const double *height, int n, double top, double bottom)
{
    for (int pass = 0; pass < 4 * n; pass++) {
        bool moved = false;
        for (int i = 1; i < n; i++) {
            double need = 0.5 * (height[i - 1] + height[i]), gap = centre[i] - centre[i - 1];
            if (gap >= need - 0.01) continue;
            centre[i - 1] -= 0.5 * (need - gap);
            centre[i] += 0.5 * (need - gap);
            moved = true;
        }
        if (!moved) break;
    }
    for (int i = n - 1; i >= 0; i--) { /* up from the foot, then down from the head: order and gaps hold */
        double most =
            i == n - 1 ? bottom - 0.5 * height[i] : centre[i + 1] - 0.5 * (height[i] + height[i + 1]);
        centre[i] = fmin(centre[i], most);
    }
    for (int i = 0; i < n; i++) {
        double least = i == 0 ? top + 0.5 * height[i] : centre[i - 1] + 0.5 * (height[i] + height[i - 1]);
        centre[i] = fmax(centre[i], least);
    }
}
