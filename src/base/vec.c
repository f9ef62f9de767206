/* SPDX-License-Identifier: MIT */
#include "giveway/vec.h"

gw_mat3 gw_rot_exp(gw_vec3 v)
{
    double t2 = gw_dot(v, v), t = sqrt(t2), s, c;
    if (t2 < 1e-8) { /* series: the quotients lose digits near zero */
        s = 1.0 - t2 / 6.0 + t2 * t2 / 120.0;
        c = 0.5 - t2 / 24.0 + t2 * t2 / 720.0;
    } else {
        double half = sin(0.5 * t);
        s = sin(t) / t;
        c = 2.0 * half * half / t2;
    }
    double d = 1.0 - c * t2;
    return (gw_mat3){ { { d + c * v.x * v.x, c * v.x * v.y - s * v.z, c * v.x * v.z + s * v.y },
                        { c * v.x * v.y + s * v.z, d + c * v.y * v.y, c * v.y * v.z - s * v.x },
                        { c * v.x * v.z - s * v.y, c * v.y * v.z + s * v.x, d + c * v.z * v.z } } };
}

/* The matrix is symmetric at pi, so the axis comes from its diagonal, largest entry first. */
static gw_vec3 log_near_pi(const gw_mat3 *r, gw_vec3 sine, double angle)
{
    int k = 0;
    for (int i = 1; i < 3; i++)
        if (r->m[i][i] > r->m[k][k]) k = i;
    double axis[3], c = cos(angle);
    axis[k] = sqrt(fmax(0.0, (r->m[k][k] - c) / (1.0 - c)));
    for (int i = 0; i < 3; i++)
        if (i != k) axis[i] = (r->m[i][k] + r->m[k][i]) / (2.0 * (1.0 - c) * axis[k]);
    gw_vec3 v = gw_v3(axis[0], axis[1], axis[2]);
    double sign = gw_dot(v, sine) < 0.0 ? -1.0 : 1.0;
    return gw_scale(sign * angle / gw_norm(v), v);
}

/* atan(t)/t with x = t^2, to x^8. */
static double atan_over(double x)
{
    double tail = 1.0 / 9 - x * (1.0 / 11 - x * (1.0 / 13 - x * (1.0 / 15 - x / 17)));
    return 1.0 - x * (1.0 / 3 - x * (1.0 / 5 - x * (1.0 / 7 - x * tail)));
}

gw_vec3 gw_rot_log(const gw_mat3 *r)
{
    gw_vec3 sine = gw_v3(0.5 * (r->m[2][1] - r->m[1][2]), 0.5 * (r->m[0][2] - r->m[2][0]),
                         0.5 * (r->m[1][0] - r->m[0][1]));
    double s2 = gw_dot(sine, sine);
    double c = 0.5 * (r->m[0][0] + r->m[1][1] + r->m[2][2] - 1.0);
    if (c > 0.0) { /* atan(t)/t in series of t = tan(angle/2): up to 13 degrees the rest is below rounding */
        double x = s2 / ((1.0 + c) * (1.0 + c));
        if (x < 0.0125) return gw_scale(2.0 / (1.0 + c) * atan_over(x), sine);
    }
    double s = sqrt(s2);
    double angle = atan2(s, c);
    if (c < 0.0 && s < 1e-3) return log_near_pi(r, sine, angle);
    return gw_scale(angle / s, sine);
}

gw_mat3 gw_rot_tidy(const gw_mat3 *r)
{
    gw_mat3 g = gw_matmul_tn(r, r);
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++) g.m[i][j] = (i == j ? 1.5 : 0.0) - 0.5 * g.m[i][j];
    return gw_matmul(r, &g);
}
