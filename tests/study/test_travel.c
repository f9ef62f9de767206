/* SPDX-License-Identifier: MIT */
/* The study of travel on a trailing arm whose figures are known by hand. The case is invented. */
#include "support/case_sample.h"
#include "support/check.h"

#include "giveway/travel.h"
#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Pivot 400 mm ahead of the wheel centre and level with it; nearly rigid; 2 x 3 N m/deg about the pivot. The
 * second kit is free to turn; a third joint, of no rate at all, carries an axis across the pivot. */
static const char ARM[] =
    "{ \"format\": \"giveway-case-1\", \"title\": \"trailing arm (invented)\",\n"
    "  \"corners\": { \"rear\": {\n"
    "    \"wheel\": { \"centre_mm\": [0, 700, 300], \"loaded_radius_mm\": 290, \"static_load_N\": 3000,\n"
    "               \"static_camber_deg\": 0, \"static_toe_deg\": 0 },\n"
    "    \"joints\": [\n"
    "      { \"name\": \"inner\", \"between\": [\"chassis\", \"upright\"], \"at\": [400, 400, 300],\n"
    "        \"axis\": [0, 1, 0], \"bush\": \"arm\" },\n"
    "      { \"name\": \"outer\", \"between\": [\"chassis\", \"upright\"], \"at\": [400, 700, 300],\n"
    "        \"axis\": [0, 1, 0], \"bush\": \"arm\" },\n"
    "      { \"name\": \"across\", \"between\": [\"chassis\", \"upright\"], \"at\": [400, 550, 300],\n"
    "        \"axis\": [0, 0, 1], \"bush\": \"idle\", \"tilt_limit_deg\": 6 } ],\n"
    "    \"spring\": { \"on\": \"upright\", \"at\": [0, 600, 300], \"to\": [0, 600, 600], \"rate_N_per_mm\": "
    "40 } "
    "} },\n"
    "  \"bushes\": { \"arm\": { \"type\": \"rates\", \"radial_N_per_mm\": 5e6, \"axial_N_per_mm\": 5e6,\n"
    "              \"conical_Nm_per_deg\": 0, \"torsional_Nm_per_deg\": 3 },\n"
    "    \"free\": { \"type\": \"rates\", \"radial_N_per_mm\": 5e6, \"axial_N_per_mm\": 5e6,\n"
    "              \"conical_Nm_per_deg\": 0, \"torsional_Nm_per_deg\": 0 },\n"
    "    \"idle\": { \"type\": \"rates\", \"radial_N_per_mm\": 0, \"axial_N_per_mm\": 0,\n"
    "              \"conical_Nm_per_deg\": 0, \"torsional_Nm_per_deg\": 0, \"tilt_limit_deg\": 9 } },\n"
    "  \"kits\": [ { \"name\": \"rubber\", \"fits\": {} },\n"
    "            { \"name\": \"turning\", \"fits\": { \"rear.inner\": \"free\", \"rear.outer\": \"free\" } } "
    "],\n"
    "  \"loads\": [ { \"name\": \"pull\", \"corner\": \"rear\", \"patch_force_N\": [-1000, 0, 9999], "
    "\"travel_mm\": 33 } ]\n"
    "}\n";

static const double ARM_LENGTH = 0.4;
static const gw_travel_plan USUAL = { -60 * GW_MM, 60 * GW_MM, 5 * GW_MM, GW_OTHER_SAME };

static void read_case(const char *text, gw_case *c)
{
    gw_faults faults = { 0 };
    if (sample_read(text, c, &faults) != GW_OK) fail_msg("%s", gw_faults_text(&faults, 0));
    gw_faults_free(&faults);
}

static void study_text(const char *text, const gw_travel_plan *plan, const bool *loads, gw_case *c,
                       gw_travel_study *study)
{
    const gw_selection wanted = { .loads = loads };
    gw_error err = { 0 };
    read_case(text, c);
    if (gw_study_travel(c, &wanted, plan, study, &err) != GW_OK) fail_msg("%s", err.msg);
}

static void end(gw_case *c, gw_travel_study *study)
{
    gw_travel_study_free(study);
    gw_case_free(c);
}

