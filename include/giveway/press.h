/* SPDX-License-Identifier: MIT */
/**
 * What a press with a dial gauge, or a slow test rig, says of a bush: from readings of deflection and force
 * in the order taken to the curve that a bush of type `measured` has, its loss, and where its zero lies. SI
 * units; rotations in place of deflections and moments in place of forces are treated alike.
 */
#ifndef GIVEWAY_PRESS_H
#define GIVEWAY_PRESS_H

#include "giveway/api.h"
#include "giveway/status.h"

#include <stdbool.h>

GW_API_BEGIN

enum {
    GW_PRESS_POINTS = 21,                   /**< read off the mean curve                */
    GW_PRESS_MOST = 2 * GW_PRESS_POINTS - 1 /**< of one side, made odd                  */
};

/** Readings joined by straight lines, deflections rising strictly. */
typedef struct gw_press_line {
    int n;
    double *x, *f;
} gw_press_line;

typedef struct gw_press {
    int sides;        /**< 1: one side was tested, the other is taken as odd; 2      */
    bool one_way;     /**< one way only: no loop, so no loss                         */
    bool turned;      /**< pulled: both columns were turned over                     */
    bool wrong_way;   /**< the loop runs the wrong way round: no loss                */
    double stroke[2]; /**< minus and plus side [m] or [rad], > 0; of one side alike  */
    int n;            /**< points: 21                                                */
    double x[GW_PRESS_POINTS], f[GW_PRESS_POINTS]; /**< of one side from (0, 0) on          */
    double zero;                        /**< reading at which the force is zero                        */
    double zero_force;                  /**< mean force at reading 0; NaN outside the readings         */
    double loss;                        /**< loss factor; NaN: none                                    */
    double rate_zero;                   /**< [N/m] or [N m/rad]                                        */
    double rate_tenth[2], rate_full[2]; /**< at minus and plus a tenth, and all, of the strokes */
    double nonlinearity;                /**< largest |F - k x| over largest |F|                        */
    double asymmetry;                   /**< NaN of one side                                           */
    gw_press_line up, down, mean;       /**< the loop as read (of one way: mean alone)            */
} gw_press;

/**
 * The law in `n` readings.
 *
 * The loop is the last two ways between extremes of deflection; the mean of both is the law, the area between
 * them the loss, area / (pi x half the range x half the range of force). The zero of force is trusted, that
 * of deflection is not.
 *
 * @param[in]  x, f   deflection [m] and force [N], or angle [rad] and moment [N m]; n of each.
 * @param[in]  turns  words of messages: degrees and N m instead of mm and N.
 * @param[out] out    written only on GW_OK; end with gw_press_free.
 * @retval GW_OK, GW_E_RANGE (one line that says what is wrong with the readings), GW_E_NOMEM
 */
gw_status gw_press_make(const double *x, const double *f, int n, bool turns, gw_press *out, gw_error *err);

void gw_press_free(gw_press *press);

GW_API_END

#endif
