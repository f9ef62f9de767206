/* SPDX-License-Identifier: MIT */
/* The bushes of a first case: rubber as fitted, and what the kits offer in its place. */
#include "giveway/units.h"
#include "start/case.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const double BEAM_TWIST = 0.016; /* torsional rate of a twist beam per mass of the car [N m/deg/kg] */

/* A compliance bush ends in a stop; polyurethane in place of so much rubber turns on a thick tube, or it
 * would give more than the rubber on its stop: common practice. */
/* clang-format off */
static const struct {
    double inner, outer, length; /* of the rubber [mm]                             */
    double gap, rate;            /* of its stop [mm, N/mm]; 0: it has none         */
    double tube;                 /* what polyurethane in its place turns on [mm]   */
    double ball, width, rating;  /* of the bearing in its place [mm, kN]; 0: none  */
} SIZE[GW_START_RUBBERS] = {
    [GW_START_ARM_RUBBER] =      { 20, 46, 68, 0,   0,     20, 25, 20, 60 },
    [GW_START_TENSION_RUBBER] =  { 24, 76, 40, 2.5, 18000, 44, 25, 20, 60 },
    [GW_START_UPPER_RUBBER] =    { 18, 38, 45, 0,   0,     18, 22, 18, 45 },
    [GW_START_LINK_RUBBER] =     { 16, 36, 36, 0,   0,     16, 22, 18, 45 },
    [GW_START_TRAIL_RUBBER] =    { 24, 56, 60, 0,   0,     24, 35, 28, 110 },
    [GW_START_SUBFRAME_RUBBER] = { 36, 62, 64, 0,   0,     0,  0,  0,  0 },
    [GW_START_RACK_RUBBER] =     { 14, 30, 40, 0,   0,     0,  0,  0,  0 },
    [GW_START_BAR_RUBBER] =      { 20, 44, 40, 0,   0,     0,  0,  0,  0 },
};
/* clang-format on */

/* Of flanged polyurethane in the places of shared parts, where a sleeve alone would slide: common practice.
 */
static const struct {
    gw_start_bush_id of;
    double rate[4]; /* radial, axial [N/mm], conical, torsional [N m/deg] */
} FLANGED[] = {
    { GW_START_SUBFRAME_RUBBER, { 12000, 6500, 35, 4 } },
    { GW_START_RACK_RUBBER, { 9000, 2500, 12, 1 } },
    { GW_START_BAR_RUBBER, { 7000, 1200, 5, 0.2 } },
};

/* `inner`: of what turns in it [mm]. */
static void size_of(gw_json *json, int b, double inner)
{
    gw_json_number(json, "inner_diameter_mm", inner);
    gw_json_number(json, "outer_diameter_mm", SIZE[b].outer);
    gw_json_number(json, "length_mm", SIZE[b].length);
}

/* Gent's relation (1958) as section 1 of how sure a figure is has it, E in proportion to this. */
static double gent(double h)
{
    return (56 + 7.62336 * h) / (100 - h);
}

/* Outside the table: moduli by Gent's relation, the rest as in the compound that was there. */
static void made_material(gw_json *json, const gw_material *m, double assumed, double h)
{
    double f = gent(h) / gent(assumed);
    gw_json_object(json, "material");
    gw_json_number(json, "shear_modulus_MPa", m->shear_modulus.v / 1e6 * f);
    gw_json_number(json, "bulk_modulus_MPa", m->bulk_modulus.v / 1e6 * f);
    gw_json_number(json, "young_modulus_MPa", m->young_modulus.v / 1e6 * f);
    gw_json_number(json, "hardness_irhd", h);
    gw_json_number(json, "zener_gain", m->zener_gain.v);
    gw_json_number(json, "zener_tau_s", m->zener_tau.v);
    gw_json_number(json, "zener_alpha", m->zener_alpha.v);
    gw_json_number(json, "payne_gain", m->payne_gain.v);
    gw_json_number(json, "payne_strain", m->payne_strain.v);
    gw_json_number(json, "payne_exponent", m->payne_exponent.v);
    gw_json_number(json, "shear_strain_limit", m->shear_strain_limit.v);
    gw_json_number(json, "compressive_strain_limit", m->compressive_strain_limit.v);
    gw_json_close(json);
}

static void material(gw_json *json, const gw_start_car *car, const gw_material_set *set, int b)
{
    char name[16];
    double h = car->hardness[b].v;
    snprintf(name, sizeof name, "nr-%g", GW_START_BUSH[b].hardness);
    const gw_material *m = gw_materials_find(set, name);
    if (!car->hardness[b].read) {
        gw_json_string(json, "material", name);
    } else if (h >= 30 && h <= 75) {
        GW_JSON_LINE(json, "material", { "family", "natural_rubber", 0 }, { "hardness_points", NULL, h });
    } else if (m) {
        made_material(json, m, GW_START_BUSH[b].hardness, h);
    }
}

static void rates(gw_json *json, const char *name, const double rate[4], double loss, double ratio)
{
    gw_json_object(json, name);
    gw_json_string(json, "type", "rates");
    gw_json_number(json, "radial_N_per_mm", rate[0]);
    gw_json_number(json, "axial_N_per_mm", rate[1]);
    gw_json_number(json, "conical_Nm_per_deg", rate[2]);
    gw_json_number(json, "torsional_Nm_per_deg", rate[3]);
    gw_json_number(json, "loss_factor", loss);
    gw_json_number(json, "dynamic_ratio", ratio);
    gw_json_close(json);
}

