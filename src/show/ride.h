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

/** What rows over a gw_ride_item read, here and in compare: reactions by the standard's words to that
 * comfort, and how harshness and noise over the first kit may lie, low to high [dB]. */
int gw_ride_reactions(const gw_place *p);
const char *gw_ride_reaction(const gw_place *p);
void gw_ride_felt_range(const gw_place *p, double *x);
void gw_ride_heard_range(const gw_place *p, double *x);

/** One row a kit and corner, with a row of heads first. */
void gw_ride_csv(const gw_case *c, const gw_ride_study *study, gw_buf *out);

/** Text for people; with `detail` every mode up to 315 Hz, otherwise body, wheel vertical and wheel fore-aft.
 */
void gw_ride_text(const gw_case *c, const void *made, gw_paper *paper);

/** What is in the model, what each unknown does to the figures, what is left out. */
void gw_ride_explain(const gw_case *c, const gw_ride_study *study, gw_paper *paper);

/** All the warnings of a study into one list. GW_E_NOMEM */
gw_status gw_ride_gather_warnings(const gw_case *c, gw_ride_made *made, gw_error *err);

/** Transmissibility by kit alone. */
gw_status gw_transmissibility_charts(const gw_case *c, const gw_ride_study *study, gw_charts *charts,
                                     gw_error *err);

/** Transmissibility by kit, bands over the baseline, paths, forces after the obstacle; one set a corner. */
gw_status gw_ride_charts(const gw_case *c, const void *made, gw_charts *charts, gw_error *err);

#endif
