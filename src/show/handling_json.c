/* SPDX-License-Identifier: MIT */
/* What the kits do to the car, for programs: everything, kit by kit. */
#include "show/handling.h"

#include "giveway/cost.h"
#include "giveway/reversal.h"
#include "giveway/stand.h"
#include "giveway/units.h"
#include "show/deflect.h"
#include "show/shared_work.h"

static void put_deg(gw_json *json, const char *key, double angle)
{
    gw_json_number(json, key, angle / GW_DEG);
}

static void put_axles(gw_json *json, const char *key, const double v[GW_AXLES], double unit)
{
    gw_json_object_on_line(json, key);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) gw_json_number(json, gw_axle_name(a), v[a] / unit);
    gw_json_close(json);
}

static void put_parts(gw_json *json, const char *key, const gw_angle_parts *a)
{
    gw_json_object_on_line(json, key);
    put_deg(json, "static_deg", a->setting);
    put_deg(json, "roll_deg", a->roll);
    put_deg(json, "travel_deg", a->travel);
    put_deg(json, "bushes_deg", a->compliance);
    put_deg(json, "total_deg", a->total);
    gw_json_close(json);
}

static void put_budgets(gw_json *json, const gw_comparison *cmp, int kit)
{
    const gw_handling_study *h = cmp->handling;
    gw_json_array(json, "budgets");
    for (int i = 0; i < h->n_budgets; i++) {
        const gw_corner_budget *b = &h->budget[i];
        if (b->kit != kit) continue;
        gw_json_object(json, NULL);
        gw_json_string(json, "corner", gw_axle_name(b->axle));
        gw_json_string(json, "load", cmp->c->loads[b->load].name);
        gw_json_string(json, "wheel", gw_side_name(b->side));
        gw_json_number(json, "travel_mm", b->travel / GW_MM);
        gw_json_number(json, "vertical_load_N", b->vertical);
        put_parts(json, "camber", &b->camber);
        put_parts(json, "toe", &b->toe);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_entries(gw_json *json, const char *key, const gw_budget *b, gw_axle axle)
{
    gw_json_object_on_line(json, key);
    for (int e = 0; e < GW_BUDGET_ENTRIES; e++)
        put_deg(json, gw_budget_key((gw_budget_entry)e), b->entry[axle][e]);
    put_deg(json, "sum", gw_budget_axle(b, axle));
    gw_json_close(json);
}

static const char *end_key(gw_linear_end end)
{
    static const char *const KEYS[] = {
        [GW_END_RANGE] = "range", [GW_END_TYRE] = "tyre", [GW_END_BEND] = "bend", [GW_END_LIFT] = "grip"
    };
    return KEYS[end];
}

static void put_car(gw_json *json, const gw_bicycle_figures *f)
{
    gw_json_object(json, "car");
    gw_json_number(json, "characteristic_speed_km_h", f->characteristic_speed / GW_KM_H);
    gw_json_number(json, "critical_speed_km_h", f->critical_speed / GW_KM_H);
    gw_json_number(json, "speed_km_h", f->speed / GW_KM_H);
    gw_json_bool(json, "stable", f->stable);
    gw_json_number(json, "natural_Hz", f->natural / (2.0 * GW_PI));
    gw_json_number(json, "damping_ratio", f->damping);
    gw_json_number(json, "yaw_gain_per_s", f->yaw_gain);
    gw_json_number(json, "yaw_response_s", f->yaw_time);
    gw_json_number(json, "yaw_overshoot", f->yaw_overshoot);
    gw_json_number(json, "side_slip_gain", f->slip_gain);
    gw_json_number(json, "side_slip_response_s", f->slip_time);
    gw_json_close(json);
}

static void put_balance(gw_json *json, const gw_balance_item *b)
{
    if (!b) {
        gw_json_null(json, "balance");
        return;
    }
    gw_json_object(json, "balance");
    gw_json_number(json, "lateral_g", GW_BALANCE_G);
    put_deg(json, "understeer_deg_per_g", gw_budget_understeer(&b->quoted));
    put_entries(json, "front_deg_per_g", &b->quoted, GW_FRONT);
    put_entries(json, "rear_deg_per_g", &b->quoted, GW_REAR);
    gw_json_array(json, "against_g");
    for (int i = 0; i < b->n; i++) {
        gw_json_object_on_line(json, NULL);
        gw_json_number(json, "lateral_g", b->g[i]);
        put_deg(json, "front_deg_per_g", gw_budget_axle(&b->budget[i], GW_FRONT));
        put_deg(json, "rear_deg_per_g", gw_budget_axle(&b->budget[i], GW_REAR));
        put_deg(json, "understeer_deg_per_g", gw_budget_understeer(&b->budget[i]));
        gw_json_close(json);
    }
    gw_json_close(json);
    gw_json_number(json, "linear_to_g", b->linear_to);
    gw_json_string(json, "linear_ends_by", end_key(b->end));
    gw_json_bool(json, "beyond_tyre_table", b->outside_table);
    if (b->has_car) put_car(json, &b->car);
    gw_json_string(json, "no_car", b->no_car);
    gw_json_close(json);
}

static void put_push(gw_json *json, const char *key, const gw_disturbance *d, const gw_drift *drift)
{
    gw_json_object_on_line(json, key);
    put_deg(json, "front_steer_deg", d->steer[GW_FRONT]);
    put_deg(json, "rear_steer_deg", d->steer[GW_REAR]);
    gw_json_number(json, "yaw_moment_Nm", d->yaw_moment);
    put_deg(json, "yaw_rate_deg_per_s", drift->yaw_rate);
    put_deg(json, "heading_deg", drift->heading);
    gw_json_number(json, "off_line_m", drift->offset);
    gw_json_number(json, "distance_m", drift->distance);
    gw_json_number(json, "seconds", drift->seconds);
    gw_json_close(json);
}

static void put_braking(gw_json *json, const gw_comparison *cmp, const gw_braking_item *b)
{
    if (!b) {
        gw_json_null(json, "braking");
        return;
    }
    gw_json_object(json, "braking");
    gw_json_array(json, "corners");
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        const gw_braking_corner *c = &b->corner[a];
        const gw_ride_item *ride = gw_ride_find(cmp->ride, b->kit, a);
        if (!c->there) continue;
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "corner", gw_axle_name(a));
        put_deg(json, "toe_change_deg_per_g", c->toe_per_g);
        gw_json_number(json, "fore_aft_mm_per_g", c->fore_aft_per_g / GW_MM);
        gw_json_number(json, "fore_aft_mm_per_kN", c->fore_aft_per_N * GW_KN / GW_MM);
        if (ride) gw_json_number(json, "fore_aft_Hz", ride->result.modes[ride->result.wheel_fore_aft].hz);
        gw_json_close(json);
    }
    gw_json_close(json);
    if (b->has_drift) {
        put_push(json, "brake_imbalance", &b->imbalance, &b->stop);
        put_push(json, "one_sided_bump", &b->bump, &b->after_bump);
    }
    gw_json_close(json);
}

