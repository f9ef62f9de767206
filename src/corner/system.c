/* SPDX-License-Identifier: MIT */
/*
 * The bordered matrix of a corner and its elimination.
 *
 * Members couple only through joints, so most 6 x 6 blocks are zero. Members are eliminated one by one,
 * fewest neighbours first (minimum degree; for links between upright and chassis that costs no fill at
 * all, and a tie rod goes before the rack that it hangs on); the upright comes last, together with the
 * extra unknown of the border, as one 7 x 7 system with pivoting. The border's column may sit on any
 * body, its row is the upright's: the matrix is not symmetric. An axle has two uprights and two borders,
 * which come last together, as 14 x 14.
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

static bool comes_last(const gw_system *s, int body)
{
    return body == s->upright[GW_LEFT_WHEEL] || (s->n_wheels == 2 && body == s->upright[GW_RIGHT_WHEEL]);
}

static int least_coupled(const gw_system *s, bool near[GW_MAX_BODIES][GW_MAX_BODIES], const bool *done)
{
    int best = -1, best_degree = 0, n = s->n;
    for (int m = GW_UPRIGHT + 1; m < n; m++) {
        if (done[m] || comes_last(s, m)) continue;
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
    for (int m; (m = least_coupled(s, near, done)) >= 0;) {
        s->order[s->n_order++] = m;
        done[m] = true;
        unsigned char *those = &s->near[m * s->n];
        for (int j = 1; j < s->n; j++)
            if (!done[j] && near[m][j]) those[s->n_near[m]++] = (unsigned char)j;
        for (int i = 0; i < s->n_near[m]; i++)
            for (int j = 0; j < s->n_near[m]; j++) couple(near, those[i], those[j]);
    }
}

static void number_blocks(gw_system *s, bool near[GW_MAX_BODIES][GW_MAX_BODIES])
{
    for (int i = 0; i < s->n; i++)
        for (int j = 0; j < s->n; j++) {
            bool used = i > 0 && j > 0 && (i == j || near[i][j]);
            s->slot[i * s->n + j] = (short)(used ? s->n_blocks++ : -1);
        }
}

bool gw_joins_alike(const gw_corner_ws *a, const gw_corner_ws *b)
{
    if (a->n_links != b->n_links || a->n_wheels != b->n_wheels) return false;
    for (int w = 0; w < a->n_wheels; w++)
        if (a->wheel[w].upright != b->wheel[w].upright) return false;
    for (int j = 0; j < a->n_links; j++)
        if (a->link[j].a != b->link[j].a || a->link[j].b != b->link[j].b) return false;
    return true;
}

bool gw_system_make_structure(gw_system *s, int n, gw_arena *arena)
{
    const size_t bodies = (size_t)n;
    s->n = n;
    s->slot = gw_arena_alloc(arena, bodies * bodies, sizeof *s->slot);
    s->near = gw_arena_alloc(arena, bodies * bodies, sizeof *s->near);
    s->order = gw_arena_alloc(arena, bodies, sizeof *s->order);
    s->n_near = gw_arena_alloc(arena, bodies, sizeof *s->n_near);
    return s->slot && s->near && s->order && s->n_near;
}

bool gw_system_make_room(gw_system *s, int n_blocks, gw_arena *arena)
{
    const size_t n = (size_t)s->n;
    s->block = gw_arena_alloc(arena, (size_t)n_blocks, sizeof *s->block);
    s->rhs = gw_arena_alloc(arena, n, sizeof *s->rhs);
    s->lu = gw_arena_alloc(arena, n, sizeof *s->lu);
    s->coupling = gw_arena_alloc(arena, n, sizeof *s->coupling);
    s->step = gw_arena_alloc(arena, n, sizeof *s->step);
    return s->block && s->rhs && s->lu && s->coupling && s->step;
}

void gw_system_structure(gw_system *to, const gw_system *from)
{
    const size_t n = (size_t)from->n;
    to->n_wheels = from->n_wheels;
    to->n_columns = from->n_columns;
    to->n_blocks = from->n_blocks;
    to->n_order = from->n_order;
    memcpy(to->upright, from->upright, sizeof to->upright);
    memcpy(to->slot, from->slot, n * n * sizeof *to->slot);
    memcpy(to->near, from->near, n * n * sizeof *to->near);
    memcpy(to->order, from->order, n * sizeof *to->order);
    memcpy(to->n_near, from->n_near, n * sizeof *to->n_near);
}

static void find_structure(gw_corner_ws *ws)
{
    gw_system *s = &ws->system;
    bool near[GW_MAX_BODIES][GW_MAX_BODIES] = { { false } };
    s->n_wheels = ws->n_wheels;
    s->n_columns = 1 + ws->n_wheels;
    for (int w = 0; w < ws->n_wheels; w++) s->upright[w] = ws->wheel[w].upright;
    if (s->n_wheels == 2) couple(near, s->upright[GW_LEFT_WHEEL], s->upright[GW_RIGHT_WHEEL]);
    for (int j = 0; j < ws->n_links; j++) couple(near, ws->link[j].a, ws->link[j].b);
    order_members(s, near);
    number_blocks(s, near);
}

gw_status gw_system_build(gw_corner_ws *ws, const gw_corner_ws *like, gw_error *err)
{
    gw_system *s = &ws->system;
    bool room = gw_system_make_structure(s, ws->corner->n_bodies, &ws->arena);
    if (room && like && like->system.n == s->n && gw_joins_alike(ws, like))
        gw_system_structure(s, &like->system);
    else if (room)
        find_structure(ws);
    if (!room || !gw_system_make_room(s, s->n_blocks, &ws->arena))
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

static inline void subtract_columns(double *restrict y, const double *restrict a, const double *restrict x,
                                    int n)
{
    if (n == 2)
        subtract_product(y, a, x, 2);
    else if (n == 3)
        subtract_product(y, a, x, 3);
    else
        subtract_product(y, a, x, n);
}

static bool eliminate(gw_system *s, int m)
{
    gw_lu6 *lu = &s->lu[m];
    if (!gw_lu6_factor(lu, gw_block_at(s, m, m))) return false;
    gw_lu6_solve_columns(lu, s->rhs[m], s->n_columns);
    for (int j = 0; j < s->n_near[m]; j++) {
        int b = s->near[m * s->n + j];
        memcpy(s->coupling[b], gw_block_at(s, m, b), sizeof(gw_block));
        gw_lu6_solve_block(lu, s->coupling[b]);
        memcpy(gw_block_at(s, m, b), s->coupling[b], sizeof(gw_block)); /* kept for going back */
    }
    for (int i = 0; i < s->n_near[m]; i++) {
        int a = s->near[m * s->n + i];
        const double *k = gw_block_at(s, a, m);
        for (int j = 0; j < s->n_near[m]; j++) {
            int b = s->near[m * s->n + j];
            subtract_product(gw_block_at(s, a, b), k, s->coupling[b], 6);
        }
        subtract_columns(s->rhs[a], k, s->rhs[m], s->n_columns);
    }
    return true;
}

