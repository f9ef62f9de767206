/* SPDX-License-Identifier: MIT */
/* What no car has is told with its figure and what is usual; demonstration cars pass without a word. */
#include "support/case_sample.h"
#include "support/check.h"

#include "giveway/plausible.h"
#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <string.h>

static void warnings_of(const gw_case *c, gw_faults *faults)
{
    gw_error err = { 0 };
    *faults = (gw_faults){ 0 };
    if (gw_study_plausible(c, faults, &err) != GW_OK) fail_msg("%s", err.msg);
    assert_int_equal(gw_faults_count(faults), 0);
}

static void demonstration_cars_pass_without_a_word(void **unused)
{
    (void)unused;
    static const char *const CASES[] = { "cases/fast-saloon.json", "cases/hatchback.json",
                                         "cases/live-axle.json" };
    for (int i = 0; i < 3; i++) {
        gw_case c;
        gw_faults faults;
        sample_load(CASES[i], &c);
        warnings_of(&c, &faults);
        if (gw_faults_warnings(&faults)) fail_msg("%s", gw_faults_warning(&faults, 0));
        gw_faults_free(&faults);
        gw_case_free(&c);
    }
}

static void a_rack_on_the_chassis_of_a_corner_is_the_one_word_on_the_cars_by_the_rules(void **unused)
{
    (void)unused;
    static const char *const CASES[] = { "tests/cases/saloon-by-rule.json",
                                         "tests/cases/hatchback-by-rule.json" };
    for (int i = 0; i < 2; i++) {
        gw_case c;
        gw_faults faults;
        sample_load(CASES[i], &c);
        warnings_of(&c, &faults);
        assert_int_equal(gw_faults_warnings(&faults), 1);
        assert_non_null(strstr(gw_faults_warning(&faults, 0), "holds \"rack\" on the chassis of one corner"));
        gw_faults_free(&faults);
        gw_case_free(&c);
    }
}

/* A spoilt figure and what must stand in one of the warnings; the figure in it is worked out by hand. */
typedef struct gw_spoilt {
    void (*spoil)(gw_case *c);
    const char *says[3];
} gw_spoilt;

static gw_corner *front(gw_case *c)
{
    return &c->corners[GW_FRONT];
}

static gw_joint *joint_on_upright(gw_case *c)
{
    for (int j = 0; j < front(c)->n_joints; j++)
        if (front(c)->joints[j].body_a == GW_UPRIGHT || front(c)->joints[j].body_b == GW_UPRIGHT)
            return &front(c)->joints[j];
    fail_msg("no joint on the upright");
    return NULL;
}

static void half_track(gw_case *c)
{
    c->vehicle.track[GW_FRONT] *= 0.5;
}

static void tall(gw_case *c)
{
    c->vehicle.cg_height = 0.4 * c->vehicle.wheelbase;
}

static void brakes_behind(gw_case *c)
{
    c->vehicle.brake_front_fraction = 0.3;
}

static void stiff_spring(gw_case *c)
{
    front(c)->spring.rate *= 10.0;
}

static void stiff_tyre(gw_case *c)
{
    front(c)->wheel.tyre_vertical = 2300e3;
}

static void ball_joint_outside(gw_case *c)
{
    gw_joint *joint = joint_on_upright(c);
    joint->at.y = front(c)->wheel.centre.y + 0.085;
}

static void joint_too_high(gw_case *c)
{
    joint_on_upright(c)->at.z *= 10.0;
}

static void joint_too_far(gw_case *c)
{
    joint_on_upright(c)->at.x = 1.5 * c->vehicle.wheelbase;
}

static void damper_beside_its_arm(gw_case *c)
{
    front(c)->damper.at = gw_add(front(c)->damper.at, gw_v3(0.0, 0.0, -0.5));
}

static void soft_bush(gw_case *c)
{
    for (int b = 0; b < c->n_bushes; b++)
        if (c->bushes[b].type == GW_BUSH_BONDED) c->bushes[b].stiffness_factor = 0.01;
}

static void hard_load(gw_case *c)
{
    c->loads[1].manoeuvre.brake_g = 2.5;
}

static void in_tons(gw_case *c)
{
    c->vehicle.mass *= 10.0;
}

static void tyre_ten_times(gw_case *c)
{
    c->vehicle.cornering_stiffness[GW_REAR] *= 10.0;
}

static void toe_in_minutes(gw_case *c)
{
    front(c)->wheel.static_toe = 5.0 * GW_DEG;
}

static void light_wheel(gw_case *c)
{
    front(c)->wheel.mass = 4.0;
}

static void rim_in_inches(gw_case *c)
{
    front(c)->wheel.rim_diameter = 17 * GW_MM;
}

