/* SPDX-License-Identifier: MIT */
/*
 * The settings that reach a target: linear steps on the nonlinear corner. Each step solves the linear problem
 * within the limits whole (see least.h), so that what limits hold, and which targets give way, is decided
 * anew every time; the corner bends so little over some millimetres that a few steps do. Where a target is
 * out of reach and the nearest place lies between the limits (the slope of what is left vanishes there),
 * steps would swing from limit to limit, so a movement that swings may go half as far.
 */
#include "study/setup.h"

#include <string.h>

enum { STEPS = 80, RETREATS = 8 };
static const double SETTLED = 1e-10;   /* a step smaller than this is the last [m]                          */
static const double SAME_SLOPE = 1e-5; /* moved less than this, the slopes are those of before [m]          */
static const double NOTHING = 1e-5; /* a target that a movement moves less is not moved by it [rad/m]      */
static const double SMALL_MISS = 1e-12; /* [rad] */
static const double TIDY = 1e-6;        /* [m] */
static const double TOUCH = 1e-9;       /* this near to a limit is at it [m] */
static const double SWING = 0.3;        /* of the last step: a step back that is more is a swing */

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
        status = gw_setup_look(s, s->x, err);
    }
    if (status != GW_OK) memcpy(s->x, from, (size_t)s->n * sizeof *from);
    return status;
}

/* Rounding of the search must not carry a setting past its limit. */
static void draw_in(gw_setup *s, double *x)
{
    for (int i = 0; i < s->n; i++) x[i] = fmin(fmax(x[i], s->lo[i]), s->hi[i]);
    for (int d = 0; d < s->n_discs; d++) {
        const double *c = s->disc[d].centre;
        double *o = &x[s->disc[d].at], size = hypot(o[0] - c[0], o[1] - c[1]), r = s->disc[d].radius;
        if (size <= r) continue;
        o[0] = c[0] + (o[0] - c[0]) * r / size;
        o[1] = c[1] + (o[1] - c[1]) * r / size;
    }
}

/* How far each movement may go in one step, and what it did in the last. */
typedef struct gw_reins {
    double radius[GW_MAX_MOVES], last[GW_MAX_MOVES];
    double lo[GW_MAX_MOVES], hi[GW_MAX_MOVES];
} gw_reins;

static void free_reins(const gw_setup *s, gw_reins *t)
{
    for (int i = 0; i < s->n; i++) {
        t->radius[i] = s->hi[i] - s->lo[i];
        t->last[i] = 0.0;
    }
}

/* A movement that swings back is near a place where its slope vanishes: it may go half as far. */
static bool damp_swings(const gw_setup *s, const double *goal, gw_reins *t)
{
    bool swings = false;
    for (int i = 0; i < s->n; i++) {
        double step = goal[i] - s->x[i];
        if (step * t->last[i] >= 0.0 || fabs(step) <= SWING * fabs(t->last[i])) continue;
        t->radius[i] = 0.5 * fabs(t->last[i]);
        swings = swings || fabs(step) > t->radius[i];
    }
    return swings;
}

static void solve_within(gw_setup *s, gw_least_problem *problem, gw_reins *t, double *goal)
{
    for (int i = 0; i < s->n; i++) {
        t->lo[i] = fmax(s->lo[i], s->x[i] - t->radius[i]);
        t->hi[i] = fmin(s->hi[i], s->x[i] + t->radius[i]);
    }
    problem->lo = t->lo;
    problem->hi = t->hi;
    memcpy(goal, s->x, (size_t)s->n * sizeof *goal);
    gw_least_solve(s->least, problem, goal, s->holds);
    draw_in(s, goal);
}

/* One step of the search, from the corner as it stands at s->x; its length. */
static gw_status one_step(gw_setup *s, gw_reins *t, double *size, gw_error *err)
{
    gw_least_problem problem;
    double goal[GW_MAX_MOVES], from[GW_MAX_MOVES];
    gw_corner_setting at = gw_corner_as_fitted(s->run->ws);
    gw_setup_linearise(s, s->x, &at, &problem);
    solve_within(s, &problem, t, goal);
    if (damp_swings(s, goal, t)) solve_within(s, &problem, t, goal);
    memcpy(from, s->x, (size_t)s->n * sizeof *from);
    *size = distance(goal, from, s->n);
    gw_status status = advance(s, goal, 1.0, err);
    for (int i = 0; i < s->n; i++) {
        t->last[i] = s->x[i] - from[i];
        if (fabs(t->last[i]) > 0.9 * t->radius[i]) t->radius[i] *= 1.5;
    }
    return status;
}

