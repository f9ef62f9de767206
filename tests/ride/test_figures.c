/* SPDX-License-Identifier: MIT */
/* The integrals, against plain sums over very many frequencies, and what is made of them. */
#include "ride/corners.h"
#include "ride/model.h"
#include "support/check.h"

#include <gsl/gsl_errno.h>
#include <math.h>

enum { MAX_DOFS = 80, MAX_PATHS = 16 };

static void solve(test_corner *t, const gw_ride_options *options, gw_ride_result *r)
{
    gw_error err = { 0 };
    if (gw_ride_solve(&t->corner, t->fit, &t->ride, options, r, &err) != GW_OK) fail_msg("%s", err.msg);
}

typedef struct sums {
    double force, noise, comfort;
} sums;

/* Midpoint rule on `batches` x 8 equal steps in log f: no knowledge of where the modes are. */
static sums plain_sums(gw_ride_model *model, double low, double high, int batches)
{
    const gw_ride *s = model->settings;
    gw_lanes x[MAX_DOFS];
    double squares[MAX_PATHS * GW_LANES];
    sums out = { 0 };
    double step = log(high / low) / (batches * GW_LANES);
    for (int b = 0; b < batches; b++) {
        double hz[GW_LANES];
        for (int l = 0; l < GW_LANES; l++) hz[l] = low * exp(step * (b * GW_LANES + l + 0.5));
        gw_ride_respond_hz(model, hz, x);
        gw_ride_path_squares(model, x, NULL, squares);
        for (int l = 0; l < GW_LANES; l++) {
            double q = gw_road_contact_filter(s->contact_length, s->speed, hz[l]);
            double g = gw_road_spectrum(s->roughness, s->speed, hz[l]) * q * q * hz[l] * step, f = 0;
            double w4 = pow(2 * GW_PI * hz[l], 4), a = gw_weight_a(hz[l]);
            for (int p = 0; p < model->n_paths; p++) f += squares[p * GW_LANES + l];
            out.force += g * f;
            out.noise += g * f * a * a;
            out.comfort += g * w4 *
                           (pow(gw_weight_wk(hz[l]) * cabs(gw_lanes_get(&x[model->chassis_z], l)), 2) +
                            pow(gw_weight_wd(hz[l]) * cabs(gw_lanes_get(&x[model->chassis_x], l)), 2));
        }
    }
    return out;
}

static void check_integrals(test_corner *t, int batches)
{
    gw_ride_result r = { 0 };
    gw_arena arena = { 0 };
    gw_ride_model model;
    solve(t, NULL, &r);
    assert_int_equal(gw_ride_model_open(&model, &t->corner, t->fit, &t->ride, &arena, NULL), GW_OK);
    check_rel(r.comfort, sqrt(plain_sums(&model, 0.5, 80, batches).comfort), 1e-5, "comfort");
    check_rel(r.harshness[0], sqrt(plain_sums(&model, 20, 200, batches).force), 1e-5, "harshness");
    check_rel(r.noise[0], sqrt(plain_sums(&model, 40, 315, batches).noise), 1e-5, "road noise");
    const gw_ride_draw nominal = model.draw;
    for (int i = 0; i < GW_RIDE_DRAWS; i++) {
        double u[GW_UNKNOWNS];
        gw_draw_levels(i, u);
        gw_ride_draw draw = gw_draw_at(u);
        gw_ride_model_set(&model, &draw);
        check_rel(r.harshness[1 + i], sqrt(plain_sums(&model, 20, 200, batches).force), 1e-4, "harshness");
        check_rel(r.noise[1 + i], sqrt(plain_sums(&model, 40, 315, batches).noise), 1e-4, "road noise");
    }
    gw_ride_model_set(&model, &nominal);
    for (int b = 0; b < GW_BANDS; b++) {
        double low = gw_band_low(b + GW_BAND_FIRST), high = gw_band_high(b + GW_BAND_FIRST);
        check_rel(r.band[b], sqrt(plain_sums(&model, low, high, batches / 8).force), 1e-5, "third octave");
    }
    gw_arena_free(&arena);
    gw_ride_result_free(&r);
}

