/* SPDX-License-Identifier: MIT */
/** How sure every answer is, printed. */
#ifndef SHOW_SPREAD_H
#define SHOW_SPREAD_H

#include "base/buf.h"
#include "chart/chart.h"
#include "giveway/spread.h"

gw_status gw_spread_text(const gw_case *c, const gw_spread_study *study, int width, bool bold, gw_buf *out,
                         gw_error *err);

/** Bands of every load and kit as whiskers, what is left of them less the first kit, and what to measure
 * next. */
gw_status gw_spread_charts(const gw_case *c, const gw_spread_study *study, gw_charts *charts, gw_error *err);

#endif
