/* SPDX-License-Identifier: MIT */
/* Friction at the wheel of a trailing arm, whose figures are known by hand: virtual work, work lost over way.
 */
#include "support/check.h"
#include "support/corner_fixture.h"

#include "giveway/corner_friction.h"

#include <gsl/gsl_errno.h>

/* Two pivots 400 mm ahead of the wheel centre, both sides of it alike; spring 250 mm behind the pivot's line,
 * upright. */
static void trailing_arm(fixture *f)
{
    fixture_start(f);
    fixture_joint(f, "inner", GW_CHASSIS, GW_UPRIGHT, gw_v3(400, 650, 310), gw_v3(0, 1, 0), 5e6, 5e6, 0, 0);
    fixture_joint(f, "outer", GW_CHASSIS, GW_UPRIGHT, gw_v3(400, 850, 310), gw_v3(0, 1, 0), 5e6, 5e6, 0, 0);
    fixture_spring(f, GW_UPRIGHT, gw_v3(150, 750, 310), gw_v3(150, 750, 700), 40);
}

static gw_friction friction_of(fixture *f)
{
    gw_corner_ws *ws = NULL;
    gw_error err = { 0 };
    gw_friction out;
    if (gw_corner_open(&f->corner, f->fit, &ws, &err) != GW_OK) fail_msg("%s", err.msg);
    if (gw_corner_friction(ws, &out, &err) != GW_OK) fail_msg("%s", err.msg);
    gw_corner_close(ws);
    return out;
}

/* The arm turns by 1/0.4 rad a metre of wheel travel; a joint of 1.7 N m asks for 1.7/0.4 N at the wheel. */
static void torque_of_a_pivot_is_felt_over_the_length_of_the_arm(void **unused)
{
    (void)unused;
    fixture f;
    trailing_arm(&f);
    f.fit[0].law.slider = (gw_slider){ .torque = 1.7 };
    f.fit[1].law.slider = (gw_slider){ .torque = 0.9, .all_axes = true };
    gw_friction r = friction_of(&f);
    assert_int_equal(r.n, 2);
    check_rel(r.part[0].way, 1 / 0.4, 1e-6, "turning a metre");
    check_rel(r.part[0].wheel, 1.7 / 0.4, 1e-6, "inner");
    check_rel(r.wheel, 2.6 / 0.4, 1e-6, "both");
}

/* A slider about the axis alone does not feel turning across it. */
static void a_slider_rubs_about_its_own_axis_alone(void **unused)
{
    (void)unused;
    fixture f;
    trailing_arm(&f);
    f.corner.joints[0].frame = fixture_frame(gw_v3(1, 0, 0));
    f.fit[0].law.slider = (gw_slider){ .torque = 1.7 };
    check_abs(friction_of(&f).wheel, 0.0, 1e-6, "turned across its axis");
    f.fit[0].law.slider.all_axes = true;
    check_rel(friction_of(&f).wheel, 1.7 / 0.4, 1e-6, "a ball");
}

/* At rest 4 kN lift the wheel 400 mm behind the pivots, the spring presses 250 mm behind them: S = 4000 x
 * 400/250 = 6400 N, and the pivots hold 2400 N down, half each. M = torque + 6 mm x 1200 N. */
static void load_at_rest_adds_to_a_bearings_torque(void **unused)
{
    (void)unused;
    fixture f;
    trailing_arm(&f);
    f.fit[0].law.slider = (gw_slider){ .torque = 0.5, .per_force = 6e-3, .all_axes = true };
    gw_friction r = friction_of(&f);
    check_rel(r.part[0].strength, 0.5 + 6e-3 * 1200, 1e-6, "torque [N m]");
    check_rel(r.wheel, (0.5 + 6e-3 * 1200) / 0.4, 1e-6, "at the wheel");
    f.fit[0].law.slider.radial_only = true; /* the force is across the axis here */
    check_rel(friction_of(&f).part[0].strength, 0.5 + 6e-3 * 1200, 1e-6, "radial");
    f.corner.joints[0].frame = fixture_frame(gw_v3(0, 0, 1));
    check_abs(friction_of(&f).part[0].strength, 0.5, 1e-3, "along the axis it does not count");
}

/* A damper over the spring moves 250/400 as fast as the wheel. */
static void damper_rubs_by_its_lever(void **unused)
{
    (void)unused;
    fixture f;
    trailing_arm(&f);
    f.corner.damper = (gw_damper){ .present = true,
                                   .body = GW_UPRIGHT,
                                   .at = gw_v3(0.15, 0.75, 0.31),
                                   .to = gw_v3(0.15, 0.75, 0.7),
                                   .rate = 2000,
                                   .friction = 47 };
    gw_friction r = friction_of(&f);
    assert_int_equal(r.n, 1);
    assert_int_equal(r.part[0].joint, -1);
    check_rel(r.wheel, 47 * 250.0 / 400.0, 1e-6, "at the wheel");
}

static void nothing_rubs_where_nothing_is_given(void **unused)
{
    (void)unused;
    fixture f;
    trailing_arm(&f);
    gw_friction r = friction_of(&f);
    assert_int_equal(r.n, 0);
    check_abs(r.wheel, 0.0, 0.0, "at the wheel");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(torque_of_a_pivot_is_felt_over_the_length_of_the_arm),
        cmocka_unit_test(a_slider_rubs_about_its_own_axis_alone),
        cmocka_unit_test(load_at_rest_adds_to_a_bearings_torque),
        cmocka_unit_test(damper_rubs_by_its_lever),
        cmocka_unit_test(nothing_rubs_where_nothing_is_given),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests(tests, NULL, NULL);
}
