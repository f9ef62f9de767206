/* SPDX-License-Identifier: MIT */
/* From the description of a bush to its law, type by type. */
#include "bush/curves.h"
#include "bush/dynamic.h"
#include "bush/handbook.h"
#include "bush/progressive.h"
#include "bush/unbonded.h"
#include "giveway/annulus.h"
#include "giveway/bearing.h"
#include "giveway/bush_law.h"

#include <math.h>
#include <stddef.h>

const char *const GW_BUSH_TYPE_WORDS[] = { "rates",      "bonded",   "unbonded", "bearing",
                                           "ball_joint", "measured", "rigid",    NULL };

/* A void closes over this part of its gap, so that Newton meets no corner. */
static const double VOID_BLEND = 0.1;

gw_bush_law gw_bush_law_zero(void)
{
    return (gw_bush_law){ .curve_factor = 1.0, .dynamic = { .ratio = 1.0 } };
}

static void take_rates(gw_bush_law *law, const gw_given_rates *rates)
{
    for (int i = 0; i < 2; i++) {
        law->k[i] = rates->radial[i];
        law->c[i] = rates->conical[i];
    }
    law->k[2] = rates->axial;
    law->c[2] = rates->torsional;
}

/* Dry friction that is simply given: no load makes it more. */
static void take_breakaway(gw_bush_law *law, const gw_bush *bush)
{
    if (!bush->has_breakaway) return;
    law->breakaway = bush->breakaway;
    law->slider = (gw_slider){ .torque = bush->breakaway, .all_axes = bush->type == GW_BUSH_BALL_JOINT };
}

static gw_status from_rates(const gw_bush *bush, gw_bush_law *law, gw_error *err)
{
    const gw_given_rates *r = &bush->rates;
    const double all[] = { r->radial[0], r->radial[1], r->axial, r->conical[0], r->conical[1], r->torsional };
    for (int i = 0; i < 6; i++)
        if (!(all[i] >= 0.0) || !isfinite(all[i]))
            return gw_fail(err, GW_E_RANGE, "a given rate is %g: rates must not be negative", all[i]);
    if (!(bush->loss_factor >= 0.0) || !(bush->dynamic_ratio >= 0.0))
        return gw_fail(err, GW_E_RANGE, "loss factor %g and dynamic ratio %g must not be negative",
                       bush->loss_factor, bush->dynamic_ratio);
    take_rates(law, r);
    law->dynamic.ratio = bush->dynamic_ratio > 0.0 ? bush->dynamic_ratio : 1.0;
    law->dynamic.loss = bush->loss_factor;
    take_breakaway(law, bush);
    return GW_OK;
}

/* The play is lost motion each side of the centre, half of the clearance. */
static gw_status from_bearing(const gw_bush *bush, gw_bush_law *law, gw_error *err)
{
    double radial = 0.0, axial = 0.0;
    gw_status status = gw_bearing_rates(&bush->bearing, &radial, &axial, err);
    if (status != GW_OK) return status;
    law->k[0] = law->k[1] = radial;
    law->k[2] = axial;
    law->clearance = 0.5 * bush->bearing.clearance;
    law->blend = GW_PLAY_BLEND * law->clearance;
    law->breakaway = bush->bearing.breakaway;
    law->slider = (gw_slider){ .torque = bush->bearing.breakaway,
                               .per_force = 0.5 * bush->bearing.friction * bush->bearing.ball_diameter,
                               .all_axes = true };
    return GW_OK;
}

static gw_status rubber_rates(const gw_annulus *annulus, gw_method method, gw_given_rates *rates,
                              gw_error *err)
{
    if (method == GW_METHOD_HANDBOOK) return gw_handbook_rates(annulus, rates, err);
    return gw_annulus_rates(annulus, NULL, rates, err);
}

/*
 * What carries when the void has closed: one side of the bush, the one that is pressed, has its rubber
 * back, so half of what the openings take from the radial rate. An estimate: the closed faces are not bonded,
 * and a fill of other shape than the void meets it sooner or later.
 */
static gw_status close_void(const gw_annulus *annulus, gw_method method, gw_bush_law *law, gw_error *err)
{
    gw_annulus full = *annulus;
    gw_given_rates rates;
    full.has_voids = false;
    gw_status status = rubber_rates(&full, method, &rates, err);
    if (status != GW_OK) return status;
    law->void_stop =
        (gw_stop){ .gap = annulus->voids.gap, .rate = 0.5 * fmax(rates.radial[0] - law->k[0], 0.0) };
    law->blend = VOID_BLEND * annulus->voids.gap;
    return GW_OK;
}

