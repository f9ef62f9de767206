/* SPDX-License-Identifier: MIT */
/** Everything that a spread asks of one car, as a row of numbers. */
#ifndef STUDY_CARS_H
#define STUDY_CARS_H

#include "giveway/spread.h"
#include "study/drawn.h"

/** Where one result stands in the row. */
typedef struct gw_car_slot {
    int kit, load; /**< load -1: ride                                                    */
    gw_axle axle;
    bool manoeuvre;
    gw_side side;
    int first; /**< column of its first quantity                                       */
    int base;  /**< slot of the first kit under the same load; itself for the first kit */
} gw_car_slot;

typedef struct gw_car_plan {
    const gw_case *c;
    bool ride;
    int n_slots, n_columns;
    gw_car_slot *slot; /**< in the arena */
} gw_car_plan;

gw_status gw_car_plan_make(const gw_case *c, bool ride, gw_arena *arena, gw_car_plan *out, gw_error *err);

/**
 * Works a car out. What cannot be had is NAN.
 *
 * @param[out] row    n_columns numbers: toe, camber and fore-and-aft change; for ride, harshness and noise in
 * dB.
 * @param[out] err    the first reason why something could not be had; may be NULL.
 * @retval GW_OK      everything was had.
 * @retval GW_E_NOMEM nothing is to be trusted.
 * @retval others     the first failure; what was had is in the row.
 */
gw_status gw_car_work_out(const gw_car_plan *plan, const gw_case *c, const gw_selection *wanted, double *row,
                          gw_error *err);

#endif
