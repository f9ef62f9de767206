/* SPDX-License-Identifier: MIT */
/** Both wheels of an axle at one slip angle. SI units. */
#ifndef GW_VEHICLE_PAIR_H
#define GW_VEHICLE_PAIR_H

#include "giveway/tyre.h"
#include "giveway/vehicle.h"

/** What is added to a wheel's own slip (into the turn), and its lean into the turn [rad]. */
typedef struct gw_attitude {
    double slip, lean;
} gw_attitude;

/** [GW_OUTER], [GW_INNER]. */
typedef struct gw_pair {
    const gw_tyre *tyre;
    bool turned; /**< the car turns to the other side: what the tyre does at zero slip pushes the other way */
    double load[2]; /**< [N], >= 0 */
    gw_attitude at[2];
} gw_pair;

typedef struct gw_pair_force {
    gw_tyre_force wheel[2];
    double force, cornering; /**< of both */
} gw_pair_force;

/**
 * The smallest slip at which both tyres together give `force`: upwards from zero where they give less there,
 * else downwards; the other way where there is none. Exact to the rounding of its cubics. Where the table
 * jumps over `force` (at zero slip, with tyres that lean), the slip of the jump.
 *
 * @param[out] slip  [rad]; written only on GW_OK.
 * @retval GW_OK, GW_E_RANGE (a negative load)
 * @retval GW_E_NUMERIC  nowhere in the table.
 */
gw_status gw_pair_slip(const gw_pair *pair, double force, double *slip, gw_error *err);

/**
 * Forces and slopes at a slip, the slopes over GW_TYRE_STRETCH; over twice that, and so on, where the force
 * does not rise over it.
 * @retval GW_OK, GW_E_RANGE
 * @retval GW_E_NUMERIC  beyond the table, or it does not rise at all.
 */
gw_status gw_pair_slopes(const gw_pair *pair, double slip, gw_pair_force *out, gw_error *err);

#endif
