/* SPDX-License-Identifier: MIT */
/** From standing still to more and more braking, cornering or driving: solved states on the way. SI units. */
#ifndef GIVEWAY_SWEEP_H
#define GIVEWAY_SWEEP_H

#include "giveway/api.h"
#include "giveway/study.h"

GW_API_BEGIN

typedef enum gw_sweep_axis { GW_SWEEP_BRAKE, GW_SWEEP_LATERAL, GW_SWEEP_DRIVE } gw_sweep_axis;

typedef struct gw_sweep_point {
    double g;           /**< of the axis of the sweep                                   */
    double toe, camber; /**< [rad]                                                      */
    double toe_change, camber_change, camber_to_road; /**< [rad]                        */
    gw_vec3 wheel_centre; /**< movement since S0 [m]                                    */
    double travel, roll;  /**< [m], [rad]                                               */
} gw_sweep_point;

/** One kit in one corner. */
typedef struct gw_sweep {
    int kit;
    gw_axle axle;
    int n; /**< points; fewer than asked for where a wheel lifts or the corner gives up */
    gw_sweep_point *point;
} gw_sweep;

/** What a sweep goes along. */
typedef struct gw_sweep_plan {
    gw_sweep_axis axis;
    double to_g;        /**< from 0 to this, > 0                     */
    int n;              /**< points, at least 2                      */
    gw_manoeuvre along; /**< what stays constant; side; driven wheels */
} gw_sweep_plan;

typedef struct gw_sweep_study {
    gw_arena arena;
    gw_sweep_plan plan;
    int n;
    gw_sweep *item; /**< by kit, then corner */
} gw_sweep_study;

/**
 * Sweep every kit and corner wanted; the case must have a vehicle.
 * @retval GW_OK, GW_E_SCHEMA (no vehicle), GW_E_MECHANISM, GW_E_NUMERIC, GW_E_NOMEM
 */
gw_status gw_study_sweep(const gw_case *c, const gw_selection *wanted, const gw_sweep_plan *plan,
                         gw_sweep_study *out, gw_error *err);
void gw_sweep_study_free(gw_sweep_study *study);

/** The sweep of a kit and corner; NULL where there is none. */
const gw_sweep *gw_sweep_find(const gw_sweep_study *study, int kit, gw_axle axle);

GW_API_END

#endif
