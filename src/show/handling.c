/* SPDX-License-Identifier: MIT */
/* Rows of what a kit does to the car that JSON and CSV of compare both have. */
#include "show/handling.h"

#include <math.h>

/* ---- where camber and toe went ---- */

/* Where the whole car is solved, tyres lean the body too, and both wheels of an axle move in common. */
static GW_RECORD(ROAD_PARTS_RECORD, gw_angle_parts,
    GW_MEMBER("tyre", DEG, gw_angle_parts, tyre, GW_NO_CSV, "what the tyres make the body lean; camber to the road only"),
    GW_MEMBER("jacking", DEG, gw_angle_parts, jacking, GW_NO_CSV, "as travel, by the mean travel of both wheels: jacking, dive, squat"));
/* Columns of the same, each in its place. */
static GW_RECORD(TYRE_RECORD, gw_angle_parts,
    GW_MEMBER("tyre", DEG, gw_angle_parts, tyre, GW_NO_JSON, "as above"));
static GW_RECORD(JACKING_RECORD, gw_angle_parts,
    GW_MEMBER("jacking", DEG, gw_angle_parts, jacking, GW_NO_JSON, "as above"));

static GW_RECORD(PARTS_RECORD, gw_angle_parts,
    GW_MEMBER("static", DEG, gw_angle_parts, setting, 0, "the setting"),
    GW_MEMBER("roll", DEG, gw_angle_parts, roll, 0, "of the body, over its wheel centres where tyre is told; camber to the road only"),
    GW_PART_IF(gw_corner_budget, on_road, &TYRE_RECORD),
    GW_MEMBER("travel", DEG, gw_angle_parts, travel, 0, "at this travel with no other load; less the mean travel where jacking is told"),
    GW_PART_IF(gw_corner_budget, on_road, &ROAD_PARTS_RECORD),
    GW_PART_IF(gw_corner_budget, on_road, &JACKING_RECORD),
    GW_MEMBER("bushes", DEG, gw_angle_parts, compliance, 0, "what the load adds"),
    GW_MEMBER("total", DEG, gw_angle_parts, total, 0, "to the road"));

GW_RECORD(GW_CORNER_BUDGET_RECORD, gw_corner_budget,
    GW_WORD("corner", gw_corner_budget, axle, GW_AXLE_NAMES, GW_NO_CSV, "the axle"),
    GW_LOADED("load", gw_corner_budget, load, GW_NO_CSV, "name of the load"),
    GW_WORD("wheel", gw_corner_budget, side, GW_SIDE_NAMES, GW_NO_CSV, "which of the two"),
    GW_MEMBER("travel", MM, gw_corner_budget, travel, 0, "of the wheel centre; bump positive"),
    GW_MEMBER("vertical_load", N, gw_corner_budget, vertical, 0, "on the wheel"),
    GW_MEMBER("side_force", N, gw_corner_budget, lateral, 0, "of the road, towards the inside of the corner"),
    GW_WITHIN("camber", gw_corner_budget, camber, &PARTS_RECORD, GW_ON_LINE, "and where it went"),
    GW_WITHIN("toe", gw_corner_budget, toe, &PARTS_RECORD, GW_ON_LINE, "and where it went"));

/* ---- the car with a single track ---- */

GW_RECORD(GW_SINGLE_TRACK_RECORD, gw_bicycle_figures,
    GW_MEMBER("characteristic_speed", KM_H, gw_bicycle_figures, characteristic_speed, GW_MAY_LACK, "none unless the car understeers"),
    GW_MEMBER("critical_speed", KM_H, gw_bicycle_figures, critical_speed, GW_MAY_LACK, "none unless it oversteers"),
    GW_MEMBER("speed", KM_H, gw_bicycle_figures, speed, GW_NO_CSV, "of what follows"),
    GW_MEMBER("stable", PLAIN, gw_bicycle_figures, stable, GW_NO_CSV, "below the critical speed"),
    GW_MEMBER("natural", HZ_OF_RAD_PER_S, gw_bicycle_figures, natural, GW_MAY_LACK | GW_NO_CSV, "yaw and side slip together"),
    GW_MEMBER("yaw_natural", HZ_OF_RAD_PER_S, gw_bicycle_figures, natural, GW_NO_JSON, "the same"),
    GW_MEMBER("damping_ratio", PLAIN, gw_bicycle_figures, damping, GW_MAY_LACK | GW_NO_CSV, "of the same"),
    GW_MEMBER("yaw_damping_ratio", PLAIN, gw_bicycle_figures, damping, GW_NO_JSON, "of the same"),
    GW_MEMBER("yaw_gain_per_s", PLAIN, gw_bicycle_figures, yaw_gain, GW_MAY_LACK, "steady yaw rate per steer of the front wheels"),
    GW_MEMBER("yaw_response", S, gw_bicycle_figures, yaw_time, GW_MAY_LACK, "from a step of steer to nine tenths of the steady yaw rate"),
    GW_MEMBER("yaw_overshoot", PLAIN, gw_bicycle_figures, yaw_overshoot, GW_MAY_LACK, "greatest yaw rate over the steady one, less 1"),
    GW_MEMBER("side_slip_gain", PLAIN, gw_bicycle_figures, slip_gain, GW_MAY_LACK | GW_NO_CSV, "steady side slip per steer"),
    GW_MEMBER("side_slip_response", S, gw_bicycle_figures, slip_time, GW_MAY_LACK, "to nine tenths of the steady side slip"));

