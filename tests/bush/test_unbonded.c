/* SPDX-License-Identifier: MIT */
/*
 * The unbonded bush. No published rate was found for an annulus with one face free in shear, so the closed
 * form is checked against an independent Ritz solution of the same plane problem written here, which itself
 * has to reproduce the bonded limits of Adkins and Gent (1954).
 */
#include "bush/unbonded.h"
#include "giveway/annulus.h"
#include "giveway/units.h"
#include "support/check.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_linalg.h>
#include <math.h>

enum { TERMS = 12, SIZE = 2 * TERMS };

/** Value and slope by r of the n-th trial function: vanishes at b, powers of the way from b to a. */
static double trial(const gw_plain_bush *p, double r, int n, double *slope)
{
    double s = (p->b - r) / (p->b - p->a);

    *slope = -(n + 1) * pow(s, n) / (p->b - p->a);
    return pow(s, n + 1);
}

/*
 * Energy of u_r = U(r) cos, u_theta = V(r) sin, plane strain, as a quadratic form in the coefficients of U
 * and V; the rate is twice the least energy with U(a) = 1, and V(a) = -1 where the face is bonded.
 */
static void fill_energy(const gw_plain_bush *p, gsl_matrix *h)
{
    gsl_integration_glfixed_table *gauss = gsl_integration_glfixed_table_alloc(40);
    double lambda = p->k - 2.0 / 3.0 * p->g;

    assert_non_null(gauss);
    for (size_t q = 0; q < 40; q++) {
        double r, w, e[3][SIZE];

        gsl_integration_glfixed_point(p->a, p->b, q, &r, &w, gauss);
        for (int i = 0; i < SIZE; i++) {
            double slope, value = trial(p, r, i % TERMS, &slope);

            e[0][i] = i < TERMS ? slope : 0.0;
            e[1][i] = value / r;
            e[2][i] = i < TERMS ? -value / r : slope - value / r;
        }
        for (size_t i = 0; i < SIZE; i++)
            for (size_t j = 0; j < SIZE; j++) {
                double sum = lambda * (e[0][i] + e[1][i]) * (e[0][j] + e[1][j]) +
                             2.0 * p->g * (e[0][i] * e[0][j] + e[1][i] * e[1][j]) + p->g * e[2][i] * e[2][j];

                *gsl_matrix_ptr(h, i, j) += GW_PI * p->length * sum * r * w;
            }
    }
    gsl_integration_glfixed_table_free(gauss);
}

static double ritz_rate(const gw_plain_bush *p, bool bonded)
{
    size_t n = SIZE + (bonded ? 2 : 1);
    gsl_matrix *m = gsl_matrix_calloc(n, n);
    gsl_vector *rhs = gsl_vector_calloc(n), *x = gsl_vector_calloc(n);
    gsl_permutation *perm = gsl_permutation_alloc(n);
    gsl_matrix_view h = gsl_matrix_submatrix(m, 0, 0, SIZE, SIZE);
    int sign;
    double rate;

    fill_energy(p, &h.matrix);
    for (size_t c = SIZE; c < n; c++) {
        for (size_t i = 0; i < TERMS; i++) {
            size_t at = i + (c == SIZE ? 0 : TERMS);

            gsl_matrix_set(m, c, at, p->g);
            gsl_matrix_set(m, at, c, p->g);
        }
        gsl_vector_set(rhs, c, c == SIZE ? p->g : -p->g);
    }
    assert_int_equal(gsl_linalg_LU_decomp(m, perm, &sign), 0);
    assert_int_equal(gsl_linalg_LU_solve(m, perm, rhs, x), 0);
    /* h x = -g * multiplier on each constraint, so 2 W = x^T h x is minus the sum of g multiplier value. */
    rate = -p->g * gsl_vector_get(x, SIZE);
    if (bonded) rate += p->g * gsl_vector_get(x, SIZE + 1);
    gsl_matrix_free(m);
    gsl_vector_free(rhs);
    gsl_vector_free(x);
    gsl_permutation_free(perm);
    return rate;
}

static void ritz_solution_reproduces_the_bonded_plane_formula(void **state)
{
    gw_plain_bush p = { 10e-3, 20e-3, 40e-3, 1e6, 20e6 };

    (void)state;
    check_rel(ritz_rate(&p, true), gw_handbook_radial_plane(&p, gw_handbook_kappa(p.g, p.k)), 1e-6, "bonded");
}

static void closed_form_with_a_sliding_face_matches_the_ritz_solution(void **state)
{
    static const double outer[] = { 12e-3, 16e-3, 20e-3, 30e-3 }, bulk[] = { 2e6, 20e6, 200e6 };

    (void)state;
    for (int i = 0; i < 4; i++)
        for (int j = 0; j < 3; j++) {
            gw_plain_bush p = { 10e-3, outer[i], 40e-3, 1e6, bulk[j] };

            check_rel(gw_unbonded_radial_plane(&p, gw_handbook_kappa(p.g, p.k)), ritz_rate(&p, false), 1e-5,
                      "sliding");
        }
}

