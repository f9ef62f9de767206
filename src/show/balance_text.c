/* SPDX-License-Identifier: MIT */
/* The understeer budget, how far it holds, and what it makes of speed and of a step of steer. */
#include "show/handling.h"

#include "format/number.h"
#include "giveway/units.h"
#include "record/paper.h"
#include "show/phrase.h"

#include <math.h>

enum { FRONT, REAR, BOTH };

static double entry_of(const gw_budget *b, int which, int entry)
{
    double front = b->entry[GW_FRONT][entry], rear = b->entry[GW_REAR][entry];
    return which == FRONT ? front : which == REAR ? rear : front - rear;
}

static double sum_of(const gw_budget *b, int which)
{
    return which == BOTH ? b->understeer : b->axle[which];
}

static bool curved(const gw_handling_study *h)
{
    for (int i = 0; i < h->n_balance; i++)
        for (int a = 0; a < GW_AXLES; a++)
            if (h->balance[i].quoted.entry[a][GW_BUDGET_CURVE] != 0.0) return true;
    return false;
}

static void kit_heads(const gw_handling_page *p, gw_table *t)
{
    const gw_handling_study *h = p->cmp->handling;
    for (int i = 0; i < h->n_balance; i++)
        gw_table_column(t, GW_RIGHT, p->cmp->c->kits[h->balance[i].kit].name);
}

static void entries_table(const gw_handling_page *p, int which)
{
    static const char *const HEADS[] = { "Understeer budget, front axle: slip and steer it asks for, deg/g",
                                         "Understeer budget, rear axle, deg/g",
                                         "Understeer budget, front less rear, deg/g: plus is understeer" };
    const gw_handling_study *h = p->cmp->handling;
    gw_table t = { 0 };
    gw_paper_heading(p->paper, "%s", HEADS[which]);
    gw_table_column(&t, GW_LEFT, "from");
    kit_heads(p, &t);
    for (int e = 0; e < GW_BUDGET_ENTRIES; e++) {
        if (e == GW_BUDGET_CURVE && !curved(h)) continue;
        gw_table_cell(&t, gw_budget_words((gw_budget_entry)e));
        for (int i = 0; i < h->n_balance; i++)
            gw_table_cell(&t, gw_signed(entry_of(&h->balance[i].quoted, which, e) / GW_DEG, 3).s);
    }
    gw_table_cell(&t, "together");
    for (int i = 0; i < h->n_balance; i++)
        gw_table_cell(&t, gw_signed(sum_of(&h->balance[i].quoted, which) / GW_DEG, 3).s);
    gw_paper_table(p->paper, &t, 2);
}

static const char *const ENDS[] = {
    [GW_END_RANGE] = "1 g", [GW_END_TYRE] = "tyre", [GW_END_BEND] = "bends", [GW_END_LIFT] = "grip"
};

static int furthest(const gw_handling_study *h)
{
    int n = 0;
    for (int i = 0; i < h->n_balance; i++)
        for (int j = 0; j < h->balance[i].n; j++)
            if (h->balance[i].g[j] < h->balance[i].linear_to + 1e-9 && j + 1 > n) n = j + 1;
    return n;
}

/* The gradient from standing straight to each g, as far as the linear sense goes. */
static void against_g(const gw_handling_page *p)
{
    const gw_handling_study *h = p->cmp->handling;
    int n = furthest(h);
    gw_table t = { 0 };
    gw_paper_heading(p->paper, "Understeer against lateral g, deg/g, up to where the linear sense ends");
    gw_table_column(&t, GW_LEFT, "kit");
    for (int j = 0; j < n; j++) {
        gw_buf head = { 0 };
        gw_buf_fmt(&head, "%s g", gw_fixed(0.1 * (j + 1), 1).s);
        gw_table_column_of(&t, GW_RIGHT, &head);
    }
    gw_table_heads(&t, "rl", "ends at", "by");
    for (int i = 0; i < h->n_balance; i++) {
        const gw_balance_item *b = &h->balance[i];
        gw_table_cell(&t, p->cmp->c->kits[b->kit].name);
        for (int j = 0; j < n; j++) {
            bool inside = j < b->n && b->g[j] < b->linear_to + 1e-9;
            gw_table_cell(&t, gw_signed(inside ? b->budget[j].understeer / GW_DEG : (double)NAN, 3).s);
        }
        gw_table_cellf(&t, "%s g", gw_fixed(b->linear_to, 1).s);
        gw_table_cell(&t, ENDS[b->end]);
    }
    gw_paper_table(p->paper, &t, 2);
    gw_paper_say(
        p->paper, 2,
        "It ends by the tyre: coefficients stand for one up to 0.4 g or so (Bundorf and Leffert, SAE "
        "760713; common practice); where it bends: the compliance of an axle is a tenth off its value "
        "at 0.2 g; by grip: a wheel lifts or the tyres carry no more.");
}

