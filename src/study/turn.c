/* SPDX-License-Identifier: MIT */
/*
 * Off-centre bushes are made with one eccentricity; the kit's own offset counts with what is set on top.
 * Where an offset and the arms leave one freedom besides the targets, the targets are met along a line of
 * offsets; that line leaves the circle of the full eccentricity at two places, and a bush of that
 * eccentricity reaches the targets at either clock angle.
 */
#include "study/setup.h"

#include <string.h>

enum { UNKNOWNS = GW_TARGETS + 1, ITERATIONS = 20 };

/* The movements that are free to take part: the offset's two, then arms. */
typedef struct gw_circle {
    gw_setup *s;
    int n, of[UNKNOWNS], n_rows;
    gw_target which[GW_TARGETS];
    double radius, centre[2];
} gw_circle;

static bool find_circle(gw_setup *s, gw_circle *c)
{
    *c = (gw_circle){ .s = s };
    c->n_rows = gw_targets_given(s->align, c->which);
    if (s->n_discs != 1) return false;
    c->of[c->n++] = s->disc[0].at;
    c->of[c->n++] = s->disc[0].at + 1;
    c->radius = s->disc[0].radius;
    memcpy(c->centre, s->disc[0].centre, sizeof c->centre);
    for (int i = 0; i < s->n; i++) {
        if (s->align->adjusters[s->of[i].adjuster].kind != GW_ADJUST_LENGTH) continue;
        if (c->n == UNKNOWNS) return false;
        c->of[c->n++] = i;
    }
    const double *o = &s->x[c->of[0]];
    double set = hypot(o[0], o[1]), bush = hypot(o[0] - c->centre[0], o[1] - c->centre[1]);
    return c->n == c->n_rows + 1 && set > 1e-6 && bush < c->radius - 1e-6;
}

/* Gaussian elimination with row exchange; false where singular. */
static bool solve(int n, double a[UNKNOWNS][UNKNOWNS + 1], double *x)
{
    for (int k = 0; k < n; k++) {
        int p = k;
        for (int i = k + 1; i < n; i++)
            if (fabs(a[i][k]) > fabs(a[p][k])) p = i;
        if (!(fabs(a[p][k]) > 1e-9)) return false;
        for (int j = 0; j <= n; j++) {
            double keep = a[k][j];
            a[k][j] = a[p][j];
            a[p][j] = keep;
        }
        for (int i = 0; i < n; i++) {
            double f = i == k ? 0.0 : a[i][k] / a[k][k];
            for (int j = k; j <= n && f != 0.0; j++) a[i][j] -= f * a[k][j];
        }
    }
    for (int k = 0; k < n; k++) x[k] = a[k][n] / a[k][k];
    return true;
}

static void slope_rows(const gw_circle *c, double a[UNKNOWNS][UNKNOWNS + 1])
{
    for (int r = 0; r < c->n_rows; r++)
        for (int k = 0; k < c->n; k++) a[r][k] = gw_slope_of(&c->s->slope[c->of[k]], c->which[r]);
}

/* The direction that leaves every target alone: the rows, and a step of one along offset axis `with`. */
static bool free_direction(const gw_circle *c, int with, double *d)
{
    double a[UNKNOWNS][UNKNOWNS + 1] = { { 0 } };
    slope_rows(c, a);
    a[c->n_rows][with] = 1.0;
    a[c->n_rows][c->n] = 1.0;
    return solve(c->n, a, d);
}

/* From where the straight line leaves the circle. */
static bool start(const gw_circle *c, int sign, double *x)
{
    double d[2][UNKNOWNS] = { { 0 } }, size[2] = { 0, 0 };
    for (int w = 0; w < 2; w++)
        if (free_direction(c, w, d[w])) size[w] = 1.0 / hypot(d[w][0], d[w][1]);
    int w = size[1] > size[0] ? 1 : 0;
    if (size[w] == 0.0) return false;
    double o[2] = { x[c->of[0]] - c->centre[0], x[c->of[1]] - c->centre[1] }, a = 1.0 / (size[w] * size[w]);
    double b = o[0] * d[w][0] + o[1] * d[w][1], e = o[0] * o[0] + o[1] * o[1] - c->radius * c->radius;
    double t = (-b + sign * sqrt(b * b - a * e)) / a;
    for (int k = 0; k < c->n; k++) x[c->of[k]] += t * d[w][k];
    return true;
}

