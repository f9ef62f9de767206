/* SPDX-License-Identifier: MIT */
/* From descriptions to laws and reports. */
#include "bush/handbook.h"
#include "giveway/annulus.h"
#include "giveway/bush_report.h"
#include "giveway/units.h"
#include "support/check.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <string.h>

static gw_bush rubber(void)
{
    gw_bush b = { .name = "upper", .type = GW_BUSH_BONDED };
    b.annulus = (gw_annulus){ .inner_radius = 10e-3, .outer_radius = 20e-3, .length = 30e-3 };
    b.annulus.material.shear_modulus =
        (gw_value){ .known = true, .v = 1e6, .tolerance = 0.2, .source = "a page" };
    b.annulus.material.bulk_modulus = (gw_value){ .known = true, .v = 1.5e9 };
    return b;
}

static void given_rates_pass_through_unchanged(void **state)
{
    (void)state;
    gw_bush b = { .name = "g", .type = GW_BUSH_RATES, .loss_factor = 0.07, .dynamic_ratio = 1.3 };
    b.rates = (gw_given_rates){ { 1e6, 2e6 }, 3e5, { 40, 50 }, 60 };
    b.stop = (gw_stop){ 2e-3, 5e6 };
    gw_bush_law law;
    assert_int_equal(gw_bush_law_make(&b, GW_METHOD_SOLVED, &law, NULL), GW_OK);
    static const double WANT[6] = { 1e6, 2e6, 3e5, 40, 50, 60 };
    for (int i = 0; i < 6; i++) check_abs(i < 3 ? law.k[i] : law.c[i - 3], WANT[i], 0, "rate");
    check_abs(law.dynamic.ratio, 1.3, 0, "dynamic ratio");
    check_abs(law.dynamic.loss, 0.07, 0, "loss");
    check_abs(law.stop.rate, 5e6, 0, "stop");
    b.type = GW_BUSH_BALL_JOINT, b.dynamic_ratio = 0;
    assert_int_equal(gw_bush_law_make(&b, GW_METHOD_SOLVED, &law, NULL), GW_OK);
    check_abs(law.dynamic.ratio, 1.0, 0, "left out: 1");
}

static void bonded_rubber_carries_the_solved_or_the_handbook_rates(void **state)
{
    (void)state;
    gw_bush b = rubber();
    gw_given_rates r;
    gw_bush_law law;
    assert_int_equal(gw_annulus_rates(&b.annulus, NULL, &r, NULL), GW_OK);
    assert_int_equal(gw_bush_law_make(&b, GW_METHOD_SOLVED, &law, NULL), GW_OK);
    check_abs(law.k[0], r.radial[0], 0, "radial");
    check_abs(law.c[2], r.torsional, 0, "torsional");
    check_abs(law.void_stop.rate, 0, 0, "no void");
    assert_int_equal(gw_bush_law_make(&b, GW_METHOD_HANDBOOK, &law, NULL), GW_OK);
    gw_plain_bush p = { 10e-3, 20e-3, 30e-3, 1e6, 1.5e9 };
    check_rel(law.k[0], gw_handbook_radial(&p), 1e-12, "handbook radial");
    check_rel(law.k[2], gw_handbook_axial(&p), 1e-12, "handbook axial");
}

static void a_void_brings_a_stop_at_its_gap_along_e1(void **state)
{
    (void)state;
    gw_bush b = rubber();
    gw_bush_law whole, law;
    assert_int_equal(gw_bush_law_make(&b, GW_METHOD_SOLVED, &whole, NULL), GW_OK);
    b.annulus.has_voids = true;
    b.annulus.voids = (gw_voids){ .half_angle = 30 * GW_DEG, .gap = 3e-3 };
    assert_int_equal(gw_bush_law_make(&b, GW_METHOD_SOLVED, &law, NULL), GW_OK);
    assert_true(law.k[0] < law.k[1]);
    check_abs(law.void_stop.gap, 3e-3, 0, "gap");
    check_rel(law.void_stop.rate, 0.5 * (whole.k[0] - law.k[0]), 1e-12, "half of what the voids take");
    assert_true(law.blend > 0.0 && law.blend < 3e-3);
}

