/* SPDX-License-Identifier: MIT */
#include "show/chart_hbars.h"

#include "show/number.h"

#include <math.h>

enum { NAME_LINES = 3, NAME_LEADING = 17 };

/* What names take at most; of a narrow page a larger part, or they would break into more lines. */
static double room_of_names(int width)
{
    return (width < 700 ? 0.36 : 0.31) * width;
}

void gw_hbar_add(gw_canvas *cv, const gw_hbar *b)
{
    gw_buf *data = &cv->bars[(unsigned)b->style % GW_STYLES];
    gw_buf_fmt(data, "%s %.3f ", gw_exact(0.5 * (b->from + b->to)).s, 0.5 * (b->top + b->bottom));
    gw_buf_fmt(data, "%s ", gw_exact(fmin(b->from, b->to)).s);
    gw_buf_fmt(data, "%s %.3f %.3f\n", gw_exact(fmax(b->from, b->to)).s, b->top, b->bottom);
}

/* The y axis of a bar chart counts pixels downwards, so that bars lie where names and figures do. */
void gw_hbar_plot(gw_canvas *cv, bool hatched)
{
    char fill[96];
    bool any = false;
    for (int s = 0; s < GW_STYLES; s++) {
        if (cv->bars[s].failed) cv->out->failed = true;
        if (cv->bars[s].n) gw_buf_fmt(cv->out, "$d%d << EOD\n%sEOD\n", s, gw_buf_str(&cv->bars[s]));
    }
    for (int s = 0; s < GW_STYLES; s++) {
        gw_style_fill(s, hatched, fill);
        if (cv->bars[s].n) {
            gw_buf_fmt(cv->out, "%s$d%d using 1:2:3:4:5:6 with boxxyerror %s", any ? ", \\\n  " : "plot ", s,
                       fill);
            any = true;
        }
        gw_buf_free(&cv->bars[s]);
    }
    gw_buf_add(cv->out, any ? "\n" : "plot 2 lc rgb '#ffffff'\n");
}

double gw_hbar_names_room(const gw_canvas *cv, const char *const *names, int n)
{
    double room = 0.0;
    for (int i = 0; i < n; i++) {
        gw_text_lines name =
            gw_text_break(names[i], room_of_names(cv->width), NAME_LINES, GW_TYPE_TEXT, false);
        for (int k = 0; k < name.n; k++) room = fmax(room, gw_text_pixels(name.line[k], GW_TYPE_TEXT, false));
    }
    return room;
}

double gw_hbar_names_height(int width, const char *const *names, int n)
{
    int most = 0;
    for (int i = 0; i < n; i++) {
        gw_text_lines name = gw_text_break(names[i], room_of_names(width), NAME_LINES, GW_TYPE_TEXT, false);
        if (name.n > most) most = name.n;
    }
    return most * NAME_LEADING + 4.0;
}

void gw_hbar_name(gw_canvas *cv, double y, const char *name)
{
    gw_text_lines lines = gw_text_break(name, room_of_names(cv->width), NAME_LINES, GW_TYPE_TEXT, false);
    gw_canvas_block(cv, cv->left - 10, y, &lines, GW_INK, GW_TEXT_RIGHT);
}

/* Range of values from `lo` to `hi` with zero in it and room for figures outside the bars. */
void gw_hbar_axes(gw_canvas *cv, double lo, double hi, const char *x_title, double figure_width)
{
    double width = cv->right - cv->left, span = fmax(hi - lo, 1e-12);
    double room = fmin(figure_width / width, 0.25) * span;
    cv->x = gw_axis_linear(lo < 0 ? lo - room : 0, hi > 0 ? hi + room : 0, 7, false);
    if (cv->x.to == 0 && cv->x.from == 0) cv->x = gw_axis_linear(0, 1, 7, false);
    cv->y = (gw_chart_axis){ .from = cv->bottom, .to = cv->top };
    gw_canvas_axes(cv, true, false);
    gw_buf_add(cv->out, "unset ytics\nset border 1\n");
    gw_canvas_line(cv, gw_canvas_x(cv, 0), cv->top, gw_canvas_x(cv, 0), cv->bottom, GW_SOFT_INK, 1.0);
    if (x_title)
        gw_canvas_text(cv, 0.5 * (cv->left + cv->right), cv->bottom + 40, x_title, GW_TYPE_TEXT, GW_INK,
                       GW_TEXT_CENTRE);
}

double gw_hbar_figure_width(double lo, double hi, int decimals)
{
    double a = gw_text_pixels(gw_fixed(lo, decimals).s, GW_TYPE_TICK, false);
    double b = gw_text_pixels(gw_fixed(hi, decimals).s, GW_TYPE_TICK, false);
    return fmax(a, b) + 10;
}

void gw_hbar_figure(gw_canvas *cv, const char *figure, double at, double y, bool leftwards)
{
    double x = gw_canvas_x(cv, at) + (leftwards ? -5 : 5);
    gw_canvas_text(cv, x, y, figure, GW_TYPE_TICK, GW_INK, leftwards ? GW_TEXT_RIGHT : GW_TEXT_LEFT);
}
