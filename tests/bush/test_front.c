/* SPDX-License-Identifier: MIT */
/* Fronts joined two by two against the whole system solved by GSL's LU. */
#include "bush/front.h"
#include "support/check.h"

#include <gsl/gsl_blas.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>
#include <math.h>
#include <stdlib.h>

enum { SIZE = 41, LOAD = SIZE };

/* A fixed pattern without meaning, dominant on its diagonal and so positive definite; unknown LOAD is given.
 */
static double entry(int i, int j)
{
    return i == j ? 2.0 + SIZE : 0.9 * cos(2.385 * (i + j) + 0.7 * abs(i - j));
}

/* What the unknowns from `from`, `step` apart, have among themselves, and with the load. */
static void fill(gw_front *front, int from, int step)
{
    int n = (SIZE - from + step - 1) / step;
    assert_int_equal(gw_front_alloc(front, n + 1, NULL), GW_OK);
    for (int i = 0; i <= n; i++) front->id[i] = i < n ? from + i * step : LOAD;
    for (int c = 0; c <= n; c++)
        for (int r = c; r <= n; r++) front->k[c * (n + 1) + r] = entry(front->id[r], front->id[c]);
}

static gw_front_role role_of(const void *context, int id)
{
    const int *held = context;
    if (id == LOAD) return GW_FRONT_KEEP;
    return id == *held ? GW_FRONT_DROP : GW_FRONT_ELIMINATE;
}

/* Energy of the load with the sum of both fronts, one unknown held: k - f K^-1 f. */
static double dense_energy(const gw_front *a, const gw_front *b, int held)
{
    const gw_front *part[2] = { a, b };
    gsl_matrix *m = gsl_matrix_calloc(SIZE + 1, SIZE + 1), *k = gsl_matrix_calloc(SIZE, SIZE);
    gsl_vector *f = gsl_vector_calloc(SIZE), *x = gsl_vector_calloc(SIZE);
    gsl_permutation *p = gsl_permutation_alloc(SIZE);
    double gained;
    int sign;
    for (int q = 0; q < 2; q++)
        for (int c = 0; c < part[q]->n; c++)
            for (int r = c; r < part[q]->n; r++) {
                size_t i = (size_t)part[q]->id[r], j = (size_t)part[q]->id[c];
                *gsl_matrix_ptr(m, i, j) += part[q]->k[c * part[q]->n + r];
                if (i != j) *gsl_matrix_ptr(m, j, i) += part[q]->k[c * part[q]->n + r];
            }
    for (size_t i = 0; i < SIZE; i++) {
        gsl_vector_set(f, i, (int)i == held ? 0.0 : gsl_matrix_get(m, i, LOAD));
        for (size_t j = 0; j < SIZE; j++)
            gsl_matrix_set(k, i, j, (int)i == held || (int)j == held ? i == j : gsl_matrix_get(m, i, j));
    }
    gsl_linalg_LU_decomp(k, p, &sign);
    gsl_linalg_LU_solve(k, p, f, x);
    gsl_blas_ddot(f, x, &gained);
    double energy = gsl_matrix_get(m, LOAD, LOAD) - gained;
    gsl_matrix_free(m);
    gsl_matrix_free(k);
    gsl_vector_free(f);
    gsl_vector_free(x);
    gsl_permutation_free(p);
    return energy;
}

static void two_joined_fronts_have_the_energy_of_their_sum(void **state)
{
    (void)state;
    for (int step = 1; step < 6; step++)
        for (int held = -1; held < SIZE; held += 7) {
            gw_front a, b, whole;
            fill(&a, 0, 1);
            fill(&b, step - 1, step);
            assert_int_equal(gw_front_join(&a, &b, role_of, &held, &whole, NULL), GW_OK);
            assert_int_equal(whole.n, 1);
            assert_int_equal(whole.id[0], LOAD);
            check_rel(whole.k[0], dense_energy(&a, &b, held), 1e-12, "energy");
            gw_front_free(&a);
            gw_front_free(&b);
            gw_front_free(&whole);
        }
}

static gw_front_role first_half(const void *context, int id)
{
    (void)context;
    return id < SIZE / 2 ? GW_FRONT_ELIMINATE : GW_FRONT_KEEP;
}

static void it_does_not_matter_in_how_many_steps_unknowns_are_eliminated(void **state)
{
    (void)state;
    int nothing_held = -1;
    gw_front a, none = { 0 }, half, twice, once;
    fill(&a, 0, 1);
    assert_int_equal(gw_front_join(&a, &none, first_half, NULL, &half, NULL), GW_OK);
    assert_int_equal(half.n, SIZE + 1 - SIZE / 2);
    for (int i = 1; i < half.n; i++) assert_true(half.id[i] > half.id[i - 1]);
    assert_int_equal(gw_front_join(&none, &half, role_of, &nothing_held, &twice, NULL), GW_OK);
    assert_int_equal(gw_front_join(&a, &none, role_of, &nothing_held, &once, NULL), GW_OK);
    check_rel(twice.k[0], once.k[0], 1e-12, "energy");
    gw_front_free(&a);
    gw_front_free(&half);
    gw_front_free(&twice);
    gw_front_free(&once);
}

static void unknowns_without_stiffness_are_refused(void **state)
{
    (void)state;
    int nothing_held = -1;
    gw_front a, none = { 0 }, out = { .n = -1 };
    gw_error err = { 0 };
    fill(&a, 0, 1);
    a.k[5 * a.n + 5] = -1.0;
    assert_int_equal(gw_front_join(&a, &none, role_of, &nothing_held, &out, &err), GW_E_NUMERIC);
    check_contains(err.msg, "shape is too extreme");
    assert_int_equal(out.n, -1);
    gw_front_free(&a);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(two_joined_fronts_have_the_energy_of_their_sum),
        cmocka_unit_test(it_does_not_matter_in_how_many_steps_unknowns_are_eliminated),
        cmocka_unit_test(unknowns_without_stiffness_are_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
