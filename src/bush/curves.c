/* SPDX-License-Identifier: MIT */
/*
 * Bushes that were measured. Of four curves (round, along the first axis, along the second, along the third)
 * the energy is (w(r) + w(-r))/2 of the first, r the length of the first two components, or w1(v1) + w2(v2)
 * of the next two, and w3(v3): in translation and, of the components of the rotation vector, in rotation.
 */
#include "bush/curves.h"

#include <math.h>
#include <stddef.h>

enum { ROUND, FIRST, SECOND, THIRD };

static gw_curve_use use_of(const gw_bush_law *law, int way)
{
    bool translation = way < GW_CURVES_ROTATION;
    return (gw_curve_use){ law->curve[way], law->curve_factor, translation ? law->curve_bracket : 0.0 };
}

bool gw_bush_has_curves(const gw_bush_law *law)
{
    for (int way = 0; way < GW_CURVE_WAYS; way++)
        if (law->curve[way]) return true;
    return false;
}

bool gw_bush_turns_by_curves(const gw_bush_law *law)
{
    for (int way = GW_CURVES_ROTATION; way < GW_CURVE_WAYS; way++)
        if (law->curve[way]) return true;
    return false;
}

double gw_curves_energy(const gw_bush_law *law, int first, const double v[3])
{
    double w = 0.0;
    if (law->curve[first + ROUND]) {
        gw_curve_use use = use_of(law, first + ROUND);
        double r = hypot(v[0], v[1]);
        w += 0.5 * (gw_curve_energy(&use, r) + gw_curve_energy(&use, -r));
    }
    for (int i = 0; i < 3; i++) {
        gw_curve_use use = use_of(law, first + FIRST + i);
        if (use.curve) w += gw_curve_energy(&use, v[i]);
    }
    return w;
}

/** Force of the round curve at a radius, both sides counting alike, and its slope. */
static double round_force(const gw_curve_use *use, double r, double *slope)
{
    double right, left, f = gw_curve_force(use, r, &right) - gw_curve_force(use, -r, &left);
    if (slope) *slope = 0.5 * (right + left);
    return 0.5 * f;
}

/* Along the radius the slope, across it force over radius. */
static void add_round(const gw_curve_use *use, const double v[3], double f[3], double k[3][3])
{
    double r = hypot(v[0], v[1]), slope, force = round_force(use, r, &slope);
    double across = r > 0.0 ? force / r : slope;
    for (int i = 0; i < 2; i++) {
        f[i] = across * v[i];
        for (int j = 0; j < 2; j++) {
            double along = r > 0.0 ? (v[i] / r) * (v[j] / r) : 0.0;
            k[i][j] = (slope - across) * along + (i == j ? across : 0.0);
        }
    }
}

void gw_curves_force(const gw_bush_law *law, int first, const double v[3], double f[3], double k[3][3])
{
    if (law->curve[first + ROUND]) {
        gw_curve_use use = use_of(law, first + ROUND);
        add_round(&use, v, f, k);
    }
    for (int i = 0; i < 3; i++) {
        gw_curve_use use = use_of(law, first + FIRST + i);
        if (use.curve) f[i] = gw_curve_force(&use, v[i], &k[i][i]);
    }
}

static void rates_at_zero(const gw_bush_law *law, int first, double rate[3])
{
    gw_curve_use use = use_of(law, first + ROUND);
    if (use.curve) {
        round_force(&use, 0.0, &rate[0]);
        rate[1] = rate[0];
    }
    for (int i = 0; i < 3; i++) {
        use = use_of(law, first + FIRST + i);
        if (use.curve) gw_curve_force(&use, 0.0, &rate[i]);
    }
}

void gw_curves_rates(gw_bush_law *law)
{
    rates_at_zero(law, GW_CURVES_TRANSLATION, law->k);
    rates_at_zero(law, GW_CURVES_ROTATION, law->c);
}

void gw_bush_moment(const gw_bush_law *law, const double theta[3], double m[3], double c[3][3])
{
    for (int i = 0; i < 3; i++) {
        m[i] = law->c[i] * theta[i];
        for (int j = 0; j < 3; j++) c[i][j] = i == j ? law->c[i] : 0.0;
    }
    gw_curves_force(law, GW_CURVES_ROTATION, theta, m, c);
}

double gw_bush_turning_energy(const gw_bush_law *law, const double theta[3])
{
    double w = gw_curves_energy(law, GW_CURVES_ROTATION, theta);
    bool pair = law->curve[GW_CURVE_CONICAL] || law->curve[GW_CURVE_CONICAL_E1];
    for (int i = pair ? 2 : 0; i < 3; i++)
        if (i < 2 || !law->curve[GW_CURVE_TORSIONAL]) w += 0.5 * law->c[i] * theta[i] * theta[i];
    return w;
}