void gw_start_on_offer(int b, const char *kit, char *name, size_t size)
{
    const char *stem = GW_START_BUSH[b].name;
    bool shared = b >= GW_START_SUBFRAME_RUBBER; /* no bearing goes there */
    snprintf(name, size, "%.*s_%s", (int)(strrchr(stem, '_') - stem), stem, shared ? "poly" : kit);
}

static void poly(gw_json *json, int b)
{
    char name[40];
    gw_start_on_offer(b, "poly", name, sizeof name);
    for (int i = 0; i < GW_START_COUNT(FLANGED); i++)
        if ((int)FLANGED[i].of == b) {
            rates(json, name, FLANGED[i].rate, 0.1, 1.5);
            return;
        }
    gw_json_object(json, name);
    gw_json_string(json, "type", "unbonded");
    gw_json_string(json, "material", "pu-85a");
    size_of(json, b, SIZE[b].tube);
    gw_json_number(json, "friction_coefficient", 0.15);
    gw_json_close(json);
}

static void bearing(gw_json *json, int b)
{
    char name[40];
    gw_start_on_offer(b, "bearing", name, sizeof name);
    gw_json_object(json, name);
    gw_json_string(json, "type", "bearing");
    gw_json_number(json, "ball_diameter_mm", SIZE[b].ball);
    gw_json_number(json, "width_mm", SIZE[b].width);
    gw_json_string(json, "liner", "ptfe");
    gw_json_number(json, "static_rating_kN", SIZE[b].rating);
    gw_json_number(json, "clearance_mm", 0);
    gw_json_number(json, "breakaway_Nm", 1);
    gw_json_close(json);
}

/* A bush with room to give along the car ends in a stop, so that a full stop does not tear it: common
 * practice. */
static void stop(gw_json *json, int b)
{
    if (SIZE[b].gap != 0)
        GW_JSON_LINE(json, "stop", { "gap_mm", NULL, SIZE[b].gap }, { "rate_N_per_mm", NULL, SIZE[b].rate });
}

static void rubber_and_others(gw_json *json, const gw_start_car *car, const gw_material_set *set, int b)
{
    gw_json_object(json, GW_START_BUSH[b].name);
    gw_json_string(json, "type", "bonded");
    material(json, car, set, b);
    size_of(json, b, SIZE[b].inner);
    stop(json, b);
    gw_json_close(json);
    poly(json, b);
    if (SIZE[b].ball > 0) bearing(json, b);
}

/* Valve and column with the steering wheel held, half of them at each end of the rack: common practice. */
static const double RACK_HELD[] = { 40000, 1500, 0, 100 };

/* A round bar of steel between its bushes: G GW_PI d^4 / (32 L), as strength of materials has it. */
static void bar(gw_json *json, const gw_start_corner *c, int a)
{
    const double d = c->bar / 1000;
    double length = 2 * c->place[gw_start_point_named(&c->parts, "bar_bush")][1].v / 1000;
    double twist = GW_START_STEEL_SHEAR * GW_PI * pow(d, 4) / (32 * length) * GW_PI / 180;
    const double rate[] = { 30000, 30000, 900, gw_start_rounded(twist, 0.1) };
    rates(json, GW_START_BUSH[a == GW_FRONT ? GW_START_FRONT_BAR : GW_START_REAR_BAR].name, rate, 0.01, 1);
}

/* Welds, and the twist of a beam: stiff but in torsion, which grows with the car. */
static void shared_bushes(gw_json *json, const gw_start_car *car)
{
    if (gw_start_uses(car, GW_START_WELD))
        GW_JSON_LINE(json, GW_START_BUSH[GW_START_WELD].name, { "type", "rigid", 0 });
    if (gw_start_uses(car, GW_START_BEAM)) {
        const double rate[] = { 60000, 60000, 2500, gw_start_rounded(BEAM_TWIST * car->mass.v, 0.5) };
        rates(json, GW_START_BUSH[GW_START_BEAM].name, rate, 0.01, 1);
    }
    if (gw_start_uses(car, GW_START_RACK_GUIDE))
        rates(json, GW_START_BUSH[GW_START_RACK_GUIDE].name, RACK_HELD, 0.05, 1);
    for (int a = 0; a < GW_AXLES; a++)
        if (car->corner[a].bar > 0) bar(json, &car->corner[a], a);
}

void gw_start_bushes(gw_json *json, const gw_start_car *car, const gw_material_set *set)
{
    gw_json_object(json, "bushes");
    for (int b = 0; b < GW_START_RUBBERS; b++)
        if (gw_start_uses(car, b)) rubber_and_others(json, car, set, b);
    if (gw_start_uses(car, GW_START_STRUT_MOUNT)) {
        const double rate[] = { 900, 0, 0.5, 0.05 };
        rates(json, GW_START_BUSH[GW_START_STRUT_MOUNT].name, rate, 0.1, 1.4);
    }
    if (gw_start_uses(car, GW_START_BALL))
        GW_JSON_LINE(json, GW_START_BUSH[GW_START_BALL].name, { "type", "ball_joint", 0 });
    shared_bushes(json, car);
    gw_json_close(json);
}
