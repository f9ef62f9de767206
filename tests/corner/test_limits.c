/* SPDX-License-Identifier: MIT */
/* Where a corner ends: balances that do not stand, rates too far apart, movements out of reach. */
#include "support/check.h"
#include "support/corner_fixture.h"

#include "corner/workspace.h"
#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <string.h>

static gw_status try_open(fixture *f, gw_error *err)
{
    gw_corner_ws *ws;
    *err = (gw_error){ 0 };
    gw_status status = gw_corner_open(&f->corner, f->fit, &ws, err);
    assert_int_equal(ws != NULL, status == GW_OK);
    gw_corner_close(ws);
    return status;
}

/* The wheel hangs from one joint at its centre, free to slide up and down, and the road pushes from below. */
static void hanging_wheel(fixture *f, double conical)
{
    fixture_start(f);
    fixture_joint(f, "pivot", GW_CHASSIS, GW_UPRIGHT, gw_v3(0, 750, 310), gw_v3(0, 0, 1), 1e5, 0, conical,
                  60);
    fixture_spring(f, GW_UPRIGHT, gw_v3(0, 750, 310), gw_v3(0, 750, 610), 40);
}

/*
 * A rigid bar on a torsion spring buckles at P = c / length. Source: S. P. Timoshenko, J. M. Gere, "Theory of
 * Elastic Stability", 2nd edition (1961), the introductory model of a rigid bar. Balance there is at any
 * load.
 */
static void a_wheel_on_a_soft_pivot_stands_up_to_the_buckling_load(void **unused)
{
    (void)unused;
    fixture f;
    gw_error err;
    const double conical = 21.3;
    hanging_wheel(&f, conical);
    double buckling = conical * GW_NM_PER_DEG / f.corner.wheel.loaded_radius;
    f.corner.wheel.static_load = 0.998 * buckling;
    assert_int_equal(try_open(&f, &err), GW_OK);
    f.corner.wheel.static_load = 1.002 * buckling;
    assert_int_equal(try_open(&f, &err), GW_E_NUMERIC);
    check_contains(err.msg, "front corner gives way under this load");
    check_contains(err.msg, "; first to give way: the upright turns about x (camber)");
}

/* The same under a load that is brought on later; the side stays where it is by symmetry. */
static void the_buckling_load_counts_for_loads_too(void **unused)
{
    (void)unused;
    fixture f;
    gw_state state;
    gw_corner_ws *ws;
    gw_error err = { 0 };
    hanging_wheel(&f, 21.3);
    double buckling = 21.3 * GW_NM_PER_DEG / f.corner.wheel.loaded_radius;
    f.corner.wheel.static_load = 0.5 * buckling;
    assert_int_equal(gw_corner_open(&f.corner, f.fit, &ws, &err), GW_OK);
    assert_int_equal(gw_state_alloc(&f.corner, &state, &err), GW_OK);
    gw_corner_load load = { .patch_force = { 0, 0, 0.998 * buckling } };
    assert_int_equal(gw_corner_solve(ws, &load, GW_AT_TRAVEL, &state, &err), GW_OK);
    load.patch_force.z = 1.002 * buckling;
    assert_int_equal(gw_corner_solve(ws, &load, GW_AT_TRAVEL, &state, &err), GW_E_NUMERIC);
    check_contains(err.msg, "gives way");
    check_contains(err.msg, "; first to give way: the upright turns about x (camber)");
    gw_state_free(&state);
    gw_corner_close(ws);
}

/* Camber and toe change of the double wishbone under braking and cornering at once [rad]. */
static void angles(fixture *f, double *camber, double *toe)
{
    gw_corner_ws *ws;
    gw_state state;
    gw_error err = { 0 };
    gw_corner_result result = { .joints = f->results };
    const gw_corner_load load = { .patch_force = { -2150, -1730, 5210 }, .travel = 0.0173 };
    if (gw_corner_open(&f->corner, f->fit, &ws, &err) != GW_OK) fail_msg("%s", err.msg);
    assert_int_equal(gw_state_alloc(&f->corner, &state, &err), GW_OK);
    if (gw_corner_solve(ws, &load, GW_AT_TRAVEL, &state, &err) != GW_OK) fail_msg("%s", err.msg);
    gw_corner_report(ws, &state, &result);
    *camber = result.camber_change;
    *toe = result.toe_change;
    gw_state_free(&state);
    gw_corner_close(ws);
}

static void stiffen_ball_joints(fixture *f, double rate)
{
    for (int j = 0; j < f->corner.n_joints; j++)
        for (int i = 0; i < 3; i++)
            if (f->fit[j].law.k[i] >= 3e7) f->fit[j].law.k[i] = rate;
}

/* A joint of 1e12 N/mm is rigid: what a joint of rate k still gives is of the order of force / k, so the
 * answers run towards one as k grows, and rounding must not spoil them at the end. */
