/* SPDX-License-Identifier: MIT */
/* Every kind of fault, provoked one at a time: its path, its message, and that it comes alone. */
#include "support/case_sample.h"
#include "support/check.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/** The full sample with `from` replaced by `to` has one fault, "sample.json: PATH: ...message...". */
typedef struct spoilt {
    const char *from, *to, *path, *message;
} spoilt;

static void expect_one(const char *sample, const spoilt *s)
{
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    char start[256];
    char *text = sample_change(sample, s->from, s->to);
    gw_status st = sample_read(text, &c, &faults);
    for (int i = 1; i < gw_faults_count(&faults); i++)
        print_message("also: %s\n", gw_faults_text(&faults, i));
    if (gw_faults_count(&faults) != 1)
        fail_msg("%s -> %s: %d faults", s->from, s->to, gw_faults_count(&faults));
    assert_int_equal(st, GW_E_SCHEMA);
    assert_null(c.arena.head);
    snprintf(start, sizeof start, "sample.json: %s%s", s->path, s->path[0] ? ": " : "");
    if (strncmp(gw_faults_text(&faults, 0), start, strlen(start)) != 0)
        fail_msg("\"%s\" does not begin with \"%s\"", gw_faults_text(&faults, 0), start);
    check_contains(gw_faults_text(&faults, 0), s->message);
    gw_faults_free(&faults);
    free(text);
}

static void expect_each(const spoilt *list, size_t n)
{
    for (size_t i = 0; i < n; i++) expect_one(SAMPLE_FULL, &list[i]);
}

#define EXPECT(list) expect_each(list, sizeof(list) / sizeof *(list))

static void faults_at_the_top(void **state)
{
    static const spoilt LIST[] = {
        { "\"format\": \"giveway-case-1\",", "", "format", "missing: give \"giveway-case-1\"" },
        { "giveway-case-1", "giveway-case-2", "format",
          "expected \"giveway-case-1\", found the text \"giveway-case-2\"; did you mean "
          "\"giveway-case-1\"?" },
        { "\"title\": \"everything\"", "\"titel\": 3, \"title\": \"everything\"", "titel",
          "did you mean \"title\"?" },
        { "\"title\": \"everything\"", "\"title\": \"\"", "title", "expected a text that is not empty" },
        { "\"title\": \"everything\",", "", "title", "this key is missing" },
        { "\"title\": \"everything\"", "\"title\": \"everything\", \"zzzzzzzz\": 3", "zzzzzzzz",
          "take it out, or begin it with //" },
    };
    (void)state;
    EXPECT(LIST);
}

static void faults_of_kind_and_range(void **state)
{
    static const spoilt LIST[] = {
        { "\"mass_kg\": 1500", "\"mass_kg\": \"1500\"", "vehicle.mass_kg",
          "expected a number above 0 and at most 1e+06, found the text \"1500\"" },
        { "\"mass_kg\": 1500", "\"mass_kg\": null", "vehicle.mass_kg", "found null" },
        { "\"mass_kg\": 1500", "\"mass_kg\": true", "vehicle.mass_kg", "found true or false" },
        { "\"mass_kg\": 1500", "\"mass_kg\": [1500]", "vehicle.mass_kg", "found a list" },
        { "\"mass_kg\": 1500", "\"mass_kg\": {}", "vehicle.mass_kg", "found an object" },
        { "\"mass_kg\": 1500", "\"mass_kg\": 1e999", "vehicle.mass_kg", "found a number too large to hold" },
        { "\"mass_kg\": 1500", "\"mass_kg\": 0", "vehicle.mass_kg", "above 0" },
        { "\"mass_kg\": 1500,", "", "vehicle.mass_kg", "missing: give a number above 0" },
        { "\"mass_kg\": 1500", "\"mass_kg\": 1500, \"mass_kg\": 1600", "vehicle.mass_kg", "more than once" },
        { "\"mass_kg\": 1500", "\"mass_kg\": 1500, \"mass_kg\": 1, \"mass_kg\": 2", "vehicle.mass_kg",
          "keep one" },
        { "\"mass_kg\": 1500", "\"mass_kg\": 1500, \"mass\": 3", "vehicle.mass",
          "did you mean \"mass_kg\"?" },
        { "\"front_mass_fraction\": 0.52", "\"front_mass_fraction\": 1", "vehicle.front_mass_fraction",
          "above 0 and below 1" },
        { "\"track_mm\": { \"front\": 1540, \"rear\": 1530 }", "\"track_mm\": { \"front\": 1540 }",
          "vehicle.track_mm.rear", "missing" },
        { "\"track_mm\": { \"front\": 1540, \"rear\": 1530 }", "\"track_mm\": 1540", "vehicle.track_mm",
          "expected an object" },
        { "\"roll_centre_height_mm\": { \"front\": 60,", "\"roll_centre_height_mm\": { \"front\": -1e9,",
          "vehicle.roll_centre_height_mm.front", "at least -2000" },
        { "\"pneumatic_trail_mm\": 28", "\"pneumatic_trail\": 28, \"pneumatic_trail_mm\": 28",
          "vehicle.pneumatic_trail", "did you mean \"pneumatic_trail_mm\"?" },
    };
    (void)state;
    EXPECT(LIST);
}

