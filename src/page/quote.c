/* SPDX-License-Identifier: MIT */
/* The quotation for the customer, a sheet a kit, and the workshop's sheets with room for handwriting. */
#include "page/sections.h"

#include "show/joint.h"

#include <math.h>

enum { MOST_LINES = 2 * GW_CORNER_JOINTS + 64 };

static void put_money(const gw_page *p, gw_slots *slots, const char *name, double sum)
{
    gw_slots_text(slots, name, isfinite(sum) ? gw_page_sum(p, sum) : "");
}

static void put_minutes(gw_slots *slots, const char *name, double minutes)
{
    gw_buf text = { 0 };
    if (isfinite(minutes)) gw_page_minutes(&text, minutes);
    gw_slots_take(slots, name, &text);
}

static void put_line(const gw_page *p, gw_slots *quote, const gw_quote_line *line)
{
    gw_slots *slots = gw_slots_element(quote, "lines");
    gw_axle axle = line->axle;
    int joint = line->joint;
    gw_slots_fmt(slots, "what", "%s%s", line->job ? line->job : gw_page_joint(p, axle, joint),
                 line->of_pair >= 0 ? gw_joint_side(&p->c->pairs[axle], line->of_pair) : "");
    gw_slots_text(slots, "part", line->job ? "" : gw_page_bush(p, &p->c->bushes[line->bush]));
    gw_slots_fmt(slots, "count", "%d", line->count);
    put_money(p, slots, "price", line->price);
    put_minutes(slots, "time", line->minutes);
}

/* Where nothing has a price or a time there is none to print. */
static void put_sums(const gw_page *p, gw_slots *slots, int kit, const gw_car_cost *cost)
{
    gw_cost_sum price = gw_cost_price(cost), time = gw_cost_time(cost), total = gw_cost_total(cost);
    double saved = gw_shared_minutes_saved(p->c, kit);
    put_money(p, slots, "parts", price.known ? price.value : (double)NAN);
    put_minutes(slots, "minutes", time.known ? time.value : (double)NAN);
    if (saved > 0.0) put_minutes(slots, "saved", saved);
    if (p->c->shop.has_labour && time.known) {
        put_money(p, slots, "labour", cost->labour);
        put_money(p, slots, "hour", p->c->shop.labour);
    }
    if (p->c->shop.has_tax && total.known) {
        put_money(p, slots, "tax", cost->tax);
        gw_slots_text(slots, "percent", gw_exact(100.0 * p->c->shop.tax).s);
    }
    put_money(p, slots, "total", total.known ? total.value : (double)NAN);
    if (total.more) gw_slots_text(slots, "lacks", "yes");
}

static void put_quote(const gw_page *p, gw_slots *slots, int kit)
{
    gw_quote_line line[MOST_LINES];
    gw_car_cost cost = gw_car_cost_of(p->c, kit);
    int n = gw_quote_lines(p->c, kit, line, MOST_LINES);
    if (!n) return;
    gw_slots *quote = gw_slots_element(slots, "quotes");
    gw_page_put_kit(p, quote, kit);
    for (int i = 0; i < n && i < MOST_LINES; i++) put_line(p, quote, &line[i]);
    put_sums(p, quote, kit, &cost);
}

/* ---- to be filled in by hand ---- */

static void put_angle(gw_slots *slots, const char *name, double angle)
{
    gw_buf text = { 0 };
    gw_page_angle(&text, angle, true);
    gw_slots_take(slots, name, &text);
}

/* What is wanted of an axle: the case's targets where it sets any, else what the car stands at. */
static void put_wheels(const gw_page *p, gw_slots *slots, gw_axle axle)
{
    const gw_align *align = &p->c->align[axle];
    const gw_wheel *wheel = &p->c->corners[axle].wheel;
    bool set = align->present;
    for (int side = 0; side < 2; side++) {
        gw_slots *row = gw_slots_element(slots, "wheels");
        gw_slots_text(row, "axle", gw_page_wheel_of(axle));
        gw_slots_text(row, "side", side ? "right" : "left");
        put_angle(row, "camber", set && align->has_camber ? align->camber : wheel->static_camber);
        put_angle(row, "toe", set && align->has_toe ? align->toe : wheel->static_toe);
    }
}

static void put_bolts(const gw_page *p, gw_slots *slots, gw_axle axle)
{
    const gw_corner *corner = &p->c->corners[axle];
    for (int j = 0; j < corner->n_joints; j++) {
        if (gw_joint_image(p->c, axle, j) < j || !gw_joint_is_bolted(p->c, axle, j)) continue;
        gw_slots *row = gw_slots_element(slots, "bolts");
        gw_slots_text(row, "name", gw_page_joint(p, axle, j));
        gw_slots_fmt(row, "count", "%d", gw_joint_count_both(p->c, axle, j));
    }
}

void gw_page_quotes(const gw_page *p, gw_slots *slots)
{
    for (int k = 0; k < p->c->n_kits; k++)
        if (gw_page_has_kit(p, k)) put_quote(p, slots, k);
    for (gw_axle a = GW_FRONT; a < GW_AXLES && p->wish->workshop; a++) {
        if (!gw_page_has_axle(p, a)) continue;
        put_wheels(p, slots, a);
        put_bolts(p, slots, a);
    }
}
