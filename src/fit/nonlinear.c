/* SPDX-License-Identifier: MIT */
#include "fit/nonlinear.h"

#include <gsl/gsl_blas.h>
#include <gsl/gsl_linalg.h>
#include <gsl/gsl_multifit_nlinear.h>
#include <math.h>
#include <stdlib.h>

static const double STEP_TOLERANCE = 1e-12, GRADIENT_TOLERANCE = 1e-14;
enum { MAX_STEPS = 500 };

/** What the library hands to each call: its vectors may lie in strides, ours do not. */
typedef struct call {
    const gw_nonlinear *problem;
    double *r;
} call;

static int residuals(const gsl_vector *p, void *context, gsl_vector *r)
{
    const call *c = context;
    c->problem->residuals(p->data, c->r, c->problem->context);
    for (size_t i = 0; i < r->size; i++) /* not finite: a trial step far out, which is taken back */
        gsl_vector_set(r, i, isfinite(c->r[i]) ? c->r[i] : 1e100);
    return GSL_SUCCESS;
}

static gw_status no_least(gw_error *err)
{
    return gw_fail(err, GW_E_NUMERIC, "no law fits these readings: check columns and units");
}

static gw_status iterate(gsl_multifit_nlinear_workspace *ws, gsl_multifit_nlinear_fdf *fdf, const double *p,
                         size_t m, double *sum, gw_error *err)
{
    gsl_vector_const_view start = gsl_vector_const_view_array(p, m);
    int info = 0;
    if (gsl_multifit_nlinear_init(&start.vector, fdf, ws) != GSL_SUCCESS) return no_least(err);
    int code = gsl_multifit_nlinear_driver(MAX_STEPS, STEP_TOLERANCE, GRADIENT_TOLERANCE, 0.0, NULL, NULL,
                                           &info, ws);
    if (code != GSL_SUCCESS && code != GSL_ENOPROG && code != GSL_EMAXITER) return no_least(err);
    gsl_blas_ddot(gsl_multifit_nlinear_residual(ws), gsl_multifit_nlinear_residual(ws), sum);
    return isfinite(*sum) && *sum < 1e100 ? GW_OK : no_least(err);
}

gw_status gw_nonlinear_fit(const gw_nonlinear *problem, double *p, double *sum, gw_error *err)
{
    gsl_multifit_nlinear_parameters settings = gsl_multifit_nlinear_default_parameters();
    settings.fdtype = GSL_MULTIFIT_NLINEAR_CTRDIFF;
    settings.h_df = 6.0e-6; /* cube root of the rounding */
    size_t n = (size_t)problem->n, m = (size_t)problem->m;
    call context = { problem, malloc(n * sizeof(double)) };
    gsl_multifit_nlinear_fdf fdf = { .f = residuals, .n = n, .p = m, .params = &context };
    gsl_multifit_nlinear_workspace *ws =
        gsl_multifit_nlinear_alloc(gsl_multifit_nlinear_trust, &settings, n, m);
    double least = 0.0;
    gw_status st = ws && context.r ? iterate(ws, &fdf, p, m, &least, err)
                                   : gw_fail(err, GW_E_NOMEM, "out of memory for a fit");
    if (st == GW_OK) {
        const gsl_vector *at = gsl_multifit_nlinear_position(ws);
        for (size_t i = 0; i < m; i++) p[i] = gsl_vector_get(at, i);
        *sum = least;
    }
    if (ws) gsl_multifit_nlinear_free(ws);
    free(context.r);
    return st;
}

/* Column k of J: the residuals a little above and below. */
static void derivative(const gw_nonlinear *problem, double *p, int k, double *above, double *below)
{
    double at = p[k], step = 6.0e-6 * (at != 0.0 ? fabs(at) : 1.0);
    p[k] = at + step;
    problem->residuals(p, above, problem->context);
    p[k] = at - step;
    problem->residuals(p, below, problem->context);
    p[k] = at;
    for (int i = 0; i < problem->n; i++) above[i] = (above[i] - below[i]) / (2.0 * step);
}

/* inverse(J^T J) by the triangle of J's own QR, scaled to columns of length one, so that nothing is squared.
 */
static gw_status invert(gsl_matrix *j, double *root, gw_error *err)
{
    size_t m = j->size2;
    double *length = malloc(m * sizeof *length);
    gsl_vector *tau = gsl_vector_alloc(m);
    gw_status st = length && tau ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for a fit");
    for (size_t k = 0; st == GW_OK && k < m; k++) {
        gsl_vector_view column = gsl_matrix_column(j, k);
        length[k] = gsl_blas_dnrm2(&column.vector);
        if (!(length[k] > 0.0))
            st = no_least(err);
        else
            gsl_vector_scale(&column.vector, 1.0 / length[k]);
    }
    if (st == GW_OK) gsl_linalg_QR_decomp(j, tau);
    for (size_t k = 0; st == GW_OK && k < m; k++)
        if (!(fabs(gsl_matrix_get(j, k, k)) > 1e-13)) st = no_least(err);
    if (st == GW_OK) {
        gsl_matrix_view square = gsl_matrix_submatrix(j, 0, 0, m, m);
        gsl_linalg_tri_upper_invert(&square.matrix);
        for (size_t k = 0; k < m; k++)
            for (size_t c = 0; c < m; c++)
                root[k * m + c] = c >= k ? gsl_matrix_get(&square.matrix, k, c) / length[k] : 0.0;
    }
    free(length);
    gsl_vector_free(tau);
    return st;
}

gw_status gw_nonlinear_root(const gw_nonlinear *problem, const double *p, double *root, gw_error *err)
{
    size_t n = (size_t)problem->n, m = (size_t)problem->m;
    double *at = malloc(m * sizeof *at), *r = malloc(2 * n * sizeof *r);
    gsl_matrix *j = gsl_matrix_alloc(n, m);
    gw_status st = at && r && j ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for a fit");
    for (size_t k = 0; st == GW_OK && k < m; k++) at[k] = p[k];
    for (size_t k = 0; st == GW_OK && k < m; k++) {
        derivative(problem, at, (int)k, r, r + n);
        for (size_t i = 0; i < n; i++) gsl_matrix_set(j, i, k, r[i]);
    }
    if (st == GW_OK) st = invert(j, root, err);
    free(at);
    free(r);
    gsl_matrix_free(j);
    return st;
}

gw_status gw_nonlinear_spread(const gw_nonlinear *problem, const double *p, double *spread, gw_error *err)
{
    size_t m = (size_t)problem->m;
    double *root = malloc(m * m * sizeof *root);
    gw_status st =
        root ? gw_nonlinear_root(problem, p, root, err) : gw_fail(err, GW_E_NOMEM, "out of memory for a fit");
    for (size_t k = 0; st == GW_OK && k < m; k++) {
        double sum = 0.0;
        for (size_t c = k; c < m; c++) sum += root[k * m + c] * root[k * m + c];
        spread[k] = sqrt(sum);
    }
    free(root);
    return st;
}
