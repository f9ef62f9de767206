/* SPDX-License-Identifier: MIT */
#include "giveway/grid.h"

#include "base/parallel.h"
#include "study/trail.h"

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

/* One kit in one corner, or in both corners of the car on the road: they stand in the same states. */
typedef struct gw_grid_job {
    gw_run run;
    const gw_grid_plan *plan;
    gw_grid *grid[GW_AXLES]; /* NULL: not of this job */
    gw_trail trail;          /* the row before, and this one */
    gw_road *road;           /* what was kept is told by; NULL: not on the road, or nothing was kept */
    gw_status status;
    gw_error err;
} gw_grid_job;

/* Where it stands in the trail; columns before the first one are nowhere. */
static int place(const gw_grid_plan *plan, int row, int column)
{
    return row < 0 || column < 0 ? -1 : row % 2 * plan->n_lateral + column;
}

/*
 * As in the column before, moved besides as the row before went on here; along the edges, and where the row
 * before does not lead, in a straight line.
 */
static void lead(gw_grid_job *job, int row, int column)
{
    const gw_grid_plan *plan = job->plan;
    const int left = place(plan, row, column - 1), below = place(plan, row - 1, column);
    if (!gw_trail_lead(&job->trail, &job->run, left, below, place(plan, row - 1, column - 1)) &&
        !gw_trail_lead(&job->trail, &job->run, left, left, place(plan, row, column - 2)))
        gw_trail_lead(&job->trail, &job->run, below, below, below);
}

/* A wheel that has lifted does so the more in a tighter bend. */
static bool is_beyond(const gw_grid_job *job, int i)
{
    const gw_grid *grid = job->grid[GW_FRONT] ? job->grid[GW_FRONT] : job->grid[GW_REAR];
    return job->run.on_road && i % job->plan->n_lateral > 0 && !grid->state[i - 1].solved;
}

/* A state that cannot be had is left unsolved, unless it is the car at rest, which every kit must carry. */
static gw_status run_wheel(gw_grid_job *job, int i, gw_axle axle, gw_side side, gw_grid_state *out)
{
    const gw_manoeuvre m = { .brake_g = gw_grid_brake(job->plan, i / job->plan->n_lateral),
                             .lateral_g = gw_grid_lateral(job->plan, i % job->plan->n_lateral),
                             .side = side };
    gw_deflection item = { .load = -1 };
    gw_error err = { 0 };
    job->run.untold = i > 0;
    job->run.axle = axle;
    gw_status status = gw_run_manoeuvre(&job->run, &m, &item, &err);
    if (status == GW_OK)
        *out = state_of(&item);
    else if (status != GW_E_NUMERIC || i == 0)
        job->status = gw_fail(&job->err, status, "%s", err.msg);
    return status;
}

/* What one wheel of the car on the road does not carry, none does. */
static void run_state(gw_grid_job *job, int i)
{
    const gw_side side = job->plan->side, other = side == GW_OUTER ? GW_INNER : GW_OUTER;
    gw_status status = GW_OK;
    for (int a = 0; a < GW_AXLES; a++) {
        const gw_grid *grid = job->grid[a];
        if (!grid || (status != GW_OK && job->run.on_road)) continue;
        status = run_wheel(job, i, (gw_axle)a, side, &grid->state[i]);
        if (grid->other && job->status == GW_OK && (status == GW_OK || !job->run.on_road))
            status = run_wheel(job, i, (gw_axle)a, other, &grid->other[i]);
    }
}

/* The car on the road holds both wheels with what they share. */
static void keep_parts(const gw_grid_job *job, int i)
{
    for (int a = 0; a < GW_AXLES && job->run.road && job->run.drives; a++)
        if (job->grid[a] && job->grid[a]->kept[i].pose)
            gw_corner_keep(&job->run.c->pairs[a], gw_road_axle_state(job->run.road, (gw_axle)a),
                           &job->grid[a]->kept[i]);
}

static gw_status open_job(gw_grid_job *job)
{
    const gw_grid *grid = job->grid[GW_FRONT] ? job->grid[GW_FRONT] : job->grid[GW_REAR];
    return gw_run_open_corner(&job->run, grid->kit, grid->axle, &job->err);
}

