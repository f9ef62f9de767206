/* SPDX-License-Identifier: MIT */
/* One kit in one corner from standing still to more and more braking, cornering or driving. */
#include "study/run.h"

static gw_manoeuvre manoeuvre_of(const gw_sweep *sweep, double g)
{
    gw_manoeuvre m = sweep->along;
    switch (sweep->axis) {
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

/* A wheel that lifts ends the sweep there; any other failure is one. */
static gw_status run_points(gw_run *run, gw_sweep *sweep, gw_error *err)
{
    gw_deflection item = { .load = -1 };
    gw_wheel_load unused;
    item.result.joints =
        gw_arena_alloc(sweep->arena, (size_t)run->c->corners[run->axle].n_joints, sizeof *item.result.joints);
    if (!item.result.joints) return gw_fail(err, GW_E_NOMEM, "out of memory for a sweep");
    for (int i = 0; i < sweep->n; i++) {
        double g = sweep->to_g * i / (sweep->n - 1);
        gw_manoeuvre m = manoeuvre_of(sweep, g);
        if (gw_vehicle_wheel_load(&run->vehicle, &m, run->axle, &unused, NULL) != GW_OK) {
            sweep->n = i;
            break;
        }
        gw_status status = gw_run_manoeuvre(run, &m, &item, err);
        if (status != GW_OK) return status;
        sweep->point[i] = (gw_sweep_point){ .g = g,
                                            .toe = item.result.toe,
                                            .camber = item.result.camber,
                                            .toe_change = item.result.toe_change,
                                            .camber_change = item.result.camber_change,
                                            .camber_to_road = item.camber_to_road,
                                            .wheel_centre = item.result.wheel_centre,
                                            .travel = item.applied.travel,
                                            .roll = item.roll };
    }
    return GW_OK;
}

gw_status gw_study_sweep(gw_run *run, int kit, gw_axle axle, gw_sweep *sweep, gw_error *err)
{
    sweep->point = gw_arena_alloc(sweep->arena, (size_t)sweep->n, sizeof *sweep->point);
    if (!sweep->point) return gw_fail(err, GW_E_NOMEM, "out of memory for a sweep");
    gw_status status = gw_run_open_corner(run, kit, axle, err);
    if (status == GW_OK) status = run_points(run, sweep, err);
    gw_run_close_corner(run);
    return status;
}
