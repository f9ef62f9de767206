/* SPDX-License-Identifier: MIT */
/**
 * Studies: loops over kits, corners and loads of a case. SI units. Results are owned by the study and
 * freed with it; they point into the case, which must outlive them.
 */
#ifndef GIVEWAY_STUDY_H
#define GIVEWAY_STUDY_H

#include "giveway/api.h"
#include "giveway/arena.h"
#include "giveway/case.h"
#include "giveway/faults.h"
#include "giveway/status.h"

GW_API_BEGIN

/** Every bush of a case worked out once. */
typedef struct gw_laws {
    int n;
    gw_bush_law *law; /**< [bush]; owned, freed with gw_laws_free */
} gw_laws;

/** Corners that a study opened, for those after it (see gw_deflect_study). */
typedef struct gw_opened gw_opened;

/** What of a case is wanted. NULL or zero: everything. */
typedef struct gw_selection {
    const bool *kits;  /**< one flag a kit; NULL: all                   */
    const bool *loads; /**< one flag a load; NULL: all                  */
    bool only_axle;    /**< true: only `axle`                           */
    gw_axle axle;
    gw_method method;        /**< how the rates of rubber are worked out      */
    const gw_laws *laws;     /**< bushes worked out beforehand, by `method`; NULL: the study works them out */
    const gw_opened *opened; /**< by a study of the same case before; it must outlive this one; NULL: none */
    bool brief; /**< handling: only what the summary of `compare` shows (see giveway/handling.h) */
} gw_selection;

/** The first kit that is wanted, beside which the others are set; the last of the case where none is.
 * `wanted` may be NULL. */
int gw_selection_first_kit(const gw_case *c, const gw_selection *wanted);

/**
 * Work every bush out, on all processors.
 * @retval GW_OK, GW_E_RANGE, GW_E_NUMERIC (of the first bush that fails, named), GW_E_NOMEM
 */
gw_status gw_laws_make(const gw_case *c, gw_method method, gw_laws *out, gw_error *err);
void gw_laws_free(gw_laws *laws);

/**
 * Fit a kit to a corner.
 *
 * @param[out] fit  one entry a joint of the corner: the law of its bush, and its two material points moved
 *                  by an off-centre bore (in the body that the bush is pressed into).
 */
void gw_fit_kit(const gw_case *c, const gw_laws *laws, int kit, gw_axle axle, gw_fit *fit);

/** The same for the right wheel of an axle without shared parts, drawn as a left one. */
void gw_fit_right(const gw_case *c, const gw_laws *laws, int kit, gw_axle axle, gw_fit *fit);

/** The same for both wheels of the axle: one entry a joint of the case's pair. */
void gw_fit_pair(const gw_case *c, const gw_laws *laws, int kit, gw_axle axle, gw_fit *fit);

/**
 * A joint of the corner as the wheel that is looked at has it: its place in the joints of the case's pair,
 * and so in the fits of a kit. A corner that lists both sides (shared parts) has it there itself.
 */
int gw_joint_of_wheel(const gw_case *c, gw_axle axle, gw_wheel_side wheel, int joint);

/** True where the kit puts another bush into a joint of the left than into its image on the right. */
bool gw_kit_differs_by_side(const gw_case *c, int kit, gw_axle axle);

/** True where the axle is not its own mirror image with this kit: both its wheels are told then. */
bool gw_kit_is_lopsided(const gw_case *c, int kit, gw_axle axle);

/** Wheels told of a kit on an axle under a load that acts there: one, or both. */
int gw_wheels_told(const gw_case *c, int kit, gw_axle axle, int load);

/** True where a joint of the corner is fitted with an off-centre bush. */
bool gw_kit_is_off_centre(const gw_case *c, int kit, gw_axle axle);

/**
 * Does the car stand at ride height with every kit? Adds to `faults` a line for a bush that cannot be worked
 * out and for every corner and kit that is a mechanism or finds no equilibrium under its static load, and a
 * warning for every member whose spin had to be held.
 *
 * @retval GW_OK  it stands; else the status of the first fault: GW_E_RANGE, GW_E_MECHANISM, GW_E_NUMERIC,
 *                GW_E_NOMEM.
 */
gw_status gw_study_standing(const gw_case *c, gw_faults *faults);

/** One kit in one corner under one load. */
typedef struct gw_deflection {
    int kit, load; /**< indices into the case                                      */
    gw_axle axle;
    const char
        *failed;    /**< why this load cannot be carried: nothing below but `side` holds then; NULL: it can */
    bool manoeuvre; /**< the fields below up to `camber_to_road` are then filled in */
    gw_side side;
    bool sided;             /**< both wheels are told, each in its own item                  */
    gw_wheel_side wheel;    /**< which one of the axle                                      */
    double roll;            /**< [rad]                                                      */
    double dive;            /**< part of the travel from longitudinal load [m]              */
    bool on_road;           /**< an equilibrium of the whole car: pitch and heave are known  */
    double pitch, heave;    /**< nose down [rad]; rise of the chassis' centre of mass [m]    */
    double camber_to_road;  /**< [rad]                                               */
    gw_corner_load applied; /**< forces and travel on this wheel                     */
    gw_corner_load beside;  /**< and on the other one of the axle, in its own mirrored axes; of a manoeuvre */
    bool off_centre;        /**< the kit has off-centre bushes in this corner        */
    double static_camber;   /**< of this kit [rad]                                   */
    gw_corner_result result;
    const struct gw_strength *strength; /**< of every joint (giveway/strength.h)      */
} gw_deflection;

typedef struct gw_deflect_study {
    gw_arena arena;
    int n;
    gw_deflection *item; /**< by kit, then corner, then load, in the order of the case */
    int n_failed;        /**< of them, those that cannot be carried                    */
    int n_warnings;
    const char **warning;
    double roll_centre[GW_AXLES]; /**< heights used [m], where the case has a vehicle and a load that is a manoeuvre */
    gw_opened *opened;            /**< what it opened, for studies after it; owned                */
} gw_deflect_study;

/**
 * Where the wheel goes, for every kit, corner and load wanted. A load that a corner cannot carry (a wheel
 * lifts, a joint runs out of travel) is marked as failed, with the reason; the others are given.
 *
 * @param[out] out  owned by the caller; empty on failure.
 * @retval GW_OK, GW_E_RANGE, GW_E_MECHANISM, GW_E_NOMEM
 * @retval GW_E_NUMERIC  a corner does not come to rest under its static load (names kit and corner).
 */
gw_status gw_study_deflect(const gw_case *c, const gw_selection *wanted, gw_deflect_study *out,
                           gw_error *err);
void gw_deflect_study_free(gw_deflect_study *study);

/** An item that failed has the kit, the load and the reason of one before it: a car that does not carry a
 * load says so of both its axles. */
bool gw_deflect_failed_before(const gw_deflect_study *study, int item);

/** The item for a kit, corner and load; NULL where it was not wanted or failed. */
const gw_deflection *gw_deflect_find(const gw_deflect_study *study, int kit, gw_axle axle, int load);

GW_API_END

#endif