static void integrals_are_right_with_rubber(void **state)
{
    (void)state;
    test_corner t;
    double_wishbone(&t, rubber_rates());
    check_integrals(&t, 800);
}

static test_rates bearing_rates(double loss)
{
    return (test_rates){ 60e6, 80e6, loss };
}

static void integrals_are_right_with_a_loss_of_three_in_a_thousand(void **state)
{
    (void)state;
    test_corner t;
    double_wishbone(&t, bearing_rates(0.003));
    for (int j = 0; j < t.corner.n_joints; j++) t.fit[j].law.dynamic.loss = 0.003;
    t.ride.bracket_loss = 0.003;
    t.corner.wheel.tyre_damping = 0.0;
    t.corner.damper.rate = 100.0;
    check_integrals(&t, 8000);
}

static void integrals_are_right_at_walking_pace(void **state)
{
    (void)state;
    test_corner t;
    double_wishbone(&t, rubber_rates());
    t.ride.speed = 3.0; /* the contact filter goes up and down every 25 Hz */
    check_integrals(&t, 2000);
}

static void integrals_are_right_with_laws_that_depend_on_frequency(void **state)
{
    (void)state;
    test_corner t;
    double_wishbone(&t, rubber_rates());
    for (int j = 0; j < t.corner.n_joints; j++)
        t.fit[j].law.dynamic =
            (gw_dynamic_law){ .ratio = 1, .zener_gain = 0.9, .zener_tau = 3e-4, .zener_alpha = 0.4 };
    check_integrals(&t, 800);
}

static void harshness_is_the_sum_of_its_bands_and_of_its_paths(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result r = { 0 };
    double_wishbone(&t, rubber_rates());
    solve(&t, NULL, &r);
    double share = 0, square = 0;
    assert_int_equal(r.n_paths, 7);
    for (int p = 0; p < r.n_paths; p++) {
        share += r.paths[p].share;
        square += r.paths[p].force * r.paths[p].force;
    }
    check_abs(share, 1.0, 1e-12, "shares");
    check_rel(sqrt(square), r.harshness[0], 1e-12, "paths");
    assert_int_equal(r.paths[5].kind, GW_PATH_SPRING);
    assert_int_equal(r.paths[6].kind, GW_PATH_DAMPER);
    assert_string_equal(r.paths[1].name, "lower_rear");
    /* Bands 25 to 160 Hz (22.4 to 178 Hz) lie inside 20 to 200 Hz, bands 20 and 200 partly. */
    double inside = 0;
    for (int n = 14; n <= 22; n++) inside += pow(r.band[n - GW_BAND_FIRST], 2);
    double outside = inside + pow(r.band[13 - GW_BAND_FIRST], 2) + pow(r.band[23 - GW_BAND_FIRST], 2);
    assert_true(inside < square && square < outside);
    gw_ride_result_free(&r);
}

static void curves_give_the_transfer_functions(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result r = { 0 };
    gw_arena arena = { 0 };
    gw_ride_model model;
    double_wishbone(&t, rubber_rates());
    solve(&t, NULL, &r);
    assert_int_equal(gw_ride_model_open(&model, &t.corner, t.fit, &t.ride, &arena, NULL), GW_OK);
    assert_true(r.curve.n > 100);
    for (int i = 0; i < r.curve.n; i += 13) {
        double hz[GW_LANES], total = 0;
        gw_lanes x[MAX_DOFS];
        for (int l = 0; l < GW_LANES; l++) hz[l] = r.curve.hz[i];
        gw_ride_respond_hz(&model, hz, x);
        for (int p = 0; p < r.n_paths; p++) total += pow(r.curve.path[p * r.curve.n + i], 2);
        check_rel(r.curve.force[i], sqrt(total), 1e-12, "all paths together");
        check_rel(r.curve.chassis_z[i], cabs(gw_lanes_get(&x[model.chassis_z], 0)), 1e-9, "heave");
        check_rel(r.curve.chassis_x[i], cabs(gw_lanes_get(&x[model.chassis_x], 0)), 1e-9, "fore-aft");
    }
    gw_arena_free(&arena);
    gw_ride_result_free(&r);
}

