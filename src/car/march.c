/* SPDX-License-Identifier: MIT */
/*
 * A manoeuvre in one go, or, where that fails or goes further than a car that works, brought on little by
 * little.
 */
#include "car/workspace.h"
#include "giveway/units.h"

enum { MAX_PARTS = 60 };
static const double SMALLEST_PART = 1.0 / 2048.0;

static void keep(gw_road *road)
{
    road->kept = road->stance;
    for (int a = 0; a < GW_AXLES; a++) {
        gw_road_axle *axle = &road->axle[a];
        gw_state_copy(&axle->resume, &axle->state, axle->ws->system.n);
        axle->lateral0 = axle->lateral;
    }
}

static void go_back(gw_road *road)
{
    road->stance = road->kept;
    for (int a = 0; a < GW_AXLES; a++) {
        gw_road_axle *axle = &road->axle[a];
        gw_state_copy(&axle->state, &axle->resume, axle->ws->system.n);
        axle->lateral = axle->lateral0;
    }
}

static bool is_usual(const gw_road *road)
{
    for (int a = 0; a < GW_AXLES; a++)
        if (!gw_turn_is_usual(road->axle[a].ws, &road->axle[a].resume, &road->axle[a].state)) return false;
    return road->iterations <= 12;
}

static void shut_play(gw_road *road, double share)
{
    for (int a = 0; a < GW_AXLES; a++) gw_shut_play(road->axle[a].ws, share);
}

/* From where the car stands; the state of before is kept where it does not get there. */
static gw_status try_step(gw_road *road, gw_error *err)
{
    keep(road);
    gw_status status = gw_road_newton(road, err);
    if (status == GW_OK && !is_usual(road))
        status = gw_fail(err, GW_E_NUMERIC, "the car would snap over in this manoeuvre");
    if (status != GW_OK) go_back(road);
    return status;
}

static gw_status try_share(void *of, double share, gw_error *err)
{
    shut_play(of, share);
    return try_step(of, err);
}

static gw_status open_play(gw_road *road, gw_error *err)
{
    gw_status status = gw_open_by_shares(try_share, road, err);
    shut_play(road, 0.0);
    return status;
}

static double drive_share(gw_driven driven, gw_axle axle)
{
    if (driven == GW_DRIVEN_ALL) return 0.5;
    return (driven == GW_DRIVEN_FRONT) == (axle == GW_FRONT) ? 1.0 : 0.0;
}

gw_road_load gw_road_load_of(const gw_vehicle *v, const gw_manoeuvre *m, double part)
{
    gw_road_load load = { .ax = part * (m->drive_g - m->brake_g) * GW_G0,
                          .ay = -part * m->lateral_g * GW_G0 };
    double weight = part * v->mass * GW_G0;
    for (int a = 0; a < GW_AXLES; a++) {
        double brakes = a == GW_FRONT ? v->brake_front_fraction : 1.0 - v->brake_front_fraction;
        load.brake[a] = -0.5 * weight * m->brake_g * brakes;
        load.drive[a] = 0.5 * weight * m->drive_g * drive_share(m->driven, (gw_axle)a);
    }
    return load;
}

static void stand_still(gw_road *road)
{
    road->stance = road->stance0;
    for (int a = 0; a < GW_AXLES; a++) {
        gw_road_axle *axle = &road->axle[a];
        gw_state_copy(&axle->state, &axle->start, axle->ws->system.n);
        axle->lateral = 0.0;
    }
}

/* A share of the manoeuvre, in one go or in parts; what of it stands is in road->reached. */
static gw_status bring_on(gw_road *road, const gw_manoeuvre *m, double whole, gw_error *err)
{
    double done = 0.0, part = 1.0;
    stand_still(road);
    for (int i = 0; i < MAX_PARTS && done < 1.0; i++) {
        double next = fmin(1.0, done + part);
        road->load = gw_road_load_of(road->vehicle, m, whole * next);
        gw_status status = try_step(road, err);
        if (status == GW_OK) {
            road->reached = whole * (done = next);
            part *= 1.5;
        } else if ((part = part == 1.0 ? 0.25 : 0.5 * part) < SMALLEST_PART) {
            return status;
        }
    }
    if (done < 1.0)
        return gw_fail(err, GW_E_NUMERIC, "the car is not brought to this manoeuvre in %d parts: lower the g",
                       (int)MAX_PARTS);
    return GW_OK;
}

gw_status gw_road_reach(gw_road *road, const gw_manoeuvre *m, double whole, gw_error *err)
{
    road->reached = 0.0;
    if (!gw_road_has_play(road)) return bring_on(road, m, whole, err);
    stand_still(road);
    road->load = gw_road_load_of(road->vehicle, m, whole);
    if (try_step(road, NULL) == GW_OK) return GW_OK;
    shut_play(road, 1.0);
    gw_status status = bring_on(road, m, whole, err);
    road->reached = 0.0; /* with every play shut, which tells nothing of the car as it is */
    if (status == GW_OK) return open_play(road, err);
    shut_play(road, 0.0);
    return status;
}

/* S0 on the road: from the ramp, with what hangs on the springs there and not here. */
gw_status gw_road_find_reference(gw_road *road, gw_error *err)
{
    const gw_manoeuvre still = { 0 };
    road->setting = true;
    road->load = gw_road_load_of(road->vehicle, &still, 1.0);
    for (int a = 0; a < GW_AXLES; a++)
        gw_state_copy(&road->axle[a].state, gw_corner_reference(road->axle[a].ws),
                      road->axle[a].ws->system.n);
    gw_look_from(&road->stance);
    gw_status status = try_step(road, err);
    if (status != GW_OK && gw_road_has_play(road)) {
        shut_play(road, 1.0);
        status = try_step(road, err);
        if (status == GW_OK) status = open_play(road, err);
        shut_play(road, 0.0);
    }
    road->setting = false;
    return status;
}
