/* SPDX-License-Identifier: MIT */
/* Upright bars over third-octave bands. */
#include "show/chart_canvas.h"
#include "show/chart_set.h"

#include "show/number.h"

#include <math.h>

static bool range_of(const gw_band_chart *chart, double *lo, double *hi)
{
    bool any = false;
    *lo = *hi = 0.0;
    for (int i = 0; i < chart->n_names * chart->n_bands; i++) {
        if (!isfinite(chart->values[i])) continue;
        any = true;
        *lo = fmin(*lo, chart->values[i]);
        *hi = fmax(*hi, chart->values[i]);
    }
    return any;
}

static void put_bands(gw_canvas *cv, const gw_band_chart *chart)
{
    for (int b = 0; b < chart->n_bands; b++) {
        double x = gw_canvas_x(cv, b);
        gw_canvas_text(cv, x, cv->bottom + 17, gw_exact(chart->centre_hz[b]).s, GW_TYPE_TICK, GW_INK,
                       GW_TEXT_CENTRE);
        if (b > 0) {
            double edge = gw_canvas_x(cv, b - 0.5);
            gw_canvas_line(cv, edge, cv->bottom, edge, cv->bottom + 5, GW_SOFT_INK, 0.8);
        }
    }
    if (chart->words.x_title)
        gw_canvas_text(cv, 0.5 * (cv->left + cv->right), cv->bottom + 40, chart->words.x_title, GW_TYPE_TEXT,
                       GW_INK, GW_TEXT_CENTRE);
}

/* One data block a name, so that each is drawn in its own colour: x, bottom, top, half width. */
static void put_bars(gw_canvas *cv, const gw_band_chart *chart)
{
    double half = 0.41 / chart->n_names;
    for (int s = 0; s < chart->n_names; s++) {
        gw_buf_fmt(cv->out, "$d%d << EOD\n", s);
        for (int b = 0; b < chart->n_bands; b++) {
            double v = chart->values[s * chart->n_bands + b], x = b + (2 * s + 1 - chart->n_names) * half;
            if (!isfinite(v)) continue;
            gw_buf_fmt(cv->out, "%.5f %s ", x, gw_exact(0.5 * v).s);
            gw_buf_fmt(cv->out, "%.5f %.5f %s ", x - 0.94 * half, x + 0.94 * half, gw_exact(fmin(v, 0)).s);
            gw_buf_fmt(cv->out, "%s\n", gw_exact(fmax(v, 0)).s);
        }
        gw_buf_add(cv->out, "EOD\n");
    }
    for (int s = 0; s < chart->n_names; s++) {
        char fill[96];
        gw_style_fill(chart->styles ? chart->styles[s] : s, true, fill);
        gw_buf_fmt(cv->out, "%s$d%d using 1:2:3:4:5:6 with boxxyerror %s", s ? ", \\\n  " : "plot ", s, fill);
    }
    gw_buf_add(cv->out, "\n");
}

static void draw(gw_canvas *cv, const gw_band_chart *chart, double lo, double hi)
{
    /* The keys stand where the axis title would; that moves under them. */
    double keys = gw_canvas_keys(cv, cv->top - 18, chart->names, chart->styles, chart->n_names, false);
    cv->top += keys + 8;
    if (chart->words.y_title)
        gw_canvas_text(cv, GW_EDGE, cv->top - 16, chart->words.y_title, GW_TYPE_TEXT, GW_INK, GW_TEXT_LEFT);
    cv->x = (gw_chart_axis){ .from = -0.5, .to = chart->n_bands - 0.5 };
    cv->y = gw_axis_linear(lo, hi, 6, true);
    cv->left = GW_EDGE + gw_canvas_figures_width(&cv->y) + 12;
    gw_canvas_axes(cv, false, true);
    gw_buf_add(cv->out, "unset xtics\n");
    put_bands(cv, chart);
    put_bars(cv, chart);
}

void gw_charts_bands(gw_charts *charts, const char *stem, const gw_band_chart *chart)
{
    gw_canvas cv;
    gw_buf page = { 0 };
    double lo, hi;
    gw_chart_words words = chart->words;
    words.y_title = NULL;
    gw_canvas_begin(&cv, charts, &page, gw_charts_height(charts), &words);
    cv.top += 20;
    if (range_of(chart, &lo, &hi)) {
        draw(&cv, chart, lo, hi);
    } else {
        gw_canvas_empty(&cv);
        gw_buf_add(&page, "plot 2 lc rgb '#ffffff'\n");
    }
    gw_charts_add_page(charts, stem, words.title, cv.height, &page);
    gw_buf_free(&page);
}
