/* SPDX-License-Identifier: MIT */
/*
 * Can a balance be trusted? Two questions that Newton's iteration does not ask.
 *
 * Does it stand: a balance from which the bodies would run away at a touch is none. It stands where the
 * tangent, with the wheel held at its height wherever a travel is given, has no negative direction. The
 * elimination has the answer already: a symmetric matrix is positive definite if and only if the pivot
 * blocks of its elimination are. Source: E. V. Haynsworth, "Determination of the inertia of a partitioned
 * Hermitian matrix", Linear Algebra and its Applications 1 (1968), 73-81. At a balance the tangent is
 * symmetric but for moments of fixed direction; the symmetric part is taken.
 *
 * Does rounding leave it alone: a matrix with a rate of 1e15 N/m in it is rounded at a tenth of a newton a
 * metre, and a direction in which the wheel is held by 1 N/m drowns in that. The balance itself comes out
 * well, since the imbalance is made joint by joint from strains, but the rates and shares that are read from
 * the matrix do not. The rounding of every joint is put on the bodies as a load; how far the wheel goes under
 * it, for a metre of movement, is the relative error of what is read.
 */
#include "corner/workspace.h"

#include <float.h>
#include <string.h>

static const double NONE = 1e-9;    /* a pivot this small beside its diagonal has no sign          */
static const double LENGTH = 1.0;   /* of a corner: what positions and levers are of the order of [m] */
static const double NOTICED = 1e-4; /* error of rates and shares that is one [-] */
enum { PATTERNS = 4 };

enum { MOST = 6 * GW_WHEELS };

/* No negative pivot in the triangular factors of the symmetric part of a, n x n. */
static bool has_no_negative(const double *a, int n, int stride)
{
    double l[MOST][MOST], d[MOST];
    for (int j = 0; j < n; j++) {
        d[j] = a[j * stride + j];
        for (int k = 0; k < j; k++) d[j] -= l[j][k] * l[j][k] * d[k];
        double least = NONE * fabs(a[j * stride + j]);
        if (!(d[j] >= -least) || a[j * stride + j] < 0.0) return false;
        for (int i = j + 1; i < n; i++) {
            double sum = 0.5 * (a[i * stride + j] + a[j * stride + i]);
            for (int k = 0; k < j; k++) sum -= l[i][k] * l[j][k] * d[k];
            l[i][j] = d[j] > least ? sum / d[j] : 0.0;
        }
    }
    return true;
}

/* The uprights' pivot, 6 x 6 or 12 x 12. */
static void gather_uprights(const gw_system *s, double *a)
{
    int n = 6 * s->n_wheels;
    for (int v = 0; v < s->n_wheels; v++)
        for (int w = 0; w < s->n_wheels; w++) {
            const double *k = gw_block_at(s, s->upright[v], s->upright[w]);
            for (int i = 0; i < 6; i++)
                for (int j = 0; j < 6; j++) a[(6 * v + i) * n + 6 * w + j] = k[6 * i + j];
        }
}

/* The uprights' pivot with the vertical movement of each given by its others, so that its wheel centre stays
 * level: v_z = hub_x phi_y - hub_y phi_x. */
static bool stand_at_their_height(const gw_corner_ws *ws, const gw_state *state, const double *k)
{
    static const int KEPT[5] = { 0, 1, 3, 4, 5 };
    double up[MOST] = { 0 }, a[25 * GW_WHEELS * GW_WHEELS];
    int of[MOST], n = 5 * ws->n_wheels, stride = 6 * ws->n_wheels;
    for (int w = 0; w < ws->n_wheels; w++) {
        gw_vec3 hub = gw_point_now(&state->pose[ws->wheel[w].upright], ws->wheel[w].hub);
        for (int i = 0; i < 5; i++) of[5 * w + i] = 6 * w + KEPT[i];
        up[5 * w + 2] = -hub.y;
        up[5 * w + 3] = hub.x;
    }
    for (int i = 0; i < n; i++)
        for (int j = 0; j < n; j++) {
            int row = of[i], col = of[j], row_z = 6 * (i / 5) + 2, col_z = 6 * (j / 5) + 2;
            a[n * i + j] = k[stride * row + col] + up[i] * k[stride * row_z + col] +
                           k[stride * row + col_z] * up[j] + up[i] * k[stride * row_z + col_z] * up[j];
        }
    return has_no_negative(a, n, n);
}

bool gw_balance_stands(const gw_corner_ws *ws, const gw_state *state, gw_drive drive)
{
    const gw_system *s = &ws->system;
    double k[MOST * MOST];
    for (int i = 0; i < s->n_order; i++)
        if (!has_no_negative(gw_block_at(s, s->order[i], s->order[i]), 6, 6)) return false;
    gather_uprights(s, k);
    if (drive == GW_ON_SPRING) return has_no_negative(k, 6 * s->n_wheels, 6 * s->n_wheels);
    return stand_at_their_height(ws, state, k);
}

static void add_noise(gw_system *s, int body, double size, unsigned *signs)
{
    for (int i = 0; body != GW_CHASSIS && i < 6; i++) {
        s->rhs[body][s->n_columns * i] += *signs & 1u ? size : -size;
        *signs = *signs * 1664525u + 1013904223u; /* any mixture of signs will do */
        *signs ^= *signs >> 16;
    }
}

static double stiffest(const gw_link *link)
{
    double k = 0.0;
    for (int i = 0; i < 3; i++) k = fmax(k, fmax(link->law.k[i] * LENGTH, link->law.c[i]));
    return k;
}

/* How far the wheel goes, at most, under the rounding of a metre's movement in every joint [m, rad]. */
static double shaken(gw_corner_ws *ws)
{
    gw_system *s = &ws->system;
    unsigned signs = 1;
    double most = 0.0;
    for (int p = 0; p < PATTERNS; p++) {
        gw_assemble(ws, &ws->reference, GW_AT_TRAVEL, false);
        for (int b = 1; b < s->n; b++)
            for (int i = 0; i < 6; i++) s->rhs[b][s->n_columns * i] = 0.0;
        for (int w = 0; w < ws->n_wheels; w++) s->border_rhs[w] = 0.0;
        for (int j = 0; j < ws->corner->n_joints; j++) {
            double noise = DBL_EPSILON * stiffest(&ws->link[j]);
            add_noise(s, ws->link[j].a, noise, &signs);
            add_noise(s, ws->link[j].b, noise, &signs);
        }
        if (!gw_system_solve(s)) return HUGE_VAL;
        for (int i = 0; i < 6 * ws->n_wheels; i++)
            most = fmax(most, fabs(s->step[ws->wheel[i / 6].upright][i % 6]));
    }
    return most;
}

gw_status gw_check_rounding(gw_corner_ws *ws, gw_error *err)
{
    int most = 0;
    double moved = shaken(ws);
    if (moved <= NOTICED) return GW_OK;
    for (int j = 1; j < ws->corner->n_joints; j++)
        if (stiffest(&ws->link[j]) > stiffest(&ws->link[most])) most = j;
    return gw_fail(err, GW_E_NUMERIC,
                   "the %s %s: its rates are too far apart for a reliable answer: what is rounded off in %s, "
                   "the stiffest joint, would move the wheel; give that joint less, or the softest ones more",
                   ws->corner->name, gw_corner_or_axle(ws), ws->corner->joints[most].name);
}
