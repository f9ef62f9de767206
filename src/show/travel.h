/* SPDX-License-Identifier: MIT */
/** What a study of travel is shown as. */
#ifndef SHOW_TRAVEL_H
#define SHOW_TRAVEL_H

#include "chart/chart.h"
#include "giveway/travel.h"
#include "record/paper.h"

/** Rows over a gw_travel_study. */
extern const gw_result GW_TRAVEL_RESULT;

/** With `detail` every place of travel; otherwise some, zero and both ends among them. */
void gw_travel_text(const gw_case *c, const void *study, gw_paper *paper);

/** Toe, camber, wheel rate, roll centre and tilt against travel, a line a kit; one set an axle and load. */
void gw_travel_charts(const gw_case *c, const void *study, gw_charts *charts);

#endif
