/* SPDX-License-Identifier: MIT */
/** How stiff each bush is: solved, beside the handbook, within what band, and at a frequency. SI units. */
#ifndef GIVEWAY_RATES_H
#define GIVEWAY_RATES_H

#include "giveway/api.h"
#include "giveway/bearing.h"
#include "giveway/bush_report.h"
#include "giveway/dynamic_band.h"

GW_API_BEGIN

/** What is wanted besides the static rates. */
typedef struct gw_rates_plan {
    gw_method method;
    bool explain;     /**< every figure's formula, inputs and source */
    double hz;        /**< [Hz]; 0: no complex stiffness             */
    double amplitude; /**< of the complex stiffness [m], >= 0        */
} gw_rates_plan;

/** The complex stiffness at one frequency and amplitude. */
typedef struct gw_rates_dynamic {
    double hz;        /**< [Hz]; 0: not wanted                     */
    double amplitude; /**< [m]                                     */
    gw_dynamic_band band;
    double complex_ratio[2];              /**< real and imaginary part over the static rate */
    double loss_angle;                    /**< [rad]                                   */
    gw_given_rates rates;                 /**< size of the complex stiffness           */
    double ratio_range[2], loss_range[2]; /**< low and high of the band                */
} gw_rates_dynamic;

/** One bush worked out. `bush` is borrowed. */
typedef struct gw_rates_row {
    const gw_bush *bush;
    gw_bush_report report;
    gw_given_rates own;             /**< by the plan's method                                          */
    gw_given_rates lowest, highest; /**< at the low and high end of the band                           */
    bool has_band;                  /**< the tolerance of the material leaves one                      */
    bool has_beside;                /**< the other method stands beside: `beside` are the closed forms */
    gw_given_rates beside;
    gw_given_rates difference; /**< closed form over solution less 1 [-]; NAN where nothing resists */
    gw_rates_dynamic dynamic;
    bool has_contact; /**< a bearing whose rates are those of ball and liner, or of ball and cup */
    gw_bearing_stiffness contact; /**< without load */
} gw_rates_row;

/**
 * Works a bush out.
 *
 * @param[out] row  written only when GW_OK is returned.
 * @retval GW_OK, GW_E_RANGE, GW_E_NUMERIC, GW_E_NOMEM (as gw_bush_report_make)
 */
gw_status gw_study_rates(const gw_bush *bush, const gw_rates_plan *plan, gw_rates_row *row, gw_error *err);

/** What the compound is; NULL for bushes that are not of rubber. */
const gw_material *gw_rates_material(const gw_bush *bush);

GW_API_END

#endif