static void handbook_fallback_keeps_the_order_of_magnitude_of_shaped_rubber(void **state)
{
    (void)state;
    gw_bush b = rubber();
    gw_given_rates solved, closed;
    b.annulus.end_dish = 4e-3;
    b.annulus.has_interleaf = true, b.annulus.interleaf_radius = 15e-3, b.annulus.interleaf_thickness = 1e-3;
    assert_int_equal(gw_annulus_rates(&b.annulus, NULL, &solved, NULL), GW_OK);
    assert_int_equal(gw_handbook_rates(&b.annulus, &closed, NULL), GW_OK);
    check_rel(closed.radial[0], solved.radial[0], 0.25, "radial");
    check_rel(closed.axial, solved.axial, 0.15, "axial");
    check_rel(closed.torsional, solved.torsional, 0.1, "torsional");
    b = rubber(), b.annulus.has_voids = true,
    b.annulus.voids = (gw_voids){ .half_angle = 30 * GW_DEG, .gap = 3e-3 };
    assert_int_equal(gw_annulus_rates(&b.annulus, NULL, &solved, NULL), GW_OK);
    assert_int_equal(gw_handbook_rates(&b.annulus, &closed, NULL), GW_OK);
    for (int i = 0; i < 2; i++) {
        assert_true(closed.radial[i] > solved.radial[i] / 4 && closed.radial[i] < solved.radial[i] * 4);
        assert_true(closed.conical[i] > solved.conical[i] / 4 && closed.conical[i] < solved.conical[i] * 4);
    }
}

static void faults_name_the_bush_and_leave_the_law_alone(void **state)
{
    (void)state;
    gw_error err = { 0 };
    gw_bush_law law = gw_bush_law_zero();
    gw_bush b = rubber();
    b.annulus.length = -30e-3;
    assert_int_equal(gw_bush_law_make(&b, GW_METHOD_SOLVED, &law, &err), GW_E_RANGE);
    check_contains(err.msg, "upper");
    check_contains(err.msg, "length");
    b = rubber(), b.stop.rate = -1;
    assert_int_equal(gw_bush_law_make(&b, GW_METHOD_SOLVED, &law, &err), GW_E_RANGE);
    check_contains(err.msg, "stop");
    b.type = GW_BUSH_RATES, b.rates.axial = (double)NAN;
    assert_int_equal(gw_bush_law_make(&b, GW_METHOD_SOLVED, &law, &err), GW_E_RANGE);
    b.rates.axial = 0, b.loss_factor = -1;
    assert_int_equal(gw_bush_law_make(&b, GW_METHOD_SOLVED, &law, &err), GW_E_RANGE);
    check_abs(law.k[0] + law.c[2], 0, 0, "untouched");
    check_abs(law.dynamic.ratio, 1, 0, "zero law");
}

static void one_factor_stiffens_every_rate_and_the_stop(void **state)
{
    (void)state;
    gw_bush b = { .name = "g", .type = GW_BUSH_RATES, .stiffness_factor = 1.35 };
    b.rates = (gw_given_rates){ { 1e6, 2e6 }, 3e5, { 40, 50 }, 60 };
    b.stop = (gw_stop){ 2e-3, 5e6 };
    gw_bush_law law, plain;
    static const double WANT[6] = { 1.35e6, 2.7e6, 4.05e5, 54, 67.5, 81 };
    assert_int_equal(gw_bush_law_make(&b, GW_METHOD_SOLVED, &law, NULL), GW_OK);
    for (int i = 0; i < 6; i++) check_rel(i < 3 ? law.k[i] : law.c[i - 3], WANT[i], 1e-15, "rate");
    check_rel(law.stop.rate, 6.75e6, 1e-15, "stop");
    check_abs(law.stop.gap, 2e-3, 0, "gap");
    gw_bush voided = rubber();
    voided.annulus.has_voids = true;
    voided.annulus.voids = (gw_voids){ .half_angle = 0.7, .gap = 3e-3 };
    assert_int_equal(gw_bush_law_make(&voided, GW_METHOD_HANDBOOK, &plain, NULL), GW_OK);
    voided.stiffness_factor = 0.8;
    assert_int_equal(gw_bush_law_make(&voided, GW_METHOD_HANDBOOK, &law, NULL), GW_OK);
    check_rel(law.void_stop.rate, 0.8 * plain.void_stop.rate, 1e-15, "stop of the void");
    check_rel(law.c[1], 0.8 * plain.c[1], 1e-15, "conical");
    gw_bush_report report, before;
    gw_bush plain_rubber = rubber();
    assert_int_equal(gw_bush_report_make(&plain_rubber, GW_METHOD_HANDBOOK, &before, NULL), GW_OK);
    plain_rubber.stiffness_factor = 1.2;
    assert_int_equal(gw_bush_report_make(&plain_rubber, GW_METHOD_HANDBOOK, &report, NULL), GW_OK);
    check_rel(report.handbook.radial[0], 1.2 * before.handbook.radial[0], 1e-12, "handbook");
    check_rel(report.law.k[0], 1.2 * before.law.k[0], 1e-12, "law");
}

