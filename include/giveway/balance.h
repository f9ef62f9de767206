/* SPDX-License-Identifier: MIT */
/**
 * Understeer budget by cornering compliance: how many degrees of slip and steer an axle needs per g, and what
 * asks for them. SI units (rad per g).
 *
 * Source: R. T. Bundorf, SAE 670078 (1967); R. T. Bundorf and R. L. Leffert, SAE 760713 (1976).
 */
#ifndef GIVEWAY_BALANCE_H
#define GIVEWAY_BALANCE_H

#include "giveway/api.h"
#include "giveway/tyre.h"
#include "giveway/vehicle.h"

GW_API_BEGIN

/** Entries of the budget. Positive: the axle needs more slip; understeer in front, oversteer behind. */
typedef enum gw_budget_entry {
    GW_BUDGET_TYRE,              /**< bare tyres upright and straight, with the load transferred      */
    GW_BUDGET_ALIGNING,          /**< aligning torque of all tyres, which turns the body out of the corner */
    GW_BUDGET_SETTING,           /**< static toe and camber, which the loaded wheel makes more of     */
    GW_BUDGET_ROLL_STEER,        /**< toe with suspension travel                                      */
    GW_BUDGET_LOAD_STEER,        /**< toe by the bushes under the change of vertical load             */
    GW_BUDGET_LATERAL_STEER,     /**< toe by the bushes under lateral force                           */
    GW_BUDGET_ALIGNING_STEER,    /**< toe by the bushes under aligning torque                         */
    GW_BUDGET_ROLL_CAMBER,       /**< body roll and camber with suspension travel                     */
    GW_BUDGET_COMPLIANCE_CAMBER, /**< camber by the bushes                                            */
    GW_BUDGET_CURVE,             /**< what a curved tyre adds when all of these act together          */
    GW_BUDGET_ENTRIES
} gw_budget_entry;

typedef struct gw_budget {
    double entry[GW_AXLES][GW_BUDGET_ENTRIES]; /**< [rad/g]                                                 */
    double axle[GW_AXLES]; /**< cornering compliance of an axle: the sum of its entries [rad/g]             */
    double understeer;     /**< gradient: front less rear [rad/g]; positive is understeer                   */
} gw_budget;

/** The sums of a budget whose entries are there. */
void gw_budget_sum(gw_budget *budget);

enum { GW_TOE_SETTING, GW_TOE_TRAVEL, GW_TOE_LOAD, GW_TOE_LATERAL, GW_TOE_ALIGNING, GW_TOE_PARTS };
enum { GW_CAMBER_SETTING, GW_CAMBER_ROLL, GW_CAMBER_COMPLIANCE, GW_CAMBER_PARTS };

/** One wheel in the corner, drawn as the left one. */
typedef struct gw_wheel_state {
    double vertical;                /**< load [N], >= 0                             */
    double toe[GW_TOE_PARTS];       /**< toe-in positive [rad]                       */
    double camber[GW_CAMBER_PARTS]; /**< to the road, top outboard positive [rad]    */
} gw_wheel_state;

/** One axle at one lateral acceleration. */
typedef struct gw_axle_state {
    double g;                /**< lateral acceleration over g, > 0                                */
    double force;            /**< lateral force of the axle [N], >= 0                             */
    double aligning;         /**< further lateral force that aligning torque asks for [N]         */
    gw_wheel_state wheel[2]; /**< [GW_OUTER], [GW_INNER]                                          */
} gw_axle_state;

/**
 * The entries of one axle.
 *
 * The bare tyres give the slip; their slopes there turn every toe and camber into slip (toe-out of the outer
 * wheel and toe-in of the inner one steer out of the turn). What is left to the slip that all of it together
 * asks for is GW_BUDGET_CURVE: nothing with linear coefficients. A table's slopes are those of gw_tyre_chord
 * over GW_TYRE_STRETCH. Every entry is the mean of turning to either side, so that conicity and ply steer,
 * which help on one side what they hinder on the other, are not in it.
 *
 * @param[out] entry  GW_BUDGET_ENTRIES of them [rad/g]; written only on GW_OK.
 * @retval GW_OK
 * @retval GW_E_NUMERIC  the tyres cannot carry this force.
 */
gw_status gw_budget_entries(const gw_tyre *tyre, const gw_axle_state *state, double *entry, gw_error *err);

/** Lateral force that aligning torque asks of an axle in the corner [N]: + in front, - behind. */
double gw_aligning_force(const gw_vehicle *vehicle, gw_axle axle, double g);

GW_API_END

#endif
