/* SPDX-License-Identifier: MIT */
/* The first derivative of a state along its travel: one more solve with the tangent, right side one. */
#include "corner/workspace.h"

static gw_vec3 velocity(const double twist[6], gw_vec3 at)
{
    gw_vec3 v = gw_v3(twist[0], twist[1], twist[2]), phi = gw_v3(twist[3], twist[4], twist[5]);
    return gw_add(v, gw_cross(phi, at));
}

gw_status gw_corner_path_at(gw_corner_ws *ws, const gw_state *state, gw_drive drive, gw_path *out,
                            gw_error *err)
{
    gw_system *s = &ws->system;
    gw_assemble(ws, state, drive, false);
    for (int b = 1; b < s->n; b++)
        for (int i = 0; i < 6; i++) s->rhs[b][2 * i] = 0.0;
    s->border_rhs = 1.0;
    if (!gw_system_solve(s))
        return gw_fail(err, GW_E_NUMERIC, "the %s corner: no direction of travel at this state",
                       ws->corner->name);
    const double *twist = s->step[GW_UPRIGHT];
    const gw_pose *pose = &state->pose[GW_UPRIGHT];
    out->hub = velocity(twist, gw_point_now(pose, ws->hub));
    out->patch = velocity(twist, gw_point_now(pose, ws->patch));
    out->turn = gw_v3(twist[3], twist[4], twist[5]);
    out->force_rate = s->border_step;
    return GW_OK;
}
