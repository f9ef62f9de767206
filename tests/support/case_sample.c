/* SPDX-License-Identifier: MIT */
#include "support/case_sample.h"

#include "support/check.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

const char SAMPLE_MINIMAL[] =
    "{\n"
    "  \"format\": \"giveway-case-1\", \"title\": \"trailing arm\",\n"
    "  \"corners\": { \"rear\": {\n"
    "    \"wheel\": { \"centre_mm\": [0, 700, 300], \"loaded_radius_mm\": 290, \"static_load_N\": 3000,\n"
    "               \"static_camber_deg\": -1, \"static_toe_deg\": 0.1 },\n"
    "    \"joints\": [\n"
    "      { \"name\": \"inner\", \"between\": [\"chassis\", \"upright\"], \"at\": [400, 400, 310],\n"
    "        \"axis\": [0, 2, 0], \"bush\": \"arm\" },\n"
    "      { \"name\": \"outer\", \"between\": [\"chassis\", \"upright\"], \"at\": [400, 700, 310],\n"
    "        \"axis\": [0, 2, 0], \"bush\": \"arm\" } ],\n"
    "    \"spring\": { \"on\": \"upright\", \"at\": [0, 600, 300], \"to\": [0, 600, 600], \"rate_N_per_mm\": "
    "40 } } },\n"
    "  \"bushes\": { \"arm\": { \"type\": \"rates\", \"radial_N_per_mm\": 1500, \"axial_N_per_mm\": 400,\n"
    "              \"conical_Nm_per_deg\": 8, \"torsional_Nm_per_deg\": 1.5 } }\n"
    "}\n";

