/* SPDX-License-Identifier: MIT */
#include "corner/spatial.h"

#include <math.h>
#include <string.h>

static void swap_rows(double *a, int n, int i, int k)
{
    for (int j = 0; j < n; j++) {
        double t = a[i * n + j];
        a[i * n + j] = a[k * n + j];
        a[k * n + j] = t;
    }
}

bool gw_lu6_factor(gw_lu6 *lu, const gw_block block)
{
    double *a = lu->a;
    memcpy(a, block, sizeof lu->a);
    for (int k = 0; k < 6; k++) {
        int p = k;
        for (int i = k + 1; i < 6; i++)
            if (fabs(a[6 * i + k]) > fabs(a[6 * p + k])) p = i;
        lu->pivot[k] = p;
        if (!(fabs(a[6 * p + k]) > 0.0)) return false; /* also catches NaN */
        if (p != k) swap_rows(a, 6, p, k);
        double inverse = 1.0 / a[6 * k + k];
        for (int i = k + 1; i < 6; i++) {
            double factor = a[6 * i + k] *= inverse;
            for (int j = k + 1; j < 6; j++) a[6 * i + j] -= factor * a[6 * k + j];
        }
    }
    return true;
}

/* The number of columns is known where this is called, so a row of them becomes a few vectors. */
static inline void substitute(const double *restrict a, const int *restrict pivot, double *restrict b, int n)
{
    for (int k = 0; k < 6; k++)
        if (pivot[k] != k) swap_rows(b, n, pivot[k], k);
    for (int i = 1; i < 6; i++)
        for (int k = 0; k < i; k++)
            for (int j = 0; j < n; j++) b[i * n + j] -= a[6 * i + k] * b[k * n + j];
    for (int i = 5; i >= 0; i--) {
        for (int k = i + 1; k < 6; k++)
            for (int j = 0; j < n; j++) b[i * n + j] -= a[6 * i + k] * b[k * n + j];
        double inverse = 1.0 / a[6 * i + i];
        for (int j = 0; j < n; j++) b[i * n + j] *= inverse;
    }
}

void gw_lu6_solve_columns(const gw_lu6 *lu, double *b, int n)
{
    if (n == 1)
        substitute(lu->a, lu->pivot, b, 1);
    else if (n == 2)
        substitute(lu->a, lu->pivot, b, 2);
    else if (n == 3)
        substitute(lu->a, lu->pivot, b, 3);
    else
        substitute(lu->a, lu->pivot, b, n);
}

void gw_lu6_solve_block(const gw_lu6 *lu, gw_block b)
{
    substitute(lu->a, lu->pivot, b, 6);
}
