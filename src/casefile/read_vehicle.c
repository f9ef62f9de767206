/* SPDX-License-Identifier: MIT */
#include "casefile/section.h"
#include "giveway/units.h"

#include <math.h>

static const gw_number_key NUMBERS[] = {
    { "mass_kg", GW_REQUIRED, GW_ABOVE(0, 1e6), 1, 0, offsetof(gw_vehicle, mass) },
    { "front_mass_fraction", GW_REQUIRED, GW_BETWEEN(0, 1), 1, 0, offsetof(gw_vehicle, front_mass_fraction) },
    { "cg_height_mm", GW_REQUIRED, GW_ABOVE(0, 1e4), GW_MM, 0, offsetof(gw_vehicle, cg_height) },
    { "wheelbase_mm", GW_REQUIRED, GW_ABOVE(0, 1e5), GW_MM, 0, offsetof(gw_vehicle, wheelbase) },
    { "brake_front_fraction", GW_REQUIRED, GW_FROM(0, 1), 1, 0, offsetof(gw_vehicle, brake_front_fraction) },
    { "pneumatic_trail_mm", GW_REQUIRED, GW_FROM(-1e3, 1e3), GW_MM, 0,
      offsetof(gw_vehicle, pneumatic_trail) },
    { "yaw_inertia_kgm2", GW_OPTIONAL, GW_ABOVE(0, 1e7), 1, 0, offsetof(gw_vehicle, yaw_inertia) },
    { "steering_ratio", GW_OPTIONAL, GW_FROM(1, 100), 1, 0, offsetof(gw_vehicle, steering_ratio) },
    { "speed_km_h", GW_OPTIONAL, GW_FROM(10, 500), GW_KM_H, 0, offsetof(gw_vehicle, speed) },
    { "brake_imbalance", GW_OPTIONAL, GW_FROM(0, 1), 1, 0, offsetof(gw_vehicle, brake_imbalance) },
};

static const char *const RULES[] = { "rule" };
static const char *const OTHERS[] = { "track_mm",
                                      "roll_stiffness_Nm_per_deg",
                                      "load_transfer",
                                      "roll_centre_height_mm",
                                      "cornering_stiffness_N_per_deg",
                                      "camber_stiffness_N_per_deg",
                                      "tyre_table",
                                      NULL };

/* May be left out, of an axle or of both: bars by joints, or none. */
static void read_roll_stiffness(const gw_reader *rd, const gw_node *node, gw_vehicle *v)
{
    const gw_range positive = GW_ABOVE(0, 1e6);
    gw_node at;
    if (!gw_get_object(rd, node, "roll_stiffness_Nm_per_deg", GW_OPTIONAL, &at)) return;
    gw_check_keys(rd, &at, NULL, 0, GW_AXLE_NAMES);
    for (int a = 0; a < GW_AXLES; a++)
        if (gw_get_number(rd, &at, GW_AXLE_NAMES[a], GW_OPTIONAL, positive, &v->roll_stiffness[a]))
            v->roll_stiffness[a] *= GW_NM_PER_DEG;
}

bool gw_read_vehicle(const gw_reader *rd, const gw_node *node, gw_vehicle *v)
{
    const int before = gw_faults_count(rd->faults);
    const gw_range zero_up = GW_FROM(0, 1e6);
    const gw_range track = GW_ABOVE(0, 1e4), height = GW_FROM(-2e3, 1e4);
    if (!gw_is_object(rd, node, "an object { }")) return false;
    v->speed = GW_VEHICLE_SPEED;
    v->brake_imbalance = GW_BRAKE_IMBALANCE;
    gw_check_keys(rd, node, NUMBERS, GW_COUNT(NUMBERS), OTHERS);
    gw_get_numbers(rd, node, NUMBERS, GW_COUNT(NUMBERS), v);
    gw_get_axles(rd, node, "track_mm", GW_REQUIRED, track, GW_MM, v->track);
    read_roll_stiffness(rd, node, v);
    int rule;
    v->by_rule = gw_get_choice(rd, node, "load_transfer", GW_OPTIONAL, RULES, (int)GW_COUNT(RULES), &rule);
    v->has_roll_centre =
        gw_get_axles(rd, node, "roll_centre_height_mm", GW_OPTIONAL, height, GW_MM, v->roll_centre);
    gw_get_axles(rd, node, "cornering_stiffness_N_per_deg", GW_OPTIONAL, zero_up, GW_N_PER_DEG,
                 v->cornering_stiffness);
    gw_get_axles(rd, node, "camber_stiffness_N_per_deg", GW_OPTIONAL, zero_up, GW_N_PER_DEG,
                 v->camber_stiffness);
    gw_warn_short(rd, node, "cg_height_mm", v->cg_height, 5.0);
    gw_warn_short(rd, node, "wheelbase_mm", v->wheelbase, 50.0);
    gw_warn_short(rd, node, "track_mm", fmin(v->track[GW_FRONT], v->track[GW_REAR]), 20.0);
    gw_read_tyre_tables(rd, node, v);
    return gw_faults_count(rd->faults) == before;
}
