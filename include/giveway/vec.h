/* SPDX-License-Identifier: MIT */
/** Vectors of three, 3 x 3 matrices and finite rotations, by value. No units of their own. */
#ifndef GIVEWAY_VEC_H
#define GIVEWAY_VEC_H

#include "giveway/api.h"

#include <math.h>

GW_API_BEGIN

typedef struct gw_vec3 {
    double x, y, z;
} gw_vec3;

/** Row-major: m[row][column]. */
typedef struct gw_mat3 {
    double m[3][3];
} gw_mat3;

static inline gw_vec3 gw_v3(double x, double y, double z)
{
    gw_vec3 made = { x, y, z };

    return made;
}
static inline gw_vec3 gw_add(gw_vec3 a, gw_vec3 b)
{
    return gw_v3(a.x + b.x, a.y + b.y, a.z + b.z);
}
static inline gw_vec3 gw_sub(gw_vec3 a, gw_vec3 b)
{
    return gw_v3(a.x - b.x, a.y - b.y, a.z - b.z);
}
static inline gw_vec3 gw_scale(double s, gw_vec3 a)
{
    return gw_v3(s * a.x, s * a.y, s * a.z);
}
static inline double gw_dot(gw_vec3 a, gw_vec3 b)
{
    return a.x * b.x + a.y * b.y + a.z * b.z;
}
static inline double gw_norm(gw_vec3 a)
{
    return sqrt(gw_dot(a, a));
}

static inline gw_vec3 gw_cross(gw_vec3 a, gw_vec3 b)
{
    return gw_v3(a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);
}

/** a + s b. */
static inline gw_vec3 gw_axpy(gw_vec3 a, double s, gw_vec3 b)
{
    return gw_v3(a.x + s * b.x, a.y + s * b.y, a.z + s * b.z);
}

static inline gw_mat3 gw_mat3_identity(void)
{
    gw_mat3 made = { { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } } };

    return made;
}

static inline gw_vec3 gw_mul(const gw_mat3 *a, gw_vec3 v)
{
    return gw_v3(a->m[0][0] * v.x + a->m[0][1] * v.y + a->m[0][2] * v.z,
                 a->m[1][0] * v.x + a->m[1][1] * v.y + a->m[1][2] * v.z,
                 a->m[2][0] * v.x + a->m[2][1] * v.y + a->m[2][2] * v.z);
}

/** Transpose of a, times v. */
static inline gw_vec3 gw_mul_t(const gw_mat3 *a, gw_vec3 v)
{
    return gw_v3(a->m[0][0] * v.x + a->m[1][0] * v.y + a->m[2][0] * v.z,
                 a->m[0][1] * v.x + a->m[1][1] * v.y + a->m[2][1] * v.z,
                 a->m[0][2] * v.x + a->m[1][2] * v.y + a->m[2][2] * v.z);
}

/** Column `j` of a. */
static inline gw_vec3 gw_col(const gw_mat3 *a, int j)
{
    return gw_v3(a->m[0][j], a->m[1][j], a->m[2][j]);
}

/* The solver's inner loops live on these: inline, so that the compiler sees through them. */

/** a b. */
static inline gw_mat3 gw_matmul(const gw_mat3 *a, const gw_mat3 *b)
{
    gw_mat3 c;
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++)
            c.m[i][j] = a->m[i][0] * b->m[0][j] + a->m[i][1] * b->m[1][j] + a->m[i][2] * b->m[2][j];
    return c;
}

/** a^T b. */
static inline gw_mat3 gw_matmul_tn(const gw_mat3 *a, const gw_mat3 *b)
{
    gw_mat3 c;
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++)
            c.m[i][j] = a->m[0][i] * b->m[0][j] + a->m[1][i] * b->m[1][j] + a->m[2][i] * b->m[2][j];
    return c;
}

/** a b^T. */
static inline gw_mat3 gw_matmul_nt(const gw_mat3 *a, const gw_mat3 *b)
{
    gw_mat3 c;
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++)
            c.m[i][j] = a->m[i][0] * b->m[j][0] + a->m[i][1] * b->m[j][1] + a->m[i][2] * b->m[j][2];
    return c;
}

/** a + b. */
static inline gw_mat3 gw_matadd(const gw_mat3 *a, const gw_mat3 *b)
{
    gw_mat3 c;
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++) c.m[i][j] = a->m[i][j] + b->m[i][j];
    return c;
}

/** s a. */
static inline gw_mat3 gw_matscale(double s, const gw_mat3 *a)
{
    gw_mat3 c;
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++) c.m[i][j] = s * a->m[i][j];
    return c;
}

/** [v]x: [v]x w = v x w. */
static inline gw_mat3 gw_skew(gw_vec3 v)
{
    gw_mat3 made = { { { 0, -v.z, v.y }, { v.z, 0, -v.x }, { -v.y, v.x, 0 } } };

    return made;
}

/** The matrix whose columns are a, b, c. */
static inline gw_mat3 gw_mat3_from_columns(gw_vec3 a, gw_vec3 b, gw_vec3 c)
{
    gw_mat3 made = { { { a.x, b.x, c.x }, { a.y, b.y, c.y }, { a.z, b.z, c.z } } };

    return made;
}

/** Rotation matrix of the rotation vector `v` [rad] (Rodrigues). */
gw_mat3 gw_rot_exp(gw_vec3 v);

/**
 * Rotation vector [rad] of a rotation matrix, length 0 to pi.
 * Accurate to rounding for small angles; at pi the sign of the axis is arbitrary.
 */
gw_vec3 gw_rot_log(const gw_mat3 *r);

/** Nearest rotation to a matrix that has drifted by rounding (one Newton step of polar decomposition). */
gw_mat3 gw_rot_tidy(const gw_mat3 *r);

GW_API_END

#endif
