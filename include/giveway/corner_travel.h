/* SPDX-License-Identifier: MIT */
/**
 * A corner through bump and rebound: the path of its wheel, what the path means in front and side view, how
 * far its joints tilt, and what bushes do that were tightened at another height. SI units, left wheel.
 */
#ifndef GIVEWAY_CORNER_TRAVEL_H
#define GIVEWAY_CORNER_TRAVEL_H

#include "giveway/api.h"
#include "giveway/corner.h"

GW_API_BEGIN

/** How the wheel moves on from one place of its path, per metre of wheel-centre travel. */
typedef struct gw_travel_rates {
    double vertical_load; /**< at the patch, carried here                                   [N]     */
    double wheel_rate;    /**< its derivative                                               [N/m]   */
    double toe, camber;   /**< of the wheel, signs as everywhere                            [rad/m] */
    double patch_outward; /**< dy/dz of the contact patch                                   [-]     */
    double patch_forward; /**< dx/dz of the contact patch: what brakes on the upright feel  [-]     */
    double hub_outward;   /**< dy/dz of the wheel centre                                    [-]     */
    double hub_forward;   /**< dx/dz of the wheel centre: what a half-shaft's drive feels   [-]     */
    double drive_forward; /**< what drive feels: the above where the chassis carries the final drive; where a
                               body does, the force at the wheel centre and its torque about the contact, which
                               goes to that body: dx/dz of the contact taken as a point of it in its turning [-] */
    double roll, pitch;   /**< rotation of the upright about x and about y                  [rad/m] */
} gw_travel_rates;

/**
 * One state of the path: the wheel centre `travel` above design, the spring on its law from S0, the vertical
 * patch load whatever that takes. Other loads stay as given.
 *
 * @param[in]     load    its vertical patch force and travel are not looked at.
 * @param[in,out] state   allocated; the state found.
 * @param[in,out] result  everything reported of it against S0; `joints` must hold n_joints entries.
 * @param[out]    rates   written only when GW_OK is returned.
 * @retval GW_OK, GW_E_NUMERIC
 */
gw_status gw_corner_travel_at(gw_corner_ws *ws, const gw_corner_load *load, double travel, gw_state *state,
                              gw_corner_result *result, gw_travel_rates *rates, gw_error *err);

/**
 * The same for both wheels of an axle: the left one `travel` above design, the other as `other` says.
 *
 * @param[in]     load    on each wheel, the right one's in mirrored axes; vertical forces and travels are not
 *                        looked at.
 * @param[out]    result  of each wheel, in its own axes; their `joints` must hold n_joints entries.
 * @param[out]    rates   per metre of the wheel's own travel; NaN for a wheel that stays where it is, but for
 *                        its vertical load.
 * @retval GW_OK, GW_E_NUMERIC
 */
gw_status gw_axle_travel_at(gw_corner_ws *ws, const gw_corner_load load[GW_WHEELS], gw_other_wheel other,
                            double travel, gw_state *state, gw_corner_result result[GW_WHEELS],
                            gw_travel_rates rates[GW_WHEELS], gw_error *err);

/** How an axle rolls, at S0 with vertical loads alone: the left wheel in bump, the right one as far the other
 * way. */
typedef struct gw_roll_rates {
    double centre[GW_WHEELS]; /**< t/2 x dy/dz of the wheel's own contact patch [m]                       */
    double steer[GW_WHEELS], camber[GW_WHEELS]; /**< of the wheel to the body per roll angle [-]          */
    double stiffness; /**< t^2/2 x mean of both wheels' rates; of a made-up bar nothing [N m/rad]         */
} gw_roll_rates;

gw_status gw_axle_roll_rates(gw_corner_ws *ws, gw_roll_rates *out, gw_error *err);

/**
 * Height of the roll centre above the ground [m]: where the line across the path of the contact patch meets
 * the middle of the car, which is half the track times dy/dz.
 *
 * @param[in] half_track  distance of the contact patch from the middle of the car at this state [m]
 * Source: the instant-centre construction, as in Milliken & Milliken, Race Car Vehicle Dynamics (SAE, 1995).
 */
double gw_roll_centre_height(const gw_travel_rates *rates, double half_track);

/** The instant centre of the upright in one view, seen from the wheel centre; infinite where it only shifts.
 */
typedef struct gw_instant_centre {
    double across; /**< side view: ahead of the wheel centre; front view: inboard of it [m] */
    double above;  /**< above the wheel centre                                          [m] */
} gw_instant_centre;

gw_instant_centre gw_side_view_centre(const gw_travel_rates *rates);
gw_instant_centre gw_front_view_centre(const gw_travel_rates *rates);

/**
 * Tilt of every joint [rad]: the angle between the axis of its bush carried by one body and the same axis
 * carried by the other, 0 in the design position. Turning about the axis itself is no tilt.
 *
 * A link between two joints without rotational rate spins about its own line as it likes, and the solver only
 * holds it somewhere. Before such a link binds it turns out of the way; so the tilt of its two joints is
 * taken at the spin that leaves the larger share of the two limits as small as it can be. (A link that
 * carries a spring or damper off its line does not spin freely and keeps the spin of the solver.)
 *
 * @param[in]  limit  one a joint [rad]; 0: none, the other end of its link decides the spin.
 * @param[out] tilt   one a joint.
 */
void gw_corner_tilt(const gw_corner_ws *ws, const gw_state *state, const double *limit, double *tilt);

/**
 * From now on the bush of joint j carries no torque about its own axis at the rotation rest[j] [rad] instead
 * of the design position: its bolt was tightened there. S0, and with it the spring and what changes are
 * reported from, stays that of a car tightened at ride height.
 *
 * @param[in] rest  one a joint, about e3, second body relative to first.
 */
void gw_corner_clamp(gw_corner_ws *ws, const double *rest);

/**
 * Fills `loose` with the fit of a corner whose bolts are loose: no torsional rate where `loosened` is set
 * (NULL: no rotational rate anywhere but in welds, for the rate that
 * rotation adds; a spin that moves no wheel is then held, of what both wheels share, too).
 */
void gw_fit_loosen(const gw_corner *corner, const gw_fit *fit, const bool *loosened, gw_fit *loose);

GW_API_END

#endif
