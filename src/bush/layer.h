/* SPDX-License-Identifier: MIT */
/** One layer of rubber between two rigid sleeves, as the finite-element solutions see it. */
#ifndef BUSH_LAYER_H
#define BUSH_LAYER_H

#include "giveway/annulus.h"

typedef struct gw_layer {
    double r0, r1;          /**< radii of the sleeves that it sits between                   [m] */
    double half_length;     /**< at the sleeves of the bush                                  [m] */
    double dish;            /**< depth of the hollow of each free end                        [m] */
    double wall_from, wall; /**< inner radius and thickness of the wall that is dished       [m] */
    double g, k;            /**< shear and bulk modulus, both finite                        [Pa] */
    gw_inner_face inner;
    double void_angle; /**< half angle of the two openings centred on e1; 0: none    [rad] */
    double void_floor; /**< rubber below this radius crosses the openings; r0: none    [m] */
} gw_layer;

/** Half length of the rubber at radius r [m]. */
double gw_layer_end(const gw_layer *layer, double r);

/**
 * Cuts the two openings into a layer, down to radius `floor`. A layer that lies wholly below it stays whole;
 * what they take or leave is at least `thinnest` of the layer's wall.
 */
void gw_layer_open(gw_layer *layer, double half_angle, double floor, double thinnest);

/** Layers of rubber of a sound annulus from inside to outside, one or (interleaf) two; returns how many. */
int gw_annulus_layers(const gw_annulus *annulus, gw_layer layers[2]);

/** Rates of two layers one after the other. */
gw_given_rates gw_rates_in_series(const gw_given_rates *x, const gw_given_rates *y);

/**
 * Rates of a layer without openings, from an r-z section with Fourier harmonics 0 and 1 in the angle.
 * `refine` 0 is the usual mesh, n has n + 1 cells for each of its cells.
 */
gw_status gw_ring_rates(const gw_layer *layer, int refine, gw_given_rates *rates, gw_error *err);

/** Rates of a layer with openings (or without: angle 0), from one eighth of it in space. */
gw_status gw_lobe_rates(const gw_layer *layer, int refine, gw_given_rates *rates, gw_error *err);

#endif
