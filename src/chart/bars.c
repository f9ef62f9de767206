/* SPDX-License-Identifier: MIT */
/* Bars across and upright, with their figures beyond their ends. */
#include "chart/sheet.h"

#include <math.h>
#include <stdio.h>

enum { BAR = 22, LANE = 15, BETWEEN = 12, NAME_LINES = 3, GAP = 5, FIGURE = 64, LETTER_ROOM = 16 };

static const gw_pen TIE = { GW_SOFT_INK, 0.8, NULL }, WHISKER = { GW_INK, 1.4, NULL };
static const gw_pen HALO = { "#ffffff", 3.6, NULL }; /* a whisker is seen on a dark bar too */

static int lanes(const gw_chart_mark *m)
{
    return m->lanes > 1 ? m->lanes : 1;
}

static int most_lanes(const gw_figure *f)
{
    int most = 1;
    for (int i = 0; i < f->n; i++)
        if (f->mark[i].kind == GW_MARK_BAR && lanes(&f->mark[i]) > most) most = lanes(&f->mark[i]);
    return most;
}

/* ---- figures ---- */

/* With its number in front where bars of several styles lie together. */
static bool figure_of(const gw_sheet *s, const gw_chart_mark *m, bool at_from, char text[FIGURE])
{
    const char *figure = at_from ? m->figure_at_from : m->figure;
    bool number = s->numbered && lanes(m) > 1;
    if (!figure) return false;
    if (number)
        snprintf(text, FIGURE, "%d:  %.40s", m->style + 1, figure);
    else
        snprintf(text, FIGURE, "%.60s", figure);
    return true;
}

/* The value that a figure stands beyond: the end of the bar, or of its whisker. */
static double end_of(const gw_chart_mark *m, bool at_from, bool leftwards)
{
    double end = at_from ? m->from : m->to;
    if (!m->low || !m->high || at_from) return end;
    return leftwards ? fmin(end, m->low[0]) : fmax(end, m->high[0]);
}

static bool points_left(const gw_chart_mark *m, bool at_from)
{
    return (m->to < m->from) != at_from;
}

/* Left end of a figure in pixels from zero; one that would lie across the line at zero goes beyond it. */
static double figure_start(const gw_chart_mark *m, bool at_from, double width, double scale)
{
    bool left = points_left(m, at_from);
    double end = scale * end_of(m, at_from, left), start = left ? end - GAP - width : end + GAP;
    if (end > 0 && left && start < 0) return -GAP - width;
    if (end < 0 && !left && start + width > 0) return GAP;
    return start;
}

/* How far bars and figures reach to both sides of zero, in pixels, if values are drawn at this scale. */
static void reach(const gw_sheet *s, double lo, double hi, double scale, double *left, double *right)
{
    char text[FIGURE];
    *left = scale * lo;
    *right = scale * hi;
    for (int i = 0; i < s->figure->n; i++)
        for (int at_from = 0; at_from <= 1; at_from++) {
            const gw_chart_mark *m = &s->figure->mark[i];
            if (m->kind != GW_MARK_BAR || !figure_of(s, m, at_from, text)) continue;
            double width = gw_text_room(text, GW_TYPE_TICK, false);
            double start = figure_start(m, at_from, width, scale);
            *left = fmin(*left, start);
            *right = fmax(*right, start + width);
        }
}

void gw_bars_fit(gw_sheet *s, double lo, double hi)
{
    double room = s->right - s->left, left, right, least = 0.0;
    if (!(hi > lo)) hi = lo + 1.0;
    double most = room / (hi - lo);
    for (int i = 0; i < 60; i++) { /* the largest scale at which all of it finds room */
        double scale = 0.5 * (least + most);
        reach(s, lo, hi, scale, &left, &right);
        if (right - left <= room)
            least = scale;
        else
            most = scale;
    }
    double scale = fmax(least, 1e-9 * room / (hi - lo));
    reach(s, lo, hi, scale, &left, &right);
    s->x = gw_frame_ticks(left / scale, (left + room) / scale, room, 7, false);
}

