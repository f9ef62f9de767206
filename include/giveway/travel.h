/* SPDX-License-Identifier: MIT */
/** Every kit and corner through bump and rebound. SI units; owned by the study and freed with it. */
#ifndef GIVEWAY_TRAVEL_H
#define GIVEWAY_TRAVEL_H

#include "giveway/api.h"
#include "giveway/corner_friction.h"
#include "giveway/corner_travel.h"
#include "giveway/study.h"

GW_API_BEGIN

/** Travels looked at: from `from` to `to` every `step`, `to` always among them [m]. */
typedef struct gw_travel_plan {
    double from, to;       /**< from < to                            */
    double step;           /**< > 0; at most GW_TRAVEL_MOST points   */
    gw_other_wheel wheels; /**< what the other wheel of the axle does meanwhile */
} gw_travel_plan;

enum { GW_TRAVEL_MOST = 2001 };

/** One place of the path under vertical load, or under a load besides. Changes are from S0. */
typedef struct gw_travel_point {
    double travel;                                   /**< of the wheel told                       */
    double other_travel;                             /**< of the other wheel of its axle          */
    double camber, toe;                              /**< [rad]                                   */
    double camber_change, toe_change, caster_change; /**< [rad]                                   */
    gw_vec3 wheel_centre, contact_patch;             /**< movement [m]                            */
    double track_change; /**< twice the patch's sideways movement [m]; NaN: the wheels do not move alike */
    double wheelbase_change; /**< of the wheel centre; longer is positive at either axle [m]      */
    gw_travel_rates rates;
    double parasitic;   /**< part of the wheel rate that rotation of bushes adds [N/m]; NAN: not known */
    double half_track;  /**< of the contact patch here [m]                                             */
    double roll_centre; /**< height above the ground, both wheels alike [m]; else NaN                  */
    gw_instant_centre side_view, front_view; /**< of the upright                                       */
    double brake_angle; /**< slope of the patch's path, forward in bump positive [rad]                 */
    double drive_angle; /**< the same of the wheel centre's [rad]                                      */
    double *tilt;       /**< one a bearing of the item [rad]                                           */
    double tilt_share;  /**< the largest as a share of its limit; NAN: no joint has one                */
} gw_travel_point;

/** A joint with a limit of tilt. */
typedef struct gw_travel_bearing {
    int joint;
    int solved;                /**< the same among the joints that were solved: an axle's     */
    double limit;              /**< of the joint or of its bush, the smaller [rad]                      */
    double tilt, at;           /**< the largest over the travel [rad], and where [m]                    */
    double margin;             /**< limit less tilt [rad]                                               */
    bool holds;                /**< the limit is nowhere passed                                         */
    double binds_up, binds_dn; /**< where the limit is reached in bump and in rebound [m]; NAN: nowhere */
} gw_travel_bearing;

/** Bushes of the corner that were tightened at another height than the ride height. */
typedef struct gw_travel_clamp {
    bool present;
    int n; /**< joints clamped elsewhere, with torsional rate               */
    int *joint;
    double *clamped_at; /**< travel at which the bolt was tightened [m]             */
    double *twist;      /**< of the bush at travel 0, about its axis [rad]          */
    double *torque;     /**< that it carries there [N m]                            */
    double ride_height; /**< how much higher the body stands on its own [m]         */
    double lift;        /**< what they carry of the body at travel 0 [N]         */
    double *vertical_load, *wheel_rate, *parasitic; /**< one a point [N], [N/m], [N/m] */
    double rest_rate, rest_parasitic;               /**< at travel 0 [N/m]             */
} gw_travel_clamp;

/** One kit in one corner; load -1: vertical load alone. */
typedef struct gw_travel_item {
    int kit, load;
    gw_axle axle;
    bool sided;          /**< both wheels are told, each in its own item */
    gw_wheel_side wheel; /**< which one                                  */
    bool rolls;          /**< the other wheel goes the other way: `roll` is there; load -1 */
    gw_roll_rates roll;
    int n;
    gw_travel_point *point;
    gw_travel_point rest; /**< travel 0                                              */
    bool has_anti;        /**< the case has a vehicle                                */
    double anti_brake,
        anti_drive;     /**< at travel 0, share of load transfer; drive: NaN where this axle is not driven */
    double drive_share; /**< of the loads that drive: 0, 0.5 or 1; NaN: the case has none, taken as 1 */
    double roll_centre_held; /**< load -1: height at travel 0 if the patch load did not change along the path,
                                  so without what bushes give to it; what load transfer takes [m] */
    double rate_rolling; /**< load -1, both wheels alike: wheel rate at travel 0 with the contact below the wheel
                              centre, where a tyre has it, however the upright pitches; NaN: not worked out [N/m] */
    const char *no_parasitic; /**< why it is not known; NULL where it is             */
    int n_bearings;
    gw_travel_bearing *bearing;  /**< in the order of the joints                      */
    gw_travel_clamp clamp;       /**< vertical load alone                             */
    const gw_friction *friction; /**< at the wheel; vertical load alone, else NULL    */
} gw_travel_item;

typedef struct gw_travel_study {
    gw_arena arena;
    gw_travel_plan plan;
    int n;
    gw_travel_item *item; /**< by kit, corner, then without and with each load       */
    int n_warnings;
    const char **warning;
} gw_travel_study;

/**
 * Bump and rebound of every kit and corner wanted; besides, with each load that is asked for by name
 * (`wanted->loads`; NULL: none), its forces constant along the path except the vertical one at the patch.
 *
 * @param[out] out  owned by the caller; empty on failure.
 * @retval GW_OK, GW_E_RANGE (the plan), GW_E_MECHANISM, GW_E_NUMERIC (names kit, corner and travel),
 * GW_E_NOMEM
 */
gw_status gw_study_travel(const gw_case *c, const gw_selection *wanted, const gw_travel_plan *plan,
                          gw_travel_study *out, gw_error *err);
void gw_travel_study_free(gw_travel_study *study);

/** The item of a kit, corner and load (-1: none), of the left wheel where both are told; NULL where there is
 * none.
 */
const gw_travel_item *gw_travel_find(const gw_travel_study *study, int kit, gw_axle axle, int load);

GW_API_END

#endif
