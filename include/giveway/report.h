/* SPDX-License-Identifier: MIT */
/** Everything that a page for customer or workshop is made of, worked out in one go. SI units. */
#ifndef GIVEWAY_REPORT_H
#define GIVEWAY_REPORT_H

#include "giveway/align.h"
#include "giveway/api.h"
#include "giveway/bands.h"
#include "giveway/compare.h"
#include "giveway/grid.h"
#include "giveway/handling.h"
#include "giveway/picture.h"
#include "giveway/strength.h"
#include "giveway/sweep.h"

GW_API_BEGIN

typedef struct gw_report {
    const gw_case *c;
    int baseline; /**< kit that the others are set beside: the first one wanted            */
    gw_deflect_study deflect;
    gw_strength_study strength; /**< every figure that has a limit, under its worst load */
    const char *no_ride;        /**< what the case lacks for `ride`; NULL: worked out             */
    gw_ride_study ride;
    gw_grid_study grid;            /**< n 0: the case has no vehicle                        */
    gw_sweep_study brake, lateral; /**< n 0 until gw_study_report_sweeps                    */
    gw_handling_study handling;    /**< in brief; what it lacks is in its own words         */
    gw_align_study align;          /**< n 0: the case has nothing to set                    */
    gw_laws laws;                  /**< of every bush of the case                           */
    gw_picture_study pictures;     /**< of the parts of each axle                           */
    bool banded;                   /**< `bands` are there                                   */
    gw_bands_study bands;          /**< how sure it all is                                  */
} gw_report;

/**
 * Works everything out that the case has data for.
 *
 * @param[in]  banded  the bands, too.
 * @param[out] out  points into the case; owned by the caller; empty on failure.
 * @retval GW_OK
 * @retval GW_E_SCHEMA  the case has no corner or no load.
 * @retval GW_E_RANGE, GW_E_MECHANISM, GW_E_NUMERIC, GW_E_NOMEM as the studies it is made of.
 */
gw_status gw_study_report(const gw_case *c, const gw_selection *wanted, bool banded, gw_report *out,
                          gw_error *err);
/**
 * The sweeps of braking and cornering, which the workshop's copy alone draws, into a report that is made.
 *
 * @retval GW_OK  also where the case has no vehicle; else as gw_study_sweep.
 */
gw_status gw_study_report_sweeps(const gw_selection *wanted, gw_report *report, gw_error *err);
void gw_report_free(gw_report *report);

GW_API_END

#endif
