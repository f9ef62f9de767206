/* SPDX-License-Identifier: MIT */
/** Charts of kits side by side. */
#ifndef SHOW_COMPARE_CHARTS_H
#define SHOW_COMPARE_CHARTS_H

#include "chart/chart.h"
#include "giveway/picture.h"
#include "giveway/sweep.h"
#include "show/compare.h"

/** Toe and camber along a sweep of braking or of cornering, one line a kit, one chart an axle. */
void gw_sweep_charts(const gw_comparison *cmp, const gw_sweep_study *study, gw_charts *charts);

/** Contributions by bush, what reaches the body, and grip against harshness. */
void gw_compare_charts(const gw_comparison *cmp, gw_charts *charts);

/** Contributions by bush to the toe change, one chart an axle and load, the kits side by side. */
void gw_deflect_charts(const gw_case *c, const gw_deflect_study *study, gw_charts *charts);

/**
 * Camber and toe budgets of the outer wheels, one waterfall a kit; the understeer budget as bars, and against
 * lateral g; the band of toe and camber over the range of use.
 */
void gw_handling_charts(const gw_comparison *cmp, gw_charts *charts);

/** Movements are drawn so many times as large. */
enum { GW_BEHIND_FACTOR = 3 };

/** "axle-AXLE-KIT" for each kit and axle in the first corner that is solved; nothing without one. */
void gw_behind_charts(const gw_case *c, const gw_deflect_study *deflect, const gw_picture_study *pictures,
                      gw_charts *charts);

/** One of them under a name of its own; nothing where the load was not carried. */
void gw_behind_chart(const gw_case *c, const gw_picture_study *pictures, const gw_axle_pictures *of, int load,
                     const char *stem, gw_charts *charts);

#endif
