/* SPDX-License-Identifier: MIT */
/*
 * Force on the body after a half-sine bump: the transfer functions of the road, times the bump's
 * transform, back to time. The transform is taken along p = s + i w with s > 0, so that what has not
 * died away at the end of the record comes round weakened a hundredfold (numerical inversion of the
 * Laplace transform by FFT: Wilcox, Int. J. Elec. Engng Educ. 15 (1978) 247-265; from memory).
 */
#include "ride/outputs.h"

#include "giveway/units.h"

#include <gsl/gsl_fft_halfcomplex.h>
#include <math.h>
#include <stdlib.h>

enum { SAMPLES = 2048, STORED = 1024 };
static const double STEP = 1e-3;        /* [s] */
static const double HIGHEST_HZ = 315.0; /* what is above is left out: a rigid-body model cannot say */
static const double WRAP_LOSS = 100.0;  /* what comes round is weakened by this */

/* Transform of h sin(pi v t / L), 0 < t < L/v, averaged over the contact; time 0 is the first touch. */
static double complex bump(const gw_ride *s, double complex p)
{
    double w = GW_PI * s->speed / s->obstacle_length;
    double complex shape = s->obstacle_height * w * (1.0 + cexp(-p * (GW_PI / w))) / (p * p + w * w);
    double complex x = p * (s->contact_length / s->speed);
    return cabs(x) < 1e-6 ? shape : shape * (1.0 - cexp(-x)) / x;
}

/* The net force on the chassis is its mass times its acceleration: forces act on it nowhere else. */
static void fill_spectrum(gw_ride_model *model, gw_lanes *x, double *fore_aft, double *vertical)
{
    const double shift = log(WRAP_LOSS) / (SAMPLES * STEP);
    for (int first = 0; first < HIGHEST_HZ * SAMPLES * STEP; first += GW_LANES) {
        gw_lanes p;
        for (int l = 0; l < GW_LANES; l++)
            gw_lanes_put(&p, l, gw_complex(shift, 2.0 * GW_PI * (first + l) / (SAMPLES * STEP)));
        gw_ride_respond(model, &p, x);
        for (int l = 0; l < GW_LANES; l++) {
            int k = first + l;
            double complex at = gw_lanes_get(&p, l);
            double complex mass = model->chassis_mass * gw_ride_one_wheel(model);
            double complex push = mass * at * at * bump(model->settings, at) / STEP;
            double complex fx = push * gw_lanes_get(&x[model->chassis_x], l);
            double complex fz = push * gw_lanes_get(&x[model->chassis_z], l);
            fore_aft[k] = creal(fx);
            vertical[k] = creal(fz);
            if (k > 0) {
                fore_aft[SAMPLES - k] = cimag(fx);
                vertical[SAMPLES - k] = cimag(fz);
            }
        }
    }
}

static bool to_time(double *data)
{
    const double shift = log(WRAP_LOSS) / SAMPLES;
    if (gsl_fft_halfcomplex_radix2_inverse(data, 1, SAMPLES)) return false;
    for (int i = 0; i < SAMPLES; i++) data[i] *= exp(shift * i);
    return true;
}

/* Largest magnitude, and the time from there until the rest stays below a tenth of it. */
static bool measure(const double *force, double *peak, double *decay)
{
    int at = 0, last = 0;
    for (int i = 0; i < STORED; i++)
        if (fabs(force[i]) > fabs(force[at])) at = i;
    for (int i = 0; i < STORED; i++)
        if (fabs(force[i]) > 0.1 * fabs(force[at])) last = i;
    *peak = fabs(force[at]);
    *decay = (last + 1 - at) * STEP;
    return last < STORED - 1;
}

gw_status gw_ride_obstacle(gw_ride_model *model, gw_obstacle *out, gw_arena *arena, gw_error *err)
{
    const gw_ride *s = model->settings;
    gw_status st = GW_OK;
    gw_obstacle result = { .n = STORED, .dt = STEP };
    if (!(s->obstacle_length > 0.0) || !isfinite(s->obstacle_height))
        return gw_fail(err, GW_E_RANGE, "ride.obstacle: length_mm must be above zero and height_mm a number");
    gw_lanes *x = calloc((size_t)model->n, sizeof *x);
    result.fore_aft = gw_arena_alloc(arena, SAMPLES, sizeof *result.fore_aft);
    result.vertical = gw_arena_alloc(arena, SAMPLES, sizeof *result.vertical);
    if (!x || !result.fore_aft || !result.vertical) {
        st = gw_fail(err, GW_E_NOMEM, "out of memory while working out the obstacle");
        goto done;
    }
    fill_spectrum(model, x, result.fore_aft, result.vertical);
    if (!to_time(result.fore_aft) || !to_time(result.vertical)) {
        st = gw_fail(err, GW_E_NUMERIC, "the response to the obstacle could not be calculated");
        goto done;
    }
    bool x_settles = measure(result.fore_aft, &result.peak_fore_aft, &result.decay_fore_aft);
    bool z_settles = measure(result.vertical, &result.peak_vertical, &result.decay_vertical);
    result.settled = x_settles && z_settles;
    *out = result;
done:
    free(x);
    return st;
}
