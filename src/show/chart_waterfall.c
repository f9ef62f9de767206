/* SPDX-License-Identifier: MIT */
/* From a start through contributions to an end: the camber budget. */
#include "show/chart_hbars.h"
#include "show/chart_set.h"

#include "show/number.h"

#include <math.h>

enum { TOTAL_STYLE = 0, DOWN_STYLE = 1, UP_STYLE = 2 };

static double value_of(const gw_waterfall_chart *chart, int i)
{
    return isfinite(chart->values[i]) ? chart->values[i] : 0.0;
}

/* Row 0 is the start, 1 to n the contributions, n + 1 the end. */
static void put_row(gw_canvas *cv, const gw_waterfall_chart *chart, double high, int row, double from,
                    double to)
{
    double y = cv->top + (row + 0.5) * high;
    bool total = row == 0 || row == chart->n + 1, leftwards = to < from;
    int style = total ? TOTAL_STYLE : leftwards ? DOWN_STYLE : UP_STYLE;
    gw_hbar b = { from, to, y - 0.8 * GW_BAR, y + 0.8 * GW_BAR, style };
    gw_hbar_name(cv, y, row == 0 ? chart->start_name : total ? chart->end_name : chart->names[row - 1]);
    gw_hbar_add(cv, &b);
    gw_number figure = total ? gw_fixed(to, chart->decimals) : gw_signed(to - from, chart->decimals);
    gw_hbar_figure(cv, figure.s, to, y, leftwards);
    double x = gw_canvas_x(cv, to);
    if (row <= chart->n)
        gw_canvas_line(cv, x, y + 0.8 * GW_BAR, x, y + high - 0.8 * GW_BAR, GW_SOFT_INK, 0.8);
}

static void draw(gw_canvas *cv, const gw_waterfall_chart *chart, double high)
{
    double start = isfinite(chart->start) ? chart->start : 0.0;
    double lo = fmin(start, 0.0), hi = fmax(start, 0.0), level = start;
    for (int i = 0; i < chart->n; i++) {
        level += value_of(chart, i);
        lo = fmin(lo, level);
        hi = fmax(hi, level);
    }
    const char *ends[] = { chart->start_name, chart->end_name };
    cv->left =
        GW_EDGE + fmax(gw_hbar_names_room(cv, chart->names, chart->n), gw_hbar_names_room(cv, ends, 2)) + 12;
    gw_hbar_axes(cv, lo, hi, chart->words.x_title, 1.3 * (gw_hbar_figure_width(lo, hi, chart->decimals) + 8));
    put_row(cv, chart, high, 0, 0.0, start);
    level = start;
    for (int i = 0; i < chart->n; i++) {
        put_row(cv, chart, high, i + 1, level, level + value_of(chart, i));
        level += value_of(chart, i);
    }
    put_row(cv, chart, high, chart->n + 1, 0.0, level);
}

void gw_charts_waterfall(gw_charts *charts, const char *stem, const gw_waterfall_chart *chart)
{
    gw_canvas cv;
    gw_buf page = { 0 };
    gw_chart_words words = chart->words;
    words.y_title = NULL;
    int width = gw_charts_width(charts);
    const char *ends[] = { chart->start_name, chart->end_name };
    double high = fmax(2 * GW_BAR + 8, fmax(gw_hbar_names_height(width, chart->names, chart->n),
                                            gw_hbar_names_height(width, ends, 2)));
    double height = gw_canvas_words_height(charts, &words) + high * (chart->n + 2);
    gw_canvas_begin(&cv, charts, &page, (int)ceil(height), &words);
    draw(&cv, chart, high);
    gw_hbar_plot(&cv, false);
    gw_charts_add_page(charts, stem, words.title, cv.height, &page);
    gw_buf_free(&page);
}
