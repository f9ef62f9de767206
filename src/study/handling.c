/* SPDX-License-Identifier: MIT */
/* What every kit does to the car: each corner is opened once, then both axles are put together. */
#include "base/parallel.h"
#include "study/handling_run.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static gw_status open_tyres(gw_handling_run *h, gw_error *err)
{
    const gw_vehicle *v = &h->run.vehicle;
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        const gw_tyre_data data = { v->cornering_stiffness[a], v->camber_stiffness[a],
                                    gw_vehicle_static_load(v, a), v->tyre[a] };
        gw_error inner = { 0 };
        if (!data.table && !(data.cornering > 0.0)) continue;
        gw_status status = gw_tyre_open(&data, &h->tyre[a], &inner);
        if (status != GW_OK)
            return gw_fail(err, status, "%s: vehicle: %s tyre: %s", h->run.c->path, gw_axle_name(a),
                           inner.msg);
    }
    return GW_OK;
}

static bool any_load(const gw_case *c, double (*of)(const gw_manoeuvre *m))
{
    for (int l = 0; l < c->n_loads; l++)
        if (c->loads[l].kind == GW_LOAD_MANOEUVRE && of(&c->loads[l].manoeuvre) > 0.0) return true;
    return false;
}

static double lateral_of(const gw_manoeuvre *m)
{
    return m->lateral_g;
}

static double drive_of(const gw_manoeuvre *m)
{
    return m->drive_g;
}

/* What is missing for a part, or NULL; the words stand after "the case lacks". */
static void find_lacks(const gw_handling_run *h, gw_handling_study *out)
{
    const gw_case *c = h->run.c;
    bool both = gw_run_wants_axle(&h->run, GW_FRONT) && gw_run_wants_axle(&h->run, GW_REAR);
    bool rolls = c->vehicle.has_roll_centre || (c->has_corner[GW_FRONT] && c->has_corner[GW_REAR]);
    if (!c->has_vehicle) {
        out->no_budgets = out->no_balance = out->no_braking = out->no_traction = out->no_bands = "vehicle";
        return;
    }
    if (!any_load(c, lateral_of)) out->no_budgets = "a load with lateral_g";
    if (!any_load(c, drive_of)) out->no_traction = "a load with drive_g";
    if (!rolls) out->no_bands = "vehicle.roll_centre_height_mm, or the other corner";
    if (!both)
        out->no_balance = "both corners, front and rear";
    else if (!h->tyre[GW_FRONT] || !h->tyre[GW_REAR])
        out->no_balance = "vehicle.cornering_stiffness_N_per_deg, or vehicle.tyre_table";
}

static void note_inputs(const gw_handling_run *h, gw_handling_study *out)
{
    const gw_case *c = h->run.c;
    const gw_vehicle *v = &h->run.vehicle;
    if (!c->has_vehicle) return;
    out->speed = v->speed > 0.0 ? v->speed : GW_VEHICLE_SPEED;
    out->brake_imbalance = v->brake_imbalance;
    out->bump = c->ride.present && c->ride.has_obstacle ? c->ride.obstacle_height : GW_BUMP_HEIGHT;
    out->yaw_inertia = gw_vehicle_yaw_inertia(v);
    out->yaw_inertia_given = v->yaw_inertia > 0.0;
}

/* For each load budgets and traction, for each corner braking, for the kit its balance: no more than this for
 * each wheel of each load and one load more. */
enum { GAPS_A_WHEEL = 2 };

/* Room for as much as there can be. */
static gw_status make_room(gw_handling_run *h, gw_handling_study *out, gw_error *err)
{
    const gw_case *c = h->run.c;
    size_t kits = (size_t)c->n_kits, wheels = kits * GW_AXLES * (size_t)(c->n_loads + 1);
    out->gap = gw_arena_alloc(&out->arena, GAPS_A_WHEEL * wheels, sizeof *out->gap);
    out->budget = gw_arena_alloc(&out->arena, 2 * wheels, sizeof *out->budget);
    out->traction = gw_arena_alloc(&out->arena, 3 * wheels, sizeof *out->traction);
    out->balance = gw_arena_alloc(&out->arena, kits, sizeof *out->balance);
    out->braking = gw_arena_alloc(&out->arena, kits, sizeof *out->braking);
    h->states = calloc(kits + 1, sizeof *h->states);
    if (!out->budget || !out->traction || !out->balance || !out->braking || !out->gap || !h->states)
        return gw_fail(err, GW_E_NOMEM, "out of memory for handling");
    return GW_OK;
}