static void put_traction(gw_json *json, const gw_comparison *cmp, int kit)
{
    const gw_handling_study *h = cmp->handling;
    gw_json_array(json, "traction");
    for (int i = 0; i < h->n_traction; i++) {
        const gw_traction_item *t = &h->traction[i];
        if (t->kit != kit) continue;
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "corner", gw_axle_name(t->axle));
        gw_json_string(json, "load", cmp->c->loads[t->load].name);
        gw_json_string(json, "wheel", t->straight ? "straight" : gw_side_name(t->side));
        put_deg(json, "toe_deg", t->toe);
        put_deg(json, "toe_change_deg", t->toe_change);
        put_deg(json, "camber_to_road_deg", t->camber_to_road);
        put_deg(json, "camber_change_deg", t->camber_change);
        if (t->has_force) {
            gw_json_number(json, "toe_force_N", t->toe_force);
            gw_json_number(json, "camber_force_N", t->camber_force);
        }
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_range(gw_json *json, const char *key, double low, double high)
{
    const double range[2] = { low / GW_DEG, high / GW_DEG };
    gw_json_numbers(json, key, range, 2);
}

static void put_bands(gw_json *json, const gw_comparison *cmp, int kit)
{
    const gw_handling_study *h = cmp->handling;
    gw_json_array(json, "consistency");
    for (int i = 0; i < h->n_bands; i++) {
        const gw_band_item *b = &h->band[i];
        if (b->kit != kit) continue;
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "corner", gw_axle_name(b->axle));
        gw_json_number(json, "from_g", GW_BAND_FROM);
        gw_json_number(json, "to_g", b->to);
        put_range(json, "toe_deg", b->toe_low, b->toe_high);
        put_range(json, "camber_deg", b->camber_low, b->camber_high);
        put_range(json, "camber_to_road_deg", b->road_low, b->road_high);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static bool is_wanted(const gw_comparison *cmp, int kit)
{
    for (int i = 0; i < cmp->deflect->n; i++)
        if (cmp->deflect->item[i].kit == kit) return true;
    return false;
}

static void put_sums(gw_json *json, const gw_case *c, const gw_car_cost *cost)
{
    gw_json_number(json, "price", cost->price);
    gw_json_number(json, "fit_minutes", cost->minutes);
    gw_json_number(json, "labour", cost->labour);
    gw_json_number(json, "tax", c->shop.has_tax ? cost->tax : (double)NAN);
    gw_json_number(json, "total", cost->total);
}

/* Where toe or camber change to the other side: the direction is told before the size. */
static void put_reversals(gw_json *json, const gw_comparison *cmp, int kit)
{
    gw_reversal list[64];
    const int most = (int)(sizeof list / sizeof *list);
    int n = gw_reversals_find(cmp->c, cmp->deflect, cmp->baseline, kit, list, most);
    gw_json_array(json, "changes_of_direction");
    for (int i = 0; i < n && i < most; i++) {
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "corner", gw_axle_name(list[i].axle));
        gw_json_string(json, "load", cmp->c->loads[list[i].load].name);
        gw_json_string(json, "angle", list[i].camber ? "camber" : "toe");
        gw_json_number(json, "from_deg", list[i].from / GW_DEG);
        gw_json_number(json, "to_deg", list[i].to / GW_DEG);
        gw_json_bool(json, "toe_out_gained_at_the_rear", list[i].warns);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_nearest(gw_json *json, const gw_comparison *cmp, const gw_overload *o)
{
    if (!o) {
        gw_json_string(json, "nearest", NULL);
        return;
    }
    const gw_joint *joint = &cmp->c->corners[o->axle].joints[o->joint];
    gw_json_object_on_line(json, "nearest");
    gw_json_string(json, "corner", gw_axle_name(o->axle));
    gw_json_string(json, "joint", joint->name);
    gw_json_string(json, "label", joint->label);
    gw_json_string(json, "load", cmp->c->loads[o->load].name);
    gw_json_string(json, "what", GW_JUDGED_WORDS[o->verdict.what]);
    gw_json_number(json, "part_of_limit", gw_overload_ratio(o));
    gw_json_close(json);
}

static void put_stand(gw_json *json, const gw_comparison *cmp, int kit)
{
    gw_stand stand = gw_stand_of(cmp->c, cmp->deflect, cmp->peaks, kit);
    gw_json_object(json, "limits");
    gw_json_string(json, "state", gw_stand_word(stand.state));
    put_nearest(json, cmp, stand.nearest);
    gw_json_int(json, "joints", stand.joints);
    gw_json_int(json, "judged", stand.judged);
    gw_json_int(json, "not_judged_by_rates", stand.by_rates);
    gw_json_int(json, "not_judged_ball_joints", stand.ball_joints);
    gw_json_close(json);
}

/* Work that is done once for several joints of the kit. */
static void put_jobs(gw_json *json, const gw_case *c, const gw_kit *kit)
{
    gw_json_array(json, "jobs");
    for (int i = 0; i < c->n_jobs; i++) {
        const gw_shop_job *job = &c->jobs[i];
        const gw_shared_job shared = gw_shared_job_of(c, job, kit);
        if (!shared.joints) continue;
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "label", job->label);
        gw_json_array(json, "joints");
        for (int j = 0; j < job->n_joints; j++) {
            const gw_shop_joint *at = &job->joints[j];
            gw_buf name = { 0 };
            if (!gw_job_joint_changes(c, kit, at)) continue;
            gw_shared_joint_name(c, at, &name);
            gw_json_string(json, NULL, gw_buf_str(&name));
            if (name.failed) json->out->failed = true;
            gw_buf_free(&name);
        }
        gw_json_close(json);
        gw_json_number(json, "fit_minutes", job->minutes);
        gw_json_number(json, "price", job->price);
        gw_json_number(json, "saved_minutes", shared.saved);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_summary(gw_json *json, const gw_comparison *cmp, int kit)
{
    gw_summary s = gw_summary_of(cmp, kit);
    gw_car_cost cost = gw_car_cost_of(cmp->c, kit), renewed = gw_car_cost_renewed(cmp->c, kit);
    int load = gw_summary_load(cmp);
    gw_json_object(json, NULL);
    gw_json_string(json, "kit", cmp->c->kits[kit].name);
    gw_json_string(json, "corner", gw_axle_name(gw_summary_axle(cmp)));
    gw_json_string(json, "load", load < 0 ? NULL : cmp->c->loads[load].name);
    put_deg(json, "outer_camber_to_road_deg", s.camber);
    put_deg(json, "understeer_deg_per_g", s.understeer);
    put_deg(json, "brake_toe_deg_per_g", s.brake_toe);
    gw_json_number(json, "stop_off_line_m", s.stop_offset);
    gw_json_number(json, "critical_speed_km_h", s.critical_speed / GW_KM_H);
    put_axles(json, "harshness_dB", s.harshness, 1.0);
    gw_json_int(json, "parts", cost.parts);
    put_sums(json, cmp->c, &cost);
    gw_json_int(json, "parts_without_price", cost.unpriced);
    gw_json_int(json, "parts_without_time", cost.untimed);
    gw_json_object_on_line(json, "same_joints_renewed");
    put_sums(json, cmp->c, &renewed);
    gw_json_close(json);
    put_jobs(json, cmp->c, &cmp->c->kits[kit]);
    put_reversals(json, cmp, kit);
    put_stand(json, cmp, kit);
    gw_json_close(json);
}

static void put_kit(gw_json *json, const gw_comparison *cmp, int kit)
{
    gw_json_object(json, NULL);
    gw_json_string(json, "kit", cmp->c->kits[kit].name);
    put_budgets(json, cmp, kit);
    put_balance(json, gw_balance_find(cmp->handling, kit));
    put_braking(json, cmp, gw_braking_find(cmp->handling, kit));
    put_traction(json, cmp, kit);
    put_bands(json, cmp, kit);
    gw_json_close(json);
}

static void put_inputs(gw_json *json, const gw_handling_study *h)
{
    gw_json_object_on_line(json, "handling_inputs");
    gw_json_number(json, "speed_km_h", h->speed / GW_KM_H);
    gw_json_number(json, "yaw_inertia_kgm2", h->yaw_inertia);
    gw_json_bool(json, "yaw_inertia_given", h->yaw_inertia_given);
    gw_json_number(json, "brake_g", GW_FIRM_STOP);
    gw_json_number(json, "brake_imbalance", h->brake_imbalance);
    gw_json_number(json, "bump_mm", h->bump / GW_MM);
    gw_json_close(json);
}

static void put_lacks(gw_json *json, const gw_comparison *cmp)
{
    const gw_handling_study *h = cmp->handling;
    gw_json_object(json, "handling_left_out");
    gw_json_string(json, "budgets", h->no_budgets);
    gw_json_string(json, "balance", h->no_balance);
    gw_json_string(json, "braking", h->no_braking);
    gw_json_string(json, "traction", h->no_traction);
    gw_json_string(json, "consistency", h->no_bands);
    gw_json_array(json, "gaps");
    for (int i = 0; i < h->n_gaps; i++) {
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "kit", cmp->c->kits[h->gap[i].kit].name);
        gw_json_string(json, "why", h->gap[i].text);
        gw_json_close(json);
    }
    gw_json_close(json);
    gw_json_close(json);
}

void gw_handling_json(const gw_comparison *cmp, gw_json *json)
{
    gw_json_string(json, "currency", cmp->c->shop.currency);
    gw_json_array(json, "summary");
    for (int k = 0; k < cmp->c->n_kits; k++)
        if (is_wanted(cmp, k)) put_summary(json, cmp, k);
    gw_json_close(json);
    put_inputs(json, cmp->handling);
    gw_json_array(json, "handling");
    for (int k = 0; k < cmp->c->n_kits; k++)
        if (is_wanted(cmp, k)) put_kit(json, cmp, k);
    gw_json_close(json);
    put_lacks(json, cmp);
}
