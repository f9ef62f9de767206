/* SPDX-License-Identifier: MIT */
/*
 * What the kits do to the car, as further fields of each row of the comparison: those of the row's load,
 * those of its corner, and those of its kit, which stand in every row of that kit.
 */
#include "show/handling.h"

#include "format/number.h"
#include "giveway/cost.h"
#include "giveway/units.h"
#include "show/deflect.h"

#include <math.h>
#include <stdio.h>

/* One walk over the fields serves the line of heads and every row, so that they cannot drift apart. */
typedef struct gw_walk {
    gw_csv *csv;
    bool heads;
    const gw_comparison *cmp;
    int kit, load;
    gw_axle axle;
} gw_walk;

static void put(const gw_walk *w, const char *head, double value)
{
    if (w->heads)
        gw_csv_string(w->csv, head);
    else
        gw_csv_number(w->csv, value);
}

static void put_named(const gw_walk *w, const char *first, const char *second, double value)
{
    char head[96];
    snprintf(head, sizeof head, "%s_%s", first, second);
    put(w, head, value);
}

static void put_parts(const gw_walk *w, const char *side, const char *angle, const gw_corner_budget *b,
                      const gw_angle_parts *a)
{
    static const char *const NAMES[] = { "static_deg",  "roll_deg",   "tyre_deg", "travel_deg",
                                         "jacking_deg", "bushes_deg", "total_deg" };
    const double none = (double)NAN;
    bool road = b && b->on_road;
    const double v[] = { b ? a->setting : none, b ? a->roll : none,       road ? a->tyre : none,
                         b ? a->travel : none,  road ? a->jacking : none, b ? a->compliance : none,
                         b ? a->total : none };
    char first[48];
    snprintf(first, sizeof first, "%s_%s", side, angle);
    for (size_t i = 0; i < sizeof v / sizeof *v; i++) put_named(w, first, NAMES[i], v[i] / GW_DEG);
}

static void put_budgets(const gw_walk *w)
{
    const double none = (double)NAN;
    for (gw_side s = GW_OUTER; s <= GW_INNER; s++) {
        const char *side = gw_side_name(s);
        const gw_corner_budget *b =
            w->heads ? NULL : gw_corner_budget_find(w->cmp->handling, w->kit, w->axle, w->load, s);
        put_named(w, side, "travel_mm", b ? b->travel / GW_MM : none);
        put_named(w, side, "vertical_load_N", b ? b->vertical : none);
        put_named(w, side, "side_force_N", b ? b->lateral : none);
        put_parts(w, side, "camber", b, b ? &b->camber : NULL);
        put_parts(w, side, "toe", b, b ? &b->toe : NULL);
    }
}

static const gw_traction_item *traction_of(const gw_walk *w, bool straight, gw_side side)
{
    const gw_handling_study *h = w->cmp->handling;
    for (int i = 0; i < h->n_traction && !w->heads; i++) {
        const gw_traction_item *t = &h->traction[i];
        if (t->kit == w->kit && t->axle == w->axle && t->load == w->load && t->straight == straight &&
            t->side == side)
            return t;
    }
    return NULL;
}

static void put_traction(const gw_walk *w)
{
    static const char *const NAMES[] = { "driven_outer", "driven_inner", "driven_straight" };
    for (int i = 0; i < 3; i++) {
        const gw_traction_item *t = traction_of(w, i == 2, i == 1 ? GW_INNER : GW_OUTER);
        const double none = (double)NAN;
        bool force = t && t->has_force;
        put_named(w, NAMES[i], "toe_deg", t ? t->toe / GW_DEG : none);
        put_named(w, NAMES[i], "toe_change_deg", t ? t->toe_change / GW_DEG : none);
        put_named(w, NAMES[i], "camber_to_road_deg", t ? t->camber_to_road / GW_DEG : none);
        put_named(w, NAMES[i], "camber_change_deg", t ? t->camber_change / GW_DEG : none);
        put_named(w, NAMES[i], "toe_force_N", force ? t->toe_force : none);
        put_named(w, NAMES[i], "camber_force_N", force ? t->camber_force : none);
    }
}

static void put_band(const gw_walk *w)
{
    const gw_handling_study *h = w->cmp->handling;
    const double none = (double)NAN;
    gw_band_item b = { .to = none, .toe_low = none, .toe_high = none, .camber_low = none };
    b.camber_high = b.road_low = b.road_high = none;
    for (int i = 0; i < h->n_bands && !w->heads; i++)
        if (h->band[i].kit == w->kit && h->band[i].axle == w->axle) b = h->band[i];
    put(w, "band_to_g", b.to);
    put(w, "band_toe_low_deg", b.toe_low / GW_DEG);
    put(w, "band_toe_high_deg", b.toe_high / GW_DEG);
    put(w, "band_camber_low_deg", b.camber_low / GW_DEG);
    put(w, "band_camber_high_deg", b.camber_high / GW_DEG);
    put(w, "band_camber_to_road_low_deg", b.road_low / GW_DEG);
    put(w, "band_camber_to_road_high_deg", b.road_high / GW_DEG);
}

