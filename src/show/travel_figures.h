/* SPDX-License-Identifier: MIT */
/** The tables under a table of travel. Private to the text of `travel`. */
#ifndef SHOW_TRAVEL_FIGURES_H
#define SHOW_TRAVEL_FIGURES_H

#include "show/travel.h"

/** What one call prints with. */
typedef struct gw_travel_page {
    const gw_case *c;
    bool all;
    int width;
    bool bold;
    gw_buf *out;
} gw_travel_page;

/** Slopes, centres and rates at ride height. */
gw_status gw_travel_rest_table(const gw_travel_page *p, const gw_travel_item *item, gw_error *err);

/** Tilt of joints against their limits. */
gw_status gw_travel_tilt_table(const gw_travel_page *p, const gw_travel_item *item, gw_error *err);

/** What bushes do that were tightened at another height. */
gw_status gw_travel_clamp_table(const gw_travel_page *p, const gw_travel_item *item, gw_error *err);

#endif