static void faults_of_the_wheel(void **state)
{
    static const spoilt LIST[] = {
        { "\"centre_mm\": [0, 772, 312],", "", "corners.front.wheel.centre_mm", "list of three numbers" },
        { "\"centre_mm\": [0, 772, 312]", "\"centre_mm\": [0, -772, 312]", "corners.front.wheel.centre_mm",
          "left wheel" },
        { "\"centre_mm\": [0, 772, 312]", "\"centre_mm\": [0, 772]", "corners.front.wheel.centre_mm",
          "list of three numbers [x, y, z], found a list" },
        { "\"centre_mm\": [0, 772, 312]", "\"centre_mm\": [0, \"a\", 312]",
          "corners.front.wheel.centre_mm[1]", "found the text \"a\"" },
        { "\"static_load_N\": 3820", "\"static_load_N\": 3900", "corners.front.wheel.static_load_N",
          "differs by more than 1 % from the 3824.59 N" },
        { "\"static_toe_deg\": 0.08,", "", "corners.front.wheel.static_toe_deg", "missing" },
        { "\"static_camber_deg\": -1.0", "\"static_camber_deg\": -50",
          "corners.front.wheel.static_camber_deg", "at least -45 and at most 45, found -50" },
        { "\"tyre_damping_Ns_per_mm\": 0.1", "\"tyre_damping_Ns_per_mm\": -0.1",
          "corners.front.wheel.tyre_damping_Ns_per_mm", "at least 0" },
    };
    static const spoilt BARE = { "\"static_load_N\": 3000,", "", "corners.rear.wheel.static_load_N",
                                 "missing: give the load on the wheel, or \"vehicle\"" };
    (void)state;
    EXPECT(LIST);
    expect_one(SAMPLE_MINIMAL, &BARE);
}

static void faults_of_points_and_members(void **state)
{
    static const spoilt LIST[] = {
        { "\"tie_inner\": [120, 360, 230]", "\"tie_inner\": [120, 360, 230e9]",
          "corners.front.points_mm.tie_inner[2]", "at most 100000" },
        { "\"tie_inner\": [120, 360, 230]", "\"tie_inner\": 3", "corners.front.points_mm.tie_inner",
          "list of three numbers" },
        { "\"lower_arm\": {}", "\"lower_arm\": 3", "corners.front.members.lower_arm",
          "which may hold mass_kg" },
        { "\"lower_arm\": {}", "\"lower_arm\": {}, \"spare\": {}", "corners.front.members.spare",
          "no joint names this member" },
        { "\"lower_arm\": {}", "\"lower_arm\": { \"mass_kg\": -1 }",
          "corners.front.members.lower_arm.mass_kg", "at least 0" },
        { "\"lower_arm\": {}", "\"lower_arm\": { \"mass\": 1 }", "corners.front.members.lower_arm.mass",
          "did you mean \"mass_kg\"?" },
        { "\"tie_inner\": [120, 360, 230]", "\"tie_inner\": [130, 720, 220]", "corners.front.members.tie_rod",
          "its 2 joints are all at the same place" },
    };
    (void)state;
    EXPECT(LIST);
}

static void faults_of_joints(void **state)
{
    static const spoilt LIST[] = {
        { "{ \"name\": \"tie_outer\", ", "{ ", "corners.front.joints[7].name", "missing" },
        { "\"name\": \"lower_front\"", "\"name\": \"lower_rear\"", "corners.front.joints[4].name",
          "another joint of this name, entry 3" },
        { "\"name\": \"lower_front\"", "\"name\": \"a\\nb\"", "corners.front.joints[3].name",
          "without control characters" },
        { "[\"tie_rod\", \"upright\"]", "[\"tie_rodd\", \"upright\"]", "corners.front.joints[7].between[0]",
          "found the text \"tie_rodd\"; did you mean \"tie_rod\"?" },
        { "[\"tie_rod\", \"upright\"]", "[\"tie_rod\", 7]", "corners.front.joints[7].between[1]",
          "expected the name of a body, found 7" },
        { "[\"tie_rod\", \"upright\"]", "[\"tie_rod\", \"tie_rod\"]", "corners.front.joints[7].between",
          "two different bodies" },
        { "[\"tie_rod\", \"upright\"]", "[\"tie_rod\"]", "corners.front.joints[7].between",
          "the two bodies" },
        { "\"at\": \"tie_outer\"", "\"at\": \"tie_uoter\"", "corners.front.joints[7].at",
          "did you mean \"tie_outer\"?" },
        { "\"at\": \"tie_outer\"", "\"at\": 5", "corners.front.joints[7].at",
          "name of a point under \"points_mm\" or [x, y, z], found 5" },
        { "\"axis\": [0, 1, 0]", "\"axis\": [0, 0, 0]", "corners.front.joints[6].axis", "length zero" },
        { "\"axis\": [0, 1, 0],", "", "corners.front.joints[6].axis", "missing" },
        { "\"radial_axis\": [1, 0, 1]", "\"radial_axis\": [-2, 0, 0]", "corners.front.joints[0].radial_axis",
          "across \"axis\", found one along it" },
        { "\"radial_axis\": [1, 0, 1]", "\"radial_axis\": [0, 0, 0]", "corners.front.joints[0].radial_axis",
          "length zero" },
        { "\"bearing\": { \"type\": \"bearing\", \"ball_diameter_mm\": 22",
          "\"bearing\": { \"type\": \"bearing\", \"ball_diameter_mm\": 12", "bushes.bearing.width_mm",
          "expected less than ball_diameter_mm, 12" },
        { "\"bush\": \"bearing\"", "\"bush\": \"bering\"", "corners.front.joints[6].bush",
          "did you mean \"bearing\"?" },
        { "\"bush\": \"bearing\"", "\"bush\": 7", "corners.front.joints[6].bush",
          "name of a bush, or an object { } that describes one, found 7" },
        { "\"bush\": \"bearing\"", "\"bush\": \"offset\"", "corners.front.joints[6].bush",
          "the wrong body reverses the sign" },
        { "\"bush\": \"voided\"", "\"tilt_limit_deg\": 3", "corners.front.joints[3].bush", "missing" },
        { "\"bracket_N_per_mm\": 25000", "\"bracket_N_per_mm\": 0",
          "corners.front.joints[0].bracket_N_per_mm", "above 0" },
        { "\"tilt_limit_deg\": 12,", "\"tilt_limit_deg\": 90,", "corners.front.joints[0].tilt_limit_deg",
          "below 90" },
        { "\"bush\": \"voided\" }", "\"bush\": \"voided\", \"housing\": \"upright\" }",
          "corners.front.joints[3].housing", "one of the two bodies of \"between\"" },
        { "\"bush\": \"voided\" }", "\"bush\": \"voided\", \"housing\": \"lower_amr\" }",
          "corners.front.joints[3].housing", "did you mean \"lower_arm\"?" },
        { "\"bush\": \"voided\" }", "\"bush\": \"voided\", \"houzing\": \"upright\" }",
          "corners.front.joints[3].houzing", "did you mean \"housing\"?" },
    };
    (void)state;
    EXPECT(LIST);
}