const char SAMPLE_FULL[] =
    "{\n"
    "  \"// note\": \"every number here is invented\", \"// note\": 2,\n"
    "  \"format\": \"giveway-case-1\", \"title\": \"everything\",\n"
    "  \"vehicle\": { \"mass_kg\": 1500, \"front_mass_fraction\": 0.52, \"cg_height_mm\": 540, "
    "\"wheelbase_mm\": 2700,\n"
    "    \"track_mm\": { \"front\": 1540, \"rear\": 1530 }, \"brake_front_fraction\": 0.7,\n"
    "    \"roll_stiffness_Nm_per_deg\": { \"front\": 1200, \"rear\": 900 },\n"
    "    \"roll_centre_height_mm\": { \"front\": 60, \"rear\": 90 },\n"
    "    \"cornering_stiffness_N_per_deg\": { \"front\": 1500, \"rear\": 1600 },\n"
    "    \"camber_stiffness_N_per_deg\": { \"front\": 70, \"rear\": 75 }, \"pneumatic_trail_mm\": 28 },\n"
    "  \"corners\": { \"front\": {\n"
    "    \"wheel\": { \"centre_mm\": [0, 772, 312], \"loaded_radius_mm\": 312, \"rim_diameter_mm\": 457,\n"
    "      \"static_load_N\": 3820, \"static_camber_deg\": -1.0, \"static_toe_deg\": 0.08,\n"
    "      \"mass_kg\": 44, \"tilt_inertia_kgm2\": 0.7, \"pitch_inertia_kgm2\": 0.25,\n"
    "      \"tyre_vertical_N_per_mm\": 230, \"tyre_damping_Ns_per_mm\": 0.1, \"tyre_slip_stiffness_N\": "
    "80000,\n"
    "      \"tyre_relaxation_mm\": 300, \"spin_inertia_kgm2\": 1.1 },\n"
    "    \"points_mm\": { \"upper_front\": [60, 420, 480], \"upper_rear\": [-90, 420, 470], \"upper_outer\": "
    "[-10, 690, 500],\n"
    "      \"lower_front\": [150, 380, 190], \"lower_rear\": [-160, 390, 200], \"lower_outer\": [0, 730, "
    "180],\n"
    "      \"tie_inner\": [120, 360, 230], \"tie_outer\": [130, 720, 220],\n"
    "      \"spring_seat\": [0, 600, 185], \"spring_top\": [0, 540, 600] },\n"
    "    \"members\": { \"upper_arm\": { \"mass_kg\": 2.4 }, \"lower_arm\": {}, \"tie_rod\": { \"mass_kg\": "
    "1.0 } },\n"
    "    \"joints\": [\n"
    "      { \"name\": \"upper_front\", \"label\": \"front upper arm, front bush\",\n"
    "        \"between\": [\"chassis\", \"upper_arm\"], \"at\": \"upper_front\", "
    "\"axis\": [1, 0, 0],\n"
    "        \"radial_axis\": [1, 0, 1], \"bush\": \"rubber\", \"bracket_N_per_mm\": 25000, "
    "\"tilt_limit_deg\": 12,\n"
    "        \"housing\": \"upper_arm\" },\n"
    "      { \"name\": \"upper_rear\", \"between\": [\"chassis\", \"upper_arm\"], \"at\": \"upper_rear\", "
    "\"axis\": [1, 0, 0],\n"
    "        \"bush\": { \"type\": \"ball_joint\", \"radial_N_per_mm\": 30000 } },\n"
    "      { \"name\": \"upper_outer\", \"between\": [\"upper_arm\", \"upright\"], \"at\": \"upper_outer\", "
    "\"axis\": [0, 0, 1],\n"
    "        \"bush\": \"ball\" },\n"
    "      { \"name\": \"lower_front\", \"between\": [\"chassis\", \"lower_arm\"], \"at\": \"lower_front\", "
    "\"axis\": [1, 0, 0],\n"
    "        \"bush\": \"voided\" },\n"
    "      { \"name\": \"lower_rear\", \"between\": [\"chassis\", \"lower_arm\"], \"at\": \"lower_rear\", "
    "\"axis\": [0, 0.1, 1],\n"
    "        \"bush\": \"poly\" },\n"
    "      { \"name\": \"lower_outer\", \"between\": [\"lower_arm\", \"upright\"], \"at\": \"lower_outer\", "
    "\"axis\": [0, 0, 1],\n"
    "        \"bush\": \"ball\" },\n"
    "      { \"name\": \"tie_inner\", \"between\": [\"chassis\", \"tie_rod\"], \"at\": \"tie_inner\", "
    "\"axis\": [0, 1, 0],\n"
    "        \"bush\": \"bearing\" },\n"
    "      { \"name\": \"tie_outer\", \"between\": [\"tie_rod\", \"upright\"], \"at\": \"tie_outer\", "
    "\"axis\": [0, 0, 1],\n"
    "        \"bush\": \"ball\" } ],\n"
    "    \"spring\": { \"on\": \"lower_arm\", \"at\": \"spring_seat\", \"to\": \"spring_top\", "
    "\"rate_N_per_mm\": 60 },\n"
    "    \"damper\": { \"on\": \"lower_arm\", \"at\": \"spring_seat\", \"to\": \"spring_top\", "
    "\"rate_Ns_per_mm\": 2.1,\n"
    "      \"top_mount_N_per_mm\": 900 } } },\n"
    "  \"bushes\": {\n"
    "    \"// rubber\": \"given by rates\",\n"
    "    \"rubber\": { \"type\": \"rates\", \"label\": \"Rubber\", \"price\": 12, \"fit_minutes\": 20, "
    "\"tilt_limit_deg\": 15, \"stiffness_factor\": 1.15,\n"
    "      \"radial_N_per_mm\": [900, 1800], \"axial_N_per_mm\": 300, \"conical_Nm_per_deg\": [5, 6],\n"
    "      \"torsional_Nm_per_deg\": 1.2, \"loss_factor\": 0.1, \"dynamic_ratio\": 1.4,\n"
    "      \"stop\": { \"gap_mm\": 2, \"rate_N_per_mm\": 5000 } },\n"
    "    \"voided\": { \"type\": \"bonded\", \"material\": \"nr-50\", \"inner_diameter_mm\": 20, "
    "\"outer_diameter_mm\": 50,\n"
    "      \"length_mm\": 45, \"voids\": { \"half_angle_deg\": 40, \"gap_mm\": 4, \"depth_mm\": 10 }, "
    "\"end_dish_mm\": 3,\n"
    "      \"interleaf\": { \"diameter_mm\": 36, \"thickness_mm\": 1.5 } },\n"
    "    \"poly\": { \"type\": \"unbonded\", \"material\": { \"shear_modulus_MPa\": 7.5, "
    "\"bulk_modulus_MPa\": { \"value\": 2000,\n"
    "        \"tolerance\": 0.3 } }, \"inner_diameter_mm\": 20, \"outer_diameter_mm\": 44, \"length_mm\": "
    "40,\n"
    "      \"friction_coefficient\": 0.15 },\n"
    "    \"bearing\": { \"type\": \"bearing\", \"ball_diameter_mm\": 22, \"width_mm\": 12, \"liner\": "
    "\"ptfe\",\n"
    "      \"static_rating_kN\": 40, \"clearance_mm\": 0.02, \"breakaway_Nm\": 0.6, \"axial_N_per_mm\": "
    "40000 },\n"
    "    \"ball\": { \"type\": \"ball_joint\" },\n"
    "    \"offset\": { \"type\": \"bearing\", \"ball_diameter_mm\": 22, \"width_mm\": 12, \"liner\": "
    "\"steel\", \"static_rating_kN\": 40,\n"
    "      \"clearance_mm\": 0, \"breakaway_Nm\": 0, \"offset_mm\": 3, \"offset_clock_deg\": 90 } },\n"
    "  \"kits\": [\n"
    "    { \"name\": \"sport\", \"label\": \"Sport\", \"based_on\": \"standard\", \"fits\": { "
    "\"front.upper_front\": \"offset\" } },\n"
    "    { \"name\": \"standard\", \"fits\": { \"front.lower_rear\": \"rubber\", \"front.tie_inner\": { "
    "\"type\": \"ball_joint\" } } } ],\n"
    "  \"loads\": [\n"
    "    { \"name\": \"pull\", \"corner\": \"front\", \"patch_force_N\": [-4000, 0, null], \"travel_mm\": 20 "
    "},\n"
    "    { \"name\": \"push\", \"corner\": \"front\", \"hub_force_N\": [1, 2, 3], \"patch_moment_Nm\": [4, "
    "5, 6] },\n"
    "    { \"name\": \"stop\", \"brake_g\": 1.0 },\n"
    "    { \"name\": \"exit\", \"drive_g\": 0.4, \"lateral_g\": 0.5, \"wheel\": \"inner\", \"driven\": "
    "\"all\" } ],\n"
    "  \"ride\": { \"road_class\": \"C\", \"speed_km_h\": 72, \"default_bracket_N_per_mm\": null,\n"
    "    \"obstacle\": { \"height_mm\": 20, \"length_mm\": 500 } },\n"
    "  \"shop\": { \"currency\": \"EUR\", \"labour_per_hour\": 84.5, \"tax_percent\": 19 },\n"
    "  \"align\": { \"front\": { \"target\": { \"camber_deg\": -1.9, \"toe_deg\": 0.1, \"tolerance_deg\": { "
    "\"camber\": 0.1 } },\n"
    "    \"adjusters\": [\n"
    "      { \"kind\": \"offset\", \"joint\": \"upper_front\", \"max_mm\": 5 },\n"
    "      { \"kind\": \"length\", \"member\": \"tie_rod\", \"min_mm\": -6, \"max_mm\": 6, "
    "\"thread_pitch_mm\": 1.5,\n"
    "        \"threads\": \"opposite\" },\n"
    "      { \"kind\": \"shim\", \"joint\": \"upper_rear\", \"along\": [0, 3, 4], \"step_mm\": 1, "
    "\"max_mm\": 6 } ] } }\n"
    "}\n";

