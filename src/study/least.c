/* SPDX-License-Identifier: MIT */
#include "study/least.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { CUTS = 48 };                       /* of one disc; each halves the angle that is left           */
static const double ROUND = 1e-10;        /* share of a radius that a solution may stand out           */
static const double DEPENDENT = 1e-9;     /* part of a normal that must be new to count                */
static const double WRONG_WAY = 1e-9;     /* share of the pull from which a limit counts as pulling back */
static const double STANDS_STILL = 1e-13; /* movement that counts as none                            */

/* g0 x[at] + g1 x[at + 1] <= h. */
typedef struct gw_limit {
    int at;
    double g[2], h;
    bool active;
    bool forced; /* pressed against by a row that is met or as near as it gets: stays active */
} gw_limit;

struct gw_least {
    const gw_least_problem *p;
    int n_limits;
    gw_limit *limit;
    double *scale; /* of each movement in the metric of the level */
    bool row_kept[GW_LEAST_ROWS];
    int n_basis;      /* orthonormal rows that span the normals held fast */
    double *basis;    /* n_basis x n */
    double *triangle; /* coefficients of each normal on the basis, n x n, row: normal */
    int *owner;       /* of each basis row: limit index, or -1 - row                  */
    double *step, *pull, *weight, *start;
};

gw_least *gw_least_open(int n, int n_discs)
{
    gw_least *s = calloc(1, sizeof *s);
    size_t m = (size_t)n + 1, limits = 2 * m + CUTS * (size_t)n_discs;
    if (!s) return NULL;
    s->limit = calloc(limits, sizeof *s->limit);
    s->basis = calloc(m * m, sizeof *s->basis);
    s->triangle = calloc(m * m, sizeof *s->triangle);
    s->owner = calloc(m, sizeof *s->owner);
    s->scale = calloc(5 * m, sizeof *s->scale);
    if (!s->limit || !s->basis || !s->triangle || !s->owner || !s->scale) {
        gw_least_close(s);
        return NULL;
    }
    s->step = s->scale + m;
    s->pull = s->step + m;
    s->weight = s->pull + m;
    s->start = s->weight + m;
    return s;
}

void gw_least_close(gw_least *least)
{
    if (!least) return;
    free(least->limit);
    free(least->basis);
    free(least->triangle);
    free(least->owner);
    free(least->scale);
    free(least);
}

static double dot(const double *a, const double *b, int n)
{
    double sum = 0.0;
    for (int i = 0; i < n; i++) sum += a[i] * b[i];
    return sum;
}

static double along_limit(const gw_limit *l, const double *x)
{
    double sum = l->g[0] * x[l->at];
    if (l->g[1] != 0.0) sum += l->g[1] * x[l->at + 1];
    return sum;
}

/* ---- the normals held fast, as an orthonormal basis in the metric of the level ---- */

/* Adds a normal (in pull, which is used up); one that says nothing new is left out. */
static void add_normal(gw_least *s, double *normal, int owner)
{
    int n = s->p->n, k = s->n_basis;
    double length = sqrt(dot(normal, normal, n));
    if (k >= n || length == 0.0) return;
    double *coefficient = s->triangle + (size_t)k * (size_t)n;
    memset(coefficient, 0, (size_t)n * sizeof *coefficient);
    for (int pass = 0; pass < 2; pass++)
        for (int b = 0; b < k; b++) {
            const double *q = s->basis + (size_t)b * (size_t)n;
            double c = dot(q, normal, n);
            coefficient[b] += c;
            for (int i = 0; i < n; i++) normal[i] -= c * q[i];
        }
    double rest = sqrt(dot(normal, normal, n));
    if (rest < DEPENDENT * length) return;
    coefficient[k] = rest;
    for (int i = 0; i < n; i++) s->basis[(size_t)k * (size_t)n + (size_t)i] = normal[i] / rest;
    s->owner[k] = owner;
    s->n_basis++;
}

