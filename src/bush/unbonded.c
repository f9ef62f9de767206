/* SPDX-License-Identifier: MIT */
#include "bush/unbonded.h"

#include "bush/dynamic.h"
#include "giveway/annulus.h"
#include "giveway/units.h"

#include <math.h>

/*
 * For kappa = 1 and a thin wall the bracket is of the order of the wall cubed: ln(b/a) less tanh(2
 * ln(b/a))/2. With w = (b^4-a^4)/(b^4+a^4), ln(b/a) = atanh(w)/2, so the bracket is (atanh(w) - w)/2, which
 * has a series.
 */
static double incompressible_bracket(double a, double b)
{
    double a2 = a * a, b2 = b * b;
    double w = (b - a) * (b + a) * (a2 + b2) / (a2 * a2 + b2 * b2), sum = 0.0, power = w * w * w;

    if (w > 0.1) return 0.5 * (atanh(w) - w);
    for (int n = 3; n < 25; n += 2, power *= w * w) sum += power / n;
    return 0.5 * sum;
}

/*
 * The bracket, split: what cancels at kappa = 1 comes from the series above, and the rest carries the factor
 * e = kappa - 1 openly.
 */
double gw_unbonded_radial_plane(const gw_plain_bush *p, double kappa)
{
    double e = kappa - 1.0, a2 = p->a * p->a, b2 = p->b * p->b, a4 = a2 * a2, b4 = b2 * b2;
    double s = a4 + b4;
    /* (2 b2 + e a2)^2/(2 (s + e b4)) less its value 2 b4/s at e = 0 */
    double grown = (e * (4.0 * a2 * b2 * s - 4.0 * b4 * b4) + e * e * a4 * s) / (2.0 * s * (s + e * b4));
    double bracket = 2.0 * incompressible_bracket(p->a, p->b) + e * (2.0 * log(p->b / p->a) + 0.5) - grown;

    return 4.0 * GW_PI * (1.0 + kappa) * p->g * p->length / bracket;
}

/** Length over the decay length of the pressure; see gw_handbook_radial. */
static double vent_length(const gw_plain_bush *p, double k_long)
{
    double s = p->length / sqrt(2.0 * (p->a * p->a + p->b * p->b));

    return s * sqrt(gw_unbonded_radial_plane(p, 1.0) / k_long);
}

double gw_unbonded_radial(const gw_plain_bush *p)
{
    double k_long = gw_unbonded_radial_plane(p, gw_handbook_kappa(p->g, p->k));
    double k_short = fmin(gw_unbonded_radial_plane(p, 5.0 / 3.0), k_long);
    double s = vent_length(p, k_long);

    return k_long - (k_long - k_short) * tanh(s) / s;
}

double gw_unbonded_conical(const gw_plain_bush *p)
{
    double k_long = gw_unbonded_radial_plane(p, gw_handbook_kappa(p->g, p->k));
    double k_short = fmin(gw_unbonded_radial_plane(p, 5.0 / 3.0), k_long);
    double s = vent_length(p, k_long);
    double lost = s < 1e-2 ? 1.0 - s * s / 15.0 : 3.0 * (s / tanh(s) - 1.0) / (s * s);

    return gw_handbook_conical_strip(k_long - (k_long - k_short) * lost, p->length);
}

double gw_unbonded_axial(const gw_plain_bush *p)
{
    double young = isinf(p->k) ? 3.0 * p->g : 9.0 * p->k * p->g / (3.0 * p->k + p->g);

    return GW_PI * young * (p->a + p->b);
}

double gw_unbonded_pressure(const gw_plain_bush *p, double delta)
{
    double wall = p->b - p->a, ends = p->length / (2.0 * wall);
    double h2, h;

    if (isinf(p->k)) return p->g * delta / wall * ends * ends;
    h2 = 3.0 * p->g / p->k * ends * ends;
    h = sqrt(h2);
    if (h < 1e-2) return p->k * delta / wall * h2 / 3.0 * (1.0 - 0.4 * h2);
    return p->k * delta / wall * (1.0 - tanh(h) / h);
}

double gw_unbonded_breakaway(const gw_plain_bush *p, double friction, double pressure, double load)
{
    return friction * p->a * (2.0 * GW_PI * p->a * p->length * pressure + 4.0 / GW_PI * load);
}

static gw_status check(const gw_annulus *annulus, gw_error *err)
{
    if (annulus->has_voids) return gw_fail(err, GW_E_RANGE, "an unbonded bush has no voids: leave them out");
    if (!(annulus->friction >= 0.0) || !isfinite(annulus->friction))
        return gw_fail(err, GW_E_RANGE, "friction_coefficient %g must not be negative", annulus->friction);
    return gw_annulus_check(annulus, err);
}

static double in_series(double first, double second)
{
    return 1.0 / (1.0 / first + 1.0 / second);
}

/** Closed forms; an interleaf leaves a sliding layer inside and a bonded one outside of it, in series. */
static void closed_rates(const gw_annulus *x, const gw_plain_bush *inner, gw_given_rates *rates)
{
    double radial = gw_unbonded_radial(inner), conical = gw_unbonded_conical(inner);

    if (x->has_interleaf) {
        gw_plain_bush outer = { x->interleaf_radius + 0.5 * x->interleaf_thickness, x->outer_radius,
                                inner->length, inner->g, inner->k };

        radial = in_series(radial, gw_handbook_radial(&outer));
        conical = in_series(conical, gw_handbook_conical(&outer));
    }
    *rates = (gw_given_rates){ .radial = { radial, radial }, .conical = { conical, conical } };
}

gw_status gw_unbonded_law(const gw_annulus *annulus, gw_method method, gw_bush_law *law, gw_error *err)
{
    const gw_material *m = &annulus->material;
    gw_plain_bush whole = { annulus->inner_radius, annulus->outer_radius, annulus->length, m->shear_modulus.v,
                            m->bulk_modulus.known ? m->bulk_modulus.v : HUGE_VAL };
    gw_annulus_options sliding = { .inner_face = GW_INNER_SLIDING };
    gw_bush_law out = { .dynamic = { .ratio = 1.0 } };
    gw_plain_bush inner = whole; /* the layer that the sleeve slides in */
    gw_given_rates rates = { 0 };
    gw_status st;

    if ((st = check(annulus, err)) != GW_OK) return st;
    if (annulus->has_interleaf) inner.b = annulus->interleaf_radius - 0.5 * annulus->interleaf_thickness;
    if (method == GW_METHOD_HANDBOOK)
        closed_rates(annulus, &inner, &rates);
    else if ((st = gw_annulus_rates(annulus, &sliding, &rates, err)) != GW_OK)
        return st;
    st = gw_dynamic_law_from_material(m, whole.b - whole.a, &out.dynamic, err);
    if (st != GW_OK) return st;
    for (int i = 0; i < 2; i++) {
        out.k[i] = rates.radial[i];
        out.c[i] = rates.conical[i];
    }
    out.k[2] = gw_unbonded_axial(&whole);
    out.breakaway = gw_unbonded_breakaway(
        &inner, annulus->friction,
        gw_unbonded_pressure(&inner, GW_UNBONDED_INTERFERENCE * (inner.b - inner.a)), 0.0);
    out.slider = (gw_slider){ .torque = out.breakaway,
                              .per_force = annulus->friction * inner.a * 4.0 / GW_PI,
                              .radial_only = true,
                              .winds_up = gw_handbook_torsional(&whole) };
    *law = out;
    return GW_OK;
}
