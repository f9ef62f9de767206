/* SPDX-License-Identifier: MIT */
/*
 * Complex stiffness. The laws are from memory (Bagley and Torvik 1986, Kraus 1984); the tabled values were
 * worked out from them independently of this program, with round inputs. Tolerance: half a unit of
 * the last printed digit.
 */
#include "bush/dynamic.h"
#include "giveway/units.h"
#include "support/check.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static void check_complex(double complex got, double re, double im, double tol, const char *what)
{
    char part[64];

    snprintf(part, sizeof part, "%s, real part", what);
    check_abs(creal(got), re, tol, part);
    snprintf(part, sizeof part, "%s, imaginary part", what);
    check_abs(cimag(got), im, tol, part);
}

static void zener_k0_1000_k1_500_c1_2_matches_the_table(void **state)
{
    /* K = k0 + k1 j w tau/(1 + j w tau), tau = c1/k1 = 4 ms, N/mm. */
    static const struct {
        double hz, re, im, size, tan_delta;
    } rows[] = {
        { 1, 1000.3156, 12.5584, 1000.3945, 0.012554 },    { 10, 1029.7063, 118.1977, 1036.4679, 0.114788 },
        { 20, 1100.8500, 200.6347, 1118.9839, 0.182254 },  { 39.78874, 1250.0000, 250.0000, 1274.7549, 0.2 },
        { 100, 1431.6618, 171.7528, 1441.9273, 0.119967 }, { 200, 1480.9641, 95.6848, 1484.0520, 0.064610 },
    };

    (void)state;
    check_from("Zener's solid, worked out apart");
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        double complex k = 1000.0 * gw_zener_factor(0.5, 2.0 / 500.0, 1.0, rows[i].hz);

        check_about("%g Hz", rows[i].hz);
        check_complex(k, rows[i].re, rows[i].im, 0.5001e-4, "K [N/mm]");
        check_abs(cabs(k), rows[i].size, 0.5001e-4, "|K|");
        check_abs(cimag(k) / creal(k), rows[i].tan_delta, 0.5001e-6, "tan delta");
    }
}

static void zener_loss_is_greatest_where_the_formula_says(void **state)
{
    /* tan delta = k1/(2 sqrt(k0 (k0 + k1))) = 0.204124 at sqrt(k0/(k0+k1))/(2 pi tau) = 32.48737 Hz. */
    double best = 0.0, at = 0.0;

    (void)state;
    check_from("Zener's solid, greatest loss in closed form");
    for (double hz = 32.0; hz < 33.0; hz += 1e-4) {
        double complex k = gw_zener_factor(0.5, 0.004, 1.0, hz);

        if (cimag(k) / creal(k) > best) {
            best = cimag(k) / creal(k);
            at = hz;
        }
    }
    check_abs(best, 0.204124, 0.5e-6, "greatest tan delta");
    check_abs(at, 32.48737, 0.002,
              "its frequency [Hz]"); /* a flat top: found to the square root of rounding */
}

static void fractional_zener_matches_the_table(void **state)
{
    /* K = 1000 + 1000 x/(1+x), x = (j w 0.001)^0.5. */
    static const struct {
        double hz, re, im;
    } rows[] = { { 1, 1055.7350, 50.1169 },
                 { 10, 1169.3879, 125.0565 },
                 { 100, 1432.4048, 203.8685 },
                 { 1000, 1743.9573, 163.6903 } };

    (void)state;
    check_from("R. L. Bagley, P. J. Torvik, J. Rheol. 30 (1986) 133-155 (from memory), worked out apart");
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        check_about("fractional Zener, %g Hz", rows[i].hz);
        check_complex(1000.0 * gw_zener_factor(1.0, 1e-3, 0.5, rows[i].hz), rows[i].re, rows[i].im, 0.5001e-4,
                      "K [N/mm]");
    }
}

