/* SPDX-License-Identifier: MIT */
/* One kit against another: decibels, what is sure of them, and what they mean. */
#include "giveway/ride_unknowns.h"

#include <math.h>

double gw_ride_other_path(int index)
{
    static const double PART[GW_OTHER_PATHS] = { 0.5, 0.75, 0.9 };
    return PART[index];
}

double gw_ride_beside(double dB, double other)
{
    return 10.0 * log10(other + (1.0 - other) * pow(10.0, 0.1 * dB));
}

int gw_ride_grade(double dB)
{
    static const double LIMITS[GW_GRADES - 1] = { -3.0, -1.0, 1.0, 3.0, 8.0 };
    int grade = 0;
    while (grade < GW_GRADES - 1 && dB >= LIMITS[grade]) grade++;
    return grade;
}

static double decibels(double value, double baseline)
{
    return 20.0 * log10(value / baseline);
}

/* About nine in ten of normal deviates lie within 1.645 of their mean. */
static void range_of(const double *kit, const double *baseline, double *nominal, double *low, double *high)
{
    double mean = 0.0, square = 0.0;
    *nominal = decibels(kit[0], baseline[0]);
    for (int i = 1; i < GW_RIDE_STATES; i++) mean += decibels(kit[i], baseline[i]) / GW_RIDE_DRAWS;
    for (int i = 1; i < GW_RIDE_STATES; i++) {
        double off = decibels(kit[i], baseline[i]) - mean;
        square += off * off / GW_RIDE_DRAWS;
    }
    *low = fmin(*nominal, mean - 1.645 * sqrt(square));
    *high = fmax(*nominal, mean + 1.645 * sqrt(square));
}

/* The columns of the design are orthogonal: each unknown's slope is its product with the figures over u . u.
 */
static void effects_of(const double *kit, const double *baseline, double effect[GW_UNKNOWN_COUNT])
{
    double square[GW_UNKNOWNS] = { 0 };
    for (int j = 0; j < GW_UNKNOWNS; j++) effect[j] = 0.0;
    for (int i = 0; i < GW_RIDE_DRAWS; i++) {
        double u[GW_UNKNOWNS], dB = decibels(kit[1 + i], baseline[1 + i]);
        gw_draw_levels(i, u);
        for (int j = 0; j < GW_UNKNOWNS; j++) {
            effect[j] += u[j] * dB;
            square[j] += u[j] * u[j];
        }
    }
    for (int j = 0; j < GW_UNKNOWNS; j++) effect[j] /= square[j];
}

void gw_ride_compare(const gw_ride_result *kit, const gw_ride_result *baseline, gw_ride_difference *out)
{
    range_of(kit->harshness, baseline->harshness, &out->harshness, &out->harshness_low, &out->harshness_high);
    range_of(kit->noise, baseline->noise, &out->noise, &out->noise_low, &out->noise_high);
    for (int b = 0; b < GW_BANDS; b++) out->band[b] = decibels(kit->band[b], baseline->band[b]);
    effects_of(kit->harshness, baseline->harshness, out->felt_effect);
    effects_of(kit->noise, baseline->noise, out->heard_effect);
    out->felt_grade[0] = gw_ride_grade(out->harshness_low);
    out->felt_grade[1] = gw_ride_grade(out->harshness_high);
    out->heard_grade[0] = gw_ride_grade(out->noise_low);
    out->heard_grade[1] = gw_ride_grade(out->noise_high);
    for (int i = 0; i < GW_OTHER_PATHS; i++)
        out->beside[i] = gw_ride_beside(out->noise, gw_ride_other_path(i));
}
