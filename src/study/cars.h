/* SPDX-License-Identifier: MIT */
/** Everything that a spread asks of one car, as a row of numbers. */
#ifndef STUDY_CARS_H
#define STUDY_CARS_H

#include "giveway/spread.h"
#include "study/drawn.h"
#include "study/run.h"

/** Columns of a slot under a load: what a spread tells, then what goals may ask for besides. */
enum { GW_CAR_CASTER = GW_SPREAD_QUANTITIES, GW_CAR_TO_ROAD, GW_CAR_COLUMNS };

/** Where one result stands in the row. */
typedef struct gw_car_slot {
    int kit, load; /**< load -1: ride                                                    */
    gw_axle axle;
    bool manoeuvre;
    gw_side side;        /**< of a manoeuvre                                             */
    bool sided;          /**< a direct load of which both wheels are told                */
    gw_wheel_side wheel; /**< which of them                                              */
    int first;           /**< column of its first quantity                               */
    bool left_out;       /**< of sums over loads: some kit does not carry this load     */
    int base;            /**< slot of the first kit, same load and wheel; itself for the first kit  */
    int like; /**< slot of an earlier kit that puts the same bushes into this axle: the same figures; or -1 */
} gw_car_slot;

typedef struct gw_car_plan {
    const gw_case *c;
    bool ride;
    int first_kit; /**< that the others are set beside */
    int n_slots, n_columns;
    gw_car_slot *slot; /**< in the arena */
} gw_car_plan;

/** @param wanted  what is worked out; NULL: everything. */
gw_status gw_car_plan_make(const gw_case *c, bool ride, const gw_selection *wanted, gw_arena *arena,
                           gw_car_plan *out, gw_error *err);

/**
 * Root mean square of what a kit should not do: of its toe changes, or by the goals of the case.
 *
 * @param[out] by  derivative of it with each column; NULL: not asked for; else zeros on entry.
 * @return NAN where one of them was not had.
 */
double gw_car_unsteadiness(const gw_car_plan *plan, int kit, const double *row, double *by);

/** The states of a car, from which those of cars that differ little are looked for. Only read by these. */
typedef struct gw_car_guide {
    int n_slots, n_corners;
    const gw_case *c;             /**< as it was worked out; borrowed                               */
    gw_laws laws;                 /**< its bushes; borrowed                                         */
    double roll_centre[GW_AXLES]; /**< as used [m]                                                  */
    const double *row;            /**< what was found; borrowed                                     */
    gw_run_guide run;
    gw_arena arena;         /**< what the marks hold                                         */
    gw_state *dive, *state; /**< [slot]                                                          */
    bool *kept;             /**< [slot] there are such                                           */
} gw_car_guide;

/**
 * Works a car out. What cannot be had is NAN.
 *
 * @param[in]  from   of the same plan; NULL: every state is looked for from standing still.
 * @param[out] keep   its states; freed by the caller, whatever is returned, before the case; NULL: not kept.
 * @param[out] row    n_columns numbers: toe, camber and fore-and-aft change; for ride, harshness and noise in
 * dB.
 * @param[out] err    the first reason why something could not be had; may be NULL.
 * @retval GW_OK      everything was had.
 * @retval GW_E_NOMEM nothing is to be trusted.
 * @retval others     the first failure; what was had is in the row.
 */
gw_status gw_car_work_out(const gw_car_plan *plan, const gw_case *c, const gw_selection *wanted,
                          const gw_car_guide *from, gw_car_guide *keep, double *row, gw_error *err);

/** What each figure does to the states of a guide's car, to first order in its z. */
typedef struct gw_car_lead {
    const gw_car_plan *plan;
    const gw_car_guide *guide; /**< borrowed */
    int n;                     /**< figures */
    long length;               /**< numbers a figure */
    double *screw;             /**< [figure][length] of each state that is known, a unit of z */
    bool *moves;               /**< [figure][slot] any of them is not zero */
} gw_car_lead;

gw_status gw_car_lead_open(const gw_car_plan *plan, const gw_car_guide *guide, int n_figures,
                           gw_car_lead *out, gw_error *err);
void gw_car_lead_close(gw_car_lead *lead);
/** Adds `by` times the way from the guide's states to those of a car that a figure was moved in. Figures may
 * be learnt at once by several threads. */
void gw_car_lead_learn(gw_car_lead *lead, int figure, const gw_car_guide *there, double by);
/** A guide with states of its own, for one thread; all else is the lead's guide's. */
gw_status gw_car_led_open(const gw_car_lead *lead, gw_car_guide *out, gw_error *err);
void gw_car_led_close(gw_car_guide *led);
/**
 * Puts its states where the lead takes them.
 *
 * @param[in] by       z of each figure less the guide's; NULL: where the guide's are.
 */
void gw_car_lead_follow(const gw_car_lead *lead, const double *by, gw_car_guide *led);

/**
 * A car that differs from the guide's by one small step of one figure, to first order in the step. Corners
 * that the figure does not touch are taken over. Roll centres that are worked out from the corners stay as
 * they were in the guide's car, so that one axle's points do not ask for the other axle anew: what they would
 * do to the rest is told by gw_car_by_roll_centre. Without ride, whose columns are left alone.
 *
 * @param[out] there  states of what is worked out go there, those of the rest stay; NULL: nowhere.
 * @param[out] moved  how far each roll centre goes [m].
 * @retval as gw_car_work_out
 */
gw_status gw_car_nudge(const gw_car_plan *plan, const gw_case *c, const gw_selection *wanted,
                       const gw_car_guide *from, gw_car_guide *there, double *row, double moved[GW_AXLES],
                       gw_error *err);

/** What a metre of roll centre, front and rear, does to each column of the guide's car. */
gw_status gw_car_by_roll_centre(const gw_car_plan *plan, const gw_selection *wanted, const gw_car_guide *from,
                                double *slope[GW_AXLES], gw_error *err);
void gw_car_guide_free(gw_car_guide *guide);

#endif