static gw_status from_bonded(const gw_bush *bush, gw_method method, gw_bush_law *law, gw_error *err)
{
    const gw_annulus *annulus = &bush->annulus;
    gw_given_rates rates;
    gw_status status = rubber_rates(annulus, method, &rates, err);
    if (status != GW_OK) return status;
    take_rates(law, &rates);
    if (annulus->has_voids && annulus->voids.half_angle > 0.0) status = close_void(annulus, method, law, err);
    if (status != GW_OK) return status;
    return gw_dynamic_law_from_material(&annulus->material, annulus->outer_radius - annulus->inner_radius,
                                        &law->dynamic, err);
}

/* A sleeve that slides; what is given stands in place of press fit and load together. */
static gw_status from_unbonded(const gw_bush *bush, gw_method method, gw_bush_law *law, gw_error *err)
{
    gw_status status = gw_unbonded_law(&bush->annulus, method, law, err);
    if (status != GW_OK || !bush->has_breakaway) return status;
    law->breakaway = law->slider.torque = bush->breakaway;
    law->slider.per_force = 0.0;
    return GW_OK;
}

double gw_bush_rate_across(const gw_bush_law *law)
{
    double across = 0.5 * (law->k[0] + law->k[1]);
    return across > 0.0 ? across : law->k[2];
}

/* A test across the bush tells by how much all its rates are another thing in motion. */
static gw_status from_rig(const gw_rig_law *rig, gw_bush_law *law, gw_error *err)
{
    double slow = gw_bush_rate_across(law);
    if (!(slow > 0.0))
        return gw_fail(err, GW_E_RANGE, "a dynamic test of a bush that has no rate across or along it");
    law->dynamic = (gw_dynamic_law){ .ratio = rig->rate / slow,
                                     .zener_gain = rig->zener_gain,
                                     .zener_tau = rig->zener_tau,
                                     .zener_alpha = rig->zener_alpha,
                                     .payne_gain = rig->payne_gain,
                                     .payne_amplitude = rig->payne_amplitude,
                                     .payne_exponent = rig->payne_exponent };
    return GW_OK;
}

static gw_status from_curves(const gw_bush *bush, gw_bush_law *law, gw_error *err)
{
    gw_status status = from_rates(bush, law, err);
    if (status != GW_OK) return status;
    for (int way = 0; way < GW_CURVE_WAYS; way++) law->curve[way] = bush->curve[way];
    gw_curves_rates(law);
    return bush->rig.given ? from_rig(&bush->rig, law, err) : GW_OK;
}

static gw_status by_type(const gw_bush *bush, gw_method method, gw_bush_law *law, gw_error *err)
{
    switch (bush->type) {
    case GW_BUSH_RATES:
    case GW_BUSH_BALL_JOINT:
    case GW_BUSH_RIGID:
        return from_rates(bush, law, err);
    case GW_BUSH_BONDED:
        return from_bonded(bush, method, law, err);
    case GW_BUSH_UNBONDED:
        return from_unbonded(bush, method, law, err);
    case GW_BUSH_BEARING:
        return from_bearing(bush, law, err);
    case GW_BUSH_MEASURED:
        return from_curves(bush, law, err);
    }
    return gw_fail(err, GW_E_RANGE, "a type of bush that is not known");
}

static gw_status check_stop(const gw_stop *stop, gw_error *err)
{
    if (stop->gap >= 0.0 && stop->rate >= 0.0 && isfinite(stop->gap) && isfinite(stop->rate)) return GW_OK;
    return gw_fail(err, GW_E_RANGE, "stop: gap %g mm and rate %g N/mm must not be negative", 1e3 * stop->gap,
                   1e-3 * stop->rate);
}

double gw_bush_stiffness_factor(const gw_bush *bush)
{
    return bush->stiffness_factor > 0.0 ? bush->stiffness_factor : 1.0;
}

gw_status gw_bush_law_make(const gw_bush *bush, gw_method method, gw_bush_law *law, gw_error *err)
{
    gw_bush_law made = gw_bush_law_zero();
    gw_error inner = { 0 };
    bool rubber = gw_bush_is_rubber(bush);
    gw_status status = by_type(bush, method, &made, &inner);
    if (status == GW_OK) status = check_stop(&bush->stop, &inner);
    if (status != GW_OK) return gw_fail(err, status, "bush %s: %s", bush->name, inner.msg);
    made.stop = bush->stop;
    made.elastic = rubber || bush->type == GW_BUSH_RATES || bush->type == GW_BUSH_MEASURED;
    if (rubber) {
        made.rubber_radius = 0.5 * (bush->annulus.inner_radius + bush->annulus.outer_radius);
        made.rubber_length = bush->annulus.length;
    }
    if (rubber && bush->annulus.progressive)
        made.stiffening = gw_progressive_stiffening(&bush->annulus, bush->type == GW_BUSH_BONDED);
    *law = gw_bush_law_times(&made, gw_bush_stiffness_factor(bush));
    return GW_OK;
}
