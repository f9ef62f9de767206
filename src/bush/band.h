/* SPDX-License-Identifier: MIT */
/**
 * A symmetric positive definite banded system whose answer is wanted only as energies: rates are
 * quadratic forms, so no displacement is ever substituted back.
 *
 * The unknowns of the plane of symmetry come last (the tail). They are left free in the
 * factorisation and held afterwards, load by load: symmetric and antisymmetric loads share one
 * factorisation.
 */
#ifndef BUSH_BAND_H
#define BUSH_BAND_H

#include "giveway/status.h"

#include <gsl/gsl_matrix.h>
#include <stdbool.h>

enum { GW_BAND_LOADS = 3 };

/** What an element's degree of freedom is in the system: an equation (>= 0), or given. */
enum { GW_DOF_GIVEN = -1 };

typedef struct gw_band {
    gsl_matrix *lower;           /**< row i: column i of the lower triangle, from the diagonal */
    int n, width, tail, loads;   /**< unknowns, half bandwidth, unknowns in the tail, loads     */
    double *load;                /**< loads x n: K_free,given u_given                            */
    double given[GW_BAND_LOADS]; /**< u_given K_given,given u_given                              */
} gw_band;

/** Memory for an empty system; `band` is zeroed first, so gw_band_free is always safe after. */
gw_status gw_band_alloc(gw_band *band, int n, int width, int tail, int loads, gw_error *err);

void gw_band_free(gw_band *band);

/**
 * Adds an element matrix `k` (dofs x dofs, row length `stride`). eq[i] is the equation of dof i, or
 * GW_DOF_GIVEN with value given[load * dofs + i].
 */
void gw_band_assemble(gw_band *band, const double *k, int stride, int dofs, const int *eq,
                      const double *given);

/** Factorises, and carries the loads through the forward substitution. */
gw_status gw_band_factor(gw_band *band, gw_error *err);

/**
 * The energy form u K u of one load at rest, with those tail unknowns zero whose `held` is true
 * (held[tail]; NULL: none).
 */
gw_status gw_band_energy(const gw_band *band, int load, const bool *held, double *energy, gw_error *err);

#endif
