/* SPDX-License-Identifier: MIT */
/* The banded system against a dense solution by GSL's LU, narrow and wide, with and without a held tail. */
#include "bush/band.h"
#include "bush/panels.h"
#include "support/check.h"

#include <gsl/gsl_blas.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>
#include <math.h>
#include <stdlib.h>

/* A fixed pattern without meaning, dominant on its diagonal and so positive definite. */
static double entry(int i, int j, int width)
{
    if (abs(i - j) > width) return 0.0;
    return i == j ? 1.0 + width : 0.9 * cos(2.385 * (i + j) + 0.7 * abs(i - j));
}

/* One unknown more is given, with value 2.385, and coupled to the first ones. */
static void fill(gw_band *band, gsl_matrix *dense, gsl_vector *load)
{
    int n = band->n;
    for (int i = 0; i < n; i++)
        for (int j = 0; j < n; j++) gsl_matrix_set(dense, (size_t)i, (size_t)j, entry(i, j, band->width));
    for (int i = 0; i < n; i++) {
        double k[4] = { entry(i, i, band->width), 0.01 * i, 0.01 * i, 0.0 }, given[2] = { 0.0, 2.385 };
        gw_band_assemble(band, k, 2, 2, (const int[]){ i, GW_DOF_GIVEN }, given);
        gsl_vector_set(load, (size_t)i, 0.01 * i * 2.385);
        for (int j = i + 1; j < n && j <= i + band->width; j++) {
            double pair[4] = { 0.0, entry(i, j, band->width), entry(i, j, band->width), 0.0 },
                   none[2] = { 0.0 };
            gw_band_assemble(band, pair, 2, 2, (const int[]){ i, j }, none);
        }
    }
}

/* -f K^-1 f with row and column of each held unknown struck out. */
static double dense_energy(const gsl_matrix *dense, const gsl_vector *load, int first, const bool *held)
{
    size_t n = load->size;
    int sign;
    double energy = 0.0;
    gsl_matrix *m = gsl_matrix_alloc(n, n);
    gsl_vector *f = gsl_vector_alloc(n), *x = gsl_vector_alloc(n);
    gsl_permutation *p = gsl_permutation_alloc(n);
    gsl_matrix_memcpy(m, dense);
    gsl_vector_memcpy(f, load);
    for (size_t i = (size_t)first; held && i < n; i++) {
        if (!held[i - (size_t)first]) continue;
        for (size_t j = 0; j < n; j++) {
            gsl_matrix_set(m, i, j, i == j);
            gsl_matrix_set(m, j, i, i == j);
        }
        gsl_vector_set(f, i, 0.0);
    }
    gsl_linalg_LU_decomp(m, p, &sign);
    gsl_linalg_LU_solve(m, p, f, x);
    gsl_blas_ddot(f, x, &energy);
    gsl_matrix_free(m);
    gsl_vector_free(f);
    gsl_vector_free(x);
    gsl_permutation_free(p);
    return -energy;
}

static void check_size(int n, int width, int tail)
{
    gw_band band;
    double energy = 0.0;
    bool *held = calloc((size_t)tail, sizeof *held);
    gsl_matrix *dense = gsl_matrix_calloc((size_t)n, (size_t)n);
    gsl_vector *load = gsl_vector_calloc((size_t)n);
    assert_true(held && dense && load);
    assert_int_equal(gw_band_alloc(&band, n, width, tail, 1, NULL), GW_OK);
    fill(&band, dense, load);
    assert_int_equal(gw_band_factor(&band, NULL), GW_OK);
    assert_int_equal(gw_band_energy(&band, 0, NULL, &energy, NULL), GW_OK);
    check_rel(energy, dense_energy(dense, load, n - tail, NULL), 1e-9, "free tail");
    for (int i = 0; i < tail; i += 3) held[i] = true;
    assert_int_equal(gw_band_energy(&band, 0, held, &energy, NULL), GW_OK);
    check_rel(energy, dense_energy(dense, load, n - tail, held), 1e-9, "held tail");
    gw_band_free(&band);
    gsl_matrix_free(dense);
    gsl_vector_free(load);
    free(held);
}

static void a_narrow_band_has_the_energy_of_the_dense_system(void **state)
{
    (void)state;
    check_size(97, 11, 23);
    check_size(97, 3, 23); /* narrower than a panel */
}

static void a_wide_band_has_it_too_at_any_remainder_of_the_panels(void **state)
{
    (void)state;
    for (int n = 297; n < 297 + GW_PANEL; n++) check_size(n, 127, 61);
}

static void a_matrix_that_is_not_positive_definite_is_refused(void **state)
{
    (void)state;
    gw_band band;
    gw_error err = { 0 };
    assert_int_equal(gw_band_alloc(&band, 200, 10, 5, 1, &err), GW_OK);
    assert_int_equal(gw_band_factor(&band, &err), GW_E_NUMERIC);
    gw_band_free(&band);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_narrow_band_has_the_energy_of_the_dense_system),
        cmocka_unit_test(a_wide_band_has_it_too_at_any_remainder_of_the_panels),
        cmocka_unit_test(a_matrix_that_is_not_positive_definite_is_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
