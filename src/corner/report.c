/* SPDX-License-Identifier: MIT */
/* What is reported of a solved state, all of it against S0. */
#include "corner/workspace.h"

#include <string.h>

static gw_vec3 moved(const gw_corner_ws *ws, const gw_state *state, int w, gw_vec3 point)
{
    int upright = ws->wheel[w].upright;
    return gw_mirror(w, gw_sub(gw_point_now(&state->pose[upright], point),
                               gw_point_now(&ws->reference.pose[upright], point)));
}

static void report_wheel(const gw_corner_ws *ws, const gw_state *state, int w, gw_corner_result *out)
{
    const gw_wheel_ws *wheel = &ws->wheel[w];
    gw_mat3 r = gw_mirror_turn(w, &state->pose[wheel->upright].r);
    gw_vec3 axis = gw_mul(&r, wheel->axis_body);
    gw_mat3 since = gw_matmul_nt(&r, &wheel->upright0);
    out->camber = gw_camber_of_axis(axis);
    out->toe = gw_toe_of_axis(axis);
    out->camber_change = out->camber - wheel->static_camber;
    out->toe_change = out->toe - ws->corner->wheel.static_toe;
    out->caster_change = -gw_rot_log(&since).y;
    out->wheel_centre = moved(ws, state, w, wheel->hub);
    out->contact_patch = moved(ws, state, w, wheel->patch);
    out->spring_force = w == GW_LEFT_WHEEL ? state->spring_force : state->right_spring_force;
}

/* Virtual work of the strain since S0 on what the joint feels under a unit moment. */
static double share(const gw_link_state *unit, const gw_link_state *now, const gw_link_state *s0)
{
    double sum = 0.0;
    for (int i = 0; i < 3; i++)
        sum += unit->f[i] * (now->u[i] - s0->u[i]) + unit->m[i] * (now->theta[i] - s0->theta[i]);
    return sum;
}

gw_joint_result gw_corner_at_rest(const gw_corner_ws *ws, int joint)
{
    gw_joint_result out = { .toe_share = 0.0 };
    const gw_link_state *s0 = &ws->strain0[joint];
    memcpy(out.u, s0->u, sizeof out.u);
    memcpy(out.theta, s0->theta, sizeof out.theta);
    memcpy(out.f, s0->f, sizeof out.f);
    memcpy(out.m, s0->m, sizeof out.m);
    return out;
}

void gw_share_out(const gw_corner_ws *ws, const gw_state *state, const gw_link_state *strain0,
                  const gw_wheel_ws *wheel, gw_corner_result *out)
{
    out->geometry_toe = out->toe_change - out->travel_toe;
    out->geometry_camber = out->camber_change - out->travel_camber;
    for (int j = 0; j < ws->corner->n_joints; j++) {
        gw_link_state now;
        gw_joint_result *joint = &out->joints[j];
        gw_link_strain(&ws->link[j], state->pose, &now);
        memcpy(joint->u, now.u, sizeof now.u);
        memcpy(joint->theta, now.theta, sizeof now.theta);
        memcpy(joint->f, now.f, sizeof now.f);
        memcpy(joint->m, now.m, sizeof now.m);
        joint->toe_share = share(&wheel->unit_toe[j], &now, &strain0[j]);
        joint->camber_share = share(&wheel->unit_camber[j], &now, &strain0[j]);
        out->geometry_toe -= joint->toe_share;
        out->geometry_camber -= joint->camber_share;
    }
}

void gw_corner_report_of(const gw_corner_ws *ws, const gw_state *state, gw_wheel_side side,
                         gw_corner_result *out)
{
    const gw_wheel_ws *wheel = &ws->wheel[side];
    report_wheel(ws, state, (int)side, out);
    if (ws->bare || !out->joints) return;
    out->travel_toe = out->travel_camber = 0.0;
    for (int w = 0; w < ws->n_wheels; w++) {
        double travel = w == GW_LEFT_WHEEL ? state->load.travel : state->right_load.travel;
        out->travel_toe += wheel->reaction_toe[w] * travel;
        out->travel_camber += wheel->reaction_camber[w] * travel;
    }
    gw_share_out(ws, state, ws->strain0, wheel, out);
}

void gw_corner_report(const gw_corner_ws *ws, const gw_state *state, gw_corner_result *out)
{
    gw_corner_report_of(ws, state, GW_LEFT_WHEEL, out);
}
