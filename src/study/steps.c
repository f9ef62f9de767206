/* SPDX-License-Identifier: MIT */
/*
 * Shims come in whole steps. The corner is set as if they did not, then every whole combination (or, where
 * there are too many, those next to that setting) is tried on the corner's linear picture there, and the few
 * best of them on the corner itself, with the other adjusters set anew each time.
 */
#include "study/setup.h"

#include <string.h>

enum { MOST = 4096, MANY_SHIMS = 12, FINALISTS = 4 };
static const double SAME_ANGLE = 1e-7, SAME_MOVE = 1e-7; /* [rad], [m] */

/* What makes one setting better than another, in order. */
enum { MERITS = 6 };
typedef struct gw_merit {
    double v[MERITS]; /* toe beyond its tolerance, camber, caster, toe; offsets, other movement */
} gw_merit;

typedef struct gw_candidate {
    gw_merit merit;
    double *shim; /* values of the shims, in their order */
} gw_candidate;

typedef struct gw_lattice {
    gw_setup *s;
    int n;                /* shims */
    int of[GW_MAX_MOVES]; /* their movements */
    double step[GW_MAX_MOVES];
    int from[GW_MAX_MOVES], count[GW_MAX_MOVES]; /* whole steps to be tried */
    double lo[GW_MAX_MOVES], hi[GW_MAX_MOVES], relaxed[GW_MAX_MOVES];
    bool holds[GW_MAX_MOVES];
    gw_candidate best[FINALISTS];
    int n_best;
} gw_lattice;

static bool is_better(const gw_merit *a, const gw_merit *b)
{
    for (int i = 0; i < MERITS; i++) {
        /* An angle or a movement: two thresholds, though their numbers are equal. */
        /* cppcheck-suppress duplicateExpressionTernary */
        double same = i < 4 ? SAME_ANGLE : SAME_MOVE;
        if (a->v[i] < b->v[i] - same) return true;
        if (a->v[i] > b->v[i] + same) return false;
    }
    return false;
}

static gw_merit merit_of(const gw_setup *s, const double *x, const double miss[GW_TARGETS])
{
    gw_merit m = { { 0 } };
    double offset = 0.0, other = 0.0;
    m.v[0] = fmax(0.0, fabs(miss[GW_TARGET_TOE]) - s->align->toe_tolerance);
    m.v[1] = fabs(miss[GW_TARGET_CAMBER]);
    m.v[2] = fabs(miss[GW_TARGET_CASTER]);
    m.v[3] = fabs(miss[GW_TARGET_TOE]);
    for (int i = 0; i < s->n; i++) *(s->cost[i] == 1.0 ? &offset : &other) += x[i] * x[i];
    m.v[4] = sqrt(offset);
    m.v[5] = sqrt(other);
    return m;
}

static void miss_of_corner(const gw_setup *s, double miss[GW_TARGETS])
{
    gw_corner_setting at = gw_corner_as_fitted(s->run->ws);
    for (gw_target t = GW_TARGET_TOE; t < GW_TARGETS; t++)
        miss[t] = gw_target_given(s->align, t) ? gw_setting_of(&at, t) - gw_target_of(s->align, t) : 0.0;
}

static bool begin(gw_lattice *l, gw_setup *s, gw_arena *arena)
{
    *l = (gw_lattice){ .s = s };
    for (int i = 0; i < s->n; i++) {
        const gw_adjuster *adjuster = &s->align->adjusters[s->of[i].adjuster];
        if (adjuster->kind != GW_ADJUST_SHIM) continue;
        l->step[l->n] = adjuster->step;
        l->of[l->n++] = i;
    }
    for (int b = 0; b < FINALISTS; b++)
        if (!(l->best[b].shim = gw_arena_alloc(arena, (size_t)l->n + 1, sizeof(double)))) return false;
    return true;
}

/* Every whole number of steps, or the two beside the relaxed setting where that would be too many. */
static void choose_range(gw_lattice *l)
{
    double all = 1.0;
    for (int k = 0; k < l->n; k++) {
        double lo = l->s->lo[l->of[k]], hi = l->s->hi[l->of[k]];
        l->from[k] = (int)lround(lo / l->step[k]);
        l->count[k] = (int)lround(hi / l->step[k]) - l->from[k] + 1;
        all *= l->count[k];
    }
    if (all <= MOST) return;
    for (int k = 0; k < l->n; k++) {
        int last = l->from[k] + l->count[k] - 1, at = (int)floor(l->s->x[l->of[k]] / l->step[k] + 1e-9);
        if (k >= MANY_SHIMS) at = (int)lround(l->s->x[l->of[k]] / l->step[k]);
        l->from[k] = at;
        l->count[k] = k < MANY_SHIMS && at < last ? 2 : 1;
    }
}

