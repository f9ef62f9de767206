/* SPDX-License-Identifier: MIT */
/** How far the dynamic stiffness of a bush can be off by what is known of its compound. */
#ifndef GIVEWAY_DYNAMIC_BAND_H
#define GIVEWAY_DYNAMIC_BAND_H

#include "giveway/api.h"
#include "giveway/bush_law.h"

GW_API_BEGIN

/** Size of the complex stiffness over the static rate, and loss factor, each with its limits [-]. */
typedef struct gw_dynamic_band {
    double ratio, ratio_low, ratio_high;
    double loss, loss_low, loss_high;
} gw_dynamic_band;

/**
 * The factor of gw_dynamic_ratio as size and loss, with the limits that the tolerances of the two gains
 * (Zener, Kraus) give when both are off the same way. Without a material, or without tolerances, low and
 * high are the value itself.
 *
 * Left out: tolerances of tau, alpha, critical strain and exponent, which were fitted together with the
 * gains; the tolerance of the static modulus; and that towards 500 Hz the law is an extrapolation.
 *
 * @param material   what `law` was made of; NULL: constants given in a case.
 * @param hz         [Hz], > 0
 * @param amplitude  [m], >= 0
 */
gw_dynamic_band gw_dynamic_band_of(const gw_dynamic_law *law, const gw_material *material, double hz,
                                   double amplitude);

GW_API_END

#endif
