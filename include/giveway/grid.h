/* SPDX-License-Identifier: MIT */
/** Braking and cornering together: solved states over a grid of both, for pictures that move. SI units. */
#ifndef GIVEWAY_GRID_H
#define GIVEWAY_GRID_H

#include "giveway/api.h"
#include "giveway/road_car.h"
#include "giveway/study.h"

GW_API_BEGIN

/** One state. Where `solved` is false, a wheel lifts or the corner gives up, and the rest is zero. */
typedef struct gw_grid_state {
    bool solved;
    double toe, camber, camber_to_road;              /**< of the wheel as it stands [rad] */
    double toe_change, camber_change, caster_change; /**< since S0 [rad]                  */
    gw_vec3 wheel_centre;                            /**< movement since S0 [m]           */
    double travel, roll;                             /**< [m], [rad]                      */
    gw_corner_load applied,
        beside; /**< on this wheel and on the other one of the axle, each in its own axes */
} gw_grid_state;

/** One kit in one corner. */
typedef struct gw_grid {
    int kit;
    gw_axle axle;
    gw_grid_state *state; /**< [brake * n_lateral + lateral] */
    gw_grid_state *other; /**< the same of the other wheel; NULL: not wanted */
    gw_state *kept; /**< [as state] where the axle's parts are; without poses where they were not kept */
} gw_grid;

/** What the grid spans: evenly from 0 to the end of each, at least two of each. */
typedef struct gw_grid_plan {
    double brake_to_g, lateral_to_g; /**< > 0                  */
    int n_brake, n_lateral;          /**< at least 2 each      */
    gw_side side;                    /**< the wheel looked at  */
    bool both;                       /**< the other one as well */
    int keep_every; /**< of so many rows and columns one keeps where the parts are, on the road; 0: none */
} gw_grid_plan;

typedef struct gw_grid_study {
    gw_arena arena;
    gw_grid_plan plan;
    int n;         /**< 0: the case has no vehicle */
    gw_grid *item; /**< by kit, then corner */
    int n_roads;
    gw_road **road; /**< [kit] whose parts were kept; NULL: none, the car is not on the road */
} gw_grid_study;

/** g of a row or column of the grid. */
double gw_grid_brake(const gw_grid_plan *plan, int row);
double gw_grid_lateral(const gw_grid_plan *plan, int column);

/**
 * Solve the grid for every kit and corner wanted; the case must have a vehicle.
 * @param[out] out  owned by the caller; empty on failure.
 * @retval GW_OK, GW_E_SCHEMA (no vehicle), GW_E_MECHANISM, GW_E_NUMERIC (not even at rest), GW_E_NOMEM
 */
gw_status gw_study_grid(const gw_case *c, const gw_selection *wanted, const gw_grid_plan *plan,
                        gw_grid_study *out, gw_error *err);
void gw_grid_study_free(gw_grid_study *study);

/** The grid of a kit and corner; NULL where there is none. */
const gw_grid *gw_grid_find(const gw_grid_study *study, int kit, gw_axle axle);

GW_API_END

#endif
