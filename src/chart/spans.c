/* SPDX-License-Identifier: MIT */
/* Stretches of the x axis and level lines, each with its name where it lies on nothing else. */
#include "chart/sheet.h"

#include <math.h>

void gw_stretches_put(gw_sheet *s)
{
    static const char *const SHADES[] = { "#f3f3f3", "#e9eef2" };
    int nth = 0;
    for (int i = 0; i < s->figure->n; i++) {
        const gw_chart_mark *m = &s->figure->mark[i];
        double from = fmax(m->from, s->x.from), to = fmin(m->to, s->x.to);
        if (m->kind != GW_MARK_STRETCH || !(to > from)) continue;
        double x0 = gw_axis_at(&s->x, from), x1 = gw_axis_at(&s->x, to);
        gw_layout_box(s->out, (gw_box){ x0, s->top, x1, s->bottom }, SHADES[nth++ % 2], -1);
        gw_text_lines name = gw_text_break(m->name, x1 - x0 - 8, 2, GW_TYPE_NOTE, false);
        for (int k = 0; k < name.n; k++)
            gw_layout_text_at(s->out, 0.5 * (x0 + x1), s->top + 10 + 15 * k, name.line[k], GW_TYPE_NOTE,
                              GW_SOFT_INK, GW_TEXT_CENTRE);
    }
}

/* How many points of marks lie in a box. */
static int points_in(const gw_sheet *s, gw_box box)
{
    int n = 0;
    for (int k = 0; k < s->figure->n; k++) {
        const gw_chart_mark *m = &s->figure->mark[k];
        for (int i = 0; i < m->n && m->y; i++) {
            if (!gw_sheet_shows(s, m->x[i], m->y[i])) continue;
            gw_point p = gw_sheet_at(s, m->x[i], m->y[i]);
            n += p.x > box.x0 && p.x < box.x1 && p.y > box.y0 && p.y < box.y1;
        }
    }
    return n;
}

/* Along the line, above or below it, where it meets fewest points and no other text. */
static void put_level_name(gw_sheet *s, const char *name, double y)
{
    gw_text_lines line = gw_text_break(name, 0.5 * (s->right - s->left), 1, GW_TYPE_NOTE, false);
    double width = gw_text_room(line.line[0], GW_TYPE_NOTE, false);
    gw_point best = { 0 };
    int least = -1;
    for (int i = 0; i <= 10; i++)
        for (int below = 0; below <= 1; below++) {
            double x = s->left + 8 + 0.1 * i * fmax(s->right - s->left - width - 16, 0),
                   at = y + (below ? 10 : -9);
            int n = points_in(s, (gw_box){ x - 6, at - 12, x + width + 6, at + 12 });
            if (at - 8 < s->top || at + 8 > s->bottom || (least >= 0 && n >= least)) continue;
            if (gw_layout_taken(s->out, (gw_box){ x, at - 8, x + width, at + 8 }) > 0) continue;
            least = n;
            best = (gw_point){ x, at };
        }
    if (least >= 0)
        gw_layout_text_at(s->out, best.x, best.y, line.line[0], GW_TYPE_NOTE, GW_SOFT_INK, GW_TEXT_LEFT);
}

void gw_levels_put(gw_sheet *s)
{
    const gw_pen pen = { GW_SOFT_INK, 1.2, NULL };
    for (int i = 0; i < s->figure->n; i++) {
        const gw_chart_mark *m = &s->figure->mark[i];
        if (m->kind != GW_MARK_LEVEL || !gw_sheet_shows(s, s->x.from, m->from)) continue;
        double y = gw_axis_at(&s->y, m->from);
        gw_layout_line(s->out, (gw_point){ s->left, y }, (gw_point){ s->right, y }, pen);
        if (m->name) put_level_name(s, m->name, y);
    }
}
