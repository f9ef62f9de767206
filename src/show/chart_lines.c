/* SPDX-License-Identifier: MIT */
/* Lines with their names at their ends: over g, over travel, over frequency. */
#include "show/chart_canvas.h"
#include "show/chart_set.h"

#include "show/number.h"

#include <math.h>
#include <stdlib.h>

/* Names at the ends of lines take at most this part of the page. */
static const double LABEL_PART = 0.27;

enum { LEADER = 22, MAX_LABELS = 32 };

static bool shows(const gw_line_chart *chart, double x, double y)
{
    return isfinite(x) && isfinite(y) && (!chart->log_x || x > 0) && (!chart->log_y || y > 0);
}

typedef struct extent {
    double x0, x1, y0, y1;
    bool any;
} extent;

static void take_in(extent *e, double x, double y)
{
    if (!e->any) *e = (extent){ x, x, y, y, true };
    e->x0 = fmin(e->x0, x);
    e->x1 = fmax(e->x1, x);
    e->y0 = fmin(e->y0, y);
    e->y1 = fmax(e->y1, y);
}

static extent extent_of(const gw_line_chart *chart)
{
    extent e = { 0 };
    for (int s = 0; s < chart->n_series; s++)
        for (int i = 0; i < chart->series[s].n; i++) {
            double x = chart->series[s].x[i], y = chart->series[s].y[i];
            bool inside = !chart->has_x_range || (x >= chart->x_from && x <= chart->x_to);
            if (inside && shows(chart, x, y)) take_in(&e, x, y);
        }
    if (!e.any) return e;
    if (chart->has_x_range) e.x0 = chart->x_from, e.x1 = chart->x_to;
    if (chart->with_zero && !chart->log_y) take_in(&e, e.x0, 0.0);
    if (chart->has_mark && shows(chart, e.x0, chart->mark)) take_in(&e, e.x0, chart->mark);
    if (chart->n_bands > 0) /* their names stand above the lines */
        e.y1 = chart->log_y ? e.y1 * pow(e.y1 / e.y0, 0.1) : e.y1 + 0.1 * (e.y1 - e.y0);
    return e;
}

static void set_axes(gw_canvas *cv, const gw_line_chart *chart, const extent *e)
{
    cv->x = chart->log_x ? gw_axis_log(e->x0, e->x1, false) : gw_axis_linear(e->x0, e->x1, 9, false);
    cv->y = chart->log_y ? gw_axis_log(e->y0, e->y1, true) : gw_axis_linear(e->y0, e->y1, 6, true);
    double room = 0.0;
    for (int s = 0; s < chart->n_series; s++) {
        gw_text_lines name =
            gw_text_break(chart->series[s].name, LABEL_PART * cv->width, 3, GW_TYPE_TEXT, false);
        for (int i = 0; i < name.n; i++) room = fmax(room, gw_text_pixels(name.line[i], GW_TYPE_TEXT, false));
    }
    cv->left = GW_EDGE + gw_canvas_figures_width(&cv->y) + 12;
    cv->right = cv->width - 10 - room - LEADER - 6;
    gw_canvas_axes(cv, chart->log_x, true);
    if (chart->words.x_title)
        gw_canvas_text(cv, 0.5 * (cv->left + cv->right), cv->bottom + 40, chart->words.x_title, GW_TYPE_TEXT,
                       GW_INK, GW_TEXT_CENTRE);
}

