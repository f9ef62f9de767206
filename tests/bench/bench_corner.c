/* SPDX-License-Identifier: MIT */
/*
 * Nonlinear load cases a second on one thread, and what dense LU factorisation alone would take for the same
 * number of iterations: both in one run, so that the ratio holds on any machine.
 */
#include "bench/clock.h"
#include "support/corner_fixture.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>

enum { CASES = 20000, LOADS = 12 };

/* Braking, cornering and driving at different travel, so that no load is a neighbour of the last. */
static gw_corner_load load_of(int i)
{
    int l = i % LOADS;
    return (gw_corner_load){ { -4500.0 + 700.0 * l, 400.0 * (l % 5) - 2400.0, 3000.0 + 350.0 * l },
                             { 0, 0, 15.0 * (l % 3) },
                             { 0, 0, 0 },
                             -0.03 + 0.006 * l };
}

static int solve_all(double *seconds, long *iterations)
{
    fixture f;
    gw_error err = { 0 };
    gw_corner_ws *ws = NULL;
    gw_state state = { 0 };
    fixture_double_wishbone(&f);
    if (gw_corner_open(&f.corner, f.fit, &ws, &err) != GW_OK ||
        gw_state_alloc(&f.corner, &state, &err) != GW_OK) {
        fprintf(stderr, "%s\n", err.msg);
        gw_corner_close(ws);
        return 1;
    }
    double start = bench_seconds();
    for (int i = 0; i < CASES; i++) {
        gw_corner_load load = load_of(i);
        if (gw_corner_solve(ws, &load, GW_AT_TRAVEL, &state, &err) != GW_OK) fprintf(stderr, "%s\n", err.msg);
        *iterations += state.iterations;
    }
    *seconds = bench_seconds() - start;
    gw_state_free(&state);
    gw_corner_close(ws);
    return 0;
}

/* A matrix of the same size: six unknowns a moving body and the spring's force. */
static double dense_seconds(long iterations)
{
    size_t n = 6 * 6 + 1;
    gsl_matrix *a = gsl_matrix_alloc(n, n), *lu = gsl_matrix_alloc(n, n);
    gsl_vector *b = gsl_vector_alloc(n), *x = gsl_vector_alloc(n);
    gsl_permutation *p = gsl_permutation_alloc(n);
    double seconds = -1.0;
    int sign;
    if (a && lu && b && x && p) {
        for (size_t i = 0; i < n; i++) {
            gsl_vector_set(b, i, 1.0 + (double)i);
            for (size_t j = 0; j < n; j++)
                gsl_matrix_set(a, i, j, i == j ? 9.0 : 1.0 / (1.0 + (double)(i * 7 + j * 3)));
        }
        double start = bench_seconds();
        for (long i = 0; i < iterations; i++) {
            gsl_matrix_memcpy(lu, a);
            gsl_linalg_LU_decomp(lu, p, &sign);
            gsl_linalg_LU_solve(lu, p, b, x);
        }
        seconds = bench_seconds() - start;
    }
    gsl_matrix_free(a);
    gsl_matrix_free(lu);
    gsl_vector_free(b);
    gsl_vector_free(x);
    gsl_permutation_free(p);
    return seconds;
}

int main(void)
{
    double seconds = 0.0;
    long iterations = 0;
    gsl_set_error_handler_off();
    if (solve_all(&seconds, &iterations)) return 1;
    double dense = dense_seconds(iterations);
    puts("Loads on a corner of six parts, nonlinear (one thread)");
    bench_row("load cases solved", CASES / seconds, 0, "a second");
    bench_row("Newton steps", (double)iterations / CASES, 2, "a load case");
    bench_row("time of a step, all of it", seconds / dense, 2, "of a dense LU solution alone, this run");
    return 0;
}
