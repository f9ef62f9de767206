/* SPDX-License-Identifier: MIT */
/**
 * The car on one track: what its balance makes of speed, of a step of steer and of a push to one side.
 * SI units; left is positive, as in ISO 8855.
 *
 * Sources: T. D. Gillespie, Fundamentals of Vehicle Dynamics (SAE, 1992), ch. 6; W. F. Milliken and D. L.
 * Milliken, Race Car Vehicle Dynamics (SAE, 1995), ch. 5.
 * Left out: the tyres' relaxation, the body's roll in time, and what braking takes from the lateral force.
 */
#ifndef GIVEWAY_BICYCLE_H
#define GIVEWAY_BICYCLE_H

#include "giveway/api.h"
#include "giveway/vehicle.h"

GW_API_BEGIN

typedef struct gw_bicycle {
    double mass;                /**< [kg], > 0                                            */
    double yaw_inertia;         /**< [kg m^2], > 0                                        */
    double arm[GW_AXLES];       /**< from the mass centre to the axle [m], > 0            */
    double stiffness[GW_AXLES]; /**< lateral force of the axle per slip, with everything that gives [N/rad] */
} gw_bicycle;

/** Yaw inertia of the vehicle [kg m^2]: the one given, else mass x arm x arm (common practice). */
double gw_vehicle_yaw_inertia(const gw_vehicle *vehicle);

/**
 * From the cornering compliance of both axles [rad/g]: stiffness = static axle load / compliance.
 * @retval GW_OK
 * @retval GW_E_NUMERIC  a compliance that is not positive: the axle steers itself into the turn.
 */
gw_status gw_bicycle_make(const gw_vehicle *vehicle, const double compliance[GW_AXLES], gw_bicycle *out,
                          gw_error *err);

/** What follows from balance alone and, in the second half, at one speed. */
typedef struct gw_bicycle_figures {
    double gradient;             /**< understeer gradient [rad/g]                                 */
    double characteristic_speed; /**< sqrt(L g / K) [m/s]; infinite unless the car understeers    */
    double critical_speed;       /**< sqrt(-L g / K) [m/s]; infinite unless it oversteers         */
    double speed;                /**< of what follows [m/s]                                       */
    bool stable;                 /**< below the critical speed                                    */
    double natural;              /**< of yaw and side slip together [rad/s]; NaN where unstable   */
    double damping;              /**< ratio; NaN where unstable                                   */
    double yaw_gain;      /**< steady yaw rate per steer of the front wheels [1/s]; NaN where unstable   */
    double yaw_time;      /**< from a step of steer to 90 % of the steady yaw rate [s]; NaN where unstable */
    double yaw_overshoot; /**< greatest yaw rate over the steady one, less 1; NaN where unstable  */
    double slip_gain;     /**< steady side slip per steer [-]; NaN where unstable                 */
    double
        slip_time; /**< to 90 % of the steady side slip [s]; NaN where unstable or where it stays near zero */
} gw_bicycle_figures;

/**
 * Closed forms, and the first crossing of 90 % by bisection on the closed-form step response.
 * @param[in] speed  [m/s], > 0
 */
void gw_bicycle_solve(const gw_bicycle *bicycle, double speed, gw_bicycle_figures *out);

/** A lasting push to one side; the steering wheel is held. */
typedef struct gw_disturbance {
    double steer[GW_AXLES]; /**< of each axle, to the left [rad] */
    double yaw_moment;      /**< turning left [N m]              */
} gw_disturbance;

typedef struct gw_drift {
    double yaw_rate; /**< the greatest on the way, with its sign [rad/s] */
    double heading;  /**< at the end [rad]                              */
    double offset;   /**< sideways from the straight line at the end [m] */
    double distance; /**< along it [m]                                  */
    double seconds;  /**< until the end                                 */
} gw_drift;

/**
 * Where a disturbance that sets in at time 0 takes the car: two degrees of freedom at a speed that falls
 * evenly, implicit midpoint steps of 2 ms.
 *
 * @param[in] speed    at the start [m/s], > 1
 * @param[in] braking  deceleration [m/s^2], >= 0
 * @param[in] seconds  longest time, > 0; ends earlier at 1 m/s.
 */
void gw_bicycle_drift(const gw_bicycle *bicycle, const gw_disturbance *disturbance, double speed,
                      double braking, double seconds, gw_drift *out);

GW_API_END

#endif
