/* SPDX-License-Identifier: MIT */
#include "study/cars.h"

#include "giveway/compare.h"

#include <math.h>

static void add_slot(gw_car_plan *plan, int kit, gw_axle axle, int load)
{
    gw_car_slot *slot = &plan->slot[plan->n_slots];
    const gw_load *l = load >= 0 ? &plan->c->loads[load] : NULL;
    *slot = (gw_car_slot){ .kit = kit, .axle = axle, .load = load, .first = plan->n_columns };
    slot->manoeuvre = l && l->kind == GW_LOAD_MANOEUVRE;
    if (slot->manoeuvre) slot->side = l->manoeuvre.side;
    for (slot->base = 0; slot->base < plan->n_slots; slot->base++)
        if (plan->slot[slot->base].load == load && plan->slot[slot->base].axle == axle) break;
    plan->n_columns += load >= 0 ? (int)GW_SPREAD_QUANTITIES : (int)GW_SPREAD_RIDE_QUANTITIES;
    plan->n_slots++;
}

static bool bears(const gw_case *c, int load, gw_axle axle)
{
    return c->loads[load].kind == GW_LOAD_MANOEUVRE || c->loads[load].axle == axle;
}

gw_status gw_car_plan_make(const gw_case *c, bool ride, gw_arena *arena, gw_car_plan *out, gw_error *err)
{
    size_t room = (size_t)c->n_kits * GW_AXLES * ((size_t)c->n_loads + 1) + 1;
    *out = (gw_car_plan){ .c = c, .ride = ride, .slot = gw_arena_alloc(arena, room, sizeof *out->slot) };
    if (!out->slot) return gw_fail(err, GW_E_NOMEM, "out of memory for results");
    for (int k = 0; k < c->n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            if (!c->has_corner[a]) continue;
            for (int l = 0; l < c->n_loads; l++)
                if (bears(c, l, a)) add_slot(out, k, a, l);
            if (ride) add_slot(out, k, a, -1);
        }
    return GW_OK;
}

static void note(gw_status status, const gw_error *why, gw_status *first, gw_error *err)
{
    if (status == GW_OK || *first != GW_OK) return;
    *first = status;
    gw_fail(err, status, "%s", why->msg);
}

static gw_status solve(gw_run *run, const gw_car_slot *slot, double *row, gw_error *err)
{
    const gw_load *load = &run->c->loads[slot->load];
    gw_joint_result joints[GW_MAX_JOINTS];
    gw_deflection item = { .result.joints = joints };
    gw_error inner = { 0 };
    gw_status status = slot->manoeuvre ? gw_run_manoeuvre(run, &load->manoeuvre, &item, &inner)
                                       : gw_run_direct(run, &load->direct, load->other, &item, &inner);
    if (status != GW_OK)
        return gw_fail(err, status, "%s: load \"%s\", kit %s: %s", run->c->path, load->name,
                       run->c->kits[run->kit].name, inner.msg);
    row[slot->first + GW_SPREAD_TOE] = item.result.toe_change;
    row[slot->first + GW_SPREAD_CAMBER] = item.result.camber_change;
    row[slot->first + GW_SPREAD_FORE_AFT] = item.result.wheel_centre.x;
    return GW_OK;
}

/* All loads of one kit in one corner, from slot `s` on; returns the first slot that is another's. */
static int work_corner(const gw_car_plan *plan, gw_run *run, int s, double *row, gw_status *first,
                       gw_error *err)
{
    gw_error why = { 0 };
    const gw_car_slot *at = &plan->slot[s];
    gw_status opened = gw_run_open_corner(run, at->kit, at->axle, &why);
    note(opened, &why, first, err);
    for (; s < plan->n_slots && plan->slot[s].kit == at->kit && plan->slot[s].axle == at->axle; s++) {
        if (opened != GW_OK || plan->slot[s].load < 0) continue;
        note(solve(run, &plan->slot[s], row, &why), &why, first, err);
    }
    gw_run_close_corner(run);
    return s;
}

/* Decibels over the first kit of the same car. */
static void work_ride(const gw_car_plan *plan, gw_run *run, double *row, gw_status *first, gw_error *err)
{
    const gw_ride_options bare = { .no_range = true, .no_curve = true, .no_obstacle = true };
    gw_ride_result base[GW_AXLES] = { { 0 } };
    bool known[GW_AXLES] = { false };
    for (int s = 0; s < plan->n_slots; s++) {
        const gw_car_slot *slot = &plan->slot[s];
        gw_ride_result result = { 0 };
        gw_error why = { 0 };
        if (slot->load >= 0) continue;
        gw_fit_kit(run->c, &run->laws, slot->kit, slot->axle, run->fit);
        gw_status status =
            gw_ride_solve(&run->c->corners[slot->axle], run->fit, &run->c->ride, &bare, &result, &why);
        note(status, &why, first, err);
        if (status == GW_OK && slot->kit == 0) {
            base[slot->axle] = result;
            known[slot->axle] = true;
        }
        if (status != GW_OK || !known[slot->axle]) continue;
        gw_ride_difference difference;
        gw_ride_compare(&result, &base[slot->axle], &difference);
        row[slot->first + GW_SPREAD_HARSHNESS] = difference.harshness;
        row[slot->first + GW_SPREAD_NOISE] = difference.noise;
        if (slot->kit > 0) gw_ride_result_free(&result);
    }
    for (int a = 0; a < GW_AXLES; a++) gw_ride_result_free(&base[a]);
}

gw_status gw_car_work_out(const gw_car_plan *plan, const gw_case *c, const gw_selection *wanted, double *row,
                          gw_error *err)
{
    gw_run run;
    gw_error why = { 0 };
    gw_status first = GW_OK;
    for (int i = 0; i < plan->n_columns; i++) row[i] = NAN;
    gw_status opened = gw_run_open(&run, c, wanted, &why);
    note(opened, &why, &first, err);
    for (int s = 0; s < plan->n_slots && opened == GW_OK;) s = work_corner(plan, &run, s, row, &first, err);
    if (opened == GW_OK && plan->ride) work_ride(plan, &run, row, &first, err);
    gw_run_close(&run);
    return first;
}