static void a_thin_sliding_layer_has_a_quarter_of_the_bonded_rate(void **state)
{
    gw_plain_bush p = { 20e-3, 20.02e-3, 40e-3, 1e6, HUGE_VAL };
    double ratio = 20.01 / 0.02;

    (void)state;
    check_rel(gw_unbonded_radial_plane(&p, 1.0), 3.0 * GW_PI * p.g * p.length * pow(ratio, 3), 1e-3, "3 pi");
    check_rel(gw_unbonded_radial_plane(&p, 1.0) / gw_handbook_radial_plane(&p, 1.0), 0.25, 1e-3, "a quarter");
}

static void long_and_short_bushes_tend_to_their_plane_limits(void **state)
{
    gw_plain_bush p = { 10e-3, 20e-3, 40.0, 1e6, HUGE_VAL };

    (void)state;
    check_rel(gw_unbonded_radial(&p), gw_unbonded_radial_plane(&p, 1.0), 1e-3, "long");
    p.length = 1e-5;
    check_rel(gw_unbonded_radial(&p), gw_unbonded_radial_plane(&p, 5.0 / 3.0), 1e-3, "short");
}

static void flanges_carry_as_rings_of_the_wall_thickness(void **state)
{
    gw_plain_bush p = { 10e-3, 20e-3, 40e-3, 1e6, HUGE_VAL };
    double area = GW_PI * (400.0 - 100.0) * 1e-6;

    (void)state;
    check_rel(gw_unbonded_axial(&p), 3e6 * area / 10e-3, 1e-12, "flange");
}

static void press_fit_pressure_joins_its_series_and_its_incompressible_limit(void **state)
{
    gw_plain_bush p = { 8e-3, 16e-3, 40e-3, 7.5e6, 2e9 }, q = p;

    (void)state;
    q.k = 1e15;
    p.k = HUGE_VAL;
    check_rel(gw_unbonded_pressure(&q, 0.08e-3), gw_unbonded_pressure(&p, 0.08e-3), 1e-6, "incompressible");
    /* G delta L^2/(4 t^3) = 7.5 x 0.08 x 1600/2048 MPa */
    check_rel(gw_unbonded_pressure(&p, 0.08e-3), 7.5e6 * 0.08 * 1600.0 / 2048.0, 1e-12, "worked by hand");
    q.k = 3.0 * q.g * 6.25 / 1e-4;
    p = q;
    p.k *= 1.0001;
    check_rel(gw_unbonded_pressure(&q, 1e-4), gw_unbonded_pressure(&p, 1e-4), 1e-5, "series joins");
}

static void breakaway_is_friction_times_pressure_times_radius(void **state)
{
    gw_plain_bush p = { 8e-3, 16e-3, 40e-3, 7.5e6, 2e9 };

    (void)state;
    check_rel(gw_unbonded_breakaway(&p, 0.2, 0.5e6, 0.0), 0.2 * 8e-3 * (2 * GW_PI * 8e-3 * 40e-3 * 0.5e6),
              1e-12, "press fit");
    check_rel(gw_unbonded_breakaway(&p, 0.2, 0.0, 3000.0), 0.2 * 8e-3 * 4.0 / GW_PI * 3000.0, 1e-12, "load");
}

static gw_annulus polyurethane(void)
{
    gw_annulus bush = { .inner_radius = 8e-3, .outer_radius = 16e-3, .length = 40e-3, .friction = 0.2 };

    bush.material.shear_modulus = (gw_value){ .known = true, .v = 7.5e6 };
    bush.material.bulk_modulus = (gw_value){ .known = true, .v = 2e9 };
    return bush;
}

static void the_law_has_no_torsion_but_a_breakaway(void **state)
{
    gw_annulus bush = polyurethane();
    gw_bush_law law;

    (void)state;
    assert_int_equal(gw_unbonded_law(&bush, GW_METHOD_HANDBOOK, &law, NULL), GW_OK);
    check_abs(law.c[2], 0.0, 0.0, "torsion");
    assert_true(law.k[0] > 0.0 && law.k[0] == law.k[1] && law.k[2] > 0.0 && law.c[0] > 0.0);
    assert_true(law.breakaway > 0.0 && gw_bush_law_is_linear(&law));
}

/* Two long bushes differ by a piece of bush without ends, so their rates differ by the plane rate of that
 * piece. */
static void the_solved_rate_per_length_is_the_closed_form_far_from_the_ends(void **state)
{
    static const double outer[] = { 10e-3, 12e-3, 16e-3, 24e-3 };
    gw_annulus_options sliding = { .inner_face = GW_INNER_SLIDING };

    (void)state;
    for (int i = 0; i < 4; i++) {
        gw_annulus bush = polyurethane();
        gw_plain_bush piece = { 8e-3, outer[i], 0.1, 7.5e6, 2e9 };
        gw_given_rates shorter, longer;

        bush.outer_radius = outer[i];
        bush.length = 0.2;
        assert_int_equal(gw_annulus_rates(&bush, &sliding, &shorter, NULL), GW_OK);
        bush.length += piece.length;
        assert_int_equal(gw_annulus_rates(&bush, &sliding, &longer, NULL), GW_OK);
        check_rel(longer.radial[0] - shorter.radial[0],
                  gw_unbonded_radial_plane(&piece, gw_handbook_kappa(piece.g, piece.k)), 2e-3, "per length");
    }
}

