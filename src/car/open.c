/* SPDX-License-Identifier: MIT */
/* A car from its parts until it stands, and what it is asked for. */
#include "car/workspace.h"

#include <stdlib.h>

void gw_road_note_strains(gw_road *road)
{
    for (int a = 0; a < GW_AXLES; a++) {
        gw_road_axle *axle = &road->axle[a];
        for (int j = 0; j < axle->ws->corner->n_joints; j++)
            gw_link_strain(&axle->ws->link[j], axle->start.pose, &axle->strain0[j]);
    }
}

void gw_road_set_wheels(gw_road *road)
{
    road->stance0 = road->stance;
    for (int a = 0; a < GW_AXLES; a++) {
        gw_road_axle *axle = &road->axle[a];
        gw_state_copy(&axle->start, &axle->state, axle->ws->system.n);
        for (int w = 0; w < GW_WHEELS; w++) {
            const gw_mat3 *r = &axle->start.pose[axle->ws->wheel[w].upright].r;
            axle->wheel[w].axis_body = gw_mul_t(r, axle->wheel[w].axis_set);
            axle->wheel[w].upright0 = gw_mirror_turn(w, r);
        }
    }
}

gw_status gw_road_make_axle(gw_road *road, gw_axle which, double made_up, gw_error *err)
{
    gw_road_axle *axle = &road->axle[which];
    const gw_corner *pair = axle->ws->corner;
    const gw_wheel *wheel = &pair->wheel;
    axle->strain0 = gw_arena_alloc(&road->arena, (size_t)pair->n_joints + 1, sizeof *axle->strain0);
    if (!axle->strain0 || gw_state_in_arena(axle->ws, &axle->state) != GW_OK ||
        gw_state_in_arena(axle->ws, &axle->start) != GW_OK ||
        gw_state_in_arena(axle->ws, &axle->resume) != GW_OK)
        return gw_fail(err, GW_E_NOMEM, "out of memory for the car");
    axle->place = wheel->centre;
    axle->place.x = which == GW_FRONT ? 0.0 : -road->vehicle->wheelbase;
    axle->made_up = made_up;
    axle->static_load = gw_vehicle_static_load(road->vehicle, which);
    axle->tyre = wheel->tyre_vertical;
    axle->free_length = wheel->loaded_radius + axle->static_load / axle->tyre;
    axle->mass = wheel->mass;
    return GW_OK;
}

void gw_road_note_setting(gw_road_axle *axle)
{
    for (int w = 0; w < GW_WHEELS; w++) {
        double camber = gw_corner_static_camber_of(axle->ws, (gw_wheel_side)w);
        axle->wheel[w].axis_set =
            gw_mirror(w, gw_axis_from_camber_toe(camber, axle->ws->corner->wheel.static_toe));
    }
}

/* What is left of the car's mass without its wheels, and where. */
gw_status gw_road_place_chassis(gw_road *road, gw_error *err)
{
    const gw_vehicle *v = road->vehicle;
    double mass = v->mass;
    gw_vec3 moment =
        gw_scale(v->mass, gw_v3(-(1.0 - v->front_mass_fraction) * v->wheelbase, 0.0, v->cg_height));
    for (int a = 0; a < GW_AXLES; a++) {
        const gw_road_axle *axle = &road->axle[a];
        mass -= 2.0 * axle->mass;
        moment = gw_axpy(moment, -2.0 * axle->mass, gw_v3(axle->place.x, 0.0, axle->place.z));
    }
    if (!(mass > 0.0))
        return gw_fail(err, GW_E_RANGE, "vehicle.mass_kg: the wheels alone weigh more than the car");
    road->mass = mass;
    road->centre = gw_scale(1.0 / mass, moment);
    return GW_OK;
}

gw_status gw_road_begin(const gw_vehicle *vehicle, const gw_road_part part[GW_AXLES], gw_axle_opener *open,
                        const gw_axle_origin *from, gw_road **out, gw_error *err)
{
    *out = NULL;
    gw_road *road = calloc(1, sizeof *road);
    if (!road) return gw_fail(err, GW_E_NOMEM, "out of memory for the car");
    road->vehicle = vehicle;
    gw_status status = GW_OK;
    for (int a = 0; a < GW_AXLES && status == GW_OK; a++) {
        status = open(&part[a], from, (gw_axle)a, &road->axle[a].ws, err);
        if (status == GW_OK) status = gw_road_make_axle(road, (gw_axle)a, part[a].made_up, err);
    }
    if (status == GW_OK) status = gw_road_place_chassis(road, err);
    if (status == GW_OK)
        *out = road;
    else
        gw_road_close(road);
    return status;
}

gw_status gw_road_finish(gw_road *road, gw_status status, gw_road **out)
{
    *out = NULL;
    if (status == GW_OK) {
        gw_road_note_strains(road);
        *out = road;
    } else {
        gw_road_close(road);
    }
    return status;
}

static gw_status open_axle(const gw_road_part *part, const gw_axle_origin *from, gw_axle which,
                           gw_corner_ws **ws, gw_error *err)
{
    (void)from, (void)which;
    return gw_corner_open_like(part->pair, part->fit, part->like, ws, err);
}

gw_status gw_road_open(const gw_vehicle *vehicle, const gw_road_part part[GW_AXLES], gw_road **out,
                       gw_error *err)
{
    gw_status status = gw_road_begin(vehicle, part, open_axle, NULL, out, err);
    gw_road *road = *out;
    if (status != GW_OK) return status;
    for (int a = 0; a < GW_AXLES; a++) gw_road_note_setting(&road->axle[a]);
    status = gw_road_find_reference(road, err);
    if (status == GW_OK) gw_road_set_wheels(road);
    return gw_road_finish(road, status, out);
}

void gw_road_close(gw_road *road)
{
    if (!road) return;
    for (int a = 0; a < GW_AXLES; a++) gw_corner_close(road->axle[a].ws);
    gw_arena_free(&road->arena);
    free(road);
}

gw_corner_ws *gw_road_axle_ws(const gw_road *road, gw_axle axle)
{
    return road->axle[axle].ws;
}

const gw_state *gw_road_axle_state(const gw_road *road, gw_axle axle)
{
    return &road->axle[axle].state;
}

const gw_state *gw_road_axle_start(const gw_road *road, gw_axle axle)
{
    return &road->axle[axle].start;
}
