/* SPDX-License-Identifier: MIT */
/* Free spins, mechanisms, seats off the line, and loads that no corner can carry. */
#include "support/check.h"
#include "support/corner_fixture.h"

#include "giveway/units.h"

#include <gsl/gsl_errno.h>

static gw_status open_status(fixture *f, gw_corner_ws **ws, gw_error *err)
{
    return gw_corner_open(&f->corner, f->fit, ws, err);
}

static gw_corner_ws *must_open(fixture *f)
{
    gw_corner_ws *ws;
    gw_error err = { 0 };
    if (open_status(f, &ws, &err) != GW_OK) fail_msg("%s", err.msg);
    return ws;
}

static void free_all_turning(fixture *f)
{
    for (int j = 0; j < f->corner.n_joints; j++)
        for (int i = 0; i < 3; i++) f->fit[j].law.c[i] = 0.0;
}

static void double_wishbone_has_no_warnings(void **unused)
{
    (void)unused;
    fixture f;
    fixture_double_wishbone(&f);
    gw_corner_ws *ws = must_open(&f);
    assert_int_equal(gw_corner_warnings(ws), 0);
    gw_corner_close(ws);
}

static void corner_without_a_tie_rod_is_a_mechanism_that_steers(void **unused)
{
    (void)unused;
    fixture f;
    gw_corner_ws *ws;
    gw_error err = { 0 };
    fixture_double_wishbone(&f);
    /* On ball joints throughout, the rod's outer end loses its rates: nothing steers the wheel. */
    free_all_turning(&f);
    f.fit[8].law = gw_bush_law_zero();
    assert_int_equal(open_status(&f, &ws, &err), GW_E_MECHANISM);
    assert_null(ws);
    check_contains(err.msg, "front corner is a mechanism");
    check_contains(err.msg, "turns about z (toe)");
}

/*
 * Where rubber holds the arms, a wheel without a tie rod still steers about its ball joints. It rises as it
 * does, so its travel holds it; the spring, which stands on an arm, does not.
 */
static void wheel_that_only_its_travel_would_hold_is_a_mechanism(void **unused)
{
    (void)unused;
    fixture f;
    gw_corner_ws *ws;
    gw_error err = { 0 };
    fixture_start(&f);
    int upper = fixture_member(&f, "upper_arm"), lower = fixture_member(&f, "lower_arm");
    gw_vec3 x = gw_v3(1, 0, 0), z = gw_v3(0, 0, 1), outer = gw_v3(-15, 690, 500);
    fixture_joint(&f, "upper_front", GW_CHASSIS, upper, gw_v3(120, 440, 480), x, 1000, 300, 2, 1);
    fixture_joint(&f, "upper_rear", GW_CHASSIS, upper, gw_v3(-130, 440, 470), x, 1000, 300, 2, 1);
    fixture_joint(&f, "upper_outer", upper, GW_UPRIGHT, outer, z, 3e4, 3e4, 0, 0);
    fixture_joint(&f, "lower_front", GW_CHASSIS, lower, gw_v3(150, 380, 190), x, 5000, 800, 6, 2);
    fixture_joint(&f, "lower_rear", GW_CHASSIS, lower, gw_v3(-160, 380, 195), x, 5000, 800, 6, 2);
    fixture_joint(&f, "lower_outer", lower, GW_UPRIGHT, gw_v3(5, 730, 190), z, 3e4, 3e4, 0, 0);
    fixture_spring(&f, lower, gw_v3(0, 600, 192), gw_v3(0, 560, 600), 60);
    assert_int_equal(open_status(&f, &ws, &err), GW_E_MECHANISM);
    check_contains(err.msg, "front corner is a mechanism");
    check_contains(err.msg, "turns about z (toe)");
    fixture_link(&f, "tie_rod", gw_v3(-120, 390, 230), gw_v3(-130, 720, 225));
    gw_corner_close(must_open(&f));
}

/* A spring square to the only movement of the wheel holds nothing. */
static void spring_that_cannot_carry_the_wheel_is_a_mechanism(void **unused)
{
    (void)unused;
    fixture f;
    gw_corner_ws *ws;
    gw_error err = { 0 };
    fixture_start(&f);
    fixture_joint(&f, "slider", GW_CHASSIS, GW_UPRIGHT, gw_v3(0, 600, 310), gw_v3(0, 0, 1), 5000, 0, 100,
                  100);
    fixture_spring(&f, GW_UPRIGHT, gw_v3(0, 700, 310), gw_v3(0, 200, 310), 60);
    assert_int_equal(open_status(&f, &ws, &err), GW_E_MECHANISM);
    check_contains(err.msg, "moves up and down (z)");
    fixture_start(&f);
    fixture_joint(&f, "slider", GW_CHASSIS, GW_UPRIGHT, gw_v3(0, 600, 310), gw_v3(0, 0, 1), 5000, 0, 100,
                  100);
    fixture_spring(&f, GW_UPRIGHT, gw_v3(0, 700, 310), gw_v3(0, 600, 700), 60);
    gw_corner_close(must_open(&f));
}

static void missing_upper_arm_is_a_mechanism_in_camber(void **unused)
{
    (void)unused;
    fixture f;
    gw_corner_ws *ws;
    gw_error err = { 0 };
    fixture_double_wishbone(&f);
    free_all_turning(&f);
    f.fit[2].law = gw_bush_law_zero();
    assert_int_equal(open_status(&f, &ws, &err), GW_E_MECHANISM);
    check_contains(err.msg, "upright");
}

