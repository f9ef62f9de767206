/* SPDX-License-Identifier: MIT */
/*
 * The bordered matrix of a corner and its elimination.
 *
 * Members couple only through joints, so most 6 x 6 blocks are zero. Members are eliminated one by one,
 * fewest neighbours first (minimum degree; for links between upright and chassis that costs no fill at
 * all, and a tie rod goes before the rack that it hangs on); the upright comes last, together with the
 * extra unknown of the border, as one 7 x 7 system with pivoting. The border's column may sit on any
 * body, its row is the upright's: the matrix is not symmetric.
 */
#include "corner/workspace.h"

#include <math.h>
#include <string.h>

static void couple(bool near[GW_MAX_BODIES][GW_MAX_BODIES], int a, int b)
{
    if (a != GW_CHASSIS && b != GW_CHASSIS) near[a][b] = near[b][a] = true;
}

static int degree(bool near[GW_MAX_BODIES][GW_MAX_BODIES], const bool *done, int n, int body)
{
    int count = 0;
    for (int j = 1; j < n; j++)
        if (j != body && !done[j] && near[body][j]) count++;
    return count;
}

static int least_coupled(bool near[GW_MAX_BODIES][GW_MAX_BODIES], const bool *done, int n)
{
    int best = -1, best_degree = 0;
    for (int m = GW_UPRIGHT + 1; m < n; m++) {
        if (done[m]) continue;
        int d = degree(near, done, n, m);
        if (best < 0 || d < best_degree) {
            best = m;
            best_degree = d;
        }
    }
    return best;
}

/* Choose the order and mark the fill that each elimination brings. */
static void order_members(gw_system *s, bool near[GW_MAX_BODIES][GW_MAX_BODIES])
{
    bool done[GW_MAX_BODIES] = { false };
    for (int m; (m = least_coupled(near, done, s->n)) >= 0;) {
        s->order[s->n_order++] = m;
        done[m] = true;
        for (int j = 1; j < s->n; j++)
            if (!done[j] && near[m][j]) s->near[m][s->n_near[m]++] = j;
        for (int i = 0; i < s->n_near[m]; i++)
            for (int j = 0; j < s->n_near[m]; j++) couple(near, s->near[m][i], s->near[m][j]);
    }
}

static void number_blocks(gw_system *s, bool near[GW_MAX_BODIES][GW_MAX_BODIES])
{
    for (int i = 0; i < GW_MAX_BODIES; i++)
        for (int j = 0; j < GW_MAX_BODIES; j++) {
            bool used = i > 0 && j > 0 && i < s->n && j < s->n && (i == j || near[i][j]);
            s->slot[i][j] = used ? s->n_blocks++ : -1;
        }
}

gw_status gw_system_build(gw_corner_ws *ws, gw_error *err)
{
    gw_system *s = &ws->system;
    bool near[GW_MAX_BODIES][GW_MAX_BODIES] = { { false } };
    memset(s, 0, sizeof *s);
    s->n = ws->corner->n_bodies;
    for (int j = 0; j < ws->n_links; j++) couple(near, ws->link[j].a, ws->link[j].b);
    order_members(s, near);
    number_blocks(s, near);
    size_t n = (size_t)s->n;
    s->block = gw_arena_alloc(&ws->arena, (size_t)s->n_blocks, sizeof *s->block);
    s->rhs = gw_arena_alloc(&ws->arena, n, sizeof *s->rhs);
    s->lu = gw_arena_alloc(&ws->arena, n, sizeof *s->lu);
    s->coupling = gw_arena_alloc(&ws->arena, n, sizeof *s->coupling);
    s->step = gw_arena_alloc(&ws->arena, n, sizeof *s->step);
    if (!s->block || !s->rhs || !s->lu || !s->coupling || !s->step)
        return gw_fail(err, GW_E_NOMEM, "out of memory for the corner's matrix");
    return GW_OK;
}

/* y -= A x for n columns, rows of `stride` numbers. */
static inline void subtract_product(double *restrict y, const double *restrict a, const double *restrict x,
                                    int n)
{
    for (int i = 0; i < 6; i++)
        for (int k = 0; k < 6; k++) {
            double factor = a[6 * i + k];
            for (int j = 0; j < n; j++) y[i * n + j] -= factor * x[k * n + j];
        }
}

