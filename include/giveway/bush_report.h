/* SPDX-License-Identifier: MIT */
/**
 * Everything there is to say about the rates of one bush: solved beside handbook, the band that
 * the material's tolerance gives, and where each figure comes from. SI throughout; `quantity` tells the
 * printing layer which unit of the trade a value is shown in.
 */
#ifndef GIVEWAY_BUSH_REPORT_H
#define GIVEWAY_BUSH_REPORT_H

#include "giveway/api.h"
#include "giveway/bush_law.h"

GW_API_BEGIN

/** What a value is, and so in which unit it is shown. */
typedef enum gw_quantity {
    GW_QUANTITY_LENGTH,    /**< [m]       */
    GW_QUANTITY_MODULUS,   /**< [Pa]      */
    GW_QUANTITY_RATE,      /**< [N/m]     */
    GW_QUANTITY_TURN_RATE, /**< [N m/rad] */
    GW_QUANTITY_ANGLE,     /**< [rad]     */
    GW_QUANTITY_RATIO      /**< [-]       */
} gw_quantity;

enum { GW_EXPLAIN_INPUTS = 12, GW_EXPLAIN_LINES = 16 };

/** One input of a figure. */
typedef struct gw_explain_input {
    const char *symbol; /**< as in the formula */
    gw_quantity quantity;
    double value;
} gw_explain_input;

/** One figure: what, by which formula, from what, and whose. Texts are constants, never NULL. */
typedef struct gw_explain_line {
    const char *figure;  /**< e.g. "radial rate, long bush"      */
    const char *formula; /**< e.g. "2 pi G L / ln(b/a)"          */
    const char *source;  /**< publication, or "derived: ..."     */
    gw_quantity quantity;
    double value;
    int n_inputs;
    gw_explain_input inputs[GW_EXPLAIN_INPUTS];
} gw_explain_line;

typedef struct gw_bush_report {
    gw_method method;
    gw_bush_law law;         /**< by `method`                                                       */
    bool has_handbook;       /**< bonded rubber: the closed forms stand beside it                   */
    gw_given_rates handbook; /**< gw_handbook_rates; conical is an order of magnitude               */
    double low, high;        /**< factors on every rate of rubber from the tolerance of G; 1 without */
    const char *band_source; /**< where that tolerance comes from; "" without                       */
    int n_lines;
    gw_explain_line lines[GW_EXPLAIN_LINES];
} gw_bush_report;

/**
 * Works a bush out by `method` and says how. The strings of the report live as long as the bush.
 *
 * @param[out] report  written only when GW_OK is returned.
 * @retval GW_OK, GW_E_RANGE, GW_E_NUMERIC, GW_E_NOMEM (as gw_bush_law_make)
 *
 * Left out    the band of the bulk modulus, which matters for slim bushes only, and of the dimensions.
 */
gw_status gw_bush_report_make(const gw_bush *bush, gw_method method, gw_bush_report *report, gw_error *err);

GW_API_END

#endif
