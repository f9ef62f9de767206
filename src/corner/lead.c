/* SPDX-License-Identifier: MIT */
#include "corner/lead.h"

#include "corner/workspace.h"

int gw_lead_length(const gw_corner *corner)
{
    return 6 * corner->n_bodies;
}

void gw_lead_add(const gw_corner *corner, const gw_state *from, const gw_state *to, double by, double *lead)
{
    for (int b = 1; b < corner->n_bodies; b++) {
        const gw_pose *p = &from->pose[b], *q = &to->pose[b];
        gw_mat3 since = gw_matmul_nt(&q->r, &p->r);
        gw_vec3 turn = gw_rot_log(&since), shift = gw_sub(gw_sub(q->p, p->p), gw_cross(turn, p->p));
        const double screw[6] = { shift.x, shift.y, shift.z, turn.x, turn.y, turn.z };
        for (int i = 0; i < 6; i++) lead[6 * b + i] += by * screw[i];
    }
}

void gw_lead_follow(const gw_corner *corner, const gw_state *from, const double *lead, gw_state *to)
{
    gw_state_copy(to, from, corner->n_bodies);
    for (int b = 1; b < corner->n_bodies; b++) gw_move_body(&to->pose[b], &lead[6 * b], 1.0);
}
