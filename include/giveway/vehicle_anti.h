/* SPDX-License-Identifier: MIT */
/** What the suspension's slopes in side view do against dive, squat and lift. SI units; left wheel signs. */
#ifndef GIVEWAY_VEHICLE_ANTI_H
#define GIVEWAY_VEHICLE_ANTI_H

#include "giveway/api.h"
#include "giveway/vehicle.h"

GW_API_BEGIN

/**
 * Share of the load transfer of braking that the links carry past the spring: anti-dive at the front,
 * anti-lift at the rear. 1: the axle's travel does not change. Outboard brakes.
 *
 * The brake force B at the patch does the work -B dx/dz as the wheel rises; so the spring of the front
 * carries m a h/L - B_front dx/dz, that of the rear -m a h/L - B_rear dx/dz.
 *
 * @param[in] patch_forward  dx/dz of the contact patch, taken as a point of the upright
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (SAE, 1992), chapter 7 (from memory).
 */
double gw_vehicle_anti_brake(const gw_vehicle *vehicle, gw_axle axle, double patch_forward);

/**
 * The same for drive, for the share of it that goes to this axle: anti-squat at the rear, anti-lift at the
 * front.
 *
 * @param[in] drive_forward  dx/dz of what drive pushes (gw_travel_rates): of the wheel centre where half-shafts
 *                           come from the body, of the contact where an axle's tube carries the final drive
 * @param[in] share          of the drive, 0 to 1 (gw_vehicle_drive_share)
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (SAE, 1992), chapter 7 (from memory): the solid axle by
 * its contact, the independent suspension by its wheel centre.
 */
double gw_vehicle_anti_drive(const gw_vehicle *vehicle, gw_axle axle, double drive_forward, double share);

GW_API_END

#endif