/* ---- braking ---- */

GW_RECORD(GW_FORE_AFT_RECORD, gw_braking_corner,
    GW_MEMBER("fore_aft", MM_PER_G, gw_braking_corner, fore_aft_per_g, 0, "of the wheel centre; forward positive"),
    GW_MEMBER("fore_aft", MM_PER_KN, gw_braking_corner, fore_aft_per_N, GW_MAY_LACK, "over the wheel's braking force"));

static const void *drift(const gw_place *p)
{
    const gw_braking_item *b = GW_IT(p, gw_braking_item);
    const gw_disturbance *of = GW_IT(p, gw_disturbance);
    return of == &b->pull ? &b->pulled : of == &b->bump ? &b->after_bump : &b->stop;
}

static GW_RECORD(DRIFT_RECORD, gw_drift,
    GW_MEMBER("yaw_rate", DEG_PER_S, gw_drift, yaw_rate, 0, "the greatest on the way"),
    GW_MEMBER("heading", DEG, gw_drift, heading, GW_NO_CSV, "at the end"),
    GW_MEMBER("sideways", M, gw_drift, offset, 0, "sideways at the end"),
    GW_MEMBER("distance", M, gw_drift, distance, GW_NO_CSV, "along the line"),
    GW_MEMBER("seconds", PLAIN, gw_drift, seconds, GW_NO_CSV, "until the end"));

GW_RECORD(GW_PUSH_RECORD, gw_disturbance,
    GW_MEMBER("front_steer", DEG, gw_disturbance, steer[GW_FRONT], 0, "of the axle, to the side of the disturbance"),
    GW_MEMBER("rear_steer", DEG, gw_disturbance, steer[GW_REAR], 0, "the same of the rear axle"),
    GW_MEMBER("yaw_moment", NM, gw_disturbance, yaw_moment, GW_NO_CSV, "to that side"),
    GW_PART_FOUND(drift, &DRIFT_RECORD, GW_ALWAYS));

/* ---- driven wheels, and how far the outer wheel's setting moves ---- */

static const char *const DRIVEN[] = { "outer", "inner", "straight", NULL };

GW_READS(const char *, driven, gw_traction_item, it->straight ? "straight" : gw_side_name(it->side))

/* Of toe, camber, camber to the road: the least and the greatest. */
static void band(const gw_place *p, double *x)
{
    const gw_band_item *b = GW_IT(p, gw_band_item);
    const double ends[][2] = { { b->toe_low, b->toe_high },
                               { b->camber_low, b->camber_high },
                               { b->road_low, b->road_high } };
    for (int i = 0; i < 2; i++) x[i] = ends[GW_WHICH(p)][i];
}

GW_RECORD(GW_TRACTION_RECORD, gw_traction_item,
    GW_WORD("corner", gw_traction_item, axle, GW_AXLE_NAMES, GW_NO_CSV, "the driven axle"),
    GW_LOADED("load", gw_traction_item, load, GW_NO_CSV, "name of the load"),
    GW_CHOSEN("wheel", driven, DRIVEN, GW_NO_CSV, "straight: the drive of the load without its cornering"),
    GW_MEMBER("toe", DEG, gw_traction_item, toe, 0, "of the wheel"),
    GW_MEMBER("toe_change", DEG, gw_traction_item, toe_change, 0, "since standing still; toe-in positive"),
    GW_MEMBER("camber_to_road", DEG, gw_traction_item, camber_to_road, 0, "top outboard positive"),
    GW_MEMBER("camber_change", DEG, gw_traction_item, camber_change, 0, "since standing still"),
    GW_MEMBER_IF("toe_force", N, gw_traction_item, has_force, gw_traction_item, toe_force, GW_SOMETIMES, "side force that the toe change makes"),
    GW_MEMBER_IF("camber_force", N, gw_traction_item, has_force, gw_traction_item, camber_force, GW_SOMETIMES, "side force that the camber change makes"));

GW_RECORD(GW_BAND_RECORD, gw_band_item,
    GW_WORD("corner", gw_band_item, axle, GW_AXLE_NAMES, GW_NO_CSV, "the axle"),
    GW_CONSTANT("from", G, GW_BAND_FROM, GW_NO_CSV, "lateral acceleration"),
    GW_MEMBER("to", G, gw_band_item, to, 0, "less where a wheel lifts"),
    GW_FILLED_OF("toe", DEG, GW_PAIR, band, 0, GW_LOW_HIGH, "of the outer wheel, least and greatest"),
    GW_FILLED_OF("camber", DEG, GW_PAIR, band, 1, GW_LOW_HIGH, "the same to the body"),
    GW_FILLED_OF("camber_to_road", DEG, GW_PAIR, band, 2, GW_LOW_HIGH, "the same to the road"));
