/* SPDX-License-Identifier: MIT */
/** Eigenvalues and vectors of a symmetric matrix, by GSL, with the memory for it. */
#ifndef GIVEWAY_CORNER_EIGEN_H
#define GIVEWAY_CORNER_EIGEN_H

#include <gsl/gsl_eigen.h>
#include <stdbool.h>

typedef struct gw_eigen {
    gsl_matrix *a;       /**< n x n, filled by the caller                      */
    gsl_matrix *vectors; /**< a column each                                    */
    gsl_vector *values;  /**< from the lowest up                               */
    gsl_eigen_symmv_workspace *work;
} gw_eigen;

/** False when memory is out. Close it whatever is returned. */
bool gw_eigen_open(gw_eigen *e, size_t n);
void gw_eigen_close(gw_eigen *e);

/** Of `a`, which is lost; false where GSL finds none. */
bool gw_eigen_solve(gw_eigen *e);

#endif
