/* SPDX-License-Identifier: MIT */
/**
 * Cholesky factorisation, banded or dense, eight columns at a time: the rest of the matrix is dragged through
 * memory once for all eight.
 */
#ifndef BUSH_PANELS_H
#define BUSH_PANELS_H

#include "giveway/status.h"

#include <stddef.h>

/** Columns taken together. */
enum { GW_PANEL = 8 };

/** Lower triangle by columns: entry (row, column), column <= row, at data[column * step + row - column]. */
typedef struct gw_lower {
    double *data;
    size_t step; /**< dense, of height h: h + 1                                                    */
    int n;       /**< rows and columns                                                             */
    int reach;   /**< farthest row below the diagonal that is not zero; dense: n - 1. In a band,
                      GW_PANEL - 1 entries more can be addressed, and are zero                     */
} gw_lower;

/**
 * Factorises the first `columns` columns in place; what stands below and right of them becomes their Schur
 * complement. In a band, columns = n.
 *
 * @retval GW_OK, or GW_E_NUMERIC where one of these columns has no positive pivot
 */
gw_status gw_panels_factor(const gw_lower *m, int columns, gw_error *err);

#endif
