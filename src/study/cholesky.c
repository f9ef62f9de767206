/* SPDX-License-Identifier: MIT */
/* Small dense symmetric systems. G. H. Golub and C. F. Van Loan, Matrix Computations, 4th ed., 4.2. */
#include "study/match_parts.h"

#include <math.h>
#include <string.h>

bool gw_cholesky(double *a, int n)
{
    for (int j = 0; j < n; j++) {
        for (int i = j; i < n; i++) {
            double sum = a[i * n + j];
            for (int k = 0; k < j; k++) sum -= a[i * n + k] * a[j * n + k];
            if (i == j && !(sum > 0.0)) return false;
            a[i * n + j] = i == j ? sqrt(sum) : sum / a[j * n + j];
        }
        for (int i = 0; i < j; i++) a[i * n + j] = 0.0;
    }
    return true;
}

bool gw_lower_factor(double *a, int n)
{
    return gw_cholesky(a, n);
}

void gw_cholesky_solve(const double *l, int n, double *b)
{
    for (int i = 0; i < n; i++) {
        for (int k = 0; k < i; k++) b[i] -= l[i * n + k] * b[k];
        b[i] /= l[i * n + i];
    }
    for (int i = n - 1; i >= 0; i--) {
        for (int k = i + 1; k < n; k++) b[i] -= l[k * n + i] * b[k];
        b[i] /= l[i * n + i];
    }
}

void gw_cholesky_inverse(const double *l, int n, double *out)
{
    memset(out, 0, (size_t)n * (size_t)n * sizeof *out);
    for (int j = 0; j < n; j++) {
        double *row = out + (long)j * n;
        row[j] = 1.0;
        gw_cholesky_solve(l, n, row);
    }
}
