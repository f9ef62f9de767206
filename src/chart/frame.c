/* SPDX-License-Identifier: MIT */
/* Axes: rules, ticks, figures, the line at zero. */
#include "chart/sheet.h"

#include <math.h>

static const gw_pen RULE = { GW_RULE, 0.8, NULL }, AXIS = { GW_SOFT_INK, 1.0, NULL };

enum { TICK = 5, MINOR_TICK = 3, FIGURE_BELOW = 18, FIGURE_BESIDE = 9 };

/* The outermost figures may have to move inwards by what does not fit between axis and edge of the page. */
gw_axis gw_frame_ticks(double from, double to, double length, int most, bool widen)
{
    for (;; most--) {
        gw_axis axis = gw_axis_linear(from, to, most, widen);
        double each = axis.n_ticks > 1
                          ? length * (axis.ticks[1].at - axis.ticks[0].at) / (axis.to - axis.from)
                          : length;
        double room = gw_axis_figures_room(&axis), inwards = fmax(0.5 * room - GW_EDGE, 0.0);
        if (most <= 2 || room + inwards + 8 <= each) return axis;
    }
}

/* As near to x as its room lets it stay on the page. */
static double on_page(const gw_sheet *s, double x, const char *figure)
{
    double half = 0.5 * gw_text_room(figure, GW_TYPE_TICK, false) + 1;
    return fmax(half, fmin(x, s->out->width - half));
}

static void line(gw_sheet *s, double x0, double y0, double x1, double y1, gw_pen pen)
{
    gw_layout_line(s->out, (gw_point){ x0, y0 }, (gw_point){ x1, y1 }, pen);
}

static bool has_rule(const gw_axis *axis, int tick)
{
    bool at_edge =
        fabs(gw_axis_at(axis, axis->ticks[tick].at) - axis->start) < 0.5; /* the other axis is there */
    return !at_edge && !axis->ticks[tick].minor;
}

static void put_rules(gw_sheet *s, bool x, bool y)
{
    for (int i = 0; x && i < s->x.n_ticks; i++) {
        double at = gw_axis_at(&s->x, s->x.ticks[i].at);
        if (has_rule(&s->x, i)) line(s, at, s->top, at, s->bottom, RULE);
    }
    for (int i = 0; y && i < s->y.n_ticks; i++) {
        double at = gw_axis_at(&s->y, s->y.ticks[i].at);
        if (has_rule(&s->y, i)) line(s, s->left, at, s->right, at, RULE);
    }
}

static void put_x(gw_sheet *s)
{
    for (int i = 0; i < s->x.n_ticks; i++) {
        double x = gw_axis_at(&s->x, s->x.ticks[i].at);
        bool minor = s->x.ticks[i].minor;
        char figure[32];
        line(s, x, s->bottom, x, s->bottom + (minor ? MINOR_TICK : TICK), AXIS);
        if (minor) continue;
        gw_axis_figure(&s->x, i, figure);
        gw_layout_text_at(s->out, on_page(s, x, figure), s->bottom + FIGURE_BELOW, figure, GW_TYPE_TICK,
                          GW_INK, GW_TEXT_CENTRE);
    }
}

static void put_y(gw_sheet *s)
{
    for (int i = 0; i < s->y.n_ticks; i++) {
        double y = gw_axis_at(&s->y, s->y.ticks[i].at);
        bool minor = s->y.ticks[i].minor;
        char figure[32];
        line(s, s->left - (minor ? MINOR_TICK : TICK), y, s->left, y, AXIS);
        if (minor) continue;
        gw_axis_figure(&s->y, i, figure);
        gw_layout_text_at(s->out, s->left - FIGURE_BESIDE, y, figure, GW_TYPE_TICK, GW_INK, GW_TEXT_RIGHT);
    }
}

