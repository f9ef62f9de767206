/* SPDX-License-Identifier: MIT */
/**
 * The whole car on the road: one equilibrium of a free chassis, both axles with what their wheels share, and
 * tyres that are springs. Road axes, x along the car, y left, z up, the road at z = 0. SI units.
 */
#ifndef GIVEWAY_ROAD_CAR_H
#define GIVEWAY_ROAD_CAR_H

#include "giveway/corner.h"
#include "giveway/vehicle.h"

GW_API_BEGIN

typedef struct gw_road gw_road;

/** One axle of the car: both its wheels, and what is fitted. */
typedef struct gw_road_part {
    const gw_corner *pair;
    const gw_fit *fit;        /**< one entry a joint of the pair                                          */
    double made_up;           /**< B: what a bar that is not in the joints adds for a wheel's travel [N/m] */
    const gw_corner_ws *like; /**< of the same pair, with whatever fitted: see gw_corner_open_like; NULL */
} gw_road_part;

/** What is told of one wheel; changes since the car's own S0, in chassis axes, the right wheel's mirrored. */
typedef struct gw_road_result {
    double roll, pitch, heave; /**< outwards, nose down [rad]; rise of the chassis' centre of mass [m]   */
    double travel, dive;       /**< of the wheel; mean of the axle's two [m]                             */
    double camber_to_road;     /**< [rad]                                                                */
    gw_vec3 patch_force, hub_force, patch_moment; /**< road axes                                         */
    gw_corner_result
        wheel; /**< its `joints` has an entry for every joint of the pair; NULL: nothing of them */
} gw_road_result;

/**
 * Stand the car on its wheels: no acceleration, every wheel at travel 0; the springs' preloads make it so,
 * and the wheels are set there.
 *
 * @param[in] vehicle  must outlive the road, as the parts' pairs must.
 * @retval GW_OK, GW_E_MECHANISM, GW_E_NUMERIC, GW_E_NOMEM
 */
gw_status gw_road_open(const gw_vehicle *vehicle, const gw_road_part part[GW_AXLES], gw_road **out,
                       gw_error *err);
void gw_road_close(gw_road *road); /**< NULL is allowed */

/**
 * The car in a manoeuvre; what it does is read with gw_road_report.
 *
 * @param[out] err  NULL where nobody reads why: at which g a wheel lifts takes many more states to find.
 * @retval GW_OK
 * @retval GW_E_NUMERIC  a wheel lifts: the message names it and the g; or no equilibrium was found.
 */
gw_status gw_road_solve(gw_road *road, const gw_manoeuvre *manoeuvre, gw_error *err);

/** What one wheel does in the state solved last. */
void gw_road_report(const gw_road *road, gw_axle axle, gw_wheel_side side, gw_road_result *out);

/** Of these what acts on the wheel, in its own axes, and its travel. */
void gw_road_applied(const gw_road *road, gw_axle axle, gw_wheel_side side, gw_corner_load *out);

/** Of these the attitude of the wheel alone: its angles, its places and its spring's force. */
void gw_road_attitude(const gw_road *road, gw_axle axle, gw_wheel_side side, gw_road_result *out);

/** Where the axle stands on the ramp, for its warnings and its static camber. */
gw_corner_ws *gw_road_axle_ws(const gw_road *road, gw_axle axle);

/** The state of an axle in the state solved last, in chassis axes. */
const gw_state *gw_road_axle_state(const gw_road *road, gw_axle axle);

/** The state of an axle at the car's own S0, in chassis axes: what its parts have moved from. */
const gw_state *gw_road_axle_start(const gw_road *road, gw_axle axle);

/**
 * What one wheel and the joints of its axle do in a state that was kept, as gw_road_report tells of the one
 * solved last.
 *
 * @param[in]     state  of this axle of this car, or of one with the same fitted (gw_corner_keep).
 * @param[in,out] out    its `joints` has an entry for every joint of the pair; NULL: nothing of them.
 */
void gw_road_report_kept(const gw_road *road, gw_axle axle, gw_wheel_side side, const gw_state *state,
                         gw_corner_result *out);

/**
 * What is missing of a roll stiffness K [N m/rad], as a rate for one wheel's travel [N/m]: t^2/2 (k_w + 2 B)
 * = K.
 *
 * @param[in]  ws      of the axle on the ramp with the first kit.
 * @retval GW_OK
 * @retval GW_E_RANGE  springs alone are stiffer than K by more than 1 %; the message says both.
 */
gw_status gw_road_make_up(gw_corner_ws *ws, double stiffness, double *out, gw_error *err);

GW_API_END

#endif
