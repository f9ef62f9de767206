/* SPDX-License-Identifier: MIT */
/* The kits in one table. */
#include "page/sections.h"

#include "giveway/cost.h"

/* A column of angles, front / rear: how far the wheels turn or lean under a load. */
typedef struct column {
    int load;
    bool camber;
} column;

enum { MAX_COLUMNS = 2 };

static int columns_of(const gw_page *p, column *out)
{
    int n = 0;
    if (p->brake_load >= 0) out[n++] = (column){ p->brake_load, false };
    if (p->corner_load >= 0) out[n++] = (column){ p->corner_load, true };
    if (!n) out[n++] = (column){ p->load, false };
    return n;
}

static void put_column(const gw_page *p, gw_slots *slots, const column *col)
{
    gw_slots *head = gw_slots_element(slots, "columns");
    gw_slots_flag(head, "leans", col->camber);
    gw_slots_text(head, "load", gw_page_load_said(p, col->load));
}

/* What a program that reads the page finds a figure by: kit, axle, load and the key of the result. */
static gw_slots *add_axle(gw_slots *cell, gw_axle axle, const char *key, bool *more)
{
    gw_slots *of = gw_slots_element(cell, "of_axles");
    gw_slots_flag(of, "more", *more);
    gw_slots_fmt(of, "axle", "%d", (int)axle);
    gw_slots_text(of, "key", key);
    *more = true;
    return of;
}

static void put_angles(const gw_page *p, gw_slots *row, const column *col, int kit)
{
    gw_slots *cell = gw_slots_element(row, "cells");
    bool more = false;
    gw_slots_fmt(cell, "load", "%d", col->load);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        const gw_deflection *item = gw_page_find(p, kit, a, col->load);
        if (!item) continue;
        double angle = col->camber ? item->camber_to_road : item->result.toe_change;
        gw_slots *of = add_axle(cell, a, col->camber ? "camber_to_road_deg" : "toe_change_deg", &more);
        gw_slots_text(of, "figure", gw_page_angle_said(p, angle, true));
    }
}

static void put_decibels(const gw_page *p, gw_slots *row, int kit, bool noise)
{
    gw_slots *cell = gw_slots_element(row, "cells");
    bool more = false;
    gw_slots_flag(cell, "decibels", true);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        const gw_ride_item *item = gw_ride_find(&p->r->ride, kit, a);
        if (!item) continue;
        gw_slots *of = add_axle(cell, a, noise ? "road_noise_dB" : "harshness_dB", &more);
        gw_slots_figure(of, "figure",
                        gw_signed(noise ? item->difference.noise : item->difference.harshness, 1), "");
    }
}

/* A kit that changes nothing costs nothing; what has no figure at all costs nobody knows what, and of the
 * case's first kit, all new, that is so where none of its bushes has one. */
static const char *cost_said(const gw_car_cost *cost, int kit, bool known, const char *sum)
{
    if (!cost->parts) return kit ? GW_TOLD(PAGE_NOTHING) : GW_TOLD(PAGE_UNKNOWN);
    return known ? sum : GW_TOLD(PAGE_UNKNOWN);
}

static void put_costs(const gw_page *p, gw_slots *row, int kit)
{
    gw_car_cost cost = gw_car_cost_of(p->c, kit);
    gw_cost_sum price = gw_cost_price(&cost), time = gw_cost_time(&cost), total = gw_cost_total(&cost);
    gw_buf minutes = { 0 };
    gw_page_minutes(&minutes, time.value);
    if (time.more) gw_buf_add(&minutes, "+");
    GW_SLOTS(row,
             { "parts", cost_said(&cost, kit, price.known, gw_page_money_said(p, price.value, price.more)) },
             { "fitting", cost_said(&cost, kit, time.known, gw_page_kept(p, &minutes)) },
             { "total", cost_said(&cost, kit, total.known, gw_page_money_said(p, total.value, total.more)) });
}

static void put_row(const gw_page *p, gw_slots *slots, const column *col, int n, int kit)
{
    gw_slots *row = gw_slots_element(slots, "glances");
    gw_page_put_kit(p, row, kit);
    for (int i = 0; i < n; i++) put_angles(p, row, &col[i], kit);
    for (int noise = 0; noise < 2 && p->r->ride.n; noise++) put_decibels(p, row, kit, noise);
    put_costs(p, row, kit);
}

/* A sum that some parts are missing from carries a plus sign, and this says so. */
static bool any_incomplete(const gw_page *p)
{
    for (int k = 0; k < p->c->n_kits; k++) {
        gw_car_cost cost = gw_car_cost_of(p->c, k);
        bool more = gw_cost_price(&cost).more || gw_cost_time(&cost).more || gw_cost_total(&cost).more;
        if (gw_page_has_kit(p, k) && more) return true;
    }
    return false;
}

void gw_page_glance(const gw_page *p, gw_slots *slots)
{
    column col[MAX_COLUMNS] = { 0 };
    int n = columns_of(p, col);
    for (int i = 0; i < n; i++) put_column(p, slots, &col[i]);
    for (int k = 0; k < p->c->n_kits; k++)
        if (gw_page_has_kit(p, k)) put_row(p, slots, col, n, k);
    gw_slots_text(slots, "kit_of_case", gw_kit_said(p->c, 0));
    gw_slots_flag(slots, "taxed", p->c->shop.has_tax);
    gw_slots_flag(slots, "totalled", p->c->shop.has_labour || p->c->shop.has_tax);
    gw_slots_flag(slots, "incomplete", any_incomplete(p));
}
