/* SPDX-License-Identifier: MIT */
/*
 * Quasi-static load transfer of a rigid body on springs. Gillespie, Fundamentals of Vehicle Dynamics (SAE,
 * 1992), ch. 1 and 6; Milliken & Milliken, Race Car Vehicle Dynamics (SAE, 1995), ch. 18.
 *
 * Left wheel: as the outer one its lateral force points to -y, as the inner one to +y.
 */
#include "giveway/vehicle.h"

#include "giveway/units.h"

static double axle_load(const gw_vehicle *v, gw_axle axle)
{
    double share = axle == GW_FRONT ? v->front_mass_fraction : 1.0 - v->front_mass_fraction;
    return v->mass * GW_G0 * share;
}

double gw_vehicle_static_load(const gw_vehicle *v, gw_axle axle)
{
    return 0.5 * axle_load(v, axle);
}

/* Height of the mass centre above the roll axis. */
static double roll_arm(const gw_vehicle *v)
{
    double slope = v->roll_centre[GW_REAR] - v->roll_centre[GW_FRONT];
    return v->cg_height - (v->roll_centre[GW_FRONT] + slope * (1.0 - v->front_mass_fraction));
}

static gw_status roll_angle(const gw_vehicle *v, double ay, double *roll, gw_error *err)
{
    double arm = roll_arm(v), stiffness = v->roll_stiffness[GW_FRONT] + v->roll_stiffness[GW_REAR];
    double left = stiffness - v->mass * GW_G0 * arm;
    if (!(left > 0.0))
        return gw_fail(
            err, GW_E_NUMERIC,
            "vehicle.roll_stiffness_Nm_per_deg: %.0f N m/deg cannot hold the body up; its weight alone "
            "takes %.0f N m/deg",
            stiffness / GW_NM_PER_DEG, v->mass * GW_G0 * arm / GW_NM_PER_DEG);
    *roll = v->mass * ay * arm / left;
    return GW_OK;
}

/* Load that goes from the inner wheel of an axle to the outer one. */
static double lateral_transfer(const gw_vehicle *v, gw_axle axle, double ay, double roll)
{
    double axle_mass = axle_load(v, axle) / GW_G0;
    return (v->roll_stiffness[axle] * roll + axle_mass * ay * v->roll_centre[axle]) / v->track[axle];
}

static double long_transfer(const gw_vehicle *v, gw_axle axle, double ax)
{
    return (axle == GW_FRONT ? -1.0 : 1.0) * v->mass * ax * v->cg_height / v->wheelbase;
}

/* Load of either wheel of an axle, with what goes along the car. */
static double load_along(const gw_vehicle *v, const gw_manoeuvre *m, gw_axle axle)
{
    return gw_vehicle_static_load(v, axle) + 0.5 * long_transfer(v, axle, (m->drive_g - m->brake_g) * GW_G0);
}

/* Load of one wheel: that, and what goes from the inner wheel to the outer. */
static double wheel_load(const gw_vehicle *v, const gw_manoeuvre *m, gw_axle axle, gw_side side, double roll)
{
    double across = lateral_transfer(v, axle, m->lateral_g * GW_G0, roll);
    return load_along(v, m, axle) + (side == GW_OUTER ? across : -across);
}

static gw_status report_lift(const gw_manoeuvre *m, gw_axle axle, gw_side side, double part, gw_error *err)
{
    bool both = !(m->lateral_g > 0.0);
    const char *which = both ? "" : side == GW_OUTER ? "outer " : "inner ";
    return gw_fail(err, GW_E_NUMERIC,
                   "the %s%s wheel%s at %.2f of this manoeuvre (%.2f g braking, %.2f g lateral, %.2f g "
                   "driving): lower the g",
                   which, gw_axle_name(axle), both ? "s lift" : " lifts", part, part * m->brake_g,
                   part * m->lateral_g, part * m->drive_g);
}

/*
 * Past the first wheel that lifts the car no longer stands on four springs, and the loads of the other three
 * are wrong as well: so all four are looked at, whichever is wanted. A load falls in proportion to the g.
 */
static gw_status check_lift(const gw_vehicle *v, const gw_manoeuvre *m, double roll, gw_error *err)
{
    double first = 1.0;
    gw_axle axle = GW_FRONT;
    gw_side side = GW_OUTER;
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        for (int i = 0; i < 2; i++) {
            gw_side s = i == 0 ? GW_OUTER : GW_INNER;
            double load = wheel_load(v, m, a, s, roll), at_rest = gw_vehicle_static_load(v, a);
            if (load >= 0.0 || !(at_rest / (at_rest - load) < first)) continue;
            first = at_rest / (at_rest - load);
            axle = a;
            side = s;
        }
    return first < 1.0 ? report_lift(m, axle, side, first, err) : GW_OK;
}

double gw_vehicle_drive_share(gw_driven driven, gw_axle axle)
{
    if (driven == GW_DRIVEN_ALL) return 0.5;
    return (driven == GW_DRIVEN_FRONT) == (axle == GW_FRONT) ? 1.0 : 0.0;
}

gw_status gw_vehicle_wheel_load(const gw_vehicle *v, const gw_manoeuvre *m, gw_axle axle, gw_wheel_load *out,
                                gw_error *err)
{
    double ay = m->lateral_g * GW_G0, roll = 0.0, sign = m->side == GW_OUTER ? 1.0 : -1.0;
    gw_status status = roll_angle(v, ay, &roll, err);
    if (status == GW_OK) status = check_lift(v, m, roll, err);
    if (status != GW_OK) return status;

    double vertical = wheel_load(v, m, axle, m->side, roll);
    double other = wheel_load(v, m, axle, m->side == GW_OUTER ? GW_INNER : GW_OUTER, roll);
    double brake_share = axle == GW_FRONT ? v->brake_front_fraction : 1.0 - v->brake_front_fraction;
    double lateral = axle_load(v, axle) / GW_G0 * ay, pair = vertical + other;
    double fy = pair > 0.0 ? -sign * lateral * vertical / pair : 0.0;
    gw_wheel_load load = { 0 };
    load.vertical = vertical;
    load.vertical_long = load_along(v, m, axle);
    load.patch_force = gw_v3(-0.5 * brake_share * v->mass * m->brake_g * GW_G0, fy, vertical);
    load.patch_moment = gw_v3(0, 0, -v->pneumatic_trail * fy);
    load.hub_force =
        gw_v3(0.5 * gw_vehicle_drive_share(m->driven, axle) * v->mass * m->drive_g * GW_G0, 0, 0);
    load.roll = roll;
    load.roll_travel = sign * 0.5 * v->track[axle] * roll;
    *out = load;
    return GW_OK;
}
