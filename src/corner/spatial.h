/* SPDX-License-Identifier: MIT */
/**
 * Twists and wrenches about one common point, the datum of the corner.
 *
 * A twist (v, phi) moves the point at x by v + phi x x; a wrench (f, m) has its moment about the datum.
 * With a common datum, the two bodies of a joint feel the same wrench with opposite signs, and only the
 * relative twist strains the bush: that is what keeps the assembly short.
 */
#ifndef GIVEWAY_CORNER_SPATIAL_H
#define GIVEWAY_CORNER_SPATIAL_H

#include "giveway/vec.h"

#include <stdbool.h>

typedef struct gw_wrench {
    gw_vec3 f, m;
} gw_wrench;

/** A 6 x 6 block, row-major; rows are (f, m), columns (v, phi). */
typedef double gw_block[36];

/** [v]x a and a [v]x, without the zeros. */
static inline gw_mat3 gw_skew_times(gw_vec3 v, const gw_mat3 *a)
{
    gw_mat3 c;
    for (int j = 0; j < 3; j++) {
        c.m[0][j] = v.y * a->m[2][j] - v.z * a->m[1][j];
        c.m[1][j] = v.z * a->m[0][j] - v.x * a->m[2][j];
        c.m[2][j] = v.x * a->m[1][j] - v.y * a->m[0][j];
    }
    return c;
}
static inline gw_mat3 gw_times_skew(const gw_mat3 *a, gw_vec3 v)
{
    gw_mat3 c;
    for (int i = 0; i < 3; i++) {
        c.m[i][0] = a->m[i][1] * v.z - a->m[i][2] * v.y;
        c.m[i][1] = a->m[i][2] * v.x - a->m[i][0] * v.z;
        c.m[i][2] = a->m[i][0] * v.y - a->m[i][1] * v.x;
    }
    return c;
}

/** Add the 3 x 3 matrix s a to the block's quarter (row, col), each 0 or 1. */
static inline void gw_block_add(gw_block block, int row, int col, double s, const gw_mat3 *a)
{
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++) block[6 * (3 * row + i) + 3 * col + j] += s * a->m[i][j];
}

/** y += s x, 36 numbers each. */
static inline void gw_block_axpy(gw_block y, double s, const gw_block x)
{
    for (int i = 0; i < 36; i++) y[i] += s * x[i];
}

/** LU factors with partial pivoting, in place. Returns false where a pivot vanishes. */
typedef struct gw_lu6 {
    double a[36];
    int pivot[6];
} gw_lu6;

bool gw_lu6_factor(gw_lu6 *lu, const gw_block a);

/** Solve in place for a few columns, or for six; rows one after the other. */
void gw_lu6_solve_columns(const gw_lu6 *lu, double *b, int n);
void gw_lu6_solve_block(const gw_lu6 *lu, gw_block b);

#endif
