/* SPDX-License-Identifier: MIT */
/*
 * How people feel vibration: the weightings of ISO 2631-1:1997, Annex A, as the transfer functions
 * that define them (parameters as in ISO 8041), and its comfort reactions (Annex C, from memory).
 */
#include "giveway/ride.h"
#include "ride/lanes.h"

#include <complex.h>
#include <math.h>

/* The standard prints Q1 = 0.71; its own table follows from 1/sqrt 2. */
static const double BUTTERWORTH_Q = 0.70710678118654752440;

/* 1 / (1 + x/Q + x^2), x = s/w for a low pass, w/s for a high pass. */
static double complex second_order(double complex x, double q)
{
    return 1.0 / (1.0 + x / q + x * x);
}

/* Band limit 0.4 to 100 Hz, common to all whole-body weightings. */
static double complex band_limit(double hz)
{
    double complex above = gw_complex(0.0, -0.4 / hz), below = gw_complex(0.0, hz / 100.0);
    return second_order(above, BUTTERWORTH_Q) * second_order(below, BUTTERWORTH_Q);
}

/* Transition from acceleration to velocity at f3 = f4 = `turn` with quality q4. */
static double complex transition(double hz, double turn, double q4)
{
    double complex x = gw_complex(0.0, hz / turn);
    return (1.0 + x) * second_order(x, q4);
}

double gw_weight_wk(double hz)
{
    const double f5 = 2.37, q5 = 0.91, f6 = 3.35, q6 = 0.91; /* upward step */
    double complex a = gw_complex(0.0, hz / f5), b = gw_complex(0.0, hz / f6);
    double complex step = (1.0 + a / q5 + a * a) * second_order(b, q6) * (f5 / f6) * (f5 / f6);
    return cabs(band_limit(hz) * transition(hz, 12.5, 0.63) * step);
}

double gw_weight_wd(double hz)
{
    return cabs(band_limit(hz) * transition(hz, 2.0, 0.63));
}

static const gw_reaction REACTIONS[GW_REACTIONS] = {
    { "not uncomfortable", 0.0, 0.315 },  { "a little uncomfortable", 0.315, 0.63 },
    { "fairly uncomfortable", 0.5, 1.0 }, { "uncomfortable", 0.8, 1.6 },
    { "very uncomfortable", 1.25, 2.5 },  { "extremely uncomfortable", 2.0, -1.0 },
};

const gw_reaction *gw_reaction_get(int index)
{
    return &REACTIONS[index];
}

int gw_reactions_at(double acceleration, int out[GW_REACTIONS])
{
    int n = 0;
    for (int i = 0; i < GW_REACTIONS; i++) {
        const gw_reaction *r = &REACTIONS[i];
        bool below = r->high < 0.0 || acceleration <= r->high;
        if (acceleration >= r->low && below) out[n++] = i;
    }
    return n;
}
