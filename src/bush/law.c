/* SPDX-License-Identifier: MIT */
/*
 * The static law of one bush: energy, force and tangent. Everything here is called some hundred
 * times a load case, so a plain linear bush leaves by the first line.
 *
 * The radial part of every law has one form, W = 1/2 q M(e) with q = k1 u1^2 + k2 u2^2 and e = r^2:
 * M = 1 for a linear bush, 1 + s e/2 for rubber that stiffens, and a small M inside a play.
 */
#include "bush/curves.h"

#include <math.h>

/*
 * Rate inside a play over the tight rate. Exactly zero would leave the corner without a place of
 * rest and Newton without a tangent; a thousandth of a steel contact is some hundred N/mm, which at
 * a play of 0.05 mm is a few newtons: nothing beside the loads of a case.
 */
static const double PLAY_CENTRING = 1e-3;

/** A function of one variable with two derivatives. */
typedef struct curve {
    double v, d, dd;
} curve;

/*
 * max(x, 0) with its corner rounded over `width` about zero: its slope rises in a straight line from
 * 0 to 1, so value and slope are continuous and exact outside the corner.
 */
static curve ramp(double x, double width)
{
    double into = x + 0.5 * width;

    if (into <= 0.0) return (curve){ 0.0, 0.0, 0.0 };
    if (into >= width) return (curve){ x, 1.0, 0.0 };
    return (curve){ 0.5 * into * into / width, into / width, 1.0 / width };
}

/*
 * Energy of a stop of unit rate met at x = 0: second derivative from 0 to 1 in a straight line over
 * `width` about zero. Past the corner the force is x exactly; the energy is then x^2/2 + width^2/24.
 */
static curve soft_stop(double x, double width)
{
    double into = x + 0.5 * width;

    if (into <= 0.0) return (curve){ 0.0, 0.0, 0.0 };
    if (into >= width) return (curve){ 0.5 * x * x + width * width / 24.0, x, 1.0 };
    return (curve){ into * into * into / (6.0 * width), 0.5 * into * into / width, into / width };
}

/** Of a play: M = c + (1 - c) (rho/r)^2, where rho is r less the play, and its derivatives by e = r^2. */
static curve play_factor(double r, double play, double blend)
{
    double width = fmin(blend, play);
    curve rho = ramp(r - play, width);
    double psi, psi_d, psi_dd, m_d, m_dd;

    if (rho.v <= 0.0) return (curve){ PLAY_CENTRING, 0.0, 0.0 };
    psi = rho.v / r;
    psi_d = (rho.d - psi) / r;
    psi_dd = (rho.dd - 2.0 * psi_d) / r;
    m_d = 2.0 * psi * psi_d;
    m_dd = 2.0 * (psi_d * psi_d + psi * psi_dd);
    return (curve){ PLAY_CENTRING + (1.0 - PLAY_CENTRING) * psi * psi,
                    (1.0 - PLAY_CENTRING) * m_d / (2.0 * r),
                    (1.0 - PLAY_CENTRING) * (m_dd - m_d / r) / (4.0 * r * r) };
}

/** The factor M and its derivatives by e = r^2. */
static curve radial_factor(const gw_bush_law *law, double r)
{
    if (law->clearance > 0.0) return play_factor(r, law->clearance, law->blend);
    return (curve){ 1.0 + 0.5 * law->stiffening * r * r, 0.5 * law->stiffening, 0.0 };
}

static double void_width(const gw_bush_law *law)
{
    return fmin(law->blend, 2.0 * law->void_stop.gap);
}

static bool moves_by_curves(const gw_bush_law *law)
{
    return law->curve[GW_CURVE_RADIAL] || law->curve[GW_CURVE_RADIAL_E1] || law->curve[GW_CURVE_AXIAL];
}

bool gw_bush_law_is_linear(const gw_bush_law *law)
{
    return !moves_by_curves(law) && law->stop.rate == 0.0 && law->void_stop.rate == 0.0 &&
           law->clearance == 0.0 && law->stiffening == 0.0;
}

static double measured_energy(const gw_bush_law *law, const double u[3])
{
    double w = gw_curves_energy(law, GW_CURVES_TRANSLATION, u);
    bool across = law->curve[GW_CURVE_RADIAL] || law->curve[GW_CURVE_RADIAL_E1];

    for (int i = across ? 2 : 0; i < 3; i++)
        if (i < 2 || !law->curve[GW_CURVE_AXIAL]) w += 0.5 * law->k[i] * u[i] * u[i];
    return w;
}

