/* SPDX-License-Identifier: MIT */
/* Lines with their names at their ends, filled areas, levels, stretches. */
#include "chart/sheet.h"

#include <math.h>
#include <stdlib.h>

enum { MAX_ENDS = 64, MARKERS = 8, BADGE = 15 };

/* Names at the ends of lines take at most this part of the page. */
static const double NAME_PART = 0.27, NAME_PART_INLINED = 0.32;

static double name_room(const gw_sheet *s)
{
    return (s->inlined ? NAME_PART_INLINED : NAME_PART) * s->out->width;
}

bool gw_sheet_shows(const gw_sheet *s, double x, double y)
{
    const gw_figure *f = s->figure;
    return isfinite(x) && isfinite(y) && (f->x.kind != GW_SCALE_LOG || x > 0) &&
           (f->y.kind != GW_SCALE_LOG || y > 0);
}

gw_point gw_sheet_at(const gw_sheet *s, double x, double y)
{
    return (gw_point){ gw_axis_at(&s->x, x), gw_axis_at(&s->y, y) };
}

static bool inside(const gw_sheet *s, double x)
{
    double give = 1e-9 * fabs(s->x.to - s->x.from);
    return x >= s->x.from - give && x <= s->x.to + give;
}

/* ---- lines and areas ---- */

/* Where the way from a to b, of which one lies beside the axis, crosses its end. */
static gw_point crossing(const gw_sheet *s, gw_point a, gw_point b)
{
    double edge = fmin(a.x, b.x) < s->left - 0.01 ? s->left : s->right;
    double y = a.y + (edge - a.x) / (b.x - a.x) * (b.y - a.y);
    return (gw_point){ edge, fmax(s->top, fmin(s->bottom, y)) };
}

/* One unbroken piece of a line from its first point on that shows; returns where it ends. */
static int put_piece(gw_sheet *s, const gw_chart_mark *m, int first, gw_pen pen)
{
    int end = first, n = 0;
    while (end < m->n && gw_sheet_shows(s, m->x[end], m->y[end])) end++;
    gw_shape shape = { .kind = GW_SHAPE_LINE, .colour = pen.colour, .dash = pen.dash, .width = pen.width };
    shape.n = 2 * (end - first) + 2;
    gw_point *at = gw_layout_shape(s->out, shape);
    if (!at) return end;
    for (int i = first; i < end; i++) {
        gw_point p = gw_sheet_at(s, m->x[i], m->y[i]);
        bool in = inside(s, m->x[i]), was_in = i > first && inside(s, m->x[i - 1]);
        if (i > first && in != was_in) at[n++] = crossing(s, gw_sheet_at(s, m->x[i - 1], m->y[i - 1]), p);
        if (in && m->stepped && n) at[n] = (gw_point){ p.x, at[n - 1].y }, n++;
        if (in) at[n++] = p;
    }
    s->out->shape[s->out->n_shapes - 1].n = n;
    return end;
}

static void put_line(gw_sheet *s, const gw_chart_mark *m)
{
    const char *dash = m->bare || m->drawn ? "solid" : gw_style_dash(m->style);
    gw_pen pen = { gw_style_colour(m->style), m->bare ? 1.2 : 2.2, dash };
    if (m->faint) pen = (gw_pen){ GW_FAINT_INK, 1.2, "solid" };
    for (int i = 0; i < m->n;) i = gw_sheet_shows(s, m->x[i], m->y[i]) ? put_piece(s, m, i, pen) : i + 1;
}

void gw_badge_put(gw_sheet *s, gw_point at, int style)
{
    char number[8] = { 0 };
    int n = (style + 1) % 1000;
    for (int i = n > 99 ? 2 : n > 9 ? 1 : 0; i >= 0; i--, n /= 10) number[i] = (char)('0' + n % 10);
    double half = 0.5 * BADGE;
    if (gw_layout_taken(s->out, (gw_box){ at.x - half, at.y - half, at.x + half, at.y + half }) > 0) return;
    gw_layout_disc(s->out, at, BADGE, gw_style_fill(style));
    gw_layout_text_at(s->out, at.x, at.y, number, GW_TYPE_BADGE, gw_style_text_on(style), GW_TEXT_CENTRE);
}

/* About eight markers a line, at different places on each so that lines that lie together show. */
static void put_markers(gw_sheet *s, const gw_chart_mark *m, int nth)
{
    int every = m->n <= 12 ? 1 : m->n / MARKERS, first = every > 1 ? every * (nth % 4) / 4 : 0;
    if (s->numbered && every == 1) every = 3, first = nth % 3;
    for (int i = first; i < m->n; i += every) {
        if (!gw_sheet_shows(s, m->x[i], m->y[i]) || !inside(s, m->x[i])) continue;
        gw_point at = gw_sheet_at(s, m->x[i], m->y[i]);
        if (s->numbered)
            gw_badge_put(s, at, m->style);
        else
            gw_layout_marker(s->out, at, gw_style_marker(m->style), 1.0, gw_style_colour(m->style));
    }
}

