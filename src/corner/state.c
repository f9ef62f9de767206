/* SPDX-License-Identifier: MIT */
/* States: memory, copies, the design position. */
#include "corner/workspace.h"

#include <stdlib.h>
#include <string.h>

gw_status gw_state_alloc(const gw_corner *corner, gw_state *out, gw_error *err)
{
    gw_state state = { 0 };
    state.pose = calloc((size_t)corner->n_bodies, sizeof *state.pose);
    if (!state.pose)
        return gw_fail(err, GW_E_NOMEM, "out of memory for a state of the %s corner", corner->name);
    for (int b = 0; b < corner->n_bodies; b++) state.pose[b].r = gw_mat3_identity();
    *out = state;
    return GW_OK;
}

void gw_state_free(gw_state *state)
{
    free(state->pose);
    *state = (gw_state){ 0 };
}

gw_status gw_state_in_arena(gw_corner_ws *ws, gw_state *state)
{
    state->pose = gw_arena_alloc(&ws->arena, (size_t)ws->corner->n_bodies, sizeof *state->pose);
    if (!state->pose) return GW_E_NOMEM;
    gw_state_at_design(ws, state);
    return GW_OK;
}

void gw_state_copy(gw_state *to, const gw_state *from, int n_bodies)
{
    gw_pose *pose = to->pose;
    memcpy(pose, from->pose, (size_t)n_bodies * sizeof *pose);
    *to = *from;
    to->pose = pose;
}

void gw_corner_keep(const gw_corner *corner, const gw_state *from, gw_state *to)
{
    gw_state_copy(to, from, corner->n_bodies);
}

double gw_spring_length(const gw_corner_ws *ws, const gw_state *state, int wheel)
{
    const gw_wheel_ws *w = &ws->wheel[wheel];
    return gw_norm(gw_sub(gw_point_now(&state->pose[w->spring_body], w->spring_at), w->spring_to));
}

void gw_state_at_design(gw_corner_ws *ws, gw_state *state)
{
    gw_pose *pose = state->pose;
    *state = (gw_state){ .pose = pose };
    for (int b = 0; b < ws->corner->n_bodies; b++) pose[b] = (gw_pose){ gw_mat3_identity(), { 0, 0, 0 } };
    for (int w = 0; w < ws->n_wheels; w++) *gw_spring_length_of(state, w) = gw_spring_length(ws, state, w);
}
