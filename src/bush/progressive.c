/* SPDX-License-Identifier: MIT */
#include "bush/progressive.h"

#include <math.h>

/** Beyond this the wall is closed to a fifth and the closed forms run away to infinity. */
static const double E_LAST = 0.64;

/** Below this the closed forms lose digits to cancellation; eleven terms of the series give all 16. */
static const double E_SERIES = 0.01;

/*
 * Each factor is a power series in e, from P = sum c_n e^n and P^3 = sum (2n + 1) c_n e^n with
 * c_n = (1/2)(3/2)...((2n-1)/2)/n!:  Mc = sum 2 c_(n+1) e^n,  Ma = sum 2 [(2n+1) c_n - c_(n+1)] e^n,
 * Md = 1 + sum_(n>0) (2n + 3) c_(n+1)/2 e^n.
 */
static void factor_series(const gw_progressive *p, double e, double m[3])
{
    double c = 1.0, power[3] = { 1.0, 0.0, 0.0 }; /* c_n; e^n and its two derivatives by e */

    m[0] = m[1] = m[2] = 0.0;
    for (int n = 0; n <= 10; n++) {
        double next = c * (2.0 * n + 1.0) / (2.0 * n + 2.0);
        double around = 2.0 * next;
        double along = 2.0 * ((2.0 * n + 1.0) * c - next);
        double direct = n == 0 ? 1.0 : 0.5 * (2.0 * n + 3.0) * next;
        double term = p->around * around + p->along * along + p->direct * direct;

        for (int i = 0; i < 3; i++) m[i] += term * power[i];
        power[2] = e * power[2] + 2.0 * power[1];
        power[1] = e * power[1] + power[0];
        power[0] *= e;
        c = next;
    }
}

/** The closed forms and two derivatives, e well above zero and below one. */
static void factor_closed(const gw_progressive *p, double e, double m[3])
{
    double g = 1.0 / (1.0 - e), root = sqrt(g);
    double p3[3] = { g * root, 1.5 * g * g * root, 3.75 * g * g * g * root };
    double mc[3], md[3];

    mc[0] = 2.0 * (root - 1.0) / e;
    mc[1] = (g * root - mc[0]) / e; /* from (e Mc)' = P^3 */
    mc[2] = (p3[1] - 2.0 * mc[1]) / e;
    md[0] = (p3[0] - 1.0 + 0.5 * e) / (2.0 * e);
    md[1] = (0.5 * (p3[1] + 0.5) - md[0]) / e;
    md[2] = (0.5 * p3[2] - 2.0 * md[1]) / e;
    for (int i = 0; i < 3; i++)
        m[i] = p->direct * md[i] + p->around * mc[i] + p->along * (2.0 * p3[i] - mc[i]);
}

void gw_progressive_factor(const gw_progressive *p, double e, double m[3])
{
    double past = e - E_LAST;

    if (e < E_SERIES) {
        factor_series(p, e, m);
        return;
    }
    factor_closed(p, fmin(e, E_LAST), m);
    if (past > 0.0) {
        m[0] += past * (m[1] + 0.5 * past * m[2]);
        m[1] += past * m[2];
    }
}

/*
 * Pressure in the thin layer, p = p0 cos(phi) [1 - cosh(z/R)/cosh(s)]: the energy of the flow along
 * the axis goes with A and that round the sleeve with C, both integrals of it over the length.
 */
static void flow_shares(double s, double *along, double *around)
{
    double t = tanh(s), sech2 = 1.0 - t * t;
    double a = t - s * sech2, c = 2.0 * s - 3.0 * t + s * sech2;

    if (s < 0.05) { /* a = 2/3 s^3, c = 4/15 s^5 to leading order; the difference is all cancellation */
        a = 2.0 / 3.0 * s * s * s;
        c = 4.0 / 15.0 * s * s * s * s * s;
    }
    *along = a / (a + c);
    *around = c / (a + c);
}

gw_progressive gw_progressive_shares(const gw_annulus *annulus)
{
    double wall = annulus->outer_radius - annulus->inner_radius;
    double radius = 0.5 * (annulus->outer_radius + annulus->inner_radius);
    double s = annulus->length / (2.0 * radius);
    double ratio = radius / wall, along, around;
    double flow = 12.0 * ratio * ratio * (1.0 - tanh(s) / s), direct = 4.0;

    flow_shares(s, &along, &around);
    return (gw_progressive){ .wall = wall,
                             .direct = direct / (direct + flow),
                             .around = flow * around / (direct + flow),
                             .along = flow * along / (direct + flow) };
}
