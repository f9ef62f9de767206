/* SPDX-License-Identifier: MIT */
#include "bush/progressive.h"

#include "bush/handbook.h"
#include "bush/unbonded.h"

#include <math.h>

enum { CUTS = 200 }; /* midpoint rule: four digits, far beyond the model */

/**
 * <J^2>/<J> of the plane field at unit travel [1/m^2]. With beta and delta over alpha from the conditions at
 * the faces, stretch 2 (alpha/r - beta r + delta/r^3) cos and shear 4 (beta r + delta/r^3) sin; J = A cos^2 +
 * B sin^2.
 */
static double plane_mean(double a, double b, bool bonded)
{
    double a2 = a * a, b2 = b * b, sum_j = 0.0, sum_jj = 0.0, scale;
    double beta = bonded ? 1.0 / (a2 + b2) : b2 / (a2 * a2 + b2 * b2);
    double delta = -beta * a2 * (bonded ? b2 : a2);

    if (bonded)
        scale = 0.5 / (log(b / a) - (b2 - a2) / (a2 + b2));
    else
        scale = 0.5 / (log(b / a) - 0.5 * (b2 * b2 - a2 * a2) / (b2 * b2 + a2 * a2));
    for (int i = 0; i < CUTS; i++) {
        double r = a + (b - a) * (i + 0.5) / CUTS;
        double stretch = 2.0 * (1.0 / r - beta * r + delta / (r * r * r)),
               shear = 4.0 * (beta * r + delta / (r * r * r));
        double p = 4.0 * stretch * stretch, q = shear * shear;

        sum_j += 0.5 * (p + q) * r;
        sum_jj += (0.375 * (p * p + q * q) + 0.25 * p * q) * r;
    }
    return scale * scale * sum_jj / sum_j;
}

/** What the ends make of it: mean of f^4 + 2/3 f^2 g^2 + g^4 over that of f^2 + g^2, s = L/(2 R). */
static double length_factor(double s)
{
    double second = 0.0, fourth = 0.0;

    for (int i = 0; i < CUTS; i++) {
        double z = s * (i + 0.5) / CUTS;
        /* cosh(z)/cosh(s) and sinh(z)/cosh(s) without overflow */
        double grow = exp(z - s), fall = exp(-z - s), whole = 1.0 + exp(-2.0 * s);
        double f = 1.0 - (grow + fall) / whole, g = (grow - fall) / whole, f2 = f * f, g2 = g * g;

        second += f2 + g2;
        fourth += f2 * f2 + g2 * g2 + f2 * g2 / 1.5;
    }
    return fourth / second;
}

static double layer_stiffening(double a, double b, double length, bool bonded)
{
    double radius = sqrt(0.5 * (a * a + b * b));

    return plane_mean(a, b, bonded) * length_factor(0.5 * length / radius) / GW_CHAIN_LIMIT;
}

double gw_progressive_stiffening(const gw_annulus *annulus, bool bonded)
{
    double half = 0.5 * annulus->interleaf_thickness, g = annulus->material.shear_modulus.v;
    double bulk = annulus->material.bulk_modulus.known ? annulus->material.bulk_modulus.v : HUGE_VAL;
    gw_plain_bush in = { annulus->inner_radius, annulus->interleaf_radius - half, annulus->length, g, bulk };
    gw_plain_bush out = { annulus->interleaf_radius + half, annulus->outer_radius, annulus->length, g, bulk };
    double k_in, k_out, p_in, p_out;

    if (!annulus->has_interleaf)
        return layer_stiffening(annulus->inner_radius, annulus->outer_radius, annulus->length, bonded);
    /* Layers in series share the travel; energy 1/4 k s r^4 of each adds up to that of the whole. */
    k_in = bonded ? gw_handbook_radial(&in) : gw_unbonded_radial(&in);
    k_out = gw_handbook_radial(&out);
    p_in = k_out / (k_in + k_out);
    p_out = k_in / (k_in + k_out);
    return p_in * p_in * p_in * layer_stiffening(in.a, in.b, annulus->length, bonded) +
           p_out * p_out * p_out * layer_stiffening(out.a, out.b, annulus->length, true);
}
