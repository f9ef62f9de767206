/* SPDX-License-Identifier: MIT */
#include "ride/anderson.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

enum { KEPT = 5 };
static const double LONGEST = 2.0; /* of a step in any unknown */

struct gw_anderson {
    int n, known; /* differences kept                           */
    bool begun;
    double *now, *rest;  /* [n] of the last step: point and what was left */
    double *step, *fall; /* [KEPT * n] differences of both              */
};

gw_anderson *gw_anderson_open(int n, gw_arena *arena)
{
    size_t room = (size_t)n + 1;
    gw_anderson *a = gw_arena_alloc(arena, 1, sizeof *a);
    if (!a) return NULL;
    a->n = n;
    a->now = gw_arena_alloc(arena, room, sizeof *a->now);
    a->rest = gw_arena_alloc(arena, room, sizeof *a->rest);
    a->step = gw_arena_alloc(arena, KEPT * room, sizeof *a->step);
    a->fall = gw_arena_alloc(arena, KEPT * room, sizeof *a->fall);
    return a->now && a->rest && a->step && a->fall ? a : NULL;
}

void gw_anderson_restart(gw_anderson *a)
{
    a->begun = false;
    a->known = 0;
}

static double dot(const double *x, const double *y, int n)
{
    double sum = 0.0;
    for (int i = 0; i < n; i++) sum += x[i] * y[i];
    return sum;
}

/* The newest difference first; the oldest falls off. */
static void remember(gw_anderson *a, const double *now, const double *next)
{
    size_t n = (size_t)a->n;
    if (a->known < KEPT) a->known++;
    memmove(a->step + n, a->step, (size_t)(a->known - 1) * n * sizeof *a->step);
    memmove(a->fall + n, a->fall, (size_t)(a->known - 1) * n * sizeof *a->fall);
    for (size_t i = 0; i < n; i++) {
        a->step[i] = now[i] - a->now[i];
        a->fall[i] = next[i] - now[i] - a->rest[i];
    }
}

/* Least squares by normal equations and Gauss-Jordan, lightly held towards nothing. */
static void weigh(const gw_anderson *a, const double *rest, double *weight)
{
    double m[KEPT][KEPT + 1];
    int k = a->known;
    for (int i = 0; i < k; i++) {
        for (int j = 0; j < k; j++) m[i][j] = dot(&a->fall[i * a->n], &a->fall[j * a->n], a->n);
        m[i][i] = m[i][i] * (1.0 + 1e-10) + 1e-300;
        m[i][k] = dot(&a->fall[i * a->n], rest, a->n);
    }
    for (int p = 0; p < k; p++)
        for (int i = 0; i < k; i++) {
            double factor = m[i][p] / m[p][p];
            for (int j = p; i != p && j <= k; j++) m[i][j] -= factor * m[p][j];
        }
    for (int i = 0; i < k; i++) weight[i] = m[i][k] / m[i][i];
}

void gw_anderson_step(gw_anderson *a, double *now, const double *next)
{
    double weight[KEPT] = { 0 };
    if (a->begun) remember(a, now, next);
    a->begun = true;
    for (int i = 0; i < a->n; i++) {
        a->now[i] = now[i];
        a->rest[i] = next[i] - now[i];
    }
    weigh(a, a->rest, weight);
    for (int i = 0; i < a->n; i++) {
        double step = a->rest[i];
        for (int k = 0; k < a->known; k++)
            step -= weight[k] * (a->step[k * a->n + i] + a->fall[k * a->n + i]);
        if (!isfinite(step)) step = a->rest[i];
        now[i] = a->now[i] + fmin(fmax(step, -LONGEST), LONGEST);
    }
}