static void put_area(gw_sheet *s, const gw_chart_mark *m)
{
    gw_point *at = gw_layout_shape(
        s->out, (gw_shape){ .kind = GW_SHAPE_AREA, .colour = gw_style_fill(m->style), .n = 2 * m->n });
    int n = 0;
    for (int side = 0; at && side <= 1; side++)
        for (int k = 0; k < m->n; k++) {
            int i = side ? m->n - 1 - k : k;
            double y = side ? m->low[i] : m->high[i];
            if (inside(s, m->x[i]) && gw_sheet_shows(s, m->x[i], y)) at[n++] = gw_sheet_at(s, m->x[i], y);
        }
    if (at) s->out->shape[s->out->n_shapes - 1].n = n;
}

void gw_lines_put(gw_sheet *s)
{
    const gw_figure *f = s->figure;
    int nth = 0;
    for (int i = 0; i < f->n; i++)
        if (f->mark[i].kind == GW_MARK_AREA) put_area(s, &f->mark[i]);
    for (int i = 0; i < f->n; i++)
        if (f->mark[i].kind == GW_MARK_LINE) put_line(s, &f->mark[i]);
    for (int i = 0; i < f->n; i++)
        if (f->mark[i].kind == GW_MARK_LINE && !f->mark[i].bare && !f->mark[i].drawn)
            put_markers(s, &f->mark[i], nth++);
}

/* ---- names at the ends ---- */

typedef struct gw_end {
    gw_point at; /* where the line ends */
    gw_text_lines name;
    int style;
} gw_end;

/* The last point that shows within the axes; false: the line has none. */
static bool last_point(const gw_sheet *s, const gw_chart_mark *m, gw_point *at)
{
    for (int i = m->n - 1; i >= 0; i--) {
        if (!gw_sheet_shows(s, m->x[i], m->y[i]) || !inside(s, m->x[i])) continue;
        *at = gw_sheet_at(s, m->x[i], m->y[i]);
        return true;
    }
    return false;
}

static bool named(const gw_chart_mark *m)
{
    return m->kind == GW_MARK_LINE && m->name;
}

double gw_ends_room(const gw_sheet *s)
{
    double room = 0.0;
    for (int i = 0; i < s->figure->n; i++) {
        if (!named(&s->figure->mark[i])) continue;
        gw_text_lines name = gw_sheet_name(s, &s->figure->mark[i], name_room(s));
        room = fmax(room, gw_text_lines_room(&name, GW_TYPE_TEXT));
    }
    return room;
}

static double block_height(const gw_text_lines *name)
{
    return GW_LEADING * name->n + 3.0;
}

double gw_ends_height(const gw_sheet *s)
{
    double height = 0.0;
    for (int i = 0; i < s->figure->n; i++) {
        if (!named(&s->figure->mark[i])) continue;
        gw_text_lines name = gw_sheet_name(s, &s->figure->mark[i], name_room(s));
        height += block_height(&name);
    }
    return height;
}

static int by_height(const void *a, const void *b)
{
    const gw_end *p = a, *q = b;
    if (p->at.y < q->at.y) return -1;
    return p->at.y > q->at.y ? 1 : p->style - q->style;
}

/* Names at the ends, moved apart where the ends meet, each tied to its line by a thin one. */
void gw_ends_put(gw_sheet *s)
{
    gw_end end[MAX_ENDS];
    double centre[MAX_ENDS] = { 0 }, height[MAX_ENDS] = { 0 };
    int n = 0;
    for (int i = 0; i < s->figure->n && n < MAX_ENDS; i++) {
        const gw_chart_mark *m = &s->figure->mark[i];
        if (!named(m) || !last_point(s, m, &end[n].at)) continue;
        end[n].style = m->style;
        end[n++].name = gw_sheet_name(s, m, name_room(s));
    }
    qsort(end, (size_t)n, sizeof *end, by_height);
    for (int i = 0; i < n; i++) {
        centre[i] = end[i].at.y;
        height[i] = block_height(&end[i].name);
    }
    gw_spread(centre, height, n, s->top - 5, s->bottom + 8);
    for (int i = 0; i < n; i++) {
        gw_pen pen = { gw_style_colour(end[i].style), 0.8, NULL };
        gw_layout_line(s->out, (gw_point){ end[i].at.x + 3, end[i].at.y },
                       (gw_point){ s->right + GW_LEADER - 3, centre[i] }, pen);
        gw_sheet_block(s, s->right + GW_LEADER + 1, centre[i], &end[i].name, GW_TEXT_LEFT);
    }
}

/* Blocks that touch move as one, centred on the mean of where its members want to be. */
void gw_spread(double *centre, const double *height, int n, double top, double bottom)
{
    for (int pass = 0; pass < 4 * n; pass++) {
        bool moved = false;
        for (int i = 1; i < n; i++) {
            double need = 0.5 * (height[i - 1] + height[i]), gap = centre[i] - centre[i - 1];
            if (gap >= need - 0.01) continue;
            centre[i - 1] -= 0.5 * (need - gap);
            centre[i] += 0.5 * (need - gap);
            moved = true;
        }
        if (!moved) break;
    }
    for (int i = n - 1; i >= 0; i--) { /* up from the foot, then down from the head: order and gaps hold */
        double most =
            i == n - 1 ? bottom - 0.5 * height[i] : centre[i + 1] - 0.5 * (height[i] + height[i + 1]);
        centre[i] = fmin(centre[i], most);
    }
    for (int i = 0; i < n; i++) {
        double least = i == 0 ? top + 0.5 * height[i] : centre[i - 1] + 0.5 * (height[i] + height[i - 1]);
        centre[i] = fmax(centre[i], least);
    }
}
