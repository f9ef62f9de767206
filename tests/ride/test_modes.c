/* SPDX-License-Identifier: MIT */
/* Natural frequencies and damping, against characteristic equations written out by hand. */
#include "bush/dynamic.h"
#include "ride/corners.h"
#include "ride/lanes.h"
#include "support/check.h"

#include <gsl/gsl_errno.h>
#include <math.h>

static void solve(test_corner *t, gw_ride_result *r)
{
    const gw_ride_options bare = { .no_range = true, .no_curve = true, .no_obstacle = true };
    gw_error err = { 0 };
    if (gw_ride_solve(&t->corner, t->fit, &t->ride, &bare, r, &err) != GW_OK) fail_msg("%s", err.msg);
}

/* A wheel that is guided stiffly but for a spring k (1 + i eta) fore and aft. */
static void fore_aft_wheel(test_corner *t, double k, double eta)
{
    quarter_car(t, 300, 40, 20000, 1500, 200000);
    t->fit[0].law.k[0] = k;
    t->fit[0].law.dynamic.loss = eta;
    /* e1 of the guide is x: its axis is vertical. */
}

static double complex pole_of(const gw_ride_mode *mode)
{
    double size = 2 * GW_PI * mode->damped_hz / sqrt(1 - mode->zeta * mode->zeta);
    return gw_complex(-mode->zeta * size, 2 * GW_PI * mode->damped_hz);
}

/* p^2 = -k (1 + i eta) / m: damping ratio sin(atan(eta) / 2), undamped frequency sqrt(k / m). */
static void structural_damping_of_one_spring(void **state)
{
    (void)state;
    for (double eta = 0.003; eta < 0.5; eta *= 3) {
        test_corner t;
        gw_ride_result r = { 0 };
        fore_aft_wheel(&t, 400e3, eta);
        solve(&t, &r);
        const gw_ride_mode *mode = &r.modes[r.wheel_fore_aft];
        check_rel(mode->hz, sqrt(400e3 * 340 / (300.0 * 40)) / (2 * GW_PI), 1e-7, "undamped");
        check_rel(mode->zeta, sin(0.5 * atan(eta)), 1e-7, "damping ratio");
        check_rel(mode->wheel_fore_aft, 300.0 / 340.0, 1e-6, "share of the wheel");
        assert_true(mode->tracked);
        gw_ride_result_free(&r);
    }
}

/* With slip, relaxation and spin: (mw p^2 + K + Z)(mc p^2 + K) = K^2. */
static void rolling_wheel_damps_the_fore_aft_mode(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result r = { 0 };
    fore_aft_wheel(&t, 400e3, 0.1);
    gw_wheel *w = &t.corner.wheel;
    w->tyre_slip_stiffness = 80e3;
    w->tyre_relaxation = 0.3;
    w->spin_inertia = 1.1;
    solve(&t, &r);
    const gw_ride_mode *mode = &r.modes[r.wheel_fore_aft];
    check_rel(mode->hz, sqrt(400e3 * 340 / (300.0 * 40)) / (2 * GW_PI), 1e-7, "undamped: without the slip");
    double complex p = pole_of(mode), k = 400e3 * gw_complex(1, 0.1);
    double complex z = 1 / (0.3 / 80e3 + 20.0 / (80e3 * p) + 0.09 / (1.1 * p * p));
    double complex left = (40 * p * p + k + z) * (300 * p * p + k);
    check_abs(cabs(left / (k * k) - 1), 0, 1e-6, "characteristic equation");
    assert_true(mode->zeta > 0.5 * 0.1);
    gw_ride_result_free(&r);
}

/* f = sqrt(k Re factor(f) / m) / 2 pi, at the mode's own frequency. */
static void rubber_mode_uses_the_stiffness_at_its_own_frequency(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result r = { 0 };
    gw_dynamic_law law = { .ratio = 1.2, .zener_gain = 0.9, .zener_tau = 1e-3, .zener_alpha = 0.5 };
    fore_aft_wheel(&t, 6e6, 0);
    t.fit[0].law.dynamic = law;
    solve(&t, &r);
    const gw_ride_mode *mode = &r.modes[r.wheel_fore_aft];
    double complex factor = gw_dynamic_factor(&law, mode->hz, 0);
    check_rel(mode->hz, sqrt(6e6 * creal(factor) * 340 / (300.0 * 40)) / (2 * GW_PI), 1e-7, "own frequency");
    assert_true(creal(factor) > 1.05 * creal(gw_dynamic_factor(&law, 15.0, 0)));
    /* Loss of the law near that frequency; a law with slope moves the pole a little more. */
    check_rel(mode->zeta, sin(0.5 * carg(factor)), 0.05, "damping ratio");
    gw_ride_result_free(&r);
}

