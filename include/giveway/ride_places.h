/* SPDX-License-Identifier: MIT */
/** Attachments to the chassis by what harshness comes in there, both sides as one. */
#ifndef GIVEWAY_RIDE_PLACES_H
#define GIVEWAY_RIDE_PLACES_H

#include "giveway/api.h"
#include "giveway/compare.h"

GW_API_BEGIN

/** An attachment to the chassis, with its mirror image where an axle has it on both sides. */
typedef struct gw_ride_place {
    int path;  /**< index into the paths of a result, of the left one where there are two */
    int image; /**< of the right one; -1 where there is but one                           */
} gw_ride_place;

/** All places of a corner, in the order of its paths; `place` has room for `n_paths`. Returns how many. */
int gw_ride_places(const gw_corner *corner, const gw_ride_result *r, gw_ride_place *place);

/** Share of the squared harshness, of both sides together. */
double gw_ride_place_share(const gw_ride_result *r, gw_ride_place place);

/**
 * Puts those of `of` places to the front that carry most of the harshness in any of the items (all of one
 * corner), largest first. Returns how many, at most `room`; what carries nothing is left out.
 */
int gw_ride_largest_places(const gw_ride_item *const *items, int n, int room, gw_ride_place *place, int of);

GW_API_END

#endif