static void decibels_compare_like_with_like(void **state)
{
    (void)state;
    gw_ride_result base = { .harshness = { 10 }, .noise = { 1 } };
    gw_ride_result kit = { .harshness = { 20 }, .noise = { 10 } };
    gw_ride_difference d;
    for (int b = 0; b < GW_BANDS; b++) {
        base.band[b] = 1;
        kit.band[b] = b == 3 ? 0.5 : 1;
    }
    for (int i = 1; i < GW_RIDE_STATES; i++) {
        base.harshness[i] = base.noise[i] = i;
        kit.harshness[i] = i % 2 ? i : 4 * i; /* 0 and 12.0412 dB: mean and deviation 6.0206 */
        kit.noise[i] = 5 * i;
    }
    gw_ride_compare(&kit, &base, &d);
    check_abs(d.harshness, 6.0206, 1e-4, "as given");
    check_abs(d.harshness_low, 6.0206 - 1.645 * 6.0206, 1e-4, "mean less 1.645 deviations");
    check_abs(d.harshness_high, 6.0206 + 1.645 * 6.0206, 1e-4, "mean and 1.645 deviations");
    check_abs(d.noise, 20.0, 1e-12, "noise");
    check_abs(d.noise_low, 13.9794, 1e-4, "noise, all draws alike");
    check_abs(d.noise_high, 20.0, 1e-12, "noise, widened to the nominal figure");
    check_abs(d.band[3], -6.0206, 1e-4, "band");
    gw_ride_compare(&base, &base, &d);
    check_abs(d.harshness_high - d.harshness_low, 0.0, 0.0, "the baseline beside itself");
}

static void a_sharp_mode_that_decides_is_named(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result r = { 0 };
    double_wishbone(&t, bearing_rates(0.001));
    for (int j = 0; j < t.corner.n_joints; j++) t.fit[j].law.dynamic.loss = 0.001;
    t.ride.bracket_loss = 0.001;
    t.corner.wheel.tyre_slip_stiffness = 0.0;
    solve(&t, NULL, &r);
    bool named = false;
    for (int i = 0; i < r.n_warnings; i++)
        named = named || (strstr(r.warnings[i], "damping and carries") && strstr(r.warnings[i], "harshness"));
    assert_true(named);
    gw_ride_result_free(&r);
    double_wishbone(&t, rubber_rates());
    solve(&t, NULL, &r);
    for (int i = 0; i < r.n_warnings; i++) assert_null(strstr(r.warnings[i], "damping and carries"));
    gw_ride_result_free(&r);
}

/* Springs in series: a support five times as stiff as the bush leaves 5/6 of it. */
static void isolation_follows_the_series_rule(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result r = { 0 };
    double_wishbone(&t, rubber_rates());
    for (int j = 0; j < t.corner.n_joints; j++) t.fit[j].law.dynamic.loss = 0;
    t.joints[LOWER_FRONT].bracket = 5.0 * 5e6;
    t.joints[LOWER_REAR].bracket = 4.9 * 2.0 * 0.35e6;
    t.fit[UPPER_FRONT].law.dynamic.ratio = 1.25;
    solve(&t, NULL, &r);
    assert_int_equal(r.n_isolation, 5);
    check_rel(r.isolation[0].ratio, 5.0, 1e-12, "lower front");
    check_rel(r.isolation[0].effective, 0.8333, 1e-4, "series rule");
    assert_false(r.isolation[0].weak);
    check_rel(r.isolation[1].ratio, 4.9, 1e-12, "lower rear");
    assert_true(r.isolation[1].weak);
    int lines = 0;
    for (int i = 0; i < r.n_warnings; i++)
        lines += strstr(r.warnings[i], "brackets are less than five times") != NULL;
    assert_int_equal(lines, 1);
    check_rel(r.isolation[2].bush, 1.25 * 3e6, 1e-12, "dynamic rate");
    check_rel(r.isolation[2].bracket, 25e6, 1e-12, "default bracket");
    gw_ride_result_free(&r);
    t.ride.brackets_rigid = true;
    solve(&t, NULL, &r);
    assert_int_equal(r.n_isolation, 2);
    gw_ride_result_free(&r);
}

