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
    out->drive_forward = path->drive / path->hub.z;
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

static const gw_travel_rates NO_RATES = { NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN };

/* The path is per metre of the left wheel's travel, which this one takes `goes` times. */
static void rates_of(const gw_path *path, double goes, const gw_corner_result *result, gw_travel_rates *out)
{
    *out = NO_RATES;
    if (goes == 0.0) return;
    turn_rates(gw_axis_from_camber_toe(result->camber, result->toe), gw_scale(1.0 / goes, path->turn), out);
    out->wheel_rate = path->force_rate / goes;
    out->patch_outward = path->patch.y / path->patch.z;
    out->patch_forward = path->patch.x / path->patch.z;
    out->hub_outward = path->hub.y / path->hub.z;
    out->hub_forward = path->hub.x / path->hub.z;
    out->drive_forward = path->drive / path->hub.z;
    out->roll = path->turn.x / goes;
    out->pitch = path->turn.y / goes;
}

gw_status gw_axle_travel_at(gw_corner_ws *ws, const gw_corner_load load[GW_WHEELS], gw_other_wheel other,
                            double travel, gw_state *state, gw_corner_result result[GW_WHEELS],
                            gw_travel_rates rates[GW_WHEELS], gw_error *err)
{
    gw_corner_load at[GW_WHEELS] = { load[GW_LEFT_WHEEL], load[GW_RIGHT_WHEEL] };
    gw_path path[GW_WHEELS];
    for (int w = 0; w < GW_WHEELS; w++) at[w].travel = gw_wheel_goes(other, (gw_wheel_side)w) * travel;
    gw_status status = gw_axle_solve(ws, at, GW_LIFTED, state, err);
    if (status == GW_OK) status = gw_axle_path_at(ws, state, GW_LIFTED, other, path, err);
    if (status != GW_OK) return status;
    for (int w = 0; w < GW_WHEELS; w++) {
        gw_corner_report_of(ws, state, (gw_wheel_side)w, &result[w]);
        rates_of(&path[w], gw_wheel_goes(other, (gw_wheel_side)w), &result[w], &rates[w]);
        rates[w].vertical_load =
            w == GW_LEFT_WHEEL ? state->load.patch_force.z : state->right_load.patch_force.z;
    }
    return GW_OK;
}

/* With both wheels s and -s, roll is 2 s / t. */
gw_status gw_axle_roll_rates(gw_corner_ws *ws, gw_roll_rates *out, gw_error *err)
{
    gw_path path[GW_WHEELS];
    gw_travel_rates per_travel;
    const gw_wheel *wheel = &gw_corner_of(ws)->wheel;
    double half = wheel->centre.y;
    gw_status status = gw_axle_path_at(ws, gw_corner_reference(ws), GW_LIFTED, GW_OTHER_OPPOSITE, path, err);
    if (status != GW_OK) return status;
    for (int w = 0; w < GW_WHEELS; w++) {
        double camber = gw_corner_static_camber_of(ws, (gw_wheel_side)w);
        turn_rates(gw_axis_from_camber_toe(camber, wheel->static_toe), path[w].turn, &per_travel);
        out->centre[w] = half * path[w].patch.y / path[w].patch.z;
        out->steer[w] = half * per_travel.toe;
        out->camber[w] = half * per_travel.camber;
    }
    out->stiffness = half * half * (path[GW_LEFT_WHEEL].force_rate - path[GW_RIGHT_WHEEL].force_rate);
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
