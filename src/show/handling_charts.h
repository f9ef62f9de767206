/* SPDX-License-Identifier: MIT */
/** Charts of what the kits do to the car. */
#ifndef SHOW_HANDLING_CHARTS_H
#define SHOW_HANDLING_CHARTS_H

#include "chart/chart.h"
#include "show/compare.h"

/**
 * Camber and toe budgets of the outer wheels, one waterfall a kit; the understeer budget as bars, and against
 * lateral g; the band of toe and camber over the range of use.
 */
void gw_handling_charts(const gw_comparison *cmp, gw_charts *charts);

#endif
