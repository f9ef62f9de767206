/* SPDX-License-Identifier: MIT */
/**
 * Rubber that stiffens with radial travel, in the mean.
 *
 * A neo-Hookean annulus does not do it: in large-strain finite elements its radial force stays within 2 % of
 * the linear one up to a fifth of the wall, because the rubber that is pressed out of the closing side finds
 * room in the opening one. What stiffens is the rubber itself where it flows fastest: chains have a limit.
 * The energy used is Gent's with its first step, W = G/2 (J + J^2/(2 Jm)), J = I1 - 3, which is neo-Hookean
 * for small J and Yeoh's form with C20 = G/(4 Jm).
 *
 * To first order the rubber moves as in the linear solution, and J is there the squared shear of the linear
 * field, so that the force gains the factor 1 + s r^2 with s = <J^2>/(<J> Jm r^2), a mean over the rubber.
 * The field is that of plane strain (see unbonded.h and Adkins and Gent 1954), and along the length that of
 * the thin bonded layer with pressure-free ends: round the sleeve 1 - cosh(z/R)/cosh(s), along the axis
 * sinh(z/R)/cosh(s).
 *
 * Valid to about a third of the wall. Left out: voids, dish and finite bulk modulus (slim bushes stiffen less
 * than said), Mullins softening, rupture of the stretched side, axial or tilting travel at the same time.
 * Sources: A. N. Gent, Rubber Chemistry and Technology 69 (1996) 59-61; O. H. Yeoh, the same 63 (1990)
 * 792-805; Jm from 30 to 100 for vulcanised rubber, both from memory.
 */
#ifndef BUSH_PROGRESSIVE_H
#define BUSH_PROGRESSIVE_H

#include "giveway/bush.h"

#include <stdbool.h>

/** Gent's limit of I1 - 3 that is used: filled rubber, the low end of the range. From memory. */
#define GW_CHAIN_LIMIT 30.0

/** s of gw_bush_law.stiffening [1/m^2]; the annulus has passed gw_annulus_check. `bonded` false: the sleeve
 * slides. */
double gw_progressive_stiffening(const gw_annulus *annulus, bool bonded);

#endif