static void put_zero(gw_sheet *s)
{
    if (s->figure->y.kind == GW_SCALE_LINEAR && s->y.from < 0 && s->y.to > 0) {
        double y = gw_axis_at(&s->y, 0);
        line(s, s->left, y, s->right, y, AXIS);
    }
    if (s->figure->x.kind == GW_SCALE_LINEAR && s->x.from <= 0 && s->x.to >= 0) {
        double x = gw_axis_at(&s->x, 0);
        line(s, x, s->top, x, s->bottom, AXIS);
    }
}

/* Names of upright rows: each, or every second, third ... where they would touch. */
static void put_columns(gw_sheet *s)
{
    const gw_chart_scale *x = &s->figure->x;
    double cell = (s->right - s->left) / x->n_rows, widest = 0.0;
    for (int i = 0; i < x->n_rows; i++) widest = fmax(widest, gw_text_room(x->rows[i], GW_TYPE_TICK, false));
    int every = (int)ceil((widest + 4 + fmax(0.5 * widest - GW_EDGE, 0.0)) / cell);
    for (int i = 0; i < x->n_rows; i++) {
        double edge = s->left + i * cell;
        if (i) line(s, edge, s->bottom, edge, s->bottom + TICK, AXIS);
        if (i % every == 0)
            gw_layout_text_at(s->out, on_page(s, edge + 0.5 * cell, x->rows[i]), s->bottom + FIGURE_BELOW,
                              x->rows[i], GW_TYPE_TICK, GW_INK, GW_TEXT_CENTRE);
    }
}

/* Above their bars, on white: rules and the line at zero pass behind. */
static void put_names_above(gw_sheet *s)
{
    const gw_chart_scale *y = &s->figure->y;
    double high = (s->bottom - s->top) / y->n_rows, names = gw_names_height(s);
    for (int i = 0; i < y->n_rows; i++) {
        gw_text_lines name = gw_text_break(y->rows[i], s->out->width - 2.0 * GW_EDGE, 3, GW_TYPE_TEXT, false);
        double bottom = s->top + i * high + names + 4 - (i ? 0.0 : gw_labels_height(s));
        double top = bottom - GW_LEADING * name.n;
        double right = s->left + gw_text_lines_room(&name, GW_TYPE_TEXT) + 3;
        gw_layout_box(s->out, (gw_box){ s->left - 1, top, right, bottom }, GW_WHITE, -1);
        gw_sheet_block(s, s->left, 0.5 * (top + bottom), &name, GW_TEXT_LEFT);
    }
}

/* Names of rows down the page, and a hair between rows of several bars. */
static void put_rows(gw_sheet *s)
{
    const gw_chart_scale *y = &s->figure->y;
    double high = (s->bottom - s->top) / y->n_rows;
    bool several = false;
    for (int i = 0; i < s->figure->n; i++) several = several || s->figure->mark[i].lanes > 1;
    for (int i = 0; i < y->n_rows; i++) {
        gw_text_lines name = gw_text_break(y->rows[i], s->left - 10 - GW_EDGE + 0.01, 3, GW_TYPE_TEXT, false);
        double at = s->top + (i + 0.5) * high;
        gw_sheet_block(s, s->left - 10, at, &name, GW_TEXT_RIGHT);
        if (i && several) line(s, s->left, at - 0.5 * high, s->right, at - 0.5 * high, RULE);
    }
}

void gw_frame_put(gw_sheet *s)
{
    const gw_figure *f = s->figure;
    bool across = f->y.kind == GW_SCALE_ROWS, upright = f->x.kind == GW_SCALE_ROWS;
    put_rules(s, !upright && (across || f->x.kind == GW_SCALE_LOG || f->x.around), !across);
    if (across && !s->inlined) put_rows(s);
    if (upright) put_columns(s);
    if (!upright) put_x(s);
    if (!across) put_y(s);
    line(s, s->left, s->bottom, s->right, s->bottom, AXIS);
    if (!across) line(s, s->left, s->top, s->left, s->bottom, AXIS);
    put_zero(s);
    if (across && s->inlined) put_names_above(s);
}