static void member_on_one_ball_joint_is_held_and_changes_nothing(void **unused)
{
    (void)unused;
    fixture plain, extra;
    gw_error err = { 0 };
    fixture_double_wishbone(&plain);
    fixture_double_wishbone(&extra);
    int sensor = fixture_member(&extra, "sensor_arm");
    fixture_joint(&extra, "sensor", GW_UPRIGHT, sensor, gw_v3(0, 690, 260), gw_v3(0, 0, 1), 20000, 20000, 0,
                  0);
    fixture *both[2] = { &plain, &extra };
    double toe[2];
    for (int i = 0; i < 2; i++) {
        gw_corner_ws *ws = must_open(both[i]);
        gw_state state;
        gw_corner_result r = { .joints = both[i]->results };
        assert_int_equal(gw_state_alloc(&both[i]->corner, &state, &err), GW_OK);
        gw_corner_load load = { { -3000, -2000, 5000 }, { 0, 0, 20 }, { 0, 0, 0 }, 0.015 };
        assert_int_equal(gw_corner_solve(ws, &load, GW_AT_TRAVEL, &state, &err), GW_OK);
        gw_corner_report(ws, &state, &r);
        toe[i] = r.toe_change;
        gw_state_free(&state);
        gw_corner_close(ws);
    }
    check_abs(toe[1] / GW_DEG, toe[0] / GW_DEG, 1e-9, "toe");
}

static void spring_seat_off_the_joint_line_is_named_with_its_distance(void **unused)
{
    (void)unused;
    fixture f;
    fixture_double_wishbone(&f);
    f.fit[3].law.c[0] = f.fit[3].law.c[1] = f.fit[3].law.c[2] = 0.0; /* the inner bush becomes a ball joint */
    gw_vec3 line = gw_sub(f.joints[4].at, f.joints[3].at), side = gw_cross(line, gw_v3(0, 0, 1));
    f.corner.spring.at = gw_axpy(f.joints[3].at, 0.6, line);
    f.corner.spring.at = gw_axpy(f.corner.spring.at, 0.012 / gw_norm(side), side);
    gw_corner_ws *ws = must_open(&f);
    assert_int_equal(gw_corner_warnings(ws), 1);
    check_contains(gw_corner_warning(ws, 0), "spring seat on lateral_link lies 12.0 mm off the line");
    gw_corner_close(ws);
}

static void spring_seat_on_the_joint_line_is_silent(void **unused)
{
    (void)unused;
    fixture f;
    fixture_double_wishbone(&f);
    f.fit[3].law.c[0] = f.fit[3].law.c[1] = f.fit[3].law.c[2] = 0.0;
    f.corner.spring.at = gw_axpy(f.joints[3].at, 0.6, gw_sub(f.joints[4].at, f.joints[3].at));
    gw_corner_ws *ws = must_open(&f);
    assert_int_equal(gw_corner_warnings(ws), 0);
    gw_corner_close(ws);
}

static void load_that_tears_the_corner_apart_is_refused(void **unused)
{
    (void)unused;
    fixture f;
    gw_error err = { 0 };
    gw_state state;
    fixture_double_wishbone(&f);
    gw_corner_ws *ws = must_open(&f);
    assert_int_equal(gw_state_alloc(&f.corner, &state, &err), GW_OK);
    double before = state.spring_force;
    gw_corner_load load = { { -4e8, 0, 6e3 }, { 0, 0, 0 }, { 0, 0, 0 }, 0.0 };
    assert_int_equal(gw_corner_solve(ws, &load, GW_AT_TRAVEL, &state, &err), GW_E_NUMERIC);
    check_contains(err.msg, "front corner");
    check_abs(state.spring_force, before, 0.0, "state untouched");
    load = (gw_corner_load){ { 0, 0, 4e3 }, { 0, 0, 0 }, { 0, 0, 0 }, 0.9 };
    assert_int_equal(gw_corner_solve(ws, &load, GW_AT_TRAVEL, &state, &err), GW_E_NUMERIC);
    gw_state_free(&state);
    gw_corner_close(ws);
}

/* -80 to +80 mm from design in one go, with braking on, must not need the load brought on in parts. */
static void large_travel_converges_quadratically(void **unused)
{
    (void)unused;
    fixture f;
    gw_error err = { 0 };
    gw_state state;
    fixture_double_wishbone(&f);
    gw_corner_ws *ws = must_open(&f);
    assert_int_equal(gw_state_alloc(&f.corner, &state, &err), GW_OK);
    for (int i = -8; i <= 8; i++) {
        gw_corner_load load = { { -4000, -1000, 5500 }, { 0, 0, 0 }, { 0, 0, 0 }, 0.01 * i };
        if (gw_corner_solve(ws, &load, GW_AT_TRAVEL, &state, &err) != GW_OK) fail_msg("%s", err.msg);
        assert_in_range(state.iterations, 1, 9);
        assert_true(state.residual <= 1e-9 * 5500);
        check_abs(state.load.travel, 0.01 * i, 0.0, "travel");
    }
    gw_state_free(&state);
    gw_corner_close(ws);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(double_wishbone_has_no_warnings),
        cmocka_unit_test(corner_without_a_tie_rod_is_a_mechanism_that_steers),
        cmocka_unit_test(wheel_that_only_its_travel_would_hold_is_a_mechanism),
        cmocka_unit_test(spring_that_cannot_carry_the_wheel_is_a_mechanism),
        cmocka_unit_test(missing_upper_arm_is_a_mechanism_in_camber),
        cmocka_unit_test(member_on_one_ball_joint_is_held_and_changes_nothing),
        cmocka_unit_test(spring_seat_off_the_joint_line_is_named_with_its_distance),
        cmocka_unit_test(spring_seat_on_the_joint_line_is_silent),
        cmocka_unit_test(load_that_tears_the_corner_apart_is_refused),
        cmocka_unit_test(large_travel_converges_quadratically),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
