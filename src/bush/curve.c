/* SPDX-License-Identifier: MIT */
#include "giveway/curve.h"

#include <math.h>
#include <stdbool.h>
#include <stddef.h>

typedef struct point {
    double x, y;
} point;

/** One cubic y = y0 + b d + c d^2 + a d^3, d from x0. */
typedef struct piece {
    double x0, y0, b, c, a;
} piece;

static point at(const gw_curve_use *u, int i)
{
    double y = u->factor * u->curve->y[i];
    return (point){ u->curve->x[i] + (u->bracket > 0.0 ? y / u->bracket : 0.0), y };
}

static double secant(point p, point q)
{
    return (q.y - p.y) / (q.x - p.x);
}

/* Steffen's equation 11 where both secants have the same sign, as they do in a curve that rises. */
static double node_slope(const gw_curve_use *u, int i)
{
    int last = u->curve->n - 1;
    if (i == 0) return secant(at(u, 0), at(u, 1));
    if (i == last) return secant(at(u, last - 1), at(u, last));
    point before = at(u, i - 1), here = at(u, i), after = at(u, i + 1);
    double h0 = here.x - before.x, h1 = after.x - here.x;
    double s0 = secant(before, here), s1 = secant(here, after);
    double p = (s0 * h1 + s1 * h0) / (h0 + h1);
    return 2.0 * fmin(fmin(s0, s1), 0.5 * p);
}

static piece piece_from(const gw_curve_use *u, int i)
{
    point p = at(u, i), q = at(u, i + 1);
    double h = q.x - p.x, s = secant(p, q), left = node_slope(u, i), right = node_slope(u, i + 1);
    return (piece){ p.x, p.y, left, (3.0 * s - 2.0 * left - right) / h, (left + right - 2.0 * s) / (h * h) };
}

/* What goes on straight beyond an end. */
static piece line_from(const gw_curve_use *u, int end)
{
    point p = at(u, end);
    return (piece){ p.x, p.y, node_slope(u, end), 0.0, 0.0 };
}

/* The piece that holds x. */
static piece piece_at(const gw_curve_use *u, double x)
{
    int low = 0, high = u->curve->n - 1;
    if (x < at(u, low).x) return line_from(u, low);
    if (x >= at(u, high).x) return line_from(u, high);
    while (high - low > 1) {
        int middle = low + (high - low) / 2;
        if (x < at(u, middle).x)
            high = middle;
        else
            low = middle;
    }
    return piece_from(u, low);
}

double gw_curve_force(const gw_curve_use *use, double x, double *slope)
{
    piece p = piece_at(use, x);
    double d = x - p.x0;
    if (slope) *slope = p.b + d * (2.0 * p.c + 3.0 * d * p.a);
    return p.y0 + d * (p.b + d * (p.c + d * p.a));
}

static double area(piece p, double x)
{
    double d = x - p.x0;
    return d * (p.y0 + d * (0.5 * p.b + d * (p.c / 3.0 + 0.25 * d * p.a)));
}

/* Piece by piece outwards from zero. */
double gw_curve_energy(const gw_curve_use *use, double x)
{
    const gw_curve *c = use->curve;
    double sum = 0.0;
    if (x >= 0.0) {
        int i = c->zero;
        for (; i < c->n - 1 && x > at(use, i + 1).x; i++) sum += area(piece_from(use, i), at(use, i + 1).x);
        return sum + area(i < c->n - 1 ? piece_from(use, i) : line_from(use, i), x);
    }
    int i = c->zero;
    for (; i > 0 && x < at(use, i - 1).x; i--) sum -= area(piece_from(use, i - 1), at(use, i).x);
    if (i == 0) return sum + area(line_from(use, 0), x);
    piece p = piece_from(use, i - 1);
    return sum + area(p, x) - area(p, at(use, i).x);
}

/* Between two points whose forces enclose it, by halves: a monotone cubic can be as flat as it likes. */
double gw_curve_inverse(const gw_curve_use *use, double force)
{
    int low = 0, high = use->curve->n - 1;
    if (force < at(use, low).y) return at(use, low).x + (force - at(use, low).y) / node_slope(use, low);
    if (force > at(use, high).y) return at(use, high).x + (force - at(use, high).y) / node_slope(use, high);
    double from = at(use, low).x, to = at(use, high).x;
    for (int i = 0; i < 200 && to > from; i++) {
        double middle = from + 0.5 * (to - from);
        if (middle <= from || middle >= to) break;
        if (gw_curve_force(use, middle, NULL) < force)
            from = middle;
        else
            to = middle;
    }
    return fabs(gw_curve_force(use, from, NULL) - force) < fabs(gw_curve_force(use, to, NULL) - force) ? from
                                                                                                       : to;
}

double gw_curve_beyond(const gw_curve_use *use, double x)
{
    return fmax(0.0, fmax(x - at(use, use->curve->n - 1).x, at(use, 0).x - x));
}

static gw_status not_rising(int i, int *bad, gw_error *err)
{
    if (bad) *bad = i;
    return gw_fail(err, GW_E_RANGE, "point %d: deflection and force must rise from point to point", i);
}

/* With (0, 0) in its place among the points; the zero's place, or -1 where a point stands on an axis alone.
 */
static int put_in_zero(const double *x, const double *y, int n, double *to_x, double *to_y, int *n_out)
{
    int zero = -1, m = 0;
    for (int i = 0; i < n; i++) {
        if (zero < 0 && x[i] > 0.0) {
            zero = m;
            to_x[m] = to_y[m] = 0.0;
            m++;
        }
        if (x[i] == 0.0 && y[i] == 0.0) zero = m;
        to_x[m] = x[i];
        to_y[m++] = y[i];
    }
    if (zero < 0) {
        zero = m;
        to_x[m] = to_y[m] = 0.0;
        m++;
    }
    *n_out = m;
    return zero;
}

/* The half that is there, mirrored about (0, 0). */
static void make_odd(double *x, double *y, int *n, int *zero)
{
    int half = *n - 1;
    bool positive = *zero == 0;
    for (int i = half; i >= 0 && positive; i--) {
        x[half + i] = x[i];
        y[half + i] = y[i];
    }
    for (int i = 1; i <= half; i++) {
        int from = positive ? half + i : half - i, to = positive ? half - i : half + i;
        x[to] = -x[from];
        y[to] = -y[from];
    }
    *zero = half;
    *n = 2 * half + 1;
}

gw_status gw_curve_make(const double *x, const double *y, int n, double *room_x, double *room_y,
                        gw_curve *out, int *bad, gw_error *err)
{
    int m = 0;
    for (int i = 1; i < n; i++)
        if (!(x[i] > x[i - 1] && y[i] > y[i - 1])) return not_rising(i, bad, err);
    for (int i = 0; i < n; i++)
        if (!((x[i] > 0.0 && y[i] > 0.0) || (x[i] < 0.0 && y[i] < 0.0) || (x[i] == 0.0 && y[i] == 0.0)))
            return not_rising(i, bad, err);
    int zero = put_in_zero(x, y, n, room_x, room_y, &m);
    if (m < 3) {
        if (bad) *bad = -1;
        return gw_fail(err, GW_E_RANGE, "a curve needs two points or more, (0, 0) not counted");
    }
    if (zero == 0 || zero == m - 1) make_odd(room_x, room_y, &m, &zero);
    *out = (gw_curve){ m, zero, room_x, room_y };
    return GW_OK;
}
