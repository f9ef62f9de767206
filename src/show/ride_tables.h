/* SPDX-License-Identifier: MIT */
/** The tables of one corner that the text of `ride` is made of. */
#ifndef SHOW_RIDE_TABLES_H
#define SHOW_RIDE_TABLES_H

#include "giveway/compare.h"
#include "record/paper.h"

typedef struct gw_ride_page {
    const gw_case *c;
    const gw_ride_study *study;
    gw_paper *paper;
} gw_ride_page;

/** The items of one corner, in the order of the kits: fills `items` (room for every kit), returns how many.
 */
int gw_ride_items(const gw_ride_page *p, gw_axle axle, const gw_ride_item **items);

/* One table each, with the words that it needs below it. */
void gw_ride_figures_table(const gw_ride_page *p, const gw_ride_item *const *items, int n);
void gw_ride_modes_table(const gw_ride_page *p, const gw_ride_item *const *items, int n);
void gw_ride_paths_table(const gw_ride_page *p, const gw_ride_item *const *items, int n);
void gw_ride_isolation_table(const gw_ride_page *p, const gw_ride_item *const *items, int n);
void gw_ride_bands_table(const gw_ride_page *p, const gw_ride_item *const *items, int n);
void gw_ride_obstacle_table(const gw_ride_page *p, const gw_ride_item *const *items, int n);

#endif
