/* SPDX-License-Identifier: MIT */
/** What the files of the spread share. */
#ifndef STUDY_SPREAD_PARTS_H
#define STUDY_SPREAD_PARTS_H

#include "giveway/spread.h"
#include "study/cars.h"

/** z of a draw less the centre. */
void gw_spread_deviation(const gw_spread_options *o, int n_figures, long draw, double *out);

/** Shares of the variance that is linear in z. Variance as told by the options. */
void gw_spread_shares(const gw_spread_options *o, int n, const double *g, double *share, bool *moved);

/** Those of n shares that are above 0, the greatest first, into `out` (room for n); how many. */
int gw_spread_rank(const double *share, int n, gw_spread_share *out);

/** Squared correlation of two rows of n; NAN where one does not vary. */
double gw_spread_r2(const double *values, const double *linear, long n);

/** Every car that was worked out. */
typedef struct gw_spread_table {
    gw_car_plan plan;
    int n_figures; /**< that are drawn                                              */
    int n_all;     /**< of the case: those not drawn stay at the centre              */
    long draws;
    double *nominal; /**< [column]                                                    */
    double *slope;   /**< [figure][column] by z                                        */
    double *value;   /**< [draw][column]; NAN: not had                                */
} gw_spread_table;

/** Works all cars out; without draws only what is wanted, and its slopes from one side. Free it whatever is
 * returned. */
gw_status gw_spread_fill(const gw_case *c, const gw_selection *wanted, const gw_spread_options *o,
                         gw_arena *arena, gw_spread_table *out, gw_error *err);
void gw_spread_table_free(gw_spread_table *table);

#endif
