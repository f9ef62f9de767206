/* SPDX-License-Identifier: MIT */
/*
 * The settings that reach a target: linear steps on the nonlinear corner. Each step solves the linear problem
 * within the limits whole (see least.h), so that what limits hold, and which targets give way, is decided
 * anew every time; the corner bends so little over some millimetres that a few steps do.
 */
#include "study/setup.h"

#include <string.h>

enum { STEPS = 40, RETREATS = 8 };
static const double SETTLED = 1e-10;   /* a step smaller than this is the last [m]                          */
static const double SAME_SLOPE = 1e-5; /* moved less than this, the slopes are those of before [m]          */
static const double NOTHING = 1e-5; /* a target that a movement moves less is not moved by it [rad/m]      */
static const double SMALL_MISS = 1e-12; /* [rad] */

double gw_slope_of(const gw_slope *slope, gw_target which)
{
    return which == GW_TARGET_TOE ? slope->toe : which == GW_TARGET_CAMBER ? slope->camber : slope->caster;
}

/* The linear problem at x: rows of slopes, and what they have to make up from x = 0. */
void gw_setup_linearise(gw_setup *s, const double *x, const gw_corner_setting *at, gw_least_problem *p)
{
    gw_target which[GW_TARGETS];
    *p = (gw_least_problem){ .n = s->n,
                             .n_discs = s->n_discs,
                             .lo = s->lo,
                             .hi = s->hi,
                             .cost = s->cost,
                             .disc = s->disc,
                             .nothing = NOTHING,
                             .exact = SMALL_MISS };
    p->n_rows = gw_targets_given(s->align, which);
    for (int r = 0; r < p->n_rows; r++) {
        p->want[r] = gw_target_of(s->align, which[r]) - gw_setting_of(at, which[r]);
        for (int i = 0; i < s->n; i++) {
            s->row[r][i] = gw_slope_of(&s->slope[i], which[r]);
            p->want[r] += s->row[r][i] * x[i];
        }
        p->row[r] = s->row[r];
    }
}

static double distance(const double *a, const double *b, int n)
{
    double sum = 0.0;
    for (int i = 0; i < n; i++) sum += (a[i] - b[i]) * (a[i] - b[i]);
    return sqrt(sum);
}

/* Towards `to` as far as the corner still has an equilibrium; s->x is where it got. */
static gw_status advance(gw_setup *s, const double *to, double part, gw_error *err)
{
    double from[GW_MAX_MOVES];
    gw_status status = GW_E_NUMERIC;
    memcpy(from, s->x, (size_t)s->n * sizeof *from);
    for (int tries = 0; tries < RETREATS && status == GW_E_NUMERIC; tries++, part *= 0.5) {
        for (int i = 0; i < s->n; i++) s->x[i] = from[i] + part * (to[i] - from[i]);
        status = gw_setup_fit(s, s->x, err);
    }
    if (status != GW_OK) memcpy(s->x, from, (size_t)s->n * sizeof *from);
    return status;
}

/* Rounding of the search must not carry a setting past its limit. */
static void draw_in(gw_setup *s, double *x)
{
    for (int i = 0; i < s->n; i++) x[i] = fmin(fmax(x[i], s->lo[i]), s->hi[i]);
    for (int d = 0; d < s->n_discs; d++) {
        double *o = &x[s->disc[d].at], size = hypot(o[0], o[1]), r = s->disc[d].radius;
        if (size <= r) continue;
        o[0] *= r / size;
        o[1] *= r / size;
    }
}

gw_status gw_setup_reach(gw_setup *s, gw_error *err)
{
    double goal[GW_MAX_MOVES], sloped_at[GW_MAX_MOVES] = { 0 }, before = INFINITY, part = 1.0;
    gw_status status = gw_setup_fit(s, s->x, err);
    bool sloped = false;
    for (int k = 0; k < STEPS && status == GW_OK; k++) {
        gw_least_problem problem;
        gw_corner_setting at = gw_corner_as_fitted(s->run->ws);
        if (!sloped || distance(s->x, sloped_at, s->n) > SAME_SLOPE) {
            status = gw_setup_slopes(s, s->x, GW_SETUP_STEP, false, false, err);
            if (status != GW_OK) break;
            memcpy(sloped_at, s->x, (size_t)s->n * sizeof *sloped_at);
            sloped = true;
        }
        gw_setup_linearise(s, s->x, &at, &problem);
        memcpy(goal, s->x, (size_t)s->n * sizeof *goal);
        gw_least_solve(s->least, &problem, goal, s->holds);
        draw_in(s, goal);
        double size = distance(goal, s->x, s->n);
        if (size > 0.7 * before) part = fmax(0.25, 0.5 * part); /* it swings: take less of each step */
        before = size;
        status = advance(s, goal, part, err);
        if (size < SETTLED) break;
    }
    return status;
}

void gw_setup_read(const gw_setup *s, const double *x, gw_adjustment *set)
{
    const double touch = 1e-9;
    for (int i = 0; i < s->n; i++) {
        const gw_adjuster *adjuster = &s->align->adjusters[s->of[i].adjuster];
        gw_adjustment *a = &set[s->of[i].adjuster];
        if (s->of[i].axis == 0) *a = (gw_adjustment){ 0 };
        a->move.along[s->of[i].axis] = x[i];
        a->holds = a->holds || s->holds[i];
        if (adjuster->kind == GW_ADJUST_OFFSET)
            a->at_limit = gw_offset_size(&a->move) >= adjuster->max - touch;
        else if (adjuster->kind == GW_ADJUST_LENGTH)
            a->at_limit = x[i] <= adjuster->min + touch || x[i] >= adjuster->max - touch;
        else /* not one whole step further */
            a->at_limit = x[i] - adjuster->step < adjuster->min - touch ||
                          x[i] + adjuster->step > adjuster->max + touch;
    }
    for (int a = 0; a < s->align->n_adjusters; a++) set[a].holds = set[a].holds && set[a].at_limit;
}
