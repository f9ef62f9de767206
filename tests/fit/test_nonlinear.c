/* SPDX-License-Identifier: MIT */
/* The driver of all fits against certified values of NIST's Statistical Reference Datasets (StRD), nonlinear
 * regression, itl.nist.gov/div898/strd: data and certified figures. A power law (DanWood), as that of a
 * springpot in frequency; saturating laws (Misra1a, BoxBOD); a quotient (MGH09), the hardest of the four. */
#include "fit/nonlinear.h"
#include "support/check.h"

#include <gsl/gsl_errno.h>
#include <math.h>

typedef struct set {
    const char *name;
    int n, m;
    double x[16], y[16];
    double (*law)(const double *b, double x);
    double start[2][4], certified[4], error[4], sum;
} set;

static double dan_wood(const double *b, double x)
{
    return b[0] * pow(x, b[1]);
}

static double saturating(const double *b, double x)
{
    return b[0] * (1 - exp(-b[1] * x));
}

static double quotient(const double *b, double x)
{
    return b[0] * (x * x + x * b[1]) / (x * x + x * b[2] + b[3]);
}

static const set SETS[] = {
    { "DanWood",
      6,
      2,
      { 1.309, 1.471, 1.490, 1.565, 1.611, 1.680 },
      { 2.138, 3.421, 3.597, 4.340, 4.882, 5.660 },
      dan_wood,
      { { 1, 5 }, { 0.7, 4 } },
      { 7.6886226176E-01, 3.8604055871E+00 },
      { 1.8281973860E-02, 5.1726610913E-02 },
      4.3173084083E-03 },
    { "Misra1a",
      14,
      2,
      { 77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0 },
      { 10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78 },
      saturating,
      { { 500, 0.0001 }, { 250, 0.0005 } },
      { 2.3894212918E+02, 5.5015643181E-04 },
      { 2.7070075241E+00, 7.2668688436E-06 },
      1.2455138894E-01 },
    { "BoxBOD",
      6,
      2,
      { 1, 2, 3, 5, 7, 10 },
      { 109, 149, 149, 191, 213, 224 },
      saturating,
      { { 100, 0.75 }, { 100, 0.75 } },
      { 2.1380940889E+02, 5.4723748542E-01 },
      { 1.2354515176E+01, 1.0455993237E-01 },
      1.1680088766E+03 },
    { "MGH09",
      11,
      4,
      { 4, 2, 1, 0.5, 0.25, 0.167, 0.125, 0.1, 0.0833, 0.0714, 0.0625 },
      { 0.1957, 0.1947, 0.1735, 0.16, 0.0844, 0.0627, 0.0456, 0.0342, 0.0323, 0.0235, 0.0246 },
      quotient,
      { { 25, 39, 41.5, 39 }, { 0.25, 0.39, 0.415, 0.39 } },
      { 1.9280693458E-01, 1.9128232873E-01, 1.2305650693E-01, 1.3606233068E-01 },
      { 1.1435312227E-02, 1.9633220911E-01, 8.0842031232E-02, 9.0025542308E-02 },
      3.0750560385E-04 },
};

static void residuals(const double *p, double *r, void *context)
{
    const set *s = context;
    for (int i = 0; i < s->n; i++) r[i] = s->y[i] - s->law(p, s->x[i]);
}

static void certified_values_are_met(void **state)
{
    (void)state;
    check_from("NIST StRD, nonlinear regression, certified values (itl.nist.gov/div898/strd)");
    for (size_t i = 0; i < sizeof SETS / sizeof *SETS; i++)
        for (int start = 0; start < 2; start++) {
            set s = SETS[i];
            const gw_nonlinear problem = { s.n, s.m, residuals, &s };
            double spread[4], sum = 0;
            gw_error err = { 0 };
            if (gw_nonlinear_fit(&problem, s.start[start], &sum, &err) != GW_OK)
                fail_msg("%s: %s", s.name, err.msg);
            check_about("%s, start %d", s.name, start + 1);
            check_rel(sum, s.sum, 1e-9, "sum of squares");
            assert_int_equal(gw_nonlinear_spread(&problem, s.start[start], spread, &err), GW_OK);
            for (int k = 0; k < s.m; k++) {
                check_rel(s.start[start][k], s.certified[k], 2e-7, "figure");
                check_rel(spread[k] * sqrt(sum / (s.n - s.m)), s.error[k], 1e-5, "its standard error");
            }
        }
}

static void nothing(const double *p, double *r, void *context)
{
    (void)p;
    (void)context;
    r[0] = r[1] = NAN;
}

static void what_cannot_be_fitted_is_an_error(void **state)
{
    (void)state;
    const gw_nonlinear problem = { 2, 1, nothing, NULL };
    double p = 1, sum = -7, spread;
    gw_error err = { 0 };
    assert_int_equal(gw_nonlinear_fit(&problem, &p, &sum, &err), GW_E_NUMERIC);
    check_abs(sum, -7, 0, "untouched");
    assert_int_equal(gw_nonlinear_spread(&problem, &p, &spread, &err), GW_E_NUMERIC);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(certified_values_are_met),
        cmocka_unit_test(what_cannot_be_fitted_is_an_error),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
