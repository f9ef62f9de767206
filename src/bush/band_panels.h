/* SPDX-License-Identifier: MIT */
/**
 * Cholesky factorisation of wide bands. GSL's works column by column, which is right for the narrow bands of
 * an r-z section; for those in space (hundreds wide) each column would drag the whole window of the band
 * through memory. Eight columns at a time do it once.
 */
#ifndef BUSH_BAND_PANELS_H
#define BUSH_BAND_PANELS_H

#include <gsl/gsl_matrix.h>
#include <stdbool.h>

/** Columns taken together, and the half bandwidth from which that pays. */
enum { GW_PANEL = 8, GW_PANEL_FROM = 120 };

/**
 * Factorises in place, in GSL's storage: row i holds column i of the lower triangle from the diagonal. The
 * rows are GW_PANEL - 1 longer than width + 1, and zero there.
 *
 * @return false where the matrix is not positive definite
 */
bool gw_band_panels(gsl_matrix *lower, int width);

#endif