static void there_is_a_point_every_step_and_at_both_ends(void **unused)
{
    (void)unused;
    static const struct {
        gw_travel_plan plan;
        int n;
        double last_but_one;
    } ROWS[] = {
        { { -60 * GW_MM, 60 * GW_MM, 5 * GW_MM, GW_OTHER_SAME }, 25, 55 * GW_MM },
        { { -10 * GW_MM, 13 * GW_MM, 10 * GW_MM, GW_OTHER_SAME }, 4, 10 * GW_MM },
        { { 5 * GW_MM, 6 * GW_MM, 20 * GW_MM, GW_OTHER_SAME }, 2, 5 * GW_MM },
    };
    for (size_t i = 0; i < sizeof ROWS / sizeof *ROWS; i++) {
        gw_case c;
        gw_travel_study study;
        study_text(ARM, &ROWS[i].plan, NULL, &c, &study);
        assert_int_equal(study.n, 2);
        const gw_travel_item *item = &study.item[0];
        assert_int_equal(item->n, ROWS[i].n);
        check_abs(item->point[0].travel, ROWS[i].plan.from, 1e-12, "first");
        check_abs(item->point[item->n - 1].travel, ROWS[i].plan.to, 1e-12, "last");
        check_abs(item->point[item->n - 2].travel, ROWS[i].last_but_one, 1e-12, "last but one");
        end(&c, &study);
    }
}

static void a_plan_that_goes_nowhere_is_refused(void **unused)
{
    (void)unused;
    static const gw_travel_plan BAD[] = { { 0.06, -0.06, 0.005, GW_OTHER_SAME },
                                          { 0, 0, 0.005, GW_OTHER_SAME },
                                          { -0.06, 0.06, 0, GW_OTHER_SAME } };
    static const gw_travel_plan FINE = { -0.06, 0.06, 1e-6, GW_OTHER_SAME };
    const gw_selection all = { 0 };
    gw_case c;
    gw_travel_study study;
    gw_error err = { 0 };
    read_case(ARM, &c);
    for (size_t i = 0; i < sizeof BAD / sizeof *BAD; i++) {
        assert_int_equal(gw_study_travel(&c, &all, &BAD[i], &study, &err), GW_E_RANGE);
        check_contains(err.msg, "must go upwards");
    }
    assert_int_equal(gw_study_travel(&c, &all, &FINE, &study, &err), GW_E_RANGE);
    check_contains(err.msg, "more than 2001 places");
    gw_case_free(&c);
}

/* The wheelbase of a rear axle grows as its wheel goes rearward; the arm swings it forward either way. */
static void track_and_wheelbase_follow_the_arm(void **unused)
{
    (void)unused;
    gw_case c;
    gw_travel_study study;
    study_text(ARM, &USUAL, NULL, &c, &study);
    for (int i = 0; i < study.item[0].n; i++) {
        const gw_travel_point *p = &study.item[0].point[i];
        double turn = asin(p->travel / ARM_LENGTH);
        check_abs(p->wheelbase_change, -ARM_LENGTH * (1.0 - cos(turn)), 1e-6, "wheelbase");
        check_abs(p->track_change, 0.0, 1e-6, "track");
        check_abs(p->roll_centre, 0.0, 1e-4, "roll centre");
        check_abs(p->caster_change, -turn, 2e-6, "caster");
    }
    end(&c, &study);
}

static void the_parasitic_rate_is_what_the_other_kit_lacks(void **unused)
{
    (void)unused;
    gw_case c;
    gw_travel_study study;
    study_text(ARM, &USUAL, NULL, &c, &study);
    const gw_travel_item *rubber = &study.item[0], *turning = &study.item[1];
    check_rel(rubber->rest.parasitic, 2 * 3 * GW_NM_PER_DEG / (ARM_LENGTH * ARM_LENGTH), 1e-4, "c/L^2");
    for (int i = 0; i < rubber->n; i++) {
        check_abs(turning->point[i].parasitic, 0.0, 1e-9, "of a kit that turns freely");
        check_abs(rubber->point[i].parasitic,
                  rubber->point[i].rates.wheel_rate - turning->point[i].rates.wheel_rate, 1e-6, "parasitic");
    }
    assert_null(rubber->no_parasitic);
    end(&c, &study);
}

