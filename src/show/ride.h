/* SPDX-License-Identifier: MIT */
/** What a study of ride is shown as: JSON, CSV, text, charts. Decibels count from the first kit of the case.
 */
#ifndef SHOW_RIDE_H
#define SHOW_RIDE_H

#include "base/buf.h"
#include "chart/chart.h"
#include "giveway/compare.h"

/**
 * The result object.
 * @param[in] all  with transfer functions and the forces after the obstacle, which are long.
 */
void gw_ride_json(const gw_case *c, const gw_ride_study *study, bool all, gw_buf *out);

/** One row a kit and corner, with a row of heads first. */
void gw_ride_csv(const gw_case *c, const gw_ride_study *study, gw_buf *out);

/**
 * Text for people.
 * @param[in] all  every mode up to 315 Hz; otherwise body, wheel vertical and wheel fore-aft.
 */
gw_status gw_ride_text(const gw_case *c, const gw_ride_study *study, bool all, int width, bool bold,
                       gw_buf *out, gw_error *err);

/** Transmissibility by kit alone. */
gw_status gw_transmissibility_charts(const gw_case *c, const gw_ride_study *study, gw_charts *charts,
                                     gw_error *err);

/** Transmissibility by kit, bands over the baseline, paths, forces after the obstacle; one set a corner. */
gw_status gw_ride_charts(const gw_case *c, const gw_ride_study *study, gw_charts *charts, gw_error *err);

#endif