bool gw_system_condense(gw_system *s)
{
    for (int i = 0; i < s->n_order; i++)
        if (!eliminate(s, s->order[i])) return false;
    return true;
}

enum { LAST = 7 * GW_WHEELS };

/* Dense n x n with row pivoting, row-scaled because a border is a length among forces; rows of n + 1 numbers.
 */
static inline bool solve_last(double *a, double *x, int n)
{
    int width = n + 1;
    for (int i = 0; i < n; i++) {
        double big = 0.0;
        for (int j = 0; j < n; j++) big = fmax(big, fabs(a[i * width + j]));
        if (!(big > 0.0)) return false;
        for (int j = 0; j < width; j++) a[i * width + j] /= big;
    }
    for (int k = 0; k < n; k++) {
        int p = k;
        for (int i = k + 1; i < n; i++)
            if (fabs(a[i * width + k]) > fabs(a[p * width + k])) p = i;
        if (!(fabs(a[p * width + k]) > 0.0)) return false;
        for (int j = k; j < width; j++) {
            double t = a[k * width + j];
            a[k * width + j] = a[p * width + j];
            a[p * width + j] = t;
        }
        for (int i = k + 1; i < n; i++) {
            double factor = a[i * width + k] / a[k * width + k];
            for (int j = k; j < width; j++) a[i * width + j] -= factor * a[k * width + j];
        }
    }
    for (int i = n - 1; i >= 0; i--) {
        double sum = a[i * width + n];
        for (int j = i + 1; j < n; j++) sum -= a[i * width + j] * x[j];
        x[i] = sum / a[i * width + i];
        if (!isfinite(x[i])) return false;
    }
    return true;
}

