/* SPDX-License-Identifier: MIT */
/** How far a kit stays from its limits, and how much of it could be judged. */
#ifndef GIVEWAY_STAND_H
#define GIVEWAY_STAND_H

#include "giveway/api.h"
#include "giveway/strength.h"

GW_API_BEGIN

typedef enum gw_stand_state {
    GW_STAND_UNKNOWN, /**< no joint could be judged                        */
    GW_STAND_WITHIN,  /**< nothing judged comes near its limit             */
    GW_STAND_CLOSE,   /**< something works at GW_STAND_CLOSE_FROM or more  */
    GW_STAND_BEYOND
} gw_stand_state;

/** From this part of a limit on a joint is called close to it: common practice. */
#define GW_STAND_CLOSE_FROM 0.8

typedef struct gw_stand {
    gw_stand_state state;
    const gw_overload *nearest; /**< borrowed from the study; NULL: none judged           */
    int joints, judged;         /**< in the corners that were looked at                   */
    int by_rates;               /**< not judged: bushes given by rates, or as measured    */
    int ball_joints;            /**< not judged: nothing is known of their strength       */
} gw_stand;

/**
 * One kit against its limits.
 *
 * @param deflect  tells which corners were looked at.
 * @param peaks    of gw_study_strength_peaks over that study.
 */
gw_stand gw_stand_of(const gw_case *c, const gw_deflect_study *deflect, const gw_strength_study *peaks,
                     int kit);

/** Whether both are of one joint as it is named, or of it and its mirror image. */
bool gw_stand_same_joint(const gw_case *c, const gw_overload *a, const gw_overload *b);

/** Whether another item of the kit speaks for this one: of the other side of an axle, which has the same bush
 * there, and nearer to the same limit or further beyond it. */
bool gw_stand_is_outdone(const gw_case *c, const gw_strength_study *study, int item);

/** How many joints of a kit have a figure beyond its limit; left and right with the same bush are one, since
 * a load may tell one wheel or both. */
int gw_stand_joints_beyond(const gw_case *c, const gw_strength_study *study, int kit);

/** Whether an earlier item of the kit says the same of the joint as it is named: the other side of an axle
 * that is alike to a hundredth, as it is told. */
bool gw_stand_is_told(const gw_case *c, const gw_strength_study *study, int item);

/** "not judged", "within", "close" or "beyond". */
const char *gw_stand_word(gw_stand_state state);

GW_API_END

#endif
