/* SPDX-License-Identifier: MIT */
/* `choose`: what is read, what follows where it is left out, and every fault with its remedy. */
#include "giveway/units.h"
#include "support/case_sample.h"
#include "support/check.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* A link between chassis and upright at four corners of a square, two axles alike. */
#define JOINT(name, bush)                                                                                    \
    "{\"name\":\"" name "\",\"between\":[\"chassis\",\"upright\"],\"at\":\"" name                            \
    "\",\"axis\":[1,0,0],\"bush\":\"" bush "\"}"
#define CORNER                                                                                               \
    "{\"wheel\":{\"centre_mm\":[0,700,300],\"loaded_radius_mm\":300,\"static_camber_deg\":-1,\"static_toe_deg\":0.1},"                \
    "\"points_mm\":{\"a\":[100,400,200],\"b\":[-100,400,200],\"c\":[0,420,500],\"s\":[0,500,400],\"t\":[0,"  \
    "480,700]},"                                                                                             \
    "\"members\":{},\"joints\":[" JOINT("a", "soft") "," JOINT("b", "soft") "," JOINT(                       \
        "c", "soft") "],"                                                                                    \
                     "\"spring\":{\"on\":\"upright\",\"at\":\"s\",\"to\":\"t\",\"rate_N_per_mm\":30}}"
#define RATES                                                                                                \
    "\"type\":\"rates\",\"radial_N_per_mm\":2000,\"axial_N_per_mm\":800,\"conical_Nm_per_deg\":5,"           \
    "\"torsional_Nm_per_deg\":2"

static const char HEAD[] =
    "{\"format\":\"giveway-case-1\",\"title\":\"t\",\"corners\":{\"front\":" CORNER ",\"rear\":" CORNER "},"
    "\"bushes\":{\"soft\":{" RATES "},\"firm\":{" RATES ",\"price\":10,\"fit_minutes\":20},"
    "\"hard\":{" RATES ",\"price\":30,\"fit_minutes\":25},\"dear\":{" RATES "},"
    "\"bare\":{" RATES ",\"price\":3}},"
    "\"vehicle\":{\"mass_kg\":1600,\"front_mass_fraction\":0.5,\"cg_height_mm\":500,\"wheelbase_mm\":2500,"
    "\"track_mm\":{\"front\":1400,\"rear\":1400},\"brake_front_fraction\":0.6,"
    "\"roll_stiffness_Nm_per_deg\":{\"front\":500,\"rear\":500},\"pneumatic_trail_mm\":0},"
    "\"loads\":[{\"name\":\"pull\",\"corner\":\"front\",\"patch_force_N\":[-1000,0,null]},"
    "{\"name\":\"stop\",\"brake_g\":0.5},{\"name\":\"bend\",\"lateral_g\":0.3,\"wheel\":\"outer\"}],";

static const char KITS[] =
    "\"kits\":[{\"name\":\"one\",\"fits\":{}},"
    "{\"name\":\"two\",\"fits\":{\"front.a\":\"firm\",\"front.b\":\"firm\",\"rear.c\":\"hard\"}},"
    "{\"name\":\"three\",\"fits\":{\"front.a\":\"hard\",\"front.b\":\"hard\",\"rear.c\":\"soft\"}},"
    "{\"name\":\"side\",\"fits\":{\"front.left.c\":\"firm\"}}],";

typedef struct loaded {
    gw_material_set materials;
    gw_case c;
    gw_faults faults;
} loaded;

static gw_status read_text(const char *kits, const char *choose, loaded *l)
{
    char text[20000];
    *l = (loaded){ 0 };
    snprintf(text, sizeof text, "%s%s\"choose\":%s}", HEAD, kits, choose);
    gw_status st = gw_case_read("sample.json", text, strlen(text), &l->materials, &l->c, &l->faults);
    sample_keep("case", text, st, &l->faults);
    return st;
}

static void release(loaded *l)
{
    gw_case_free(&l->c);
    gw_faults_free(&l->faults);
}

