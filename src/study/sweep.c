/* SPDX-License-Identifier: MIT */
#include "giveway/sweep.h"

#include "base/parallel.h"
#include "study/trail.h"

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

/* One kit in one corner, or in both corners of the car on the road: they stand in the same states. */
typedef struct gw_sweep_job {
    gw_run run; /**< a copy: laws and vehicle are shared, the open corner is its own */
    const gw_sweep_plan *plan;
    gw_sweep *sweep[GW_AXLES]; /**< NULL: not of this job */
    gw_trail trail;            /**< the last points */
    gw_status status;
    gw_error err;
} gw_sweep_job;

enum { TRAIL = 3 };

/* One point of each corner. */
static gw_status run_point(gw_sweep_job *job, double g)
{
    gw_manoeuvre m = manoeuvre_of(job->plan, g);
    gw_status status = GW_OK;
    for (int a = 0; a < GW_AXLES && status == GW_OK; a++) {
        gw_deflection item = { .load = -1 };
        if (!job->sweep[a]) continue;
        job->run.axle = (gw_axle)a;
        status = gw_run_manoeuvre(&job->run, &m, &item, &job->err);
        if (status == GW_OK) job->sweep[a]->point[job->sweep[a]->n++] = point_of(g, &item);
    }
    return status;
}

/* A wheel that lifts, or a corner that gives up, ends the sweep there: what came before stands. */
static gw_status run_points(gw_sweep_job *job)
{
    const gw_sweep_plan *plan = job->plan;
    for (int i = 0; i < plan->n; i++) {
        job->run.untold = i > 0;
        if (i > 1) gw_trail_lead(&job->trail, &job->run, (i - 1) % TRAIL, (i - 1) % TRAIL, (i - 2) % TRAIL);
        gw_status status = run_point(job, plan->to_g * i / (plan->n - 1));
        if (status == GW_E_NUMERIC && i > 0) break;
        if (status == GW_OK) status = gw_trail_note(&job->trail, &job->run, TRAIL, i % TRAIL, &job->err);
        if (status != GW_OK) return status;
    }
    return GW_OK;
}

static void run_sweep(void *context, int index)
{
    gw_sweep_job *job = &((gw_sweep_job *)context)[index];
    const gw_sweep *first = job->sweep[GW_FRONT] ? job->sweep[GW_FRONT] : job->sweep[GW_REAR];
    job->status = gw_run_open_corner(&job->run, first->kit, first->axle, &job->err);
    if (job->status == GW_OK) job->status = run_points(job);
    gw_trail_free(&job->trail);
    gw_run_close_corner(&job->run);
}

/* Memory is taken before the threads start: the arena is not theirs to share. How many jobs there are. */
static gw_status plan_all(const gw_run *run, gw_sweep_study *study, gw_sweep_job *jobs, int *n, gw_error *err)
{
    const gw_case *c = run->c;
    study->item = gw_arena_alloc(&study->arena, (size_t)c->n_kits * GW_AXLES, sizeof *study->item);
    for (int k = 0; study->item && k < c->n_kits; k++) {
        bool begun = false;
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            if (!gw_run_wants_kit(run, k) || !gw_run_wants_axle(run, a)) continue;
            gw_sweep *sweep = &study->item[study->n++];
            *sweep = (gw_sweep){ .kit = k, .axle = a };
            sweep->point = gw_arena_alloc(&study->arena, (size_t)study->plan.n, sizeof *sweep->point);
            if (!sweep->point) return gw_fail(err, GW_E_NOMEM, "out of memory for a sweep");
            if (!begun || !run->on_road) jobs[(*n)++] = (gw_sweep_job){ .run = *run, .plan = &study->plan };
            begun = true;
            jobs[*n - 1].sweep[a] = sweep;
        }
    }
    return study->item ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for a sweep");
}

static gw_status run_all(const gw_run *run, gw_sweep_study *study, gw_error *err)
{
    int n = 0;
    gw_sweep_job *jobs = calloc((size_t)run->c->n_kits * GW_AXLES + 1, sizeof *jobs);
    if (!jobs) return gw_fail(err, GW_E_NOMEM, "out of memory for a sweep");
    gw_status status = plan_all(run, study, jobs, &n, err);
    if (status == GW_OK) gw_parallel(n, run_sweep, jobs);
    for (int i = 0; i < n && status == GW_OK; i++)
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