static gw_status brake(gw_handling_run *h, gw_braking_corner *out, gw_error *err)
{
    gw_error why = { 0 };
    if (gw_handling_braking(h, out, &why) == GW_OK) return GW_OK;
    /* The stop is not one of the case's: advice to lower its g would lead astray. */
    if (why.code == GW_E_NUMERIC)
        gw_fail(&why, GW_E_NUMERIC, "a wheel lifts or the corner finds no equilibrium in a stop of %.1f g",
                GW_FIRM_STOP);
    return gw_handling_leave_out(h, h->run.kit, h->run.axle, -1, "stability under braking is", &why, err);
}

static gw_status run_corner(gw_handling_run *h, int kit, gw_axle axle, gw_error *err)
{
    gw_handling_study *out = h->out;
    gw_status status = gw_run_open_corner(&h->run, kit, axle, err);
    h->n_looks = 0;
    if (status == GW_OK && !out->no_budgets) status = gw_handling_budgets(h, err);
    if (status == GW_OK && !out->no_balance) status = gw_handling_states(h, err);
    if (status == GW_OK && !out->no_braking)
        status = brake(h, &out->braking[out->n_braking].corner[axle], err);
    if (status == GW_OK && !out->no_traction && !h->run.wanted->brief) status = gw_handling_traction(h, err);
    gw_run_close_corner(&h->run);
    return status;
}

static gw_status run_kit(gw_handling_run *h, int kit, gw_error *err)
{
    gw_handling_study *out = h->out;
    gw_braking_item *braking = &out->braking[out->n_braking];
    gw_status status = GW_OK;
    for (gw_axle a = GW_FRONT; a < GW_AXLES && status == GW_OK; a++)
        if (gw_run_wants_axle(&h->run, a)) status = run_corner(h, kit, a, err);
    if (status != GW_OK) return status;
    braking->kit = kit;
    if (!out->no_balance) {
        gw_balance_item *balance = &out->balance[out->n_balance];
        bool there = false;
        if ((status = gw_handling_balance(h, kit, balance, &there, err)) != GW_OK) return status;
        if (there) out->n_balance++;
        if (there && braking->corner[GW_FRONT].there && braking->corner[GW_REAR].there)
            gw_handling_drift(h, balance, braking);
    }
    if (!out->no_braking) out->n_braking++;
    return GW_OK;
}

/* One kit, worked out into a study of its own that shares the room of the whole one. */
typedef struct gw_kit_job {
    gw_handling_run h;
    gw_handling_study part;
    int kit;
    gw_status status;
    gw_error err;
} gw_kit_job;

static void work_kit(void *context, int index)
{
    gw_kit_job *job = &((gw_kit_job *)context)[index];
    job->status = run_kit(&job->h, job->kit, &job->err);
}

static void plan_kit(const gw_handling_run *h, int kit, int at, gw_kit_job *job)
{
    size_t wheels = GW_AXLES * (size_t)(h->run.c->n_loads + 1), first = (size_t)at * wheels;
    *job = (gw_kit_job){ .h = *h, .part = *h->out, .kit = kit };
    job->h.out = &job->part;
    job->part.arena = (gw_arena){ 0 };
    job->part.budget += 2 * first;
    job->part.traction += 3 * first;
    job->part.gap += GAPS_A_WHEEL * first;
    job->part.balance += at;
    job->part.braking += at;
}

/* Close the gaps that the kits left between them, in the order of the case. */
static void take_part(gw_handling_study *out, gw_handling_study *part)
{
    memmove(out->budget + out->n_budgets, part->budget, (size_t)part->n_budgets * sizeof *part->budget);
    memmove(out->traction + out->n_traction, part->traction,
            (size_t)part->n_traction * sizeof *part->traction);
    memmove(out->balance + out->n_balance, part->balance, (size_t)part->n_balance * sizeof *part->balance);
    memmove(out->braking + out->n_braking, part->braking, (size_t)part->n_braking * sizeof *part->braking);
    memmove(out->gap + out->n_gaps, part->gap, (size_t)part->n_gaps * sizeof *part->gap);
    out->n_gaps += part->n_gaps;
    out->n_budgets += part->n_budgets;
    out->n_traction += part->n_traction;
    out->n_balance += part->n_balance;
    out->n_braking += part->n_braking;
}

