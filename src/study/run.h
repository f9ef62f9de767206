/* SPDX-License-Identifier: MIT */
/** What every study of solved corners shares: a case, its laws, and one corner open at a time. */
#ifndef GIVEWAY_STUDY_RUN_H
#define GIVEWAY_STUDY_RUN_H

#include "car/again.h"
#include "giveway/road_car.h"
#include "giveway/study.h"

/** Corners of much the same car, opened with each kit: where draws of it start. Only read. */
typedef struct gw_run_guide {
    gw_corner_ws **ws, **right; /**< [kit * GW_AXLES + axle]; NULL: none */
    gw_road **road;             /**< [kit] the car on the road; NULL: none */
    gw_road_mark *mark;         /**< [kit * (1 + n_loads)] where it stood: S0, then each load */
    bool *marked;               /**< [the same] it stood there */
    gw_nearness how;
} gw_run_guide;

typedef struct gw_run {
    const gw_case *c;
    const gw_selection *wanted;
    gw_laws laws;
    bool owns_laws;     /**< else they are those of `wanted` */
    gw_vehicle vehicle; /**< with roll-centre heights filled in, where a manoeuvre needs them */
    gw_fit fit[GW_MAX_JOINTS];
    gw_corner_ws *ws; /**< the corner that is open: kit `kit` on axle `axle`; NULL: none */
    gw_corner_ws
        *right;    /**< the right wheel's corner where the kit differs and nothing is shared; else NULL */
    bool on_right; /**< `ws` is the right wheel's, `right` the left one's */
    bool on_road;  /**< a manoeuvre is an equilibrium of the whole car                        */
    double made_up[GW_AXLES]; /**< of bars that are not in the joints [N/m]                           */
    gw_road *road;            /**< the car with this kit, stood up for its first manoeuvre; NULL: not yet */
    gw_manoeuvre driven;      /**< what `road` was asked for last                                     */
    bool drives;              /**< it carries it                                                      */
    gw_error refused;         /**< else why not; "" where that is not known                           */
    bool untold; /**< nobody reads why the car does not carry a manoeuvre: where a wheel lifts is not looked
                    for */
    const gw_run_guide *guide; /**< NULL: every corner is opened as if it were the first          */
    const gw_state *near_dive,
        *near; /**< where the next load starts: dive and outcome of the guide's; NULL: S0 */
    const gw_road_mark *near_road; /**< where the next manoeuvre starts on the road; NULL: S0              */
    gw_state *keep_dive;           /**< dive is copied there; NULL: nowhere                           */
    const gw_fit
        *set; /**< of the pair of `axle`, for the road, where its parts are moved; NULL: as the kit has it */
    gw_state state;
    int kit;
    gw_axle axle;
} gw_run;

/** Work every bush out and, where the case has a vehicle, fill in the roll-centre heights left out. */
gw_status gw_run_open(gw_run *run, const gw_case *c, const gw_selection *wanted, gw_error *err);
/** The same for a draw of the guide's car, for the wheels' movement alone: nothing is told of joints. */
gw_status gw_run_open_near(gw_run *run, const gw_case *c, const gw_selection *wanted,
                           const gw_run_guide *guide, gw_error *err);
/** The same where no manoeuvre is driven: what the vehicle says of its roll is not looked at. */
gw_status gw_run_open_on_ramp(gw_run *run, const gw_case *c, const gw_selection *wanted, gw_error *err);
void gw_run_close(gw_run *run);

bool gw_run_wants_kit(const gw_run *run, int kit);
bool gw_run_wants_axle(const gw_run *run, gw_axle axle);
bool gw_run_wants_load(const gw_run *run, int load, gw_axle axle);

/** How far a joint may tilt, by itself or by the bush that is fitted at a joint of the pair, the smaller; 0:
 * no limit is given [rad]. */
double gw_tilt_limit(const gw_case *c, int kit, const gw_joint *joint, gw_axle axle, int fitted);

/** Open a corner with a kit fitted; messages name case and kit. Close it whatever is returned. */
gw_status gw_run_open_corner(gw_run *run, int kit, gw_axle axle, gw_error *err);
void gw_run_close_corner(gw_run *run);

/** More lines behind a list of them; the list is made anew in the arena, the lines are not copied. */
gw_status gw_run_add_warnings(gw_arena *arena, const char ***list, int *n, const char **more, int n_more,
                              gw_error *err);

/** One more warning, "kit NAME", then `how` and ": ", then the text, all copied into the arena. */
gw_status gw_run_warn(const gw_run *run, const char *how, const char *text, gw_arena *arena,
                      const char ***list, int *n, gw_error *err);

/** The warnings of the corner that is open, each a line of the kind above. */
gw_status gw_run_corner_warnings(const gw_run *run, const char *how, gw_arena *arena, const char ***list,
                                 int *n, gw_error *err);

/** A warning for each kit and joint that goes further than its bush was measured, under the worst of the
 * loads. */
gw_status gw_run_beyond(const gw_run *run, gw_deflect_study *out, gw_error *err);

/**
 * Solve the open corner; run->state holds the equilibrium and `item` everything but its joints' memory:
 * item->result.joints must have room for every joint of the corner, or is NULL where nobody reads them.
 * item->wheel says which wheel of a direct load is told, the side of a manoeuvre which of the manoeuvre.
 */
gw_status gw_run_direct(gw_run *run, const gw_corner_load *load, gw_other_wheel other, gw_deflection *item,
                        gw_error *err);
gw_status gw_run_manoeuvre(gw_run *run, const gw_manoeuvre *manoeuvre, gw_deflection *item, gw_error *err);

/**
 * Solve the open corner on the ramp under a load on each wheel, in mirrored axes, and read one wheel; `out`
 * has room for every joint of the corner. Where nothing is shared the other wheel's load does nothing.
 */
gw_status gw_run_look(gw_run *run, const gw_corner_load load[GW_WHEELS], gw_wheel_side wheel, gw_drive drive,
                      gw_corner_result *out, gw_error *err);
/** Of a wheel with this kit, standing still [rad]. */
double gw_run_static_camber(const gw_run *run, gw_wheel_side wheel);

#endif
