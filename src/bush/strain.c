/* SPDX-License-Identifier: MIT */
#include "giveway/strain.h"

#include "bush/handbook.h"
#include "giveway/units.h"

#include <math.h>

/** Travel of one layer: axial, torsional, tilting (size) and radial at the middle and at either end. */
typedef struct travel {
    double axial, twist, tilt, middle, ends;
} travel;

static travel travel_of(const double u[3], const double theta[3], double length)
{
    double z = 0.5 * length;
    double up = hypot(u[0] + theta[1] * z, u[1] - theta[0] * z);
    double down = hypot(u[0] - theta[1] * z, u[1] + theta[0] * z);

    return (travel){ fabs(u[2]), fabs(theta[2]), hypot(theta[0], theta[1]), hypot(u[0], u[1]),
                     fmax(up, down) };
}

/*
 * Shear at the sleeve per radial travel in plane strain. ln(b/a) - q and 2 ln(b/a) - w vanish with the cube
 * of the wall; log1p and the size of real walls (over a hundredth of the radius) leave nine digits.
 */
static double flow_per_travel(double a, double b, bool bonded)
{
    double a2 = a * a, b2 = b * b, l = log1p((b - a) / a);

    if (bonded) {
        double q = (b - a) * (b + a) / (a2 + b2);

        return 2.0 * q / (a * (l - q));
    } else {
        double w = (b - a) * (b + a) * (a2 + b2) / (a2 * a2 + b2 * b2);

        return 4.0 * w / (b * (2.0 * l - w));
    }
}

static gw_rubber_strain layer_strain(double a, double b, double length, bool bonded, const travel *t)
{
    double turn = 2.0 * b * b / ((b - a) * (b + a));
    double radius = sqrt(0.5 * (a * a + b * b)), s = length / (2.0 * radius);
    gw_rubber_strain out = { 0 };

    if (bonded) out.travel_shear = hypot(t->axial / (a * log(b / a)) + turn * t->tilt, turn * t->twist);
    out.compression = t->ends / (b - a);
    out.flow_shear =
        flow_per_travel(a, b, bonded) * (t->middle * tanh(s) + t->tilt * radius * (s / tanh(s) - 1.0));
    out.total = out.travel_shear + out.compression + out.flow_shear;
    return out;
}

/** The part of the travel that falls to `own` when it is in series with `other`. */
static travel share_of(const travel *t, const gw_plain_bush *own, const gw_plain_bush *other)
{
    double axial = gw_handbook_axial(other) / (gw_handbook_axial(own) + gw_handbook_axial(other));
    double twist = gw_handbook_torsional(other) / (gw_handbook_torsional(own) + gw_handbook_torsional(other));
    double tilt = gw_handbook_conical(other) / (gw_handbook_conical(own) + gw_handbook_conical(other));
    double radial = gw_handbook_radial(other) / (gw_handbook_radial(own) + gw_handbook_radial(other));

    return (travel){ t->axial * axial, t->twist * twist, t->tilt * tilt, t->middle * radial,
                     t->middle * radial + (t->ends - t->middle) * tilt };
}

static gw_rubber_strain worse_of(gw_rubber_strain p, gw_rubber_strain q)
{
    return (gw_rubber_strain){ fmax(p.travel_shear, q.travel_shear), fmax(p.compression, q.compression),
                               fmax(p.flow_shear, q.flow_shear), fmax(p.total, q.total) };
}

static gw_rubber_strain interleaved(const gw_annulus *x, bool bonded, const travel *t)
{
    double half = 0.5 * x->interleaf_thickness, g = x->material.shear_modulus.v;
    double k = x->material.bulk_modulus.known ? x->material.bulk_modulus.v : HUGE_VAL;
    gw_plain_bush in = { x->inner_radius, x->interleaf_radius - half, x->length, g, k };
    gw_plain_bush out = { x->interleaf_radius + half, x->outer_radius, x->length, g, k };
    travel first = share_of(t, &in, &out), second = share_of(t, &out, &in);

    return worse_of(layer_strain(in.a, in.b, x->length, bonded, &first),
                    layer_strain(out.a, out.b, x->length, true, &second));
}

static gw_status check(const gw_annulus *x, const double u[3], const double theta[3], gw_error *err)
{
    double half = 0.5 * x->interleaf_thickness;

    if (!(x->inner_radius > 0.0 && x->outer_radius > x->inner_radius) || !isfinite(x->outer_radius))
        return gw_fail(err, GW_E_RANGE, "inner_diameter_mm %g must lie between 0 and outer_diameter_mm %g",
                       2.0 * x->inner_radius / GW_MM, 2.0 * x->outer_radius / GW_MM);
    if (!(x->length > 0.0) || !isfinite(x->length))
        return gw_fail(err, GW_E_RANGE, "length_mm %g must be above 0", x->length / GW_MM);
    for (int i = 0; i < 3; i++)
        if (!isfinite(u[i]) || !isfinite(theta[i]))
            return gw_fail(err, GW_E_RANGE, "the bush's deflection is not a finite number");
    if (!x->has_interleaf) return GW_OK;
    if (!(x->interleaf_radius - half > x->inner_radius && x->interleaf_radius + half < x->outer_radius &&
          half >= 0.0))
        return gw_fail(err, GW_E_RANGE, "the interleaf must lie within the rubber");
    if (!(x->material.shear_modulus.v > 0.0))
        return gw_fail(err, GW_E_RANGE, "shear_modulus_MPa %g must be above 0",
                       x->material.shear_modulus.v / GW_MPA);
    return GW_OK;
}

gw_status gw_rubber_strain_of(const gw_annulus *annulus, bool bonded, const double u[3],
                              const double theta[3], gw_rubber_strain *out, gw_error *err)
{
    gw_status st = check(annulus, u, theta, err);
    travel t;

    if (st != GW_OK) return st;
    t = travel_of(u, theta, annulus->length);
    *out = annulus->has_interleaf
               ? interleaved(annulus, bonded, &t)
               : layer_strain(annulus->inner_radius, annulus->outer_radius, annulus->length, bonded, &t);
    return GW_OK;
}

int gw_rubber_check(const gw_material *material, const gw_rubber_strain *strain,
                    gw_verdict checks[GW_STRAIN_CHECKS])
{
    int n = 0;

    if (material->shear_strain_limit.known)
        checks[n++] = gw_verdict_of(GW_JUDGED_TRAVEL_SHEAR, strain->travel_shear, GW_AT_MOST,
                                    material->shear_strain_limit.v, "lasting limit of the material");
    if (material->compressive_strain_limit.known)
        checks[n++] = gw_verdict_of(GW_JUDGED_COMPRESSION, strain->compression, GW_AT_MOST,
                                    material->compressive_strain_limit.v, "lasting limit of the material");
    checks[n++] = gw_verdict_of(GW_JUDGED_TOTAL_STRAIN, strain->total, GW_AT_MOST, GW_TOTAL_STRAIN_LIMIT,
                                "EN 1337-3, bridge bearings of natural rubber, from memory");
    return n;
}
