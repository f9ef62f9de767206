/* SPDX-License-Identifier: MIT */
/* What spherical plain bearings bear: tables and checks. */
#include "giveway/bearing.h"

#include "giveway/units.h"

#include <math.h>
#include <stddef.h>

/** ISO 12240-1, radial internal clearance, steel on steel, by bore over and up to [mm]; limits [um]. */
static const struct {
    double over, upto;
    double limit[4]; /**< C2 from; C2 to = normal from; normal to = C3 from; C3 to */
} CLEARANCE[] = {
    { 0, 12, { 8, 32, 68, 104 } },    { 12, 20, { 10, 40, 82, 124 } },  { 20, 35, { 12, 50, 100, 150 } },
    { 35, 60, { 15, 60, 120, 180 } }, { 60, 90, { 18, 72, 142, 212 } }, { 90, 140, { 18, 85, 165, 245 } },
};

gw_status gw_bearing_clearance(double bore, gw_clearance_class which, double *min, double *max, gw_error *err)
{
    double mm = bore / GW_MM;

    for (size_t i = 0; i < sizeof CLEARANCE / sizeof *CLEARANCE; i++)
        /* a bore of 20 mm held in metres must not fall into the next row for a rounding error */
        if (mm > CLEARANCE[i].over && mm <= CLEARANCE[i].upto + 1e-9) {
            *min = CLEARANCE[i].limit[which] * 1e-3 * GW_MM;
            *max = CLEARANCE[i].limit[which + 1] * 1e-3 * GW_MM;
            return GW_OK;
        }
    return gw_fail(err, GW_E_RANGE, "a bearing bore of %g mm is outside the table (above 0 to 140 mm)", mm);
}

#define SIZE(d, D, B, C, dk, tilt)                                                                           \
    {                                                                                                        \
        (d) * GW_MM, (D)*GW_MM, (B)*GW_MM, (C)*GW_MM, (dk)*GW_MM, (tilt)*GW_DEG                              \
    }
static const gw_bearing_size SERIES_E[] = {
    SIZE(10, 19, 9, 6, 16, 12),    SIZE(12, 22, 10, 7, 18, 10), SIZE(15, 26, 12, 9, 22, 8),
    SIZE(17, 30, 14, 10, 25, 10),  SIZE(20, 35, 16, 12, 29, 9), SIZE(25, 42, 20, 16, 35.5, 7),
    SIZE(30, 47, 22, 18, 40.7, 6), SIZE(35, 55, 25, 20, 47, 6), SIZE(40, 62, 28, 22, 53, 7),
    SIZE(50, 75, 35, 28, 66, 6),   SIZE(60, 90, 44, 36, 80, 6),
};
#undef SIZE

const gw_bearing_size *gw_bearing_series_e(double bore)
{
    for (size_t i = 0; i < sizeof SERIES_E / sizeof *SERIES_E; i++)
        if (fabs(SERIES_E[i].bore - bore) < 1e-6) return &SERIES_E[i];
    return NULL;
}

double gw_bearing_tilt_limit(double ball, double inner_width, double outer_width)
{
    return asin(inner_width / ball) - asin(outer_width / ball);
}

double gw_bearing_specific_load(const gw_bearing *bearing, double load)
{
    return load / (bearing->ball_diameter * bearing->width);
}

double gw_bearing_static_rating(const gw_bearing *bearing, bool *given)
{
    if (given) *given = bearing->static_rating > 0.0;
    if (bearing->static_rating > 0.0) return bearing->static_rating;
    return 500e6 * bearing->ball_diameter * bearing->width;
}

static gw_status check_duty(const gw_bearing *b, const gw_bearing_duty *duty, gw_error *err)
{
    if (!(b->ball_diameter > 0.0 && b->width > 0.0))
        return gw_fail(err, GW_E_RANGE, "ball_diameter_mm %g and width_mm %g must be above 0",
                       b->ball_diameter / GW_MM, b->width / GW_MM);
    if (!(duty->peak_load >= 0.0) || !isfinite(duty->peak_load))
        return gw_fail(err, GW_E_RANGE, "a peak load of %g N must not be negative", duty->peak_load);
    if (!(duty->shock_factor >= 1.0) || !isfinite(duty->shock_factor))
        return gw_fail(err, GW_E_RANGE, "a shock factor of %g must not be below 1", duty->shock_factor);
    if (!(duty->tilt >= 0.0 && duty->tilt_limit >= 0.0))
        return gw_fail(err, GW_E_RANGE, "tilt %g deg and its limit %g deg must not be negative",
                       duty->tilt / GW_DEG, duty->tilt_limit / GW_DEG);
    return GW_OK;
}

gw_status gw_bearing_check(const gw_bearing *bearing, const gw_bearing_duty *duty, gw_verdict *checks,
                           int *count, gw_error *err)
{
    gw_status st = check_duty(bearing, duty, err);
    bool given, ptfe = bearing->liner == GW_LINER_PTFE;
    double rating = gw_bearing_static_rating(bearing, &given);

    if (st != GW_OK) return st;
    checks[0] = gw_verdict_of(GW_JUDGED_PEAK_LOAD, duty->peak_load * duty->shock_factor, GW_AT_MOST, rating,
                              given ? "static rating given in the case"
                                    : "500 MPa on dk x C (ISO 12240 practice, from memory)");
    checks[1] = gw_verdict_of(GW_JUDGED_SPECIFIC_LOAD, gw_bearing_specific_load(bearing, duty->peak_load),
                              GW_AT_MOST, ptfe ? 50e6 : 100e6,
                              ptfe ? "PTFE fabric, alternating up to 5 Hz: 50 MPa (bearing catalogue tables)"
                                   : "steel on steel, dynamic: 100 MPa (ISO 12240 practice, from memory)");
    *count = 2;
    if (duty->tilt_limit > 0.0) {
        checks[2] = gw_verdict_of(GW_JUDGED_TILT, duty->tilt, GW_AT_MOST, duty->tilt_limit,
                                  "tilt limit given in the case, or asin(B/dk) - asin(C/dk)");
        *count = 3;
    }
    return GW_OK;
}
