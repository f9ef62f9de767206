/* SPDX-License-Identifier: MIT */
/** The whole vehicle: what a manoeuvre puts on each wheel. SI units; left wheel signs. */
#ifndef GIVEWAY_VEHICLE_H
#define GIVEWAY_VEHICLE_H

#include "giveway/api.h"
#include "giveway/corner.h"
#include "giveway/tyre.h"

GW_API_BEGIN

/** What a case that says nothing means. Common practice. */
#define GW_VEHICLE_SPEED   (100.0 / 3.6) /**< [m/s] */
#define GW_BRAKE_IMBALANCE 0.1

typedef struct gw_vehicle {
    double mass;                     /**< [kg]                                            */
    double front_mass_fraction;      /**< 0 to 1                                          */
    double cg_height;                /**< [m]                                             */
    double wheelbase;                /**< [m]                                             */
    double track[GW_AXLES];          /**< [m]                                             */
    double brake_front_fraction;     /**< 0 to 1                                          */
    double roll_stiffness[GW_AXLES]; /**< springs and bar [N m/rad]; 0: not given */
    bool by_rule; /**< load transfer by roll centres, although the whole car could be solved */
    bool has_roll_centre;
    double roll_centre[GW_AXLES];         /**< height [m]                            */
    double cornering_stiffness[GW_AXLES]; /**< one tyre [N/rad]; 0: not given        */
    double camber_stiffness[GW_AXLES];    /**< one tyre [N/rad]                      */
    double pneumatic_trail;               /**< [m]                                   */
    double steering_ratio;                /**< of the steering wheel over the road wheels; 0: not given */
    double yaw_inertia;                   /**< [kg m^2]; 0: not given                */
    double speed;                         /**< at which handling is looked at [m/s], > 0            */
    double brake_imbalance;               /**< left-right difference of brake force over their mean */
    const gw_tyre_table *tyre[GW_AXLES];  /**< measured, in place of the stiffnesses; NULL: none */
} gw_vehicle;

typedef enum gw_driven { GW_DRIVEN_REAR, GW_DRIVEN_FRONT, GW_DRIVEN_ALL } gw_driven;

/** A manoeuvre in steady state, in units of standard gravity. */
typedef struct gw_manoeuvre {
    double brake_g, lateral_g, drive_g; /**< >= 0; brake and drive not both */
    gw_side side;                       /**< the wheel that is looked at    */
    gw_driven driven;
} gw_manoeuvre;

/** What the manoeuvre puts on one wheel, drawn as the left one. */
typedef struct gw_wheel_load {
    double vertical;      /**< patch load [N]                                              */
    double vertical_long; /**< patch load from static and longitudinal transfer alone [N]  */
    gw_vec3 patch_force;  /**< all components [N]                                          */
    gw_vec3 patch_moment; /**< [N m]                                                       */
    gw_vec3 hub_force;    /**< [N]                                                         */
    double roll;          /**< body roll angle [rad], >= 0                                 */
    double roll_travel;   /**< roll part of the travel [m]                                 */
} gw_wheel_load;

/** Share of the drive that goes to an axle: 0, 1, or 0.5 where all wheels drive. */
double gw_vehicle_drive_share(gw_driven driven, gw_axle axle);

/** Static load of one wheel [N]. */
double gw_vehicle_static_load(const gw_vehicle *vehicle, gw_axle axle);

/**
 * Quasi-static load transfer of a rigid body on springs.
 *
 * @retval GW_OK
 * @retval GW_E_NUMERIC  a wheel of the car would lift; the message names the first and its g.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (SAE, 1992); Milliken & Milliken, Race Car
 *         Vehicle Dynamics (SAE, 1995).
 */
gw_status gw_vehicle_wheel_load(const gw_vehicle *vehicle, const gw_manoeuvre *manoeuvre, gw_axle axle,
                                gw_wheel_load *out, gw_error *err);

GW_API_END

#endif
