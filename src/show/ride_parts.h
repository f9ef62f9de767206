/* SPDX-License-Identifier: MIT */
/** Which attachments matter, and what comfort feels like. */
#ifndef SHOW_RIDE_PARTS_H
#define SHOW_RIDE_PARTS_H

#include "base/buf.h"
#include "giveway/compare.h"

/**
 * The attachments with the largest share of the harshness in any of the items (all of one corner), largest
 * first: indices into their paths. Returns how many, at most `room`; what carries nothing is left out.
 */
int gw_ride_largest_paths(const gw_ride_item *const *items, int n, int room, int *paths);

/** What stands over the tables of a corner. */
void gw_ride_heading(const gw_case *c, gw_axle axle, bool bold, gw_buf *out);

/** A sentence or two: what ISO 2631-1 says of comfort from `low` to `high` [m/s^2], and that its bands
 * overlap. */
void gw_ride_say_comfort(double low, double high, gw_buf *out);

/** "Too close to call on the road: harshness, front: mixed and camber.": kits within the range of each other;
 * nothing where none are. */
void gw_ride_say_close(const gw_case *c, const gw_ride_study *study, gw_buf *out);

#endif
