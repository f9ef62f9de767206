/* SPDX-License-Identifier: MIT */
/* The wheel's path under vertical load: a state of it, how it goes on, and its instant centres. */
#include "giveway/corner_travel.h"

#include <math.h>

/* Derivatives of the camber and toe formulas as the wheel axis turns. */
static void turn_rates(gw_vec3 axis, gw_vec3 turn, gw_travel_rates *out)
{
    gw_vec3 moves = gw_cross(turn, axis);
    double level = axis.x * axis.x + axis.y * axis.y;
    out->toe = (axis.y * moves.x - axis.x * moves.y) / level;
    out->camber = -moves.z / sqrt(level);
}

static void fill_rates(const gw_path *path, const gw_state *state, const gw_corner_result *result,
                       gw_travel_rates *out)
{
    turn_rates(gw_axis_from_camber_toe(result->camber, result->toe), path->turn, out);
    out->vertical_load = state->load.patch_force.z;
    out->wheel_rate = path->force_rate;
    out->patch_outward = path->patch.y / path->patch.z;
    out->patch_forward = path->patch.x / path->patch.z;
    out->hub_outward = path->hub.y / path->hub.z;
    out->hub_forward = path->hub.x / path->hub.z;
    out->roll = path->turn.x;
    out->pitch = path->turn.y;
}

gw_status gw_corner_travel_at(gw_corner_ws *ws, const gw_corner_load *load, double travel, gw_state *state,
                              gw_corner_result *result, gw_travel_rates *rates, gw_error *err)
{
    gw_corner_load at = *load;
    gw_path path;
    at.travel = travel;
    gw_status status = gw_corner_solve(ws, &at, GW_LIFTED, state, err);
    if (status == GW_OK) status = gw_corner_path_at(ws, state, GW_LIFTED, &path, err);
    if (status != GW_OK) return status;
    gw_corner_report(ws, state, result);
    fill_rates(&path, state, result, rates);
    return GW_OK;
}

double gw_roll_centre_height(const gw_travel_rates *rates, double half_track)
{
    return half_track * rates->patch_outward;
}

/* v_x = hub_forward + pitch z = 0 and v_z = 1 - pitch x = 0. */
gw_instant_centre gw_side_view_centre(const gw_travel_rates *rates)
{
    return (gw_instant_centre){ 1.0 / rates->pitch, -rates->hub_forward / rates->pitch };
}

/* v_y = hub_outward - roll z = 0 and v_z = 1 + roll y = 0. */
gw_instant_centre gw_front_view_centre(const gw_travel_rates *rates)
{
    return (gw_instant_centre){ 1.0 / rates->roll, rates->hub_outward / rates->roll };
}
