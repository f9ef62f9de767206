/* SPDX-License-Identifier: MIT */
/** Complex stiffness of rubber: frequency by a fractional Zener law, amplitude by Kraus' form. */
#ifndef BUSH_DYNAMIC_H
#define BUSH_DYNAMIC_H

#include "giveway/bush_law.h"

#include <complex.h>

/**
 * Fractional Zener law over its static value: 1 + gain x/(1 + x), x = (i w tau)^alpha.
 *
 * Causal by construction: for 0 < alpha <= 1 it is a spring beside a spread of Maxwell elements, all
 * with positive rates, so stiffness and loss belong together. alpha = 1 is the ordinary Zener model.
 * Source: R. L. Bagley and P. J. Torvik, J. Rheology 30 (1986) 133-155, from memory.
 *
 * @param hz  frequency [Hz], > 0; gain [-] >= 0; tau [s] > 0; alpha 0 to 1.
 */
double complex gw_zener_factor(double gain, double tau, double alpha, double hz);

/**
 * Kraus' form of the amplitude law (Payne effect), over the modulus at large strain:
 * real part 1 + gain/(1 + s^2), imaginary part 2 loss s/(1 + s^2), s = (x/xc)^m.
 * `loss` is the greatest loss modulus (at x = xc) over the large-strain modulus.
 *
 * Source: G. Kraus, J. Applied Polymer Science: Applied Polymer Symposium 39 (1984) 75-92, from memory.
 *
 * @param ratio  x/xc [-], >= 0, x and xc both strains or both deflections.
 */
double complex gw_kraus_factor(double gain, double loss, double exponent, double ratio);

/**
 * The dynamic law of a bush whose rubber wall is `wall` [m] thick. The shear strain of Kraus' law is taken
 * as deflection over wall, a mean over the bush. What a material does not give is left out: without the
 * three Zener values the stiffness is the static one, without the three Kraus values no amplitude matters.
 *
 * Left out: Kraus' loss. It comes from filler contacts breaking within a cycle, so it is no linear
 * law, and its height is known for few compounds; the materials' loss is all in the Zener part, fitted at
 * the usual 1 to 5 % strain. The loss factor of a bush thus does not change with amplitude here.
 *
 * @param[out] law  written only on GW_OK.
 * @retval GW_OK
 * @retval GW_E_RANGE  a value out of range, or one of three given without the others.
 */
gw_status gw_dynamic_law_from_material(const gw_material *material, double wall, gw_dynamic_law *law,
                                       gw_error *err);

/** gw_dynamic_ratio as one complex number, storage + i loss [-]; same arguments. */
double complex gw_dynamic_factor(const gw_dynamic_law *law, double hz, double amplitude);

#endif
