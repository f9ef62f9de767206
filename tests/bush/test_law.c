/* SPDX-License-Identifier: MIT */
/* The static law of a bush against its own energy: nothing here needs a published number. */
#include "giveway/bush_law.h"
#include "support/check.h"

#include <math.h>

/** Rates of a handling bush [N/m]. */
static gw_bush_law plain(void)
{
    return (gw_bush_law){ .k = { 8.1e6, 5.3e6, 0.9e6 } };
}

static gw_bush_law with_everything(void)
{
    gw_bush_law law = plain();

    law.stop = (gw_stop){ 1.1e-3, 21e6 };
    law.void_stop = (gw_stop){ 0.7e-3, 33e6 };
    law.blend = 0.2e-3;
    law.stiffening = 0.11e6;
    return law;
}

static gw_bush_law with_play(void)
{
    gw_bush_law law = plain();

    law.k[1] = law.k[0];
    law.clearance = 0.06e-3;
    law.blend = 0.02e-3;
    return law;
}

/** Sixth-order central difference of the energy along axis i, or of force component j. */
static double difference(const gw_bush_law *law, const double u[3], int i, int j)
{
    static const double weight[3] = { 0.75, -0.15, 1.0 / 60.0 };
    const double h = 2e-7;
    double sum = 0.0;

    for (int n = 1; n <= 3; n++)
        for (int sign = -1; sign <= 1; sign += 2) {
            double v[3] = { u[0], u[1], u[2] }, f[3], k[3][3];

            v[i] += sign * n * h;
            gw_bush_force(law, v, f, k);
            sum += sign * weight[n - 1] * (j < 0 ? gw_bush_energy(law, v) : f[j]) / h;
        }
    return sum;
}

static void check_derivatives(const gw_bush_law *law, const double u[3])
{
    double f[3], k[3][3], scale = law->k[0] + law->stop.rate + law->void_stop.rate;

    gw_bush_force(law, u, f, k);
    for (int i = 0; i < 3; i++) {
        check_abs(f[i], difference(law, u, i, -1), 2e-8 * scale * 1e-3 + 1e-7 * fabs(f[i]), "force");
        for (int j = 0; j < 3; j++) {
            check_abs(k[j][i], difference(law, u, i, j), 1e-6 * scale, "tangent");
            check_abs(k[i][j], k[j][i], 0.0, "symmetry");
        }
    }
}

/** Directions all round, radii from the centre to beyond every corner but not on one. */
static void check_all_round(const gw_bush_law *law, double step)
{
    for (int turn = 0; turn < 12; turn++)
        for (int n = 1; n <= 40; n++) {
            double r = step * (n + 0.37), angle = 0.1 + 0.5236 * turn;
            double u[3] = { r * cos(angle), r * sin(angle), 0.3e-3 * (turn - 6) };

            check_derivatives(law, u);
        }
}

static void force_and_tangent_are_derivatives_of_the_energy(void **state)
{
    gw_bush_law law = with_everything();

    (void)state;
    check_all_round(&law, 0.08e-3);
    law = plain();
    check_all_round(&law, 0.1e-3);
}

static void force_and_tangent_inside_and_outside_a_play_derive_from_the_energy(void **state)
{
    gw_bush_law law = with_play();

    (void)state;
    check_all_round(&law, 4.1e-6);
}

static void a_plain_bush_is_rate_times_deflection(void **state)
{
    gw_bush_law law = plain();
    double u[3] = { 1e-3, -2e-3, 3e-3 }, f[3], k[3][3];

    (void)state;
    gw_bush_force(&law, u, f, k);
    for (int i = 0; i < 3; i++) {
        check_abs(f[i], law.k[i] * u[i], 0.0, "force");
        for (int j = 0; j < 3; j++) check_abs(k[i][j], i == j ? law.k[i] : 0.0, 0.0, "tangent");
    }
    assert_true(gw_bush_law_is_linear(&law));
    law.stop.rate = 1.0;
    assert_false(gw_bush_law_is_linear(&law));
    law = with_play();
    assert_false(gw_bush_law_is_linear(&law));
}

static void the_stop_adds_exactly_half_rate_times_overtravel_squared(void **state)
{
    gw_bush_law law = plain();

    (void)state;
    law.stop = (gw_stop){ 1.1e-3, 21e6 };
    for (int n = 0; n < 50; n++) {
        double r = 0.05e-3 * n, u[3] = { r * cos(0.9), r * sin(0.9), 0.2e-3 };
        double past = r - 1.1e-3;
        double want = 0.5 * (8.1e6 * u[0] * u[0] + 5.3e6 * u[1] * u[1] + 0.9e6 * u[2] * u[2]);

        if (past > 0.0) want += 0.5 * 21e6 * past * past;
        check_rel(gw_bush_energy(&law, u), want, 1e-14, "energy");
    }
}

static void a_stop_without_a_gap_is_a_second_spring_even_at_the_centre(void **state)
{
    gw_bush_law law = plain();
    double u[3] = { 0.0, 0.0, 0.0 }, f[3], k[3][3];

    (void)state;
    law.stop = (gw_stop){ 0.0, 2e6 };
    gw_bush_force(&law, u, f, k);
    check_abs(k[0][0], 10.1e6, 1e-6, "k11");
    check_abs(k[1][1], 7.3e6, 1e-6, "k22");
    u[0] = 1e-3;
    gw_bush_force(&law, u, f, k);
    check_rel(f[0], 10.1e3, 1e-14, "f1");
}

