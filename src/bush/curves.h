/* SPDX-License-Identifier: MIT */
/** The parts of a law that were measured. Private to src/bush. */
#ifndef BUSH_CURVES_H
#define BUSH_CURVES_H

#include "giveway/bush_law.h"

/** Where the four ways of translation, and of rotation, begin among the curves of a law. */
enum { GW_CURVES_TRANSLATION = GW_CURVE_RADIAL, GW_CURVES_ROTATION = GW_CURVE_CONICAL };

/** Energy of the ways that have curves. */
double gw_curves_energy(const gw_bush_law *law, int first, const double v[3]);

/** Puts force and tangent of the ways that have curves in place of what stands in f and k. */
void gw_curves_force(const gw_bush_law *law, int first, const double v[3], double f[3], double k[3][3]);

/** k and c of the ways that have curves: their slopes at zero, as fitted. */
void gw_curves_rates(gw_bush_law *law);

#endif
