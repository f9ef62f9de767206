/* SPDX-License-Identifier: MIT */
/**
 * Rubber that stiffens as the wall closes: the radial curve of a neo-Hookean annulus in the mean.
 *
 * The wall of thickness t at angle phi from the push is stretched by s = 1 - x cos(phi), x = u/t. The
 * rubber cannot change its volume, so what leaves the closing side has to flow past, round the sleeve
 * or out of the ends, with a parabolic profile over the gap as in a thin bonded layer. With the
 * neo-Hookean energy G/2 (I1 - 3) a flux Q per width costs 12 G Q^2 / (2 t^3 s^2), and the squeeze
 * itself G t (s^2 + 1/s^2 - 2)/2. The flux round the sleeve goes with u sin(phi), the one along the axis
 * with u cos(phi), both exactly at any u. Integrated round the sleeve this gives the three factors
 * of gw_progressive in closed form.
 *
 * How the linear energy is shared among the three comes from the thin bonded layer with
 * pressure-free ends, s = L / (2 R): see gw_progressive_shares.
 *
 * Valid for   radial travel to about half the wall, thin and medium walls (b/a to about 2); thicker
 *             ones are an estimate. Left out: the strain-stiffening of rubber itself beyond a strain
 *             of about 1, Mullins softening, rupture of the stretched side, and any axial or tilting
 *             travel at the same time.
 * Source      neo-Hookean energy: L. R. G. Treloar, The Physics of Rubber Elasticity, 3rd ed., Oxford
 *             1975. Thin bonded layer: A. N. Gent and E. A. Meinecke, Polymer Engineering and
 *             Science 10 (1970) 48-53, from memory. The closed forms are derived here.
 */
#ifndef BUSH_PROGRESSIVE_H
#define BUSH_PROGRESSIVE_H

#include "giveway/bush_law.h"

/** M, dM/de and d2M/de2 at e = (r/wall)^2 >= 0. */
void gw_progressive_factor(const gw_progressive *p, double e, double m[3]);

/** Shares of the three mechanisms in the radial rate of a bush, and its wall. */
gw_progressive gw_progressive_shares(const gw_annulus *annulus);

#endif