static void faults_of_what_hangs_on_nothing(void **state)
{
    static const spoilt LONE = {
        "\"joints\": [",
        "\"members\": { \"a\": {}, \"b\": {} }, \"joints\": [ { \"name\": \"x\","
        " \"between\": [\"a\", \"b\"], \"at\": [0, 0, 0], \"axis\": [1, 0, 0], \"bush\": \"arm\" },",
        "corners.rear.members.a", "no chain of joints leads from \"a\" to the chassis"
    };
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    (void)state;
    char *text = sample_change(SAMPLE_MINIMAL, LONE.from, LONE.to);
    assert_int_equal(sample_read(text, &c, &faults), GW_E_SCHEMA);
    assert_int_equal(gw_faults_count(&faults), 2);
    check_contains(gw_faults_text(&faults, 0), LONE.message);
    check_contains(gw_faults_text(&faults, 1), "corners.rear.members.b: no chain");
    gw_faults_free(&faults);
    free(text);
}

static void an_upright_without_joints_is_a_fault(void **state)
{
    static const char TEXT[] =
        "{\"format\":\"giveway-case-1\",\"title\":\"t\",\"corners\":{\"front\":{\"wheel\":{\"centre_mm\":[0,"
        "700,300],"
        "\"loaded_radius_mm\":300,\"static_load_N\":1,\"static_camber_deg\":0,\"static_toe_deg\":0},"
        "\"members\":{\"a\":{}},\"joints\":[{\"name\":\"j\",\"between\":[\"chassis\",\"a\"],\"at\":[0,0,0],"
        "\"axis\":[1,0,0],\"bush\":{\"type\":\"ball_joint\"}}],"
        "\"spring\":{\"on\":\"a\",\"at\":[0,0,1],\"to\":[0,0,2],\"rate_N_per_mm\":1}}}}";
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    (void)state;
    assert_int_equal(sample_read(TEXT, &c, &faults), GW_E_SCHEMA);
    assert_int_equal(gw_faults_count(&faults), 1);
    check_contains(gw_faults_text(&faults, 0),
                   "corners.front.joints: expected a joint that names the upright");
    gw_faults_free(&faults);
}

static void faults_of_spring_and_damper(void **state)
{
    static const spoilt LIST[] = {
        { "\"to\": \"spring_top\", \"rate_N_per_mm\": 60", "\"to\": \"spring_seat\", \"rate_N_per_mm\": 60",
          "corners.front.spring", "\"at\" and \"to\" are the same place" },
        { "\"to\": \"spring_top\", \"rate_Ns_per_mm\": 2.1",
          "\"to\": \"spring_seat\", \"rate_Ns_per_mm\": 2.1", "corners.front.damper", "same place" },
        { "\"spring\": { \"on\": \"lower_arm\"", "\"spring\": { \"on\": \"chassis\"",
          "corners.front.spring.on", "expected the upright or a member" },
        { "\"spring\": { \"on\": \"lower_arm\"", "\"spring\": { \"on\": \"arm\"", "corners.front.spring.on",
          "one of \"members\"" },
        { "\"rate_N_per_mm\": 60", "\"rate_N_per_mm\": 0", "corners.front.spring.rate_N_per_mm", "above 0" },
        { "\"top_mount_N_per_mm\": 900", "\"top_mount_N_per_mm\": -1",
          "corners.front.damper.top_mount_N_per_mm", "above 0" },
        { "\"top_mount_N_per_mm\": 900", "\"rate_N_per_mm\": 900", "corners.front.damper.rate_N_per_mm",
          "did you mean \"rate_Ns_per_mm\"?" },
    };
    static const spoilt NONE = {
        ",\n    \"spring\": { \"on\": \"upright\", \"at\": [0, 600, 300], \"to\": [0, 600, 600], "
        "\"rate_N_per_mm\": 40 }",
        "", "corners.rear.spring", "give the spring, which carries the wheel"
    };
    (void)state;
    EXPECT(LIST);
    expect_one(SAMPLE_MINIMAL, &NONE);
}

