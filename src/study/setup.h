/* SPDX-License-Identifier: MIT */
/** A corner with its adjusters as a function of their movements, and the search for a target on it. */
#ifndef STUDY_SETUP_H
#define STUDY_SETUP_H

#include "giveway/align.h"
#include "giveway/casefile.h"
#include "study/least.h"
#include "study/run.h"

enum { GW_MAX_MOVES = 2 * GW_MAX_ADJUSTERS };

#define GW_SETUP_STEP 2e-4 /**< of differences of second order [m] */

/** One movement: of an adjuster, along one of its axes. */
typedef struct gw_axis_of {
    int adjuster, axis;
} gw_axis_of;

/** Derivatives of a stance with one movement, per metre. */
typedef gw_sensitivity gw_slope;

typedef struct gw_setup {
    gw_run *run; /**< kit and axle are set; its corner is opened and closed by the functions here */
    const gw_corner *corner;
    const gw_align *align;
    gw_fit base[GW_MAX_JOINTS]; /**< the kit alone */
    gw_fit pair[GW_MAX_JOINTS]; /**< both wheels of the axle as last fitted; made where the case is on the
                                   road */
    int n;                      /**< movements     */
    gw_axis_of *of;
    double *lo, *hi; /**< now; a shim is held by making both the same */
    double *cost;
    int n_discs;
    gw_disc *disc;    /**< of offsets: about the one that makes the kit's own bush one in the middle */
    double *x, *next; /**< movements [m] */
    bool *holds;
    gw_slope *slope;
    double *row[GW_LEAST_ROWS];
    gw_least *least;
    gw_corner_ws *own;        /* the kit alone, where no study before has opened it */
    const gw_corner_ws *near; /* from which the search looks at first; NULL: it does not stand */
    gw_corner_ws *centre;     /* while slopes are taken about it */
} gw_setup;

/** Fits the kit and lays the movements out; memory from the arena. Close it whatever is returned. */
gw_status gw_setup_open(gw_run *run, int kit, gw_axle axle, gw_arena *arena, gw_setup *out, gw_error *err);
void gw_setup_close(gw_setup *setup);

/** The corner with movements x fitted and solved: opens run->ws, which stays open until the next call. */
gw_status gw_setup_fit(gw_setup *setup, const double *x, gw_error *err);

/** The same for its setting and stance alone, as the search asks for many times: from the corner that was
 * open before, or the kit alone, and without what is told of joints. */
gw_status gw_setup_look(gw_setup *setup, const double *x, gw_error *err);

/** The stance of the open corner. */
gw_status gw_setup_stance(gw_setup *setup, gw_stance *out, gw_error *err);

/**
 * Derivatives at x by differences of solved corners, of fourth order in `step` (else of second), with track
 * and bump steer where `all` is set. The corner at x is then open, as after gw_setup_look.
 */
gw_status gw_setup_slopes(gw_setup *setup, const double *x, double step, bool fourth, bool all,
                          gw_error *err);

/** Slope of one target. */
double gw_slope_of(const gw_slope *slope, gw_target which);

/** The linear problem at x, from the slopes in the setup and the setting there. */
void gw_setup_linearise(gw_setup *setup, const double *x, const gw_corner_setting *at,
                        gw_least_problem *problem);

/** From setup->x within lo and hi to the best setting there, left in setup->x; `holds` filled. */
gw_status gw_setup_reach(gw_setup *setup, gw_error *err);

/** As gw_setup_reach, shims in whole steps. */
gw_status gw_setup_reach_in_steps(gw_setup *setup, gw_arena *arena, gw_error *err);

/** Targets given, in order of priority; returns their number. */
int gw_targets_given(const gw_align *align, gw_target which[GW_TARGETS]);

/** Full-eccentricity solutions beside the one in setup->x, where there are any. */
gw_status gw_setup_turn(gw_setup *setup, gw_arena *arena, gw_align_item *item, gw_error *err);

/** What setup->x means adjuster by adjuster. */
void gw_setup_read(const gw_setup *setup, const double *x, gw_adjustment *set);

#endif