static void put_push(const gw_walk *w, const char *name, const gw_disturbance *d, const gw_drift *drift)
{
    const double none = (double)NAN;
    put_named(w, name, "front_steer_deg", d ? d->steer[GW_FRONT] / GW_DEG : none);
    put_named(w, name, "rear_steer_deg", d ? d->steer[GW_REAR] / GW_DEG : none);
    put_named(w, name, "yaw_rate_deg_per_s", d ? drift->yaw_rate / GW_DEG : none);
    put_named(w, name, "sideways_m", d ? drift->offset : none);
}

static void put_braking(const gw_walk *w)
{
    const double none = (double)NAN;
    const gw_braking_item *b = w->heads ? NULL : gw_braking_find(w->cmp->handling, w->kit);
    const gw_braking_corner *c = b && b->corner[w->axle].there ? &b->corner[w->axle] : NULL;
    bool drifts = b && b->has_drift;
    put(w, "brake_toe_deg_per_g", c ? c->toe_per_g / GW_DEG : none);
    put(w, "brake_fore_aft_mm_per_g", c ? c->fore_aft_per_g / GW_MM : none);
    put(w, "brake_fore_aft_mm_per_kN", c ? c->fore_aft_per_N * GW_KN / GW_MM : none);
    put_push(w, "stop", drifts ? &b->imbalance : NULL, drifts ? &b->stop : NULL);
    put_push(w, "bump", drifts ? &b->bump : NULL, drifts ? &b->after_bump : NULL);
}

static void put_entries(const gw_walk *w, const gw_balance_item *b)
{
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        for (int e = 0; e < GW_BUDGET_ENTRIES; e++) {
            char head[64];
            snprintf(head, sizeof head, "%s_deg_per_g", gw_budget_key((gw_budget_entry)e));
            put_named(w, gw_axle_name(a), head, b ? b->quoted.entry[a][e] / GW_DEG : (double)NAN);
        }
}

static void put_balance(const gw_walk *w)
{
    const double none = (double)NAN;
    const gw_balance_item *b = w->heads ? NULL : gw_balance_find(w->cmp->handling, w->kit);
    const gw_bicycle_figures *f = b && b->has_car ? &b->car : NULL;
    put(w, "understeer_deg_per_g", b ? b->quoted.understeer / GW_DEG : none);
    put_entries(w, b);
    for (int i = 0; i < GW_BALANCE_POINTS; i++)
        put_named(w, "understeer_deg_per_g_at", gw_fixed(0.1 * (i + 1), 1).s,
                  b && i < b->n ? b->budget[i].understeer / GW_DEG : none);
    put(w, "linear_to_g", b ? b->linear_to : none);
    put(w, "characteristic_speed_km_h", f ? f->characteristic_speed / GW_KM_H : none);
    put(w, "critical_speed_km_h", f ? f->critical_speed / GW_KM_H : none);
    put(w, "yaw_natural_Hz", f ? f->natural / (2.0 * GW_PI) : none);
    put(w, "yaw_damping_ratio", f ? f->damping : none);
    put(w, "yaw_gain_per_s", f ? f->yaw_gain : none);
    put(w, "yaw_response_s", f ? f->yaw_time : none);
    put(w, "yaw_overshoot", f ? f->yaw_overshoot : none);
    put(w, "side_slip_response_s", f ? f->slip_time : none);
}

static void put_ride_and_cost(const gw_walk *w)
{
    const double none = (double)NAN;
    const gw_ride_item *r = w->heads ? NULL : gw_ride_find(w->cmp->ride, w->kit, w->axle);
    gw_car_cost cost = { 0 };
    if (!w->heads) cost = gw_car_cost_of(w->cmp->c, w->kit);
    put(w, "comfort_ms2", r ? r->result.comfort : none);
    put(w, "harshness_N", r ? r->result.harshness[0] : none);
    put(w, "harshness_dB", r ? r->difference.harshness : none);
    put(w, "harshness_low_dB", r ? r->difference.harshness_low : none);
    put(w, "harshness_high_dB", r ? r->difference.harshness_high : none);
    put(w, "road_noise_N", r ? r->result.noise[0] : none);
    put(w, "road_noise_dB", r ? r->difference.noise : none);
    put(w, "road_noise_low_dB", r ? r->difference.noise_low : none);
    put(w, "road_noise_high_dB", r ? r->difference.noise_high : none);
    put(w, "friction_N", r ? r->result.friction : none);
    put(w, "wheel_fore_aft_Hz", r ? r->result.modes[r->result.wheel_fore_aft].hz : none);
    put(w, "price", cost.price);
    put(w, "fit_minutes", cost.minutes);
    put(w, "labour", w->heads ? none : cost.labour);
    put(w, "total", cost.total);
    put(w, "parts", cost.parts);
    put(w, "parts_without_price", cost.unpriced);
    put(w, "parts_without_time", cost.untimed);
    put(w, "shared_minutes_saved", w->heads ? none : gw_shared_minutes_saved(w->cmp->c, w->kit));
}

void gw_handling_csv(const gw_comparison *cmp, const gw_deflection *item, gw_csv *csv)
{
    gw_walk w = { .csv = csv, .heads = !item, .cmp = cmp };
    if (item) {
        w.kit = item->kit;
        w.load = item->load;
        w.axle = item->axle;
    }
    put_budgets(&w);
    put_traction(&w);
    put_band(&w);
    put_braking(&w);
    put_balance(&w);
    put_ride_and_cost(&w);
}
