/* SPDX-License-Identifier: MIT */
/** What the files of the match share. */
#ifndef STUDY_MATCH_PARTS_H
#define STUDY_MATCH_PARTS_H

#include "giveway/match.h"
#include "study/drawn.h"
#include "study/read_model.h"

#include <stdatomic.h>

/** Slopes are taken in so many pieces at once; each has a drawer, which costs as much as half a draw. */
enum { GW_MATCH_PIECES = 4 };

/** n figures, m values. Matrices row by row. */
typedef struct gw_match_work {
    const gw_draws *draws;
    const gw_readings *readings;
    const gw_unsure *load; /**< the load cell's figure, where n > n_case */
    gw_drawer *drawer;
    gw_drawer *of_piece[GW_MATCH_PIECES]; /**< opened when first needed */
    gw_read_guide *guide;                 /**< the car at z             */
    int n, n_case, m, evaluations;
    bool out_of_memory;      /**< while looking: what was not had is not for want of a car */
    double *reading, *sigma; /**< [m]                               */
    double *z, *next, *at, *g, *step, *old, *new, *scratch; /**< [n]                */
    double *y, *y_next, *r, *r_next, *base, *before;        /**< [m]                               */
    double *j;                                              /**< m by n: dr/dz                     */
    double *a, *curve;                                      /**< n by n                            */
} gw_match_work;

/** The car of z as it is read, with its balances; `skip` as gw_read_car has it. */
gw_status gw_match_model(const gw_match_work *w, gw_drawer *drawer, const double *z, bool skip,
                         gw_read_guide **guide, double *y, gw_error *err);

/** A car that differs from the guide's by one figure, -1: by none; to first order. */
gw_status gw_match_near(const gw_match_work *w, const gw_read_guide *guide, gw_drawer *drawer,
                        const double *z, int figure, const double *same, double *y, gw_error *err);

/** From w->z to the minimum; z, y, r, j and before are left in the work. */
gw_status gw_match_find(gw_match_work *w, double *sum, gw_error *err);

/** 1 + J^T J of the slopes in the work, n by n, into `a`. */
void gw_match_information(const gw_match_work *w, double *a);

/** Lower Cholesky factor in place (the upper triangle is set to 0); false: not positive definite. */
bool gw_cholesky(double *a, int n);
void gw_cholesky_solve(const double *l, int n, double *b);
/** The inverse of the matrix that was factored. */
void gw_cholesky_inverse(const double *l, int n, double *out);

#endif
