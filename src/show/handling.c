/* SPDX-License-Identifier: MIT */
/* Rows of what a kit does to the car that JSON and CSV of compare both have. */
#include "show/handling.h"

#include <math.h>

/* ---- braking ---- */

static const void *drift(const gw_place *p)
{
    const gw_braking_item *b = GW_IT(p, gw_braking_item);
    return GW_IT(p, gw_disturbance) == &b->bump ? &b->after_bump : &b->stop;
}

/* clang-format off */
static const gw_field DRIFT[] = {
    GW_MEMBER("yaw_rate", DEG_PER_S, gw_drift, yaw_rate, 0, "the greatest on the way"),
    GW_MEMBER("heading", DEG, gw_drift, heading, GW_NO_CSV, "at the end"),
    GW_MEMBER("sideways", M, gw_drift, offset, 0, "sideways at the end"),
    GW_MEMBER("distance", M, gw_drift, distance, GW_NO_CSV, "along the line"),
    GW_MEMBER("seconds", PLAIN, gw_drift, seconds, GW_NO_CSV, "until the end"),
};
static const gw_record DRIFT_RECORD = GW_RECORD(gw_drift, DRIFT);

static const gw_field PUSH[] = {
    GW_MEMBER("front_steer", DEG, gw_disturbance, steer[GW_FRONT], 0, "of the axle, to the side of the disturbance"),
    GW_MEMBER("rear_steer", DEG, gw_disturbance, steer[GW_REAR], 0, "the same of the rear axle"),
    GW_MEMBER("yaw_moment", NM, gw_disturbance, yaw_moment, GW_NO_CSV, "to that side"),
    GW_PART_FOUND(drift, &DRIFT_RECORD, GW_ALWAYS),
};
const gw_record GW_PUSH_RECORD = GW_RECORD(gw_disturbance, PUSH);
/* clang-format on */

/* ---- driven wheels, and how far the outer wheel's setting moves ---- */

static const char *const DRIVEN[] = { "outer", "inner", "straight", NULL };

static const char *driven(const gw_place *p)
{
    const gw_traction_item *t = GW_IT(p, gw_traction_item);
    return t->straight ? "straight" : gw_side_name(t->side);
}

static double toe_force(const gw_place *p)
{
    const gw_traction_item *t = GW_IT(p, gw_traction_item);
    return t->has_force ? t->toe_force : (double)NAN;
}

static double camber_force(const gw_place *p)
{
    const gw_traction_item *t = GW_IT(p, gw_traction_item);
    return t->has_force ? t->camber_force : (double)NAN;
}

/* Of toe, camber, camber to the road: the least and the greatest. */
static void band(const gw_place *p, double *x)
{
    const gw_band_item *b = GW_IT(p, gw_band_item);
    const double ends[][2] = { { b->toe_low, b->toe_high },
                               { b->camber_low, b->camber_high },
                               { b->road_low, b->road_high } };
    for (int i = 0; i < 2; i++) x[i] = ends[GW_WHICH(p)][i];
}

/* clang-format off */
static const gw_field TRACTION[] = {
    GW_WORD("corner", gw_traction_item, axle, GW_AXLE_NAMES, GW_NO_CSV, "the driven axle"),
    GW_LOADED("load", gw_traction_item, load, GW_NO_CSV, "name of the load"),
    GW_CHOSEN("wheel", driven, DRIVEN, GW_NO_CSV, "straight: the drive of the load without its cornering"),
    GW_MEMBER("toe", DEG, gw_traction_item, toe, 0, "of the wheel"),
    GW_MEMBER("toe_change", DEG, gw_traction_item, toe_change, 0, "since standing still; toe-in positive"),
    GW_MEMBER("camber_to_road", DEG, gw_traction_item, camber_to_road, 0, "top outboard positive"),
    GW_MEMBER("camber_change", DEG, gw_traction_item, camber_change, 0, "since standing still"),
    GW_WORKED_OUT("toe_force", N, toe_force, GW_SOMETIMES, "side force that the toe change makes"),
    GW_WORKED_OUT("camber_force", N, camber_force, GW_SOMETIMES, "side force that the camber change makes"),
};
const gw_record GW_TRACTION_RECORD = GW_RECORD(gw_traction_item, TRACTION);

static const gw_field BAND[] = {
    GW_WORD("corner", gw_band_item, axle, GW_AXLE_NAMES, GW_NO_CSV, "the axle"),
    GW_CONSTANT("from", G, GW_BAND_FROM, GW_NO_CSV, "lateral acceleration"),
    GW_MEMBER("to", G, gw_band_item, to, 0, "less where a wheel lifts"),
    GW_FILLED_OF("toe", DEG, GW_PAIR, band, 0, GW_LOW_HIGH, "of the outer wheel, least and greatest"),
    GW_FILLED_OF("camber", DEG, GW_PAIR, band, 1, GW_LOW_HIGH, "the same to the body"),
    GW_FILLED_OF("camber_to_road", DEG, GW_PAIR, band, 2, GW_LOW_HIGH, "the same to the road"),
};
const gw_record GW_BAND_RECORD = GW_RECORD(gw_band_item, BAND);
/* clang-format on */
