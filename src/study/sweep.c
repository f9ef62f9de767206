/* SPDX-License-Identifier: MIT */
#include "giveway/sweep.h"

#include "base/parallel.h"
#include "study/run.h"

#include <stdlib.h>

static gw_manoeuvre manoeuvre_of(const gw_sweep_plan *plan, double g)
{
    gw_manoeuvre m = plan->along;
    switch (plan->axis) {
    case GW_SWEEP_BRAKE:
        m.brake_g = g;
        break;
    case GW_SWEEP_LATERAL:
        m.lateral_g = g;
        break;
    case GW_SWEEP_DRIVE:
        m.drive_g = g;
        break;
    }
    return m;
}

static gw_sweep_point point_of(double g, const gw_deflection *item)
{
    const gw_corner_result *r = &item->result;
    return (gw_sweep_point){ .g = g,
                             .toe = r->toe,
                             .camber = r->camber,
                             .toe_change = r->toe_change,
                             .camber_change = r->camber_change,
                             .camber_to_road = item->camber_to_road,
                             .wheel_centre = r->wheel_centre,
                             .travel = item->applied.travel,
                             .roll = item->roll };
}

/* One kit in one corner. */
typedef struct gw_sweep_job {
    gw_run run; /**< a copy: laws and vehicle are shared, the open corner is its own */
    const gw_sweep_plan *plan;
    gw_sweep *sweep;
    gw_joint_result *joints; /**< scratch, one entry a joint */
    gw_status status;
    gw_error err;
} gw_sweep_job;

/* A wheel that lifts, or a corner that gives up, ends the sweep there: what came before stands. */
static gw_status run_points(gw_sweep_job *job)
{
    const gw_sweep_plan *plan = job->plan;
    gw_deflection item = { .load = -1, .result = { .joints = job->joints } };
    for (int i = 0; i < plan->n; i++) {
        double g = plan->to_g * i / (plan->n - 1);
        gw_manoeuvre m = manoeuvre_of(plan, g);
        job->run.untold = i > 0;
        gw_status status = gw_run_manoeuvre(&job->run, &m, &item, &job->err);
        if (status == GW_E_NUMERIC && i > 0) break;
        if (status != GW_OK) return status;
        job->sweep->point[job->sweep->n++] = point_of(g, &item);
    }
    return GW_OK;
}

static void run_sweep(void *context, int index)
{
    gw_sweep_job *job = &((gw_sweep_job *)context)[index];
    job->status = gw_run_open_corner(&job->run, job->sweep->kit, job->sweep->axle, &job->err);
    if (job->status == GW_OK) job->status = run_points(job);
    gw_run_close_corner(&job->run);
}

/* Memory is taken before the threads start: the arena is not theirs to share. */
static gw_status plan_all(const gw_run *run, gw_sweep_study *study, gw_sweep_job *jobs, gw_error *err)
{
    const gw_case *c = run->c;
    study->item = gw_arena_alloc(&study->arena, (size_t)c->n_kits * GW_AXLES, sizeof *study->item);
    for (int k = 0; study->item && k < c->n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            if (!gw_run_wants_kit(run, k) || !gw_run_wants_axle(run, a)) continue;
            gw_sweep_job *job = &jobs[study->n];
            gw_sweep *sweep = &study->item[study->n++];
            *sweep = (gw_sweep){ .kit = k, .axle = a };
            *job = (gw_sweep_job){ .run = *run, .plan = &study->plan, .sweep = sweep };
            sweep->point = gw_arena_alloc(&study->arena, (size_t)study->plan.n, sizeof *sweep->point);
            job->joints = gw_arena_alloc(&study->arena, (size_t)c->corners[a].n_joints, sizeof *job->joints);
            if (!sweep->point || !job->joints) return gw_fail(err, GW_E_NOMEM, "out of memory for a sweep");
        }
    return study->item ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for a sweep");
}

static gw_status run_all(const gw_run *run, gw_sweep_study *study, gw_error *err)
{
    gw_sweep_job *jobs = calloc((size_t)run->c->n_kits * GW_AXLES + 1, sizeof *jobs);
    if (!jobs) return gw_fail(err, GW_E_NOMEM, "out of memory for a sweep");
    gw_status status = plan_all(run, study, jobs, err);
    if (status == GW_OK) gw_parallel(study->n, run_sweep, jobs);
    for (int i = 0; i < study->n && status == GW_OK; i++)
        if (jobs[i].status != GW_OK) status = gw_fail(err, jobs[i].status, "%s", jobs[i].err.msg);
    free(jobs);
    return status;
}

gw_status gw_study_sweep(const gw_case *c, const gw_selection *wanted, const gw_sweep_plan *plan,
                         gw_sweep_study *out, gw_error *err)
{
    gw_sweep_study study = { .plan = *plan };
    gw_run run;
    if (!c->has_vehicle) return gw_fail(err, GW_E_SCHEMA, "%s: vehicle: missing; a sweep needs it", c->path);
    gw_status status = gw_run_open(&run, c, wanted, err);
    if (status == GW_OK) status = run_all(&run, &study, err);
    gw_run_close(&run);
    if (status != GW_OK) {
        gw_sweep_study_free(&study);
        return status;
    }
    *out = study;
    return GW_OK;
}

void gw_sweep_study_free(gw_sweep_study *study)
{
    gw_arena_free(&study->arena);
    *study = (gw_sweep_study){ 0 };
}

const gw_sweep *gw_sweep_find(const gw_sweep_study *study, int kit, gw_axle axle)
{
    for (int i = 0; i < study->n; i++)
        if (study->item[i].kit == kit && study->item[i].axle == axle) return &study->item[i];
    return NULL;
}
