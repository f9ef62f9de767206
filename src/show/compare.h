/* SPDX-License-Identifier: MIT */
/** What `compare` shows: kits side by side. */
#ifndef SHOW_COMPARE_H
#define SHOW_COMPARE_H

#include "giveway/bands.h"
#include "giveway/compare.h"
#include "giveway/handling.h"
#include "giveway/strength.h"
#include "giveway/tolerance.h"
#include "record/paper.h"

/** Everything that `compare` worked out. */
typedef struct gw_comparison {
    const gw_case *c;
    const gw_deflect_study *deflect;
    const gw_ride_study *ride;           /**< n 0: ride left out                                     */
    const char *no_ride;                 /**< why ride was left out; NULL where it was worked out    */
    int baseline;                        /**< kit that the others are set beside: the first one shown */
    const gw_handling_study *handling;   /**< what the kits do to the car; not NULL for text, JSON and CSV */
    bool detail;                         /**< every figure of it, not only the summary                    */
    const gw_tolerance_study *tolerance; /**< rubber 5 points softer and harder; NULL: not looked at */
    const gw_bands_study *bands;         /**< how sure it all is; NULL: not looked at                */
    const gw_strength_study *strength;   /**< what is beyond a limit; NULL: not looked at                   */
    const gw_strength_study *peaks;      /**< every figure that has a limit; not NULL                       */
} gw_comparison;

/** What GW_COMPARE_RESULT describes: the comparison, and what is gathered of it kit by kit. */
typedef struct gw_compare_made {
    gw_comparison cmp;
    gw_arena arena; /**< owned */
    int n_kits;
    struct gw_compare_kit *kit; /**< those that are shown */
} gw_compare_made;

/** Whether a kit is among those that were compared. */
bool gw_compare_shows(const gw_comparison *cmp, int kit);

/** Gathers what is shown of each kit, once `cmp` is filled in; GW_E_NOMEM. */
gw_status gw_compare_gather(gw_compare_made *made, gw_error *err);

void gw_compare_text(const gw_case *c, const void *made, gw_paper *paper);
void gw_compare_csv(const gw_case *c, const void *made, gw_buf *out);

#endif
