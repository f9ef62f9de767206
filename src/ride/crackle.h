/* SPDX-License-Identifier: MIT */
/**
 * What linearising friction leaves: its force jumps from side to side whenever the wheel turns round, and
 * with it all sliders of a corner at once. SI units.
 */
#ifndef RIDE_CRACKLE_H
#define RIDE_CRACKLE_H

#include "ride/slider.h"

typedef struct gw_crackle {
    bool on;
    double rate;         /**< N: reversals a second of wheel centre less chassis [1/s] */
    double acceleration; /**< a: sqrt(pi/2) times its rms [m/s^2]                      */
} gw_crackle;

/** From the rms speed and acceleration of the wheel against the chassis; off where no slider slips. */
gw_crackle gw_crackle_of(const gw_ride_model *model, double speed, double acceleration);

/**
 * How a force of one winds up at x = 2 pi f tau: 2 [(1 + ix) e^(-ix) - 1] / x^2, 1 at x = 0. A slider that
 * winds up first reaches its strength after tau = 2 sqrt(M / (k |turn| a)).
 */
double complex gw_crackle_ramp(double x);

/** Generalised force of all sliders that slip, per unit of the process; y holds n entries. */
void gw_crackle_push(const gw_ride_model *model, const gw_crackle *crackle, const double hz[GW_LANES],
                     gw_lanes *y);

/** The dampers' own part of that, in the sense of their shortening; 0: without a slider, or that sticks. */
void gw_crackle_dampers(const gw_ride_model *model, const gw_crackle *crackle, const double hz[GW_LANES],
                        gw_lanes out[GW_WHEELS]);

#endif
