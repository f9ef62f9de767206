/* SPDX-License-Identifier: MIT */
/* The first derivative of a state along its travel: one more solve with the tangent, right side one. */
#include "corner/workspace.h"

static gw_vec3 velocity(const double twist[6], gw_vec3 at)
{
    gw_vec3 v = gw_v3(twist[0], twist[1], twist[2]), phi = gw_v3(twist[3], twist[4], twist[5]);
    return gw_add(v, gw_cross(phi, at));
}

double gw_wheel_goes(gw_other_wheel other, gw_wheel_side wheel)
{
    static const double WAY[] = { [GW_OTHER_SAME] = 1.0, [GW_OTHER_OPPOSITE] = -1.0, [GW_OTHER_STILL] = 0.0 };
    return wheel == GW_LEFT_WHEEL ? 1.0 : WAY[other];
}

const gw_corner *gw_corner_of(const gw_corner_ws *ws)
{
    return ws->corner;
}

/* The force of a half-shaft is at the wheel centre, its torque on what carries the final drive. */
static double drive_moves(const gw_corner_ws *ws, const gw_state *state, int w, gw_vec3 hub)
{
    const gw_wheel_ws *wheel = &ws->wheel[w];
    const gw_pose *pose = &state->pose[wheel->upright];
    const int carrier = ws->corner->final_drive;
    if (carrier == GW_CHASSIS) return hub.x;
    const double *twist = ws->system.step[carrier];
    gw_vec3 arm = gw_sub(gw_point_now(pose, wheel->patch), gw_point_now(pose, wheel->hub));
    return hub.x + gw_cross(gw_v3(twist[3], twist[4], twist[5]), arm).x;
}

static void read_path(const gw_corner_ws *ws, const gw_state *state, int w, gw_path *out)
{
    const gw_wheel_ws *wheel = &ws->wheel[w];
    const double *twist = ws->system.step[wheel->upright];
    const gw_pose *pose = &state->pose[wheel->upright];
    out->hub = gw_mirror(w, velocity(twist, gw_point_now(pose, wheel->hub)));
    out->patch = gw_mirror(w, velocity(twist, gw_point_now(pose, wheel->patch)));
    out->turn = gw_mirror_axial(w, gw_v3(twist[3], twist[4], twist[5]));
    out->drive = drive_moves(ws, state, w, out->hub);
    out->force_rate = ws->system.border_step[w];
}

static gw_status solve_path(gw_corner_ws *ws, const gw_state *state, gw_drive drive, gw_other_wheel other,
                            gw_error *err)
{
    gw_system *s = &ws->system;
    gw_assemble(ws, state, drive, false);
    for (int b = 1; b < s->n; b++)
        for (int i = 0; i < 6; i++) s->rhs[b][s->n_columns * i] = 0.0;
    for (int w = 0; w < ws->n_wheels; w++) s->border_rhs[w] = gw_wheel_goes(other, (gw_wheel_side)w);
    if (!gw_system_solve(s))
        return gw_fail(err, GW_E_NUMERIC, "the %s corner: no direction of travel at this state",
                       ws->corner->name);
    return GW_OK;
}

gw_status gw_corner_path_at(gw_corner_ws *ws, const gw_state *state, gw_drive drive, gw_path *out,
                            gw_error *err)
{
    gw_status status = solve_path(ws, state, drive, GW_OTHER_SAME, err);
    if (status == GW_OK) read_path(ws, state, GW_LEFT_WHEEL, out);
    return status;
}

gw_status gw_axle_path_at(gw_corner_ws *ws, const gw_state *state, gw_drive drive, gw_other_wheel other,
                          gw_path out[GW_WHEELS], gw_error *err)
{
    gw_status status = solve_path(ws, state, drive, other, err);
    for (int w = 0; w < ws->n_wheels && status == GW_OK; w++) read_path(ws, state, w, &out[w]);
    return status;
}
