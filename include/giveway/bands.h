/* SPDX-License-Identifier: MIT */
/**
 * Bands without draws: how far each answer of a comparison may be off, from its slopes at the case as
 * written. A band is plus or minus two standard deviations of what is linear in z (giveway/uncertain.h), 95
 * of 100; it is right where the answers are nearly straight in the figures (`linear_r2` of a spread near 1).
 * What is strongly curved, a stop just reached, needs the draws of giveway/spread.h. SI units (rad, m).
 */
#ifndef GIVEWAY_BANDS_H
#define GIVEWAY_BANDS_H

#include "giveway/api.h"
#include "giveway/spread.h"

GW_API_BEGIN

/** A figure and its band: value - half to value + half. NAN where it could not be had. */
typedef struct gw_half_band {
    double value, half; /**< half >= 0 */
} gw_half_band;

/** One kit, corner and load (and wheel). Quantities as in a gw_spread_item. */
typedef struct gw_bands_item {
    int kit, load;
    gw_axle axle;
    bool manoeuvre;
    gw_side side;        /**< of a manoeuvre                                                     */
    bool sided;          /**< a direct load of which both wheels are told                        */
    gw_wheel_side wheel; /**< which of them                                                      */
    gw_half_band own[GW_SPREAD_QUANTITIES];
    bool has_difference; /**< from the first kit wanted: every other kit has one                  */
    gw_half_band difference[GW_SPREAD_QUANTITIES]; /**< less that kit in the same car             */
    bool close; /**< whose toe change is the smaller in size, this kit's or the first's, is too close to
                     call: the band of their difference or of their sum includes zero       */
    const double *toe; /**< slope of the toe change with z of each figure [rad]                    */
} gw_bands_item;

/** All toe changes of a kit together: their root mean square; by the goals of `choose` where the case has them. */
typedef struct gw_bands_kit {
    int kit;
    gw_half_band unsteadiness; /**< [rad]                                                              */
    bool has_difference;
    gw_half_band difference; /**< less the first kit wanted                                            */
    bool close;              /**< the band of the difference includes zero                             */
    const double *slope;     /**< of the unsteadiness with z of each figure [rad]                      */
} gw_bands_kit;

typedef struct gw_bands_study {
    gw_arena arena;
    int n_figures; /**< of c->uncertain; those that only ride knows are left out                       */
    const gw_unsure *figure;
    int first_kit; /**< that the others are set beside                                                 */
    int n;
    gw_bands_item *item; /**< by kit, corner, load (and wheel), in the order of the case; those wanted */
    int n_kits;
    gw_bands_kit *kit; /**< those wanted, in the order of the case                                     */
    double *share;     /**< one a figure: of the variance of all toe changes together                  */
    int n_needed;      /**< fewest figures that make four fifths of that variance                      */
} gw_bands_study;

/**
 * Works out the case as written and its slopes, which costs less than the comparison itself: one step of
 * Newton's iteration for each figure and each answer that it touches.
 *
 * @retval GW_OK  a load that cannot be carried has NAN in its item.
 * @retval GW_E_RANGE, GW_E_MECHANISM, GW_E_NOMEM
 */
gw_status gw_study_bands(const gw_case *c, const gw_selection *wanted, gw_bands_study *out, gw_error *err);
void gw_bands_study_free(gw_bands_study *study);

/** The item of a kit, axle, load and wheel (the outer is the left); where only one is told, that. NULL: none. */
const gw_bands_item *gw_bands_find(const gw_bands_study *study, int kit, gw_axle axle, int load,
                                   gw_wheel_side wheel);

/**
 * How much steadier one answer is than another: |toe change of b| less |that of a|, with its band in the same
 * car. Positive: a is the steadier. Too close to call where `half` >= |`value`| (gw_is_close).
 */
gw_half_band gw_bands_between(const gw_bands_study *study, const gw_bands_item *a, const gw_bands_item *b);

/** The same of two kits: unsteadiness of b less that of a. NULL is not allowed. */
gw_half_band gw_bands_between_kits(const gw_bands_study *study, const gw_bands_kit *a, const gw_bands_kit *b);
const gw_bands_kit *gw_bands_kit_of(const gw_bands_study *study, int kit); /**< NULL: none */

/** The band includes zero; what could not be had is close, too. */
bool gw_is_close(const gw_half_band *band);

GW_API_END

#endif