static void fractional_zener_with_a_short_time_is_the_fractional_kelvin_voigt(void **state)
{
    /* K = 1000 + 100 (j w)^0.3: the limit of tau to zero with gain tau^0.3 = 0.1 held. */
    static const struct {
        double hz, re, im;
    } rows[] = { { 1, 1154.6446, 78.7954 }, { 10, 1308.5566, 157.2174 }, { 100, 1615.6514, 313.6900 } };
    const double tau = 1e-30;

    (void)state;
    check_from("R. L. Bagley, P. J. Torvik, J. Rheol. 30 (1986) 133-155 (from memory), worked out apart");
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        check_about("fractional Kelvin-Voigt, %g Hz", rows[i].hz);
        check_complex(1000.0 * gw_zener_factor(0.1 / pow(tau, 0.3), tau, 0.3, rows[i].hz), rows[i].re,
                      rows[i].im, 0.6e-4, "K [N/mm]");
    }
}

static void kraus_matches_the_table(void **state)
{
    /* G0 6, Ginf 1.5, gc 0.01, m 0.6, Gm 0.6. */
    static const struct {
        double strain, storage, loss, tan_delta;
    } rows[] = {
        { 1e-4, 5.98216, 0.07541, 0.01261 }, { 1e-3, 5.73292, 0.28354, 0.04946 },
        { 5e-3, 4.63529, 0.55160, 0.11900 }, { 0.01, 3.75000, 0.60000, 0.16000 },
        { 0.05, 2.06972, 0.39903, 0.19280 }, { 0.1, 1.76708, 0.28354, 0.16045 },
        { 0.5, 1.54078, 0.11372, 0.07381 },
    };

    (void)state;
    check_from(
        "G. Kraus, J. Appl. Polym. Sci.: Appl. Polym. Symp. 39 (1984) 75-92 (from memory), worked out apart");
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        double complex g = 1.5 * gw_kraus_factor(3.0, 0.4, 0.6, rows[i].strain / 0.01);

        check_about("strain %g", rows[i].strain);
        check_complex(g, rows[i].storage, rows[i].loss, 0.5001e-5, "G");
        check_abs(cimag(g) / creal(g), rows[i].tan_delta, 0.5001e-5, "tan delta");
    }
}

/*
 * Kramers and Kronig: K'(w) = K'(0) + (2 w^2/pi) PV int K''(v)/(v (w^2 - v^2)) dv. With v = w e^s and the
 * halves s and -s paired the principal value becomes an ordinary integral.
 */
static double stiffness_from_loss(const gw_dynamic_law *law, double hz)
{
    const double step = 2e-3;
    double sum = 0.0;

    for (double s = 0.5 * step; s < 120.0; s += step) {
        double up = cimag(gw_dynamic_factor(law, hz * exp(s), 1e-4));
        double down = cimag(gw_dynamic_factor(law, hz * exp(-s), 1e-4));

        sum += step * (-down / expm1(-2.0 * s) - up / expm1(2.0 * s));
    }
    return 2.0 * sum / GW_PI;
}

static void stiffness_follows_from_loss_by_kramers_and_kronig(void **state)
{
    gw_dynamic_law law = { .ratio = 1.0,
                           .zener_gain = 2.4,
                           .zener_tau = 3e-5,
                           .zener_alpha = 0.31,
                           .payne_gain = 0.4,
                           .payne_amplitude = 1e-4,
                           .payne_exponent = 0.55 };

    (void)state;
    check_from("Kramers and Kronig's relation, integrated numerically");
    for (double hz = 1.0; hz < 600.0; hz *= 3.0) {
        double at_rest = 1.2; /* the amplitude factor at x = xc: 1 + 0.4/2 */

        check_about("%g Hz", hz);
        check_rel(at_rest + stiffness_from_loss(&law, hz), creal(gw_dynamic_factor(&law, hz, 1e-4)), 1e-5,
                  "stiffness factor");
    }
}

static void constant_laws_and_the_absence_of_any(void **state)
{
    gw_dynamic_law law = { .ratio = 1.35, .loss = 0.12 };

    (void)state;
    check_complex(gw_dynamic_factor(&law, 20.0, 1e-4), 1.35, 0.162, 1e-15, "constant");
    gw_stiffness_ratio parts = gw_dynamic_ratio(&law, 20.0, 1e-4);
    check_rel(parts.storage, 1.35, 1e-15, "its storage");
    check_rel(parts.loss, 0.162, 1e-15, "its loss");
    law = (gw_dynamic_law){ .ratio = 1.0 };
    check_complex(gw_dynamic_factor(&law, 20.0, 1e-4), 1.0, 0.0, 0.0, "none");
}