static void everything_is_read_in_si(void **state)
{
    loaded l;
    (void)state;
    gw_status st =
        read_text(KITS,
                  "{\"among\":[{\"joints\":[\"front.a\",\"front.b\"],\"bushes\":[\"soft\",\"firm\"]},"
                  "{\"joints\":[\"rear.c\"],\"bushes\":[\"hard\"]}],"
                  "\"goals\":[{\"load\":\"stop\",\"figure\":\"toe_change_deg\",\"weight\":2},"
                  "{\"load\":\"bend\",\"corner\":\"rear\",\"wheel\":\"outer\",\"figure\":\"camber_to_road_"
                  "deg\",\"wanted\":-0.5}],"
                  "\"limits\":{\"price\":900,\"harshness_dB\":-3},\"hourly_rate\":80,"
                  "\"tell_apart\":{\"unsteadiness\":0.01,\"harshness_dB\":0.5}}",
                  &l);
    assert_int_equal(st, GW_E_SCHEMA); /* no ride, and a limit of it */
    check_contains(gw_faults_text(&l.faults, 0), "choose.limits.harshness_dB: without \"ride\"");
    release(&l);
    st = read_text(KITS,
                   "{\"among\":[{\"joints\":[\"front.a\",\"front.b\"],\"bushes\":[\"soft\",\"firm\"]},"
                   "{\"joints\":[\"rear.c\"],\"bushes\":[\"hard\"]}],"
                   "\"goals\":[{\"load\":\"stop\",\"figure\":\"toe_change_deg\",\"weight\":2},"
                   "{\"load\":\"bend\",\"corner\":\"rear\",\"wheel\":\"outer\",\"figure\":\"camber_to_road_"
                   "deg\",\"wanted\":-0.5}],"
                   "\"limits\":{\"price\":900,\"cost\":1500},\"hourly_rate\":80,"
                   "\"tell_apart\":{\"unsteadiness\":0.01,\"harshness_dB\":0.5}}",
                   &l);
    assert_int_equal(st, GW_OK);
    const gw_choose *c = &l.c.choose;
    assert_true(c->present && c->n_among == 2 && c->n_goals == 2);
    assert_true(c->among[0].axle == GW_FRONT && c->among[0].n_joints == 2 && c->among[0].n_bushes == 2);
    assert_string_equal(l.c.bushes[c->among[0].bush[1]].name, "firm");
    assert_true(c->among[1].axle == GW_REAR && c->among[1].joint[0] == 2);
    assert_true(c->goal[0].figure == GW_GOAL_TOE && !c->goal[0].one_corner && !c->goal[0].one_wheel);
    check_abs(c->goal[0].weight, 2.0, 0, "weight");
    assert_true(c->goal[1].figure == GW_GOAL_TO_ROAD && c->goal[1].one_corner && c->goal[1].axle == GW_REAR);
    check_abs(c->goal[1].wanted, -0.5 * GW_DEG, 1e-15, "wanted");
    check_abs(c->goal[1].weight, 1.0, 0, "weight left out");
    assert_true(c->has_limit[GW_LIMIT_PRICE] && c->has_limit[GW_LIMIT_COST] &&
                !c->has_limit[GW_LIMIT_MINUTES]);
    check_abs(c->limit[GW_LIMIT_PRICE], 900, 0, "price");
    check_abs(c->limit[GW_LIMIT_COST], 1500, 0, "cost");
    assert_true(c->has_rate);
    check_abs(c->hourly_rate, 80, 0, "rate");
    check_abs(c->tell_unsteadiness, 0.01 * GW_DEG, 1e-15, "step of unsteadiness");
    check_abs(c->tell_harshness, 0.5, 0, "step of harshness");
    release(&l);
}

static void lengths_are_told_apart_in_mm(void **state)
{
    loaded l;
    (void)state;
    assert_int_equal(
        read_text(KITS,
                  "{\"goals\":[{\"load\":\"stop\",\"figure\":\"wheel_fore_aft_mm\",\"wanted\":-2}],"
                  "\"tell_apart\":{\"unsteadiness\":0.5}}",
                  &l),
        GW_OK);
    check_abs(l.c.choose.goal[0].wanted, -0.002, 1e-15, "wanted");
    check_abs(l.c.choose.tell_unsteadiness, 0.0005, 1e-15, "step");
    release(&l);
}

/* a and b are treated alike by every kit; c is fitted on one side only by a kit, which says nothing. */
static void what_is_left_out_follows_from_the_kits(void **state)
{
    loaded l;
    gw_choose by_kits = { 0 };
    gw_arena arena = { 0 };
    (void)state;
    assert_int_equal(read_text(KITS, "{}", &l), GW_OK);
    assert_int_equal(gw_choose_by_kits(&l.c, &arena, &by_kits, NULL), GW_OK);
    assert_int_equal(by_kits.n_among, 2);
    const gw_among *f = &by_kits.among[0], *r = &by_kits.among[1];
    assert_true(f->axle == GW_FRONT && f->n_joints == 2 && f->joint[0] == 0 && f->joint[1] == 1);
    assert_int_equal(f->n_bushes, 3);
    assert_string_equal(l.c.bushes[f->bush[0]].name, "soft");
    assert_string_equal(l.c.bushes[f->bush[1]].name, "firm");
    assert_string_equal(l.c.bushes[f->bush[2]].name, "hard");
    assert_true(r->axle == GW_REAR && r->n_joints == 1 && r->joint[0] == 2 && r->n_bushes == 2);
    gw_arena_free(&arena);
    release(&l);
}