static void faults_of_corners(void **state)
{
    static const spoilt LIST[] = {
        { "\"corners\": { \"front\"", "\"corners\": { \"left\": {}, \"front\"", "corners.left",
          "unknown key" },
        { "\"corners\": { \"front\"", "\"corners\": { \"rear\": 3, \"front\"", "corners.rear",
          "expected an object" },
        { "\"damper\": { \"on\"", "\"dampre\": { \"on\"", "corners.front.dampre",
          "did you mean \"damper\"?" },
    };
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    (void)state;
    EXPECT(LIST);
    assert_int_equal(
        sample_read("{\"format\":\"giveway-case-1\",\"title\":\"t\",\"corners\":{}}", &c, &faults),
        GW_E_SCHEMA);
    check_contains(gw_faults_text(&faults, 0), "corners: expected \"front\" or \"rear\"");
    gw_faults_free(&faults);
    assert_int_equal(sample_read("{\"format\":\"giveway-case-1\",\"title\":\"t\"}", &c, &faults),
                     GW_E_SCHEMA);
    check_contains(gw_faults_text(&faults, 0), "expected \"corners\" or \"bushes\"");
    gw_faults_free(&faults);
}

static void faults_of_bushes(void **state)
{
    static const spoilt LIST[] = {
        { "\"ball\": { \"type\": \"ball_joint\" }", "\"ball\": { \"type\": \"ball\" }", "bushes.ball.type",
          "\"measured\" or \"rigid\", found the text \"ball\"" },
        { "\"ball\": { \"type\": \"ball_joint\" }", "\"ball\": { }", "bushes.ball.type", "missing" },
        { "\"ball\": { \"type\": \"ball_joint\" }", "\"ball\": 3", "bushes.ball",
          "an object { } that describes a bush" },
        { "\"ball\": { \"type\": \"ball_joint\" }", "\"ball\": { \"type\": \"ball_joint\", \"stop\": {} }",
          "bushes.ball.stop", "unknown key" },
        { "\"radial_N_per_mm\": [900, 1800]", "\"radial_N_per_mm\": [900]", "bushes.rubber.radial_N_per_mm",
          "a number for both directions, or a list of two" },
        { "\"radial_N_per_mm\": [900, 1800]", "\"radial_N_per_mm\": [900, -1]",
          "bushes.rubber.radial_N_per_mm[1]", "at least 0" },
        { "\"radial_N_per_mm\": [900, 1800],", "", "bushes.rubber.radial_N_per_mm", "missing" },
        { "\"torsional_Nm_per_deg\": 1.2,", "", "bushes.rubber.torsional_Nm_per_deg", "missing" },
        { "\"axial_N_per_mm\": 300", "\"axial_N_per_mm\": 2e12", "bushes.rubber.axial_N_per_mm",
          "at most 1e+12" },
        { "\"dynamic_ratio\": 1.4", "\"dynamic_ratio\": 0", "bushes.rubber.dynamic_ratio", "above 0" },
        { "\"gap_mm\": 2, \"rate", "\"gap\": 2, \"gap_mm\": 2, \"rate", "bushes.rubber.stop.gap",
          "did you mean \"gap_mm\"?" },
        { "\"rate_N_per_mm\": 5000", "\"rate_N_per_mm\": 0", "bushes.rubber.stop.rate_N_per_mm", "above 0" },
        { "\"labour_per_hour\": 84.5", "\"labour_per_hour\": -1", "shop.labour_per_hour", "at least 0" },
        { "\"tax_percent\": 19", "\"tax_percent\": 119", "shop.tax_percent", "at most 100" },
        { "\"tax_percent\": 19", "\"tax\": 19", "shop.tax", "did you mean \"tax_percent\"?" },
        { "\"currency\": \"EUR\"", "\"currency\": 3", "shop.currency", "expected a text" },
        { "\"currency\": \"EUR\"", "\"currency\": \"pieces of eight\"", "shop.currency", "12 bytes" },
        { "\"label\": \"front upper arm, front bush\"", "\"label\": 3", "corners.front.joints[0].label",
          "expected a text" },
        { "\"price\": 12", "\"price\": -12", "bushes.rubber.price", "at least 0" },
        { "\"label\": \"Rubber\"", "\"label\": 12", "bushes.rubber.label", "expected a text" },
        { "\"liner\": \"ptfe\"", "\"liner\": \"polytetrafluoroethylene\"", "bushes.bearing.liner",
          "expected \"steel\" or \"ptfe\"" },
        { "\"clearance_mm\": 0.02, ", "", "bushes.bearing.clearance_mm", "missing" },
        { ", \"offset_clock_deg\": 90", "", "bushes.offset.offset_clock_deg", "an offset needs its angle" },
        { "\"offset_mm\": 3, ", "", "bushes.offset.offset_mm", "belongs to an offset" },
        { "\"radial_N_per_mm\": 30000", "\"conical_Nm_per_deg\": 1",
          "corners.front.joints[1].bush.conical_Nm_per_deg", "unknown key" },
        { "\"ball\": { \"type\"", "\"front.upper_rear\": { \"type\": \"ball_joint\" }, \"ball\": { \"type\"",
          "corners.front.joints[1].bush", "is called \"front.upper_rear\", but there is one of that name" },
    };
    (void)state;
    EXPECT(LIST);
}

