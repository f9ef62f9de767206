/* SPDX-License-Identifier: MIT */
/* Contributions by bush: kits side by side, or stacked end to end. */
#include "show/chart_hbars.h"
#include "show/chart_set.h"

#include "show/number.h"

#include <math.h>

static double value_of(const gw_bar_chart *chart, int group, int part)
{
    double v = chart->values[group * chart->n_parts + part];
    return isfinite(v) ? v : 0.0;
}

/* Ends of the stack of a group: what is below zero goes left, what is above goes right. */
static void stack_ends(const gw_bar_chart *chart, int group, double *lo, double *hi)
{
    *lo = *hi = 0.0;
    for (int p = 0; p < chart->n_parts; p++) {
        double v = value_of(chart, group, p);
        if (chart->stacked) {
            *lo += fmin(v, 0.0);
            *hi += fmax(v, 0.0);
        } else {
            *lo = fmin(*lo, v);
            *hi = fmax(*hi, v);
        }
    }
}

static void range_of(const gw_bar_chart *chart, double *lo, double *hi)
{
    *lo = *hi = 0.0;
    for (int g = 0; g < chart->n_groups; g++) {
        double a, b;
        stack_ends(chart, g, &a, &b);
        *lo = fmin(*lo, a);
        *hi = fmax(*hi, b);
    }
}

static int style_of(const gw_bar_chart *chart, int part)
{
    return chart->styles ? chart->styles[part] : part;
}

static void put_stack(gw_canvas *cv, const gw_bar_chart *chart, int group, double y)
{
    double lo = 0.0, hi = 0.0, sum = 0.0, sliver = 0.5 * (cv->x.to - cv->x.from) / (cv->right - cv->left);
    for (int p = 0; p < chart->n_parts; p++) {
        double v = value_of(chart, group, p), from = v < 0 ? lo : hi, to = from + v;
        sum += v;
        if (v < 0)
            lo = to;
        else
            hi = to;
        double gap = fabs(v) > 4 * sliver ? copysign(sliver, v) : 0.0; /* a hair of white parts neighbours */
        gw_hbar b = { from + gap, to - gap, y - GW_BAR, y + GW_BAR, style_of(chart, p) };
        if (v != 0.0) gw_hbar_add(cv, &b);
        char letter[2] = { (char)('A' + p % 26), '\0' };
        if (fabs(gw_canvas_x(cv, to) - gw_canvas_x(cv, from)) >= 16)
            gw_canvas_text(cv, gw_canvas_x(cv, 0.5 * (from + to)), y, letter, GW_TYPE_TICK,
                           gw_style_text_on(style_of(chart, p)), GW_TEXT_CENTRE);
    }
    bool both = lo < 0 && hi > 0;
    gw_buf figure = { 0 };
    gw_buf_fmt(&figure, "%s%s", both ? "sum " : "", gw_fixed(sum, chart->decimals).s);
    gw_hbar_figure(cv, gw_buf_str(&figure), hi > 0 ? hi : lo, y, hi <= 0 && lo < 0);
    if (figure.failed) cv->out->failed = true;
    gw_buf_free(&figure);
}

static void put_group(gw_canvas *cv, const gw_bar_chart *chart, int group, double y)
{
    for (int p = 0; p < chart->n_parts; p++) {
        double v = value_of(chart, group, p), middle = y + (p - 0.5 * (chart->n_parts - 1)) * GW_BAR;
        gw_hbar b = { 0, v, middle - 0.45 * GW_BAR, middle + 0.45 * GW_BAR, style_of(chart, p) };
        if (v != 0.0) gw_hbar_add(cv, &b);
        if (isfinite(chart->values[group * chart->n_parts + p]))
            gw_hbar_figure(cv, gw_fixed(v, chart->decimals).s, v, middle, v < 0);
    }
}

/* Keys are laid out twice: once on a page that is thrown away, to know how many rows they take. */
static double keys_height(const gw_charts *charts, const gw_bar_chart *chart)
{
    gw_buf scratch = { 0 };
    gw_canvas cv = { .out = &scratch, .width = gw_charts_width(charts), .height = gw_charts_height(charts) };
    double height = gw_canvas_keys(&cv, 0, chart->parts, chart->styles, chart->n_parts, chart->stacked);
    gw_buf_free(&scratch);
    return height;
}

static void draw_bars(gw_canvas *cv, const gw_bar_chart *chart, double row)
{
    double lo, hi;
    range_of(chart, &lo, &hi);
    cv->top += gw_canvas_keys(cv, cv->top + 2, chart->parts, chart->styles, chart->n_parts, chart->stacked);
    cv->left = GW_EDGE + gw_hbar_names_room(cv, chart->groups, chart->n_groups) + 12;
    double figures = gw_hbar_figure_width(lo, hi, chart->decimals);
    if (chart->stacked && lo < 0 && hi > 0) figures += gw_text_pixels("sum ", GW_TYPE_TICK, false);
    gw_hbar_axes(cv, lo, hi, chart->words.x_title, 1.3 * figures);
    for (int g = 0; g < chart->n_groups; g++) {
        double y = cv->top + (g + 0.5) * row;
        gw_hbar_name(cv, y, chart->groups[g]);
        if (g > 0 && !chart->stacked)
            gw_canvas_line(cv, cv->left, y - 0.5 * row, cv->right, y - 0.5 * row, GW_RULE, 0.6);
    }
    for (int g = 0; g < chart->n_groups; g++) {
        double y = cv->top + (g + 0.5) * row;
        if (chart->stacked)
            put_stack(cv, chart, g, y);
        else
            put_group(cv, chart, g, y);
    }
}

void gw_charts_bars(gw_charts *charts, const char *stem, const gw_bar_chart *chart)
{
    gw_canvas cv;
    gw_buf page = { 0 };
    gw_chart_words words = chart->words;
    words.y_title = NULL;
    double row = chart->stacked ? 2 * GW_BAR + (charts->inlined ? 8 : 16) : GW_BAR * chart->n_parts + 14;
    row = fmax(row, gw_hbar_names_height(gw_charts_width(charts), chart->groups, chart->n_groups));
    double height =
        gw_canvas_words_height(charts, &words) + keys_height(charts, chart) + row * chart->n_groups;
    gw_canvas_begin(&cv, charts, &page, (int)ceil(height), &words);
    draw_bars(&cv, chart, row);
    gw_hbar_plot(&cv, !chart->stacked);
    gw_charts_add_page(charts, stem, words.title, cv.height, &page);
    gw_buf_free(&page);
}
