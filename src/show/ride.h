/* SPDX-License-Identifier: MIT */
/** What a study of ride is shown as: JSON, CSV, text, charts. Decibels count from the first kit of the case.
 */
#ifndef SHOW_RIDE_H
#define SHOW_RIDE_H

#include "chart/chart.h"
#include "giveway/compare.h"
#include "record/paper.h"

/** What `ride` works out. */
typedef struct gw_ride_made {
    gw_ride_study study;
    bool all; /**< with transfer functions and the forces after the bump, which are long */
    bool explain;
    gw_arena arena; /**< owns the warnings                                                */
    int n_warnings;
    const char **warning; /**< of the settings, then of each kit in each corner             */
} gw_ride_made;

/** Rows over a gw_ride_made. */
extern const gw_result GW_RIDE_RESULT;

/** Columns over a gw_ride_item: comfort, harshness and noise with their ranges, here and in compare. */
extern const gw_record GW_RIDE_COLUMNS_RECORD;
/** What compare tells besides, in JSON and CSV alike. */
extern const gw_record GW_RIDE_COMPARED_RECORD;

/** Text for people; with `detail` every mode up to 315 Hz, otherwise body, wheel vertical and wheel fore-aft.
 */
void gw_ride_text(const gw_case *c, const void *made, gw_paper *paper);

/** What is in the model, what each unknown does to the figures, what is left out. */
void gw_ride_explain(const gw_case *c, const gw_ride_study *study, gw_paper *paper);

/** All the warnings of a study into one list. GW_E_NOMEM */
gw_status gw_ride_gather_warnings(const gw_case *c, gw_ride_made *made, gw_error *err);

/** Transmissibility by kit alone. */
void gw_transmissibility_charts(const gw_case *c, const gw_ride_study *study, gw_charts *charts);

/** Transmissibility by kit, bands over the baseline, paths, forces after the obstacle; one set a corner. */
void gw_ride_charts(const gw_case *c, const void *made, gw_charts *charts);

#endif