/* k of bush and bracket in series, each with its own loss. */
static void bracket_lowers_the_mode_and_adds_its_loss(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result r = { 0 };
    fore_aft_wheel(&t, 2e6, 0.02);
    t.joints[0].bracket = 3e6;
    t.fit[0].law.k[1] = 1e9;
    t.ride.bracket_loss = 0.2;
    solve(&t, &r);
    const gw_ride_mode *mode = &r.modes[r.wheel_fore_aft];
    double complex k = 1 / (1 / (2e6 * gw_complex(1, 0.02)) + 1 / (3e6 * gw_complex(1, 0.2)));
    check_rel(mode->hz, sqrt(creal(k) * 340 / (300.0 * 40)) / (2 * GW_PI), 1e-7, "undamped");
    check_rel(mode->zeta, sin(0.5 * carg(k)), 1e-7, "damping");
    gw_ride_result_free(&r);
}

/* A damper so hard that it locks: body and wheel move as one on the tyre, sqrt(kt / (ms + mu)). */
static void a_locked_damper_leaves_one_mode_on_the_tyre(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result r = { 0 };
    quarter_car(&t, 300, 40, 20000, 60000, 200000);
    t.corner.wheel.tyre_damping = 100;
    solve(&t, &r);
    int oscillate = 0;
    for (int i = 0; i < 2; i++) {
        if (!r.modes[i].tracked) {
            check_abs(r.modes[i].zeta, 1.0, 0.0, "overdamped");
            continue;
        }
        oscillate++;
        check_rel(r.modes[i].damped_hz, sqrt(200000 / 340.0) / (2 * GW_PI), 0.01, "locked mode");
    }
    assert_int_equal(oscillate, 1);
    gw_ride_result_free(&r);
}

/* A tuned absorber of a tenth of the mass (Den Hartog) splits the movement in two. */
static void two_modes_that_share_a_movement_are_named(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result r = { 0 };
    fore_aft_wheel(&t, 400e3, 0.1);
    int twin = add_member(&t, "twin", 4.0);
    gw_bush_law law = test_law(45.3e3, 1e10, 1e10, 1e10, 1e10, 0.1);
    add_test_joint(&t, "twin", GW_UPRIGHT, twin, t.corner.wheel.centre, gw_v3(0, 0, 1), law);
    solve(&t, &r);
    bool named = false;
    for (int i = 0; i < r.n_warnings; i++)
        named = named || strstr(r.warnings[i], "two modes share the wheel fore-aft");
    assert_true(named);
    gw_ride_result_free(&r);
}

/* Without slip the whole corner floats fore and aft: that is no mode. */
static void rigid_motion_is_not_listed(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result r = { 0 };
    double_wishbone(&t, rubber_rates());
    solve(&t, &r);
    for (int i = 0; i < r.n_modes; i++) {
        assert_true(r.modes[i].hz > 0.5);
        assert_true(i == 0 || r.modes[i].hz >= r.modes[i - 1].hz);
    }
    assert_true(r.body == 0);
    assert_true(r.modes[r.wheel_vertical].hz > 9 && r.modes[r.wheel_vertical].hz < 14);
    assert_true(r.modes[r.wheel_fore_aft].hz > 12 && r.modes[r.wheel_fore_aft].hz < 25);
    gw_ride_result_free(&r);
}

/* Two integrations of the same, each right to 1e-6 (test_figures.c). */
static void figures_are_the_same_where_modes_are_not_asked_for(void **state)
{
    (void)state;
    for (double eta = 0.003; eta < 0.5; eta *= 3) {
        test_corner t;
        gw_ride_result told = { 0 }, bare = { 0 };
        const gw_ride_options without = {
            .no_range = true, .no_curve = true, .no_obstacle = true, .no_modes = true
        };
        fore_aft_wheel(&t, 400e3, eta);
        solve(&t, &told);
        assert_int_equal(gw_ride_solve(&t.corner, t.fit, &t.ride, &without, &bare, NULL), GW_OK);
        assert_true(told.n_modes > 0);
        assert_int_equal(bare.n_modes, 0);
        check_rel(bare.harshness[0], told.harshness[0], 2e-6, "harshness");
        check_rel(bare.noise[0], told.noise[0], 2e-6, "road noise");
        check_rel(bare.comfort, told.comfort, 2e-6, "comfort");
        gw_ride_result_free(&told);
        gw_ride_result_free(&bare);
    }
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(structural_damping_of_one_spring),
        cmocka_unit_test(rolling_wheel_damps_the_fore_aft_mode),
        cmocka_unit_test(rubber_mode_uses_the_stiffness_at_its_own_frequency),
        cmocka_unit_test(bracket_lowers_the_mode_and_adds_its_loss),
        cmocka_unit_test(a_locked_damper_leaves_one_mode_on_the_tyre),
        cmocka_unit_test(two_modes_that_share_a_movement_are_named),
        cmocka_unit_test(rigid_motion_is_not_listed),
        cmocka_unit_test(figures_are_the_same_where_modes_are_not_asked_for),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
