/* SPDX-License-Identifier: MIT */
/** Quadratic shape functions on [-1, 1], three-point Gauss rule, and graded intervals. */
#ifndef BUSH_QUADRATIC_H
#define BUSH_QUADRATIC_H

/** Abscissae and weights of the three-point Gauss rule, exact to degree five. */
extern const double GW_GAUSS3_X[3], GW_GAUSS3_W[3];

/** Values and slopes at xi of the three Lagrange parabolas on the nodes -1, 0, 1. */
void gw_parabolas(double xi, double value[3], double slope[3]);

/** How an interval is cut: which of its ends the cells shrink towards. */
typedef enum gw_grading { GW_GRADE_START = 1, GW_GRADE_END = 2, GW_GRADE_BOTH = 3 } gw_grading;

/** Number of cells that gw_grade needs for lengths growing by `ratio` from `first` to fill `span`. */
int gw_grade_count(double span, double first, double ratio);

/**
 * Cuts [from, to] into n cells whose lengths are in geometric progression, growing from the graded
 * end (from both ends to the middle for GW_GRADE_BOTH, n even) so that the smallest is `first` times the
 * span. Writes the 2 n + 1 nodes of quadratic cells, ends included; from > to is allowed.
 */
void gw_grade(double from, double to, int n, double first, gw_grading grading, double *node);

#endif
