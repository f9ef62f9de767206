/* SPDX-License-Identifier: MIT */
/**
 * How hard the rubber of a bush works: strains from the travel of its sleeves, against what lasts.
 * Method page: materials/METHOD-strain.md.
 */
#ifndef GIVEWAY_STRAIN_H
#define GIVEWAY_STRAIN_H

#include "giveway/api.h"
#include "giveway/bush.h"
#include "giveway/status.h"
#include "giveway/verdict.h"

GW_API_BEGIN

/** Peak strains in the rubber, all >= 0 [-]. */
typedef struct gw_rubber_strain {
    double travel_shear; /**< from one sleeve moving past the other: axial, torsional, tilting         */
    double compression;  /**< wall closed over wall, at the end where tilt adds to the radial travel   */
    double flow_shear;   /**< of the rubber that flows out of the closing wall                         */
    double total;        /**< the three added up, as if they met in one place                          */
} gw_rubber_strain;

/**
 * Peak strains of a bush whose inner sleeve has moved by u [m] and theta [rad] in the bush frame. For a bush
 * on a bracket, u is the rubber's part of the deflection.
 *
 * With t = b - a, q = (b^2-a^2)/(a^2+b^2), R^2 = (a^2+b^2)/2, s = L/(2R), bonded to both sleeves:
 *     axial      u3/(a ln(b/a))             torsion  2 theta3 b^2/(b^2-a^2)
 *     tilt       2 theta b^2/(b^2-a^2)      (adds to axial; torsion stands square to both)
 *     closing    |radial travel at an end|/t
 *     flow       P (r tanh(s) + theta R (s coth(s) - 1)), P = 2 q/(a (ln(b/a) - q)), 6 R/t^2 where thin
 * An inner face that slides carries no travel shear, and P = 4 w/(b (2 ln(b/a) - w)), w =
 * (b^4-a^4)/(a^4+b^4). The parts of an interleaved bush share the travel by the handbook rates of its layers;
 * the worse counts.
 *
 * Left out: concentrations at the bonded edges, voids (the rubber beside an opening shears more), dished
 * ends, finite bulk modulus (slim bushes flow less than said), large-strain geometry, the press fit, tension.
 * Sources: axial, torsion and P are the fields behind the rates of J. E. Adkins and A. N. Gent, British
 * Journal of Applied Physics 5 (1954) 354-358; the ends by the thin bonded layer (A. N. Gent and E. A.
 * Meinecke, Polymer Engineering and Science 10 (1970) 48-53, from memory).
 *
 * @param[in]  bonded  false: the inner sleeve slides in the rubber.
 * @param[out] out     written only on GW_OK.
 * @retval GW_OK, GW_E_RANGE
 */
gw_status gw_rubber_strain_of(const gw_annulus *annulus, bool bonded, const double u[3],
                              const double theta[3], gw_rubber_strain *out, gw_error *err);

enum { GW_STRAIN_CHECKS = 3 };

/** Total strain that laminated bearings of natural rubber are allowed: EN 1337-3, from memory. */
#define GW_TOTAL_STRAIN_LIMIT 7.0

/**
 * Travel shear and compression against the material's lasting limits (each only where it has one), and the
 * total against GW_TOTAL_STRAIN_LIMIT, a limit of bridge bearings that is borrowed here.
 *
 * @return number of checks written, 1 to 3.
 */
int gw_rubber_check(const gw_material *material, const gw_rubber_strain *strain,
                    gw_verdict checks[GW_STRAIN_CHECKS]);

GW_API_END

#endif
