/* SPDX-License-Identifier: MIT */
/* The closed forms carried over to shapes that have none of their own. */
#include "bush/handbook.h"
#include "bush/layer.h"
#include "giveway/units.h"

#include <math.h>

/* A parabola takes two thirds of its depth off, at each end. */
static gw_plain_bush mean_tube(const gw_layer *layer)
{
    double sum = 0.0;
    enum { STRIPS = 20 };
    for (int i = 0; i < STRIPS; i++)
        sum += gw_layer_end(layer, layer->r0 + (layer->r1 - layer->r0) * (i + 0.5) / STRIPS);
    return (gw_plain_bush){ layer->r0, layer->r1, 2.0 * sum / STRIPS, layer->g, layer->k };
}

static gw_given_rates plain_rates(const gw_plain_bush *p)
{
    double radial = gw_handbook_radial(p), conical = gw_handbook_conical(p);
    return (gw_given_rates){ .radial = { radial, radial },
                             .axial = gw_handbook_axial(p),
                             .conical = { conical, conical },
                             .torsional = gw_handbook_torsional(p) };
}

/* Lobes of half angle beta = 90 degrees - void half angle about e2. */
static void leave_lobes(const gw_plain_bush *p, double void_angle, gw_given_rates *r)
{
    double beta = 0.5 * GW_PI - void_angle, filled = 2.0 * beta / GW_PI;
    double along = (2.0 * beta - sin(2.0 * beta)) / GW_PI, across = (2.0 * beta + sin(2.0 * beta)) / GW_PI;
    double vented = fmin(gw_handbook_radial_short(p), r->radial[0]) / r->radial[0];
    r->radial[0] *= along * vented;
    r->radial[1] *= across;
    r->conical[0] *= across;
    r->conical[1] *= along * vented;
    r->axial *= filled;
    r->torsional *= filled;
}

static gw_given_rates layer_rates(const gw_layer *layer)
{
    gw_plain_bush tube = mean_tube(layer);
    gw_given_rates rates = plain_rates(&tube);
    if (layer->void_angle > 0.0) leave_lobes(&tube, layer->void_angle, &rates);
    return rates;
}

gw_status gw_handbook_rates(const gw_annulus *annulus, gw_given_rates *rates, gw_error *err)
{
    gw_layer layers[2];
    gw_status status = gw_annulus_check(annulus, err);
    if (status != GW_OK) return status;
    int count = gw_annulus_layers(annulus, layers);
    gw_given_rates inner = layer_rates(&layers[0]);
    if (count == 2) {
        gw_given_rates outer = layer_rates(&layers[1]);
        inner = gw_rates_in_series(&inner, &outer);
    }
    *rates = inner;
    return GW_OK;
}
