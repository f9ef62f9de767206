/* SPDX-License-Identifier: MIT */
/* The tyre's belt: what it is at rest, where it swings, and that nothing is lost on the way. */
#include "ride/belt.h"
#include "ride/corners.h"
#include "ride/lanes.h"
#include "support/check.h"

#include <gsl/gsl_errno.h>
#include <math.h>

/* Published data of a 9.3 kg tyre 205/60 R15 (H. B. Pacejka, Tyre and Vehicle Dynamics): belt 7.0 kg, 77 Hz
 * on its sidewalls. */
static gw_wheel pacejka(void)
{
    return (gw_wheel){ .tyre_vertical = 210e3, .tyre_mass = 9.3, .belt_hz = 77.0, .belt_loss = 0.1 };
}

static void belt_is_three_quarters_of_the_tyre(void **unused)
{
    (void)unused;
    check_from("H. B. Pacejka, Tyre and Vehicle Dynamics: 205/60 R15");
    const gw_wheel w = pacejka();
    gw_belt b = gw_belt_of(&w, 1.0);
    check_abs(b.mass, 7.0, 0.05, "belt of a 9.3 kg tyre [kg]");
    check_rel(sqrt(b.sidewall / b.mass) / (2.0 * GW_PI), 77.0, 1e-12, "on its sidewalls [Hz]");
}

/* Standing still, sidewall and what is below in series are the tyre's own rate. */
static void at_rest_the_tyre_is_as_stiff_as_given(void **unused)
{
    (void)unused;
    gw_wheel w = pacejka();
    w.belt_loss = 0.0;
    gw_belt b = gw_belt_of(&w, 1.0);
    check_rel(creal(gw_belt_stiffness(&b, b.below, 0.0)), 210e3, 1e-12, "tyre rate");
    check_rel(creal(b.below * gw_belt_passes(&b, b.below, 0.0)), 210e3, 1e-12, "push of the road");
}

/* Far above its frequency the belt stands still: the wheel feels the sidewall, and its own mass less the
 * belt's. */
static void far_above_its_frequency_the_belt_stands_still(void **unused)
{
    (void)unused;
    gw_wheel w = pacejka();
    w.belt_loss = 0.0;
    gw_belt b = gw_belt_of(&w, 1.0);
    double complex p = gw_complex(0.0, 2.0 * GW_PI * 77000.0);
    double complex k = gw_belt_stiffness(&b, b.below, p) + p * p * b.mass;
    check_rel(creal(k), b.sidewall, 1e-4, "sidewall");
    assert_true(cabs(gw_belt_passes(&b, b.below, p)) < 1e-5);
}

/* Wheel held, the belt swings on sidewall and ground: sqrt((k_w + k_below)/m)/2 pi, where the push is
 * 1/loss-fold. */
static void held_wheel_lets_the_belt_swing_between_sidewall_and_road(void **unused)
{
    (void)unused;
    const gw_wheel w = pacejka();
    gw_belt b = gw_belt_of(&w, 1.0);
    double hz = sqrt((b.sidewall + b.below) / b.mass) / (2.0 * GW_PI);
    double complex p = gw_complex(0.0, 2.0 * GW_PI * hz);
    check_rel(cabs(gw_belt_passes(&b, b.below, p)), sqrt(1.0 + 0.01) / 0.1, 1e-9, "at resonance");
    check_rel(creal(gw_belt_passes(&b, b.below, p)), 1.0, 1e-9, "in phase part");
}

/* Without a mass of the tyre nothing changes; with it the heard figure does, the comfort hardly. */
static void belt_is_heard_and_hardly_felt(void **unused)
{
    (void)unused;
    test_corner t;
    gw_ride_result without = { 0 }, with = { 0 };
    gw_error err = { 0 };
    double_wishbone(&t, rubber_rates());
    if (gw_ride_solve(&t.corner, t.fit, &t.ride, NULL, &without, &err) != GW_OK) fail_msg("%s", err.msg);
    t.corner.wheel.tyre_mass = 9.5;
    t.corner.wheel.belt_hz = 77.0;
    t.corner.wheel.belt_loss = 0.1;
    if (gw_ride_solve(&t.corner, t.fit, &t.ride, NULL, &with, &err) != GW_OK) fail_msg("%s", err.msg);
    check_rel(with.comfort, without.comfort, 0.03, "comfort");
    assert_true(with.noise[0] > 1.2 * without.noise[0]);
    check_rel(with.modes[with.wheel_vertical].hz, without.modes[without.wheel_vertical].hz, 1e-12,
              "modes are told without it");
    gw_ride_result_free(&with);
    gw_ride_result_free(&without);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(belt_is_three_quarters_of_the_tyre),
        cmocka_unit_test(at_rest_the_tyre_is_as_stiff_as_given),
        cmocka_unit_test(far_above_its_frequency_the_belt_stands_still),
        cmocka_unit_test(held_wheel_lets_the_belt_swing_between_sidewall_and_road),
        cmocka_unit_test(belt_is_heard_and_hardly_felt),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests(tests, NULL, NULL);
}