static void the_closed_form_stays_within_its_stated_error_of_the_solution(void **state)
{
    static const double ratio[] = { 1.25, 1.5, 2.0, 2.5, 3.0 }, slender[] = { 1.0, 2.0, 5.0, 10.0 };

    (void)state;
    for (int i = 0; i < 5; i++)
        for (int j = 0; j < 4; j++) {
            gw_annulus bush = polyurethane();
            gw_bush_law solved, closed;

            bush.outer_radius = ratio[i] * bush.inner_radius;
            bush.length = slender[j] * (bush.outer_radius - bush.inner_radius);
            assert_int_equal(gw_unbonded_law(&bush, GW_METHOD_HANDBOOK, &closed, NULL), GW_OK);
            assert_int_equal(gw_unbonded_law(&bush, GW_METHOD_SOLVED, &solved, NULL), GW_OK);
            check_abs(closed.k[0] / solved.k[0], 1.02, 0.071, "radial: 0.95 to 1.09");
            check_abs(closed.c[0] / solved.c[0], 0.965, 0.105, "conical: 0.86 to 1.07");
        }
}

static void an_interleaf_makes_a_sliding_and_a_bonded_layer_in_series(void **state)
{
    gw_annulus bush = polyurethane();
    gw_bush_law plain, solved, closed;

    (void)state;
    assert_int_equal(gw_unbonded_law(&bush, GW_METHOD_SOLVED, &plain, NULL), GW_OK);
    bush.has_interleaf = true;
    bush.interleaf_radius = 12e-3;
    bush.interleaf_thickness = 1e-3;
    assert_int_equal(gw_unbonded_law(&bush, GW_METHOD_HANDBOOK, &closed, NULL), GW_OK);
    assert_int_equal(gw_unbonded_law(&bush, GW_METHOD_SOLVED, &solved, NULL), GW_OK);
    check_rel(closed.k[0], solved.k[0], 0.09, "radial: the stated error of the sliding form");
    assert_true(solved.k[0] > 1.5 * plain.k[0]);
}

static void bad_descriptions_are_named_and_leave_the_law_alone(void **state)
{
    gw_annulus bush = polyurethane();
    gw_bush_law law = { .breakaway = 7.0 };
    gw_error err = { 0 };

    (void)state;
    bush.has_voids = true;
    assert_int_equal(gw_unbonded_law(&bush, GW_METHOD_HANDBOOK, &law, &err), GW_E_RANGE);
    check_contains(err.msg, "voids");
    bush = polyurethane();
    bush.has_interleaf = true;
    bush.interleaf_radius = 17e-3;
    bush.interleaf_thickness = 1e-3;
    assert_int_equal(gw_unbonded_law(&bush, GW_METHOD_HANDBOOK, &law, &err), GW_E_RANGE);
    check_contains(err.msg, "interleaf");
    bush = polyurethane();
    bush.friction = -0.1;
    assert_int_equal(gw_unbonded_law(&bush, GW_METHOD_HANDBOOK, &law, &err), GW_E_RANGE);
    check_contains(err.msg, "friction");
    bush = polyurethane();
    bush.inner_radius = 17e-3;
    assert_int_equal(gw_unbonded_law(&bush, GW_METHOD_HANDBOOK, &law, &err), GW_E_RANGE);
    check_abs(law.breakaway, 7.0, 0.0, "untouched output");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(ritz_solution_reproduces_the_bonded_plane_formula),
        cmocka_unit_test(closed_form_with_a_sliding_face_matches_the_ritz_solution),
        cmocka_unit_test(a_thin_sliding_layer_has_a_quarter_of_the_bonded_rate),
        cmocka_unit_test(long_and_short_bushes_tend_to_their_plane_limits),
        cmocka_unit_test(flanges_carry_as_rings_of_the_wall_thickness),
        cmocka_unit_test(press_fit_pressure_joins_its_series_and_its_incompressible_limit),
        cmocka_unit_test(breakaway_is_friction_times_pressure_times_radius),
        cmocka_unit_test(the_law_has_no_torsion_but_a_breakaway),
        cmocka_unit_test(the_solved_rate_per_length_is_the_closed_form_far_from_the_ends),
        cmocka_unit_test(the_closed_form_stays_within_its_stated_error_of_the_solution),
        cmocka_unit_test(an_interleaf_makes_a_sliding_and_a_bonded_layer_in_series),
        cmocka_unit_test(bad_descriptions_are_named_and_leave_the_law_alone),
    };

    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("unbonded", tests, NULL, NULL);
}
