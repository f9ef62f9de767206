/* SPDX-License-Identifier: MIT */
/** Which attachments matter. */
#ifndef SHOW_RIDE_PARTS_H
#define SHOW_RIDE_PARTS_H

#include "giveway/compare.h"

/**
 * The attachments with the largest share of the harshness in any of the items (all of one corner), largest
 * first: indices into their paths. Returns how many, at most `room`; what carries nothing is left out.
 */
int gw_ride_largest_paths(const gw_ride_item *const *items, int n, int room, int *paths);

#endif