#define AMONG(joints, bushes) "{\"among\":[{\"joints\":[" joints "],\"bushes\":[" bushes "]}]}"
#define GOAL(text)            "{\"goals\":[{" text "}]}"

static void faults_name_their_place_and_the_remedy(void **state)
{
    static const struct {
        const char *choose, *at, *message;
    } LIST[] = {
        { "3", "choose", "expected an object" },
        { "{\"amongst\":[]}", "choose.amongst", "did you mean \"among\"" },
        { "{\"among\":[]}", "choose.among", "at least one choice" },
        { "{\"among\":[3]}", "choose.among[0]", "an object { } with joints and bushes" },
        { "{\"among\":[{\"bushes\":[\"firm\"]}]}", "choose.among[0].joints", "missing" },
        { "{\"among\":[{\"joints\":[\"front.a\"]}]}", "choose.among[0].bushes", "missing" },
        { AMONG("", "\"firm\""), "choose.among[0].joints", "at least one joint" },
        { AMONG("\"front.a\"", ""), "choose.among[0].bushes", "at least one bush" },
        { AMONG("3", "\"firm\""), "choose.among[0].joints[0]", "the name of a joint" },
        { AMONG("\"a\"", "\"firm\""), "choose.among[0].joints[0]", "the corner, a dot, the joint" },
        { AMONG("\"front.aa\"", "\"firm\""), "choose.among[0].joints[0]",
          "no joint \"aa\"; did you mean \"a\"" },
        { AMONG("\"front.a\",\"rear.a\"", "\"firm\""), "choose.among[0].joints[1]",
          "this choice is of the front axle" },
        { AMONG("\"front.a\",\"front.a\"", "\"firm\""), "choose.among[0].joints[1]",
          "in the choice already" },
        { "{\"among\":[{\"joints\":[\"front.a\"],\"bushes\":[\"firm\"]},{\"joints\":[\"front.a\"],\"bushes\":"
          "[\"hard\"]}]}",
          "choose.among[1].joints[0]", "stands in choose.among[0] too" },
        { AMONG("\"front.a\"", "\"frim\""), "choose.among[0].bushes[0]", "did you mean \"firm\"" },
        { AMONG("\"front.a\"", "{}"), "choose.among[0].bushes[0]", "expected the name of a bush" },
        { AMONG("\"front.a\"", "\"firm\",\"firm\""), "choose.among[0].bushes[1]", "in the list already" },
        { AMONG("\"front.a\"", "\"dear\""), "choose.among[0].bushes[0]",
          "needs price and fit_minutes: give it in bushes.dear" },
        { AMONG("\"front.a\"", "\"bare\""), "choose.among[0].bushes[0]",
          "needs fit_minutes: give it in bushes.bare" },
        { "{\"goals\":[]}", "choose.goals", "at least one goal" },
        { "{\"goals\":[3]}", "choose.goals[0]", "an object { } with load and figure" },
        { GOAL("\"figure\":\"toe_change_deg\""), "choose.goals[0].load", "missing" },
        { GOAL("\"load\":\"stop\""), "choose.goals[0].figure", "missing" },
        { GOAL("\"load\":\"stopp\",\"figure\":\"toe_change_deg\""), "choose.goals[0].load",
          "did you mean \"stop\"" },
        { GOAL("\"load\":\"stop\",\"figure\":\"toe\""), "choose.goals[0].figure", "toe_change_deg" },
        { GOAL("\"load\":\"stop\",\"figure\":\"toe_change_deg\",\"weight\":-1"), "choose.goals[0].weight",
          "at least 0" },
        { GOAL("\"load\":\"stop\",\"figure\":\"toe_change_deg\",\"weight\":0"), "choose.goals",
          "weights are all 0" },
        { GOAL("\"load\":\"stop\",\"figure\":\"toe_change_deg\",\"wanted\":2000"), "choose.goals[0].wanted",
          "at most 1000" },
        { GOAL("\"load\":\"pull\",\"figure\":\"camber_to_road_deg\""), "choose.goals[0].figure",
          "a figure of manoeuvres" },
        { GOAL("\"load\":\"pull\",\"figure\":\"toe_change_deg\",\"corner\":\"rear\""),
          "choose.goals[0].corner", "acts on the front corner" },
        { GOAL("\"load\":\"pull\",\"figure\":\"toe_change_deg\",\"wheel\":\"outer\""),
          "choose.goals[0].wheel", "\"left\" and \"right\"" },
        { GOAL("\"load\":\"pull\",\"figure\":\"toe_change_deg\",\"wheel\":\"right\""),
          "choose.goals[0].wheel", "does not tell that wheel" },
        { GOAL("\"load\":\"bend\",\"figure\":\"toe_change_deg\",\"wheel\":\"left\""), "choose.goals[0].wheel",
          "\"outer\" and \"inner\"" },
        { GOAL("\"load\":\"bend\",\"figure\":\"toe_change_deg\",\"wheel\":\"inner\""),
          "choose.goals[0].wheel", "\"wheel\": \"both\"" },
        { GOAL("\"load\":\"stop\",\"figure\":\"toe_change_deg\"},{\"load\":\"stop\",\"figure\":\"wheel_fore_"
               "aft_mm\""),
          "choose.goals[1].figure", "all in degrees or all in mm" },
        { "{\"limits\":{\"prise\":3}}", "choose.limits.prise", "did you mean \"price\"" },
        { "{\"limits\":{\"price\":-3}}", "choose.limits.price", "at least 0" },
        { "{\"limits\":{\"road_noise_dB\":3}}", "choose.limits.road_noise_dB", "without \"ride\"" },
        { "{\"hourly_rate\":\"80\"}", "choose.hourly_rate", "found the text" },
        { "{\"tell_apart\":{\"harshness_dB\":-1}}", "choose.tell_apart.harshness_dB", "at least 0" },
        { "{\"tell_apart\":{\"harshness\":1}}", "choose.tell_apart.harshness", "harshness_dB" },
    };
    (void)state;
    for (size_t i = 0; i < sizeof LIST / sizeof *LIST; i++) {
        loaded l;
        char at[200];
        gw_status st = read_text(KITS, LIST[i].choose, &l);
        if (st != GW_E_SCHEMA) fail_msg("%s is taken", LIST[i].choose);
        snprintf(at, sizeof at, "sample.json: %s: ", LIST[i].at);
        check_contains(gw_faults_text(&l.faults, 0), at);
        check_contains(gw_faults_text(&l.faults, 0), LIST[i].message);
        release(&l);
    }
}

