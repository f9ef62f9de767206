/* SPDX-License-Identifier: MIT */
/** Which joints let the wheel move most. */
#ifndef SHOW_CONTRIBUTORS_H
#define SHOW_CONTRIBUTORS_H

#include "base/buf.h"
#include "giveway/study.h"

typedef enum gw_angle { GW_TOE, GW_CAMBER } gw_angle;

typedef struct gw_contributor {
    const char *name; /**< joint, "travel" or "geometry"                              */
    int joint;        /**< -1 for travel and geometry                                 */
    double angle;     /**< [rad], toe-in and outboard camber positive                 */
    double part;      /**< of all contributions by size: |angle| / sum of |angles|    */
} gw_contributor;

/** ", left" or ", right" of a joint that an axle has twice, of which the left one stands first; else nothing.
 */
const char *gw_joint_side(const gw_corner *corner, int joint);

/**
 * A joint in the words of the case: its label, or its name with blanks for underscores, with ", left" or
 * ", right" behind it where an axle has it twice. Not cleaned.
 */
void gw_joint_said(const gw_corner *corner, int joint, gw_buf *out);

/** A name of the case as words: "arm front" for arm_front. Lines break at blanks, in the middle of a name
 * nowhere well. */
void gw_name_in_words(const char *name, gw_buf *out);

/** Contribution of one joint to an angle [rad]. */
double gw_joint_share(const gw_joint_result *joint, gw_angle which);

/**
 * The joints that contribute most to an angle, largest first.
 * @param[in]  most  room in `out`
 * @return how many were written; fewer where joints contribute nothing.
 */
int gw_contributors(const gw_corner *corner, const gw_corner_result *result, gw_angle which, int most,
                    gw_contributor *out);

/** "tension_inner 62 % out, rack_left 21 % in": the first `n` in words; nothing where there are none. */
void gw_contributors_words(const gw_contributor *list, int n, gw_angle which, gw_buf *out);

#endif
