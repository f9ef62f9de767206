/* SPDX-License-Identifier: MIT */
/* Linear kinematics of one joint about the design position. */
#include "corner/workspace.h"

double gw_hand(const gw_mat3 *frame)
{
    gw_vec3 e1 = gw_col(frame, 0), e2 = gw_col(frame, 1), e3 = gw_col(frame, 2);
    return gw_dot(gw_cross(e1, e2), e3) < 0.0 ? -1.0 : 1.0;
}

void gw_link_jacobian(const gw_mat3 *frame, gw_vec3 at, double b[6][6])
{
    double hand = gw_hand(frame);
    for (int i = 0; i < 3; i++) {
        gw_vec3 e = gw_col(frame, i), lever = gw_cross(at, e); /* e . (phi x at) = phi . (at x e) */
        const double row[6] = { e.x, e.y, e.z, lever.x, lever.y, lever.z };
        for (int j = 0; j < 6; j++) b[i][j] = row[j];
        for (int j = 0; j < 3; j++) {
            b[i + 3][j] = 0.0;
            b[i + 3][j + 3] = hand * row[j];
        }
    }
}

void gw_joint_jacobian(const gw_joint *joint, gw_vec3 datum, double b[6][6])
{
    gw_link_jacobian(&joint->frame, gw_sub(joint->at, datum), b);
}