static void kits_that_say_nothing_are_faults_too(void **state)
{
    static const struct {
        const char *kits, *at, *message;
    } LIST[] = {
        { "", "choose.among", "the kits differ in no joint" },
        { "\"kits\":[{\"name\":\"one\",\"fits\":{}},{\"name\":\"two\",\"fits\":{\"front.a\":\"dear\"}}],",
          "choose.among",
          "a kit's bush is on offer and needs price and fit_minutes: give it in bushes.dear" },
        { "\"kits\":[{\"name\":\"one\",\"fits\":{\"front.left.a\":\"firm\"}}],", "choose",
          "the first kit fits \"front.a\" on one side only" },
    };
    (void)state;
    for (size_t i = 0; i < sizeof LIST / sizeof *LIST; i++) {
        loaded l;
        char at[200];
        gw_status st = read_text(LIST[i].kits, "{}", &l);
        if (st != GW_E_SCHEMA) fail_msg("%s is taken", LIST[i].kits);
        snprintf(at, sizeof at, "sample.json: %s: ", LIST[i].at);
        check_contains(gw_faults_text(&l.faults, 0), at);
        check_contains(gw_faults_text(&l.faults, 0), LIST[i].message);
        release(&l);
    }
}

static void a_camber_goal_in_a_bend_without_a_wanted_value_is_warned_of(void **state)
{
    loaded l;
    (void)state;
    assert_int_equal(read_text(KITS, GOAL("\"load\":\"bend\",\"figure\":\"camber_change_deg\""), &l), GW_OK);
    assert_int_equal(gw_faults_warnings(&l.faults), 1);
    check_contains(gw_faults_warning(&l.faults, 0),
                   "choose.goals[0].figure: most of the camber change in a bend");
    release(&l);
    assert_int_equal(
        read_text(KITS, GOAL("\"load\":\"bend\",\"figure\":\"camber_change_deg\",\"wanted\":-1"), &l), GW_OK);
    assert_int_equal(gw_faults_warnings(&l.faults), 0);
    release(&l);
    assert_int_equal(read_text(KITS, GOAL("\"load\":\"stop\",\"figure\":\"camber_change_deg\""), &l), GW_OK);
    assert_int_equal(gw_faults_warnings(&l.faults), 0);
    release(&l);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(everything_is_read_in_si),
        cmocka_unit_test(lengths_are_told_apart_in_mm),
        cmocka_unit_test(what_is_left_out_follows_from_the_kits),
        cmocka_unit_test(faults_name_their_place_and_the_remedy),
        cmocka_unit_test(kits_that_say_nothing_are_faults_too),
        cmocka_unit_test(a_camber_goal_in_a_bend_without_a_wanted_value_is_warned_of),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
