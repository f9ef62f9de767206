/* SPDX-License-Identifier: MIT */
/* Points, whiskers and bubbles, with their names beside them. */
#include "chart/sheet.h"

#include <math.h>

/* A name takes at most this part of the page. */
static const double NAME_PART = 0.33;

enum { MAX_NAMES = 64, REACH = 11, HALF_MARKER = 7, HALF_WHISKER = 4 };

static const gw_pen LEADER = { GW_SOFT_INK, 0.8, NULL };

/* Where a name may stand about its point: to the right first, then left, above, below and the corners. */
typedef struct gw_chart_place {
    double dx, dy; /* -1, 0, 1 */
} gw_chart_place;

static const gw_chart_place PLACES[] = { { 1, 0 },  { -1, 0 }, { 0, -1 },  { 0, 1 },
                                         { 1, -1 }, { 1, 1 },  { -1, -1 }, { -1, 1 } };
enum { N_PLACES = sizeof PLACES / sizeof *PLACES };

/* What names may not lie on: markers, bubbles and whiskers. */
typedef struct gw_scatter {
    gw_sheet *s;
    gw_box taken[2 * MAX_NAMES];
    int n;
} gw_scatter;

static double half_of(const gw_chart_mark *m)
{
    return m->size > 0 ? 0.5 * m->size : HALF_MARKER;
}

static gw_box box_about(double cx, double cy, double w, double h)
{
    return (gw_box){ cx - 0.5 * w, cy - 0.5 * h, cx + 0.5 * w, cy + 0.5 * h };
}

static bool is_free(const gw_scatter *sc, gw_box b)
{
    const gw_sheet *s = sc->s;
    if (b.x0 < s->left + 2 || b.x1 > s->out->width - 6 || b.y0 < s->top || b.y1 > s->bottom - 2) return false;
    for (int i = 0; i < sc->n; i++)
        if (gw_box_overlap(&b, &sc->taken[i]) > 0) return false;
    return gw_layout_taken(s->out, b) <= 0;
}

static double between(double low, double x, double high)
{
    return fmax(low, fmin(x, high));
}

/* How far a name lies from its point. */
static double distance(const gw_box *b, gw_point at)
{
    return hypot(at.x - between(b->x0, at.x, b->x1), at.y - between(b->y0, at.y, b->y1));
}

/* Beside the point where one of the eight places is free; else the nearest that is, anywhere in the plot. */
static gw_box place_for(const gw_scatter *sc, gw_point at, double half, double w, double h)
{
    const gw_sheet *s = sc->s;
    double reach = half + REACH - HALF_MARKER, least = HUGE_VAL;
    gw_box best = box_about(between(s->left + 0.5 * w, at.x, s->right - 0.5 * w), at.y, w, h);
    for (int i = 0; i < N_PLACES; i++) {
        gw_box b =
            box_about(at.x + PLACES[i].dx * (reach + 0.5 * w), at.y + PLACES[i].dy * (reach + 0.5 * h), w, h);
        if (is_free(sc, b)) return b;
    }
    for (double y = s->top + 0.5 * h; y < s->bottom; y += 0.4 * GW_LEADING)
        for (double x = s->left + 2 + 0.5 * w; x < s->out->width; x += 8) {
            gw_box b = box_about(x, y, w, h);
            double d = distance(&b, at);
            if (d < least && d >= reach && is_free(sc, b)) least = d, best = b;
        }
    return best;
}

/* A name that had to go further away is tied to its point. */
static void put_leader(gw_sheet *s, gw_point at, double half, const gw_box *name)
{
    gw_point to = { between(name->x0 + 2, at.x, name->x1 - 2), between(name->y0 + 2, at.y, name->y1 - 2) };
    double d = hypot(to.x - at.x, to.y - at.y), part = d > half ? half / d : 1.0;
    if (d < half + 2 * REACH) return;
    gw_layout_line(s->out, (gw_point){ at.x + part * (to.x - at.x), at.y + part * (to.y - at.y) }, to,
                   LEADER);
}