static void put_bands(gw_canvas *cv, const gw_line_chart *chart)
{
    static const char *const SHADES[] = { "#f3f3f3", "#e9eef2" };
    for (int i = 0; i < chart->n_bands; i++) {
        double from = fmax(chart->bands[i].from, cv->x.from), to = fmin(chart->bands[i].to, cv->x.to);
        if (!(to > from)) continue;
        double x0 = gw_canvas_x(cv, from), x1 = gw_canvas_x(cv, to);
        gw_canvas_box(cv, x0, cv->top, x1, cv->bottom, SHADES[i % 2]);
        gw_text_lines label = gw_text_break(chart->bands[i].label, x1 - x0 - 8, 2, GW_TYPE_NOTE, false);
        for (int k = 0; k < label.n; k++)
            gw_canvas_text(cv, 0.5 * (x0 + x1), cv->top + 10 + 15 * k, label.line[k], GW_TYPE_NOTE,
                           GW_SOFT_INK, GW_TEXT_CENTRE);
    }
}

/* How many points of the lines lie in a box of pixels. */
static int points_in(const gw_canvas *cv, const gw_line_chart *chart, double x0, double x1, double y0,
                     double y1)
{
    int n = 0;
    for (int s = 0; s < chart->n_series; s++)
        for (int i = 0; i < chart->series[s].n; i++) {
            if (!shows(chart, chart->series[s].x[i], chart->series[s].y[i])) continue;
            double x = gw_canvas_x(cv, chart->series[s].x[i]), y = gw_canvas_y(cv, chart->series[s].y[i]);
            n += x > x0 && x < x1 && y > y0 && y < y1;
        }
    return n;
}

/* The name of the level stands where it meets fewest points: along the line, above or below it. */
static void put_mark_label(gw_canvas *cv, const gw_line_chart *chart, double y)
{
    double width = gw_text_pixels(chart->mark_label, GW_TYPE_NOTE, false), best_x = 0, best_y = 0;
    int least = -1;
    for (int i = 0; i <= 10; i++)
        for (int below = 0; below <= 1; below++) {
            double x = cv->left + 8 + 0.1 * i * fmax(cv->right - cv->left - width - 16, 0),
                   at = y + (below ? 10 : -9);
            int n = points_in(cv, chart, x - 6, x + width + 6, at - 12, at + 12);
            if (at - 8 < cv->top || at + 8 > cv->bottom || (least >= 0 && n >= least)) continue;
            least = n;
            best_x = x;
            best_y = at;
        }
    if (least >= 0)
        gw_canvas_text(cv, best_x, best_y, chart->mark_label, GW_TYPE_NOTE, GW_SOFT_INK, GW_TEXT_LEFT);
}

static void put_mark(gw_canvas *cv, const gw_line_chart *chart)
{
    if (!chart->has_mark || !shows(chart, cv->x.from, chart->mark)) return;
    double y = gw_canvas_y(cv, chart->mark);
    gw_canvas_line(cv, cv->left, y, cv->right, y, GW_SOFT_INK, 1.2);
    if (chart->mark_label) put_mark_label(cv, chart, y);
}

/* The last point that shows within the axes; false: the line has none. */
static bool end_of(const gw_canvas *cv, const gw_line_chart *chart, const gw_chart_series *series, double *x,
                   double *y)
{
    for (int i = series->n - 1; i >= 0; i--) {
        if (!shows(chart, series->x[i], series->y[i]) || series->x[i] > cv->x.to * (1 + 1e-12)) continue;
        *x = gw_canvas_x(cv, series->x[i]);
        *y = gw_canvas_y(cv, series->y[i]);
        return true;
    }
    return false;
}

typedef struct end_label {
    double x, y; /* where the line ends */
    gw_text_lines name;
    int style;
} end_label;

static int by_height(const void *a, const void *b)
{
    const end_label *p = a, *q = b;
    if (p->y < q->y) return -1;
    return p->y > q->y ? 1 : p->style - q->style;
}

static int collect_labels(gw_canvas *cv, const gw_line_chart *chart, end_label *labels)
{
    int n = 0;
    for (int s = 0; s < chart->n_series && n < MAX_LABELS; s++) {
        end_label *l = &labels[n];
        if (!end_of(cv, chart, &chart->series[s], &l->x, &l->y)) continue;
        l->style = chart->series[s].style;
        l->name = gw_text_break(chart->series[s].name, LABEL_PART * cv->width, 3, GW_TYPE_TEXT, false);
        n++;
    }
    qsort(labels, (size_t)n, sizeof *labels, by_height);
    return n;
}