static void run_states(void *context, int index)
{
    gw_grid_job *job = &((gw_grid_job *)context)[index];
    const gw_grid_plan *plan = job->plan;
    job->status = open_job(job);
    for (int i = 0; i < plan->n_brake * plan->n_lateral && job->status == GW_OK; i++) {
        const int row = i / plan->n_lateral, column = i % plan->n_lateral;
        if (is_beyond(job, i)) {
            job->run.drives = false;
        } else {
            lead(job, row, column);
            run_state(job, i);
            keep_parts(job, i);
        }
        if (job->status == GW_OK)
            job->status = gw_trail_note(&job->trail, &job->run, 2 * plan->n_lateral, place(plan, row, column),
                                        &job->err);
    }
    gw_trail_free(&job->trail);
    if (plan->keep_every) {
        job->road = job->run.road;
        job->run.road = NULL;
    }
    gw_run_close_corner(&job->run);
}

static bool keeps(const gw_grid_plan *plan, int i)
{
    const int row = i / plan->n_lateral, column = i % plan->n_lateral;
    return plan->keep_every && row % plan->keep_every == 0 && column % plan->keep_every == 0;
}

static bool plan_parts(const gw_run *run, gw_grid_study *study, gw_grid *grid)
{
    const int n = study->plan.n_brake * study->plan.n_lateral;
    const size_t bodies = (size_t)run->c->pairs[grid->axle].n_bodies;
    grid->kept = gw_arena_alloc(&study->arena, (size_t)n, sizeof *grid->kept);
    for (int i = 0; i < n && grid->kept && run->on_road; i++) {
        if (!keeps(&study->plan, i)) continue;
        grid->kept[i].pose = gw_arena_alloc(&study->arena, bodies, sizeof *grid->kept[i].pose);
        if (!grid->kept[i].pose) return false;
    }
    return grid->kept != NULL;
}

/* Memory is taken before the threads start. */
static gw_status plan_grid(const gw_run *run, gw_grid_study *study, gw_grid *grid, gw_error *err)
{
    size_t states = (size_t)study->plan.n_brake * (size_t)study->plan.n_lateral;
    grid->state = gw_arena_alloc(&study->arena, states, sizeof *grid->state);
    if (study->plan.both) grid->other = gw_arena_alloc(&study->arena, states, sizeof *grid->other);
    if (grid->state && (grid->other || !study->plan.both) && plan_parts(run, study, grid)) return GW_OK;
    return gw_fail(err, GW_E_NOMEM, "out of memory for a grid");
}

/* How many jobs there are. */
static gw_status plan_all(gw_run *run, gw_grid_study *study, gw_grid_job *jobs, int *n, gw_error *err)
{
    gw_status status = GW_OK;
    for (int k = 0; k < run->c->n_kits && status == GW_OK; k++) {
        bool begun = false;
        for (gw_axle a = GW_FRONT; a < GW_AXLES && status == GW_OK; a++) {
            if (!gw_run_wants_kit(run, k) || !gw_run_wants_axle(run, a)) continue;
            gw_grid *grid = &study->item[study->n++];
            *grid = (gw_grid){ .kit = k, .axle = a };
            if (!begun || !run->on_road) jobs[(*n)++] = (gw_grid_job){ .run = *run, .plan = &study->plan };
            begun = true;
            jobs[*n - 1].grid[a] = grid;
            status = plan_grid(run, study, grid, err);
        }
    }
    return status;
}

static gw_status run_all(gw_run *run, gw_grid_study *study, gw_error *err)
{
    size_t most = (size_t)run->c->n_kits * GW_AXLES;
    gw_grid_job *jobs = calloc(most, sizeof *jobs);
    study->item = gw_arena_alloc(&study->arena, most, sizeof *study->item);
    study->road = gw_arena_alloc(&study->arena, (size_t)run->c->n_kits, sizeof *study->road);
    study->n_roads = study->road ? run->c->n_kits : 0;
    gw_status status =
        jobs && study->item && study->road ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for a grid");
    int n = 0;
    if (status == GW_OK) status = plan_all(run, study, jobs, &n, err);
    if (status == GW_OK) gw_parallel(n, run_states, jobs);
    for (int i = 0; i < n; i++) {
        if (status == GW_OK && jobs[i].status != GW_OK)
            status = gw_fail(err, jobs[i].status, "%s", jobs[i].err.msg);
        if (jobs[i].road) study->road[jobs[i].run.kit] = jobs[i].road;
    }
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
    for (int k = 0; k < study->n_roads; k++) gw_road_close(study->road[k]);
    gw_arena_free(&study->arena);
    *study = (gw_grid_study){ 0 };
}

const gw_grid *gw_grid_find(const gw_grid_study *study, int kit, gw_axle axle)
{
    for (int i = 0; i < study->n; i++)
        if (study->item[i].kit == kit && study->item[i].axle == axle) return &study->item[i];
    return NULL;
}
