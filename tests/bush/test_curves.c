/* SPDX-License-Identifier: MIT */
/* Laws with measured ways: force and tangent derive from the energy, whatever was measured. */
#include "bush/dynamic.h"
#include "support/check.h"

#include <math.h>

static const double X[] = { -4e-3, -1.5e-3, -0.6e-3, 0, 0.5e-3, 1.1e-3, 3e-3 };
static const double Y[] = { -5200, -900, -310, 0, 290, 700, 2900 };
static const double TX[] = { -0.3, -0.1, 0, 0.08, 0.25 }, TY[] = { -45, -9, 0, 6, 31 };
static const gw_curve FORCE = { 7, 3, X, Y }, MOMENT = { 5, 2, TX, TY };

static gw_bush bush_with(gw_curve_way one, gw_curve_way two, const gw_curve *curve)
{
    gw_bush b = { .name = "m", .type = GW_BUSH_MEASURED, .dynamic_ratio = 1.3, .loss_factor = 0.1 };
    b.rates = (gw_given_rates){ { 4e5, 6e5 }, 1.2e5, { 55, 70 }, 33 };
    b.curve[one] = b.curve[two] = curve;
    return b;
}

static gw_bush_law law_with(gw_curve_way one, gw_curve_way two, const gw_curve *curve)
{
    gw_bush b = bush_with(one, two, curve);
    gw_bush_law law;
    gw_error err = { 0 };
    if (gw_bush_law_make(&b, GW_METHOD_SOLVED, &law, &err) != GW_OK) fail_msg("%s", err.msg);
    return law;
}

static void check_translation(const gw_bush_law *law)
{
    const double at[][3] = {
        { 0, 0, 0 }, { 0.4e-3, -0.9e-3, 0.3e-3 }, { -2.2e-3, 1.9e-3, -5e-3 }, { 6e-3, 1e-3, 2e-3 }
    };
    const double h = 1e-8;
    for (int p = 0; p < 4; p++) {
        double f[3], k[3][3], fa[3], fb[3], unused[3][3];
        gw_bush_force(law, at[p], f, k);
        for (int i = 0; i < 3; i++) {
            double a[3] = { at[p][0], at[p][1], at[p][2] }, b[3] = { at[p][0], at[p][1], at[p][2] };
            a[i] += h, b[i] -= h;
            check_abs((gw_bush_energy(law, a) - gw_bush_energy(law, b)) / (2 * h), f[i],
                      1e-4 + 1e-5 * fabs(f[i]), "dW/du");
            gw_bush_force(law, a, fa, unused);
            gw_bush_force(law, b, fb, unused);
            for (int j = 0; j < 3; j++) check_abs((fa[j] - fb[j]) / (2 * h), k[j][i], 40, "df/du");
        }
    }
}

static void check_rotation(const gw_bush_law *law)
{
    const double at[][3] = { { 0, 0, 0 }, { 0.05, -0.07, 0.11 }, { -0.2, 0.21, -0.28 }, { 0.4, 0.1, 0.5 } };
    const double h = 1e-6;
    for (int p = 0; p < 4; p++) {
        double m[3], c[3][3], ma[3], mb[3], unused[3][3];
        gw_bush_moment(law, at[p], m, c);
        for (int i = 0; i < 3; i++) {
            double a[3] = { at[p][0], at[p][1], at[p][2] }, b[3] = { at[p][0], at[p][1], at[p][2] };
            a[i] += h, b[i] -= h;
            double slope = (gw_bush_turning_energy(law, a) - gw_bush_turning_energy(law, b)) / (2 * h);
            check_abs(slope, m[i], 1e-7, "dW/dtheta");
            gw_bush_moment(law, a, ma, unused);
            gw_bush_moment(law, b, mb, unused);
            for (int j = 0; j < 3; j++) check_abs((ma[j] - mb[j]) / (2 * h), c[j][i], 2e-2, "dm/dtheta");
        }
    }
}

static void force_and_tangent_derive_from_the_energy(void **state)
{
    (void)state;
    static const gw_curve_way WAYS[][2] = { { GW_CURVE_RADIAL, GW_CURVE_RADIAL },
                                            { GW_CURVE_RADIAL_E1, GW_CURVE_RADIAL_E2 },
                                            { GW_CURVE_AXIAL, GW_CURVE_AXIAL },
                                            { GW_CURVE_RADIAL, GW_CURVE_AXIAL } };
    for (int i = 0; i < 4; i++) {
        gw_bush_law law = law_with(WAYS[i][0], WAYS[i][1], &FORCE),
                    fitted = gw_bush_law_on_bracket(&law, 3e6);
        assert_false(gw_bush_law_is_linear(&law));
        check_translation(&law);
        check_translation(&fitted);
    }
    for (int i = 0; i < 4; i++) {
        gw_bush_law law = law_with((gw_curve_way)(WAYS[i][0] + GW_CURVE_CONICAL),
                                   (gw_curve_way)(WAYS[i][1] + GW_CURVE_CONICAL), &MOMENT);
        assert_true(gw_bush_law_is_linear(&law));
        assert_true(gw_bush_turns_by_curves(&law));
        check_rotation(&law);
    }
}