/* Three rates and the angle of the first two axes, at a deflection or a rotation. */
static void tangent_of(const gw_bush_law *law, int first, const double v[3], double rate[3], double *turn)
{
    gw_curve_use use = use_of(law, first + ROUND);
    double r = hypot(v[0], v[1]);
    *turn = 0.0;
    if (use.curve && r > 0.0) {
        *turn = atan2(v[1], v[0]);
        rate[1] = round_force(&use, r, &rate[0]) / r;
    }
    for (int i = 0; i < 3; i++) {
        use = use_of(law, first + FIRST + i);
        if (use.curve) gw_curve_force(&use, v[i], &rate[i]);
    }
}

gw_bush_tangent gw_bush_tangent_at(const gw_bush_law *law, const double u[3], const double theta[3])
{
    gw_bush_tangent t = { .turn = { 0.0, 0.0 } };
    for (int i = 0; i < 3; i++) {
        t.rate[i] = law->k[i];
        t.rate[3 + i] = law->c[i];
    }
    tangent_of(law, GW_CURVES_TRANSLATION, u, t.rate, &t.turn[0]);
    tangent_of(law, GW_CURVES_ROTATION, theta, t.rate + 3, &t.turn[1]);
    return t;
}

void gw_bush_turn_rows(const gw_bush_tangent *tangent, double row[6][6])
{
    for (int pair = 0; pair < 2; pair++) {
        double cos_t = cos(tangent->turn[pair]), sin_t = sin(tangent->turn[pair]);
        double *first = row[3 * pair], *second = row[3 * pair + 1];
        for (int i = 0; tangent->turn[pair] != 0.0 && i < 6; i++) {
            double a = first[i], b = second[i];
            first[i] = cos_t * a + sin_t * b;
            second[i] = cos_t * b - sin_t * a;
        }
    }
}

void gw_bush_turn_back(const gw_bush_tangent *tangent, double f[6])
{
    for (int pair = 0; pair < 2; pair++) {
        double cos_t = cos(tangent->turn[pair]), sin_t = sin(tangent->turn[pair]);
        double a = f[3 * pair], b = f[3 * pair + 1];
        if (tangent->turn[pair] == 0.0) continue;
        f[3 * pair] = cos_t * a - sin_t * b;
        f[3 * pair + 1] = sin_t * a + cos_t * b;
    }
}

/* The radius at which the round curve carries a force, by halves. */
static double round_inverse(const gw_curve_use *use, double force)
{
    double low = 0.0, high = 2.0 * fmax(use->curve->x[use->curve->n - 1], -use->curve->x[0]);
    if (!(force > 0.0)) return 0.0;
    for (int i = 0; i < 200 && round_force(use, high, NULL) < force; i++) high *= 2.0;
    for (int i = 0; i < 200; i++) {
        double middle = low + 0.5 * (high - low);
        if (middle <= low || middle >= high) break;
        if (round_force(use, middle, NULL) < force)
            low = middle;
        else
            high = middle;
    }
    return high;
}

void gw_bush_deflection_under(const gw_bush_law *law, const double f[3], double u[3])
{
    gw_curve_use use = use_of(law, GW_CURVE_RADIAL);
    double size = hypot(f[0], f[1]), r = use.curve ? round_inverse(&use, size) : 0.0;
    for (int i = 0; i < 3; i++) {
        u[i] = law->k[i] > 0.0 ? f[i] / law->k[i] : 0.0;
        if (i < 2 && use.curve) u[i] = size > 0.0 ? r * f[i] / size : 0.0;
        gw_curve_use own = use_of(law, GW_CURVE_RADIAL_E1 + i);
        if (own.curve) u[i] = gw_curve_inverse(&own, f[i]);
    }
}

static double beyond(const gw_bush_law *law, int first, const double v[3])
{
    gw_curve_use use = use_of(law, first + ROUND);
    double r = hypot(v[0], v[1]), most = 0.0;
    if (use.curve) most = fmax(gw_curve_beyond(&use, r), gw_curve_beyond(&use, -r));
    for (int i = 0; i < 3; i++) {
        use = use_of(law, first + FIRST + i);
        if (use.curve) most = fmax(most, gw_curve_beyond(&use, v[i]));
    }
    return most;
}

void gw_bush_beyond(const gw_bush_law *law, const double u[3], const double theta[3], double by[2])
{
    by[0] = beyond(law, GW_CURVES_TRANSLATION, u);
    by[1] = beyond(law, GW_CURVES_ROTATION, theta);
}
