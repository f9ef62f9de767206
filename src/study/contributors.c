/* SPDX-License-Identifier: MIT */
#include "giveway/contributors.h"

#include "giveway/units.h"

#include <math.h>

double gw_joint_share(const gw_joint_result *joint, gw_angle which)
{
    return which == GW_TOE ? joint->toe_share : joint->camber_share;
}

static double all_by_size(const gw_corner *corner, const gw_corner_result *r, gw_angle which)
{
    double sum = which == GW_TOE ? fabs(r->travel_toe) + fabs(r->geometry_toe)
                                 : fabs(r->travel_camber) + fabs(r->geometry_camber);
    for (int j = 0; j < corner->n_joints; j++) sum += fabs(gw_joint_share(&r->joints[j], which));
    return sum;
}

/* Put a joint into the list where its size belongs; the last one falls off. */
static int insert(gw_contributor *list, int n, int most, gw_contributor item)
{
    int at = n;
    while (at > 0 && fabs(list[at - 1].angle) < fabs(item.angle)) at--;
    if (at >= most) return n;
    if (n < most) n++;
    for (int i = n - 1; i > at; i--) list[i] = list[i - 1];
    list[at] = item;
    return n;
}

int gw_contributors(const gw_corner *corner, const gw_corner_result *result, gw_angle which, int most,
                    gw_contributor *out)
{
    const double nothing = 1e-9 * GW_DEG;
    double all = all_by_size(corner, result, which);
    int n = 0;
    for (int j = 0; j < corner->n_joints; j++) {
        double angle = gw_joint_share(&result->joints[j], which);
        if (fabs(angle) < nothing) continue;
        n = insert(out, n, most, (gw_contributor){ corner->joints[j].name, j, angle, fabs(angle) / all });
    }
    return n;
}