static gw_status run_kits(gw_handling_run *h, gw_error *err)
{
    const gw_case *c = h->run.c;
    gw_status status = GW_OK;
    int n = 0;
    gw_kit_job *jobs = calloc((size_t)c->n_kits + 1, sizeof *jobs);
    if (!jobs) return gw_fail(err, GW_E_NOMEM, "out of memory for handling");
    for (int k = 0; k < c->n_kits; k++)
        if (gw_run_wants_kit(&h->run, k)) {
            plan_kit(h, k, n, &jobs[n]);
            n++;
        }
    gw_parallel(n, work_kit, jobs);
    for (int i = 0; i < n; i++) {
        if (status == GW_OK && jobs[i].status != GW_OK)
            status = gw_fail(err, jobs[i].status, "%s", jobs[i].err.msg);
        if (status == GW_OK) take_part(h->out, &jobs[i].part);
        gw_arena_absorb(&h->out->arena, &jobs[i].part.arena);
    }
    free(jobs);
    return status;
}

static gw_status sweep_corners(const gw_case *c, const gw_selection *wanted, gw_handling_study *out,
                               gw_error *err)
{
    const gw_sweep_plan plan = { GW_SWEEP_LATERAL, GW_BAND_TO, 21, { .side = GW_OUTER } };
    gw_status status = gw_study_sweep(c, wanted, &plan, &out->sweep, err);
    return status == GW_OK ? gw_handling_bands(out, err) : status;
}

static gw_status run_all(gw_handling_run *h, gw_error *err)
{
    const gw_case *c = h->run.c;
    gw_handling_study *out = h->out;
    gw_status status = GW_OK;
    if (c->has_vehicle) status = open_tyres(h, err);
    if (status == GW_OK) status = make_room(h, out, err);
    find_lacks(h, out);
    note_inputs(h, out);
    if (status == GW_OK && c->has_vehicle) status = run_kits(h, err);
    if (status == GW_OK && !out->no_budgets && !out->n_budgets)
        out->no_budgets = "a load with lateral_g among those wanted";
    if (h->run.wanted->brief) return status;
    if (status == GW_OK && !out->no_bands) status = sweep_corners(c, h->run.wanted, out, err);
    if (status == GW_OK && !out->no_traction && !out->n_traction)
        out->no_traction = "a load that drives one of the corners wanted (drive_g, driven)";
    return status;
}

gw_status gw_study_handling(const gw_case *c, const gw_selection *wanted, gw_handling_study *out,
                            gw_error *err)
{
    gw_handling_study study = { 0 };
    gw_handling_run h = { .out = &study };
    gw_status status = gw_run_open(&h.run, c, wanted, err);
    if (status == GW_OK) status = run_all(&h, err);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) gw_tyre_close(h.tyre[a]);
    free(h.states);
    gw_run_close(&h.run);
    if (status != GW_OK) {
        gw_handling_study_free(&study);
        return status;
    }
    *out = study;
    return GW_OK;
}

void gw_handling_study_free(gw_handling_study *study)
{
    gw_sweep_study_free(&study->sweep);
    gw_arena_free(&study->arena);
    *study = (gw_handling_study){ 0 };
}

const gw_balance_item *gw_balance_find(const gw_handling_study *study, int kit)
{
    for (int i = 0; i < study->n_balance; i++)
        if (study->balance[i].kit == kit) return &study->balance[i];
    return NULL;
}

const gw_braking_item *gw_braking_find(const gw_handling_study *study, int kit)
{
    for (int i = 0; i < study->n_braking; i++)
        if (study->braking[i].kit == kit) return &study->braking[i];
    return NULL;
}

double gw_braking_pull(const gw_handling_study *study, int kit)
{
    const gw_braking_item *b = study ? gw_braking_find(study, kit) : NULL;
    return b && b->has_drift && fabs(b->pulled.offset) >= GW_PULL_LEAST ? b->pulled.offset : 0.0;
}

const gw_corner_budget *gw_corner_budget_find(const gw_handling_study *study, int kit, gw_axle axle, int load,
                                              gw_side side)
{
    for (int i = 0; i < study->n_budgets; i++) {
        const gw_corner_budget *b = &study->budget[i];
        if (b->kit == kit && b->axle == axle && b->load == load && b->side == side) return b;
    }
    return NULL;
}
