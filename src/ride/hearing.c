/* SPDX-License-Identifier: MIT */
/* The A weighting and the third-octave bands of sound. */
#include "giveway/ride.h"

#include <math.h>

typedef struct a_poles {
    double f1, f2, f3, f4; /* [Hz] */
} a_poles;

/*
 * Pole frequencies as IEC 61672-1:2013, Annex E, defines them (from memory), not their rounded values
 * 20.60, 107.7, 737.9 and 12194 Hz: fr = 1000, fL = 10^1.5, fH = 10^3.9, fA = 10^2.45 Hz, D^2 = 1/2.
 */
static a_poles a_weighting_poles(void)
{
    const double fr2 = 1e6, fl2 = 1e3, fh2 = 63095734.448019325; /* 10^7.8 */
    const double fa = 281.83829312644538;                        /* 10^2.45 */
    double d = sqrt(0.5);
    double b = (fr2 + fl2 * fh2 / fr2 - d * (fl2 + fh2)) / (1.0 - d);
    double c = fl2 * fh2, root = sqrt(b * b - 4.0 * c);
    return (a_poles){ sqrt((-b - root) / 2.0), fa * (3.0 - sqrt(5.0)) / 2.0, fa * (3.0 + sqrt(5.0)) / 2.0,
                      sqrt((-b + root) / 2.0) };
}

static double a_response(const a_poles *p, double hz)
{
    double f2 = hz * hz;
    double ends = (f2 + p->f1 * p->f1) * (f2 + p->f4 * p->f4);
    return f2 * f2 / (ends * sqrt((f2 + p->f2 * p->f2) * (f2 + p->f3 * p->f3)));
}

double gw_weight_a(double hz)
{
    a_poles p = a_weighting_poles();
    return a_response(&p, hz) / a_response(&p, 1000.0);
}

double gw_band_centre(int n)
{
    return pow(10.0, 0.1 * n);
}

double gw_band_low(int n)
{
    return pow(10.0, 0.1 * n - 0.05);
}

double gw_band_high(int n)
{
    return pow(10.0, 0.1 * n + 0.05);
}

double gw_band_nominal(int n)
{
    static const double NAME[10] = { 1.0, 1.25, 1.6, 2.0, 2.5, 3.15, 4.0, 5.0, 6.3, 8.0 };
    int decade = n >= 0 ? n / 10 : -((9 - n) / 10);
    double value = NAME[n - 10 * decade];
    for (int i = 0; i < decade; i++) value *= 10.0;
    for (int i = 0; i > decade; i--) value /= 10.0;
    return value;
}
