/* SPDX-License-Identifier: MIT */
#include "fit/press_loop.h"

#include "giveway/curve.h"
#include "giveway/units.h"

#include <math.h>
#include <stdlib.h>

/* A side shorter than this part of the other one was not tested. */
static const double SHORT_SIDE = 0.2;
/* The start of the readings that says where a bush that was never at rest has its zero; how far that may be.
 */
static const double BEGINNING = 1.0 / 20, FARTHEST_ZERO = 1.0 / 3;

/** The mean line in the direction in which it is read, and where its zero is. */
typedef struct law {
    const gw_press_line *line;
    double sign;        /**< -1: both columns turned over                               */
    double zero;        /**< deflection of no force, in the turned columns              */
    double start_slope; /**< of the straight line that goes on before the first reading */
} law;

static double low_end(const law *l)
{
    return l->sign > 0.0 ? l->line->x[0] : -l->line->x[l->line->n - 1];
}

static double high_end(const law *l)
{
    return l->sign > 0.0 ? l->line->x[l->line->n - 1] : -l->line->x[0];
}

/* Force at a deflection of the turned columns; before the first reading along the straight line. */
static double force_at(const law *l, double x)
{
    double low = low_end(l);
    if (x < low) return force_at(l, low) + l->start_slope * (x - low);
    return l->sign * gw_press_line_at(l->line, l->sign * x);
}

/* Reading i counted from the low end of the turned columns. */
static void reading(const law *l, int i, double *x, double *f)
{
    int k = l->sign > 0.0 ? i : l->line->n - 1 - i;
    *x = l->sign * l->line->x[k];
    *f = l->sign * l->line->f[k];
}

/* Where the mean last rises through zero; false where it never does. */
static bool last_rise(const law *l, double *zero)
{
    for (int i = l->line->n - 1; i >= 0; i--) {
        double x, f, next_x, next_f;
        reading(l, i, &x, &f);
        if (f > 0.0) continue;
        if (i == l->line->n - 1) return false;
        reading(l, i + 1, &next_x, &next_f);
        *zero = x + (next_x - x) * (0.0 - f) / (next_f - f);
        return true;
    }
    return false;
}

static gw_status begin_at_rest(bool turns, gw_error *err)
{
    return gw_fail(err, GW_E_RANGE,
                   "the readings begin far from zero %s, so that the bush's zero is not known: begin at rest",
                   turns ? "moment" : "force");
}

/* From where the straight line through the start meets zero. */
static gw_status zero_before_start(law *l, bool turns, gw_error *err)
{
    double low = low_end(l), range = high_end(l) - low, first = force_at(l, low);
    l->start_slope = (force_at(l, low + BEGINNING * range) - first) / (BEGINNING * range);
    if (!(l->start_slope > 0.0) || first / l->start_slope > FARTHEST_ZERO * range)
        return begin_at_rest(turns, err);
    l->zero = low - first / l->start_slope;
    return GW_OK;
}

/* Pulled: no force above zero, or hardly any deflection on that side. */
static bool is_pulled(const law *l)
{
    double zero;
    if (!(force_at(l, high_end(l)) > 0.0)) return true;
    if (!last_rise(l, &zero)) return false;
    return high_end(l) - zero < SHORT_SIDE * (zero - low_end(l));
}

static gw_status find_zero(law *l, gw_press *p, bool turns, gw_error *err)
{
    const gw_press_line *m = l->line;
    if (!(m->f[m->n - 1] > m->f[0]))
        return gw_fail(err, GW_E_RANGE,
                       m->f[m->n - 1] < m->f[0]
                           ? "the %s ends below where it starts: one of the columns has the wrong sign"
                           : "the %s ends where it starts: read it from no load to full load",
                       turns ? "moment" : "force");
    if (is_pulled(l)) l->sign = -1.0;
    p->turned = l->sign < 0.0;
    if (!last_rise(l, &l->zero)) {
        gw_status st = zero_before_start(l, turns, err);
        if (st != GW_OK) return st;
    }
    p->zero = l->sign * l->zero + 0.0;
    p->zero_force = m->x[0] <= 0.0 && m->x[m->n - 1] >= 0.0 ? gw_press_line_at(m, 0.0) : (double)NAN;
    return GW_OK;
}