/* The smaller limit counts; the arm turns through 6 degrees at 400 mm x sin 6 deg = 41.81 mm. */
static void a_joint_binds_where_the_arm_has_turned_by_its_limit(void **unused)
{
    (void)unused;
    gw_case c;
    gw_travel_study study;
    study_text(ARM, &USUAL, NULL, &c, &study);
    const gw_travel_item *item = &study.item[0];
    assert_int_equal(item->n_bearings, 1);
    const gw_travel_bearing *b = &item->bearing[0];
    assert_int_equal(b->joint, 2);
    check_abs(b->limit, 6 * GW_DEG, 1e-12, "limit");
    check_abs(b->tilt, asin(0.06 / ARM_LENGTH), 2e-6, "largest tilt");
    check_abs(b->binds_up, ARM_LENGTH * sin(6 * GW_DEG), 1e-6, "binds in bump");
    check_abs(b->binds_dn, -ARM_LENGTH * sin(6 * GW_DEG), 1e-6, "binds in rebound");
    assert_false(b->holds);
    end(&c, &study);
}

static void a_joint_within_its_limit_binds_nowhere(void **unused)
{
    (void)unused;
    const gw_travel_plan short_way = { -60 * GW_MM, 20 * GW_MM, 5 * GW_MM, GW_OTHER_SAME };
    gw_case c;
    gw_travel_study study;
    study_text(ARM, &short_way, NULL, &c, &study);
    assert_true(isnan(study.item[0].bearing[0].binds_up));
    check_abs(study.item[0].bearing[0].binds_dn, -ARM_LENGTH * sin(6 * GW_DEG), 1e-6, "in rebound only");
    end(&c, &study);
    const gw_travel_plan shorter = { .from = -20 * GW_MM, .to = 20 * GW_MM, .step = 5 * GW_MM };
    study_text(ARM, &shorter, NULL, &c, &study);
    assert_true(study.item[0].bearing[0].holds);
    end(&c, &study);
}

/* Tightened at full droop of 70 mm: at ride height each bush is twisted by asin(70/400). */
static void a_bush_tightened_at_droop_carries_a_known_torque(void **unused)
{
    (void)unused;
    gw_case c;
    gw_travel_study study;
    char *text = sample_change(ARM, "\"rear\": {\n", "\"rear\": { \"clamp_travel_mm\": -70,\n");
    study_text(text, &USUAL, NULL, &c, &study);
    const gw_travel_clamp *clamp = &study.item[0].clamp;
    double twist = asin(0.07 / ARM_LENGTH), rate = 3 * GW_NM_PER_DEG;
    assert_true(clamp->present);
    assert_int_equal(clamp->n, 2);
    for (int i = 0; i < 2; i++) {
        check_abs(clamp->clamped_at[i], -0.07, 1e-12, "tightened at");
        check_abs(fabs(clamp->twist[i]), twist, 2e-6, "twist");
        check_rel(fabs(clamp->torque[i]), rate * twist, 1e-4, "torque");
    }
    check_rel(clamp->lift, 2 * rate * twist / ARM_LENGTH, 1e-4, "carried by the bushes");
    /* They lift the body until the wheel rate balances them, which is nearly linear over so little. */
    check_rel(clamp->ride_height, clamp->lift / clamp->rest_rate, 0.02, "body rises");
    assert_false(study.item[1].clamp.present); /* nothing to tighten in a kit that turns freely */
    end(&c, &study);
    free(text);
}

/* Tightened at any height, the bushes add torque(travel) = c (turn - turn there): the load is known
 * throughout. */
static void bushes_tightened_elsewhere_change_the_load_by_their_torque(void **unused)
{
    (void)unused;
    gw_case c;
    gw_travel_study study;
    char *text = sample_change(ARM, "\"name\": \"inner\",", "\"name\": \"inner\", \"clamp_travel_mm\": 45,");
    study_text(text, &USUAL, NULL, &c, &study);
    const gw_travel_item *item = &study.item[0];
    assert_int_equal(item->clamp.n, 1);
    for (int i = 0; i < item->n; i++) {
        const gw_travel_point *p = &item->point[i];
        double turn = asin(p->travel / ARM_LENGTH), rest = asin(0.045 / ARM_LENGTH);
        double patch_arm = ARM_LENGTH * cos(turn) + 0.29 * sin(turn); /* pivot to patch, level */
        double want = -3 * GW_NM_PER_DEG * rest / patch_arm;
        check_abs(item->clamp.vertical_load[i] - p->rates.vertical_load, want, 1e-3 * fabs(want), "load");
    }
    end(&c, &study);
    free(text);
}

