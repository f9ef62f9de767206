/* SPDX-License-Identifier: MIT */
/** Follows modes of the ride model while damping is let in. */
#ifndef RIDE_TRACK_H
#define RIDE_TRACK_H

#include "ride/modes.h"

/**
 * Refine poles and vectors of modes first to end - 1 at a given share of the damping, eight at a time.
 * set->tracked tells which of them converged to an oscillation: a last step below `tolerance` of |p|, after
 * which the error is far smaller still.
 */
gw_status gw_track(gw_ride_model *model, gw_mode_set *set, int first, int end, gw_damping_share share,
                   double tolerance, gw_error *err);

#endif
