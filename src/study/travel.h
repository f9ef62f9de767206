/* SPDX-License-Identifier: MIT */
/** What the files of the study of travel share. Private to src/study. */
#ifndef GIVEWAY_STUDY_TRAVEL_H
#define GIVEWAY_STUDY_TRAVEL_H

#include "giveway/travel.h"
#include "study/run.h"

/** One study under way: the corner that is open, and scratch. */
typedef struct gw_travel_job {
    gw_run run;
    gw_travel_study *out;
    gw_fit fit[GW_MAX_JOINTS];
    gw_corner_result report; /**< its joints are those below */
    gw_joint_result joints[GW_MAX_JOINTS];
    gw_joint_result joints_beside[GW_MAX_JOINTS];
    bool both;                       /**< run.ws holds both wheels of the axle: loads are pairs of them */
    bool sided;                      /**< both wheels are told                                          */
    gw_wheel_side wheel;             /**< the one that is told                                          */
    gw_corner_load force[GW_WHEELS]; /**< of the load under way, on left (or only) and right wheel */
    double limit[GW_MAX_JOINTS];     /**< of tilt [rad]; 0: none   */
    double tilt[GW_MAX_JOINTS];
} gw_travel_job;

/** The path of the open corner, or of another one with other bushes, at one travel; `load` is one for each
 * wheel.
 */
gw_status gw_travel_state(gw_travel_job *job, gw_corner_ws *ws, const gw_corner_load *load, double travel,
                          gw_travel_rates *rates, gw_error *err);

/** Where an axle's wheels share parts or do not move alike, both stand in run.ws, in place of the corner;
 * job->both says so. */
gw_status gw_travel_open_axle(gw_travel_job *job, gw_error *err);

/** What a load of the case does to the wheels besides their vertical forces, into job->force; -1: nothing. */
gw_status gw_travel_forces(gw_travel_job *job, int load, gw_error *err);

/** Joint of the kit's list of fits that joint `solved` of the open corner is; -1: it is not this wheel's. */
int gw_travel_fitted(const gw_travel_job *job, int solved);

/** One line that belongs to the kit and corner that are open, kept as a warning. */
gw_status gw_travel_warn(gw_travel_job *job, const char *text, gw_error *err);

/** Limits of the kit into job->limit, and the item's list of bearings; their tilts come point by point. */
gw_status gw_bearings_begin(gw_travel_job *job, gw_travel_item *item, gw_error *err);
gw_status gw_bearings_point(gw_travel_job *job, const gw_travel_item *item, gw_travel_point *point,
                            gw_error *err);
/** The largest tilts, and by further solves where limits are reached. */
gw_status gw_bearings_end(gw_travel_job *job, const gw_corner_load *load, gw_travel_item *item,
                          gw_error *err);

/** The wheel rate without rotational rates, taken from that of each point. */
gw_status gw_travel_parasitic(gw_travel_job *job, gw_travel_item *item, gw_error *err);

/** The wheel rate at travel 0 with the contact below the wheel centre, however the upright pitches. */
gw_status gw_travel_rate_rolling(gw_travel_job *job, gw_travel_item *item, gw_error *err);

/** The same path with bushes tightened elsewhere; item->clamp.present says whether there are any. */
gw_status gw_travel_clamped(gw_travel_job *job, gw_travel_item *item, gw_error *err);

#endif