/* One Newton step on targets and circle; its length, or a negative number where there is none. */
static gw_status newton(const gw_circle *c, double *x, double *size, gw_error *err)
{
    double a[UNKNOWNS][UNKNOWNS + 1] = { { 0 } }, step[UNKNOWNS] = { 0 }, sum = 0.0;
    const double o[2] = { x[c->of[0]] - c->centre[0], x[c->of[1]] - c->centre[1] };
    gw_status status = gw_setup_slopes(c->s, x, GW_SETUP_STEP, false, false, err);
    if (status != GW_OK) return status;
    gw_corner_setting at = gw_corner_as_fitted(c->s->run->ws);
    slope_rows(c, a);
    for (int r = 0; r < c->n_rows; r++)
        a[r][c->n] = gw_target_of(c->s->align, c->which[r]) - gw_setting_of(&at, c->which[r]);
    a[c->n_rows][0] = o[0] / c->radius;
    a[c->n_rows][1] = o[1] / c->radius;
    a[c->n_rows][c->n] = 0.5 * (c->radius - (o[0] * o[0] + o[1] * o[1]) / c->radius);
    *size = -1.0;
    if (!solve(c->n, a, step)) return GW_OK;
    for (int k = 0; k < c->n; k++) {
        x[c->of[k]] += step[k];
        sum += step[k] * step[k];
    }
    *size = sqrt(sum);
    return GW_OK;
}

static bool within_limits(const gw_setup *s, const double *x)
{
    for (int i = 0; i < s->n; i++)
        if (s->align->adjusters[s->of[i].adjuster].kind == GW_ADJUST_LENGTH &&
            (x[i] < s->lo[i] - 1e-9 || x[i] > s->hi[i] + 1e-9))
            return false;
    return true;
}

/* Fills `x` with one solution on the circle; false where there is none within the limits. */
static bool find(const gw_circle *c, int sign, double *x)
{
    double size = 1.0;
    if (!start(c, sign, x)) return false;
    for (int k = 0; k < ITERATIONS && size > 1e-10; k++)
        if (newton(c, x, &size, NULL) != GW_OK || size < 0.0 || size > 4.0 * c->radius) return false;
    return size <= 1e-10 && within_limits(c->s, x) && gw_setup_look(c->s, x, NULL) == GW_OK;
}

gw_status gw_setup_turn(gw_setup *s, gw_arena *arena, gw_align_item *item, gw_error *err)
{
    gw_circle c;
    size_t bytes = (size_t)s->n * sizeof *s->x;
    double answer[GW_MAX_MOVES], x[GW_MAX_MOVES];
    for (gw_target t = GW_TARGET_TOE; t < GW_TARGETS; t++)
        if (!item->reached[t]) return GW_OK;
    if (!find_circle(s, &c)) return GW_OK;
    memcpy(answer, s->x, bytes);
    for (int sign = -1; sign <= 1; sign += 2) {
        gw_status status = gw_setup_slopes(s, answer, GW_SETUP_STEP, false, false, err);
        if (status != GW_OK) return status;
        memcpy(x, answer, bytes);
        if (!find(&c, sign, x)) continue;
        gw_turned *turned = &item->turned[item->n_turned];
        turned->set = gw_arena_alloc(arena, (size_t)s->align->n_adjusters, sizeof *turned->set);
        if (!turned->set) return gw_fail(err, GW_E_NOMEM, "out of memory for adjusters");
        turned->adjuster = s->of[c.of[0]].adjuster;
        turned->reached = gw_corner_as_fitted(s->run->ws);
        gw_setup_read(s, x, turned->set);
        item->n_turned++;
    }
    return GW_OK;
}