/* Names at the ends, moved apart where the ends meet, each tied to its line by a thin one. */
static void put_labels(gw_canvas *cv, const gw_line_chart *chart)
{
    end_label labels[MAX_LABELS];
    double centre[MAX_LABELS], height[MAX_LABELS];
    int n = collect_labels(cv, chart, labels);
    for (int i = 0; i < n; i++) {
        centre[i] = labels[i].y;
        height[i] = 17.0 * labels[i].name.n + 4;
    }
    /* the small print at the foot stands below the title of the x axis */
    double floor = chart->words.note ? cv->bottom + 48.0 : cv->height - 6.0;
    gw_spread(centre, height, n, cv->top - 14, floor);
    for (int i = 0; i < n; i++) {
        gw_canvas_line(cv, labels[i].x + 3, labels[i].y, cv->right + LEADER - 3, centre[i],
                       gw_style_colour(labels[i].style), 0.8);
        gw_canvas_block(cv, cv->right + LEADER + 1, centre[i], &labels[i].name, GW_INK, GW_TEXT_LEFT);
    }
}

static void put_data(gw_canvas *cv, const gw_line_chart *chart)
{
    for (int s = 0; s < chart->n_series; s++) {
        const gw_chart_series *series = &chart->series[s];
        gw_buf_fmt(cv->out, "$d%d << EOD\n", s);
        for (int i = 0; i < series->n; i++) {
            if (shows(chart, series->x[i], series->y[i]))
                gw_buf_fmt(cv->out, "%s %s\n", gw_exact(series->x[i]).s, gw_exact(series->y[i]).s);
            else
                gw_buf_add(cv->out, "\n");
        }
        gw_buf_add(cv->out, "EOD\n");
    }
}

/* About eight markers a line, set at different places on each so that lines that lie together show. */
static void put_plot(gw_canvas *cv, const gw_line_chart *chart)
{
    bool any = false;
    for (int s = 0; s < chart->n_series; s++) {
        const gw_chart_series *series = &chart->series[s];
        double x, y;
        if (!end_of(cv, chart, series, &x, &y)) continue;
        int every = series->n <= 12 ? 1 : series->n / 8;
        int first = every > 1 ? (every * (s % 4)) / 4 : 0;
        const char *colour = gw_style_colour(series->style);
        gw_buf_fmt(cv->out, "%s$d%d using 1:2 with lines lw 2.2 dt %s lc rgb '%s'",
                   any ? ", \\\n  " : "plot ", s, gw_style_dash(series->style), colour);
        gw_buf_fmt(cv->out, ", \\\n  $d%d every %d::%d using 1:2 with points pt %d ps 1.0 lw 1.5 lc rgb '%s'",
                   s, every, first, gw_style_marker(series->style), colour);
        any = true;
    }
    gw_buf_add(cv->out, any ? "\n" : "plot 2 lc rgb '#ffffff'\n");
}

void gw_charts_lines(gw_charts *charts, const char *stem, const gw_line_chart *chart)
{
    gw_canvas cv;
    gw_buf page = { 0 };
    extent e = extent_of(chart);
    gw_canvas_begin(&cv, charts, &page, gw_charts_height(charts), &chart->words);
    if (e.any) {
        set_axes(&cv, chart, &e);
        put_bands(&cv, chart);
        put_mark(&cv, chart);
        put_labels(&cv, chart);
        put_data(&cv, chart);
        put_plot(&cv, chart);
    } else {
        gw_canvas_empty(&cv);
        gw_buf_add(&page, "plot 2 lc rgb '#ffffff'\n");
    }
    gw_charts_add_page(charts, stem, chart->words.title, cv.height, &page);
    gw_buf_free(&page);
}
