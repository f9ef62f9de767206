/* SPDX-License-Identifier: MIT */
#include "bush/handbook.h"

#include "giveway/units.h"

#include <math.h>
#include <stddef.h>

double gw_handbook_torsional(const gw_plain_bush *p)
{
    return 4.0 * GW_PI * p->g * p->length / (1.0 / (p->a * p->a) - 1.0 / (p->b * p->b));
}

double gw_handbook_axial(const gw_plain_bush *p)
{
    return 2.0 * GW_PI * p->g * p->length / log(p->b / p->a);
}

double gw_handbook_axial_ends(const gw_plain_bush *p)
{
    double effective = fmax(p->length - 0.225 * (p->b - p->a), 0.25 * p->length);
    return gw_handbook_axial(p) * effective / p->length;
}

double gw_handbook_kappa(double g, double k)
{
    if (isinf(k)) return 1.0;
    return 3.0 - 2.0 * (3.0 * k - 2.0 * g) / (3.0 * k + g);
}

/* (a^2+b^2) ln(b/a) - (b^2-a^2) loses all its digits in a thin layer, where it is of the order of
 * the cube of the wall; with q = (b^2-a^2)/(a^2+b^2) it is (a^2+b^2) (atanh(q) - q), and the
 * difference has its own series. */
static double atanh_less(double q)
{
    if (q > 0.1) return atanh(q) - q;
    double sum = 0.0, power = q * q * q;
    for (int n = 3; n < 25; n += 2, power *= q * q) sum += power / n;
    return sum;
}

double gw_handbook_radial_plane(const gw_plain_bush *p, double kappa)
{
    double q = (p->b - p->a) * (p->b + p->a) / (p->a * p->a + p->b * p->b);
    double below = atanh_less(q) + (kappa * kappa - 1.0) * log(p->b / p->a);
    return 2.0 * GW_PI * kappa * (1.0 + kappa) * p->g * p->length / below;
}

double gw_handbook_radial_long(const gw_plain_bush *p)
{
    return gw_handbook_radial_plane(p, 1.0);
}

double gw_handbook_radial_short(const gw_plain_bush *p)
{
    return gw_handbook_radial_plane(p, 5.0 / 3.0);
}

/* Length over decay length of the pressure: the layer equation p'' = p/R^2 (1 + 12 G R^2/(K t^2)),
 * whose bracket is the ratio of the incompressible to the compressible plane rate. */
static double vent_length(const gw_plain_bush *p, double k_long)
{
    double s = p->length / sqrt(2.0 * (p->a * p->a + p->b * p->b));
    return s * sqrt(gw_handbook_radial_long(p) / k_long);
}

double gw_handbook_radial(const gw_plain_bush *p)
{
    double k_long = gw_handbook_radial_plane(p, gw_handbook_kappa(p->g, p->k));
    double k_short = fmin(gw_handbook_radial_short(p), k_long);
    double s = vent_length(p, k_long);
    return k_long - (k_long - k_short) * tanh(s) / s;
}

double gw_handbook_conical_strip(double radial, double length)
{
    return radial * length * length / 12.0;
}

double gw_handbook_conical(const gw_plain_bush *p)
{
    double k_long = gw_handbook_radial_plane(p, gw_handbook_kappa(p->g, p->k));
    double k_short = fmin(gw_handbook_radial_short(p), k_long);
    double s = vent_length(p, k_long);
    /* Share of the pressure's moment that is lost at the ends; s coth(s) - 1 = s^2/3 when short. */
    double lost = s < 1e-2 ? 1.0 - s * s / 15.0 : 3.0 * (s / tanh(s) - 1.0) / (s * s);
    double strips = gw_handbook_conical_strip(k_long - (k_long - k_short) * lost, p->length);
    double a2 = p->a * p->a, b2 = p->b * p->b;
    double inner_face = GW_PI * p->g * p->length * a2 * (a2 + b2) / (b2 - a2);
    return strips + inner_face;
}
