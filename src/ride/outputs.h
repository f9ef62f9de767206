/* SPDX-License-Identifier: MIT */
/** The parts of a ride result beside the figures. */
#ifndef RIDE_OUTPUTS_H
#define RIDE_OUTPUTS_H

#include "ride/figures.h"

/** curve.c: transfer functions for charts. */
gw_status gw_ride_curves(gw_ride_sweep *sweep, gw_ride_curve *out, gw_arena *arena, gw_error *err);

/** obstacle.c: force on the body after the half-sine bump of the settings. */
gw_status gw_ride_obstacle(gw_ride_model *model, gw_obstacle *out, gw_arena *arena, gw_error *err);

/** isolation.c: every bush on the chassis that has a bracket, against it. */
gw_status gw_ride_isolation(const gw_ride_model *model, gw_isolation **out, int *n, gw_arena *arena,
                            gw_error *err);

#endif
