/* SPDX-License-Identifier: MIT */
/* A firm stop with one brake stronger than the other, and a bump under one side. */
#include "study/handling_run.h"

#include "giveway/units.h"

/* The wheel of the open corner with its brake stronger or weaker by `part`; travel as in the even stop. */
static gw_status with_brake(gw_handling_run *h, const gw_corner_load *even, double part, double *toe,
                            double *camber, gw_error *err)
{
    const gw_wheel_angles setting = gw_handling_setting(h);
    gw_corner_load load = *even;
    gw_wheel_angles at;
    load.patch_force.x *= 1.0 + part;
    gw_status status = gw_handling_look(h, &load, GW_AT_TRAVEL, &at, err);
    if (status != GW_OK) return status;
    *toe = at.toe - setting.toe;
    *camber = at.camber - setting.camber;
    return GW_OK;
}

static gw_status over_bump(gw_handling_run *h, gw_braking_corner *out, gw_error *err)
{
    const gw_wheel_angles setting = gw_handling_setting(h);
    const gw_corner_load load = { .travel = h->out->bump };
    gw_wheel_angles at;
    gw_status status = gw_handling_look(h, &load, GW_LIFTED, &at, err);
    if (status != GW_OK) return status;
    out->bump_toe = at.toe - setting.toe;
    out->bump_camber = at.camber - setting.camber;
    return GW_OK;
}

gw_status gw_handling_braking(gw_handling_run *h, gw_braking_corner *out, gw_error *err)
{
    const gw_manoeuvre stop = { .brake_g = GW_FIRM_STOP };
    double half = 0.5 * h->out->brake_imbalance;
    gw_deflection item;
    gw_braking_corner c = { .there = true };
    gw_status status = gw_handling_manoeuvre(h, &stop, &item, err);
    if (status != GW_OK) return status;
    c.toe_per_g = item.result.toe_change / GW_FIRM_STOP;
    c.fore_aft_per_g = item.result.wheel_centre.x / GW_FIRM_STOP;
    double force = -item.applied.patch_force.x;
    c.fore_aft_per_N = force > 0.0 ? item.result.wheel_centre.x / force : (double)NAN;
    status = with_brake(h, &item.applied, half, &c.strong_toe, &c.strong_camber, err);
    if (status == GW_OK) status = with_brake(h, &item.applied, -half, &c.weak_toe, &c.weak_camber, err);
    if (status == GW_OK) status = over_bump(h, &c, err);
    if (status == GW_OK) *out = c;
    return status;
}

/* Camber stiffness over cornering stiffness: how much steer a degree of camber is worth. */
static double camber_worth(const gw_handling_run *h, gw_axle axle)
{
    gw_tyre_force f;
    double load = gw_vehicle_static_load(&h->run.vehicle, axle);
    gw_status status = gw_tyre_chord(h->tyre[axle], 0.0, load, 0.0, GW_TYRE_STRETCH, &f, NULL);
    return status == GW_OK && f.cornering > 0.0 ? f.camber / f.cornering : 0.0;
}

/* Steer to the left of a left wheel: toe-in steers to the right, a top that leans left pushes to the left. */
static double left_steer(double toe, double camber, double worth)
{
    return -toe + worth * camber;
}

void gw_handling_drift(const gw_handling_run *h, const gw_balance_item *balance, gw_braking_item *item)
{
    const gw_vehicle *v = &h->run.vehicle;
    if (!balance->has_car) return;
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        const gw_braking_corner *c = &item->corner[a];
        double worth = camber_worth(h, a);
        double share = a == GW_FRONT ? v->brake_front_fraction : 1.0 - v->brake_front_fraction;
        double force = 0.5 * share * v->mass * GW_FIRM_STOP * GW_G0;
        item->imbalance.steer[a] = 0.5 * (left_steer(c->strong_toe, c->strong_camber, worth) -
                                          left_steer(c->weak_toe, c->weak_camber, worth));
        item->imbalance.yaw_moment += h->out->brake_imbalance * force * 0.5 * v->track[a];
        item->bump.steer[a] = 0.5 * left_steer(c->bump_toe, c->bump_camber, worth);
    }
    double speed = h->out->speed;
    gw_bicycle_drift(&balance->bicycle, &item->imbalance, speed, GW_FIRM_STOP * GW_G0, 1e3, &item->stop);
    gw_bicycle_drift(&balance->bicycle, &item->bump, speed, 0.0, 1.0, &item->after_bump);
    item->has_drift = true;
}
