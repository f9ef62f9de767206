/* SPDX-License-Identifier: MIT */
/** Which joints let the wheel move most. */
#ifndef GIVEWAY_CONTRIBUTORS_H
#define GIVEWAY_CONTRIBUTORS_H

#include "giveway/api.h"
#include "giveway/corner.h"

GW_API_BEGIN

typedef enum gw_angle { GW_TOE, GW_CAMBER } gw_angle;

typedef struct gw_contributor {
    const char *name; /**< of the joint; lives as long as the corner                    */
    int joint;        /**< its index                                                    */
    double angle;     /**< [rad], toe-in and outboard camber positive                   */
    double part;      /**< of all contributions by size, travel and geometry among them: |angle| / sum [-] */
} gw_contributor;

/** Contribution of one joint to an angle [rad]. */
double gw_joint_share(const gw_joint_result *joint, gw_angle which);

/**
 * The joints that contribute most to an angle, largest first.
 *
 * @param[in]  result  with its joints, in the order of `corner`
 * @param[in]  most    room in `out`
 * @param[out] out     what contributes less than 1e-9 deg is left out
 * @return how many were written
 */
int gw_contributors(const gw_corner *corner, const gw_corner_result *result, gw_angle which, int most,
                    gw_contributor *out);

GW_API_END

#endif
