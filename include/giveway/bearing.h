/* SPDX-License-Identifier: MIT */
/**
 * Spherical plain bearings: contact stiffness, what they carry, how far they tilt. SI units.
 * Method page: materials/METHOD-bearing.md.
 */
#ifndef GIVEWAY_BEARING_H
#define GIVEWAY_BEARING_H

#include "giveway/api.h"
#include "giveway/bush.h"
#include "giveway/status.h"
#include "giveway/verdict.h"

GW_API_BEGIN

/**
 * Contact of a ball in a cup or on a plane (Hertz).
 *
 * Source: W. D. Pilkey, Formulas for Stress, Strain and Structural Matrices (contact of two bodies, sphere in
 * a spherical socket); R. J. Roark and W. C. Young, Formulas for Stress and Strain.
 */
typedef struct gw_bearing_contact {
    double radius;   /**< of the contact circle       [m]   */
    double pressure; /**< greatest                    [Pa]  */
    double approach; /**< of the two bodies           [m]   */
    double secant;   /**< load over approach          [N/m] */
    double tangent;  /**< slope, 1.5 times the secant [N/m] */
} gw_bearing_contact;

/**
 * @param load      [N], > 0
 * @param diameter  D1 D2/(D2 - D1) for a ball D1 in a cup D2, D1 on a plane, D1 D2/(D1 + D2) on a ball [m], >
 * 0
 * @param give      sum of (1 - nu^2)/E over both bodies [1/Pa], > 0
 *
 * Valid where the contact circle is small: radius below about 0.3 of the ball's.
 */
gw_bearing_contact gw_hertz_contact(double load, double diameter, double give);

/** The stiffness of a bearing and how it came about. */
typedef struct gw_bearing_stiffness {
    double load;          /**< radial load that the figures belong to [N]                           */
    double radial, axial; /**< rates [N/m]                                                          */
    double tangent;       /**< steel: radial tangent at the load [N/m]; liner: as radial            */
    double contact_ratio; /**< radius of the contact circle over the ball's                     [-] */
    bool hertz_holds;     /**< contact_ratio <= 0.3; else the figure is an upper guide              */
    bool full_width;      /**< the circle would be wider than the ring and is held to its width     */
} gw_bearing_stiffness;

/** Specific load on dk x C at which the rates are stated [Pa]. A working load, common practice. */
#define GW_BEARING_WORKING_PRESSURE 15e6

/** Thickness of a bonded PTFE-fabric liner [m]. Common practice (0.3 to 0.6 mm). */
#define GW_LINER_THICKNESS 0.5e-3

/** Width over which lost motion sets in, over the play each side: for gw_bush_law.blend. */
#define GW_PLAY_BLEND 0.05

/**
 * Stiffness of a bearing from its contact, at `load` (0: the working pressure times dk x C).
 *
 * Steel on steel: Hertz in a cup wider by the clearance, secant at the load. The circle cannot be wider
 * than the ring: there, and without clearance, it is held to half the width, where the rate is 2 E' times its
 * radius (a flat punch). PTFE: the loaded half of the liner as a thin layer confined between steel faces,
 * free in shear, in series with steel over the full width. Axial from the same spread of pressure: radial x 2
 * s^2/(3 - s^2), s = C/dk.
 *
 * Left out: housing, pin, rings and bracket, which make a fitted bearing softer (give the rates, or the
 * bracket, where they are known); axial clearance.
 *
 * @param[out] out  written only on GW_OK.
 * @retval GW_OK, GW_E_RANGE (also for a liner whose modulus is not told)
 */
gw_status gw_bearing_stiffness_at(const gw_bearing *bearing, double load, gw_bearing_stiffness *out,
                                  gw_error *err);

/** Radial and axial rate at the working load [N/m]: the bearing's own where given, else the contact's. */
gw_status gw_bearing_rates(const gw_bearing *bearing, double *radial, double *axial, gw_error *err);

/** Internal clearance classes of steel on steel bearings. */
typedef enum gw_clearance_class { GW_CLEARANCE_C2, GW_CLEARANCE_NORMAL, GW_CLEARANCE_C3 } gw_clearance_class;

/**
 * Radial internal clearance of a class by bore [m], up to 140 mm.
 * Source: ISO 12240-1, radial internal clearance of radial bearings; below 12 mm from memory.
 *
 * @retval GW_OK or GW_E_RANGE
 */
gw_status gw_bearing_clearance(double bore, gw_clearance_class which, double *min, double *max,
                               gw_error *err);

/** A size of dimension series E. Source: ISO 12240-1, from memory. */
typedef struct gw_bearing_size {
    double bore, outside, inner_width, outer_width, ball; /**< d, D, B, C, dk [m] */
    double tilt;                                          /**< [rad]              */
} gw_bearing_size;

/** The size of series E with this bore, or NULL where there is none. */
const gw_bearing_size *gw_bearing_series_e(double bore);

/** Tilt at which the inner ring's faces leave the outer ring: asin(B/dk) - asin(C/dk) [rad]. */
double gw_bearing_tilt_limit(double ball, double inner_width, double outer_width);

/** Load per dk x C [Pa]. */
double gw_bearing_specific_load(const gw_bearing *bearing, double load);

/**
 * Static rating [N]: the given one, else load factor x dk x C, 500 MPa for steel and for PTFE fabric.
 * Source of the factors: ISO 12240 practice, from memory. `*given` says which it is; may be NULL.
 */
double gw_bearing_static_rating(const gw_bearing *bearing, bool *given);

/** What a bearing has to bear. */
typedef struct gw_bearing_duty {
    double peak_load;    /**< greatest force in the bearing over the loads of a case [N], >= 0 */
    double shock_factor; /**< on the peak load, >= 1; 2 is common practice for road shocks     */
    double tilt;         /**< greatest tilt [rad], >= 0                                        */
    double tilt_limit;   /**< [rad]; 0: none known, not checked                                */
} gw_bearing_duty;

enum { GW_BEARING_CHECKS = 3 };

/**
 * Will it hold: peak load with shock against the static rating, specific load (without shock) against what
 * the sliding pair bears, tilt against its limit.
 *
 * @param[out] checks  GW_BEARING_CHECKS of them; written only on GW_OK.
 * @param[out] count   2 where there is no tilt limit, else 3.
 * @retval GW_OK, GW_E_RANGE
 */
gw_status gw_bearing_check(const gw_bearing *bearing, const gw_bearing_duty *duty, gw_verdict *checks,
                           int *count, gw_error *err);

GW_API_END

#endif
