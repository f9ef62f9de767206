/* SPDX-License-Identifier: MIT */
/*
 * What an engineer expects, as tests with their reasons, on an invented corner whose rubber fore-aft
 * mode lies at 12 to 25 Hz (common practice).
 */
#include "ride/corners.h"
#include "support/check.h"

#include <gsl/gsl_errno.h>
#include <math.h>

static void solve(test_corner *t, gw_ride_result *r)
{
    const gw_ride_options options = { .no_curve = true, .no_obstacle = true };
    gw_error err = { 0 };
    if (gw_ride_solve(&t->corner, t->fit, &t->ride, &options, r, &err) != GW_OK) fail_msg("%s", err.msg);
}

static gw_ride_result with_rates(double fore_aft, double lateral, double loss)
{
    test_corner t;
    gw_ride_result r = { 0 };
    tension_corner(&t, (test_rates){ fore_aft, lateral, loss });
    solve(&t, &r);
    return r;
}

/* Less give and less loss on the way: more gets through, whatever the body's own stiffness is. */
static void polyurethane_is_harsher_than_rubber_and_bearings_are_harsher_again(void **state)
{
    (void)state;
    gw_ride_result rubber = with_rates(0.35e6, 5e6, 0.12), poly = with_rates(1.6e6, 12e6, 0.1);
    gw_ride_result bearing = with_rates(60e6, 80e6, 0.02);
    gw_ride_difference a, b, c;
    gw_ride_compare(&poly, &rubber, &a);
    gw_ride_compare(&bearing, &rubber, &b);
    gw_ride_compare(&bearing, &poly, &c);
    assert_true(a.harshness_low > 0.0);
    assert_true(b.harshness_low > 0.0);
    assert_true(c.harshness_low > 0.0);
    assert_true(b.noise_low > 0.0);
    assert_true(c.noise_low > 0.0);
    gw_ride_result_free(&rubber);
    gw_ride_result_free(&poly);
    gw_ride_result_free(&bearing);
}

/* The wheel swings on its fore-aft bush: frequency goes with the root of its rate. */
static void a_stiffer_fore_aft_bush_raises_mode_and_harshness(void **state)
{
    (void)state;
    double last_hz = 0, last_force = 0;
    for (double rate = 0.35e6; rate < 3e6; rate *= 1.6) {
        gw_ride_result r = with_rates(rate, 5e6, 0.12);
        assert_true(r.modes[r.wheel_fore_aft].hz > last_hz);
        assert_true(r.harshness[0] > last_force);
        last_hz = r.modes[r.wheel_fore_aft].hz;
        last_force = r.harshness[0];
        gw_ride_result_free(&r);
    }
}

/* Bumps push along the car and up, hardly sideways: bearings in the lateral link are not in their way. */
static void a_stiff_lateral_link_matters_far_less_than_stiff_fore_aft_bushes(void **state)
{
    (void)state;
    gw_ride_result base = with_rates(0.35e6, 5e6, 0.12), lateral = with_rates(0.35e6, 80e6, 0.12);
    gw_ride_result fore_aft = with_rates(60e6, 5e6, 0.12);
    gw_ride_difference a, b;
    gw_ride_compare(&lateral, &base, &a);
    gw_ride_compare(&fore_aft, &base, &b);
    assert_true(fabs(a.harshness) < 0.5 * b.harshness);
    assert_true(a.noise < 0.5 * b.noise);
    assert_true(a.harshness_high < b.harshness_low);
    gw_ride_result_free(&base);
    gw_ride_result_free(&lateral);
    gw_ride_result_free(&fore_aft);
}

/* A damper is a stiff rod to fast small movements; its mount decides what it passes. Comfort is decided
 * below. */
static void check_soft_mount(test_corner *t, int first_band)
{
    gw_ride_result rigid = { 0 }, soft = { 0 };
    t->corner.damper.top_mount = 0.0;
    solve(t, &rigid);
    t->corner.damper.top_mount = 300e3;
    solve(t, &soft);
    for (int i = first_band - GW_BAND_FIRST; i < GW_BANDS; i++)
        if (!(soft.band[i] < rigid.band[i]))
            fail_msg("band %g Hz: %g N soft, %g N rigid", gw_band_nominal(GW_BAND_FIRST + i), soft.band[i],
                     rigid.band[i]);
    assert_true(fabs(soft.comfort / rigid.comfort - 1.0) < 0.06);
    gw_ride_result_free(&rigid);
    gw_ride_result_free(&soft);
}

static void a_soft_damper_mount_quietens_above_30_hz_and_leaves_comfort(void **state)
{
    (void)state;
    test_corner t;
    quarter_car(&t, 300, 40, 20000, 1500, 200000);
    check_soft_mount(&t, 15);
}

/* With a whole corner the modes up to 40 Hz, which the damper then damps less, are at first in the way. */
static void a_soft_damper_mount_quietens_a_whole_corner_above_its_wheel_modes(void **state)
{
    (void)state;
    test_corner t;
    tension_corner(&t, rubber_rates());
    check_soft_mount(&t, 17);
}

/* Every path and the shares: what is stiffened carries more. */
static void a_stiffer_bush_carries_a_larger_share(void **state)
{
    (void)state;
    gw_ride_result soft = with_rates(0.35e6, 5e6, 0.12), stiff = with_rates(1.4e6, 5e6, 0.12);
    assert_string_equal(soft.paths[1].name, "tension_inner");
    assert_true(stiff.paths[1].force > soft.paths[1].force);
    assert_true(stiff.paths[1].share > soft.paths[1].share);
    gw_ride_result_free(&soft);
    gw_ride_result_free(&stiff);
}

/* More loss, less resonance. */
static void more_loss_lowers_harshness_on_stiff_bushes(void **state)
{
    (void)state;
    gw_ride_result low = with_rates(1.6e6, 12e6, 0.03), high = with_rates(1.6e6, 12e6, 0.2);
    assert_true(high.harshness[0] < low.harshness[0]);
    gw_ride_result_free(&low);
    gw_ride_result_free(&high);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(polyurethane_is_harsher_than_rubber_and_bearings_are_harsher_again),
        cmocka_unit_test(a_stiffer_fore_aft_bush_raises_mode_and_harshness),
        cmocka_unit_test(a_stiff_lateral_link_matters_far_less_than_stiff_fore_aft_bushes),
        cmocka_unit_test(a_soft_damper_mount_quietens_above_30_hz_and_leaves_comfort),
        cmocka_unit_test(a_soft_damper_mount_quietens_a_whole_corner_above_its_wheel_modes),
        cmocka_unit_test(a_stiffer_bush_carries_a_larger_share),
        cmocka_unit_test(more_loss_lowers_harshness_on_stiff_bushes),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
