/* SPDX-License-Identifier: MIT */
#include "giveway/vehicle_anti.h"

/* Load transfer per unit of the whole longitudinal force is height over wheelbase. */
static double transfer(const gw_vehicle *v)
{
    return v->cg_height / v->wheelbase;
}

double gw_vehicle_anti_brake(const gw_vehicle *vehicle, gw_axle axle, double patch_forward)
{
    double front = vehicle->brake_front_fraction;
    if (axle == GW_FRONT) return front * patch_forward / transfer(vehicle);
    return -(1.0 - front) * patch_forward / transfer(vehicle);
}

double gw_vehicle_anti_drive(const gw_vehicle *vehicle, gw_axle axle, double drive_forward, double share)
{
    return share * (axle == GW_FRONT ? drive_forward : -drive_forward) / transfer(vehicle);
}
