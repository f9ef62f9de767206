/* SPDX-License-Identifier: MIT */
/*
 * Gaussian elimination with row pivoting (G. H. Golub, C. F. Van Loan, "Matrix Computations", 3.4). That of
 * GSL 2.7 allocates while it works and does not look whether it got anything.
 */
#include "corner/dense.h"

#include <math.h>
#include <stdlib.h>

bool gw_dense_open(gw_dense *d, int n)
{
    size_t size = (size_t)n;
    *d = (gw_dense){ .n = n, .memory = calloc(size * size + 2 * size, sizeof *d->memory) };
    d->row = calloc(size, sizeof *d->row);
    if (!d->memory || !d->row) return false;
    d->a = d->memory;
    d->rhs = d->a + size * size;
    d->x = d->rhs + size;
    return true;
}

void gw_dense_close(gw_dense *d)
{
    free(d->memory);
    free(d->row);
    *d = (gw_dense){ 0 };
}

static void swap_rows(gw_dense *d, int i, int k)
{
    for (int j = 0; j < d->n; j++) {
        double t = *gw_dense_at(d, i, j);
        *gw_dense_at(d, i, j) = *gw_dense_at(d, k, j);
        *gw_dense_at(d, k, j) = t;
    }
    int t = d->row[i];
    d->row[i] = d->row[k];
    d->row[k] = t;
}

static void eliminate(gw_dense *d, int k)
{
    for (int i = k + 1; i < d->n; i++) {
        double factor = *gw_dense_at(d, i, k) / *gw_dense_at(d, k, k);
        *gw_dense_at(d, i, k) = factor;
        if (factor == 0.0) continue;
        for (int j = k + 1; j < d->n; j++) *gw_dense_at(d, i, j) -= factor * *gw_dense_at(d, k, j);
    }
}

bool gw_dense_factor(gw_dense *d)
{
    for (int i = 0; i < d->n; i++) d->row[i] = i;
    for (int k = 0; k < d->n; k++) {
        int best = k;
        for (int i = k + 1; i < d->n; i++)
            if (fabs(*gw_dense_at(d, i, k)) > fabs(*gw_dense_at(d, best, k))) best = i;
        if (best != k) swap_rows(d, k, best);
        if (!(fabs(*gw_dense_at(d, k, k)) > 0.0)) return false;
        eliminate(d, k);
    }
    return true;
}

void gw_dense_solve(gw_dense *d)
{
    for (int i = 0; i < d->n; i++) {
        d->x[i] = d->rhs[d->row[i]];
        for (int j = 0; j < i; j++) d->x[i] -= *gw_dense_at(d, i, j) * d->x[j];
    }
    for (int i = d->n - 1; i >= 0; i--) {
        for (int j = i + 1; j < d->n; j++) d->x[i] -= *gw_dense_at(d, i, j) * d->x[j];
        d->x[i] /= *gw_dense_at(d, i, i);
    }
}
