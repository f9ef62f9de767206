/* SPDX-License-Identifier: MIT */
/** Least squares of residuals that are no straight lines of what is sought: one driver for all fits. */
#ifndef FIT_NONLINEAR_H
#define FIT_NONLINEAR_H

#include "giveway/status.h"

enum { GW_NONLINEAR_MOST = 8192 }; /**< figures sought */

/** Writes every residual for the figures p. */
typedef void (*gw_residuals)(const double *p, double *r, void *context);

/** The problem: `n` residuals of `m` figures, n >= m >= 1. */
typedef struct gw_nonlinear {
    int n, m;
    gw_residuals residuals;
    void *context;
} gw_nonlinear;

/**
 * Levenberg and Marquardt's way, with derivatives by central differences.
 * Source: J. J. More, "The Levenberg-Marquardt algorithm: implementation and theory", Lecture Notes in
 * Mathematics 630 (1978) 105-116, as the library (GSL, gsl_multifit_nlinear) has it.
 *
 * @param[in,out] p    m figures: where to begin, then the least sum.
 * @param[out]    sum  least sum of squares.
 * @retval GW_OK, GW_E_NUMERIC (no least sum found), GW_E_NOMEM
 */
gw_status gw_nonlinear_fit(const gw_nonlinear *problem, double *p, double *sum, gw_error *err);

/**
 * Square roots of the diagonal of inverse(J^T J) at p, J by central differences; times the scatter of one
 * residual that is one standard error each.
 * @retval GW_OK, GW_E_NUMERIC (J^T J cannot be inverted), GW_E_NOMEM
 */
gw_status gw_nonlinear_spread(const gw_nonlinear *problem, const double *p, double *spread, gw_error *err);

/** A root of inverse(J^T J) at p, m x m by rows: root root^T is that inverse. Statuses as above. */
gw_status gw_nonlinear_root(const gw_nonlinear *problem, const double *p, double *root, gw_error *err);

#endif
