/* SPDX-License-Identifier: MIT */
/* Every value that ride needs is asked for by its name in the case. */
#include "ride/corners.h"
#include "support/check.h"

#include <gsl/gsl_errno.h>
#include <math.h>

static void refused(test_corner *t, gw_status status, const char *part)
{
    gw_ride_result r = { .comfort = -2.385 };
    gw_error err = { 0 };
    assert_int_equal(gw_ride_solve(&t->corner, t->fit, &t->ride, NULL, &r, &err), status);
    check_contains(err.msg, part);
    check_abs(r.comfort, -2.385, 0.0, "untouched output");
    double_wishbone(t, rubber_rates());
}

static void missing_wheel_data_are_named(void **state)
{
    (void)state;
    test_corner t;
    gw_wheel *w = &t.corner.wheel;
    double_wishbone(&t, rubber_rates());
    w->mass = 0;
    refused(&t, GW_E_RANGE, "corners.front.wheel.mass_kg");
    w->tilt_inertia = 0;
    refused(&t, GW_E_RANGE, "tilt_inertia_kgm2");
    w->pitch_inertia = -1;
    refused(&t, GW_E_RANGE, "pitch_inertia_kgm2");
    w->tyre_vertical = (double)NAN;
    refused(&t, GW_E_RANGE, "tyre_vertical_N_per_mm");
    w->static_load = 0;
    refused(&t, GW_E_RANGE, "static_load_N");
    w->loaded_radius = 0;
    refused(&t, GW_E_RANGE, "loaded_radius_mm");
    w->static_load = 45 * GW_G0;
    refused(&t, GW_E_RANGE, "weigh more");
    t.corner.spring.rate = 0;
    refused(&t, GW_E_RANGE, "spring.rate_N_per_mm");
    t.corner.spring.to = t.corner.spring.at;
    refused(&t, GW_E_RANGE, "spring: length");
    t.corner.damper.to = t.corner.damper.at;
    refused(&t, GW_E_RANGE, "damper: length");
}

static void bad_settings_are_named(void **state)
{
    (void)state;
    test_corner t;
    double_wishbone(&t, rubber_rates());
    t.ride.roughness = 0;
    refused(&t, GW_E_RANGE, "ride.roughness_m3");
    t.ride.speed = 0;
    refused(&t, GW_E_RANGE, "ride.speed_km_h");
    t.ride.contact_length = -0.1;
    refused(&t, GW_E_RANGE, "ride.contact_length_mm");
    t.ride.default_bracket = 0;
    refused(&t, GW_E_RANGE, "ride.default_bracket_N_per_mm");
    t.ride.bracket_loss = -0.1;
    refused(&t, GW_E_RANGE, "ride.bracket_loss_factor");
}

static void no_loss_at_all_in_a_mode_is_an_error_and_not_a_number(void **state)
{
    (void)state;
    test_corner t;
    quarter_car(&t, 300, 40, 20000, 1500, 200000);
    t.fit[0].law.k[0] = 5e6; /* undamped fore-aft mode at 60 Hz */
    refused(&t, GW_E_NUMERIC, "no damping");
}

static void a_corner_without_damper_or_slip_is_allowed(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result r = { 0 };
    gw_error err = { 0 };
    double_wishbone(&t, rubber_rates());
    t.corner.damper.present = false;
    t.corner.wheel.tyre_slip_stiffness = 0;
    if (gw_ride_solve(&t.corner, t.fit, &t.ride, NULL, &r, &err) != GW_OK) fail_msg("%s", err.msg);
    assert_int_equal(r.n_paths, 6);
    assert_true(isfinite(r.comfort) && r.comfort > 0);
    gw_ride_result_free(&r);
    gw_ride_result_free(&r);
}

/* The result owns itself: solving twice gives the same bytes. */
static void the_same_input_gives_the_same_numbers(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result a = { 0 }, b = { 0 };
    double_wishbone(&t, rubber_rates());
    assert_int_equal(gw_ride_solve(&t.corner, t.fit, &t.ride, NULL, &a, NULL), GW_OK);
    assert_int_equal(gw_ride_solve(&t.corner, t.fit, &t.ride, NULL, &b, NULL), GW_OK);
    assert_memory_equal(a.harshness, b.harshness, sizeof a.harshness);
    assert_memory_equal(a.band, b.band, sizeof a.band);
    gw_ride_result_free(&a);
    gw_ride_result_free(&b);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(missing_wheel_data_are_named),
        cmocka_unit_test(bad_settings_are_named),
        cmocka_unit_test(no_loss_at_all_in_a_mode_is_an_error_and_not_a_number),
        cmocka_unit_test(a_corner_without_damper_or_slip_is_allowed),
        cmocka_unit_test(the_same_input_gives_the_same_numbers),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
