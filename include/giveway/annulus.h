/* SPDX-License-Identifier: MIT */
/** Small-displacement rates of rubber between two sleeves, solved at its finite length. */
#ifndef GIVEWAY_ANNULUS_H
#define GIVEWAY_ANNULUS_H

#include "giveway/api.h"
#include "giveway/bush.h"
#include "giveway/status.h"

GW_API_BEGIN

/** How the rubber sits on the inner sleeve. */
typedef enum gw_inner_face {
    GW_INNER_BONDED, /**< moves with the sleeve                                                  */
    GW_INNER_SLIDING /**< follows the sleeve radially, free in shear (axial and torsional rate 0) */
} gw_inner_face;

/** Options of the solution; NULL or {0} for the usual ones. */
typedef struct gw_annulus_options {
    gw_inner_face inner_face;
    int refine; /**< 0: the usual mesh; n: n + 1 cells in place of each of its cells, 0 to 3 */
} gw_annulus_options;

/**
 * Is the rubber a shape that can be made? Radii, length, moduli, dish, interleaf and voids.
 *
 * @param[out] err  one line naming the value and what it must be; may be NULL.
 * @retval GW_OK or GW_E_RANGE
 */
gw_status gw_annulus_check(const gw_annulus *annulus, gw_error *err);

/**
 * Rates of a rubber annulus between rigid sleeves: force or moment on the sleeve per unit of its
 * displacement or rotation about the centre, all others held.
 *
 * Solved by finite elements (see bush/element.h) graded towards the corners where bond and free face meet.
 * Plain, dished and interleaved bushes: r-z section with Fourier harmonic 0 (axial, torsional) and 1 (radial,
 * conical). With voids: one eighth of the bush in space. A rigid interleaf of full length moves without
 * tilting under a push and turns about the centre under a tilt, by symmetry, so the two layers of rubber are
 * springs in series.
 *
 * @param[in]  annulus  geometry and moduli; a bulk modulus that is not known means incompressible.
 * @param[in]  options  NULL: bonded, usual mesh.
 * @param[out] rates    written only when GW_OK is returned; conical about e1 and about e2.
 * @param[out] err      one line; may be NULL.
 * @retval GW_OK, GW_E_RANGE, GW_E_NUMERIC, GW_E_NOMEM
 *
 * Accuracy:  mesh converged to 0.2 % without voids, for L from 0.1 of the wall and dishes no deeper than the
 *            wall; beyond that a few per cent, and up to 15 % for a dish far deeper than the wall. With
 *            voids to about 1 %. A void of vanishing angle is a slit with two free faces, softer than the
 *            full bush; half angle 0 exactly is the full bush.
 * Time:      1 to 2 ms without voids, about 0.1 s with them, 1 s with voids of part depth (up to 3 s where
 *            the wall is below a tenth of the radius).
 * Left out:  large strain, the press fit of the sleeves, and contact across a closing void.
 */
gw_status gw_annulus_rates(const gw_annulus *annulus, const gw_annulus_options *options,
                           gw_given_rates *rates, gw_error *err);

GW_API_END

#endif