static void build_basis(gw_least *s)
{
    int n = s->p->n;
    s->n_basis = 0;
    for (int r = 0; r < s->p->n_rows; r++) {
        if (!s->row_kept[r]) continue;
        for (int i = 0; i < n; i++) s->weight[i] = s->p->row[r][i] / s->scale[i];
        add_normal(s, s->weight, -1 - r);
    }
    for (int pass = 0; pass < 2; pass++) /* the forced ones first, so that they are not the dependent ones */
        for (int l = 0; l < s->n_limits; l++) {
            const gw_limit *limit = &s->limit[l];
            if (!limit->active || limit->forced != (pass == 0)) continue;
            memset(s->weight, 0, (size_t)n * sizeof *s->weight);
            s->weight[limit->at] = limit->g[0] / s->scale[limit->at];
            if (limit->g[1] != 0.0) s->weight[limit->at + 1] = limit->g[1] / s->scale[limit->at + 1];
            add_normal(s, s->weight, l);
        }
}

static void project(const gw_least *s, const double *v, double *out)
{
    int n = s->p->n;
    memcpy(out, v, (size_t)n * sizeof *out);
    for (int pass = 0; pass < 2; pass++)
        for (int b = 0; b < s->n_basis; b++) {
            const double *q = s->basis + (size_t)b * (size_t)n;
            double c = dot(q, out, n);
            for (int i = 0; i < n; i++) out[i] -= c * q[i];
        }
}

/* How hard the pull presses on each normal of the basis: R^T lambda = Q^T pull. */
static void find_pressures(const gw_least *s, double *pressure)
{
    int n = s->p->n;
    for (int k = s->n_basis - 1; k >= 0; k--) {
        double sum = dot(s->basis + (size_t)k * (size_t)n, s->pull, n);
        for (int j = k + 1; j < s->n_basis; j++)
            sum -= s->triangle[(size_t)j * (size_t)n + (size_t)k] * pressure[j];
        pressure[k] = sum / s->triangle[(size_t)k * (size_t)n + (size_t)k];
    }
}

/* ---- one level ---- */

static double miss(const gw_least *s, int row, const double *x)
{
    return s->p->want[row] - dot(s->p->row[row], x, s->p->n);
}

/* Fills `pull` (the way down, in the metric) and `step` (as far as the level wants to go); false at rest. */
static bool find_step(gw_least *s, int level, const double *x)
{
    int n = s->p->n;
    if (level == s->p->n_rows) {
        for (int i = 0; i < n; i++) s->pull[i] = -s->scale[i] * x[i];
        project(s, s->pull, s->step);
        return sqrt(dot(s->step, s->step, n)) > STANDS_STILL;
    }
    double left = miss(s, level, x);
    if (fabs(left) < s->p->exact) return false;
    for (int i = 0; i < n; i++) s->pull[i] = (left > 0.0 ? 1.0 : -1.0) * s->p->row[level][i];
    project(s, s->pull, s->step);
    double size = dot(s->step, s->step, n);
    if (size < s->p->nothing * s->p->nothing) return false;
    for (int i = 0; i < n; i++) s->step[i] *= fabs(left) / size;
    return true;
}

/* Moves along the step up to the first limit in the way; returns that limit, or -1. */
static int move(gw_least *s, double *x)
{
    int n = s->p->n, first = -1;
    double part = 1.0;
    for (int i = 0; i < n; i++) s->step[i] /= s->scale[i];
    double size = sqrt(dot(s->step, s->step, n));
    for (int l = 0; l < s->n_limits; l++) {
        const gw_limit *limit = &s->limit[l];
        double rate = along_limit(limit, s->step);
        if (limit->active || rate <= 1e-12 * size) continue;
        double room = fmax(0.0, limit->h - along_limit(limit, x)) / rate;
        if (room < part) {
            part = room;
            first = l;
        }
    }
    for (int i = 0; i < n; i++) x[i] += part * s->step[i];
    return first;
}

