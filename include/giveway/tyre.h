/* SPDX-License-Identifier: MIT */
/**
 * Lateral force of one tyre: linear coefficients, or a table of what was measured. SI units.
 *
 * Signs as seen from the corner: slip is positive where it gives a force into the turn; `lean` is the
 * inclination to the road, positive with the top into the turn, which adds force. On the outer wheel lean is
 * minus camber to the road, on the inner wheel plus. Method page: materials/METHOD-tyre-table.md.
 */
#ifndef GIVEWAY_TYRE_H
#define GIVEWAY_TYRE_H

#include "giveway/api.h"
#include "giveway/status.h"

#include <stdbool.h>

GW_API_BEGIN

/** Measured lateral force over a full grid; owned by whoever holds the case. Every axis rises strictly. */
typedef struct gw_tyre_table {
    int n_slip, n_load, n_lean; /**< slip and load at least 4 each (bicubic), lean at least 1 */
    const double *slip;         /**< [rad]; from zero or below                            */
    const double *load;         /**< vertical [N], > 0                                       */
    const double *lean;         /**< [rad]                                                   */
    const double *force;        /**< [(lean * n_load + load) * n_slip + slip], [N]           */
} gw_tyre_table;

/** What a tyre is made of: coefficients at `rated_load`, or a table in their place. */
typedef struct gw_tyre_data {
    double cornering;           /**< [N/rad], > 0; not used with a table                     */
    double camber;              /**< [N/rad], >= 0; not used with a table                    */
    double rated_load;          /**< load at which the coefficients hold [N], > 0            */
    const gw_tyre_table *table; /**< NULL: the coefficients                                  */
} gw_tyre_data;

/** Force and its slopes at one slip, load and lean. */
typedef struct gw_tyre_force {
    double force;     /**< into the turn [N]       */
    double cornering; /**< d force / d slip [N/rad] */
    double camber;    /**< d force / d lean [N/rad] */
} gw_tyre_force;

typedef struct gw_tyre gw_tyre;

/**
 * Prepare a tyre.
 *
 * @param[in]  data  its table, if any, must outlive the tyre.
 * @param[out] out   owned by the caller, freed with gw_tyre_close; NULL on failure.
 * @retval GW_OK, GW_E_RANGE (what is wrong with the data), GW_E_NOMEM
 */
gw_status gw_tyre_open(const gw_tyre_data *data, gw_tyre **out, gw_error *err);
void gw_tyre_close(gw_tyre *tyre); /**< NULL is allowed */

/**
 * Lateral force.
 *
 * Coefficients: (C slip + Cg lean) x load/rated load, so that two tyres of an axle share the force in
 * proportion to their load, as the load transfer assumes. Table: bicubic in slip and load, linear in lean;
 * load and lean outside the table are taken at its edge. Slip must lie within gw_tyre_reach; on a side that
 * the table does not reach, F(-slip, lean) = 2 F0 - F(slip, -lean), F0 the force of an upright wheel at zero
 * slip.
 *
 * @param[in]  load  [N], >= 0
 * @param[out] out   written only on GW_OK.
 * @retval GW_OK
 * @retval GW_E_RANGE    not a finite number, or a negative load.
 * @retval GW_E_NUMERIC  more slip than the table holds.
 */
gw_status gw_tyre_lateral(const gw_tyre *tyre, double slip, double load, double lean, gw_tyre_force *out,
                          gw_error *err);

/**
 * The same with slopes taken over a stretch of slip, so that scatter of a measured table does not make them.
 *
 * @param[in] width  half the stretch [rad], > 0; cut off at gw_tyre_reach.
 */
gw_status gw_tyre_chord(const gw_tyre *tyre, double slip, double load, double lean, double width,
                        gw_tyre_force *out, gw_error *err);

/** Half a degree [rad]: as long as the steps of most measured tables. Common practice. */
#define GW_TYRE_STRETCH 0.00872664625997

/** The largest slip angle either way [rad]; infinite with coefficients. */
double gw_tyre_reach(const gw_tyre *tyre);

/** Its table; NULL with coefficients. */
const gw_tyre_table *gw_tyre_measured(const gw_tyre *tyre);

/** True where load and lean lie within the table, whatever the slip. Coefficients: always. */
bool gw_tyre_within(const gw_tyre *tyre, double load, double lean);

/** True with a table, false with coefficients. */
bool gw_tyre_is_curved(const gw_tyre *tyre);

GW_API_END

#endif
