/* SPDX-License-Identifier: MIT */
/*
 * What gives way first. Where no balance is found, or only one beyond a snap, the last balance before it is
 * nearly lost in one direction: the tangent's smallest eigenvalue goes to zero there, and its vector is the
 * way the corner goes (J. M. T. Thompson, G. W. Hunt, "A General Theory of Elastic Stability", 1973).
 *
 * A link or a rack that turns easily about its own line is no news, so members are left to follow: the
 * softest way of the uprights alone, which is the largest eigenvalue of their part of the inverse.
 */
#include "corner/eigen.h"
#include "corner/workspace.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>

static const double HELD = 1e9;       /* keeps a wheel at its height [N/m]                              */
static const double SOFT = 2e-5;      /* a kilonewton takes it 20 mm: less is not worth a word [m/N] */
static const double VERY_SOFT = 2e-4; /* 200 mm: worth one whether it was stiffer before or not [m/N] */
static const double LEAST = 1.0;      /* so that what play leaves free is soft, and not nothing [N/m]   */

static double length_of(int row)
{
    return row % 6 < 3 ? 1.0 : GW_MOTION_LENGTH;
}

static void hold_height(const gw_corner_ws *ws, const gw_state *state, int w, gsl_matrix *k)
{
    const gw_wheel_ws *wheel = &ws->wheel[w];
    gw_vec3 hub = gw_point_now(&state->pose[wheel->upright], wheel->hub);
    const double row[6] = { 0, 0, 1, hub.y / GW_MOTION_LENGTH, -hub.x / GW_MOTION_LENGTH, 0 };
    size_t first = 6 * (size_t)(wheel->upright - 1);
    for (size_t i = 0; i < 6; i++)
        for (size_t j = 0; j < 6; j++) *gsl_matrix_ptr(k, first + i, first + j) += HELD * row[i] * row[j];
}

/* The tangent of all bodies, its symmetric part. */
static void gather(gw_corner_ws *ws, const gw_state *state, gsl_matrix *k)
{
    const gw_system *s = &ws->system;
    gw_assemble(ws, state, GW_AT_TRAVEL, false);
    gsl_matrix_set_zero(k);
    for (int i = 0; i < (int)k->size1; i++)
        for (int j = 0; j < (int)k->size2; j++) {
            int slot = s->slot[(1 + i / 6) * s->n + 1 + j / 6];
            if (slot < 0) continue;
            double half = 0.5 * s->block[slot][6 * (i % 6) + j % 6] / (length_of(i) * length_of(j));
            *gsl_matrix_ptr(k, (size_t)i, (size_t)j) += half;
            *gsl_matrix_ptr(k, (size_t)j, (size_t)i) += half;
        }
    for (size_t i = 0; i < k->size1; i++) *gsl_matrix_ptr(k, i, i) += LEAST;
    for (int w = 0; w < ws->n_wheels; w++) hold_height(ws, state, w, k);
}

/* The rows of the uprights; how many. */
static size_t upright_rows(const gw_corner_ws *ws, size_t row[6 * GW_WHEELS])
{
    size_t n = 0;
    for (int w = 0; w < ws->n_wheels; w++)
        for (size_t i = 0; i < 6; i++) row[n++] = 6 * (size_t)(ws->wheel[w].upright - 1) + i;
    return n;
}

/* How all bodies move in the direction of the lowest eigenvalue, which is none that can be stood on. */
static double lost_direction(gw_eigen *tangent, double *motion)
{
    if (!gw_eigen_solve(tangent)) return 0.0;
    for (size_t i = 0; i < tangent->a->size1; i++) motion[i] = gsl_matrix_get(tangent->vectors, i, 0);
    return HUGE_VAL;
}

/* The largest eigenvalue of the uprights' part of `inverse`, and how all bodies move then. */
static double largest(const gsl_matrix *inverse, const size_t *row, size_t n, double *motion)
{
    gw_eigen part;
    double found = 0.0;
    bool ready = gw_eigen_open(&part, n);
    for (size_t i = 0; i < n && ready; i++)
        for (size_t j = 0; j < n; j++) gsl_matrix_set(part.a, i, j, gsl_matrix_get(inverse, row[i], row[j]));
    if (ready && gw_eigen_solve(&part)) {
        found = gsl_vector_get(part.values, n - 1);
        for (size_t i = 0; i < inverse->size1; i++) {
            motion[i] = 0.0;
            for (size_t j = 0; j < n; j++)
                motion[i] += gsl_matrix_get(inverse, i, row[j]) * gsl_matrix_get(part.vectors, j, n - 1);
        }
    }
    gw_eigen_close(&part);
    return found;
}

/* The tangent's inverse in its place; false where it has a negative direction. */
static bool invert(gsl_matrix *k)
{
    return gsl_linalg_cholesky_decomp1(k) == GSL_SUCCESS && gsl_linalg_cholesky_invert(k) == GSL_SUCCESS;
}

double gw_softest_motion(gw_corner_ws *ws, const gw_state *state, double *motion)
{
    size_t row[6 * GW_WHEELS], n_rows = upright_rows(ws, row);
    gw_eigen tangent;
    double found = 0.0;
    if (gw_eigen_open(&tangent, 6 * (size_t)(ws->system.n - 1))) {
        gather(ws, state, tangent.a);
        if (invert(tangent.a)) {
            found = largest(tangent.a, row, n_rows, motion);
        } else {
            gather(ws, state, tangent.a);
            found = lost_direction(&tangent, motion);
        }
    }
    gw_eigen_close(&tangent);
    return found;
}

double gw_softened(gw_corner_ws *ws, const gw_state *from, const gw_state *to, double *motion)
{
    double before = gw_softest_motion(ws, from, motion), now = gw_softest_motion(ws, to, motion);
    if (!(before > 0.0) || now < SOFT) return 0.0;
    return fmax(before < HUGE_VAL ? now / before : 1.0, now / VERY_SOFT);
}

void gw_add_what_gives(const gw_corner_ws *ws, const double *motion, const char *axle, gw_error *err)
{
    const gw_error so_far = *err;
    int mover = gw_motion_mover(ws, motion);
    gw_fail(err, so_far.code, "%s; first to give way: %s%s%s %s", so_far.msg, axle,
            gw_motion_article(ws, mover), ws->corner->bodies[mover].name, gw_motion_way(ws, motion, mover));
}

void gw_name_the_softest(gw_corner_ws *ws, const gw_state *from, gw_error *err)
{
    double motion[6 * GW_MAX_BODIES];
    if (!err || err->code != GW_E_NUMERIC) return;
    if (gw_softened(ws, from, &ws->resume, motion) > GW_SOFTENED) gw_add_what_gives(ws, motion, "", err);
}