static void put_speed(gw_table *t, const gw_bicycle_figures *f)
{
    if (isfinite(f->critical_speed))
        gw_table_cellf(t, "critical %s", gw_fixed(f->critical_speed / GW_KM_H, 0).s);
    else if (isfinite(f->characteristic_speed))
        gw_table_cellf(t, "characteristic %s", gw_fixed(f->characteristic_speed / GW_KM_H, 0).s);
    else
        gw_table_cell(t, "neutral");
}

static void put_car(gw_table *t, const gw_balance_item *b)
{
    const gw_bicycle_figures *f = &b->car;
    if (!b->has_car) return;
    put_speed(t, f);
    gw_table_cells(t, f->stable ? gw_fixed(f->natural / (2.0 * GW_PI), 2).s : "unstable",
                   gw_fixed(f->damping, 2).s, gw_fixed(f->yaw_gain, 2).s, gw_fixed(f->yaw_time, 3).s,
                   gw_fixed(100.0 * f->yaw_overshoot, 0).s, gw_fixed(f->slip_time, 3).s);
}

static void car_table(const gw_handling_page *p)
{
    const gw_handling_study *h = p->cmp->handling;
    gw_table t = { 0 };
    gw_paper_heading(p->paper, "The car on one track at %s km/h", gw_fixed(h->speed / GW_KM_H, 0).s);
    gw_table_heads(&t, "lrrrrrrr", "kit", "speed\nkm/h", "natural\nHz", "damping\nratio", "yaw gain\n1/s",
                   "yaw to\n90 %, s", "over-\nshoot %", "side slip\nto 90 %, s");
    for (int i = 0; i < h->n_balance; i++) {
        gw_table_cell(&t, p->cmp->c->kits[h->balance[i].kit].name);
        put_car(&t, &h->balance[i]);
        gw_table_end_row(&t);
    }
    gw_paper_table(p->paper, &t, 2);
}

static void car_notes(const gw_handling_page *p)
{
    const gw_handling_study *h = p->cmp->handling;
    gw_buf text = { 0 };
    gw_buf_fmt(
        &text,
        "Natural frequency and damping of yaw and side slip together, after a step of steer. Yaw inertia "
        "%s kg m2, %s. Left out: the tyres' relaxation and the time the body takes to roll.",
        gw_fixed(h->yaw_inertia, 0).s,
        h->yaw_inertia_given ? "as given" : "mass x front arm x rear arm (common practice)");
    gw_paper_say_of(p->paper, 2, &text);
    for (int i = 0; i < h->n_balance; i++) {
        const gw_balance_item *b = &h->balance[i];
        gw_buf line = { 0 };
        if (!b->has_car || b->outside_table) gw_buf_clean(&line, gw_kit_said(p->cmp->c, b->kit));
        if (!b->has_car) gw_buf_fmt(&line, ": %s.", b->no_car);
        if (b->outside_table)
            gw_buf_add(&line, ": a wheel's load or camber is beyond the tyre table, held at its edge.");
        gw_paper_say_of(p->paper, 2, &line);
    }
}

/* Road cars: 0.5 to 1.6 deg per kN m by two measured sets of figures. */
static void rack_note(const gw_handling_page *p)
{
    gw_paper_say(
        p->paper, 2,
        "Aligning-torque steer in front is that of the bushes with the rack held: 0.5 to 1.6 deg per kN m "
        "on road cars (a production car and a large passenger vehicle, published coefficients). Column "
        "and steering wheel give too, several times as much, and are not in it.");
}

void gw_balance_text(const gw_handling_page *p)
{
    if (!p->cmp->handling->n_balance) return;
    for (int which = FRONT; which <= BOTH; which++) entries_table(p, which);
    rack_note(p);
    against_g(p);
    car_table(p);
    car_notes(p);
}
