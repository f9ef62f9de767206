/* SPDX-License-Identifier: MIT */
/**
 * The smallest movement that meets linear targets, one after the other, within limits.
 *
 * Minimise |b_k - a_k x| for the rows k in order, each without giving up what the ones before it reached; of
 * all x that do so take the least sum of cost_i x_i^2. Limits: lo <= x <= hi, and for each disc the pair
 * (x_i, x_i+1) at most `radius` from its centre.
 *
 * Method: hierarchical least squares with an active set (A. Escande, N. Mansard, P.-B. Wieber, "Hierarchical
 * quadratic programming", International Journal of Robotics Research 33, 2014, 1006-1028); discs by cutting
 * planes (J. E. Kelley, "The cutting-plane method for solving convex programs", 1960). Both from memory.
 */
#ifndef STUDY_LEAST_H
#define STUDY_LEAST_H

#include "giveway/status.h"

#include <stdbool.h>

enum { GW_LEAST_ROWS = 3 };

/** A disc: the pair that begins at `at`. */
typedef struct gw_disc {
    int at;
    double radius;
    double centre[2];
} gw_disc;

typedef struct gw_least_problem {
    int n, n_rows, n_discs;
    const double *row[GW_LEAST_ROWS]; /**< n each                                          */
    double want[GW_LEAST_ROWS];       /**< b                                               */
    const double *lo, *hi, *cost;     /**< n each; those of a disc at least as wide as it  */
    const gw_disc *disc;
    double nothing; /**< a row shorter than this, where it can still move, is none       */
    double exact;   /**< a miss smaller than this is none                                */
} gw_least_problem;

/** Scratch for problems of up to `n` movements and `n_discs` discs; NULL when memory is out. */
typedef struct gw_least gw_least;
gw_least *gw_least_open(int n, int n_discs);
void gw_least_close(gw_least *least);

/**
 * @param[in,out] x      within the limits; the solution.
 * @param[out]    holds  n flags: a limit of this movement keeps a row from being met.
 */
void gw_least_solve(gw_least *least, const gw_least_problem *problem, double *x, bool *holds);

#endif
