/* SPDX-License-Identifier: MIT */
/* A match of twenty figures against a general least-squares library on the same model: the GNU Scientific
 * Library's trust region (gsl_multifit_nlinear), which takes slopes of its own by whole cars on both sides.
 */
#include "study/match_parts.h"
#include "support/check.h"
#include "support/match_sample.h"

#include <gsl/gsl_blas.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_multifit_nlinear.h>
#include <math.h>
#include <stdlib.h>

enum { ROUNDS = 12 }; /* of the library: beyond where it comes to rest */

static match_sample sample;

typedef struct least {
    gw_draws draws;
    gw_drawer *drawer;
    double *z, *y;
    int n;
} least;

/* The library steps by a share of each figure for its slopes: far from 0 that is the same for all. */
static const double SHIFT = 10.0;

/* (reading - model) / sigma of every value, then z. */
static int residuals(const gsl_vector *shifted, void *data, gsl_vector *f)
{
    least *l = data;
    for (int j = 0; j < l->n; j++) l->z[j] = gsl_vector_get(shifted, (size_t)j) - SHIFT;
    gw_read_guide *guide = NULL;
    const gw_readings *readings = &sample.readings;
    size_t at = 0;
    if (gw_read_car(&l->draws, l->drawer, l->z, readings, 1.0, false, &guide, l->y, NULL) != GW_OK)
        return GSL_EFAILED;
    gw_read_guide_free(guide);
    for (int i = 0; i < readings->n; i++)
        for (int v = 0; v < readings->reading[i].n_values; v++, at++) {
            const gw_read_value *value = &readings->reading[i].value[v];
            gsl_vector_set(f, at, (value->reading - l->y[at]) / value->sigma);
        }
    for (size_t j = 0; j < (size_t)l->n; j++) gsl_vector_set(f, at + j, l->z[j]);
    return GSL_SUCCESS;
}

/* The library stops where the sum is flat to rounding, a millionth or two from the minimum; its slopes, which
 * are not, lead there. */
static void finish(gsl_multifit_nlinear_workspace *w, const gsl_matrix *covariance, gsl_vector *z)
{
    gsl_vector *g = gsl_vector_alloc(z->size);
    gsl_blas_dgemv(CblasTrans, 1.0, gsl_multifit_nlinear_jac(w), gsl_multifit_nlinear_residual(w), 0.0, g);
    gsl_blas_dgemv(CblasNoTrans, -1.0, covariance, g, 1.0, z);
    gsl_vector_free(g);
}

static void by_library(size_t n, gsl_vector *z, gsl_matrix *covariance, double *chi_square)
{
    least l = { .n = (int)n,
                .z = calloc(n, sizeof *l.z),
                .y = calloc((size_t)sample.readings.n_values, sizeof *l.y) };
    gsl_multifit_nlinear_parameters how = gsl_multifit_nlinear_default_parameters();
    gsl_multifit_nlinear_fdf fdf = {
        .f = residuals, .n = n + (size_t)sample.readings.n_values, .p = n, .params = &l
    };

    how.fdtype = GSL_MULTIFIT_NLINEAR_CTRDIFF;
    how.h_df = 1e-4;
    assert_int_equal(gw_draws_open(&sample.c, &sample.wanted, &l.draws, NULL), GW_OK);
    assert_int_equal(gw_drawer_open(&sample.c, &l.drawer, NULL), GW_OK);
    gsl_multifit_nlinear_workspace *w =
        gsl_multifit_nlinear_alloc(gsl_multifit_nlinear_trust, &how, fdf.n, n);
    gsl_vector_set_all(z, SHIFT);
    gsl_multifit_nlinear_init(z, &fdf, w);
    for (int i = 0; i < ROUNDS; i++) gsl_multifit_nlinear_iterate(w);
    gsl_vector_memcpy(z, gsl_multifit_nlinear_position(w));
    gsl_vector_add_constant(z, -SHIFT);
    gsl_multifit_nlinear_covar(gsl_multifit_nlinear_jac(w), 0.0, covariance);
    finish(w, covariance, z);
    gsl_blas_ddot(gsl_multifit_nlinear_residual(w), gsl_multifit_nlinear_residual(w), chi_square);
    gsl_multifit_nlinear_free(w);
    gw_drawer_close(l.drawer);
    gw_draws_close(&l.draws);
    free(l.z);
    free(l.y);
}

static void agrees_with_a_general_library(void **state)
{
    (void)state;
    gw_match_study s;
    double chi_square = 0.0;
    assert_int_equal(gw_study_match(&sample.c, &sample.readings, &sample.wanted, false, &s, NULL), GW_OK);
    gsl_vector *z = gsl_vector_alloc((size_t)s.n);
    gsl_matrix *c = gsl_matrix_alloc((size_t)s.n, (size_t)s.n);
    by_library((size_t)s.n, z, c, &chi_square);
    check_rel(s.chi_square, chi_square, 1e-9, "chi-square");
    for (int j = 0; j < s.n; j++) {
        check_abs(s.z[j], gsl_vector_get(z, (size_t)j), 1e-6, s.figure[j].figure->of);
        for (int k = 0; k < s.n; k++)
            check_abs(s.covariance[j * s.n + k], gsl_matrix_get(c, (size_t)j, (size_t)k), 1e-5,
                      s.figure[j].figure->of);
    }
    gsl_matrix_free(c);
    gsl_vector_free(z);
    gw_match_study_free(&s);
}

/* A look where it begins and one a step: what is not at rest by then wanders. */
static void comes_to_rest(void **state)
{
    (void)state;
    gw_match_study s;
    assert_int_equal(gw_study_match(&sample.c, &sample.readings, &sample.wanted, false, &s, NULL), GW_OK);
    if (s.evaluations > 7) fail_msg("%d evaluations of the model", s.evaluations);
    gw_match_study_free(&s);
}

int main(void)
{
    gsl_set_error_handler_off();
    if (!match_sample_open(&sample)) return 1;
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(agrees_with_a_general_library),
        cmocka_unit_test(comes_to_rest),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    match_sample_close(&sample);
    return failed;
}
