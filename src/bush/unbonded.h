/* SPDX-License-Identifier: MIT */
/** Polyurethane held in the outer sleeve, on an inner sleeve that turns and slides. SI units. */
#ifndef BUSH_UNBONDED_H
#define BUSH_UNBONDED_H

#include "bush/handbook.h"
#include "giveway/bush_law.h"

/**
 * Radial rate of the plane problem: outer face fixed, inner face pushed by a rigid sleeve and free in
 * shear [N/m], for any Kolosov constant kappa:
 *     4 pi (1+kappa) G L / [2 kappa ln(b/a) + (1+kappa)/2 - (2 b^2 + (kappa-1) a^2)^2 / (2 (kappa b^4 +
 * a^4))] kappa = 1: 4 pi G L / [ln(b/a) - (b^4-a^4)/(2 (a^4+b^4))]; a thin wall tends to 3 pi G L R^3/t^3, a
 * quarter of the bonded one. The face stays in touch all round (the bush is pressed in). Derived here from
 * the complex potentials of N. I. Muskhelishvili (Some Basic Problems of the Mathematical Theory of
 * Elasticity), phi = A log z + B z^2, psi = -kappa A log z + D/z^2.
 */
double gw_unbonded_radial_plane(const gw_plain_bush *p, double kappa);

/**
 * The same at finite length, vented at both ends as gw_handbook_radial does it [N/m]. From 5 % below to 9 %
 * above the finite-element solution for 1.25 <= b/a <= 3 and L >= b - a: with a face free in shear the ends
 * reach twice as deep into the rubber, which the form does not know.
 */
double gw_unbonded_radial(const gw_plain_bush *p);

/**
 * Conical rate by strips that move radially, vented at the ends [N m/rad]. From 14 % below to 7 % above the
 * finite-element solution in the same range.
 */
double gw_unbonded_conical(const gw_plain_bush *p);

/**
 * Axial rate of the flanges [N/m]: E pi (b^2 - a^2) / t with t = b - a, that is pi E (a + b), E = 9 K G/(3 K
 * + G). An estimate, not better than a factor of 1.5: one flange at a time carries, is as thick as the wall
 * and as wide as the ring from a to b, and its faces slide freely. The flanges are not in a bush's
 * description.
 */
double gw_unbonded_axial(const gw_plain_bush *p);

/** Interference of the inner sleeve over the wall that is assumed where none is given. Common practice. */
#define GW_UNBONDED_INTERFERENCE 0.01

/**
 * Mean pressure on the inner sleeve pressed in with a radial interference `delta` [m]: K delta/t (1 -
 * tanh(h)/h), h = (L/2t) sqrt(3 G/K), from the layer equation with one face free [Pa].
 */
double gw_unbonded_pressure(const gw_plain_bush *p, double delta);

/**
 * Friction torque that must be overcome before the sleeve turns [N m]: mu a (2 pi a L pressure + 4/pi load);
 * the second part is of a radial load [N] that presses with the cosine of the angle. An upper figure: where
 * the load exceeds the press fit, part of the sleeve lifts and the fit's share falls.
 */
double gw_unbonded_breakaway(const gw_plain_bush *p, double friction, double pressure, double load);

/**
 * The law of an unbonded bush: radial and conical rate with the inner face free in shear, axial rate of the
 * flanges, no torsional rate but a breakaway torque without load, and the dynamic law of its material.
 *
 * @param[in]  method  GW_METHOD_SOLVED: finite elements for the radial and conical rate.
 * @param[out] law     written only on GW_OK; stops and progressive rubber are left to the caller.
 * @retval GW_OK, GW_E_RANGE, GW_E_NUMERIC, GW_E_NOMEM
 */
gw_status gw_unbonded_law(const gw_annulus *annulus, gw_method method, gw_bush_law *law, gw_error *err);

#endif
