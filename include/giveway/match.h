/* SPDX-License-Identifier: MIT */
/**
 * A case corrected by what the ramp says: the most probable figures, what is now surer, and which reading or
 * figure does not go with the rest.
 *
 * Source of the estimate: the mode of the posterior for normal errors (A. Tarantola, Inverse Problem Theory,
 * SIAM 2005, ch. 3), Gauss-Newton covariance; of the drops: deletion of a group of observations from linear
 * least squares (R. D. Cook and S. Weisberg, Residuals and Influence in Regression, Chapman and Hall
 * 1982, 2.2).
 */
#ifndef GIVEWAY_MATCH_H
#define GIVEWAY_MATCH_H

#include "giveway/api.h"
#include "giveway/readings.h"
#include "giveway/study.h"
#include "giveway/uncertain.h"

GW_API_BEGIN

/** One figure before and after. */
typedef struct gw_matched {
    const gw_unsure *figure;
    double z;    /**< most probable                                                            */
    double sd;   /**< sqrt(C_ii)                                                               */
    double drop; /**< z^2 / (1 - C_ii): what chi-square falls by when its band is put aside; NAN: silent */
    double probability; /**< of so large a drop, one degree of freedom; NAN: silent                  */
    bool silent;        /**< narrowed by less than GW_MATCH_SILENT: no reading speaks of it           */
} gw_matched;

/** One value that was read. */
typedef struct gw_match_value {
    int reading, value;   /**< indices into the readings                        */
    double before, after; /**< of the model [SI]                             */
    double residual;      /**< (reading - model) / sigma, after                */
} gw_match_value;

/** A reading held against all the rest. */
typedef struct gw_match_reading {
    double drop, probability; /**< as many degrees of freedom as values */
    int first;                /**< of its values in the study           */
} gw_match_reading;

/** What does not go with the rest, least probable first. */
typedef struct gw_doubt {
    bool is_reading;
    int index; /**< reading, or figure */
    double probability;
} gw_doubt;

#define GW_MATCH_SILENT 0.05
#define GW_MATCH_DOUBT  0.003

typedef struct gw_match_study {
    gw_arena arena;
    int n;      /**< figures: those of the case, then, with load_percent, the load cell's */
    int n_case; /**< of these, figures of the case                                        */
    gw_matched *figure;
    double *z;          /**< as in figure, in a row                                               */
    double *covariance; /**< n by n                                                               */
    int n_values;
    gw_match_value *value;
    int n_readings;
    gw_match_reading *reading;
    double chi_square;  /**< the minimum: squares of residuals and of z                           */
    double probability; /**< upper, n_values degrees of freedom                                   */
    int n_doubts;
    gw_doubt *doubt;
    int evaluations; /**< of the model                                                         */
} gw_match_study;

/**
 * @param[in]  with_ride  count figures that only ride knows of, too (no reading speaks of them).
 * @param[out] out        points into case and readings; freed with gw_match_study_free.
 * @retval GW_OK
 * @retval GW_E_SCHEMA    no figure of the case is uncertain.
 * @retval GW_E_NUMERIC   the case as written cannot be loaded as it was read (names the reading), or no
 * minimum.
 * @retval GW_E_RANGE, GW_E_MECHANISM, GW_E_NOMEM
 */
gw_status gw_study_match(const gw_case *c, const gw_readings *readings, const gw_selection *wanted,
                         bool with_ride, gw_match_study *out, gw_error *err);
/** A reading that was not taken, and what it would tell beside those before it. */
typedef struct gw_next_reading {
    const gw_reading *reading; /**< readings in it are the model's, sigma half the usual band         */
    double bits;               /**< expected gain of information                                      */
    int n_narrows;
    struct gw_next_figure {
        int figure;      /**< of the case: index into its uncertain figures                           */
        double narrowed; /**< 1 - band after / band before                                            */
    } narrows[3];        /**< most first, those of at least GW_MATCH_SILENT                           */
} gw_next_reading;

typedef struct gw_next_study {
    gw_arena arena;
    int n;
    gw_next_reading *next; /**< what tells most first; each counts those before it as read */
} gw_next_study;

/**
 * What to read next to learn most about the car: pushes of 1 kN, bump and the wheel rate, with the bands that
 * a gauge usually has (common practice).
 *
 * Source: the expected gain of information of an experiment whose model is linear and whose errors are
 * normal, half of log2 det(1 + J C J^T) (D. V. Lindley, Annals of Mathematical Statistics 27 (1956) 986),
 * the best first, then the best beside it.
 *
 * @param[in]  known  what readings have told already; NULL: nothing was read.
 * @param[out] out    points into the case; freed with gw_next_study_free. What cannot be had is left out.
 * @retval GW_OK
 * @retval GW_E_SCHEMA  no figure of the case is uncertain.
 * @retval GW_E_NUMERIC, GW_E_RANGE, GW_E_MECHANISM, GW_E_NOMEM
 */
gw_status gw_study_read_next(const gw_case *c, const gw_selection *wanted, const gw_match_study *known,
                             gw_next_study *out, gw_error *err);
void gw_next_study_free(gw_next_study *study);

/** Lower Cholesky factor of a covariance in place, zeros above; false where it is not positive definite. */
bool gw_lower_factor(double *a, int n);

void gw_match_study_free(gw_match_study *study);

GW_API_END

#endif