static void stop_play_and_stiffening_know_no_direction_in_the_bush_plane(void **state)
{
    gw_bush_law laws[2] = { with_everything(), with_play() };

    (void)state;
    for (int l = 0; l < 2; l++) {
        double u0[3] = { 1.6e-3, 0.0, 0.0 }, reference;

        laws[l].k[1] = laws[l].k[0];
        laws[l].void_stop.rate = 0.0;
        reference = gw_bush_energy(&laws[l], u0);
        for (int n = 1; n < 36; n++) {
            double u[3] = { 1.6e-3 * cos(n * 0.1745), 1.6e-3 * sin(n * 0.1745), 0.0 };

            check_rel(gw_bush_energy(&laws[l], u), reference, 1e-13, "energy all round");
        }
    }
}

static void play_carries_next_to_nothing_and_the_tight_rate_beyond(void **state)
{
    gw_bush_law law = with_play();
    double u[3] = { 0.0, 0.04e-3, 0.0 }, f[3], k[3][3];

    (void)state;
    gw_bush_force(&law, u, f, k);
    check_rel(f[1], 1e-3 * 8.1e6 * 0.04e-3, 1e-12, "centring inside the play");
    u[1] = 0.36e-3;
    gw_bush_force(&law, u, f, k);
    check_rel(f[1], 8.1e6 * (0.999 * 0.30e-3 + 0.001 * 0.36e-3), 1e-12, "force beyond the play");
    check_rel(k[1][1], 8.1e6, 1e-12, "tangent beyond the play");
}

static void a_vanishing_play_becomes_the_tight_bearing(void **state)
{
    gw_bush_law tight = with_play(), law;
    double u[3] = { 0.03e-3, 0.04e-3, 0.01e-3 }, want;

    (void)state;
    tight.clearance = 0.0;
    want = gw_bush_energy(&tight, u);
    for (double play = 1e-6; play > 1e-12; play *= 0.1) {
        law = with_play();
        law.clearance = play;
        check_rel(gw_bush_energy(&law, u), want, 2.1 * play / 0.05e-3, "energy");
    }
}

static void a_closing_void_is_free_before_and_exact_after_its_blend(void **state)
{
    gw_bush_law law = plain();
    double u[3] = { 0.0, 0.0, 0.0 }, f[3], k[3][3];

    (void)state;
    law.void_stop = (gw_stop){ 1e-3, 30e6 };
    law.blend = 0.2e-3;
    u[0] = -0.9e-3;
    gw_bush_force(&law, u, f, k);
    check_rel(f[0], -8.1e6 * 0.9e-3, 1e-14, "before");
    u[0] = -1.5e-3;
    gw_bush_force(&law, u, f, k);
    check_rel(f[0], -8.1e6 * 1.5e-3 - 30e6 * 0.5e-3, 1e-12, "after");
    u[0] = 0.0;
    u[1] = 3e-3;
    gw_bush_force(&law, u, f, k);
    check_rel(f[1], 5.3e6 * 3e-3, 1e-14, "across the voids");
}

static void stiffening_starts_at_the_linear_rate_and_grows_with_the_square_of_travel(void **state)
{
    gw_bush_law law = plain();
    double u[3] = { 0.0, 0.0, 0.0 }, f[3], k[3][3];

    (void)state;
    law.stiffening = 0.05e6;
    gw_bush_force(&law, u, f, k);
    check_abs(k[0][0], law.k[0], 0.0, "tangent at zero");
    check_abs(k[1][1], law.k[1], 0.0, "tangent at zero");
    u[1] = 2e-3;
    gw_bush_force(&law, u, f, k);
    check_rel(f[1], law.k[1] * 2e-3 * (1.0 + 0.05e6 * 4e-6), 1e-14, "force");
    assert_false(gw_bush_law_is_linear(&law));
}

static void a_bracket_adds_its_compliance_and_leaves_zero_rates_alone(void **state)
{
    gw_bush_law law = plain(), out;

    (void)state;
    law.k[2] = 0.0;
    law.stop = (gw_stop){ 1e-3, 5e6 };
    out = gw_bush_law_on_bracket(&law, 25e6);
    check_rel(1.0 / out.k[0], 1.0 / 8.1e6 + 1.0 / 25e6, 1e-14, "series");
    check_abs(out.k[2], 0.0, 0.0, "zero rate");
    check_abs(out.stop.rate, 5e6, 0.0, "stop");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(force_and_tangent_are_derivatives_of_the_energy),
        cmocka_unit_test(force_and_tangent_inside_and_outside_a_play_derive_from_the_energy),
        cmocka_unit_test(a_plain_bush_is_rate_times_deflection),
        cmocka_unit_test(the_stop_adds_exactly_half_rate_times_overtravel_squared),
        cmocka_unit_test(a_stop_without_a_gap_is_a_second_spring_even_at_the_centre),
        cmocka_unit_test(stop_play_and_stiffening_know_no_direction_in_the_bush_plane),
        cmocka_unit_test(play_carries_next_to_nothing_and_the_tight_rate_beyond),
        cmocka_unit_test(a_vanishing_play_becomes_the_tight_bearing),
        cmocka_unit_test(a_closing_void_is_free_before_and_exact_after_its_blend),
        cmocka_unit_test(stiffening_starts_at_the_linear_rate_and_grows_with_the_square_of_travel),
        cmocka_unit_test(a_bracket_adds_its_compliance_and_leaves_zero_rates_alone),
    };
    return cmocka_run_group_tests_name("law", tests, NULL, NULL);
}
