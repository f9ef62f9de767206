/* SPDX-License-Identifier: MIT */
/* What the ride model needs of a case, asked for by its name there. */
#include "ride/model.h"

#include "giveway/units.h"

#include <math.h>

static gw_status missing(const gw_corner *corner, const char *key, gw_error *err)
{
    return gw_fail(err, GW_E_RANGE, "corners.%s.%s: ride needs it, above zero",
                   corner->name ? corner->name : "?", key);
}

static bool positive(double value)
{
    return isfinite(value) && value > 0.0;
}

static gw_status check_corner(const gw_corner *corner, gw_error *err)
{
    const gw_wheel *wheel = &corner->wheel;
    if (!positive(wheel->static_load)) return missing(corner, "wheel.static_load_N", err);
    if (!positive(wheel->loaded_radius)) return missing(corner, "wheel.loaded_radius_mm", err);
    if (!positive(wheel->mass)) return missing(corner, "wheel.mass_kg", err);
    if (!positive(wheel->tilt_inertia)) return missing(corner, "wheel.tilt_inertia_kgm2", err);
    if (!positive(wheel->pitch_inertia)) return missing(corner, "wheel.pitch_inertia_kgm2", err);
    if (!positive(wheel->tyre_vertical)) return missing(corner, "wheel.tyre_vertical_N_per_mm", err);
    if (!positive(corner->spring.rate)) return missing(corner, "spring.rate_N_per_mm", err);
    if (!positive(gw_norm(gw_sub(corner->spring.to, corner->spring.at))))
        return missing(corner, "spring: length from at to to", err);
    if (corner->damper.present && !positive(gw_norm(gw_sub(corner->damper.to, corner->damper.at))))
        return missing(corner, "damper: length from at to to", err);
    return GW_OK;
}

static gw_status check_settings(const gw_ride *s, gw_error *err)
{
    if (!positive(s->roughness))
        return gw_fail(err, GW_E_RANGE, "ride.roughness_m3 (or road_class): expected a number above zero");
    if (!positive(s->speed)) return gw_fail(err, GW_E_RANGE, "ride.speed_km_h: expected a number above zero");
    if (!(s->contact_length >= 0.0) || !isfinite(s->contact_length))
        return gw_fail(err, GW_E_RANGE, "ride.contact_length_mm: expected zero or more");
    if (!s->brackets_rigid && !positive(s->default_bracket))
        return gw_fail(err, GW_E_RANGE,
                       "ride.default_bracket_N_per_mm: expected a number above zero, or null");
    if (!(s->bracket_loss >= 0.0) || !isfinite(s->bracket_loss))
        return gw_fail(err, GW_E_RANGE, "ride.bracket_loss_factor: expected zero or more");
    return GW_OK;
}

/* What hangs on the spring: the static load less what the tyre carries by itself. */
static gw_status chassis_mass(const gw_corner *corner, double *out, gw_error *err)
{
    double wheels = gw_is_pair(corner) ? GW_WHEELS : 1;
    double mass = wheels * (corner->wheel.static_load / GW_G0 - corner->wheel.mass);
    for (int b = GW_UPRIGHT + 1; b < corner->n_bodies; b++) mass -= corner->bodies[b].mass;
    if (!(mass > 0.0))
        return gw_fail(err, GW_E_RANGE,
                       "corners.%s: wheel and members weigh more than wheel.static_load_N carries",
                       corner->name ? corner->name : "?");
    *out = mass;
    return GW_OK;
}

gw_status gw_ride_check(const gw_corner *corner, const gw_ride *settings, double *mass, gw_error *err)
{
    gw_status st = check_corner(corner, err);
    if (st == GW_OK) st = check_settings(settings, err);
    return st == GW_OK ? chassis_mass(corner, mass, err) : st;
}

double gw_ride_bracket(const gw_ride *settings, const gw_joint *joint)
{
    if (joint->body_a != GW_CHASSIS && joint->body_b != GW_CHASSIS) return 0.0;
    if (joint->bracket > 0.0) return joint->bracket;
    return settings->brackets_rigid ? 0.0 : settings->default_bracket;
}