/* ---- rows ---- */

double gw_rows_room(const gw_sheet *s)
{
    const gw_chart_scale *y = &s->figure->y;
    if (s->inlined) return 0.0;
    double width = s->out->width, left, right, room = 0.0;
    reach(s, 0.0, 0.0, 0.0, &left, &right); /* the figures alone */
    double most = fmin((width < 700 ? 0.4 : 0.31) * width, 0.7 * width - 3 * GW_EDGE - (right - left));
    for (int i = 0; i < y->n_rows; i++) {
        gw_text_lines name = gw_text_break(y->rows[i], most, NAME_LINES, GW_TYPE_TEXT, false);
        room = fmax(room, gw_text_lines_room(&name, GW_TYPE_TEXT));
    }
    return room;
}

double gw_row_height(const gw_sheet *s)
{
    const gw_chart_scale *y = &s->figure->y;
    int n = most_lanes(s->figure), most = 0;
    double bars = (n > 1 ? LANE * n : BAR) + BETWEEN, room = gw_rows_room(s) + 0.01;
    if (s->inlined) return bars + gw_names_height(s);
    for (int i = 0; i < y->n_rows; i++) {
        gw_text_lines name = gw_text_break(y->rows[i], room, NAME_LINES, GW_TYPE_TEXT, false);
        if (name.n > most) most = name.n;
    }
    return fmax(bars, most * GW_LEADING + 4.0);
}

/* ---- drawing ---- */

static void put_box(gw_sheet *s, const gw_chart_mark *m, gw_box box)
{
    if (m->letter && fabs(box.x1 - box.x0) > 4) { /* a hair of white parts neighbours */
        double hair = copysign(0.5, box.x1 - box.x0);
        box.x0 += hair;
        box.x1 -= hair;
    }
    int hatching = m->hatched ? gw_style_hatching(m->style) : -1;
    gw_layout_box(s->out, box, gw_style_fill(m->style), hatching);
}

/* In the first row the name, where it has room; nothing, where it stands above, tied; else its letter. */
static void put_letter(gw_sheet *s, const gw_chart_mark *m, const gw_box *box)
{
    char text[GW_LABEL_TEXT] = { m->letter, '\0' };
    const gw_bar_label *named = m->letter && m->row == 0 ? gw_label_of(s, m->letter - 'A') : NULL;
    if (!m->letter || (named && !named->inside) || fabs(box->x1 - box->x0) < LETTER_ROOM) return;
    if (named) gw_label_inside(m, s->figure->keys[named->key], text);
    gw_layout_text_at(s->out, 0.5 * (box->x0 + box->x1), 0.5 * (box->y0 + box->y1), text, GW_TYPE_TICK,
                      gw_style_text_on(m->style), GW_TEXT_CENTRE);
}

static void put_figure(gw_sheet *s, const gw_chart_mark *m, bool at_from, double y)
{
    char text[FIGURE];
    if (!figure_of(s, m, at_from, text)) return;
    double width = gw_text_room(text, GW_TYPE_TICK, false), zero = gw_axis_at(&s->x, 0.0);
    double scale = (s->x.end - s->x.start) / (s->x.to - s->x.from);
    double start = zero + figure_start(m, at_from, width, scale);
    bool left = points_left(m, at_from);
    gw_layout_text_at(s->out, left ? start + width : start, y, text, GW_TYPE_TICK, GW_INK,
                      left ? GW_TEXT_RIGHT : GW_TEXT_LEFT);
}

static void put_whisker(gw_sheet *s, gw_point a, gw_point b)
{
    double dx = a.x == b.x ? 4 : 0, dy = a.x == b.x ? 0 : 4;
    gw_layout_line(s->out, a, b, HALO);
    gw_layout_line(s->out, a, b, WHISKER);
    gw_layout_line(s->out, (gw_point){ a.x - dx, a.y - dy }, (gw_point){ a.x + dx, a.y + dy }, WHISKER);
    gw_layout_line(s->out, (gw_point){ b.x - dx, b.y - dy }, (gw_point){ b.x + dx, b.y + dy }, WHISKER);
}

