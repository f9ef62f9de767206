/* SPDX-License-Identifier: MIT */
/** What a dynamic test rig says of a bush: stiffness and loss angle over frequency and amplitude. SI units.
 */
#ifndef GIVEWAY_RIG_H
#define GIVEWAY_RIG_H

#include "giveway/api.h"
#include "giveway/bush_law.h"

GW_API_BEGIN

/** What is fitted, in the order of its results. */
typedef enum gw_rig_figure {
    GW_RIG_RATE,
    GW_RIG_ZENER_GAIN,
    GW_RIG_ZENER_ALPHA,
    GW_RIG_PAYNE_GAIN,
    GW_RIG_PAYNE_AMPLITUDE,
    GW_RIG_PAYNE_EXPONENT,
    GW_RIG_FIGURES
} gw_rig_figure;

enum { GW_RIG_MOST = 20000 }; /**< rows */

/** One row of the test. */
typedef struct gw_rig_row {
    double hz;        /**< [Hz], > 0                                   */
    double amplitude; /**< half the travel from peak to peak [m], > 0  */
    double stiffness; /**< size of the complex stiffness [N/m], > 0    */
    double loss;      /**< loss angle [rad], above 0 and below pi/2    */
} gw_rig_row;

typedef struct gw_rig {
    gw_rig_law law; /**< with payne_gain 0 where amplitudes are too few       */
    int n_fitted;
    bool fitted[GW_RIG_FIGURES];
    double within[GW_RIG_FIGURES];   /**< two standard errors; NaN of what is not fitted       */
    int n_frequencies, n_amplitudes; /**< that differ                                          */
    double scatter;                  /**< of one residual [-], [rad]; NaN: as many as figures  */
    int worst;                       /**< row of the largest residual                          */
    double worst_stiffness;          /**< there: read over fitted, less one [-]                */
    double worst_loss;               /**< read less fitted [rad]                               */
} gw_rig;

/** Size [N/m] and loss angle [rad] of a law's complex stiffness. */
void gw_rig_stiffness(const gw_rig_law *law, double hz, double amplitude, double *size, double *angle);

/**
 * The law of least sum of |ln(k* read / k*)|^2 over the rows.
 *
 * k* = rate [1 + d X/(1 + X)] [1 + g/(1 + (x/xc)^2m)], X = (i 2 pi f tau)^alpha: a fractional Zener law times
 * Kraus' form of the Payne effect (see bush/dynamic.h). All figures above 0, alpha <= 1, m <= 2, xc from a
 * tenth of the least to ten times the greatest amplitude. With fewer than three amplitudes g = 0, with three
 * m = 0.55.
 *
 * @param[out] out  written only on GW_OK.
 * @retval GW_OK, GW_E_RANGE (fewer than three frequencies, more than GW_RIG_MOST rows), GW_E_NUMERIC,
 * GW_E_NOMEM
 */
gw_status gw_rig_fit(const gw_rig_row *row, int n, gw_rig *out, gw_error *err);

GW_API_END

#endif
