/* SPDX-License-Identifier: MIT */
/**
 * How sure every answer is: the same case again and again, each time a whole car with other figures, and what
 * to measure next. SI units (rad, m, dB). Results are owned by the study; they point into the case.
 */
#ifndef GIVEWAY_SPREAD_H
#define GIVEWAY_SPREAD_H

#include "giveway/api.h"
#include "giveway/study.h"
#include "giveway/uncertain.h"

GW_API_BEGIN

/**
 * A standard normal number for draw `draw` (from 0) and figure `figure` (from 0): the inverse of the normal
 * distribution at ((h >> 11) + 1/2) / 2^53, h the mixing function of G. L. Steele, D. Lea and C. H. Flood,
 * Fast Splittable Pseudorandom Number Generators (OOPSLA 2014), applied three times: to the seed, then to
 * that plus (draw + 1) times 0x9E3779B97F4A7C15, then to that plus (figure + 1) times the same. Every number
 * stands alone, so that no order of work changes it.
 */
double gw_normal_draw(unsigned long seed, long draw, int figure);

/** What is known of one quantity over the draws. */
typedef struct gw_spread_band {
    double nominal;           /**< the case as written                                         */
    double mean, sd;          /**< sd with n - 1                                               */
    double low, median, high; /**< 2.5th, 50th and 97.5th percentile, linear at (n - 1) p      */
} gw_spread_band;

/** @param values  n of them, n >= 1; sorted in place. `nominal` is left alone. One value: sd 0. */
void gw_spread_band_of(double *values, long n, gw_spread_band *out);

/** What one uncertain figure adds to a variance. */
typedef struct gw_spread_share {
    int figure;
    double share; /**< > 0 */
} gw_spread_share;

/** Which figures move a quantity: slopes by z at the nominal case, and how far they alone explain the draws.
 */
typedef struct gw_slopes {
    double *g;               /**< one a figure                                                              */
    double *share;           /**< g^2 / sum of g^2; 0 where nothing moves it                                */
    bool moved;              /**< something moves it                                                        */
    int n_ranked;            /**< figures that move it                                                      */
    gw_spread_share *ranked; /**< those, the greatest share first                                    */
    double linear_r2;        /**< squared correlation of the draws with nominal + sum g z; NAN: none        */
} gw_slopes;

/** The quantities of one result. */
enum { GW_SPREAD_TOE, GW_SPREAD_CAMBER, GW_SPREAD_FORE_AFT, GW_SPREAD_QUANTITIES };
enum { GW_SPREAD_HARSHNESS, GW_SPREAD_NOISE, GW_SPREAD_RIDE_QUANTITIES };

typedef struct gw_spread_part {
    long draws;
    gw_spread_band band[GW_SPREAD_QUANTITIES];
    gw_slopes slopes[GW_SPREAD_QUANTITIES];
} gw_spread_part;

/** One kit, corner and load; or, with `load` -1, what ride says of kit and corner. */
typedef struct gw_spread_item {
    int kit, load;
    gw_axle axle;
    bool manoeuvre;
    gw_side side;        /**< of a manoeuvre                                                    */
    bool sided;          /**< a direct load of which both wheels are told                       */
    gw_wheel_side wheel; /**< which of them                                                     */
    long failed;         /**< draws in which it could not be had                                */
    const char *why;    /**< the case as written does not carry it, and nothing else is told; NULL: it does */
    gw_spread_part own; /**< ride: [HARSHNESS], [NOISE] in dB against the first kit             */
    bool has_difference; /**< from the first kit: every other kit has one                        */
    gw_spread_part difference;
    double better; /**< share of draws with the smaller toe change in size; equal: half    */
} gw_spread_item;

/** All toe changes of a kit together. */
typedef struct gw_spread_summary {
    int kit;
    long draws;                  /**< in which everything stood that the case as written carries        */
    gw_spread_band unsteadiness; /**< root mean square of its toe changes [rad]                         */
    double steadier;             /**< share of draws in which it is below the first kit's; NAN: the first */
    double steadiest;            /**< share of draws in which no kit's is below it                      */
} gw_spread_summary;

typedef struct gw_spread_options {
    long draws; /**< GW_SPREAD_FEWEST to GW_SPREAD_MOST; 0: GW_SPREAD_USUAL        */
    unsigned long seed;
    bool ride;                /**< harshness and road noise too                                  */
    const double *centre;     /**< z of the nominal car, one a figure; NULL: 0                   */
    const double *lower;      /**< L of the covariance L L^T of z, row by row, below the diagonal; NULL: 1 */
    const double *covariance; /**< L L^T; with `lower`                                           */
    void (*progress)(void *context, double part); /**< may be NULL; never twice at once               */
    void *context;
} gw_spread_options;

enum { GW_SPREAD_FEWEST = 100, GW_SPREAD_MOST = 1000000, GW_SPREAD_USUAL = 1024 };

/** An uncertain figure, in its own unit: in the middle, and two standard deviations to either side, readings
 * taken into account. */
typedef struct gw_spread_figure {
    const char *of;
    double value, low, high;
} gw_spread_figure;

typedef struct gw_spread_study {
    gw_arena arena;
    gw_spread_options options; /**< as used                                                           */
    int n_figures; /**< of c->uncertain, those at its end that only ride knows left out without ride */
    const gw_unsure *figure;
    int n, n_not_carried; /**< results; of these so many that say why they have none               */
    gw_spread_item *item; /**< by kit, corner, load in the order of the case; those wanted       */
    int n_kits;
    gw_spread_summary *summary; /**< every kit                                                        */
    double *share;              /**< one a figure: of all toe changes together                         */
    int n_ranked;
    gw_spread_share *ranked; /**< those above 0, the greatest first                                 */
    gw_spread_figure *drawn; /**< what each figure is drawn from: n_figures of them                 */
    int n_warnings;
    const char **warning;
} gw_spread_study;

/**
 * Draws cars and works all of them out; `wanted` narrows what is kept of it and changes nothing else.
 *
 * @retval GW_OK
 * @retval GW_E_SCHEMA  the case has no corner or no load.
 * @retval GW_E_RANGE, GW_E_MECHANISM, GW_E_NUMERIC  the case as written does not stand, or carries none of
 * its loads. Of some that it does not carry the items say why.
 * @retval GW_E_NOMEM
 */
gw_status gw_study_spread(const gw_case *c, const gw_selection *wanted, const gw_spread_options *options,
                          gw_spread_study *out, gw_error *err);
void gw_spread_study_free(gw_spread_study *study);

GW_API_END

#endif