static void put_across(gw_sheet *s, const gw_chart_mark *m)
{
    double high = (s->bottom - s->top) / s->figure->y.n_rows,
           middle = s->top + (m->row + 0.5) * high + 0.5 * gw_names_height(s);
    double half = lanes(m) > 1 ? 0.46 * LANE : 0.5 * BAR;
    double y = middle + (m->lane - 0.5 * (lanes(m) - 1)) * LANE;
    double from = gw_axis_at(&s->x, m->from), to = gw_axis_at(&s->x, m->to);
    const gw_box box = { from, y - half, to, y + half };
    if (m->from != m->to) put_box(s, m, box);
    put_letter(s, m, &box);
    if (m->low && m->high)
        put_whisker(s, (gw_point){ gw_axis_at(&s->x, m->low[0]), y },
                    (gw_point){ gw_axis_at(&s->x, m->high[0]), y });
    put_figure(s, m, false, y);
    put_figure(s, m, true, y);
    if (m->tied) gw_layout_line(s->out, (gw_point){ to, y + half }, (gw_point){ to, y + high - half }, TIE);
}

static double upright_width(const gw_sheet *s, const gw_chart_mark *m)
{
    return 0.82 * (s->right - s->left) / s->figure->x.n_rows / lanes(m);
}

/* Figures stand at upright bars only where every one of them has room. */
static bool upright_figures(const gw_sheet *s)
{
    for (int i = 0; i < s->figure->n; i++) {
        const gw_chart_mark *m = &s->figure->mark[i];
        if (m->kind == GW_MARK_BAR && m->figure &&
            gw_text_room(m->figure, GW_TYPE_TICK, false) + 2 > upright_width(s, m))
            return false;
    }
    return true;
}

static void put_upright(gw_sheet *s, const gw_chart_mark *m, bool figures)
{
    double cell = (s->right - s->left) / s->figure->x.n_rows, wide = upright_width(s, m);
    double x = s->left + (m->row + 0.5) * cell + (m->lane - 0.5 * (lanes(m) - 1)) * wide;
    double from = gw_axis_at(&s->y, m->from), to = gw_axis_at(&s->y, m->to);
    if (m->from != m->to) put_box(s, m, (gw_box){ x - 0.47 * wide, from, x + 0.47 * wide, to });
    if (m->low && m->high)
        put_whisker(s, (gw_point){ x, gw_axis_at(&s->y, m->low[0]) },
                    (gw_point){ x, gw_axis_at(&s->y, m->high[0]) });
    if (figures && m->figure)
        gw_layout_text_at(s->out, x,
                          to < from || m->to == m->from ? gw_axis_at(&s->y, end_of(m, false, false)) - 11
                                                        : gw_axis_at(&s->y, end_of(m, false, true)) + 11,
                          m->figure, GW_TYPE_TICK, GW_INK, GW_TEXT_CENTRE);
}

/* Above the first bar, below the name of its row where that stands above. */
static void put_labels(gw_sheet *s)
{
    double high = (s->bottom - s->top) / s->figure->y.n_rows, names = gw_names_height(s);
    double bar = s->top + 0.5 * (high + names) - 0.5 * BAR;
    if (s->labels.lines) gw_labels_put(s, s->inlined ? s->top + names + 4 : s->top, bar);
}

void gw_bars_put(gw_sheet *s)
{
    bool upright = s->figure->x.kind == GW_SCALE_ROWS, figures = upright && upright_figures(s);
    for (int i = 0; i < s->figure->n; i++) {
        const gw_chart_mark *m = &s->figure->mark[i];
        if (m->kind != GW_MARK_BAR) continue;
        if (upright)
            put_upright(s, m, figures);
        else
            put_across(s, m);
    }
    put_labels(s);
}
