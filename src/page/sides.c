/* SPDX-License-Identifier: MIT */
/* The outer and the inner wheel of each axle next to each other, in the corner that the charts look at. */
#include "page/sections.h"

#include "giveway/pick.h"
#include "show/handling.h"

static void put_row(const gw_page *p, gw_slots *table, int kit, const gw_both_wheels both)
{
    gw_slots *row = gw_slots_element(table, "rows");
    gw_slots_text(row, "label", gw_kit_said(p->c, kit));
    for (int i = 0; i < GW_WHEEL_FIGURES; i++) {
        gw_slots *cell = gw_slots_element(row, "cells");
        gw_slots_figure(cell, "outer", gw_wheel_figure(both[GW_OUTER], i), "");
        gw_slots_figure(cell, "inner", gw_wheel_figure(both[GW_INNER], i), "");
    }
}

static void put_axle(const gw_page *p, gw_slots *slots, gw_axle axle, int load)
{
    gw_slots *table = gw_slots_element(slots, "both_sides");
    gw_slots_fmt(table, "index", "%d", (int)axle);
    gw_slots_text(table, "axle", gw_page_wheel_of(axle));
    for (int k = 0; k < p->c->n_kits; k++) {
        gw_both_wheels both;
        if (gw_page_has_kit(p, k) && gw_both_wheels_find(&p->r->handling, k, axle, load, both))
            put_row(p, table, k, both);
    }
}

void gw_page_sides(const gw_page *p, gw_slots *slots)
{
    int load = gw_pick_load(p->c, &p->r->deflect, GW_PICK_CORNER);
    if (load < 0 || !p->r->handling.n_budgets) return;
    gw_slots_text(slots, "sides_in", p->c->loads[load].name);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        if (gw_page_has_axle(p, a)) put_axle(p, slots, a, load);
}