static void faults_of_rubber(void **state)
{
    static const spoilt LIST[] = {
        { "\"outer_diameter_mm\": 50", "\"outer_diameter_mm\": 20", "bushes.voided.outer_diameter_mm",
          "more than inner_diameter_mm, 20" },
        { "\"outer_diameter_mm\": 50,", "", "bushes.voided.outer_diameter_mm", "missing" },
        { "\"length_mm\": 45", "\"length_mm\": 0", "bushes.voided.length_mm", "above 0" },
        { "\"end_dish_mm\": 3", "\"end_dish_mm\": 22.5", "bushes.voided.end_dish_mm",
          "less than half of length_mm, 22.5" },
        { "\"half_angle_deg\": 40", "\"half_angle_deg\": 90", "bushes.voided.voids.half_angle_deg",
          "below 90" },
        { "\"half_angle_deg\": 40", "\"half_angle_deg\": 0", "bushes.voided.voids.half_angle_deg",
          "above 0" },
        { "\"gap_mm\": 4, \"depth", "\"gap_mm\": 0, \"depth", "bushes.voided.voids.gap_mm", "above 0" },
        { "\"gap_mm\": 4, \"depth", "\"depth", "bushes.voided.voids.gap_mm", "missing" },
        { "\"depth_mm\": 10", "\"depth_mm\": 15.1", "bushes.voided.voids.depth_mm",
          "at most the 15 mm of rubber between the sleeves" },
        { "\"interleaf\": { \"diameter_mm\": 36", "\"interleaf\": { \"diameter_mm\": 49",
          "bushes.voided.interleaf",
          "47.5 to 50.5 mm of diameter must lie between the sleeves' 20 and 50 mm" },
        { "\"interleaf\": { \"diameter_mm\": 36", "\"interleaf\": { \"diameter_mm\": 21",
          "bushes.voided.interleaf", "rubber on both sides" },
        { "\"friction_coefficient\": 0.15", "\"friction_coefficient\": 0.15, \"voids\": {}",
          "bushes.poly.voids", "unknown key" },
        { ",\n      \"friction_coefficient\": 0.15", "", "bushes.poly.friction_coefficient", "missing" },
        { "\"friction_coefficient\": 0.15", "\"friction_coefficient\": 0.15, \"progressive\": 1",
          "bushes.poly.progressive", "expected true or false" },
    };
    (void)state;
    EXPECT(LIST);
}

/* An offset beyond the wall is two faults: its joint names no housing either. */
static void an_offset_beyond_the_wall_is_a_fault(void **state)
{
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    (void)state;
    char *text =
        sample_change(SAMPLE_FULL, "\"end_dish_mm\": 3", "\"offset_mm\": 15, \"offset_clock_deg\": 0");
    assert_int_equal(sample_read(text, &c, &faults), GW_E_SCHEMA);
    assert_int_equal(gw_faults_count(&faults), 2);
    check_contains(gw_faults_text(&faults, 0),
                   "bushes.voided.offset_mm: expected less than the 15 mm of rubber");
    check_contains(gw_faults_text(&faults, 1), "corners.front.joints[3].bush: this bush is off-centre");
    gw_faults_free(&faults);
    free(text);
}

static void faults_of_materials(void **state)
{
    static const spoilt LIST[] = {
        { "\"material\": \"nr-50\",", "", "bushes.voided.material", "missing: give the name of a material" },
        { "\"material\": \"nr-50\"", "\"material\": 50", "bushes.voided.material", "found 50" },
        { "\"material\": \"nr-50\"", "\"material\": \"nr-52\"", "bushes.voided.material",
          "its neighbours in hardness are \"nr-50\" and \"nr-55\"" },
        { "\"material\": \"nr-50\"", "\"material\": \"nr-80\"", "bushes.voided.material",
          "outside the table, which ends at \"nr-75\"" },
        { "\"material\": \"nr-50\"", "\"material\": \"nr-25\"", "bushes.voided.material",
          "outside the table, which begins at \"nr-30\"" },
        { "\"material\": \"nr-50\"", "\"material\": \"stel\"", "bushes.voided.material",
          "did you mean \"steel\"?" },
        { "\"material\": \"nr-50\"", "\"material\": \"granite of the alps\"", "bushes.voided.material",
          "or give an object with shear_modulus_MPa and bulk_modulus_MPa" },
        { "\"shear_modulus_MPa\": 7.5, ", "", "bushes.poly.material.shear_modulus_MPa", "missing" },
        { "\"shear_modulus_MPa\": 7.5", "\"shear_modulus_MPa\": -7.5",
          "bushes.poly.material.shear_modulus_MPa", "above 0" },
        { "\"shear_modulus_MPa\": 7.5", "\"shear_modulus_MPa\": 7.5, \"hardness_irhd\": 101",
          "bushes.poly.material.hardness_irhd", "at most 100" },
        { "\"shear_modulus_MPa\": 7.5", "\"shear_modulus_MPa\": \"soft\"",
          "bushes.poly.material.shear_modulus_MPa", "found the text \"soft\"" },
        { "\"tolerance\": 0.3", "\"tolerance\": -1", "bushes.poly.material.bulk_modulus_MPa.tolerance",
          "at least 0" },
        { "\"tolerance\": 0.3", "\"toleranz\": 1", "bushes.poly.material.bulk_modulus_MPa.toleranz",
          "did you mean \"tolerance\"?" },
    };
    (void)state;
    EXPECT(LIST);
}