/* Shims held at whole steps: the digits of `number`. */
static void hold_shims(gw_lattice *l, long number)
{
    for (int k = 0; k < l->n; k++) {
        int i = l->of[k];
        double value = (l->from[k] + (int)(number % l->count[k])) * l->step[k];
        l->s->lo[i] = l->s->hi[i] = value;
        number /= l->count[k];
    }
}

static void keep(gw_lattice *l, const gw_merit *merit)
{
    int at = l->n_best;
    while (at > 0 && is_better(merit, &l->best[at - 1].merit)) at--;
    if (at == FINALISTS) return;
    if (l->n_best < FINALISTS) l->n_best++;
    double *room = l->best[l->n_best - 1].shim;
    memmove(&l->best[at + 1], &l->best[at], (size_t)(l->n_best - 1 - at) * sizeof *l->best);
    for (int k = 0; k < l->n; k++) room[k] = l->s->lo[l->of[k]];
    l->best[at] = (gw_candidate){ *merit, room };
}

/* The linear picture at the relaxed setting. */
static void try_linear(gw_lattice *l, gw_least_problem *problem, long number)
{
    gw_setup *s = l->s;
    gw_target which[GW_TARGETS];
    double x[GW_MAX_MOVES], miss[GW_TARGETS] = { 0 };
    hold_shims(l, number);
    memcpy(x, l->relaxed, (size_t)s->n * sizeof *x);
    for (int k = 0; k < l->n; k++) x[l->of[k]] = s->lo[l->of[k]];
    gw_least_solve(s->least, problem, x, s->holds);
    gw_targets_given(s->align, which);
    for (int r = 0; r < problem->n_rows; r++) {
        double got = -problem->want[r];
        for (int i = 0; i < s->n; i++) got += problem->row[r][i] * x[i];
        miss[which[r]] = got;
    }
    gw_merit merit = merit_of(s, x, miss);
    keep(l, &merit);
}

static void try_all_linear(gw_lattice *l)
{
    gw_least_problem problem;
    gw_corner_setting at = gw_corner_as_fitted(l->s->run->ws);
    long all = 1;
    gw_setup_linearise(l->s, l->s->x, &at, &problem);
    for (int k = 0; k < l->n; k++) all *= l->count[k];
    for (long number = 0; number < all; number++) try_linear(l, &problem, number);
}

static void take(gw_lattice *l, int candidate)
{
    gw_setup *s = l->s;
    memcpy(s->x, l->relaxed, (size_t)s->n * sizeof *s->x);
    for (int k = 0; k < l->n; k++) {
        int i = l->of[k];
        s->x[i] = s->lo[i] = s->hi[i] = l->best[candidate].shim[k];
    }
}

/* The finalists on the corner itself; the last one tried is the winner, so that it stands there solved. */
static gw_status try_finalists(gw_lattice *l, gw_error *err)
{
    gw_setup *s = l->s;
    gw_merit best = { { 0 } };
    gw_status status = GW_OK;
    int winner = -1;
    for (int b = 0; b < l->n_best && status == GW_OK; b++) {
        double miss[GW_TARGETS];
        take(l, b);
        if ((status = gw_setup_reach(s, err)) != GW_OK) break;
        miss_of_corner(s, miss);
        gw_merit merit = merit_of(s, s->x, miss);
        if (winner < 0 || is_better(&merit, &best)) {
            winner = b;
            best = merit;
        }
    }
    if (status != GW_OK || winner == l->n_best - 1) return status;
    take(l, winner);
    return gw_setup_reach(s, err);
}

gw_status gw_setup_reach_in_steps(gw_setup *s, gw_arena *arena, gw_error *err)
{
    gw_lattice l;
    if (!begin(&l, s, arena)) return gw_fail(err, GW_E_NOMEM, "out of memory for shims");
    gw_status status = gw_setup_reach(s, err);
    if (status != GW_OK || l.n == 0) return status;
    memcpy(l.relaxed, s->x, (size_t)s->n * sizeof *s->x);
    memcpy(l.holds, s->holds, (size_t)s->n * sizeof *s->holds);
    choose_range(&l);
    if ((status = gw_setup_slopes(s, s->x, GW_SETUP_STEP, false, false, err)) != GW_OK) return status;
    memcpy(l.lo, s->lo, (size_t)s->n * sizeof *s->lo);
    memcpy(l.hi, s->hi, (size_t)s->n * sizeof *s->hi);
    try_all_linear(&l);
    status = try_finalists(&l, err);
    memcpy(s->lo, l.lo, (size_t)s->n * sizeof *s->lo);
    memcpy(s->hi, l.hi, (size_t)s->n * sizeof *s->hi);
    for (int k = 0; k < l.n; k++) s->holds[l.of[k]] = l.holds[l.of[k]];
    return status;
}
