/* SPDX-License-Identifier: MIT */
/* Rubber five points softer and harder: the answers of a case whose bushes are that much softer and harder.
 */
#include "support/case_sample.h"
#include "support/check.h"

#include "giveway/pick.h"
#include "giveway/tolerance.h"
#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <math.h>

/* Slope of A. N. Gent, Rubber Chemistry and Technology 31 (1958) 896, by differences of his modulus itself:
 * E = 0.0981 (56 + 7.62336 h) / (0.137505 (254 - 2.54 h)) MPa. */
static double gent_slope(double h)
{
    double step = 1e-4, low = h - step, high = h + step;
    double e_low = (56 + 7.62336 * low) / (254 - 2.54 * low),
           e_high = (56 + 7.62336 * high) / (254 - 2.54 * high);
    return log(e_high / e_low) / (2 * step);
}

static bool is_rubber(const gw_bush *b)
{
    bool shape = b->type == GW_BUSH_BONDED || b->type == GW_BUSH_UNBONDED;
    return shape || (b->type == GW_BUSH_RATES && b->rates.conical[0] + b->rates.torsional > 0.0);
}

static double hardness(const gw_bush *b)
{
    return b->type == GW_BUSH_RATES || !b->annulus.material.hardness_irhd.known
               ? 55.0
               : b->annulus.material.hardness_irhd.v;
}

/* The same case with every rubber bush softer or harder in its description, worked out from the start. */
static void deflect_at(double points, gw_case *c, gw_deflect_study *out)
{
    const gw_selection all = { 0 };
    gw_error err = { 0 };
    for (int b = 0; b < c->n_bushes; b++)
        if (is_rubber(&c->bushes[b]))
            c->bushes[b].stiffness_factor = exp(points * gent_slope(hardness(&c->bushes[b])));
    if (gw_study_deflect(c, &all, out, &err) != GW_OK) fail_msg("%s", err.msg);
}

/* "5 points are 21 % at 55, 24 % at 65, 74 % at 90." */
static void five_points_are_a_fifth_at_fifty_five(void **unused)
{
    (void)unused;
    check_abs(exp(5 * gent_slope(55)), 1.21, 0.005, "55");
    check_abs(exp(5 * gent_slope(65)), 1.24, 0.005, "65");
    check_abs(exp(5 * gent_slope(90)), 1.74, 0.005, "90");
}

static void ends_are_those_of_softer_and_harder_bushes(void **unused)
{
    (void)unused;
    gw_case c;
    gw_deflect_study as_written, ends[2];
    gw_tolerance_study t;
    const gw_selection all = { 0 };
    gw_error err = { 0 };
    sample_load("tests/cases/saloon-by-rule.json", &c);
    assert_int_equal(gw_study_deflect(&c, &all, &as_written, &err), GW_OK);
    if (gw_study_tolerance(&c, &all, &as_written, &t, &err) != GW_OK) fail_msg("%s", err.msg);
    int stop = gw_pick_load(&c, &as_written, GW_PICK_STOP),
        turn = gw_pick_load(&c, &as_written, GW_PICK_CORNER);
    assert_int_equal(t.n, c.n_kits * 2 * 2);
    deflect_at(-5.0, &c, &ends[0]);
    deflect_at(5.0, &c, &ends[1]);
    for (int k = 0; k < c.n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
            for (int i = 0; i < 2; i++) {
                int load = i == 0 ? stop : turn;
                const gw_tolerance_item *item = gw_tolerance_find(&t, k, a, load);
                assert_non_null(item);
                assert_false(item->failed);
                for (int e = 0; e < 2; e++) {
                    const gw_corner_result *r = &gw_deflect_find(&ends[e], k, a, load)->result;
                    check_abs(item->toe[e], r->toe_change, 1e-7 * GW_DEG, "toe");
                    check_abs(item->camber[e], r->camber_change, 1e-7 * GW_DEG, "camber");
                }
            }
    /* Standard rubber moves more where it is softer, and by more than the figure's last digit. */
    const gw_tolerance_item *item = gw_tolerance_find(&t, 0, GW_FRONT, turn);
    assert_true(item->bushes > 0);
    assert_true(fabs(item->toe[0]) > fabs(item->toe[1]) + 0.05 * GW_DEG);
    gw_deflect_study_free(&ends[0]);
    gw_deflect_study_free(&ends[1]);
    gw_tolerance_study_free(&t);
    gw_deflect_study_free(&as_written);
    gw_case_free(&c);
}

static void without_a_stop_or_a_corner_there_is_nothing(void **unused)
{
    (void)unused;
    gw_case c;
    gw_deflect_study d;
    gw_tolerance_study t;
    const gw_selection all = { 0 };
    sample_load("tests/cases/saloon-by-rule.json", &c);
    c.n_loads = 1; /* the direct one */
    assert_int_equal(gw_study_deflect(&c, &all, &d, NULL), GW_OK);
    assert_int_equal(gw_study_tolerance(&c, &all, &d, &t, NULL), GW_OK);
    assert_int_equal(t.n, 0);
    gw_tolerance_study_free(&t);
    gw_deflect_study_free(&d);
    gw_case_free(&c);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(five_points_are_a_fifth_at_fifty_five),
        cmocka_unit_test(ends_are_those_of_softer_and_harder_bushes),
        cmocka_unit_test(without_a_stop_or_a_corner_there_is_nothing),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests(tests, NULL, NULL);
}