static void faults_of_kits(void **state)
{
    static const spoilt LIST[] = {
        { "\"name\": \"sport\", ", "", "kits[0].name", "missing" },
        { "\"based_on\": \"standard\"", "\"based_on\": \"standrad\"", "kits[0].based_on",
          "did you mean \"standard\"?" },
        { "\"based_on\": \"standard\"", "\"based_on\": \"sport\"", "kits[0].based_on",
          "round in a circle, \"sport\" on \"sport\"" },
        { "\"name\": \"standard\",", "\"name\": \"standard\", \"based_on\": \"sport\",", "kits[0].based_on",
          "round in a circle, \"sport\" on \"standard\" on \"sport\"" },
        { "\"front.lower_rear\": \"rubber\"", "\"front.lower_raer\": \"rubber\"",
          "kits[1].fits[\"front.lower_raer\"]", "no joint \"lower_raer\"; did you mean \"lower_rear\"?" },
        { "\"front.lower_rear\": \"rubber\"", "\"rear.lower_rear\": \"rubber\"",
          "kits[1].fits[\"rear.lower_rear\"]", "there is no rear corner" },
        { "\"front.lower_rear\": \"rubber\"", "\"lower_rear\": \"rubber\"", "kits[1].fits.lower_rear",
          "expected a key like \"front.upper_rear\"" },
        { "\"front.lower_rear\": \"rubber\"", "\"front.lower_rear\": \"ruber\"",
          "kits[1].fits[\"front.lower_rear\"]", "did you mean \"rubber\"?" },
        { "\"front.lower_rear\": \"rubber\"", "\"front.lower_rear\": \"offset\"",
          "kits[1].fits[\"front.lower_rear\"]", "the wrong body reverses the sign" },
        { "\"front.lower_rear\": \"rubber\"", "\"front.lower_rear\": null",
          "kits[1].fits[\"front.lower_rear\"]", "found null" },
        { "\"label\": \"Sport\"", "\"lable\": \"Sport\"", "kits[0].lable", "did you mean \"label\"?" },
        { "\"kits\": [", "\"kits\": [ 3,", "kits[0]", "expected an object" },
    };
    static const spoilt TWICE = { "\"bushes\": {",
                                  "\"kits\": [{\"name\": \"a\"}, {\"name\": \"a\"}], \"bushes\": {",
                                  "kits[1].name", "another kit of this name, entry 0" };
    static const spoilt NO_LIST = { "\"bushes\": {", "\"kits\": {}, \"bushes\": {", "kits",
                                    "expected a list" };
    (void)state;
    EXPECT(LIST);
    expect_one(SAMPLE_MINIMAL, &TWICE);
    expect_one(SAMPLE_MINIMAL, &NO_LIST);
}

/* a on b, b on c, c on d, d on b: a only leads to the circle, which is named once. */
static void a_circle_that_others_lead_to_is_reported_once(void **state)
{
    static const spoilt TAIL = {
        "\"bushes\": {",
        "\"kits\": [{\"name\": \"a\", \"based_on\": \"b\"}, {\"name\": \"b\", \"based_on\": \"c\"},"
        "{\"name\": \"c\", \"based_on\": \"d\"}, {\"name\": \"d\", \"based_on\": \"b\"}], \"bushes\": {",
        "kits[1].based_on", "\"b\" on \"c\" on \"d\" on \"b\": one of them must stand on its own"
    };
    (void)state;
    expect_one(SAMPLE_MINIMAL, &TAIL);
}