/* The limit that holds x back most for nothing; -1 where every one is pressed against. */
static int worst_limit(gw_least *s)
{
    double *pressure = s->weight, size = sqrt(dot(s->pull, s->pull, s->p->n)), worst = -WRONG_WAY * size;
    int found = -1;
    find_pressures(s, pressure);
    for (int k = 0; k < s->n_basis; k++) {
        int l = s->owner[k];
        if (l >= 0 && !s->limit[l].forced && pressure[k] < worst) {
            worst = pressure[k];
            found = l;
        }
    }
    return found;
}

/* A row that stays unmet presses on limits: they hold it, and later levels may not give them up. */
static void force_limits(gw_least *s, bool *holds)
{
    double *pressure = s->weight, size = sqrt(dot(s->pull, s->pull, s->p->n));
    find_pressures(s, pressure);
    for (int k = 0; k < s->n_basis; k++) {
        int l = s->owner[k];
        if (l < 0 || pressure[k] <= WRONG_WAY * size) continue;
        gw_limit *limit = &s->limit[l];
        limit->forced = true;
        holds[limit->at] = true;
        if (limit->g[1] != 0.0) holds[limit->at + 1] = true;
    }
}

static void descend(gw_least *s, int level, double *x)
{
    int most = 50 + 20 * s->p->n;
    for (int i = 0; i < most; i++) {
        build_basis(s);
        if (find_step(s, level, x)) {
            int hit = move(s, x);
            if (hit >= 0) s->limit[hit].active = true;
            continue;
        }
        if (level < s->p->n_rows && fabs(miss(s, level, x)) < s->p->exact) return;
        int back = worst_limit(s);
        if (back < 0) return;
        s->limit[back].active = false;
    }
}

/* A cut where x stands out of a disc; false where it stands out of none. */
static bool cut_discs(gw_least *s, const double *x)
{
    bool cut = false;
    for (int d = 0; d < s->p->n_discs; d++) {
        const gw_disc *disc = &s->p->disc[d];
        const double *c = disc->centre, from[2] = { x[disc->at] - c[0], x[disc->at + 1] - c[1] };
        double size = hypot(from[0], from[1]);
        int most = 2 * s->p->n + CUTS * s->p->n_discs;
        if (size <= disc->radius * (1.0 + ROUND) || s->n_limits >= most) continue;
        const double g[2] = { from[0] / size, from[1] / size };
        double h = disc->radius + g[0] * c[0] + g[1] * c[1];
        s->limit[s->n_limits++] = (gw_limit){ disc->at, { g[0], g[1] }, h, false, false };
        cut = true;
    }
    return cut;
}

static void begin(gw_least *s, const gw_least_problem *p, bool *holds)
{
    s->p = p;
    s->n_limits = 0;
    memset(s->row_kept, 0, sizeof s->row_kept);
    memset(holds, 0, (size_t)p->n * sizeof *holds);
    for (int i = 0; i < p->n; i++) {
        s->limit[s->n_limits++] = (gw_limit){ i, { 1, 0 }, p->hi[i], false, false };
        s->limit[s->n_limits++] = (gw_limit){ i, { -1, 0 }, -p->lo[i], false, false };
    }
}

/* A level is solved anew with each cut, from where it began: that place is within every limit. */
static void solve_level(gw_least *s, int level, double *x)
{
    size_t bytes = (size_t)s->p->n * sizeof *x;
    memcpy(s->start, x, bytes);
    descend(s, level, x);
    while (cut_discs(s, x)) {
        for (int l = 0; l < s->n_limits; l++) s->limit[l].active = s->limit[l].forced;
        memcpy(x, s->start, bytes);
        descend(s, level, x);
    }
}

void gw_least_solve(gw_least *least, const gw_least_problem *problem, double *x, bool *holds)
{
    begin(least, problem, holds);
    for (int level = 0; level <= problem->n_rows; level++) {
        bool last = level == problem->n_rows;
        for (int i = 0; i < problem->n; i++) least->scale[i] = last ? sqrt(problem->cost[i]) : 1.0;
        solve_level(least, level, x);
        if (last) return;
        if (fabs(miss(least, level, x)) < problem->exact)
            least->row_kept[level] = true;
        else
            force_limits(least, holds);
    }
}
