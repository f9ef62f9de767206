/* SPDX-License-Identifier: MIT */
/*
 * Measured tables scatter: on its way up the force may stand still or fall for a step. So no tangent leads to
 * the slip that carries a force. Between two measured slips the force of both tyres is one cubic; these are
 * gone through from zero outwards, each cut at its extremes, until the force is passed.
 */
#include "vehicle/pair.h"

#include <gsl/gsl_poly.h>
#include <math.h>

enum { CUBIC = 4, HALVINGS = 60 };

static const double NARROW = 1e-9; /* [rad]: measured slips closer together are one */

static gw_status wheel_at(const gw_pair *p, gw_side i, double slip, double width, gw_tyre_force *out,
                          gw_error *err)
{
    double sign = p->turned ? -1.0 : 1.0, s = sign * (slip + p->at[i].slip), lean = sign * p->at[i].lean;
    gw_status status = width > 0.0 ? gw_tyre_chord(p->tyre, s, p->load[i], lean, width, out, err)
                                   : gw_tyre_lateral(p->tyre, s, p->load[i], lean, out, err);
    if (status == GW_OK)
        out->force *= sign; /* both slopes stay: force and angle change their signs together */
    return status;
}

static gw_status pair_at(const gw_pair *p, double slip, double width, gw_pair_force *out, gw_error *err)
{
    for (gw_side i = GW_OUTER; i <= GW_INNER; i++) {
        gw_status status = wheel_at(p, i, slip, width, &out->wheel[i], err);
        if (status != GW_OK) return status;
    }
    out->force = out->wheel[GW_OUTER].force + out->wheel[GW_INNER].force;
    out->cornering = out->wheel[GW_OUTER].cornering + out->wheel[GW_INNER].cornering;
    return GW_OK;
}

gw_status gw_pair_slopes(const gw_pair *pair, double slip, gw_pair_force *out, gw_error *err)
{
    double reach = gw_tyre_reach(pair->tyre);
    for (double width = GW_TYRE_STRETCH;; width *= 2.0) {
        gw_status status = pair_at(pair, slip, width, out, err);
        if (status != GW_OK || out->cornering > 0.0) return status;
        if (!(width < reach)) break;
    }
    return gw_fail(err, GW_E_NUMERIC, "the tyre table does not rise with slip");
}

/* The first measured slip, of either side, above `slip`; `slip` itself where there is none. */
static double knot_above(const gw_tyre_table *t, double slip)
{
    int low = 0, n = t->n_slip; /* knots below `low` are not above */
    for (int high = n; low < high;) {
        int mid = (low + high) / 2;
        if (t->slip[mid] > slip + NARROW)
            high = mid;
        else
            low = mid + 1;
    }
    int last = n - 1; /* of the other side: the largest knot below -slip */
    while (last >= 0 && t->slip[last] >= -slip - NARROW) last--;
    double next = low < n ? t->slip[low] : slip;
    if (last >= 0 && (low == n || -t->slip[last] < next)) next = -t->slip[last];
    return next;
}

/* Where the piece that begins at `from` ends, upwards (way 1) or downwards (-1). */
static double piece_end(const gw_pair *p, double from, int way)
{
    const gw_tyre_table *t = gw_tyre_measured(p->tyre);
    double nearest = INFINITY;
    for (gw_side i = GW_OUTER; i <= GW_INNER; i++) {
        double at = way * (from + p->at[i].slip); /* knots stand on both sides alike */
        double next = knot_above(t, at);
        nearest = fmin(nearest, next - at);
    }
    return from + way * nearest;
}

static double value(const double c[CUBIC], double t)
{
    return gsl_poly_eval(c, CUBIC, t);
}

/* What is missing to `force` along a piece, as a cubic in t from 0 to 1. */
static gw_status cubic_of(const gw_pair *p, double from, double to, double force, double c[CUBIC],
                          gw_error *err)
{
    static const double AT[CUBIC] = { 0.125, 0.375, 0.625, 0.875 };
    double f[CUBIC], d[CUBIC], w[CUBIC];
    for (int i = 0; i < CUBIC; i++) {
        gw_pair_force pair;
        gw_status status = pair_at(p, from + AT[i] * (to - from), 0.0, &pair, err);
        if (status != GW_OK) return status;
        f[i] = pair.force - force;
    }
    gsl_poly_dd_init(d, AT, f, CUBIC);
    gsl_poly_dd_taylor(c, 0.0, d, AT, CUBIC, w);
    return GW_OK;
}

/* The first t at which the cubic leaves the side `below` that it began on; false where it does not. */
static bool crossing(const double c[CUBIC], bool below, double *t)
{
    double cut[4] = { 0.0, 1.0, 1.0, 1.0 }, r[2];
    int n = 1, roots = gsl_poly_solve_quadratic(3.0 * c[3], 2.0 * c[2], c[1], &r[0], &r[1]);
    for (int i = 0; i < roots; i++)
        if (r[i] > cut[n - 1] && r[i] < 1.0) cut[n++] = r[i];
    cut[n] = 1.0;
    for (int i = 0; i < n; i++) {
        double low = cut[i], high = cut[i + 1];
        if ((value(c, high) < 0.0) == below) continue;
        for (int k = 0; k < HALVINGS; k++) {
            double mid = 0.5 * (low + high);
            *((value(c, mid) < 0.0) == below ? &low : &high) = mid;
        }
        *t = high;
        return true;
    }
    return false;
}

/* How far the axle can go one way: until either tyre is at the end of what is known of it. */
static double limit_of(const gw_pair *p, int way)
{
    double reach = gw_tyre_reach(p->tyre);
    double outer = reach - way * p->at[GW_OUTER].slip, inner = reach - way * p->at[GW_INNER].slip;
    return way * fmin(outer, inner);
}

static gw_status search(const gw_pair *p, double force, bool below, int way, double *slip, gw_error *err)
{
    double end = limit_of(p, way), from = 0.0;
    while (way * (end - from) > NARROW) {
        double to = piece_end(p, from, way), c[CUBIC], t = 0.0;
        if (!(way * (end - to) > 0.0) || way * (to - from) <= 0.0) to = end;
        gw_status status = cubic_of(p, from, to, force, c, err);
        if (status != GW_OK) return status;
        if ((value(c, 0.0) < 0.0) != below || crossing(c, below, &t)) {
            *slip = from + t * (to - from);
            return GW_OK;
        }
        from = to;
    }
    return gw_fail(err, GW_E_NUMERIC, "no slip angle of the tyre table gives this force");
}

gw_status gw_pair_slip(const gw_pair *pair, double force, double *slip, gw_error *err)
{
    gw_pair_force at;
    gw_status status = pair_at(pair, 0.0, 0.0, &at, err);
    if (status != GW_OK) return status;
    if (!gw_tyre_measured(pair->tyre)) {
        *slip = (force - at.force) / at.cornering;
        return GW_OK;
    }
    bool below = at.force < force;
    int way = below ? 1 : -1;
    status = search(pair, force, below, way, slip, err);
    return status == GW_E_NUMERIC ? search(pair, force, below, -way, slip, err) : status;
}
