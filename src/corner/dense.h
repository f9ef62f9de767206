/* SPDX-License-Identifier: MIT */
/** A small dense system, factored once and solved often. */
#ifndef GIVEWAY_CORNER_DENSE_H
#define GIVEWAY_CORNER_DENSE_H

#include <stdbool.h>
#include <stddef.h>

typedef struct gw_dense {
    int n;
    double *a;       /**< n x n, row-major; the factors once it is factored            */
    double *rhs, *x; /**< n each                                                       */
    int *row;        /**< row[i]: the row of `rhs` that became row i                   */
    double *memory;
} gw_dense;

/** All zero; false when memory is out. Close it whatever is returned. */
bool gw_dense_open(gw_dense *d, int n);
void gw_dense_close(gw_dense *d);

/** LU with row pivoting, in place; false where a pivot is zero or no number. */
bool gw_dense_factor(gw_dense *d);

/** x from rhs, which is left as it is. */
void gw_dense_solve(gw_dense *d);

static inline double *gw_dense_at(gw_dense *d, int i, int j)
{
    return &d->a[(size_t)i * (size_t)d->n + (size_t)j];
}

#endif
