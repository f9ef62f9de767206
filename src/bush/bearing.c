/* SPDX-License-Identifier: MIT */
/* Contact stiffness of spherical plain bearings. */
#include "giveway/bearing.h"

#include "giveway/units.h"

#include <math.h>
#include <stddef.h>

/** Carbon steel: J. E. Shigley, Mechanical Engineering Design (207 GPa); Poisson's ratio as usual. */
static const double STEEL_E = 207e9, STEEL_NU = 0.3;

/** Hertz takes both bodies for half spaces; beyond this the cup wraps round the ball. */
static const double HERTZ_LIMIT = 0.3;

gw_bearing_contact gw_hertz_contact(double load, double diameter, double give)
{
    double radius = cbrt(3.0 / 8.0 * load * diameter * give);
    gw_bearing_contact c = { .radius = radius };

    c.pressure = 1.5 * load / (GW_PI * radius * radius);
    c.approach = 2.0 * radius * radius / diameter;
    c.secant = load / c.approach;
    c.tangent = 1.5 * c.secant;
    return c;
}

static gw_status check_size(const gw_bearing *b, double load, gw_error *err)
{
    if (!(b->ball_diameter > 0.0) || !isfinite(b->ball_diameter))
        return gw_fail(err, GW_E_RANGE, "ball_diameter_mm %g must be above 0", b->ball_diameter / GW_MM);
    if (!(b->width > 0.0 && b->width < b->ball_diameter))
        return gw_fail(err, GW_E_RANGE, "width_mm %g must lie between 0 and the ball's diameter %g",
                       b->width / GW_MM, b->ball_diameter / GW_MM);
    if (!(b->clearance >= 0.0 && b->clearance < 0.1 * b->ball_diameter))
        return gw_fail(err, GW_E_RANGE,
                       "clearance_mm %g must lie between 0 and a tenth of the ball's diameter",
                       b->clearance / GW_MM);
    if (!(load >= 0.0) || !isfinite(load))
        return gw_fail(err, GW_E_RANGE, "a bearing load of %g N must not be negative", load);
    return GW_OK;
}

static double steel_give(void)
{
    return 2.0 * (1.0 - STEEL_NU * STEEL_NU) / STEEL_E;
}

static void steel_pair(const gw_bearing *b, gw_bearing_stiffness *s)
{
    double widest = 0.5 * b->width, give = steel_give();
    gw_bearing_contact c = { .radius = HUGE_VAL };

    if (b->clearance > 0.0) {
        double cup = b->ball_diameter + b->clearance;

        c = gw_hertz_contact(s->load, b->ball_diameter * cup / b->clearance, give);
    }
    s->full_width = c.radius >= widest;
    s->contact_ratio = fmin(c.radius, widest) / (0.5 * b->ball_diameter);
    s->tangent = s->full_width ? 2.0 * widest / give : c.tangent;
    s->radial = s->full_width ? s->tangent : c.secant;
}

/*
 * A layer of thickness t pushed by u along x is squeezed by u n_x and presses back with M u n_x/t, M the
 * modulus without side strain. Over the loaded half of the zone |z| < C/2 the integral of n_x^2 is pi R^2 (s
 * - s^3/3), s = C/dk.
 */
static void lined_pair(const gw_bearing *b, gw_bearing_stiffness *s)
{
    double e = b->liner_young, nu = b->liner_poisson, radius = 0.5 * b->ball_diameter,
           share = b->width / b->ball_diameter;
    double modulus, layer, steel;

    modulus = e * (1.0 - nu) / ((1.0 + nu) * (1.0 - 2.0 * nu));
    layer = modulus / GW_LINER_THICKNESS * GW_PI * radius * radius * (share - share * share * share / 3.0);
    steel = b->width / steel_give();
    s->radial = s->tangent = 1.0 / (1.0 / layer + 1.0 / steel);
    s->contact_ratio = share;
    s->full_width = true;
}

static gw_status check_liner(const gw_bearing *b, gw_error *err)
{
    if (b->liner != GW_LINER_PTFE) return GW_OK;
    if (!(b->liner_young > 0.0) || !isfinite(b->liner_young))
        return gw_fail(err, GW_E_RANGE, "the liner's Young's modulus %g MPa must be above 0",
                       b->liner_young / GW_MPA);
    if (!(b->liner_poisson >= 0.0 && b->liner_poisson < 0.5))
        return gw_fail(err, GW_E_RANGE, "the liner's Poisson's ratio %g must lie between 0 and 0.5",
                       b->liner_poisson);
    return GW_OK;
}

gw_status gw_bearing_stiffness_at(const gw_bearing *bearing, double load, gw_bearing_stiffness *out,
                                  gw_error *err)
{
    gw_bearing_stiffness s = { .load = load };
    gw_status st = check_size(bearing, load, err);
    double share;

    if (st == GW_OK) st = check_liner(bearing, err);
    if (st != GW_OK) return st;
    if (load == 0.0) s.load = GW_BEARING_WORKING_PRESSURE * bearing->ball_diameter * bearing->width;
    if (bearing->liner == GW_LINER_PTFE)
        lined_pair(bearing, &s);
    else
        steel_pair(bearing, &s);
    s.hertz_holds = s.contact_ratio <= HERTZ_LIMIT;
    share = bearing->width / bearing->ball_diameter;
    s.axial = s.radial * 2.0 * share * share / (3.0 - share * share);
    *out = s;
    return GW_OK;
}

gw_status gw_bearing_rates(const gw_bearing *bearing, double *radial, double *axial, gw_error *err)
{
    gw_bearing_stiffness s = { .radial = bearing->radial, .axial = bearing->axial };

    bool given = bearing->radial > 0.0 && (bearing->axial > 0.0 || bearing->floats);
    if (!given) {
        gw_status st = gw_bearing_stiffness_at(bearing, 0.0, &s, err);

        if (st != GW_OK) return st;
    }
    *radial = bearing->radial > 0.0 ? bearing->radial : s.radial;
    *axial = bearing->axial > 0.0 ? bearing->axial : s.axial;
    if (bearing->floats) *axial = 0.0;
    return GW_OK;
}
