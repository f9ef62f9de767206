/* SPDX-License-Identifier: MIT */
/** Charts of kits side by side. */
#ifndef SHOW_COMPARE_CHARTS_H
#define SHOW_COMPARE_CHARTS_H

#include "chart/chart.h"
#include "giveway/sweep.h"
#include "show/compare.h"

/** Toe and camber along a sweep of braking or of cornering, one line a kit, one chart an axle. */
void gw_sweep_charts(const gw_comparison *cmp, const gw_sweep_study *study, gw_charts *charts);

/** Contributions by bush, what reaches the body, and grip against harshness. */
void gw_compare_charts(const gw_comparison *cmp, gw_charts *charts);

/** Contributions by bush to the toe change, one chart an axle and load, the kits side by side. */
void gw_deflect_charts(const gw_case *c, const gw_deflect_study *study, gw_charts *charts);

#endif
