/* SPDX-License-Identifier: MIT */
/** How sure every answer is, printed. */
#ifndef SHOW_SPREAD_H
#define SHOW_SPREAD_H

#include "base/buf.h"
#include "chart/chart.h"
#include "giveway/spread.h"
#include "record/paper.h"

void gw_spread_text(const gw_case *c, const void *study, gw_paper *paper);

/** Bands of every load and kit as whiskers, what is left of them less the first kit, and what to measure
 * next. */
void gw_spread_charts(const gw_case *c, const void *study, gw_charts *charts);

#endif
