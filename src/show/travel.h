/* SPDX-License-Identifier: MIT */
/** What a study of travel is shown as. */
#ifndef SHOW_TRAVEL_H
#define SHOW_TRAVEL_H

#include "chart/chart.h"
#include "giveway/travel.h"
#include "base/buf.h"

void gw_travel_json(const gw_case *c, const gw_travel_study *study, gw_buf *out);

/** One row a place of travel, with a row of heads first. */
void gw_travel_csv(const gw_case *c, const gw_travel_study *study, gw_buf *out);

/** @param[in] all  every place of travel; otherwise some, zero and both ends among them. */
gw_status gw_travel_text(const gw_case *c, const gw_travel_study *study, bool all, int width, bool bold,
                         gw_buf *out, gw_error *err);

/** Toe, camber, wheel rate, roll centre and tilt against travel, a line a kit; one set an axle and load. */
gw_status gw_travel_charts(const gw_case *c, const gw_travel_study *study, gw_charts *charts, gw_error *err);

/** Largest tilt of the item at a point as a share of its limit; NAN where no joint has one. */
double gw_travel_tilt_share(const gw_travel_item *item, const gw_travel_point *point);

#endif
