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

/* No negative pivot in the triangular factors of the symmetric part of a, n x n. */
static bool has_no_negative(const double *a, int n, int stride)
{
    double l[6][6], d[6];
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

/* The upright's pivot with its vertical movement given by the others, so that the wheel centre stays level:
 * v_z = hub_x phi_y - hub_y phi_x. */
static bool stands_at_its_height(const double *k, gw_vec3 hub)
{
    static const int KEPT[5] = { 0, 1, 3, 4, 5 };
    const double up[5] = { 0.0, 0.0, -hub.y, hub.x, 0.0 };
    double a[25];
    for (int i = 0; i < 5; i++)
        for (int j = 0; j < 5; j++)
            a[5 * i + j] = k[6 * KEPT[i] + KEPT[j]] + up[i] * k[12 + KEPT[j]] + k[6 * KEPT[i] + 2] * up[j] +
                           up[i] * k[14] * up[j];
    return has_no_negative(a, 5, 5);
}

bool gw_balance_stands(const gw_corner_ws *ws, const gw_state *state, gw_drive drive)
{
    const gw_system *s = &ws->system;
    for (int i = 0; i < s->n_order; i++)
        if (!has_no_negative(s->block[s->slot[s->order[i]][s->order[i]]], 6, 6)) return false;
    const double *k = s->block[s->slot[GW_UPRIGHT][GW_UPRIGHT]];
    if (drive == GW_ON_SPRING) return has_no_negative(k, 6, 6);
    return stands_at_its_height(k, gw_point_now(&state->pose[GW_UPRIGHT], ws->hub));
}

static void add_noise(gw_system *s, int body, double size, unsigned *signs)
{
    for (int i = 0; body != GW_CHASSIS && i < 6; i++) {
        s->rhs[body][2 * i] += *signs & 1u ? size : -size;
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
            for (int i = 0; i < 6; i++) s->rhs[b][2 * i] = 0.0;
        s->border_rhs = 0.0;
        for (int j = 0; j < ws->corner->n_joints; j++) {
            double noise = DBL_EPSILON * stiffest(&ws->link[j]);
            add_noise(s, ws->link[j].a, noise, &signs);
            add_noise(s, ws->link[j].b, noise, &signs);
        }
        if (!gw_system_solve(s)) return HUGE_VAL;
        for (int i = 0; i < 6; i++) most = fmax(most, fabs(s->step[GW_UPRIGHT][i]));
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
    return gw_fail(
        err, GW_E_NUMERIC,
        "the %s corner: its rates are too far apart for a sound answer: what is rounded off in %s, "
        "the stiffest joint, would move the wheel; give that joint less, or the softest ones more",
        ws->corner->name, ws->corner->joints[most].name);
}
