/* SPDX-License-Identifier: MIT */
#include "giveway/grid.h"

#include "study/run.h"

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
                            .roll = item->roll };
}

/* A state that cannot be had is left unsolved, unless it is the car at rest, which every kit must carry. */
static gw_status run_states(gw_run *run, gw_grid_study *study, gw_grid *grid, gw_error *err)
{
    const gw_grid_plan *plan = &study->plan;
    gw_deflection item = { .load = -1 };
    size_t joints = (size_t)run->c->corners[run->axle].n_joints;
    size_t states = (size_t)plan->n_brake * (size_t)plan->n_lateral;
    item.result.joints = gw_arena_alloc(&study->arena, joints, sizeof *item.result.joints);
    grid->state = gw_arena_alloc(&study->arena, states, sizeof *grid->state);
    if (!item.result.joints || !grid->state) return gw_fail(err, GW_E_NOMEM, "out of memory for a grid");
    for (int i = 0; i < (int)states; i++) {
        const gw_manoeuvre m = { .brake_g = gw_grid_brake(plan, i / plan->n_lateral),
                                 .lateral_g = gw_grid_lateral(plan, i % plan->n_lateral),
                                 .side = plan->side };
        gw_status status = gw_run_manoeuvre(run, &m, &item, err);
        if (status == GW_OK)
            grid->state[i] = state_of(&item);
        else if (status != GW_E_NUMERIC || i == 0)
            return status;
    }
    return GW_OK;
}

static gw_status run_all(gw_run *run, gw_grid_study *study, gw_error *err)
{
    const gw_case *c = run->c;
    study->item = gw_arena_alloc(&study->arena, (size_t)c->n_kits * GW_AXLES, sizeof *study->item);
    if (!study->item) return gw_fail(err, GW_E_NOMEM, "out of memory for a grid");
    for (int k = 0; k < c->n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            if (!gw_run_wants_kit(run, k) || !gw_run_wants_axle(run, a)) continue;
            gw_grid *grid = &study->item[study->n++];
            *grid = (gw_grid){ .kit = k, .axle = a };
            gw_status status = gw_run_open_corner(run, k, a, err);
            if (status == GW_OK) status = run_states(run, study, grid, err);
            gw_run_close_corner(run);
            if (status != GW_OK) return status;
        }
    return GW_OK;
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
