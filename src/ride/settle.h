/* SPDX-License-Identifier: MIT */
/**
 * One state that fits itself: how fast sliders slip and how far bushes move on this road decides what
 * dashpots and rates they are, and those decide how fast and how far. SI units.
 */
#ifndef RIDE_SETTLE_H
#define RIDE_SETTLE_H

#include "ride/figures.h"
#include "ride/slider.h"

/** Relative change below which the state has settled. */
#define GW_SETTLED 1e-5

/** What came of it. */
typedef struct gw_settled {
    bool settled;
    double wheel_speed, wheel_acceleration; /**< rms of wheel centre less chassis, up [m/s, m/s^2]        */
    int wavers;      /**< where not settled: index of the slider or, from n_sliders on, bush */
    double from, to; /**< and between what its rms slip speed or amplitude wavers    */
} gw_settled;

/** Bushes with an amplitude of their own, by joint, in `list` (room for every joint); returns how many. */
static inline int gw_rubber_joints(const gw_ride_model *model, int *list)
{
    int n = 0;
    for (int j = 0; j < model->corner->n_joints; j++)
        if (model->fit[j].law.rubber_length > 0.0) list[n++] = j;
    return n;
}

/**
 * Bring dashpots of sliders and amplitudes of bushes to the state that fits itself, within `passes` sweeps.
 *
 * @param[in,out] sweep  its poles tell where panels are graded to; none: evenly.
 * @retval GW_OK  also where it does not settle (out->settled), GW_E_NUMERIC, GW_E_NOMEM
 */
gw_status gw_settle(gw_ride_sweep *sweep, int passes, gw_arena *arena, gw_settled *out, gw_error *err);

#endif