double gw_bush_energy(const gw_bush_law *law, const double u[3])
{
    double radial = law->k[0] * u[0] * u[0] + law->k[1] * u[1] * u[1];
    double axial = law->k[2] * u[2] * u[2];
    double r, w, past;

    if (gw_bush_law_is_linear(law)) return 0.5 * (radial + axial);
    if (moves_by_curves(law)) return measured_energy(law, u);
    r = hypot(u[0], u[1]);
    w = 0.5 * (radial * radial_factor(law, r).v + axial);
    past = r - law->stop.gap;
    if (past > 0.0) w += 0.5 * law->stop.rate * past * past;
    if (law->void_stop.rate > 0.0)
        w += law->void_stop.rate * soft_stop(fabs(u[0]) - law->void_stop.gap, void_width(law)).v;
    return w;
}

static void linear_force(const gw_bush_law *law, const double u[3], double f[3], double k[3][3])
{
    for (int i = 0; i < 3; i++) {
        f[i] = law->k[i] * u[i];
        for (int j = 0; j < 3; j++) k[i][j] = i == j ? law->k[i] : 0.0;
    }
}

/** The radial part 1/2 q M(e) in place of the linear one. */
static void scale_radial(const gw_bush_law *law, const double u[3], double r, double f[3], double k[3][3])
{
    curve m = radial_factor(law, r);
    double q = law->k[0] * u[0] * u[0] + law->k[1] * u[1] * u[1];

    for (int i = 0; i < 2; i++) {
        f[i] = (law->k[i] * m.v + q * m.d) * u[i];
        for (int j = 0; j < 2; j++)
            k[i][j] = 2.0 * ((law->k[i] + law->k[j]) * m.d + q * m.dd) * (u[i] * u[j]);
        k[i][i] += law->k[i] * m.v + q * m.d;
    }
}

/** The isotropic stop 1/2 k (r - gap)^2: k along the radius, and force over radius across it. */
static void add_stop(const gw_stop *stop, const double u[3], double r, double f[3], double k[3][3])
{
    double over, across;

    if (stop->rate == 0.0 || r <= stop->gap) return; /* so r > 0 below */
    over = (r - stop->gap) / r;
    across = stop->rate * over;
    for (int i = 0; i < 2; i++) {
        f[i] += across * u[i];
        for (int j = 0; j < 2; j++) k[i][j] += (stop->rate - across) * (u[i] * u[j]) / (r * r);
        k[i][i] += across;
    }
}

void gw_bush_force(const gw_bush_law *law, const double u[3], double f[3], double k[3][3])
{
    double r;

    linear_force(law, u, f, k);
    if (gw_bush_law_is_linear(law)) return;
    if (moves_by_curves(law)) {
        gw_curves_force(law, GW_CURVES_TRANSLATION, u, f, k);
        return;
    }
    r = hypot(u[0], u[1]);
    if (law->clearance > 0.0 || law->stiffening > 0.0) scale_radial(law, u, r, f, k);
    add_stop(&law->stop, u, r, f, k);
    if (law->stop.gap == 0.0 && r == 0.0) { /* a stop without a gap is a second spring */
        k[0][0] += law->stop.rate;
        k[1][1] += law->stop.rate;
    }
    if (law->void_stop.rate > 0.0) {
        curve e = soft_stop(fabs(u[0]) - law->void_stop.gap, void_width(law));

        f[0] += copysign(law->void_stop.rate * e.d, u[0]);
        k[0][0] += law->void_stop.rate * e.dd;
    }
}

gw_bush_law gw_bush_law_times(const gw_bush_law *law, double factor)
{
    gw_bush_law out = *law;

    for (int i = 0; i < 3; i++) {
        out.k[i] *= factor;
        out.c[i] *= factor;
    }
    out.stop.rate *= factor;
    out.void_stop.rate *= factor;
    out.slider.winds_up *= factor;
    out.curve_factor *= factor;
    return out;
}

gw_bush_law gw_bush_law_on_bracket(const gw_bush_law *law, double bracket)
{
    gw_bush_law out = *law;

    for (int i = 0; i < 3; i++)
        if (law->k[i] > 0.0) out.k[i] = law->k[i] / (1.0 + law->k[i] / bracket);
    out.curve_bracket = bracket;
    gw_curves_rates(&out);
    return out;
}