static void loss_and_stiffness_are_positive_everywhere(void **state)
{
    (void)state;
    for (double alpha = 0.05; alpha <= 1.0; alpha += 0.05)
        for (double hz = 1e-3; hz < 1e6; hz *= 10.0) {
            double complex k = gw_zener_factor(3.0, 1e-4, alpha, hz);

            assert_true(creal(k) >= 1.0 && creal(k) <= 4.0 && cimag(k) > 0.0);
        }
}

static gw_value value(double v)
{
    return (gw_value){ .known = true, .v = v };
}

static gw_material compound(void)
{
    gw_material m = { .name = "trial" };

    m.zener_gain = value(1.8);
    m.zener_tau = value(1e-6);
    m.zener_alpha = value(0.25);
    m.payne_gain = value(0.4);
    m.payne_strain = value(0.01);
    m.payne_exponent = value(0.55);
    return m;
}

static void a_material_gives_its_law_with_the_strain_over_the_wall(void **state)
{
    gw_material m = compound();
    gw_dynamic_law law;

    (void)state;
    assert_int_equal(gw_dynamic_law_from_material(&m, 8e-3, &law, NULL), GW_OK);
    check_abs(law.payne_amplitude, 0.08e-3, 1e-18, "amplitude");
    check_abs(law.zener_gain, 1.8, 0.0, "gain");
    m = (gw_material){ .name = "steel" };
    assert_int_equal(gw_dynamic_law_from_material(&m, 8e-3, &law, NULL), GW_OK);
    check_complex(gw_dynamic_factor(&law, 100.0, 1e-4), 1.0, 0.0, 0.0, "no law given");
}

static void bad_dynamic_values_are_named_and_leave_the_law_alone(void **state)
{
    static const struct {
        size_t at;
        double v;
        const char *key;
    } bad[] = {
        { offsetof(gw_material, zener_gain), -0.1, "zener_gain" },
        { offsetof(gw_material, zener_tau), 0.0, "zener_tau_s" },
        { offsetof(gw_material, zener_alpha), 1.2, "zener_alpha" },
        { offsetof(gw_material, payne_gain), -2.0, "payne_gain" },
        { offsetof(gw_material, payne_strain), 0.0, "payne_strain" },
        { offsetof(gw_material, payne_exponent), 3.0, "payne_exponent" },
    };
    gw_dynamic_law law = { .ratio = 7.0 };
    gw_error err = { 0 };
    gw_material m;

    (void)state;
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        m = compound();
        ((gw_value *)((char *)&m + bad[i].at))->v = bad[i].v;
        assert_int_equal(gw_dynamic_law_from_material(&m, 8e-3, &law, &err), GW_E_RANGE);
        check_contains(err.msg, bad[i].key);
        ((gw_value *)((char *)&m + bad[i].at))->known = false;
        assert_int_equal(gw_dynamic_law_from_material(&m, 8e-3, &law, &err), GW_E_RANGE);
        check_contains(err.msg, "together");
    }
    m = compound();
    assert_int_equal(gw_dynamic_law_from_material(&m, 0.0, &law, &err), GW_E_RANGE);
    check_contains(err.msg, "wall");
    check_abs(law.ratio, 7.0, 0.0, "untouched output");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(zener_k0_1000_k1_500_c1_2_matches_the_table),
        cmocka_unit_test(zener_loss_is_greatest_where_the_formula_says),
        cmocka_unit_test(fractional_zener_matches_the_table),
        cmocka_unit_test(fractional_zener_with_a_short_time_is_the_fractional_kelvin_voigt),
        cmocka_unit_test(kraus_matches_the_table),
        cmocka_unit_test(stiffness_follows_from_loss_by_kramers_and_kronig),
        cmocka_unit_test(constant_laws_and_the_absence_of_any),
        cmocka_unit_test(loss_and_stiffness_are_positive_everywhere),
        cmocka_unit_test(a_material_gives_its_law_with_the_strain_over_the_wall),
        cmocka_unit_test(bad_dynamic_values_are_named_and_leave_the_law_alone),
    };
    return cmocka_run_group_tests_name("dynamic", tests, NULL, NULL);
}