char *sample_change(const char *text, const char *from, const char *to)
{
    const char *at = strstr(text, from);
    size_t size = strlen(text) + strlen(to) + 1;
    char *changed = calloc(1, size);
    if (!at || !changed || strstr(at + 1, from)) {
        fail_msg("the sample does not hold this, or more than once: %s", from);
        abort(); /* not reached: a failed test leaves by a long jump */
    }
    snprintf(changed, size, "%.*s%s%s", (int)(at - text), text, to, at + strlen(from));
    return changed;
}

static FILE *open_kept(const char *folder, const char *kind, int number, const char *suffix)
{
    char path[512];
    snprintf(path, sizeof path, "%s/%s-%04d.%s", folder, kind, number, suffix);
    FILE *file = fopen(path, "w");
    assert_non_null(file);
    return file;
}

void sample_keep(const char *kind, const char *text, gw_status verdict, const gw_faults *faults)
{
    static int number;
    const char *folder = getenv("GIVEWAY_SAMPLES");
    if (!folder || (verdict != GW_OK && verdict != GW_E_SCHEMA)) return;
    FILE *sample = open_kept(folder, kind, ++number, "json");
    fputs(text, sample);
    assert_int_equal(fclose(sample), 0);
    FILE *list = open_kept(folder, kind, number, "faults");
    for (int i = 0; i < gw_faults_count(faults); i++) fprintf(list, "%s\n", gw_faults_text(faults, i));
    assert_int_equal(fclose(list), 0);
}

gw_status sample_read(const char *text, gw_case *out, gw_faults *faults)
{
    gw_material_set materials = { 0 };
    assert_int_equal(gw_materials_builtin(&materials, faults), GW_OK);
    gw_status st = gw_case_read("sample.json", text, strlen(text), &materials, out, faults);
    gw_materials_free(&materials);
    sample_keep("case", text, st, faults);
    return st;
}

void sample_load(const char *path, gw_case *out)
{
    gw_faults faults = { 0 };
    gw_material_set materials = { 0 };
    assert_int_equal(gw_materials_builtin(&materials, &faults), GW_OK);
    if (gw_case_load(path, &materials, out, &faults) != GW_OK) fail_msg("%s", gw_faults_text(&faults, 0));
    gw_materials_free(&materials);
    gw_faults_free(&faults);
}
