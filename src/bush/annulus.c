/* SPDX-License-Identifier: MIT */
#include "giveway/annulus.h"

#include "bush/layer.h"

#include <math.h>

/* A bulk modulus beyond this many shear moduli changes no rate, and only costs digits. */
static const double STIFFEST_BULK = 1e6;

/* Thinner than this part of the wall, what an opening takes or leaves is given this thickness: the
 * rates have reached their limit (a debonded face, a film), and the mesh stays sound. */
static const double THINNEST = 1e-3;

/* Layers of rubber from inside to outside, one or two; returns how many. */
int gw_annulus_layers(const gw_annulus *annulus, gw_layer layers[2])
{
    const gw_material *m = &annulus->material;
    double wall = annulus->outer_radius - annulus->inner_radius, g = m->shear_modulus.v;
    double bulk = m->bulk_modulus.known ? fmin(m->bulk_modulus.v, STIFFEST_BULK * g) : STIFFEST_BULK * g;
    gw_layer whole = { .r0 = annulus->inner_radius,
                       .r1 = annulus->outer_radius,
                       .half_length = 0.5 * annulus->length,
                       .dish = annulus->end_dish,
                       .wall_from = annulus->inner_radius,
                       .wall = wall,
                       .g = g,
                       .k = bulk };
    int count = annulus->has_interleaf ? 2 : 1;
    layers[0] = layers[1] = whole;
    if (count == 2) {
        layers[0].r1 = annulus->interleaf_radius - 0.5 * annulus->interleaf_thickness;
        layers[1].r0 = annulus->interleaf_radius + 0.5 * annulus->interleaf_thickness;
    }
    if (annulus->has_voids && annulus->voids.half_angle > 0.0) {
        double depth = annulus->voids.depth > 0.0 ? annulus->voids.depth : wall;
        for (int i = 0; i < count; i++)
            gw_layer_open(&layers[i], annulus->voids.half_angle, whole.r1 - depth, THINNEST);
    }
    return count;
}

static bool positive(double x)
{
    return x > 0.0 && isfinite(x);
}

static gw_status check_tube(const gw_annulus *a, gw_error *err)
{
    double inner = 2e3 * a->inner_radius, outer = 2e3 * a->outer_radius, length = 1e3 * a->length;
    if (!positive(inner)) return gw_fail(err, GW_E_RANGE, "inner diameter %g mm must be positive", inner);
    if (!positive(outer)) return gw_fail(err, GW_E_RANGE, "outer diameter %g mm must be positive", outer);
    if (inner >= outer)
        return gw_fail(err, GW_E_RANGE, "inner diameter %g mm must be smaller than the outer, %g mm", inner,
                       outer);
    if (!positive(length)) return gw_fail(err, GW_E_RANGE, "length %g mm must be positive", length);
    return GW_OK;
}

static gw_status check_material(const gw_material *m, gw_error *err)
{
    if (!m->shear_modulus.known || !positive(m->shear_modulus.v))
        return gw_fail(err, GW_E_RANGE, "material %s: shear modulus must be given and positive", m->name);
    if (m->bulk_modulus.known && !(m->bulk_modulus.v > 0.0))
        return gw_fail(err, GW_E_RANGE, "material %s: bulk modulus %g MPa must be positive", m->name,
                       m->bulk_modulus.v / 1e6);
    return GW_OK;
}

static gw_status check_shape(const gw_annulus *a, gw_error *err)
{
    if (!(a->end_dish >= 0.0 && 2.0 * a->end_dish < a->length))
        return gw_fail(
            err, GW_E_RANGE,
            "end dish %g mm must be at least 0 and less than half of the length, %g mm: two hollows "
            "would meet",
            1e3 * a->end_dish, 500.0 * a->length);
    if (!a->has_interleaf) return GW_OK;
    double inside = a->interleaf_radius - 0.5 * a->interleaf_thickness;
    double outside = a->interleaf_radius + 0.5 * a->interleaf_thickness;
    if (!(a->interleaf_thickness >= 0.0 && inside > a->inner_radius && outside < a->outer_radius))
        return gw_fail(
            err, GW_E_RANGE,
            "interleaf from %g to %g mm of diameter must leave rubber on both sides, between %g and %g mm",
            2e3 * inside, 2e3 * outside, 2e3 * a->inner_radius, 2e3 * a->outer_radius);
    return GW_OK;
}

static gw_status check_voids(const gw_annulus *a, gw_error *err)
{
    double degrees = a->voids.half_angle * 180.0 / 3.14159265358979323846;
    double wall = a->outer_radius - a->inner_radius;
    if (!a->has_voids) return GW_OK;
    if (!(degrees >= 0.0 && degrees < 90.0))
        return gw_fail(err, GW_E_RANGE,
                       "void half angle %g degrees must be less than 90: the two voids would meet", degrees);
    if (!(a->voids.depth >= 0.0 && a->voids.depth <= wall * (1.0 + 1e-9)))
        return gw_fail(err, GW_E_RANGE, "void depth %g mm must be at most the wall, %g mm",
                       1e3 * a->voids.depth, 1e3 * wall);
    if (!(a->voids.gap >= 0.0))
        return gw_fail(err, GW_E_RANGE, "void gap %g mm must not be negative", 1e3 * a->voids.gap);
    return GW_OK;
}

gw_status gw_annulus_check(const gw_annulus *annulus, gw_error *err)
{
    gw_status status = check_tube(annulus, err);
    if (status == GW_OK) status = check_material(&annulus->material, err);
    if (status == GW_OK) status = check_shape(annulus, err);
    if (status == GW_OK) status = check_voids(annulus, err);
    return status;
}

/* Two springs in a row; one that is slack makes the pair slack. */
static double in_series(double x, double y)
{
    return x + y > 0.0 ? x * y / (x + y) : 0.0;
}

gw_given_rates gw_rates_in_series(const gw_given_rates *x, const gw_given_rates *y)
{
    gw_given_rates out = { .axial = in_series(x->axial, y->axial),
                           .torsional = in_series(x->torsional, y->torsional) };
    for (int i = 0; i < 2; i++) {
        out.radial[i] = in_series(x->radial[i], y->radial[i]);
        out.conical[i] = in_series(x->conical[i], y->conical[i]);
    }
    return out;
}

gw_status gw_annulus_rates(const gw_annulus *annulus, const gw_annulus_options *options,
                           gw_given_rates *rates, gw_error *err)
{
    gw_annulus_options usual = { .inner_face = GW_INNER_BONDED };
    gw_layer layers[2];
    gw_given_rates part[2];
    if (!options) options = &usual;
    if (options->refine < 0 || options->refine > 3)
        return gw_fail(err, GW_E_RANGE, "mesh refinement %d must be 0 to 3", options->refine);
    gw_status status = gw_annulus_check(annulus, err);
    if (status != GW_OK) return status;
    int count = gw_annulus_layers(annulus, layers);
    layers[0].inner = options->inner_face;
    for (int i = 0; i < count; i++) {
        status = layers[i].void_angle > 0.0 ? gw_lobe_rates(&layers[i], options->refine, &part[i], err)
                                            : gw_ring_rates(&layers[i], options->refine, &part[i], err);
        if (status != GW_OK) return status;
    }
    *rates = count == 2 ? gw_rates_in_series(&part[0], &part[1]) : part[0];
    return GW_OK;
}
