/* SPDX-License-Identifier: MIT */
/**
 * Cholesky factorisation of a band, eight columns at a time: the window of the band is dragged through memory
 * once for all eight. That halves the time of an r-z section, and matters most in space, where bands are
 * hundreds wide.
 */
#ifndef BUSH_BAND_PANELS_H
#define BUSH_BAND_PANELS_H

#include <gsl/gsl_matrix.h>
#include <stdbool.h>

/** Columns taken together. */
enum { GW_PANEL = 8 };

/**
 * Factorises in place, in GSL's storage: row i holds column i of the lower triangle from the diagonal. The
 * rows are GW_PANEL - 1 longer than width + 1, and zero there.
 *
 * @return false where the matrix is not positive definite
 */
bool gw_band_panels(gsl_matrix *lower, int width);

#endif