static void wrong_sign_of_y(gw_case *c)
{
    joint_on_upright(c)->at.y *= -1.0;
}

static void tax_as_a_share(gw_case *c)
{
    c->shop.has_tax = true;
    c->shop.tax = 0.0019;
}

static const gw_spoilt SPOILT[] = {
    { rim_in_inches, { "corners.front.wheel.rim_diameter_mm: ", "of 17 mm;", "250 to 620 mm" } },
    { wrong_sign_of_y,
      { "corners.front.joints[", "stands on the right side, at y = -", "is its sign wrong?" } },
    { tax_as_a_share, { "shop.tax_percent: a tax of 0.19 %", "1 to 30 %", "is this a share" } },
    { half_track, { "vehicle.track_mm.front: 796 mm", "within 5 %", "is this half the track?" } },
    { tall, { "vehicle.cg_height_mm: ", "of 0.4;", "usual is 0.15 to 0.3 (common practice)" } },
    { brakes_behind, { "vehicle.brake_front_fraction: ", "of 0.3;", "0.5 to 0.85" } },
    { stiff_spring,
      { "corners.front.spring.rate_N_per_mm: a body frequency on the springs of ", " Hz;", "0.8 to 3 Hz" } },
    { stiff_tyre, { "corners.front.wheel.tyre_vertical_N_per_mm: ", "of 2300 N/mm;", "100 to 400 N/mm" } },
    { ball_joint_outside,
      { "corners.front.joints[", "stands 85 mm outside the wheel's middle", "common practice" } },
    { joint_too_high,
      { "corners.front.joints[", " mm above the ground; usual is 20 to 1100", "common practice" } },
    { joint_too_far,
      { "corners.front.joints[", "of 4260 mm from the wheel centre along the car", "wheelbase" } },
    { damper_beside_its_arm, { "corners.front.damper.at: ", " mm beside \"", "within 150 mm" } },
    { soft_bush, { "bushes.", "a radial rate of ", "100 to 50000 N/mm (common practice)" } },
    { hard_load, { "loads[1]: braking of 2.5 g", "0 to 1.4 g", "road tyres" } },
    { in_tons, { "vehicle.mass_kg: a car of 1.72e+04 kg", "500 to 4000 kg", "common practice" } },
    { tyre_ten_times, { "vehicle.cornering_stiffness_N_per_deg.rear: ", " per deg;", "0.1 to 0.45" } },
    { toe_in_minutes, { "corners.front.wheel.static_toe_deg: ", "of 5 deg;", "-0.6 to 0.6" } },
    { light_wheel, { "corners.front.wheel.mass_kg: ", "of 4 kg;", "12 to 90 kg" } },
};

static bool told(const gw_faults *faults, const char *const says[3])
{
    for (int i = 0; i < gw_faults_warnings(faults); i++) {
        const char *line = gw_faults_warning(faults, i);
        if (strstr(line, says[0]) && strstr(line, says[1]) && strstr(line, says[2])) return true;
    }
    return false;
}

static void what_no_car_has_is_told_with_what_is_usual(void **unused)
{
    (void)unused;
    for (size_t i = 0; i < sizeof SPOILT / sizeof *SPOILT; i++) {
        gw_case c;
        gw_faults faults;
        sample_load("tests/cases/saloon-by-rule.json", &c);
        SPOILT[i].spoil(&c);
        warnings_of(&c, &faults);
        if (!told(&faults, SPOILT[i].says))
            fail_msg("not told: %s%s (%d warnings, first: %s)", SPOILT[i].says[0], SPOILT[i].says[1],
                     gw_faults_warnings(&faults), gw_faults_warning(&faults, 0));
        gw_faults_free(&faults);
        gw_case_free(&c);
    }
}

/* Of an axle with both its wheels: each joint once, where it stands in the file. The rack's mounting is the
 * third joint of the front axle. */
static void a_joint_of_an_axle_is_told_once_where_it_stands_in_the_file(void **unused)
{
    (void)unused;
    gw_case c;
    gw_faults faults;
    sample_load("cases/fast-saloon.json", &c);
    gw_corner *axle = front(&c);
    int low = gw_corner_find_joint(axle, "left.lateral_inner"),
        mount = gw_corner_find_joint(axle, "left.rack_mount");
    assert_true(low >= 0 && low < axle->n_left && mount >= axle->n_left);
    axle->joints[low].at.z = axle->joints[axle->joints[low].twin].at.z = 0.001;
    axle->joints[mount].at.z = axle->joints[axle->joints[mount].twin].at.z = 0.002;
    warnings_of(&c, &faults);
    int said = 0, shared = 0;
    char own[80];
    snprintf(own, sizeof own, "corners.front.joints[%d].at: left.lateral_inner of 1 mm above the ground",
             low);
    for (int i = 0; i < gw_faults_warnings(&faults); i++) {
        const char *line = gw_faults_warning(&faults, i);
        if (!strstr(line, "above the ground")) continue;
        said++;
        shared += strstr(line, own) ||
                  strstr(line, "axles.front.joints[2].at: left.rack_mount of 2 mm above the ground");
    }
    assert_int_equal(said, 2);
    assert_int_equal(shared, 2);
    gw_faults_free(&faults);
    gw_case_free(&c);
}

