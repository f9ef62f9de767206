/* SPDX-License-Identifier: MIT */
/**
 * A sleeve pressed into a housing: interference, pressure, hoop stress, force. SI units.
 * Method page: materials/METHOD-pressfit.md.
 */
#ifndef GIVEWAY_PRESSFIT_H
#define GIVEWAY_PRESSFIT_H

#include "giveway/api.h"
#include "giveway/status.h"
#include "giveway/verdict.h"

GW_API_BEGIN

/** Shaft fits in an H7 bore. */
typedef enum gw_fit_class { GW_FIT_P6, GW_FIT_R6, GW_FIT_S6 } gw_fit_class;

/** Deviations from the nominal size [m]. */
typedef struct gw_limits {
    double lower, upper;
} gw_limits;

/** Limits of a hole and of the shaft that goes into it. */
typedef struct gw_iso_fit {
    gw_limits hole, shaft;
    double least, most; /**< interference on the diameter [m]; negative: clearance */
} gw_iso_fit;

/**
 * H7 with p6, r6 or s6, nominal diameter over 30 up to 80 mm [m].
 * Source: ISO 286-2, limit deviations.
 *
 * @retval GW_OK or GW_E_RANGE (out is left alone)
 */
gw_status gw_iso_fit_of(double diameter, gw_fit_class fit, gw_iso_fit *out, gw_error *err);

/** Name as on a drawing, "H7/p6"; never NULL. */
const char *gw_fit_name(gw_fit_class fit);

/** Elastic constants of a ring: E [Pa], > 0; nu 0 to 0.5. */
typedef struct gw_ring_material {
    double young, poisson;
} gw_ring_material;

/** E 207 GPa, nu 0.3 (J. E. Shigley) and E 70 GPa, nu 0.33 (common practice). */
extern const gw_ring_material GW_RING_STEEL, GW_RING_ALUMINIUM;

typedef struct gw_press_fit {
    double diameter;        /**< of the joint                                    [m], > 0      */
    double housing_outside; /**< outer diameter of the housing eye               [m], > joint  */
    double sleeve_inside;   /**< bore of the sleeve; 0: solid                    [m], < joint  */
    double length;          /**< of the joint                                    [m], > 0      */
    double interference;    /**< on the diameter                                 [m], >= 0     */
    double friction;        /**< 0.12 to 0.15 dry steel, 0.08 to 0.10 oily       [-], >= 0     */
    gw_ring_material housing, sleeve;
} gw_press_fit;

typedef struct gw_press_result {
    double pressure;      /**< in the joint                                   [Pa]  */
    double housing_hoop;  /**< at the housing's bore, tension positive        [Pa]  */
    double sleeve_hoop;   /**< at the sleeve's bore (solid: everywhere)       [Pa]  */
    double force;         /**< to press in to full depth, or out              [N]   */
    double torque;        /**< that the joint holds                           [N m] */
    double sleeve_shrink; /**< the joint's diameter shrinks the sleeve by     [m]   */
} gw_press_result;

/**
 * Elastic press fit of two thick rings of equal length (Lame).
 * Source: J. E. Shigley, Mechanical Engineering Design (Budynas and Nisbett), press and shrink fits.
 * Left out: yield, roughness (the fit loses about its smoothing), rubber behind the sleeve, unequal length,
 * an eye that is no ring.
 *
 * @param[out] out  written only on GW_OK.
 * @retval GW_OK, GW_E_RANGE
 */
gw_status gw_press_fit_solve(const gw_press_fit *fit, gw_press_result *out, gw_error *err);

/** Walls of an off-centre bush. */
typedef struct gw_offset_wall {
    double thinnest;   /**< left between bore and housing [m]; negative: it breaks out */
    double concentric; /**< the wall without offset       [m]                          */
} gw_offset_wall;

/**
 * Thinnest wall between a bore of diameter `bore` that lies `offset` off the centre of an outside diameter
 * `outside`: (outside - bore)/2 - offset [m].
 *
 * @retval GW_OK
 * @retval GW_E_RANGE  bore not below outside, or a negative offset.
 */
gw_status gw_offset_wall_of(double outside, double bore, double offset, gw_offset_wall *out, gw_error *err);

/** Stress limits and least wall for gw_press_check. */
typedef struct gw_press_limits {
    double housing_yield, sleeve_yield; /**< [Pa], > 0                                               */
    double push_out;                    /**< axial force that the joint must hold [N], >= 0; 0: none */
} gw_press_limits;

enum { GW_PRESS_CHECKS = 3 };

/**
 * Will it hold: hoop stress of housing and sleeve against the yield stress, axial hold against the push that
 * it has to bear (at `held`, the least interference; stresses at `worst`, the greatest).
 *
 * @return number of checks written, 2 or 3.
 */
int gw_press_check(const gw_press_result *worst, const gw_press_result *held, const gw_press_limits *limits,
                   gw_verdict checks[GW_PRESS_CHECKS]);

/** Least wall of a bush around an off-centre bore [m]: 2 mm. Common practice. */
#define GW_LEAST_WALL 2e-3

/** Thinnest wall against the least one. */
gw_verdict gw_offset_check(const gw_offset_wall *wall);

GW_API_END

#endif
