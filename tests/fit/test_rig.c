/* SPDX-License-Identifier: MIT */
/* A dynamic test that was made of a known law gives that law back; too little of it is told. */
#include "giveway/rig.h"
#include "giveway/units.h"
#include "support/check.h"

#include <complex.h>
#include <gsl/gsl_errno.h>
#include <math.h>

static const double HZ[] = { 1, 3, 10, 30, 100, 200 };
static const gw_rig_law TRUE_LAW = { true, 612e3, 2.9, 1e-6, 0.23, 0.42, 0.13e-3, 0.61 };

/* The law written out once more, from its formula in the contract. */
static double complex law_by_hand(const gw_rig_law *l, double hz, double x)
{
    double complex p = cpow(2 * GW_PI * hz * l->zener_tau * (double complex)I, l->zener_alpha);
    double complex zener = 1 + l->zener_gain * p / (1 + p);
    return l->rate * zener * (1 + l->payne_gain / (1 + pow(x / l->payne_amplitude, 2 * l->payne_exponent)));
}

static int make(gw_rig_row *row, const double *amplitude, int n_amplitudes, double noise)
{
    int n = 0;
    for (int a = 0; a < n_amplitudes; a++)
        for (int f = 0; f < 6; f++) {
            double complex k = law_by_hand(&TRUE_LAW, HZ[f], amplitude[a]);
            double up = 1 + noise * sin(37.0 * n), turn = noise * cos(53.0 * n);
            row[n++] = (gw_rig_row){ HZ[f], amplitude[a], cabs(k) * up, carg(k) + turn };
        }
    return n;
}

static void the_law_that_made_the_rows_is_found(void **state)
{
    (void)state;
    static const double AMPLITUDES[] = { 0.02e-3, 0.06e-3, 0.2e-3, 0.6e-3, 1.5e-3 };
    gw_rig_row row[40];
    gw_rig rig;
    int n = make(row, AMPLITUDES, 5, 0);
    assert_int_equal(gw_rig_fit(row, n, &rig, NULL), GW_OK);
    assert_int_equal(rig.n_fitted, 6);
    check_rel(rig.law.rate, TRUE_LAW.rate, 1e-5, "rate");
    check_rel(rig.law.zener_gain, TRUE_LAW.zener_gain, 1e-5, "gain");
    check_rel(rig.law.zener_alpha, TRUE_LAW.zener_alpha, 1e-5, "alpha");
    check_rel(rig.law.payne_gain, TRUE_LAW.payne_gain, 1e-5, "Payne gain");
    check_rel(rig.law.payne_amplitude, TRUE_LAW.payne_amplitude, 1e-5, "Payne amplitude");
    check_rel(rig.law.payne_exponent, TRUE_LAW.payne_exponent, 1e-5, "Payne exponent");
    check_abs(rig.scatter, 0, 1e-6, "scatter");
}

static void three_amplitudes_hold_the_exponent_and_two_all_of_the_payne_effect(void **state)
{
    (void)state;
    static const double AMPLITUDES[] = { 0.05e-3, 0.2e-3, 1e-3, 0.054e-3 };
    gw_rig_row row[40];
    gw_rig rig;
    assert_int_equal(gw_rig_fit(row, make(row, AMPLITUDES, 3, 0), &rig, NULL), GW_OK);
    assert_int_equal(rig.n_fitted, 5);
    check_rel(rig.law.payne_exponent, 0.55, 0, "held");
    assert_true(isnan(rig.within[GW_RIG_PAYNE_EXPONENT]));
    assert_int_equal(gw_rig_fit(row, make(row, AMPLITUDES, 2, 0), &rig, NULL), GW_OK);
    assert_int_equal(rig.n_fitted, 3);
    check_abs(rig.law.payne_gain, 0, 0, "none");
    /* a fourth that is less than a tenth off the first is not a fourth */
    assert_int_equal(gw_rig_fit(row, make(row, AMPLITUDES, 4, 0), &rig, NULL), GW_OK);
    assert_int_equal(rig.n_amplitudes, 3);
}

/* Bounds hold: rows of a plain Zener element beyond alpha = 1 would ask for more. */
static void the_worst_row_is_named(void **state)
{
    (void)state;
    static const double AMPLITUDES[] = { 0.1e-3 };
    gw_rig_row row[40];
    gw_rig rig;
    int n = make(row, AMPLITUDES, 1, 1e-3);
    row[4].stiffness *= 1.3;
    assert_int_equal(gw_rig_fit(row, n, &rig, NULL), GW_OK);
    assert_int_equal(rig.worst, 4);
    assert_true(rig.worst_stiffness > 0.1 && rig.worst_stiffness < 0.3);
    assert_true(rig.scatter > 0.01);
    assert_true(rig.within[GW_RIG_RATE] > 0);
    double size, angle;
    gw_rig_stiffness(&rig.law, row[4].hz, row[4].amplitude, &size, &angle);
    check_rel(rig.worst_stiffness, row[4].stiffness / size - 1, 1e-12, "read over fitted");
    check_abs(rig.worst_loss, row[4].loss - angle, 1e-12, "read less fitted");
}

static void too_little_is_told(void **state)
{
    (void)state;
    static const double AMPLITUDES[] = { 0.1e-3 };
    gw_rig_row row[40];
    gw_rig rig;
    gw_error err = { 0 };
    make(row, AMPLITUDES, 1, 0);
    row[1].hz = 1.05;
    assert_int_equal(gw_rig_fit(row, 3, &rig, &err), GW_E_RANGE);
    check_contains(err.msg, "readings at 2 frequencies: a law over frequency needs three");
    assert_int_equal(gw_rig_fit(row, 1, &rig, &err), GW_E_RANGE);
    check_contains(err.msg, "readings at 1 frequency:");
    assert_int_equal(gw_rig_fit(row, 0, &rig, &err), GW_E_RANGE);
    assert_int_equal(gw_rig_fit(row, GW_RIG_MOST + 1, &rig, &err), GW_E_RANGE);
    check_contains(err.msg, "more than 20000 rows");
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_law_that_made_the_rows_is_found),
        cmocka_unit_test(three_amplitudes_hold_the_exponent_and_two_all_of_the_payne_effect),
        cmocka_unit_test(the_worst_row_is_named),
        cmocka_unit_test(too_little_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
