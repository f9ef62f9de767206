/* SPDX-License-Identifier: MIT */
/** How sure every answer is, printed. */
#ifndef SHOW_SPREAD_H
#define SHOW_SPREAD_H

#include "base/buf.h"
#include "chart/chart.h"
#include "giveway/spread.h"

gw_status gw_spread_text(const gw_case *c, const gw_spread_study *study, int width, bool bold, gw_buf *out,
                         gw_error *err);
void gw_spread_json(const gw_case *c, const gw_spread_study *study, gw_buf *out);
void gw_spread_csv(const gw_case *c, const gw_spread_study *study, gw_buf *out);

/** Bands of every load and kit as whiskers, what is left of them less the first kit, and what to measure
 * next. */
gw_status gw_spread_charts(const gw_case *c, const gw_spread_study *study, gw_charts *charts, gw_error *err);

/** Figures by falling share; `order` holds n indices. */
void gw_by_share(const double *share, int n, int *order);

/** z of a figure's low end (-1), middle (0) and high end (1), readings taken into account. */
double gw_spread_z_at(const gw_spread_study *study, int figure, int end);

#endif
