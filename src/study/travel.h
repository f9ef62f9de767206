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
    double limit[GW_MAX_JOINTS]; /**< of tilt [rad]; 0: none   */
    double tilt[GW_MAX_JOINTS];
} gw_travel_job;

/** The path of the open corner, or of another one with other bushes, at one travel. */
gw_status gw_travel_state(gw_travel_job *job, gw_corner_ws *ws, const gw_corner_load *load, double travel,
                          gw_travel_rates *rates, gw_error *err);

/** Travel of point `index` of the plan [m]. */
double gw_travel_of(const gw_travel_plan *plan, int index);

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

/** The same path with bushes tightened elsewhere; item->clamp.present says whether there are any. */
gw_status gw_travel_clamped(gw_travel_job *job, gw_travel_item *item, gw_error *err);

#endif
