/* SPDX-License-Identifier: MIT */
/** What every study of solved corners shares: a case, its laws, and one corner open at a time. */
#ifndef GIVEWAY_STUDY_RUN_H
#define GIVEWAY_STUDY_RUN_H

#include "giveway/study.h"

typedef struct gw_run {
    const gw_case *c;
    const gw_selection *wanted;
    gw_laws laws;
    gw_vehicle vehicle; /**< with roll-centre heights filled in, where a manoeuvre needs them */
    gw_fit fit[GW_MAX_JOINTS];
    gw_corner_ws *ws; /**< the corner that is open: kit `kit` on axle `axle`; NULL: none */
    gw_state state;
    int kit;
    gw_axle axle;
} gw_run;

/** Work every bush out and, where the case has a vehicle, fill in the roll-centre heights left out. */
gw_status gw_run_open(gw_run *run, const gw_case *c, const gw_selection *wanted, gw_error *err);
void gw_run_close(gw_run *run);

bool gw_run_wants_kit(const gw_run *run, int kit);
bool gw_run_wants_axle(const gw_run *run, gw_axle axle);
bool gw_run_wants_load(const gw_run *run, int load, gw_axle axle);

/** Open a corner with a kit fitted; messages name case and kit. Close it whatever is returned. */
gw_status gw_run_open_corner(gw_run *run, int kit, gw_axle axle, gw_error *err);
void gw_run_close_corner(gw_run *run);

/**
 * Solve the open corner; run->state holds the equilibrium and `item` everything but its joints' memory:
 * item->result.joints must have room for every joint of the corner.
 */
gw_status gw_run_direct(gw_run *run, const gw_corner_load *load, gw_deflection *item, gw_error *err);
gw_status gw_run_manoeuvre(gw_run *run, const gw_manoeuvre *manoeuvre, gw_deflection *item, gw_error *err);

typedef enum gw_sweep_axis { GW_SWEEP_BRAKE, GW_SWEEP_LATERAL, GW_SWEEP_DRIVE } gw_sweep_axis;

typedef struct gw_sweep_point {
    double g;                                         /**< of the axis of the sweep                     */
    double toe, camber;                               /**< [rad]                                        */
    double toe_change, camber_change, camber_to_road; /**< [rad]                 */
    gw_vec3 wheel_centre;                             /**< movement since S0 [m]                        */
    double travel, roll;                              /**< [m], [rad]                                   */
} gw_sweep_point;

typedef struct gw_sweep {
    gw_sweep_axis axis;
    double to_g;        /**< from 0 to this, in n points                        */
    gw_manoeuvre along; /**< what stays constant, with side and driven wheels   */
    int n;              /**< wanted, at least 2; fewer come back where a wheel lifts */
    gw_arena *arena;    /**< owns the points                                    */
    gw_sweep_point *point;
} gw_sweep;

/** Needs the vehicle of the case. Opens and closes the corner itself. */
gw_status gw_study_sweep(gw_run *run, int kit, gw_axle axle, gw_sweep *sweep, gw_error *err);

#endif
