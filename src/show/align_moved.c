/* SPDX-License-Identifier: MIT */
/* What else moved, and whether the parts fit and hold. */
#include "show/align.h"

#include <string.h>

static void pair_row(gw_table *t, const char *name, double before, double after, int decimals)
{
    gw_table_cells(t, name, gw_signed(before, decimals).s, gw_signed(after, decimals).s,
                   gw_signed(after - before, decimals).s);
}

static void stance_table(const gw_align_page *p, const gw_align_item *item)
{
    const gw_stance *b = &item->before, *a = &item->after;
    gw_table t = { 0 };
    gw_table_heads(&t, "lrrr", "", "before", "as set", "change");
    pair_row(&t, "track, both wheels (mm)", 2.0 * b->patch.y / GW_MM, 2.0 * a->patch.y / GW_MM, 1);
    pair_row(&t, "wheel centre, forward (mm)", b->centre.x / GW_MM, a->centre.x / GW_MM, 1);
    pair_row(&t, "bump steer (deg of toe-in per m)", b->bump_steer / GW_DEG, a->bump_steer / GW_DEG, 2);
    pair_row(&t, "camber in bump (deg per m)", b->bump_camber / GW_DEG, a->bump_camber / GW_DEG, 2);
    gw_say_table(p->paper, "What else moves", &t);
}

static void load_table(const gw_align_page *p, const gw_align_item *item)
{
    gw_table t = { 0 };
    if (!item->n_loads) return;
    gw_table_heads(&t, "lrrrr", "load", "toe change\nbefore", "\nas set", "camber change\nbefore",
                   "\nas set");
    for (int i = 0; i < item->n_loads; i++) {
        const gw_align_load *l = &item->load[i];
        gw_table_cells(&t, p->c->loads[l->load].name, gw_signed(l->toe_before / GW_DEG, 3).s,
                       gw_signed(l->toe_after / GW_DEG, 3).s, gw_signed(l->camber_before / GW_DEG, 3).s,
                       gw_signed(l->camber_after / GW_DEG, 3).s);
    }
    gw_say_table(p->paper, "What the loads take, in degrees from the car standing still", &t);
}

void gw_align_moved(const gw_align_page *p, const gw_align_item *item)
{
    stance_table(p, item);
    load_table(p, item);
}

static void tilt_table(const gw_align_page *p, const gw_align_item *item)
{
    gw_table t = { 0 };
    if (!item->n_tilts) return;
    gw_table_heads(&t, "lrrrrl", "joint", "tilt before\ndeg", "as set\ndeg", "limit\ndeg", "margin\ndeg",
                   "verdict\n");
    for (int i = 0; i < item->n_tilts; i++) {
        const gw_align_tilt *k = &item->tilt[i];
        gw_table_cells(&t, p->c->corners[item->axle].joints[k->joint].name, gw_fixed(k->before / GW_DEG, 1).s,
                       gw_fixed(k->after / GW_DEG, 1).s, gw_fixed(k->limit / GW_DEG, 1).s,
                       gw_signed((k->limit - k->after) / GW_DEG, 1).s,
                       k->after <= k->limit  ? "free"
                       : k->after > k->limit ? "BINDS"
                                             : "not known");
    }
    gw_say_table(p->paper, "Tilt of joints, the largest from 60 mm rebound to 60 mm bump", &t);
}

/* The number under which the source of check `i` is listed: equal ones share it. */
static int source_number(const gw_align_item *item, int i)
{
    int number = 1;
    for (int k = 0; k < i; k++) {
        bool seen = strcmp(item->check[k].verdict.source, item->check[i].verdict.source) == 0;
        if (seen) return source_number(item, k);
        bool first = true;
        for (int m = 0; m < k; m++)
            first = first && strcmp(item->check[m].verdict.source, item->check[k].verdict.source) != 0;
        number += first;
    }
    return number;
}

static void list_sources(const gw_align_page *p, const gw_align_item *item)
{
    int listed = 0;
    for (int i = 0; i < item->n_checks; i++) {
        if (source_number(item, i) <= listed) continue;
        gw_paper_say(p->paper, 2, "(%d) %s", ++listed, item->check[i].verdict.source);
    }
}

static void check_table(const gw_align_page *p, const gw_align_item *item)
{
    gw_table t = { 0 };
    if (!item->n_checks) return;
    gw_table_heads(&t, "llrrl", "joint", "figure", "value", "limit", "verdict");
    for (int i = 0; i < item->n_checks; i++) {
        const gw_verdict *v = &item->check[i].verdict;
        gw_trade_figure f = gw_trade_figure_of(v);
        gw_table_cells(&t, p->c->corners[item->axle].joints[item->check[i].joint].name,
                       GW_JUDGED_WORDS[v->what]);
        gw_table_cellf(&t, "%s %s", gw_fixed(v->value / f.scale, f.decimals).s, f.unit);
        gw_table_cellf(&t, "%s %s %s (%d)", v->bound == GW_AT_MOST ? "at most" : "at least",
                       gw_fixed(v->limit / f.scale, f.decimals).s, f.unit, source_number(item, i));
        gw_table_cell(&t, v->holds ? "holds" : "FAILS");
    }
    gw_say_table(p->paper, "Will it fit and hold", &t);
    list_sources(p, item);
}

static void say_seats(const gw_align_page *p, const gw_align_item *item)
{
    for (int i = 0; i < item->n_seats; i++) {
        const gw_align_seat *s = &item->seat[i];
        gw_paper_say(
            p->paper, 2,
            "%s: interference %s to %s um, pressure %s to %s MPa, hoop stress at the greatest %s MPa "
            "in the housing and %s MPa in the sleeve, force to press in %s to %s kN.",
            p->c->corners[item->axle].joints[s->joint].name, gw_fixed(s->least * 1e3 / GW_MM, 0).s,
            gw_fixed(s->most * 1e3 / GW_MM, 0).s, gw_fixed(s->held.pressure / GW_MPA, 1).s,
            gw_fixed(s->worst.pressure / GW_MPA, 1).s, gw_signed(s->worst.housing_hoop / GW_MPA, 0).s,
            gw_signed(s->worst.sleeve_hoop / GW_MPA, 0).s, gw_fixed(s->held.force / GW_KN, 1).s,
            gw_fixed(s->worst.force / GW_KN, 1).s);
    }
}

void gw_align_verdicts(const gw_align_page *p, const gw_align_item *item)
{
    tilt_table(p, item);
    check_table(p, item);
    say_seats(p, item);
    if (item->n_checks) {
        gw_paper_say(
            p->paper, 2,
            "Peak loads of bearings are the largest under the loads of the case, times a shock factor "
            "of %s (2 where the case gives none: common practice).",
            gw_significant(item->shock_factor, 3).s);
    }
}
