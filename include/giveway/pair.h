/* SPDX-License-Identifier: MIT */
/** Both corners of an axle as one, with the members and joints that they share. */
#ifndef GIVEWAY_PAIR_H
#define GIVEWAY_PAIR_H

#include "giveway/api.h"
#include "giveway/arena.h"
#include "giveway/corner.h"

GW_API_BEGIN

/** A joint of an axle; its bodies are those of the axle to be made (see gw_body_in_mirror). */
typedef struct gw_axle_joint {
    gw_joint joint;
    bool doubled; /**< it stands for two: the left one, and its mirror image                */
    bool alone;   /**< it is one although it lies off the centre line: the axle is lopsided */
} gw_axle_joint;

/**
 * Both corners and what they share.
 *
 * Bodies: chassis, the left upright and members, the shared members, the right upright and members. Joints:
 * the left corner's, in its order; the right ones alike; then those of the axle, left before right.
 *
 * @param[in]  left  the left corner; its shared members, from first_shared on, are its last bodies.
 * @param[in]  more  the axle's own joints, n_more of them.
 * @param[out] out   memory from the arena; written only when GW_OK is returned.
 * @retval GW_OK, GW_E_RANGE (more than GW_MAX_BODIES or GW_MAX_JOINTS), GW_E_NOMEM
 */
gw_status gw_corner_pair(const gw_corner *left, const gw_axle_joint *more, int n_more, gw_arena *arena,
                         gw_corner *out, gw_error *err);

/** The body that takes the place of `body` in the mirror, before the axle of the corner `left` is made. */
int gw_body_in_mirror(const gw_corner *left, int body);

/** A body of the left side that is joined to its image on the other, as the half of a bar or of a beam is;
 * false of any other body and of a corner alone. */
bool gw_body_leads_across(const gw_corner *corner, int body);

GW_API_END

#endif