/* Body on its springs: a wheel rate of k under a quarter car of m, sqrt(k/m)/2 pi; the strut of the hatchback
 * has three joints on its upright, so its steering axis is known: spoilt caster shows. */
static void steering_axis_of_a_strut_is_looked_at(void **unused)
{
    (void)unused;
    gw_case c;
    gw_faults faults;
    sample_load("tests/cases/hatchback-by-rule.json", &c);
    gw_joint *top = NULL;
    for (int j = 0; j < front(&c)->n_joints; j++) {
        gw_joint *joint = &front(&c)->joints[j];
        bool on = joint->body_a == GW_UPRIGHT || joint->body_b == GW_UPRIGHT;
        if (on && (!top || joint->at.z > top->at.z)) top = joint;
    }
    assert_non_null(top);
    top->at.y += 0.35; /* leans outwards now */
    warnings_of(&c, &faults);
    const char *const says[3] = { "corners.front.joints: a kingpin inclination of -", " deg;",
                                  "3 to 20 deg" };
    assert_true(told(&faults, says));
    gw_faults_free(&faults);
    gw_case_free(&c);
}

static const gw_use_verdict *verdict(const gw_uses *uses, const char *command)
{
    for (int u = 0; u < GW_USES; u++)
        if (strcmp(uses->use[u].command, command) == 0) return &uses->use[u];
    fail_msg("no verdict on %s", command);
    return NULL;
}

static void commands_that_cannot_run_a_case_are_named_with_the_reason(void **unused)
{
    (void)unused;
    gw_case c;
    gw_uses uses;
    gw_error err = { 0 };
    sample_load("tests/cases/saloon-by-rule.json", &c);
    assert_int_equal(gw_study_uses(&c, &uses, &err), GW_OK);
    for (int u = 0; u < GW_USES; u++) assert_true(uses.use[u].runs && !uses.use[u].why);
    gw_uses_free(&uses);
    c.loads[1].manoeuvre.brake_g = 9.0;
    assert_int_equal(gw_study_uses(&c, &uses, &err), GW_OK);
    assert_true(verdict(&uses, "compare")->runs);
    check_contains(verdict(&uses, "compare")->why,
                   "10 of 45 results are not carried; load \"hard stop\", kit rubber: ");
    check_contains(verdict(&uses, "report")->why, "wheels lift");
    assert_true(verdict(&uses, "spread")->runs && verdict(&uses, "match")->runs);
    check_contains(verdict(&uses, "spread")->why, "10 of 45 results are not carried");
    assert_null(verdict(&uses, "travel")->why);
    gw_uses_free(&uses);
    c.has_corner[GW_REAR] = false; /* one axle alone, and loads of the whole car */
    c.ride.present = false;
    c.align[GW_FRONT].present = false;
    assert_int_equal(gw_study_uses(&c, &uses, &err), GW_OK);
    assert_false(verdict(&uses, "compare")->runs || verdict(&uses, "report")->runs ||
                 verdict(&uses, "deflect")->runs);
    check_contains(verdict(&uses, "compare")->why, "vehicle.roll_centre_height_mm: give both heights");
    check_contains(verdict(&uses, "align")->why, "align: missing");
    assert_false(verdict(&uses, "ride")->runs);
    assert_false(verdict(&uses, "spread")->runs);
    assert_false(
        verdict(&uses, "choose")->runs); /* its choices name joints at the rear, its limits ask for dB */
    assert_true(verdict(&uses, "rates")->runs);
    gw_uses_free(&uses);
    gw_case_free(&c);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(demonstration_cars_pass_without_a_word),
        cmocka_unit_test(a_rack_on_the_chassis_of_a_corner_is_the_one_word_on_the_cars_by_the_rules),
        cmocka_unit_test(what_no_car_has_is_told_with_what_is_usual),
        cmocka_unit_test(a_joint_of_an_axle_is_told_once_where_it_stands_in_the_file),
        cmocka_unit_test(steering_axis_of_a_strut_is_looked_at),
        cmocka_unit_test(commands_that_cannot_run_a_case_are_named_with_the_reason),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests(tests, NULL, NULL);
}
