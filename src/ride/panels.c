/* SPDX-License-Identifier: MIT */
/*
 * Gauss-Legendre panels of eight points, graded towards the poles. Around each pole pair f0 +- i w the
 * variable is changed to f = f0 + w sinh(u), which puts the pair at a distance of pi/2 however narrow it
 * is (Johnston & Elliott, Int. J. Numer. Meth. Engng 62 (2005) 564-578). Each stretch between the
 * middles to the next poles gets its own change of variable.
 */
#include "ride/panels.h"

#include <math.h>
#include <stddef.h>

enum { MAX_DEPTH = 40 };
static const double LONGEST = 4.0; /* longest panel in u */

/* Abramowitz & Stegun, Handbook of Mathematical Functions (1964), table 25.4, n = 8. */
static const double NODE[GW_LANES] = { -0.960289856497536, -0.796666477413627, -0.525532409916329,
                                       -0.183434642495650, 0.183434642495650,  0.525532409916329,
                                       0.796666477413627,  0.960289856497536 };
static const double WEIGHT[GW_LANES] = { 0.101228536290376, 0.222381034453374, 0.313706645877887,
                                         0.362683783378362, 0.362683783378362, 0.313706645877887,
                                         0.222381034453374, 0.101228536290376 };

static double legendre_6(double x)
{
    double s = x * x;
    return (((231.0 * s - 315.0) * s + 105.0) * s - 5.0) / 16.0;
}

static double legendre_7(double x)
{
    double s = x * x;
    return (((429.0 * s - 693.0) * s + 315.0) * s - 35.0) * x / 16.0;
}

/*
 * Legendre coefficients c_k of a function that is analytic in an ellipse fall as rho^-k, and eight Gauss
 * points err as rho^-16. So c6 or c7 at 1/80 of c0 means
 * about 2e-5 in that panel at the very worst; most panels are far better, and whole figures come to 1e-6.
 */
bool gw_panel_is_smooth_to(const double weighted[GW_LANES], double part)
{
    double c0 = 0.0, c6 = 0.0, c7 = 0.0;
    for (int i = 0; i < GW_LANES; i++) {
        c0 += weighted[i];
        c6 += 13.0 * legendre_6(NODE[i]) * weighted[i];
        c7 += 15.0 * legendre_7(NODE[i]) * weighted[i];
    }
    return fabs(c6) <= fabs(c0) * part && fabs(c7) <= fabs(c0) * part;
}

typedef struct stretch {
    gw_pole pole;
    gw_panel_visit *visit;
    void *context;
} stretch;

static bool panel(const stretch *s, double u0, double u1, int depth)
{
    double hz[GW_LANES], weight[GW_LANES];
    double middle = 0.5 * (u0 + u1), half = 0.5 * (u1 - u0);
    for (int i = 0; i < GW_LANES; i++) {
        double u = middle + half * NODE[i];
        hz[i] = s->pole.hz + s->pole.width * sinh(u);
        weight[i] = WEIGHT[i] * half * s->pole.width * cosh(u);
    }
    if (s->visit(s->context, hz, weight)) return true;
    if (depth == MAX_DEPTH) return false;
    return panel(s, u0, middle, depth + 1) && panel(s, middle, u1, depth + 1);
}

static bool integrate_stretch(const stretch *s, double low, double high)
{
    double u0 = asinh((low - s->pole.hz) / s->pole.width);
    double u1 = asinh((high - s->pole.hz) / s->pole.width);
    int n = 1 + (int)floor((u1 - u0) / LONGEST);
    for (int i = 0; i < n; i++)
        if (!panel(s, u0 + (u1 - u0) * i / n, u0 + (u1 - u0) * (i + 1) / n, 0)) return false;
    return true;
}

static void sort_poles(gw_pole *poles, int n)
{
    for (int i = 1; i < n; i++) {
        for (int j = i; j > 0 && poles[j].hz < poles[j - 1].hz; j--) {
            gw_pole t = poles[j];
            poles[j] = poles[j - 1];
            poles[j - 1] = t;
        }
    }
}

static gw_status endless(double hz, gw_error *err)
{
    return gw_fail(err, GW_E_NUMERIC,
                   "ride: the mode at %.4g Hz has no damping, so its figure has no end; give the bushes a "
                   "loss_factor",
                   hz);
}

gw_status gw_panels_integrate(gw_pole *poles, int n_poles, const double *cuts, int n_cuts,
                              gw_panel_visit *visit, void *context, gw_error *err)
{
    const gw_pole at_zero = { 0.0, cuts[0] }; /* the road's spectrum has one too */
    sort_poles(poles, n_poles);
    for (int i = 0; i + 1 < n_cuts; i++) {
        double low = cuts[i];
        for (int k = 0; low < cuts[i + 1]; k++) {
            bool last = k + 1 >= n_poles;
            double high = last ? cuts[i + 1] : 0.5 * (poles[k].hz + poles[k + 1].hz);
            if (high <= low) continue;
            if (high > cuts[i + 1]) high = cuts[i + 1];
            stretch s = { n_poles > 0 ? poles[k] : at_zero, visit, context };
            s.pole.width = fmax(s.pole.width, 1e-9 * high);
            if (!integrate_stretch(&s, low, high)) return endless(s.pole.hz, err);
            low = high;
        }
    }
    return GW_OK;
}