static void faults_of_loads(void **state)
{
    static const spoilt LIST[] = {
        { "\"name\": \"push\"", "\"name\": \"pull\"", "loads[1].name", "another load of this name, entry 0" },
        { "\"name\": \"stop\", ", "", "loads[2].name", "missing" },
        { "\"corner\": \"front\", \"patch", "\"corner\": \"rear\", \"patch", "loads[0].corner",
          "no rear corner" },
        { "\"corner\": \"front\", \"patch", "\"corner\": \"fornt\", \"patch", "loads[0].corner",
          "did you mean \"front\"?" },
        { "\"corner\": \"front\", \"patch", "\"patch", "loads[0].corner",
          "missing: give \"front\" or \"rear\"" },
        { "[-4000, 0, null]", "[-4000, null, 0]", "loads[0].patch_force_N[1]", "found null" },
        { "[-4000, 0, null]", "[-4000, 0]", "loads[0].patch_force_N", "the last null for the static load" },
        { "[1, 2, 3]", "[1, 2, null]", "loads[1].hub_force_N[2]", "found null" },
        { "\"travel_mm\": 20", "\"travel_mm\": 2000", "loads[0].travel_mm", "at most 1000" },
        { "\"brake_g\": 1.0", "\"brake_g\": 101", "loads[2].brake_g", "at least 0 and at most 100" },
        { "\"brake_g\": 1.0", "\"brake_g\": -1", "loads[2].brake_g", "at least 0" },
        { "\"brake_g\": 1.0", "\"brake_g\": 1.0, \"drive_g\": 0.1", "loads[2]", "cannot both be above 0" },
        { "\"brake_g\": 1.0", "\"wheel\": \"inner\"", "loads[2]",
          "expected one of brake_g, lateral_g and drive_g" },
        { "\"brake_g\": 1.0", "\"brake_g\": 1.0, \"corner\": \"front\"", "loads[2].brake_g", "choose one" },
        { ", \"brake_g\": 1.0", "", "loads[2]", "expected a direct load" },
        { "\"brake_g\": 1.0", "\"brake_g\": 1.0, \"brakeg\": 1", "loads[2].brakeg",
          "did you mean \"brake_g\"?" },
        { "\"wheel\": \"inner\"", "\"wheel\": \"left\"", "loads[3].wheel", "\"outer\", \"inner\" or \"both\"" },
        { "\"driven\": \"all\"", "\"driven\": 4", "loads[3].driven",
          "\"rear\", \"front\" or \"all\", found 4" },
        { "\"loads\": [", "\"loads\": [ null,", "loads[0]", "expected an object" },
    };
    static const spoilt NO_VEHICLE = { "\"bushes\": {",
                                       "\"loads\": [{\"name\": \"a\", \"brake_g\": 1}], \"bushes\": {",
                                       "loads[0]", "a manoeuvre needs \"vehicle\"" };
    (void)state;
    EXPECT(LIST);
    expect_one(SAMPLE_MINIMAL, &NO_VEHICLE);
}

static void faults_of_ride(void **state)
{
    static const spoilt LIST[] = {
        { "\"road_class\": \"C\"", "\"road_class\": \"I\"", "ride.road_class",
          "\"G\" or \"H\", found the text \"I\"" },
        { "\"road_class\": \"C\",", "", "ride.road_class", "or roughness_m3" },
        { "\"road_class\": \"C\"", "\"road_class\": \"C\", \"roughness_m3\": 1e-6", "ride.roughness_m3",
          "the road is given twice" },
        { ", \"speed_km_h\": 72", "", "ride.speed_km_h", "missing" },
        { "\"default_bracket_N_per_mm\": null", "\"default_bracket_N_per_mm\": 0",
          "ride.default_bracket_N_per_mm", "above 0" },
        { "\"obstacle\": { \"height_mm\": 20,", "\"obstacle\": { ", "ride.obstacle.height_mm", "missing" },
        { "\"speed_km_h\": 72", "\"speed_km_h\": 72, \"temperature_C\": 1000", "ride.temperature_C",
          "at most 300" },
        { "\"speed_km_h\": 72", "\"speed_km_h\": 72, \"speed\": 20", "ride.speed",
          "did you mean \"speed_km_h\"?" },
    };
    (void)state;
    EXPECT(LIST);
}

static void faults_of_align(void **state)
{
    static const spoilt LIST[] = {
        { "\"align\": { \"front\"", "\"align\": { \"rear\": {}, \"front\"", "align.rear", "no rear corner" },
        { "\"target\": { \"camber_deg\": -1.9, \"toe_deg\": 0.1,", "\"target\": {", "align.front.target",
          "at least one of camber_deg" },
        { "\"camber_deg\": -1.9", "\"camber_deg\": \"x\"", "align.front.target.camber_deg",
          "found the text" },
        { "\"tolerance_deg\": { \"camber\": 0.1 }", "\"tolerance_deg\": { \"chamber\": 0.1 }",
          "align.front.target.tolerance_deg.chamber", "did you mean \"camber\"?" },
        { "\"kind\": \"offset\"", "\"kind\": \"ofset\"", "align.front.adjusters[0].kind",
          "did you mean \"offset\"?" },
        { "\"joint\": \"upper_front\", \"max_mm\": 5", "\"joint\": \"upper_rear\", \"max_mm\": 5",
          "align.front.adjusters[0].joint", "must name in \"housing\"" },
        { "\"joint\": \"upper_front\", \"max_mm\": 5", "\"joint\": \"upper\", \"max_mm\": 5",
          "align.front.adjusters[0].joint", "the front corner has no joint \"upper\"" },
        { "\"joint\": \"upper_front\", \"max_mm\": 5", "\"joint\": \"upper_front\", \"max_mm\": 51",
          "align.front.adjusters[0].max_mm", "at most 50" },
        { "\"member\": \"tie_rod\"", "\"member\": \"upper_arm\"", "align.front.adjusters[1].member",
          "a member with two joints, whose length is between them; this one has 3" },
        { "\"member\": \"tie_rod\"", "\"member\": \"upright\"", "align.front.adjusters[1].member",
          "no length to adjust" },
        { "\"member\": \"tie_rod\"", "\"member\": \"tierod\"", "align.front.adjusters[1].member",
          "did you mean \"tie_rod\"?" },
        { "\"min_mm\": -6, \"max_mm\": 6", "\"min_mm\": 6, \"max_mm\": -6", "align.front.adjusters[1].max_mm",
          "at least min_mm" },
        { "\"min_mm\": -6, \"max_mm\": 6", "\"min_mm\": -400, \"max_mm\": 6",
          "align.front.adjusters[1].min_mm", "the member is only 360.278 mm long" },
        { "\"thread_pitch_mm\": 1.5", "\"thread_pitch_mm\": 0", "align.front.adjusters[1].thread_pitch_mm",
          "above 0" },
        { "\"threads\": \"opposite\"", "\"threads\": \"double\"", "align.front.adjusters[1].threads",
          "\"single\" or \"opposite\"" },
        { "\"along\": [0, 3, 4]", "\"along\": [0, 0, 0]", "align.front.adjusters[2].along", "length zero" },
        { "\"step_mm\": 1, \"max_mm\": 6", "\"step_mm\": 0, \"max_mm\": 6",
          "align.front.adjusters[2].step_mm", "above 0" },
        { "\"step_mm\": 1, \"max_mm\": 6", "\"step_mm\": 1, \"max_mm\": 0", "align.front.adjusters[2].max_mm",
          "more than min_mm" },
        { "\"joint\": \"upper_rear\", \"along\"", "\"joint\": \"tie_outer\", \"along\"",
          "align.front.adjusters[2].joint", "a joint on the chassis" },
        { "\"adjusters\": [", "\"adjusters\": [ 5,", "align.front.adjusters[0]", "expected an object" },
    };
    static const spoilt NONE = {
        "\"bushes\": {",
        "\"align\": {\"rear\": {\"target\": {\"toe_deg\": 0}, \"adjusters\": []}}, \"bushes\": {",
        "align.rear.adjusters", "at least one adjuster"
    };
    static const spoilt MISSING = { "\"bushes\": {",
                                    "\"align\": {\"rear\": {\"target\": {\"toe_deg\": 0}}}, \"bushes\": {",
                                    "align.rear.adjusters", "missing" };
    (void)state;
    EXPECT(LIST);
    expect_one(SAMPLE_MINIMAL, &NONE);
    expect_one(SAMPLE_MINIMAL, &MISSING);
}

