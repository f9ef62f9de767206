/* SPDX-License-Identifier: MIT */
/** How hard the bushes of a case work under its loads, against what lasts. SI units. */
#ifndef GIVEWAY_STRENGTH_H
#define GIVEWAY_STRENGTH_H

#include "giveway/align.h"
#include "giveway/api.h"
#include "giveway/bearing.h"
#include "giveway/strain.h"
#include "giveway/study.h"

GW_API_BEGIN

typedef enum gw_strength_kind {
    GW_STRENGTH_NONE,   /**< given by rates: nothing is known of its insides */
    GW_STRENGTH_RUBBER, /**< bonded or unbonded                              */
    GW_STRENGTH_BEARING
} gw_strength_kind;

enum { GW_STRENGTH_CHECKS = 3 }; /**< as many as strain.h and bearing.h make */

/** One joint under one load. */
typedef struct gw_strength {
    gw_strength_kind kind;
    const gw_bush *bush;     /**< fitted; borrowed from the case                  */
    gw_rubber_strain strain; /**< RUBBER                                      [-] */
    double load;             /**< BEARING: size of the force in it            [N] */
    double specific_load;    /**< BEARING: per ball diameter times width     [Pa] */
    int n_checks;
    gw_verdict check[GW_STRENGTH_CHECKS];
    bool holds; /**< all of them */
} gw_strength;

/**
 * Strength of one joint. The strain is that of the rubber alone: what the bracket gives (force over its
 * stiffness) is taken off the deflection. Tilt of bearings is the business of `travel`.
 *
 * @param joint  index into the corner's joints.
 * @return       kind NONE also for a shape that cannot exist, which no case with rates worked out has.
 *
 * Left out: what the strains and bearing checks leave out (strain.h, bearing.h); the eccentric wall of an
 * off-centre bush, which is strained more; fatigue by number of cycles.
 */
gw_strength gw_strength_of(const gw_case *c, const gw_deflection *item, int joint);

/** One figure beside its limit, under the load that is worst for it. */
typedef struct gw_overload {
    int kit, joint, load;
    gw_axle axle;
    gw_verdict verdict;
} gw_overload;

typedef struct gw_strength_study {
    int n;
    gw_overload *item; /**< by kit, corner and joint, in the order of the case; owned */
} gw_strength_study;

/**
 * Everything in a study of deflections that is beyond a limit.
 *
 * @param[out] out  freed with gw_strength_study_free; empty on failure.
 * @retval GW_OK, GW_E_NOMEM
 */
gw_status gw_study_strength(const gw_case *c, const gw_deflect_study *deflect, gw_strength_study *out,
                            gw_error *err);

/** The same of every figure that has a limit, whether it holds or not. */
gw_status gw_study_strength_peaks(const gw_case *c, const gw_deflect_study *deflect, gw_strength_study *out,
                                  gw_error *err);

/** A figure over its limit: above 1 it does not hold. All limits of strength are upper ones. */
double gw_overload_ratio(const gw_overload *overload);


/** True for the first item whose limit has this source: so that each is told once. */
bool gw_strength_names_source(const gw_strength_study *study, int item);

void gw_strength_study_free(gw_strength_study *study);

GW_API_END

#endif
