/* SPDX-License-Identifier: MIT */
/** Which attachments matter, and what comfort feels like. */
#ifndef SHOW_RIDE_PARTS_H
#define SHOW_RIDE_PARTS_H

#include "giveway/compare.h"
#include "giveway/ride_places.h"
#include "record/paper.h"

/** Its name, without a side where both sides have it. */
void gw_ride_place_name(const gw_corner *corner, const gw_ride_result *r, gw_ride_place place, gw_buf *out);

/** In the words of the case where it has them; of springs and dampers as many as there are. */
void gw_ride_place_said(const gw_corner *corner, const gw_ride_result *r, gw_ride_place place, gw_buf *out);

/** What stands over the tables of a corner. */
void gw_ride_heading(const gw_case *c, gw_axle axle, gw_paper *paper);

/** A paragraph: what ISO 2631-1 says of the least and the most comfortable kit of a corner, and that its
 * bands overlap. */
void gw_ride_say_comfort(const gw_ride_study *study, gw_axle axle, gw_paper *paper);

/** "+1.2 to +3.4"; of the first kit that it is the one. */
void gw_ride_range_cell(gw_table *table, const gw_ride_item *item, double low, double high);

/** "Too close to call on the road: harshness, front: mixed and camber.": kits within the range of each other;
 * nothing where none are. */
void gw_ride_say_close(const gw_case *c, const gw_ride_study *study, gw_buf *out);

typedef struct gw_ride_page {
    const gw_case *c;
    const gw_ride_study *study;
    gw_paper *paper;
} gw_ride_page;

/* One table each, with the words that it needs below it. */
void gw_ride_figures_table(const gw_ride_page *p, const gw_ride_item *const *items, int n);
void gw_ride_modes_table(const gw_ride_page *p, const gw_ride_item *const *items, int n);
void gw_ride_paths_table(const gw_ride_page *p, const gw_ride_item *const *items, int n);
void gw_ride_isolation_table(const gw_ride_page *p, const gw_ride_item *const *items, int n);
void gw_ride_bands_table(const gw_ride_page *p, const gw_ride_item *const *items, int n);
void gw_ride_obstacle_table(const gw_ride_page *p, const gw_ride_item *const *items, int n);

#endif