/*
 * The bush counts as it is in the middle of the harshness band, sqrt(20 x 200) = 63.2 Hz. A relaxing law with
 * alpha = 1 that has its middle there, gain 2: |1 + 2 i/(1 + i)| = |2 + i| = sqrt 5 (hand calculation).
 */
static void isolation_takes_the_bush_in_the_middle_of_the_harshness_band(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result r = { 0 };
    double_wishbone(&t, rubber_rates());
    gw_dynamic_law *law = &t.fit[UPPER_FRONT].law.dynamic;
    *law = (gw_dynamic_law){ .ratio = 1.0, .zener_gain = 2.0, .zener_alpha = 1.0 };
    law->zener_tau = 1.0 / (2.0 * GW_PI * sqrt(20.0 * 200.0));
    solve(&t, NULL, &r);
    check_rel(r.isolation[2].bush, sqrt(5.0) * 3e6, 1e-3, "dynamic rate at 63 Hz");
    gw_ride_result_free(&r);
}

/* The model is linear: what it cannot show, it says. */
static void play_is_said_to_be_left_out(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result r = { 0 };
    int lines = 0;
    double_wishbone(&t, rubber_rates());
    solve(&t, NULL, &r);
    double tight = r.harshness[0];
    for (int i = 0; i < r.n_warnings; i++) assert_null(strstr(r.warnings[i], "play"));
    gw_ride_result_free(&r);
    t.fit[LOWER_REAR].law.clearance = 5e-5;
    solve(&t, NULL, &r);
    for (int i = 0; i < r.n_warnings; i++)
        lines += strstr(r.warnings[i], "joints have play (lower_rear)") != NULL;
    assert_int_equal(lines, 1);
    check_abs(r.harshness[0], tight, 0.0, "taken as tight");
    gw_ride_result_free(&r);
}

/* The standard's range ends near 2.83 cycle/m: 56.6 Hz at 20 m/s. */
static void extrapolation_of_the_road_is_said(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result r = { 0 };
    const gw_ride_options bare = { .no_range = true, .no_curve = true, .no_obstacle = true };
    double_wishbone(&t, rubber_rates());
    solve(&t, &bare, &r);
    check_abs(r.road_limit_hz, 56.6, 1e-9, "limit");
    check_contains(r.road_note, "extrapolated");
    check_contains(gw_ride_caution(), "estimate");
    assert_int_equal(r.curve.n, 0);
    assert_int_equal(r.obstacle.n, 0);
    gw_ride_result_free(&r);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(integrals_are_right_with_rubber),
        cmocka_unit_test(integrals_are_right_with_a_loss_of_three_in_a_thousand),
        cmocka_unit_test(integrals_are_right_at_walking_pace),
        cmocka_unit_test(integrals_are_right_with_laws_that_depend_on_frequency),
        cmocka_unit_test(harshness_is_the_sum_of_its_bands_and_of_its_paths),
        cmocka_unit_test(curves_give_the_transfer_functions),
        cmocka_unit_test(decibels_compare_like_with_like),
        cmocka_unit_test(a_sharp_mode_that_decides_is_named),
        cmocka_unit_test(isolation_follows_the_series_rule),
        cmocka_unit_test(isolation_takes_the_bush_in_the_middle_of_the_harshness_band),
        cmocka_unit_test(play_is_said_to_be_left_out),
        cmocka_unit_test(extrapolation_of_the_road_is_said),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
