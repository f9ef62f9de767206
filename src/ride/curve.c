/* SPDX-License-Identifier: MIT */
/* Transfer functions from the road on a logarithmic grid. */
#include "ride/outputs.h"

#include <math.h>

enum { BATCHES = 50, POINTS = BATCHES * GW_LANES };
static const double LOWEST = 0.5, HIGHEST = 315.0; /* [Hz] */

static void fill_batch(gw_ride_sweep *sweep, gw_ride_curve *out, int first)
{
    const gw_ride_model *model = sweep->model;
    gw_ride_respond_hz(sweep->model, &out->hz[first], sweep->x);
    gw_ride_path_squares(model, sweep->x, NULL, sweep->squares);
    for (int l = 0; l < GW_LANES; l++) {
        double square = 0.0;
        for (int p = 0; p < model->n_paths; p++) {
            square += sweep->squares[p * GW_LANES + l];
            out->path[p * out->n + first + l] =
                sqrt(sweep->squares[p * GW_LANES + l] / gw_ride_one_wheel(model));
        }
        out->force[first + l] = sqrt(square);
        out->chassis_z[first + l] = cabs(gw_lanes_get(&sweep->x[model->chassis_z], l));
        out->chassis_x[first + l] = cabs(gw_lanes_get(&sweep->x[model->chassis_x], l));
    }
}

gw_status gw_ride_curves(gw_ride_sweep *sweep, gw_ride_curve *out, gw_arena *arena, gw_error *err)
{
    gw_ride_curve c = { .n = POINTS };
    c.hz = gw_arena_alloc(arena, POINTS, sizeof *c.hz);
    c.force = gw_arena_alloc(arena, POINTS, sizeof *c.force);
    c.chassis_z = gw_arena_alloc(arena, POINTS, sizeof *c.chassis_z);
    c.chassis_x = gw_arena_alloc(arena, POINTS, sizeof *c.chassis_x);
    c.path = gw_arena_alloc(arena, POINTS * (size_t)sweep->model->n_paths, sizeof *c.path);
    c.paths = gw_arena_alloc(arena, (size_t)sweep->model->n_paths + 1, sizeof *c.paths);
    if (!c.hz || !c.force || !c.chassis_z || !c.chassis_x || !c.path || !c.paths)
        return gw_fail(err, GW_E_NOMEM, "out of memory while working out the transfer functions");
    for (int i = 0; i < POINTS; i++) c.hz[i] = LOWEST * pow(HIGHEST / LOWEST, i / (POINTS - 1.0));
    for (int first = 0; first < POINTS; first += GW_LANES) fill_batch(sweep, &c, first);
    for (int p = 0; p < sweep->model->n_paths; p++)
        c.paths[p] = (gw_path_curve){ sweep->model->paths[p].name, POINTS, &c.path[p * POINTS] };
    *out = c;
    return GW_OK;
}
