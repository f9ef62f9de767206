/* SPDX-License-Identifier: MIT */
/* How far a setting moves: a bar a kit, with its ends in figures. */
#include "show/chart_spans.h"

#include "show/chart_hbars.h"
#include "show/chart_set.h"
#include "show/number.h"

#include <math.h>

static bool is_there(const gw_span_chart *chart, int i)
{
    return isfinite(chart->low[i]) && isfinite(chart->high[i]);
}

/* A figure that would lie across the line at zero goes beyond it. */
static void put_figure(gw_canvas *cv, double value, int decimals, double y, bool leftwards)
{
    gw_number figure = gw_signed(value, decimals);
    double width = gw_text_pixels(figure.s, GW_TYPE_TICK, false) + 5;
    double from = gw_canvas_x(cv, value), zero = gw_canvas_x(cv, 0.0),
           to = leftwards ? from - width : from + width;
    bool across = fmin(from, to) < zero && fmax(from, to) > zero;
    gw_hbar_figure(cv, figure.s, across ? 0.0 : value, y, leftwards);
}

static void put_row(gw_canvas *cv, const gw_span_chart *chart, double high, int i)
{
    double y = cv->top + (i + 0.5) * high;
    gw_hbar b = { chart->low[i], chart->high[i], y - 0.7 * GW_BAR, y + 0.7 * GW_BAR,
                  chart->styles ? chart->styles[i] : i };
    gw_hbar_name(cv, y, chart->names[i]);
    if (!is_there(chart, i)) return;
    gw_hbar_add(cv, &b);
    put_figure(cv, chart->low[i], chart->decimals, y, true);
    put_figure(cv, chart->high[i], chart->decimals, y, false);
}

static void draw(gw_canvas *cv, const gw_span_chart *chart, double high)
{
    double lo = 0.0, hi = 0.0;
    for (int i = 0; i < chart->n; i++) {
        if (!is_there(chart, i)) continue;
        lo = fmin(lo, chart->low[i]);
        hi = fmax(hi, chart->high[i]);
    }
    /* Figures stand at both ends, so that even a span on one side of zero needs room on the other. */
    double figures = gw_hbar_figure_width(lo, hi, chart->decimals) + 8;
    double reach = 0.14 * (hi - lo);
    cv->left = GW_EDGE + gw_hbar_names_room(cv, chart->names, chart->n) + 12;
    gw_hbar_axes(cv, fmin(lo, -reach), fmax(hi, reach), chart->words.x_title, 1.3 * figures);
    for (int i = 0; i < chart->n; i++) put_row(cv, chart, high, i);
}

void gw_charts_spans(gw_charts *charts, const char *stem, const gw_span_chart *chart)
{
    gw_canvas cv;
    gw_buf page = { 0 };
    gw_chart_words words = chart->words;
    words.y_title = NULL;
    double high =
        fmax(2 * GW_BAR + 14, gw_hbar_names_height(gw_charts_width(charts), chart->names, chart->n));
    double height = gw_canvas_words_height(charts, &words) + high * chart->n;
    gw_canvas_begin(&cv, charts, &page, (int)ceil(height), &words);
    draw(&cv, chart, high);
    gw_hbar_plot(&cv, false);
    gw_charts_add_page(charts, stem, words.title, cv.height, &page);
    gw_buf_free(&page);
}