/* W = (w(r) + w(-r))/2: at a radius that is a point of both sides the mean of both forces. */
static void round_a_bush_both_sides_count_alike(void **state)
{
    (void)state;
    static const double SX[] = { -2e-3, 0, 2e-3 }, SY[] = { -1000, 0, 3000 };
    static const gw_curve LOPSIDED = { 3, 1, SX, SY };
    gw_bush_law law = law_with(GW_CURVE_RADIAL, GW_CURVE_RADIAL, &LOPSIDED);
    const double u[3] = { 2e-3 * 0.6, -2e-3 * 0.8, 0 };
    double f[3], k[3][3];
    gw_bush_force(&law, u, f, k);
    check_rel(f[0], 2000 * 0.6, 1e-12, "along e1");
    check_rel(f[1], -2000 * 0.8, 1e-12, "along e2");
}

static void the_tangent_at_a_state_is_that_of_the_energy(void **state)
{
    (void)state;
    gw_bush_law law = law_with(GW_CURVE_RADIAL, GW_CURVE_AXIAL, &FORCE);
    const double u[3] = { 0.7e-3, -1.3e-3, 0.2e-3 }, theta[3] = { 0.1, 0.2, 0.3 };
    double f[3], k[3][3];
    gw_bush_force(&law, u, f, k);
    gw_bush_tangent t = gw_bush_tangent_at(&law, u, theta);
    double cos_t = cos(t.turn[0]), sin_t = sin(t.turn[0]);
    check_rel(cos_t * cos_t * t.rate[0] + sin_t * sin_t * t.rate[1], k[0][0], 1e-12, "k11");
    check_rel(cos_t * sin_t * (t.rate[0] - t.rate[1]), k[0][1], 1e-12, "k12");
    check_rel(sin_t * sin_t * t.rate[0] + cos_t * cos_t * t.rate[1], k[1][1], 1e-12, "k22");
    check_rel(t.rate[2], k[2][2], 1e-15, "k33");
    check_rel(t.rate[4], 70, 0, "a rate that was given");
    double row[6][6] = { { 0 } }, wrench[6] = { 1, 2, 3, 4, 5, 6 };
    for (int i = 0; i < 6; i++) row[i][i] = 1;
    gw_bush_turn_rows(&t, row);
    gw_bush_turn_back(&t, wrench);
    check_rel(wrench[0], row[0][0] * 1 + row[1][0] * 2, 1e-14, "turned back by the same axes");
    check_rel(wrench[1], row[0][1] * 1 + row[1][1] * 2, 1e-14, "turned back by the same axes");
    check_rel(wrench[3], 4, 0, "rotation untouched");
}

static void the_bush_alone_carries_the_force_of_the_whole(void **state)
{
    (void)state;
    static const gw_curve_way WAYS[][2] = { { GW_CURVE_RADIAL, GW_CURVE_AXIAL },
                                            { GW_CURVE_RADIAL_E1, GW_CURVE_RADIAL_E2 } };
    for (int i = 0; i < 2; i++) {
        gw_bush_law law = law_with(WAYS[i][0], WAYS[i][1], &FORCE);
        const double f[3] = { 700, -1900, 350 };
        double u[3], back[3], k[3][3];
        gw_bush_deflection_under(&law, f, u);
        gw_bush_force(&law, u, back, k);
        for (int j = 0; j < 3; j++) check_rel(back[j], f[j], 1e-9, "force");
    }
}

static void how_far_beyond_is_told(void **state)
{
    (void)state;
    gw_bush_law law = law_with(GW_CURVE_RADIAL, GW_CURVE_RADIAL, &FORCE);
    double by[2];
    gw_bush_beyond(&law, (double[3]){ 3.5e-3, 0, 9e-3 }, (double[3]){ 1, 1, 1 }, by);
    check_rel(by[0], 0.5e-3, 1e-12, "beyond the shorter side");
    check_abs(by[1], 0, 0, "rates have no end");
    law = law_with(GW_CURVE_CONICAL_E1, GW_CURVE_CONICAL_E2, &MOMENT);
    gw_bush_beyond(&law, (double[3]){ 1, 1, 1 }, (double[3]){ -0.33, 0.2, 9 }, by);
    check_rel(by[1], 0.03, 1e-12, "beyond about e1");
}

static void a_dynamic_test_puts_its_factor_on_all_rates(void **state)
{
    (void)state;
    gw_bush b = bush_with(GW_CURVE_RADIAL_E1, GW_CURVE_RADIAL_E2, &FORCE);
    b.rig = (gw_rig_law){ true, 9e5, 2.0, 1e-6, 0.2, 0.4, 0.2e-3, 0.6 };
    b.stiffness_factor = 1.25;
    gw_bush_law law;
    assert_int_equal(gw_bush_law_make(&b, GW_METHOD_SOLVED, &law, NULL), GW_OK);
    double slow = law.k[0] / 1.25;
    check_rel(gw_bush_rate_across(&law), 1.25 * slow, 1e-15, "mean of e1 and e2");
    check_rel(law.dynamic.ratio, 9e5 / slow, 1e-14, "factor on the slow test's rate");
    check_rel(cabs(gw_dynamic_factor(&law.dynamic, 1e-9, 1.0)), 9e5 / slow * 1.0, 0.05, "slow and large");
    b.rig.given = false;
    assert_int_equal(gw_bush_law_make(&b, GW_METHOD_SOLVED, &law, NULL), GW_OK);
    check_rel(law.dynamic.ratio, 1.3, 0, "left out: the ratio given");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(force_and_tangent_derive_from_the_energy),
        cmocka_unit_test(round_a_bush_both_sides_count_alike),
        cmocka_unit_test(the_tangent_at_a_state_is_that_of_the_energy),
        cmocka_unit_test(the_bush_alone_carries_the_force_of_the_whole),
        cmocka_unit_test(how_far_beyond_is_told),
        cmocka_unit_test(a_dynamic_test_puts_its_factor_on_all_rates),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
