/* SPDX-License-Identifier: MIT */
/** What has to be overcome before a wheel moves up or down: the friction of its joints and of its damper. SI
 * units. */
#ifndef GIVEWAY_CORNER_FRICTION_H
#define GIVEWAY_CORNER_FRICTION_H

#include "giveway/corner.h"

GW_API_BEGIN

/** One slider. */
typedef struct gw_friction_part {
    int joint;       /**< index into the corner's joints; -1: the damper */
    double strength; /**< at rest: torque of a joint [N m], force of the damper [N] */
    double way;      /**< how far it slips per metre of wheel-centre travel: [rad/m], damper [-], >= 0 */
    double turn[3];  /**< that way about e1, e2, e3 of the joint, 0 where it has no slider; damper: [0] its
                        lengthening,  of an axle with shared parts [1] that of the right one */
    double wheel;    /**< strength times way [N] */
} gw_friction_part;

typedef struct gw_friction {
    double wheel; /**< sum over all: half the gap between the loads in bump and in rebound [N] */
    int n;
    gw_friction_part
        part[GW_MAX_JOINTS + 1]; /**< in the order of the joints, the damper last; without strength: none */
} gw_friction;

/**
 * Friction at the wheel, by virtual work in the linear corner about the design position: sum of M_j
 * |theta'_j| and F_d |d'|. M_j is the slider's torque under the force that its joint carries at rest (static
 * load at the patch, wheel-centre travel 0, the spring's force the unknown); theta'_j the turning of its
 * slider's axes and d' the damper's lengthening per metre of wheel-centre travel under vertical load at the
 * patch, spring following. Rates static, brackets where a joint gives one. A free spin lies where sum M_j
 * |theta'_j|^2 is least.
 *
 * Coulomb friction, steady loads: no Stribeck, no lubricant.
 *
 * @param[out] out  written only on GW_OK.
 * @retval GW_OK, GW_E_NUMERIC (the spring does not carry the wheel), GW_E_NOMEM
 */
gw_status gw_corner_friction(const gw_corner_ws *ws, gw_friction *out, gw_error *err);

GW_API_END

#endif
