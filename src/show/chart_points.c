/* SPDX-License-Identifier: MIT */
/* Points with their names beside them. */
#include "show/chart_canvas.h"
#include "show/chart_set.h"

#include "show/number.h"

#include <math.h>

/* A name takes at most this part of the page. */
static const double NAME_PART = 0.3;

enum { MAX_POINTS = 64, REACH = 11 };

typedef struct box {
    double x0, y0, x1, y1;
} box;

static double overlap(const box *a, const box *b)
{
    double w = fmin(a->x1, b->x1) - fmax(a->x0, b->x0), h = fmin(a->y1, b->y1) - fmax(a->y0, b->y0);
    return w > 0 && h > 0 ? w * h : 0.0;
}

/* Where a name may stand about its point: to the right first, then left, above, below and the corners. */
typedef struct place {
    double dx, dy; /* -1, 0, 1 */
} place;

static const place PLACES[] = { { 1, 0 },  { -1, 0 }, { 0, -1 },  { 0, 1 },
                                { 1, -1 }, { 1, 1 },  { -1, -1 }, { -1, 1 } };

enum { N_PLACES = sizeof PLACES / sizeof *PLACES, FURTHEST = 4 };

/* `away`: how many lines further up or down than next to the point. */
static box box_at(double x, double y, place p, int away, double w, double h)
{
    double cx = x + p.dx * (REACH + 0.5 * w), cy = y + p.dy * (REACH + 0.5 * h + 17.0 * away);
    return (box){ cx - 0.5 * w, cy - 0.5 * h, cx + 0.5 * w, cy + 0.5 * h };
}

typedef struct scatter {
    const gw_point_chart *chart;
    gw_canvas *cv;
    box taken[2 * MAX_POINTS];
    int n_taken;
} scatter;

static double cost_of(const scatter *sc, const box *b, int own)
{
    const gw_canvas *cv = sc->cv;
    double cost = 0.0;
    for (int i = 0; i < sc->n_taken; i++)
        if (i != own) cost += overlap(b, &sc->taken[i]);
    double outside = fmax(cv->left - b->x0, 0) + fmax(b->x1 - cv->width + 6, 0) +
                     fmax(cv->top - 8 - b->y0, 0) + fmax(b->y1 - cv->bottom, 0);
    return cost + 1000 * outside;
}

static bool shows(const gw_point_chart *chart, int i)
{
    return isfinite(chart->x[i]) && isfinite(chart->y[i]);
}

/* A name that had to go further away is tied to its point. */
static void put_leader(scatter *sc, double x, double y, const box *name)
{
    double to_x = fmin(fmax(x, name->x0), name->x1), to_y = name->y0 > y ? name->y0 + 2 : name->y1 - 2;
    gw_canvas_line(sc->cv, x, y + (to_y > y ? 7 : -7), to_x, to_y, GW_SOFT_INK, 0.8);
}

static void put_name(scatter *sc, int own, double x, double y, const char *name)
{
    gw_text_lines lines = gw_text_break(name, NAME_PART * sc->cv->width, 3, GW_TYPE_TEXT, false);
    double w = 0.0, h = 17.0 * lines.n, least = HUGE_VAL;
    int far = 0;
    box best = { 0 };
    for (int k = 0; k < lines.n; k++) w = fmax(w, gw_text_pixels(lines.line[k], GW_TYPE_TEXT, false));
    for (int i = 0; i < N_PLACES * (FURTHEST + 1); i++) {
        int away = i / N_PLACES;
        place p = PLACES[i % N_PLACES];
        if (away && p.dy == 0) continue;
        box b = box_at(x, y, p, away, w, h);
        double cost = cost_of(sc, &b, own) + 30.0 * away;
        if (cost < least) least = cost, best = b, far = away;
    }
    sc->taken[sc->n_taken++] = best;
    if (far) put_leader(sc, x, y, &best);
    bool right = best.x1<x, left = best.x0> x;
    double at = left ? best.x0 : right ? best.x1 : 0.5 * (best.x0 + best.x1);
    gw_canvas_block(sc->cv, at, 0.5 * (best.y0 + best.y1), &lines, GW_INK,
                    left    ? GW_TEXT_LEFT
                    : right ? GW_TEXT_RIGHT
                            : GW_TEXT_CENTRE);
}

