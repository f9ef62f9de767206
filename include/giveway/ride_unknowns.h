/* SPDX-License-Identifier: MIT */
/** Seven things that nobody knows for sure of a car, drawn together eight times. SI units. */
#ifndef GIVEWAY_RIDE_UNKNOWNS_H
#define GIVEWAY_RIDE_UNKNOWNS_H

#include "giveway/ride.h"

GW_API_BEGIN

/** What is drawn, in the order of the design's columns. */
typedef enum gw_ride_unknown {
    GW_UNKNOWN_BRACKETS,
    GW_UNKNOWN_BRACKET_LOSS,
    GW_UNKNOWN_KEPT,
    GW_UNKNOWN_CHANGED,
    GW_UNKNOWN_LOSS,
    GW_UNKNOWN_GIVE,
    GW_UNKNOWN_BELT,
    GW_UNKNOWNS
} gw_ride_unknown;

/** What nobody knows for sure, as it is taken for one solve. */
typedef struct gw_ride_draw {
    double bracket;       /**< factor on every bracket                                                    */
    double bracket_loss;  /**< loss factor of every bracket                                               */
    double kept, changed; /**< factor on elastic bushes that the kit keeps from the first kit, and changes */
    double loss;          /**< factor on the loss of elastic bushes                                       */
    double give;          /**< of links and lugs, in every joint's translations [m/N]                     */
    double belt;          /**< factor on the frequency of the tyre's belt                                 */
} gw_ride_draw;

/** Everything as it is given: no factor but one. */
gw_ride_draw gw_draw_nominal(const gw_ride *settings);

/**
 * Draw number 0 to GW_RIDE_DRAWS - 1: u = (a, b, c, ab, ac, bc, abc) / sqrt 3, a, b, c = +-1.
 * Source: R. L. Plackett, J. P. Burman, Biometrika 33 (1946) 305-325.
 */
void gw_draw_levels(int draw, double u[GW_UNKNOWNS]);

/** What unknowns at levels u, each from -1 to 1, make of the model. */
gw_ride_draw gw_draw_at(const double u[GW_UNKNOWNS]);

GW_API_END

#endif