static void joints_of_any_stiffness_run_towards_the_rigid_answer(void **unused)
{
    (void)unused;
    fixture f;
    double camber[5], toe[5];
    const double rate[5] = { 1e9, 1e10, 1e11, 1e13, 1e15 };
    for (int i = 0; i < 5; i++) {
        fixture_double_wishbone(&f);
        stiffen_ball_joints(&f, rate[i]);
        angles(&f, &camber[i], &toe[i]);
    }
    for (int i = 0; i < 4; i++) {
        double give = 10.0 * 5000.0 / rate[i] / 0.3; /* ten joints, 5 kN, an arm of 0.3 m */
        check_abs(camber[i], camber[4], give + 1e-9, "camber");
        check_abs(toe[i], toe[4], give + 1e-9, "toe");
    }
}

static double floor_of(fixture *f)
{
    gw_corner_ws *ws = NULL;
    gw_error err;
    if (gw_corner_open(&f->corner, f->fit, &ws, &err) != GW_OK) fail_msg("%s", err.msg);
    double newtons = gw_rounding_floor(ws);
    gw_corner_close(ws);
    return newtons;
}

/* A double keeps 52 bits: a place near 1 m is known to 2^-52 m, and thirty-two of these roundings at the
 * stiffest rate are 2^-47 of it. Worked out by hand; a rate of rotation counts as one of translation does. */
static void no_balance_is_asked_for_that_rounding_does_not_allow(void **unused)
{
    (void)unused;
    fixture f;
    fixture_double_wishbone(&f);
    stiffen_ball_joints(&f, 1e13);
    check_rel(floor_of(&f), 0.0710542735760, 1e-9, "1e13 N/m");
    fixture_double_wishbone(&f);
    f.fit[0].law.c[1] = 1e11;
    check_rel(floor_of(&f), 7.10542735760e-4, 1e-9, "1e11 N m/rad");
    fixture_double_wishbone(&f);
    stiffen_ball_joints(&f, 1e13);
    const gw_corner_load load = { .patch_force = gw_v3(-3000, -2500, 5000), .travel = 0.02 };
    gw_corner_ws *ws = NULL;
    gw_state state;
    gw_error err;
    if (gw_corner_open(&f.corner, f.fit, &ws, &err) != GW_OK) fail_msg("%s", err.msg);
    assert_int_equal(gw_state_alloc(&f.corner, &state, &err), GW_OK);
    assert_int_equal(gw_corner_solve(ws, &load, GW_AT_TRAVEL, &state, &err), GW_OK);
    assert_true(state.residual <= 0.0710542735760 + 1e-10 * 6400.0);
    gw_state_free(&state);
    gw_corner_close(ws);
}

static void rates_too_far_apart_are_refused_with_the_joint(void **unused)
{
    (void)unused;
    fixture f;
    gw_error err;
    hanging_wheel(&f, 60);
    f.fit[0].law.k[0] = f.fit[0].law.k[1] = 1e15;
    f.fit[0].law.c[2] = 1e-3 * GW_NM_PER_DEG;
    assert_int_equal(try_open(&f, &err), GW_E_NUMERIC);
    check_contains(err.msg, "its rates are too far apart");
    check_contains(err.msg, "pivot, the stiffest joint");
}

/* A trailing arm of 0.4 m: its wheel cannot be 0.5 m higher. Before, Newton's step landed on an arm turned
 * over. */
static void travel_out_of_reach_is_refused_and_the_state_is_left_alone(void **unused)
{
    (void)unused;
    fixture f;
    gw_corner_ws *ws;
    gw_state state;
    gw_error err = { 0 };
    fixture_start(&f);
    fixture_joint(&f, "arm_in", GW_CHASSIS, GW_UPRIGHT, gw_v3(400, 450, 310), gw_v3(0, 1, 0), 1500, 400, 8,
                  1.5);
    fixture_joint(&f, "arm_out", GW_CHASSIS, GW_UPRIGHT, gw_v3(400, 750, 310), gw_v3(0, 1, 0), 1500, 400, 8,
                  1.5);
    fixture_spring(&f, GW_UPRIGHT, gw_v3(0, 650, 310), gw_v3(0, 650, 610), 40);
    assert_int_equal(gw_corner_open(&f.corner, f.fit, &ws, &err), GW_OK);
    assert_int_equal(gw_state_alloc(&f.corner, &state, &err), GW_OK);
    const gw_state before = state;
    for (double travel = 0.5; travel <= 1.0; travel += 0.1) {
        const gw_corner_load load = { .patch_force = { 0, 0, 4000 }, .travel = travel };
        assert_int_equal(gw_corner_solve(ws, &load, GW_AT_TRAVEL, &state, &err), GW_E_NUMERIC);
        assert_memory_equal(&state, &before, sizeof state);
    }
    gw_state_free(&state);
    gw_corner_close(ws);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_wheel_on_a_soft_pivot_stands_up_to_the_buckling_load),
        cmocka_unit_test(the_buckling_load_counts_for_loads_too),
        cmocka_unit_test(joints_of_any_stiffness_run_towards_the_rigid_answer),
        cmocka_unit_test(no_balance_is_asked_for_that_rounding_does_not_allow),
        cmocka_unit_test(rates_too_far_apart_are_refused_with_the_joint),
        cmocka_unit_test(travel_out_of_reach_is_refused_and_the_state_is_left_alone),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