static void put_names(scatter *sc, int n)
{
    const gw_point_chart *chart = sc->chart;
    int own = 0;
    for (int i = 0; i < n; i++) {
        if (!shows(chart, i)) continue;
        double x = gw_canvas_x(sc->cv, chart->x[i]), y = gw_canvas_y(sc->cv, chart->y[i]);
        sc->taken[sc->n_taken++] = (box){ x - 7, y - 7, x + 7, y + 7 };
    }
    for (int i = 0; i < n; i++) {
        if (!shows(chart, i)) continue;
        put_name(sc, own++, gw_canvas_x(sc->cv, chart->x[i]), gw_canvas_y(sc->cv, chart->y[i]),
                 chart->names[i]);
    }
}

static bool set_axes(gw_canvas *cv, const gw_point_chart *chart, int n)
{
    double x0 = HUGE_VAL, x1 = -HUGE_VAL, y0 = HUGE_VAL, y1 = -HUGE_VAL;
    for (int i = 0; i < n; i++) {
        if (!shows(chart, i)) continue;
        x0 = fmin(x0, chart->x[i]);
        x1 = fmax(x1, chart->x[i]);
        y0 = fmin(y0, chart->y[i]);
        y1 = fmax(y1, chart->y[i]);
    }
    if (!(x0 <= x1)) return false;
    double mx = 0.08 * (x1 - x0), my = 0.15 * (y1 - y0);
    cv->x = gw_axis_linear(x0 - mx, x1 + mx, 8, true);
    /* Sizes are compared by their distance from nothing. */
    cv->y = gw_axis_linear(y0 >= 0.0 ? 0.0 : y0 - my, y1 + my, 6, true);
    cv->left = GW_EDGE + gw_canvas_figures_width(&cv->y) + 12;
    cv->right = cv->width - 40;
    gw_canvas_axes(cv, true, true);
    if (chart->words.x_title)
        gw_canvas_text(cv, 0.5 * (cv->left + cv->right), cv->bottom + 40, chart->words.x_title, GW_TYPE_TEXT,
                       GW_INK, GW_TEXT_CENTRE);
    return true;
}

static void put_points(gw_canvas *cv, const gw_point_chart *chart, int n)
{
    bool any = false;
    for (int i = 0; i < n; i++)
        if (shows(chart, i))
            gw_buf_fmt(cv->out, "$d%d << EOD\n%s %s\nEOD\n", i, gw_exact(chart->x[i]).s,
                       gw_exact(chart->y[i]).s);
    for (int i = 0; i < n; i++) {
        if (!shows(chart, i)) continue;
        int style = chart->styles ? chart->styles[i] : i;
        gw_buf_fmt(cv->out, "%s$d%d using 1:2 with points pt %d ps 1.7 lw 2 lc rgb '%s'",
                   any ? ", \\\n  " : "plot ", i, gw_style_marker(style), gw_style_colour(style));
        any = true;
    }
    gw_buf_add(cv->out, "\n");
}

void gw_charts_points(gw_charts *charts, const char *stem, const gw_point_chart *chart)
{
    gw_canvas cv;
    gw_buf page = { 0 };
    int n = chart->n < MAX_POINTS ? chart->n : MAX_POINTS;
    /* names beside points need room above and below */
    int height = gw_charts_height(charts) + (charts->inlined ? 45 : 0);
    gw_canvas_begin(&cv, charts, &page, height, &chart->words);
    if (set_axes(&cv, chart, n)) {
        scatter sc = { .chart = chart, .cv = &cv };
        put_names(&sc, n);
        put_points(&cv, chart, n);
    } else {
        gw_canvas_empty(&cv);
        gw_buf_add(&page, "plot 2 lc rgb '#ffffff'\n");
    }
    gw_charts_add_page(charts, stem, chart->words.title, cv.height, &page);
    gw_buf_free(&page);
}