static void find_sides(const law *l, gw_press *p)
{
    double minus = l->zero - low_end(l), plus = high_end(l) - l->zero;
    p->sides = minus < SHORT_SIDE * plus ? 1 : 2;
    p->stroke[1] = plus;
    p->stroke[0] = p->sides == 2 ? minus : plus;
    p->asymmetry = NAN;
    if (p->sides == 1) return;
    double s = fmin(minus, plus), right = force_at(l, l->zero + s), left = force_at(l, l->zero - s);
    p->asymmetry = (right + left) / (right - left);
}

static gw_status read_points(const law *l, gw_press *p, bool turns, gw_error *err)
{
    const double unit = turns ? GW_DEG : GW_MM;
    p->n = GW_PRESS_POINTS;
    for (int i = 0; i < p->n; i++) {
        int tenth = i - 10;
        double share = p->sides == 1 ? i / 20.0 : fabs(tenth / 10.0) * (tenth < 0 ? -1.0 : 1.0);
        p->x[i] = share * p->stroke[share < 0.0 ? 0 : 1];
        p->f[i] = share == 0.0 ? 0.0 : force_at(l, l->zero + p->x[i]);
        if (i && !(p->f[i] > p->f[i - 1]))
            return gw_fail(err, GW_E_RANGE, "the %s does not rise from %.4g to %.4g %s: read that part again",
                           turns ? "moment" : "force", p->x[i - 1] / unit, p->x[i] / unit,
                           turns ? "deg" : "mm");
    }
    return GW_OK;
}

static double largest_off(const gw_press *p)
{
    double fx = 0.0, xx = 0.0, off = 0.0, most = 0.0;
    for (int i = 0; i < p->n; i++) {
        fx += p->f[i] * p->x[i];
        xx += p->x[i] * p->x[i];
    }
    for (int i = 0; i < p->n; i++) {
        off = fmax(off, fabs(p->f[i] - fx / xx * p->x[i]));
        most = fmax(most, fabs(p->f[i]));
    }
    return off / most;
}

static gw_status find_rates(gw_press *p, gw_error *err)
{
    double x[GW_PRESS_MOST + 2], y[GW_PRESS_MOST + 2];
    gw_curve curve;
    gw_status st = gw_curve_make(p->x, p->f, p->n, x, y, &curve, NULL, err);
    if (st != GW_OK) return st;
    const gw_curve_use use = { &curve, 1.0, 0.0 };
    gw_curve_force(&use, 0.0, &p->rate_zero);
    for (int side = 0; side < 2; side++) {
        double full = (side ? 1.0 : -1.0) * p->stroke[side];
        gw_curve_force(&use, 0.1 * full, &p->rate_tenth[side]);
        gw_curve_force(&use, full, &p->rate_full[side]);
    }
    p->nonlinearity = largest_off(p);
    return GW_OK;
}

gw_status gw_press_make(const double *x, const double *f, int n, bool turns, gw_press *out, gw_error *err)
{
    gw_press p = { 0 };
    gw_status st = gw_press_loop(x, f, n, turns, &p, err);
    law l = { .line = &p.mean, .sign = 1.0 };
    if (st == GW_OK) st = find_zero(&l, &p, turns, err);
    if (st == GW_OK) {
        find_sides(&l, &p);
        st = read_points(&l, &p, turns, err);
    }
    if (st == GW_OK) st = find_rates(&p, err);
    if (st != GW_OK) {
        gw_press_free(&p);
        return st;
    }
    *out = p;
    return GW_OK;
}

static void free_line(gw_press_line *line)
{
    free(line->x);
    free(line->f);
    *line = (gw_press_line){ 0 };
}

void gw_press_free(gw_press *press)
{
    free_line(&press->up);
    free_line(&press->down);
    free_line(&press->mean);
}