/* Not settled after all steps: what is left to gain is nothing, but the first target is still to be exact. */
static gw_status tidy_up(gw_setup *s, gw_reins *reins, gw_error *err)
{
    double size;
    gw_status status = gw_setup_slopes(s, s->x, GW_SETUP_STEP, false, false, err);
    for (int k = 0; k < 3 && status == GW_OK; k++) {
        for (int i = 0; i < s->n; i++) reins->radius[i] = fmin(reins->radius[i], TIDY);
        status = one_step(s, reins, &size, err);
    }
    return status;
}

gw_status gw_setup_reach(gw_setup *s, gw_error *err)
{
    double sloped_at[GW_MAX_MOVES] = { 0 }, size = INFINITY;
    gw_status status = gw_setup_look(s, s->x, err);
    gw_reins reins = { 0 };
    free_reins(s, &reins);
    for (int k = 0; k < STEPS && status == GW_OK && size > SETTLED; k++) {
        if (k == 0 || distance(s->x, sloped_at, s->n) > SAME_SLOPE) {
            status = gw_setup_slopes(s, s->x, GW_SETUP_STEP, false, false, err);
            if (status != GW_OK) break;
            memcpy(sloped_at, s->x, (size_t)s->n * sizeof *sloped_at);
        }
        status = one_step(s, &reins, &size, err);
    }
    return status == GW_OK && size > SETTLED ? tidy_up(s, &reins, err) : status;
}

/* An offset whose two movements are known: the bush to fit, and whether it can be had no further off. */
static void read_bush(const gw_setup *s, const gw_adjuster *adjuster, gw_adjustment *a)
{
    gw_move own = { { 0 } };
    a->off_centre = gw_kit_offset(s->run->c, s->run->kit, s->run->axle, adjuster, &own);
    for (int axis = 0; axis < 2; axis++) a->bush.along[axis] = a->move.along[axis] + own.along[axis];
    a->at_limit = gw_offset_size(&a->bush) >= adjuster->max - TOUCH;
}

/* What a fitter reads of it. */
static void tell(const gw_setup *s, const gw_adjuster *adjuster, gw_adjustment *a)
{
    const double none = (double)NAN, along = a->move.along[0];
    const gw_joint *joints = s->run->c->corners[s->run->axle].joints;
    a->bore = a->fit = (gw_bore){ none, none, { GW_VIEW_FRONT, none, none } };
    if (adjuster->kind == GW_ADJUST_OFFSET) a->bore = gw_bore_of(&joints[adjuster->joint], &a->move);
    if (a->off_centre) a->fit = gw_bore_of(&joints[adjuster->joint], &a->bush);
    a->turns =
        adjuster->kind == GW_ADJUST_LENGTH ? along / (adjuster->threads * adjuster->thread_pitch) : none;
    a->steps = adjuster->kind == GW_ADJUST_SHIM ? round(along / adjuster->step) : none;
}

void gw_setup_read(const gw_setup *s, const double *x, gw_adjustment *set)
{
    for (int i = 0; i < s->n; i++) {
        const gw_adjuster *adjuster = &s->align->adjusters[s->of[i].adjuster];
        gw_adjustment *a = &set[s->of[i].adjuster];
        if (s->of[i].axis == 0) *a = (gw_adjustment){ 0 };
        a->move.along[s->of[i].axis] = x[i];
        a->holds = a->holds || s->holds[i];
        if (adjuster->kind == GW_ADJUST_OFFSET)
            read_bush(s, adjuster, a);
        else if (adjuster->kind == GW_ADJUST_LENGTH)
            a->at_limit = x[i] <= adjuster->min + TOUCH || x[i] >= adjuster->max - TOUCH;
        else /* not one whole step further */
            a->at_limit = x[i] - adjuster->step < adjuster->min - TOUCH ||
                          x[i] + adjuster->step > adjuster->max + TOUCH;
    }
    for (int a = 0; a < s->align->n_adjusters; a++) {
        set[a].holds = set[a].holds && set[a].at_limit;
        tell(s, &s->align->adjusters[a], &set[a]);
    }
}
