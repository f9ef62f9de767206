/* SPDX-License-Identifier: MIT */
/**
 * A measured curve: force over deflection, or moment over rotation, through points that rise strictly in
 * both.
 *
 * Between the points runs Steffen's cubic, which has no maximum or minimum that the points do not have;
 * beyond the last ones it goes straight on with the slope there. Source: M. Steffen, "A simple method for
 * monotonic interpolation in one dimension", Astronomy and Astrophysics 239 (1990) 443-450; at both ends his
 * simplest choice, the slope of the last two points.
 */
#ifndef GIVEWAY_CURVE_H
#define GIVEWAY_CURVE_H

#include "giveway/api.h"
#include "giveway/status.h"

GW_API_BEGIN

enum { GW_CURVE_MOST = 1001 }; /**< points of one curve, those that are put in counted */

/** Points of a curve, (0, 0) among them; immutable, borrowed by every law that is made of it. */
typedef struct gw_curve {
    int n;           /**< points, >= 3                          */
    int zero;        /**< which of them is (0, 0)               */
    const double *x; /**< deflection or rotation [m] or [rad]   */
    const double *y; /**< force or moment [N] or [N m]          */
} gw_curve;

/** A curve as it is fitted: every force times `factor`, every deflection longer by force / bracket. */
typedef struct gw_curve_use {
    const gw_curve *curve;
    double factor;  /**< on the forces [-], > 0          */
    double bracket; /**< in series [N/m], > 0; 0: none   */
} gw_curve_use;

/** Force at a deflection, and where `slope` is not NULL the tangent there, which is above 0. */
double gw_curve_force(const gw_curve_use *use, double x, double *slope);

/** Integral of the force from 0 to x, >= 0. */
double gw_curve_energy(const gw_curve_use *use, double x);

/** The deflection that carries a force, to rounding. */
double gw_curve_inverse(const gw_curve_use *use, double force);

/** How far a deflection lies beyond the last point on its side, >= 0. */
double gw_curve_beyond(const gw_curve_use *use, double x);

/**
 * Makes a curve of points in any order of sides: (0, 0) is put in where it is missing, and what lies all on
 * one side is made odd.
 *
 * @param[in]  x, y  n points, in the order of x.
 * @param[out] room_x, room_y  2 n + 1 places each, which must outlive the curve.
 * @param[out] bad   index of the first point that does not rise above the one before; may be NULL.
 * @retval GW_OK, GW_E_RANGE: fewer than two points besides (0, 0), or points that do not rise strictly (one
 * line says which).
 */
gw_status gw_curve_make(const double *x, const double *y, int n, double *room_x, double *room_y,
                        gw_curve *out, int *bad, gw_error *err);

GW_API_END

#endif
