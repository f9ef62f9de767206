/* SPDX-License-Identifier: MIT */
#include "giveway/grid.h"

#include "base/parallel.h"
#include "study/run.h"

#include <stdlib.h>

double gw_grid_brake(const gw_grid_plan *plan, int row)
{
    return plan->brake_to_g * row / (plan->n_brake - 1);
}

double gw_grid_lateral(const gw_grid_plan *plan, int column)
{
    return plan->lateral_to_g * column / (plan->n_lateral - 1);
}

static gw_grid_state state_of(const gw_deflection *item)
{
    const gw_corner_result *r = &item->result;
    return (gw_grid_state){ .solved = true,
                            .toe = r->toe,
                            .camber = r->camber,
                            .camber_to_road = item->camber_to_road,
                            .toe_change = r->toe_change,
                            .camber_change = r->camber_change,
                            .caster_change = r->caster_change,
                            .wheel_centre = r->wheel_centre,
                            .travel = item->applied.travel,
                            .roll = item->roll,
                            .applied = item->applied,
                            .beside = item->beside };
}

/* One kit in one corner, with a run of its own. */
typedef struct gw_grid_job {
    gw_run run;
    const gw_grid_plan *plan;
    gw_grid *grid;
    gw_deflection item; /* its joints are where what is solved is put, and not kept */
    gw_status status;
    gw_error err;
} gw_grid_job;

/* A state that cannot be had is left unsolved, unless it is the car at rest, which every kit must carry. */
static void run_state(gw_grid_job *job, int i, gw_side side, gw_grid_state *out)
{
    const gw_manoeuvre m = { .brake_g = gw_grid_brake(job->plan, i / job->plan->n_lateral),
                             .lateral_g = gw_grid_lateral(job->plan, i % job->plan->n_lateral),
                             .side = side };
    gw_error err = { 0 };
    job->run.untold = i > 0;
    gw_status status = gw_run_manoeuvre(&job->run, &m, &job->item, &err);
    if (status == GW_OK)
        *out = state_of(&job->item);
    else if (status != GW_E_NUMERIC || i == 0)
        job->status = gw_fail(&job->err, status, "%s", err.msg);
}

static void run_states(void *context, int index)
{
    gw_grid_job *job = &((gw_grid_job *)context)[index];
    int states = job->plan->n_brake * job->plan->n_lateral;
    gw_side other = job->plan->side == GW_OUTER ? GW_INNER : GW_OUTER;
    job->status = gw_run_open_corner(&job->run, job->grid->kit, job->grid->axle, &job->err);
    for (int i = 0; i < states && job->status == GW_OK; i++) {
        run_state(job, i, job->plan->side, &job->grid->state[i]);
        if (job->status == GW_OK && job->grid->other) run_state(job, i, other, &job->grid->other[i]);
    }
    gw_run_close_corner(&job->run);
}

/* Memory is taken before the threads start. */
static gw_status plan_job(const gw_run *run, gw_grid_study *study, gw_grid_job *job, gw_error *err)
{
    size_t states = (size_t)study->plan.n_brake * (size_t)study->plan.n_lateral;
    *job = (gw_grid_job){ .run = *run, .plan = &study->plan, .grid = &study->item[study->n++] };
    job->item.load = -1;
    job->item.result.joints = gw_arena_alloc(&study->arena, GW_MAX_JOINTS, sizeof *job->item.result.joints);
    job->grid->state = gw_arena_alloc(&study->arena, states, sizeof *job->grid->state);
    if (study->plan.both) job->grid->other = gw_arena_alloc(&study->arena, states, sizeof *job->grid->other);
    if (job->item.result.joints && job->grid->state && (job->grid->other || !study->plan.both)) return GW_OK;
    return gw_fail(err, GW_E_NOMEM, "out of memory for a grid");
}

static gw_status plan_all(gw_run *run, gw_grid_study *study, gw_grid_job *jobs, gw_error *err)
{
    gw_status status = GW_OK;
    for (int k = 0; k < run->c->n_kits && status == GW_OK; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES && status == GW_OK; a++) {
            if (!gw_run_wants_kit(run, k) || !gw_run_wants_axle(run, a)) continue;
            study->item[study->n] = (gw_grid){ .kit = k, .axle = a };
            status = plan_job(run, study, &jobs[study->n], err);
        }
    return status;
}

static gw_status run_all(gw_run *run, gw_grid_study *study, gw_error *err)
{
    size_t most = (size_t)run->c->n_kits * GW_AXLES;
    gw_grid_job *jobs = calloc(most, sizeof *jobs);
    study->item = gw_arena_alloc(&study->arena, most, sizeof *study->item);
    gw_status status = jobs && study->item ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for a grid");
    if (status == GW_OK) status = plan_all(run, study, jobs, err);
    if (status == GW_OK) gw_parallel(study->n, run_states, jobs);
    for (int i = 0; i < study->n && status == GW_OK; i++)
        if (jobs[i].status != GW_OK) status = gw_fail(err, jobs[i].status, "%s", jobs[i].err.msg);
    free(jobs);
    return status;
}

gw_status gw_study_grid(const gw_case *c, const gw_selection *wanted, const gw_grid_plan *plan,
                        gw_grid_study *out, gw_error *err)
{
    gw_grid_study study = { .plan = *plan };
    gw_run run;
    if (!c->has_vehicle) return gw_fail(err, GW_E_SCHEMA, "%s: vehicle: missing; a grid needs it", c->path);
    gw_status status = gw_run_open(&run, c, wanted, err);
    if (status == GW_OK) status = run_all(&run, &study, err);
    gw_run_close(&run);
    if (status != GW_OK) {
        gw_grid_study_free(&study);
        return status;
    }
    *out = study;
    return GW_OK;
}

void gw_grid_study_free(gw_grid_study *study)
{
    gw_arena_free(&study->arena);
    *study = (gw_grid_study){ 0 };
}

const gw_grid *gw_grid_find(const gw_grid_study *study, int kit, gw_axle axle)
{
    for (int i = 0; i < study->n; i++)
        if (study->item[i].kit == kit && study->item[i].axle == axle) return &study->item[i];
    return NULL;
}