static void put_name(gw_scatter *sc, gw_point at, const gw_chart_mark *m)
{
    gw_text_lines lines = gw_sheet_name(sc->s, m, NAME_PART * sc->s->out->width);
    double w = gw_text_lines_room(&lines, GW_TYPE_TEXT), h = GW_LEADING * lines.n;
    gw_box box = place_for(sc, at, half_of(m), w, h);
    put_leader(sc->s, at, half_of(m), &box);
    gw_text_side side = box.x0 > at.x - 2 ? GW_TEXT_LEFT : box.x1 < at.x + 2 ? GW_TEXT_RIGHT : GW_TEXT_CENTRE;
    double x = side == GW_TEXT_LEFT ? box.x0 : side == GW_TEXT_RIGHT ? box.x1 : 0.5 * (box.x0 + box.x1);
    gw_sheet_block(sc->s, x, 0.5 * (box.y0 + box.y1), &lines, side);
}

double gw_points_area(const gw_sheet *s)
{
    double area = 0.0;
    for (int i = 0; i < s->figure->n; i++) {
        const gw_chart_mark *m = &s->figure->mark[i];
        if (m->kind != GW_MARK_POINT || !m->name) continue;
        gw_text_lines lines = gw_sheet_name(s, m, NAME_PART * s->out->width);
        area += (gw_text_lines_room(&lines, GW_TYPE_TEXT) + 10) * (GW_LEADING * lines.n + 10);
    }
    return area;
}

static bool has_whisker(const gw_sheet *s, const gw_chart_mark *m, int i)
{
    return m->low && m->high && gw_sheet_shows(s, m->low[i], m->high[i]);
}

/* The whisker about a mark's first point, its ends included. */
static gw_box whisker_box(const gw_sheet *s, const gw_chart_mark *m)
{
    gw_point low = gw_sheet_at(s, m->x[0], m->low[0]), high = gw_sheet_at(s, m->x[0], m->high[0]);
    return (gw_box){ low.x - HALF_WHISKER, high.y, low.x + HALF_WHISKER, low.y };
}

static void put_names(gw_sheet *s)
{
    gw_scatter sc = { .s = s };
    const gw_chart_mark *owner[MAX_NAMES];
    gw_point at[MAX_NAMES];
    int n = 0;
    for (int i = 0; i < s->figure->n && n < MAX_NAMES; i++) {
        const gw_chart_mark *m = &s->figure->mark[i];
        if (m->kind != GW_MARK_POINT || !m->n || !gw_sheet_shows(s, m->x[0], m->y[0])) continue;
        gw_point p = gw_sheet_at(s, m->x[0], m->y[0]);
        sc.taken[sc.n++] = box_about(p.x, p.y, 2.0 * half_of(m), 2.0 * half_of(m));
        if (has_whisker(s, m, 0)) sc.taken[sc.n++] = whisker_box(s, m);
        owner[n] = m;
        at[n++] = p;
    }
    for (int i = 0; i < n; i++)
        if (owner[i]->name) put_name(&sc, at[i], owner[i]);
}

static void put_whisker(gw_sheet *s, const gw_chart_mark *m, int i)
{
    const gw_pen pen = { gw_style_colour(m->style), 1.4, NULL };
    gw_point low = gw_sheet_at(s, m->x[i], m->low[i]), high = gw_sheet_at(s, m->x[i], m->high[i]);
    gw_layout_line(s->out, low, high, pen);
    gw_layout_line(s->out, (gw_point){ low.x - HALF_WHISKER, low.y },
                   (gw_point){ low.x + HALF_WHISKER, low.y }, pen);
    gw_layout_line(s->out, (gw_point){ high.x - HALF_WHISKER, high.y },
                   (gw_point){ high.x + HALF_WHISKER, high.y }, pen);
}

static void put_marker(gw_sheet *s, const gw_chart_mark *m, gw_point at)
{
    if (m->size > 0 || s->numbered)
        gw_layout_disc(s->out, at, m->size > 0 ? m->size : 2.0 * HALF_MARKER, gw_style_fill(m->style));
    else
        gw_layout_marker(s->out, at, gw_style_marker(m->style), m->n > 1 ? 1.2 : 1.7,
                         gw_style_colour(m->style));
    if (s->numbered) gw_badge_put(s, at, m->style);
}

void gw_points_put(gw_sheet *s)
{
    for (int k = 0; k < s->figure->n; k++) {
        const gw_chart_mark *m = &s->figure->mark[k];
        for (int i = 0; m->kind == GW_MARK_POINT && i < m->n; i++) {
            if (!gw_sheet_shows(s, m->x[i], m->y[i])) continue;
            if (has_whisker(s, m, i)) put_whisker(s, m, i);
            put_marker(s, m, gw_sheet_at(s, m->x[i], m->y[i]));
        }
    }
    put_names(s);
}