static bool eliminate(gw_system *s, int m)
{
    gw_lu6 *lu = &s->lu[m];
    if (!gw_lu6_factor(lu, s->block[s->slot[m][m]])) return false;
    gw_lu6_solve_pair(lu, s->rhs[m]);
    for (int j = 0; j < s->n_near[m]; j++) {
        int b = s->near[m][j];
        memcpy(s->coupling[b], s->block[s->slot[m][b]], sizeof(gw_block));
        gw_lu6_solve_block(lu, s->coupling[b]);
        memcpy(s->block[s->slot[m][b]], s->coupling[b], sizeof(gw_block)); /* kept for going back */
    }
    for (int i = 0; i < s->n_near[m]; i++) {
        int a = s->near[m][i];
        const double *k = s->block[s->slot[a][m]];
        for (int j = 0; j < s->n_near[m]; j++) {
            int b = s->near[m][j];
            subtract_product(s->block[s->slot[a][b]], k, s->coupling[b], 6);
        }
        subtract_product(s->rhs[a], k, s->rhs[m], 2);
    }
    return true;
}

/* Dense 7 x 7 with row pivoting, row-scaled because the border is a length among forces. */
static bool solve_seven(double a[7][8], double x[7])
{
    for (int i = 0; i < 7; i++) {
        double big = 0.0;
        for (int j = 0; j < 7; j++) big = fmax(big, fabs(a[i][j]));
        if (!(big > 0.0)) return false;
        for (int j = 0; j < 8; j++) a[i][j] /= big;
    }
    for (int k = 0; k < 7; k++) {
        int p = k;
        for (int i = k + 1; i < 7; i++)
            if (fabs(a[i][k]) > fabs(a[p][k])) p = i;
        if (!(fabs(a[p][k]) > 0.0)) return false;
        for (int j = k; j < 8; j++) {
            double t = a[k][j];
            a[k][j] = a[p][j];
            a[p][j] = t;
        }
        for (int i = k + 1; i < 7; i++) {
            double factor = a[i][k] / a[k][k];
            for (int j = k; j < 8; j++) a[i][j] -= factor * a[k][j];
        }
    }
    for (int i = 6; i >= 0; i--) {
        double sum = a[i][7];
        for (int j = i + 1; j < 7; j++) sum -= a[i][j] * x[j];
        x[i] = sum / a[i][i];
        if (!isfinite(x[i])) return false;
    }
    return true;
}

static bool solve_upright(gw_system *s)
{
    const double *k = s->block[s->slot[GW_UPRIGHT][GW_UPRIGHT]], *rhs = s->rhs[GW_UPRIGHT];
    double a[7][8], x[7];
    for (int i = 0; i < 6; i++) {
        for (int j = 0; j < 6; j++) a[i][j] = k[6 * i + j];
        a[i][6] = rhs[2 * i + 1];
        a[i][7] = rhs[2 * i];
        a[6][i] = s->border_row[i];
    }
    a[6][6] = s->border_diag;
    a[6][7] = s->border_rhs;
    if (!solve_seven(a, x)) return false;
    memcpy(s->step[GW_UPRIGHT], x, sizeof s->step[GW_UPRIGHT]);
    s->border_step = x[6];
    return true;
}

static bool back_substitute(gw_system *s, int m)
{
    double *x = s->step[m];
    for (int i = 0; i < 6; i++) x[i] = s->rhs[m][2 * i] - s->border_step * s->rhs[m][2 * i + 1];
    for (int j = 0; j < s->n_near[m]; j++) {
        int b = s->near[m][j];
        subtract_product(x, s->block[s->slot[m][b]], s->step[b], 1);
    }
    for (int i = 0; i < 6; i++)
        if (!isfinite(x[i])) return false;
    return true;
}

bool gw_system_solve(gw_system *s)
{
    for (int i = 0; i < s->n_order; i++)
        if (!eliminate(s, s->order[i])) return false;
    if (!solve_upright(s)) return false;
    for (int i = s->n_order - 1; i >= 0; i--)
        if (!back_substitute(s, s->order[i])) return false;
    return true;
}