static void a_report_gives_every_figure_with_formula_inputs_and_source(void **state)
{
    (void)state;
    gw_bush b = rubber();
    gw_bush_report r;
    assert_int_equal(gw_bush_report_make(&b, GW_METHOD_SOLVED, &r, NULL), GW_OK);
    assert_true(r.has_handbook);
    check_abs(r.low, 0.8, 1e-12, "band");
    check_abs(r.high, 1.2, 1e-12, "band");
    check_contains(r.band_source, "a page");
    assert_int_equal(r.n_lines, 13);
    for (int i = 0; i < r.n_lines; i++) {
        const gw_explain_line *line = &r.lines[i];
        assert_true(strlen(line->formula) > 0 && strlen(line->source) > 0 && line->n_inputs >= 4);
        assert_true(line->value > 0.0);
        check_abs(line->inputs[0].value, 10e-3, 0, "a");
    }
    check_contains(r.lines[6].figure, "long");
    check_contains(r.lines[6].source, "Adkins");
}

static void check_times(gw_bush *b, const char *what)
{
    const double u[3] = { 4e-3, 1.3e-3, 0.7e-3 };
    gw_bush_law one, more;
    b->stop = (gw_stop){ 3e-3, 7e6 };
    b->stiffness_factor = 1.0;
    assert_int_equal(gw_bush_law_make(b, GW_METHOD_SOLVED, &one, NULL), GW_OK);
    b->stiffness_factor = 1.37;
    assert_int_equal(gw_bush_law_make(b, GW_METHOD_SOLVED, &more, NULL), GW_OK);
    check_rel(gw_bush_energy(&more, u), 1.37 * gw_bush_energy(&one, u), 1e-14, what);
    for (int i = 0; i < 3; i++) check_rel(more.c[i], 1.37 * one.c[i], 1e-14, what);
    check_abs(more.stop.gap, 3e-3, 0, what);
}

/* Rubber is linear in its moduli, so the factor is that of a compound with both moduli raised. */
static void a_stiffness_factor_is_on_every_rate_of_every_type(void **state)
{
    (void)state;
    gw_bush given = { .name = "g", .type = GW_BUSH_RATES };
    given.rates = (gw_given_rates){ { 1e6, 2e6 }, 3e5, { 40, 50 }, 60 };
    gw_bush steel = { .name = "b", .type = GW_BUSH_BEARING };
    steel.bearing = (gw_bearing){ .ball_diameter = 0.03, .width = 0.016, .clearance = 4e-5, .breakaway = 2 };
    gw_bush bonded = rubber(), harder = rubber();
    bonded.annulus.has_voids = true;
    bonded.annulus.voids = (gw_voids){ .half_angle = 0.6, .gap = 2e-3 };
    bonded.annulus.progressive = true;
    check_times(&given, "given rates");
    check_times(&steel, "a bearing");
    check_times(&bonded, "rubber with voids");
    gw_bush_law law, other;
    harder.stiffness_factor = 1.37;
    assert_int_equal(gw_bush_law_make(&harder, GW_METHOD_SOLVED, &law, NULL), GW_OK);
    harder.stiffness_factor = 0;
    harder.annulus.material.shear_modulus.v *= 1.37;
    harder.annulus.material.bulk_modulus.v *= 1.37;
    assert_int_equal(gw_bush_law_make(&harder, GW_METHOD_SOLVED, &other, NULL), GW_OK);
    for (int i = 0; i < 3; i++) check_rel(law.k[i], other.k[i], 1e-9, "moduli raised");
    for (int i = 0; i < 3; i++) check_rel(law.c[i], other.c[i], 1e-9, "moduli raised");
}

static void a_report_of_given_rates_says_that_they_are_given(void **state)
{
    (void)state;
    gw_bush b = { .name = "g", .type = GW_BUSH_RATES };
    b.rates.axial = 3e5;
    gw_bush_report r;
    assert_int_equal(gw_bush_report_make(&b, GW_METHOD_SOLVED, &r, NULL), GW_OK);
    assert_false(r.has_handbook);
    assert_int_equal(r.n_lines, 6);
    check_contains(r.lines[2].source, "given");
    b.rates.axial = -1;
    assert_int_equal(gw_bush_report_make(&b, GW_METHOD_SOLVED, &r, NULL), GW_E_RANGE);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(given_rates_pass_through_unchanged),
        cmocka_unit_test(bonded_rubber_carries_the_solved_or_the_handbook_rates),
        cmocka_unit_test(a_void_brings_a_stop_at_its_gap_along_e1),
        cmocka_unit_test(handbook_fallback_keeps_the_order_of_magnitude_of_shaped_rubber),
        cmocka_unit_test(faults_name_the_bush_and_leave_the_law_alone),
        cmocka_unit_test(one_factor_stiffens_every_rate_and_the_stop),
        cmocka_unit_test(a_report_gives_every_figure_with_formula_inputs_and_source),
        cmocka_unit_test(a_report_of_given_rates_says_that_they_are_given),
        cmocka_unit_test(a_stiffness_factor_is_on_every_rate_of_every_type),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