/* Rows and columns: each upright's six, and its border as the seventh. */
static void fill_last(const gw_system *s, double *a, int n)
{
    int width = n + 1, columns = s->n_columns;
    memset(a, 0, (size_t)(n * width) * sizeof *a);
    for (int w = 0; w < s->n_wheels; w++) {
        const double *rhs = s->rhs[s->upright[w]];
        double *border = &a[(7 * w + 6) * width];
        for (int v = 0; v < s->n_wheels; v++) {
            const double *k = gw_block_at(s, s->upright[w], s->upright[v]);
            for (int i = 0; i < 6; i++) {
                for (int j = 0; j < 6; j++) a[(7 * w + i) * width + 7 * v + j] = k[6 * i + j];
                a[(7 * w + i) * width + 7 * v + 6] = rhs[columns * i + 1 + v];
            }
        }
        for (int i = 0; i < 6; i++) {
            a[(7 * w + i) * width + n] = rhs[columns * i];
            border[7 * w + i] = s->border_row[w][i];
        }
        border[7 * w + 6] = s->border_diag[w];
        border[n] = s->border_rhs[w];
    }
}

static bool solve_uprights(gw_system *s)
{
    double a[LAST * (LAST + 1)], x[LAST];
    int n = 7 * s->n_wheels;
    fill_last(s, a, n);
    if (!(n == 7 ? solve_last(a, x, 7) : solve_last(a, x, n))) return false;
    for (int w = 0; w < s->n_wheels; w++) {
        memcpy(s->step[s->upright[w]], &x[7 * w], sizeof s->step[0]);
        s->border_step[w] = x[7 * w + 6];
    }
    return true;
}

static bool back_substitute(gw_system *s, int m)
{
    double *x = s->step[m];
    const double *rhs = s->rhs[m];
    for (int i = 0; i < 6; i++) {
        x[i] = rhs[s->n_columns * i];
        for (int w = 0; w < s->n_wheels; w++) x[i] -= s->border_step[w] * rhs[s->n_columns * i + 1 + w];
    }
    for (int j = 0; j < s->n_near[m]; j++) {
        int b = s->near[m * s->n + j];
        subtract_product(x, gw_block_at(s, m, b), s->step[b], 1);
    }
    for (int i = 0; i < 6; i++)
        if (!isfinite(x[i])) return false;
    return true;
}

bool gw_system_spread(gw_system *s)
{
    for (int i = s->n_order - 1; i >= 0; i--)
        if (!back_substitute(s, s->order[i])) return false;
    return true;
}

bool gw_system_solve(gw_system *s)
{
    return gw_system_condense(s) && solve_uprights(s) && gw_system_spread(s);
}

/* The borders' columns stand condensed beside the imbalance. */
void gw_system_condense_again(gw_system *s)
{
    const int columns = s->n_columns;
    for (int o = 0; o < s->n_order; o++) {
        const int m = s->order[o];
        double x[6];
        for (int i = 0; i < 6; i++) x[i] = s->rhs[m][columns * i];
        gw_lu6_solve_columns(&s->lu[m], x, 1);
        for (int i = 0; i < 6; i++) s->rhs[m][columns * i] = x[i];
        for (int j = 0; j < s->n_near[m]; j++) {
            const int a = s->near[m * s->n + j];
            double y[6] = { 0 };
            subtract_product(y, gw_block_at(s, a, m), x, 1);
            for (int i = 0; i < 6; i++) s->rhs[a][columns * i] += y[i];
        }
    }
}

bool gw_system_solve_again(gw_system *s)
{
    gw_system_condense_again(s);
    return solve_uprights(s) && gw_system_spread(s);
}
