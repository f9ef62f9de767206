/* SPDX-License-Identifier: MIT */
/** An axle from behind in a corner: the parts of both wheels, the body that leans, the roll centre. */
#ifndef SHOW_BEHIND_CHARTS_H
#define SHOW_BEHIND_CHARTS_H

#include "chart/chart.h"
#include "giveway/picture.h"

/** Movements are drawn so many times as large. */
enum { GW_BEHIND_FACTOR = 3 };

/** "axle-AXLE-KIT" for each kit and axle in the first corner that is solved; nothing without one. */
void gw_behind_charts(const gw_case *c, const gw_deflect_study *deflect, const gw_picture_study *pictures,
                      gw_charts *charts);

/** One of them under a name of its own; nothing where the load was not carried. */
void gw_behind_chart(const gw_case *c, const gw_picture_study *pictures, const gw_axle_pictures *of, int load,
                     const char *stem, gw_charts *charts);

#endif
