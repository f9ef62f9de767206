/* SPDX-License-Identifier: MIT */
/* What is told of a wheel of the car on the road, all of it against the car's own S0. */
#include "car/workspace.h"
#include "giveway/units.h"

#include <string.h>

static const double NO_ANGLE = 1e-12; /* [rad]: left over by rounding where a car does not lean */
static const double NO_FORCE = 1e-9;  /* of the wheel's load: the same where it does not corner      */

/* Nothing, where rounding alone is left. */
static double settled(double value, double least)
{
    return fabs(value) < least ? 0.0 : value;
}

static double travel_in(const gw_road_axle *axle, const gw_state *state, int w)
{
    const gw_wheel_ws *ramp = &axle->ws->wheel[w];
    return gw_point_now(&state->pose[ramp->upright], ramp->hub).z - ramp->hub.z;
}

static double travel_of(const gw_road_axle *axle, int w)
{
    return travel_in(axle, &axle->state, w);
}

static gw_vec3 moved(const gw_road_axle *axle, const gw_state *state, int w, gw_vec3 point)
{
    int upright = axle->ws->wheel[w].upright;
    return gw_mirror(w, gw_sub(gw_point_now(&state->pose[upright], point),
                               gw_point_now(&axle->start.pose[upright], point)));
}

static void report_wheel(const gw_road_axle *axle, const gw_state *state, int w, gw_corner_result *out)
{
    const gw_wheel_ws *ramp = &axle->ws->wheel[w];
    const gw_mat3 *upright = &state->pose[ramp->upright].r;
    gw_mat3 r = gw_mirror_turn(w, upright);
    gw_vec3 axis = gw_mirror(w, gw_mul(upright, axle->wheel[w].axis_body));
    gw_mat3 since = gw_matmul_nt(&r, &axle->wheel[w].upright0);
    out->camber = gw_camber_of_axis(axis);
    out->toe = gw_toe_of_axis(axis);
    out->camber_change = out->camber - ramp->static_camber;
    out->toe_change = out->toe - axle->ws->corner->wheel.static_toe;
    out->caster_change = -gw_rot_log(&since).y;
    out->wheel_centre = moved(axle, state, w, ramp->hub);
    out->contact_patch = moved(axle, state, w, ramp->patch);
    out->spring_force = *gw_spring_force_of((gw_state *)state, w);
}

void gw_road_attitude(const gw_road *road, gw_axle which, gw_wheel_side side, gw_road_result *out)
{
    const gw_road_axle *axle = &road->axle[which];
    report_wheel(axle, &axle->state, (int)side, &out->wheel);
    out->camber_to_road =
        -asin(fmax(-1.0, fmin(1.0, gw_dot(road->stance.up, axle->wheel[side].contact.axis))));
}

static void report_joints(const gw_road_axle *axle, const gw_state *state, int w, gw_corner_result *out)
{
    const gw_wheel_ws *ramp = &axle->ws->wheel[w];
    if (axle->ws->bare || !out->joints) return;
    out->travel_toe = out->travel_camber = 0.0;
    for (int v = 0; v < GW_WHEELS; v++) {
        out->travel_toe += ramp->reaction_toe[v] * travel_in(axle, state, v);
        out->travel_camber += ramp->reaction_camber[v] * travel_in(axle, state, v);
    }
    gw_share_out(axle->ws, state, axle->strain0, ramp, out);
}

void gw_road_report_kept(const gw_road *road, gw_axle which, gw_wheel_side side, const gw_state *state,
                         gw_corner_result *out)
{
    const gw_road_axle *axle = &road->axle[which];
    report_wheel(axle, state, (int)side, out);
    report_joints(axle, state, (int)side, out);
}

void gw_road_applied(const gw_road *road, gw_axle which, gw_wheel_side side, gw_corner_load *out)
{
    const int w = (int)side;
    const gw_contact *c = &road->axle[which].wheel[w].contact;
    double lateral = settled(c->lateral, NO_FORCE * c->vertical);
    gw_vec3 force = gw_v3(road->load.brake[which], lateral, c->vertical);
    out->patch_force = gw_mirror(w, force);
    out->patch_moment = gw_mirror_axial(w, gw_v3(0, 0, -road->vehicle->pneumatic_trail * lateral));
    out->hub_force = gw_v3(road->load.drive[which], 0, 0);
    out->travel = travel_of(&road->axle[which], w);
}

static void report_forces(const gw_road *road, gw_axle which, gw_wheel_side side, gw_road_result *out)
{
    gw_corner_load applied;
    gw_road_applied(road, which, side, &applied);
    out->patch_force = applied.patch_force;
    out->patch_moment = applied.patch_moment;
    out->hub_force = applied.hub_force;
    out->travel = applied.travel;
}

/* R (the chassis' mass centre) + height: its height above the road. */
static double centre_height(const gw_road *road, const gw_stance_on_road *stance)
{
    return gw_dot(stance->up, road->centre) + stance->height;
}

void gw_road_report(const gw_road *road, gw_axle which, gw_wheel_side side, gw_road_result *out)
{
    const gw_road_axle *axle = &road->axle[which];
    out->roll = settled(-(road->stance.roll - road->stance0.roll), NO_ANGLE);
    out->pitch = settled(road->stance.pitch - road->stance0.pitch, NO_ANGLE);
    out->heave = centre_height(road, &road->stance) - centre_height(road, &road->stance0);
    out->dive = 0.5 * (travel_of(axle, GW_LEFT_WHEEL) + travel_of(axle, GW_RIGHT_WHEEL));
    gw_road_attitude(road, which, side, out);
    report_joints(axle, &axle->state, (int)side, &out->wheel);
    report_forces(road, which, side, out);
}

gw_status gw_road_make_up(gw_corner_ws *ws, double stiffness, double *out, gw_error *err)
{
    gw_path path[GW_WHEELS];
    const gw_wheel *wheel = &ws->corner->wheel;
    double track = 2.0 * wheel->centre.y;
    gw_status status = gw_axle_path_at(ws, gw_corner_reference(ws), GW_LIFTED, GW_OTHER_OPPOSITE, path, err);
    if (status != GW_OK) return status;
    double springs = 0.5 * (path[GW_LEFT_WHEEL].force_rate - path[GW_RIGHT_WHEEL].force_rate);
    double alone = 0.5 * track * track * springs;
    if (alone > 1.01 * stiffness)
        return gw_fail(
            err, GW_E_RANGE,
            "vehicle.roll_stiffness_Nm_per_deg.%s: %.0f N m/deg, but the springs alone give %.0f N m/deg: "
            "raise it, or leave it out",
            ws->corner->name, stiffness / GW_NM_PER_DEG, alone / GW_NM_PER_DEG);
    *out = 0.5 * (2.0 * stiffness / (track * track) - springs);
    return GW_OK;
}
