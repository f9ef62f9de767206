/* SPDX-License-Identifier: MIT */
/** The parts of the handling study; each takes what it needs from the corner that is open. */
#ifndef GW_STUDY_HANDLING_RUN_H
#define GW_STUDY_HANDLING_RUN_H

#include "giveway/handling.h"
#include "study/run.h"

/** What one kit was found to do in one corner, kept until both axles are known. */
typedef struct gw_kit_states {
    int n[GW_AXLES];
    gw_axle_state state[GW_AXLES][GW_BALANCE_POINTS];
} gw_kit_states;

/** Toe and camber of a wheel [rad]. */
typedef struct gw_wheel_angles {
    double toe, camber;
} gw_wheel_angles;

/** Both wheels of an axle under a load on each: of the other wheel the same is asked soon after. */
typedef struct gw_axle_look {
    gw_corner_load load[GW_WHEELS];
    gw_drive drive;
    gw_wheel_angles wheel[GW_WHEELS];
} gw_axle_look;
enum { GW_LOOKS = 4 };

typedef struct gw_handling_run {
    gw_run run;
    gw_handling_study *out;
    gw_tyre *tyre[GW_AXLES];
    gw_kit_states *states;                 /**< [kit] */
    gw_joint_result joints[GW_MAX_JOINTS]; /**< scratch of the report */
    gw_axle_look look[GW_LOOKS];           /**< the last ones into the axle that is open */
    int n_looks;                           /**< since it was opened */
} gw_handling_run;

/** Solve the open corner under a load on each wheel (mirrored axes) and read one of them. */
gw_status gw_handling_look(gw_handling_run *h, const gw_corner_load load[GW_WHEELS], gw_wheel_side wheel,
                           gw_drive drive, gw_wheel_angles *out, gw_error *err);

/** The loads of a manoeuvre on both wheels of its axle, in the order of gw_wheel_side. */
void gw_handling_loads(const gw_deflection *item, gw_corner_load out[GW_WHEELS]);

/** A manoeuvre in the open corner; the joints of `item` are scratch. */
gw_status gw_handling_manoeuvre(gw_handling_run *h, const gw_manoeuvre *m, gw_deflection *item,
                                gw_error *err);

/** As set on the ramp, with this kit. */
gw_wheel_angles gw_handling_setting(const gw_handling_run *h, gw_wheel_side wheel);

/**
 * Notes a part of the kit at hand that cannot be worked out: "rear wheel: WHAT left out: why".
 *
 * @param axle  GW_AXLES: both.
 * @param load  of the case; -1: none of them.
 * @param why   status GW_E_NUMERIC and its message; any other status is handed up as it is.
 * @retval GW_OK, GW_E_NOMEM, or the status in `why`
 */
gw_status gw_handling_leave_out(gw_handling_run *h, int kit, gw_axle axle, int load, const char *what,
                                const gw_error *why, gw_error *err);

/* Each adds what it finds of the open corner to h->out. */
gw_status gw_handling_budgets(gw_handling_run *h, gw_error *err);
gw_status gw_handling_states(gw_handling_run *h, gw_error *err);
gw_status gw_handling_braking(gw_handling_run *h, gw_braking_corner *out, gw_error *err);
gw_status gw_handling_traction(gw_handling_run *h, gw_error *err);

/* With both axles known. */
/** `there` is false where a wheel lifts too early for a balance. */
gw_status gw_handling_balance(gw_handling_run *h, int kit, gw_balance_item *out, bool *there, gw_error *err);
void gw_handling_drift(const gw_handling_run *h, const gw_balance_item *balance, gw_braking_item *item);

/** From the study's sweep. */
gw_status gw_handling_bands(gw_handling_study *out, gw_error *err);

#endif