static void tightening_at_ride_height_is_what_is_taken_for_granted(void **unused)
{
    (void)unused;
    gw_case c;
    gw_travel_study study;
    char *text = sample_change(ARM, "\"rear\": {\n", "\"rear\": { \"clamp_travel_mm\": 0,\n");
    study_text(text, &USUAL, NULL, &c, &study);
    assert_false(study.item[0].clamp.present);
    end(&c, &study);
    free(text);
}

static void a_load_is_looked_at_only_when_it_is_asked_for(void **unused)
{
    (void)unused;
    const bool loads[1] = { true };
    gw_case c;
    gw_travel_study study;
    study_text(ARM, &USUAL, loads, &c, &study);
    assert_int_equal(study.n, 4);
    const gw_travel_item *bare = gw_travel_find(&study, 0, GW_REAR, -1);
    const gw_travel_item *pull = gw_travel_find(&study, 0, GW_REAR, 0);
    assert_non_null(bare);
    assert_non_null(pull);
    assert_null(gw_travel_find(&study, 0, GW_FRONT, -1));
    assert_int_equal(pull->n, bare->n);
    /* Moments about the pivot: the pull, 290 mm below it, swings the arm up by 1000 x 0.29 N m, so the road
     * has 1000 x 290/400 N less to carry at this height. */
    check_abs(pull->rest.rates.vertical_load - bare->rest.rates.vertical_load, -725.0, 0.01, "load");
    end(&c, &study);
}

/* Which axle is driven is what the loads of the case that drive say. */
static void anti_lift_of_drive_is_told_for_driven_axles_alone(void **unused)
{
    (void)unused;
    static const struct {
        gw_driven driven;
        double share[GW_AXLES];
    } TRIALS[] = { { GW_DRIVEN_REAR, { 0, 1 } },
                   { GW_DRIVEN_FRONT, { 1, 0 } },
                   { GW_DRIVEN_ALL, { 0.5, 0.5 } } };
    const gw_travel_plan plan = { .from = -1 * GW_MM, .to = 1 * GW_MM, .step = 1 * GW_MM };
    const gw_selection all = { 0 };
    gw_error err = { 0 };
    gw_case c;
    double whole[GW_AXLES];
    sample_load("tests/cases/saloon-by-rule.json", &c);
    gw_load *exit = &c.loads[c.n_loads - 1];
    double drive_g = exit->manoeuvre.drive_g;
    assert_true(drive_g > 0.0);
    for (int t = -1; t < 3; t++) {
        gw_travel_study study;
        exit->manoeuvre.drive_g = t < 0 ? 0.0 : drive_g;
        if (t >= 0) exit->manoeuvre.driven = TRIALS[t].driven;
        if (gw_study_travel(&c, &all, &plan, &study, &err) != GW_OK) fail_msg("%s", err.msg);
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            const gw_travel_item *item = gw_travel_find(&study, 0, a, -1);
            if (t < 0) whole[a] = item->anti_drive;
            if (t < 0)
                assert_true(isnan(item->drive_share) && fabs(whole[a]) > 0.01);
            else if (TRIALS[t].share[a] == 0.0)
                assert_true(isnan(item->anti_drive));
            else
                check_rel(item->anti_drive, TRIALS[t].share[a] * whole[a], 1e-12,
                          "in proportion to its drive");
        }
        gw_travel_study_free(&study);
    }
    gw_case_free(&c);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(anti_lift_of_drive_is_told_for_driven_axles_alone),
        cmocka_unit_test(there_is_a_point_every_step_and_at_both_ends),
        cmocka_unit_test(a_plan_that_goes_nowhere_is_refused),
        cmocka_unit_test(track_and_wheelbase_follow_the_arm),
        cmocka_unit_test(the_parasitic_rate_is_what_the_other_kit_lacks),
        cmocka_unit_test(a_joint_binds_where_the_arm_has_turned_by_its_limit),
        cmocka_unit_test(a_joint_within_its_limit_binds_nowhere),
        cmocka_unit_test(a_bush_tightened_at_droop_carries_a_known_torque),
        cmocka_unit_test(bushes_tightened_elsewhere_change_the_load_by_their_torque),
        cmocka_unit_test(tightening_at_ride_height_is_what_is_taken_for_granted),
        cmocka_unit_test(a_load_is_looked_at_only_when_it_is_asked_for),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
