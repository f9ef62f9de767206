/* SPDX-License-Identifier: MIT */
/* A firm stop with one brake stronger than the other, and a bump under one side. */
#include "study/handling_run.h"

#include "giveway/units.h"

/* How toe and camber of a wheel change from standing still. */
static gw_status look(gw_handling_run *h, const gw_corner_load load[GW_WHEELS], gw_wheel_side wheel,
                      gw_drive drive, gw_wheel_angles *change, gw_error *err)
{
    const gw_wheel_angles setting = gw_handling_setting(h, wheel);
    gw_wheel_angles at;
    gw_status status = gw_handling_look(h, load, wheel, drive, &at, err);
    if (status == GW_OK) *change = (gw_wheel_angles){ at.toe - setting.toe, at.camber - setting.camber };
    return status;
}

/* One wheel with its brake stronger by `part`, the other with its own weaker; travel as in the even stop. */
static gw_status with_brakes(gw_handling_run *h, const gw_deflection *even, double part,
                             gw_wheel_angles change[GW_WHEELS], gw_error *err)
{
    gw_corner_load load[GW_WHEELS];
    gw_status status = GW_OK;
    gw_handling_loads(even, load);
    load[GW_LEFT_WHEEL].patch_force.x *= 1.0 + part;
    load[GW_RIGHT_WHEEL].patch_force.x *= 1.0 - part;
    for (int w = 0; w < GW_WHEELS && status == GW_OK; w++)
        status = look(h, load, (gw_wheel_side)w, GW_AT_TRAVEL, &change[w], err);
    return status;
}

/* The left wheel goes up and the other stays at its height; through what they share it turns all the same. */
static gw_status over_bump(gw_handling_run *h, gw_braking_corner *out, gw_error *err)
{
    const gw_corner_load load[GW_WHEELS] = { { .travel = h->out->bump }, { .travel = 0.0 } };
    gw_wheel_angles up, still = { 0.0, 0.0 };
    gw_status status = look(h, load, GW_LEFT_WHEEL, GW_LIFTED, &up, err);
    if (status == GW_OK && gw_is_pair(&h->run.c->corners[h->run.axle]))
        status = look(h, load, GW_RIGHT_WHEEL, GW_LIFTED, &still, err);
    if (status != GW_OK) return status;
    out->bump_toe = up.toe;
    out->bump_camber = up.camber;
    out->beside_toe = still.toe;
    out->beside_camber = still.camber;
    return GW_OK;
}

/* In a straight stop the left wheel is called outer. */
static gw_status even_stop(gw_handling_run *h, gw_wheel_side wheel, gw_deflection *item,
                           gw_braking_corner *out, gw_error *err)
{
    const gw_manoeuvre stop = { .brake_g = GW_FIRM_STOP, .side = gw_side_of_wheel(wheel) };
    gw_status status = gw_handling_manoeuvre(h, &stop, item, err);
    if (status != GW_OK) return status;
    out->even_toe[wheel] = item->result.toe_change;
    out->even_camber[wheel] = item->result.camber_change;
    return GW_OK;
}

gw_status gw_handling_braking(gw_handling_run *h, gw_braking_corner *out, gw_error *err)
{
    double half = 0.5 * h->out->brake_imbalance;
    gw_deflection item;
    gw_wheel_angles change[GW_WHEELS];
    gw_braking_corner c = { .there = true };
    gw_status status = even_stop(h, GW_RIGHT_WHEEL, &item, &c, err);
    if (status == GW_OK) status = even_stop(h, GW_LEFT_WHEEL, &item, &c, err);
    if (status != GW_OK) return status;
    c.toe_per_g = item.result.toe_change / GW_FIRM_STOP;
    c.fore_aft_per_g = item.result.wheel_centre.x / GW_FIRM_STOP;
    double force = -item.applied.patch_force.x;
    c.fore_aft_per_N = force > 0.0 ? item.result.wheel_centre.x / force : (double)NAN;
    if ((status = with_brakes(h, &item, half, change, err)) != GW_OK) return status;
    c.strong_toe = change[GW_LEFT_WHEEL].toe;
    c.strong_camber = change[GW_LEFT_WHEEL].camber;
    c.weak_toe = change[GW_RIGHT_WHEEL].toe;
    c.weak_camber = change[GW_RIGHT_WHEEL].camber;
    status = over_bump(h, &c, err);
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
        item->pull.steer[a] =
            0.5 * (left_steer(c->even_toe[GW_LEFT_WHEEL], c->even_camber[GW_LEFT_WHEEL], worth) -
                   left_steer(c->even_toe[GW_RIGHT_WHEEL], c->even_camber[GW_RIGHT_WHEEL], worth));
        item->imbalance.steer[a] = 0.5 * (left_steer(c->strong_toe, c->strong_camber, worth) -
                                          left_steer(c->weak_toe, c->weak_camber, worth));
        item->imbalance.yaw_moment += h->out->brake_imbalance * force * 0.5 * v->track[a];
        item->bump.steer[a] = 0.5 * (left_steer(c->bump_toe, c->bump_camber, worth) -
                                     left_steer(c->beside_toe, c->beside_camber, worth));
    }
    double speed = h->out->speed;
    gw_bicycle_drift(&balance->bicycle, &item->pull, speed, GW_FIRM_STOP * GW_G0, 1e3, &item->pulled);
    gw_bicycle_drift(&balance->bicycle, &item->imbalance, speed, GW_FIRM_STOP * GW_G0, 1e3, &item->stop);
    gw_bicycle_drift(&balance->bicycle, &item->bump, speed, 0.0, 1.0, &item->after_bump);
    item->has_drift = true;
}
