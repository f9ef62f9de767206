/* SPDX-License-Identifier: MIT */
#include "giveway/pressfit.h"

#include "giveway/units.h"

#include <math.h>
#include <stddef.h>

const gw_ring_material GW_RING_STEEL = { 207e9, 0.3 };
const gw_ring_material GW_RING_ALUMINIUM = { 70e9, 0.33 };

/** ISO 286-2: H7 and the limits of p6, r6 and s6 by diameter over and up to [mm]; deviations [um]. */
static const struct {
    double over, upto;
    double hole;        /**< H7, from 0 */
    double shaft[3][2]; /**< lower, upper */
} ISO_286[] = {
    { 30, 50, 25, { { 26, 42 }, { 34, 50 }, { 43, 59 } } },
    { 50, 65, 30, { { 32, 51 }, { 41, 60 }, { 53, 72 } } },
    { 65, 80, 30, { { 32, 51 }, { 43, 62 }, { 59, 78 } } },
};

const char *gw_fit_name(gw_fit_class fit)
{
    static const char *const names[] = { "H7/p6", "H7/r6", "H7/s6" };

    return names[fit];
}

gw_status gw_iso_fit_of(double diameter, gw_fit_class fit, gw_iso_fit *out, gw_error *err)
{
    const double um = 1e-6;
    double mm = diameter / GW_MM;

    for (size_t i = 0; i < sizeof ISO_286 / sizeof *ISO_286; i++)
        /* 50 mm held in metres must not fall into the next row for a rounding error */
        if (mm > ISO_286[i].over + 1e-9 && mm <= ISO_286[i].upto + 1e-9) {
            const double *shaft = ISO_286[i].shaft[fit];

            *out = (gw_iso_fit){ .hole = { 0.0, ISO_286[i].hole * um },
                                 .shaft = { shaft[0] * um, shaft[1] * um },
                                 .least = (shaft[0] - ISO_286[i].hole) * um,
                                 .most = shaft[1] * um };
            return GW_OK;
        }
    return gw_fail(err, GW_E_RANGE,
                   "a fit of %g mm is outside the table (over 30 up to 80 mm): give the sizes", mm);
}

static gw_status check_ring(const char *what, const gw_ring_material *m, gw_error *err)
{
    if (!(m->young > 0.0) || !isfinite(m->young) || !(m->poisson >= 0.0 && m->poisson <= 0.5))
        return gw_fail(err, GW_E_RANGE, "%s: E %g MPa must be above 0 and nu %g between 0 and 0.5", what,
                       m->young / GW_MPA, m->poisson);
    return GW_OK;
}

static gw_status check_fit(const gw_press_fit *f, gw_error *err)
{
    gw_status st;

    if (!(f->diameter > 0.0) || !isfinite(f->diameter) || !(f->length > 0.0) || !isfinite(f->length))
        return gw_fail(err, GW_E_RANGE, "press fit: diameter %g mm and length %g mm must be above 0",
                       f->diameter / GW_MM, f->length / GW_MM);
    if (!(f->housing_outside > f->diameter) || !isfinite(f->housing_outside))
        return gw_fail(err, GW_E_RANGE, "press fit: the housing's outside %g mm must be above the bore %g mm",
                       f->housing_outside / GW_MM, f->diameter / GW_MM);
    if (!(f->sleeve_inside >= 0.0 && f->sleeve_inside < f->diameter))
        return gw_fail(err, GW_E_RANGE, "press fit: the sleeve's bore %g mm must lie between 0 and %g mm",
                       f->sleeve_inside / GW_MM, f->diameter / GW_MM);
    if (!(f->interference >= 0.0) || !isfinite(f->interference))
        return gw_fail(err, GW_E_RANGE, "press fit: an interference of %g mm is a clearance: nothing is held",
                       f->interference / GW_MM);
    if (!(f->friction >= 0.0) || !isfinite(f->friction))
        return gw_fail(err, GW_E_RANGE, "press fit: friction %g must not be negative", f->friction);
    if ((st = check_ring("housing", &f->housing, err)) != GW_OK) return st;
    return check_ring("sleeve", &f->sleeve, err);
}

gw_status gw_press_fit_solve(const gw_press_fit *fit, gw_press_result *out, gw_error *err)
{
    gw_status st = check_fit(fit, err);
    double r = 0.5 * fit->diameter, ro = 0.5 * fit->housing_outside, ri = 0.5 * fit->sleeve_inside;
    double outer, inner, give, area;

    if (st != GW_OK) return st;
    outer = (ro * ro + r * r) / (ro * ro - r * r); /* hoop over pressure at the bore of the housing */
    inner = (r * r + ri * ri) / (r * r - ri * ri); /* the same at the outside of the sleeve */
    give = (outer + fit->housing.poisson) / fit->housing.young +
           (inner - fit->sleeve.poisson) / fit->sleeve.young;
    area = GW_PI * fit->diameter * fit->length;
    out->pressure = 0.5 * fit->interference / (r * give);
    out->housing_hoop = out->pressure * outer;
    out->sleeve_hoop = -out->pressure * (ri > 0.0 ? 2.0 * r * r / (r * r - ri * ri) : 1.0);
    out->force = fit->friction * out->pressure * area;
    out->torque = out->force * r;
    out->sleeve_shrink = fit->diameter * out->pressure * (inner - fit->sleeve.poisson) / fit->sleeve.young;
    return GW_OK;
}

gw_status gw_offset_wall_of(double outside, double bore, double offset, gw_offset_wall *out, gw_error *err)
{
    double wall = 0.5 * (outside - bore);

    if (!(bore > 0.0 && outside > bore) || !isfinite(outside))
        return gw_fail(err, GW_E_RANGE, "bore %g mm must lie between 0 and the outside %g mm", bore / GW_MM,
                       outside / GW_MM);
    if (!(offset >= 0.0) || !isfinite(offset))
        return gw_fail(err, GW_E_RANGE, "offset_mm %g must not be negative: turn the clock angle instead",
                       offset / GW_MM);
    *out = (gw_offset_wall){ wall - offset, wall };
    return GW_OK;
}

int gw_press_check(const gw_press_result *worst, const gw_press_result *held, const gw_press_limits *limits,
                   gw_verdict checks[GW_PRESS_CHECKS])
{
    checks[0] = gw_verdict_of(GW_JUDGED_HOUSING_HOOP, worst->housing_hoop, GW_AT_MOST, limits->housing_yield,
                              "yield stress of the housing");
    checks[1] = gw_verdict_of(GW_JUDGED_SLEEVE_HOOP, fabs(worst->sleeve_hoop), GW_AT_MOST,
                              limits->sleeve_yield, "yield stress of the sleeve");
    if (limits->push_out == 0.0) return 2;
    checks[2] = gw_verdict_of(GW_JUDGED_AXIAL_HOLD, held->force, GW_AT_LEAST, limits->push_out,
                              "greatest axial force in the bush");
    return 3;
}

gw_verdict gw_offset_check(const gw_offset_wall *wall)
{
    return gw_verdict_of(GW_JUDGED_THINNEST_WALL, wall->thinnest, GW_AT_LEAST, GW_LEAST_WALL,
                         "2 mm (common practice)");
}
