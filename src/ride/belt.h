/* SPDX-License-Identifier: MIT */
/** The tyre's tread band as a rigid ring on its sidewalls, alike up and fore and aft. SI units. */
#ifndef RIDE_BELT_H
#define RIDE_BELT_H

#include "giveway/corner.h"

#include <complex.h>

/** Part of the tyre's mass that is belt. H. B. Pacejka, Tyre and Vehicle Dynamics: 7.0 of 9.3 kg of a 205/60
 * R15. */
#define GW_BELT_SHARE 0.75

typedef struct gw_belt {
    bool on;         /**< false: the tyre has no belt, or what is looked at is without it */
    double mass;     /**< [kg]                                                            */
    double sidewall; /**< between wheel and belt [N/m]                                    */
    double loss;     /**< its loss factor                                                 */
    double below;    /**< vertical rate between belt and road: 1/(1/k_t - 1/sidewall) [N/m] */
} gw_belt;

/**
 * The belt of a wheel, its frequency times `factor`; mass 0 where it gives none. Where the sidewall is no
 * stiffer than the tyre, which a case may not have but a draw can, nothing below it gives.
 */
gw_belt gw_belt_of(const gw_wheel *wheel, double factor);

/**
 * What the belt makes of the tyre at complex frequency p, seen from the wheel: sidewall in series with `road`
 * and the belt's mass, less the mass, which the wheel's figure holds already.
 *
 * @param[in] road  stiffness between belt and road [N/m]
 */
double complex gw_belt_stiffness(const gw_belt *belt, double complex road, double complex p);

/** Share of a force on the belt that arrives at the wheel. */
double complex gw_belt_passes(const gw_belt *belt, double complex road, double complex p);

#endif
