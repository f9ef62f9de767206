/* SPDX-License-Identifier: MIT */
#include "bush/band.h"

#include "bush/panels.h"

#include <gsl/gsl_blas.h>
#include <gsl/gsl_linalg.h>
#include <stdlib.h>
#include <string.h>

gw_status gw_band_alloc(gw_band *band, int n, int width, int tail, int loads, gw_error *err)
{
    *band = (gw_band){ .n = n, .width = width, .tail = tail, .loads = loads };
    band->lower = gsl_matrix_calloc((size_t)n, (size_t)(width + GW_PANEL));
    band->load = calloc((size_t)loads * (size_t)n, sizeof *band->load);
    if (band->lower && band->load) return GW_OK;
    gw_band_free(band);
    return gw_fail(err, GW_E_NOMEM, "no memory for the rubber's %d unknowns", n);
}

void gw_band_free(gw_band *band)
{
    gsl_matrix_free(band->lower);
    free(band->load);
    *band = (gw_band){ 0 };
}

/* Row i of the element against everything that is given: its load, or its share of the given energy. */
static void add_given(gw_band *band, const double *row, int dofs, int i, const int *eq, const double *given)
{
    for (int l = 0; l < band->loads; l++) {
        double sum = 0.0;
        for (int j = 0; j < dofs; j++)
            if (eq[j] < 0) sum += row[j] * given[l * dofs + j];
        if (eq[i] >= 0)
            band->load[l * band->n + eq[i]] += sum;
        else
            band->given[l] += given[l * dofs + i] * sum;
    }
}

void gw_band_assemble(gw_band *band, const double *k, int stride, int dofs, const int *eq,
                      const double *given)
{
    bool any_given = false;
    for (int i = 0; i < dofs; i++) any_given = any_given || eq[i] < 0;
    for (int i = 0; i < dofs; i++) {
        const double *row = k + i * stride;
        if (any_given) add_given(band, row, dofs, i, eq, given);
        if (eq[i] < 0) continue;
        double *column = gsl_matrix_ptr(band->lower, (size_t)eq[i], 0);
        for (int j = 0; j < dofs; j++)
            if (eq[j] >= eq[i]) column[eq[j] - eq[i]] += row[j];
    }
}

/* y = L^-1 f, column by column. */
static void forward(const gw_band *band, double *f)
{
    for (int i = 0; i < band->n; i++) {
        const double *column = gsl_matrix_const_ptr(band->lower, (size_t)i, 0);
        int reach = band->n - 1 - i < band->width ? band->n - 1 - i : band->width;
        f[i] /= column[0];
        for (int k = 1; k <= reach; k++) f[i + k] -= column[k] * f[i];
    }
}

gw_status gw_band_factor(gw_band *band, gw_error *err)
{
    gw_lower lower = { band->lower->data, band->lower->tda, band->n, band->width };
    gw_status status = gw_panels_factor(&lower, band->n, err);
    if (status != GW_OK) return status;
    for (int l = 0; l < band->loads; l++) forward(band, band->load + l * band->n);
    return GW_OK;
}

/* L L^T of the tail, lower triangle; column by column, as L is stored. */
static void multiply_tail(const gw_band *band, gsl_matrix *s)
{
    int first = band->n - band->tail;
    for (int k = 0; k < band->tail; k++) {
        const double *column = gsl_matrix_const_ptr(band->lower, (size_t)(first + k), 0);
        int reach = band->tail - 1 - k < band->width ? band->tail - 1 - k : band->width;
        for (int i = 0; i <= reach; i++) {
            double *row = gsl_matrix_ptr(s, (size_t)(k + i), (size_t)k), f = column[i];
            for (int j = 0; j <= i; j++) row[j] += f * column[j];
        }
    }
}

/* The tail's own load L y. */
static void multiply_load(const gw_band *band, const double *y, gsl_vector *g)
{
    int first = band->n - band->tail;
    for (int k = 0; k < band->tail; k++) {
        const double *column = gsl_matrix_const_ptr(band->lower, (size_t)(first + k), 0);
        int reach = band->tail - 1 - k < band->width ? band->tail - 1 - k : band->width;
        for (int i = 0; i <= reach; i++) *gsl_vector_ptr(g, (size_t)(k + i)) += column[i] * y[k];
    }
}

/* Stiffness and load of the tail by itself, with the held unknowns turned into identities. */
static void reduce_tail(const gw_band *band, const double *y, const bool *held, gsl_matrix *s, gsl_vector *g)
{
    multiply_tail(band, s);
    multiply_load(band, y, g);
    for (int i = 0; i < band->tail; i++) {
        double *row = gsl_matrix_ptr(s, (size_t)i, 0);
        if (held[i]) gsl_vector_set(g, (size_t)i, 0.0);
        for (int j = 0; j <= i; j++)
            if (held[i] || held[j]) row[j] = i == j ? 1.0 : 0.0;
    }
}

static gw_status tail_energy(const gw_band *band, const double *y, const bool *held, double *gained,
                             gw_error *err)
{
    gw_status status = GW_OK;
    gsl_matrix *s = gsl_matrix_calloc((size_t)band->tail, (size_t)band->tail);
    gsl_vector *g = gsl_vector_calloc((size_t)band->tail);
    if (!s || !g) {
        status = gw_fail(err, GW_E_NOMEM, "no memory for the rubber's plane of symmetry");
        goto done;
    }
    reduce_tail(band, y, held, s, g);
    if (gsl_linalg_cholesky_decomp1(s) || gsl_blas_dtrsv(CblasLower, CblasNoTrans, CblasNonUnit, s, g)) {
        status = gw_fail(err, GW_E_NUMERIC, "the rubber's plane of symmetry cannot be factorised");
        goto done;
    }
    gsl_blas_ddot(g, g, gained);
done:
    gsl_matrix_free(s);
    gsl_vector_free(g);
    return status;
}

gw_status gw_band_energy(const gw_band *band, int load, const bool *held, double *energy, gw_error *err)
{
    const double *y = band->load + load * band->n;
    int first = band->n - band->tail;
    double gained = 0.0, in_tail = 0.0;
    gw_status status = GW_OK;

    for (int i = 0; i < first; i++) gained += y[i] * y[i];
    if (held && band->tail > 0)
        status = tail_energy(band, y + first, held, &in_tail, err);
    else
        for (int i = first; i < band->n; i++) in_tail += y[i] * y[i];
    if (status == GW_OK) *energy = band->given[load] - gained - in_tail;
    return status;
}