/* One run lists them all, in the order of reading. */
static void many_faults_come_in_one_run(void **state)
{
    static const char *const CHANGES[][2] = {
        { "\"mass_kg\": 1500", "\"mass_kg\": -1" },
        { "\"axis\": [0, 1, 0]", "\"axis\": [0, 0, 0]" },
        { "\"friction_coefficient\": 0.15", "\"friction_coefficient\": \"low\"" },
        { "\"based_on\": \"standard\"", "\"based_on\": \"stock\"" },
        { "\"driven\": \"all\"", "\"driven\": \"both\"" },
        { "\"speed_km_h\": 72", "\"speed_km_h\": 0" },
        { "\"threads\": \"opposite\"", "\"threads\": 2" },
    };
    enum { N = sizeof CHANGES / sizeof *CHANGES };
    static const char *const PATHS[N] = { "vehicle.mass_kg",
                                          "bushes.poly.friction_coefficient",
                                          "corners.front.joints[6].axis",
                                          "kits[0].based_on",
                                          "loads[3].driven",
                                          "ride.speed_km_h",
                                          "align.front.adjusters[1].threads" };
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    (void)state;
    char *text = sample_change(SAMPLE_FULL, CHANGES[0][0], CHANGES[0][1]);
    for (int i = 1; i < N; i++) {
        char *next = sample_change(text, CHANGES[i][0], CHANGES[i][1]);
        free(text);
        text = next;
    }
    assert_int_equal(sample_read(text, &c, &faults), GW_E_SCHEMA);
    assert_int_equal(gw_faults_count(&faults), N);
    for (int i = 0; i < N; i++) check_contains(gw_faults_text(&faults, i), PATHS[i]);
    gw_faults_free(&faults);
    free(text);
}

static void a_name_with_odd_letters_cannot_break_a_line(void **state)
{
    static const spoilt ODD = { "\"title\": \"everything\"",
                                "\"title\": \"everything\", \"a\\n\\u001b[31mb\\u007f\": 1",
                                "[\"a??[31mb?\"]", "unknown key" };
    (void)state;
    expect_one(SAMPLE_FULL, &ODD);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(faults_at_the_top),
        cmocka_unit_test(faults_of_kind_and_range),
        cmocka_unit_test(faults_of_the_wheel),
        cmocka_unit_test(faults_of_points_and_members),
        cmocka_unit_test(faults_of_joints),
        cmocka_unit_test(faults_of_what_hangs_on_nothing),
        cmocka_unit_test(an_upright_without_joints_is_a_fault),
        cmocka_unit_test(faults_of_spring_and_damper),
        cmocka_unit_test(faults_of_corners),
        cmocka_unit_test(faults_of_bushes),
        cmocka_unit_test(faults_of_rubber),
        cmocka_unit_test(an_offset_beyond_the_wall_is_a_fault),
        cmocka_unit_test(faults_of_materials),
        cmocka_unit_test(faults_of_kits),
        cmocka_unit_test(a_circle_that_others_lead_to_is_reported_once),
        cmocka_unit_test(faults_of_loads),
        cmocka_unit_test(faults_of_ride),
        cmocka_unit_test(faults_of_align),
        cmocka_unit_test(many_faults_come_in_one_run),
        cmocka_unit_test(a_name_with_odd_letters_cannot_break_a_line),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
