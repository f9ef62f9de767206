/* SPDX-License-Identifier: MIT */
/* The case of a gw_start_car, in the order of the manual. */
#include "format/json.h"
#include "show/start.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const char *const AXLE[] = { "front", "rear" };
static const double GRAVITY = 9.80665;
/* What is assumed may be off by so much, 95 %: points in mm, bushes in percent. Common practice. */
static const double POINT_BAND = 15, BUSH_BAND = 40;
static const double BEAM_TWIST = 0.016; /* torsional rate of a twist beam per mass of the car [N m/deg/kg] */

static const struct {
    double inner, outer, length; /* of the rubber [mm]                  */
    double ball, width, rating;  /* of the bearing in its place [mm, kN] */
} SIZE[GW_START_RUBBERS] = {
    { 20, 46, 54, 25, 20, 60 }, { 20, 62, 54, 25, 20, 60 },  { 18, 36, 36, 22, 18, 45 },
    { 16, 36, 36, 22, 18, 45 }, { 24, 56, 60, 35, 28, 110 },
};

static void axles(gw_json *json, const char *key, double front, double rear)
{
    gw_json_object_on_line(json, key);
    gw_json_number(json, "front", front);
    gw_json_number(json, "rear", rear);
    gw_json_close(json);
}

static double static_load(const gw_start_car *car, int a)
{
    double front = car->front_fraction.v;
    return car->mass.v * GRAVITY * (a == GW_FRONT ? front : 1 - front) / 2;
}

/* Springs and half as much again for the bars. */
static double roll_stiffness(const gw_start_car *car, int a)
{
    const gw_start_corner *c = &car->corner[a];
    double bushes = c->layout->bushes_rate + c->layout->bushes_per_load * static_load(car, a);
    double wheel = bushes + c->layout->motion_ratio2 * c->spring.v;
    double t = c->track.v / 1000;
    return gw_start_rounded(1.5 * t * t / 2 * wheel * 1000 * 3.14159265358979323846 / 180, 1);
}

static void vehicle(gw_json *json, const gw_start_car *car)
{
    double cs[2] = { gw_start_rounded(0.17 * static_load(car, 0), 1),
                     gw_start_rounded(0.17 * static_load(car, 1), 1) };
    gw_json_object(json, "vehicle");
    gw_json_number(json, "mass_kg", car->mass.v);
    gw_json_number(json, "front_mass_fraction", car->front_fraction.v);
    gw_json_number(json, "cg_height_mm", car->cg_height.v);
    gw_json_number(json, "wheelbase_mm", car->wheelbase.v);
    axles(json, "track_mm", car->corner[0].track.v, car->corner[1].track.v);
    gw_json_number(json, "brake_front_fraction", car->brake_fraction.v);
    axles(json, "roll_stiffness_Nm_per_deg", roll_stiffness(car, 0), roll_stiffness(car, 1));
    axles(json, "cornering_stiffness_N_per_deg", cs[0], cs[1]);
    axles(json, "camber_stiffness_N_per_deg", gw_start_rounded(0.05 * cs[0], 1),
          gw_start_rounded(0.05 * cs[1], 1));
    gw_json_number(json, "pneumatic_trail_mm", 28);
    gw_json_close(json);
}

static void wheel(gw_json *json, const gw_start_corner *c)
{
    const double centre[3] = { 0, c->track.v / 2, c->radius.v };
    double r = c->radius.v / 1000;
    gw_json_object(json, "wheel");
    gw_json_numbers(json, "centre_mm", centre, 3);
    gw_json_number(json, "loaded_radius_mm", c->radius.v);
    gw_json_number(json, "rim_diameter_mm", gw_start_rounded(1.45 * c->radius.v, 5));
    gw_json_number(json, "static_camber_deg", c->camber.v);
    gw_json_number(json, "static_toe_deg", c->toe.v);
    gw_json_number(json, "mass_kg", c->wheel_mass.v);
    gw_json_number(json, "tilt_inertia_kgm2", gw_start_rounded(0.17 * c->wheel_mass.v * r * r, 0.01));
    gw_json_number(json, "pitch_inertia_kgm2", gw_start_rounded(0.06 * c->wheel_mass.v * r * r, 0.01));
    gw_json_number(json, "tyre_vertical_N_per_mm", c->tyre.v);
    gw_json_number(json, "tyre_damping_Ns_per_mm", 0.1);
    gw_json_close(json);
}

/* Of the corner, or those of the axle. */
static void points(gw_json *json, const gw_start_corner *c, bool shared)
{
    gw_json_object(json, "points_mm");
    for (int i = 0; i < c->layout->n_points; i++) {
        if ((c->layout->point[i].side != GW_START_OF_CORNER) != shared) continue;
        const double at[3] = { c->place[i][0].v, c->place[i][1].v, c->place[i][2].v };
        gw_json_numbers(json, c->layout->point[i].name, at, 3);
    }
    gw_json_close(json);
}

static void members(gw_json *json, const gw_start_layout *l, bool shared)
{
    gw_json_object(json, "members");
    for (int i = 0; i < l->n_members; i++) {
        if (l->member[i].shared != shared) continue;
        gw_json_object_on_line(json, l->member[i].name);
        gw_json_number(json, "mass_kg", l->member[i].mass);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void joint(gw_json *json, const gw_start_joint *j, int axle)
{
    char label[GW_NAME_MAX];
    gw_json_object(json, NULL);
    gw_json_string(json, "name", j->name);
    snprintf(label, sizeof label, "%s %s", AXLE[axle], j->label);
    gw_json_string(json, "label", label);
    gw_json_array(json, "between");
    gw_json_string(json, NULL, j->body_a);
    gw_json_string(json, NULL, j->body_b);
    gw_json_close(json);
    gw_json_string(json, "at", j->name);
    gw_json_numbers(json, "axis", j->axis, 3);
    gw_json_string(json, "bush", gw_start_bush_name((int)j->bush));
    if ((int)j->bush < GW_START_RUBBERS) gw_json_string(json, "housing", j->body_b);
    if (j->of != GW_START_OF_CORNER && j->of != GW_START_MIDDLE) gw_json_bool(json, "mirrored", false);
    gw_json_close(json);
}

static void joints(gw_json *json, const gw_start_layout *l, int axle, bool shared)
{
    gw_json_array(json, "joints");
    for (int i = 0; i < l->n_joints; i++)
        if ((l->joint[i].of != GW_START_OF_CORNER) == shared) joint(json, &l->joint[i], axle);
    gw_json_close(json);
}

static void line(gw_json *json, const char *key, const gw_start_corner *c, const char *rate, double v)
{
    gw_json_object_on_line(json, key);
    gw_json_string(json, "on", c->layout->spring_on);
    gw_json_string(json, "at", "spring_seat");
    gw_json_string(json, "to", "spring_top");
    gw_json_number(json, rate, v);
    gw_json_close(json);
}

static void corner(gw_json *json, const gw_start_car *car, int a)
{
    const gw_start_corner *c = &car->corner[a];
    gw_json_object(json, AXLE[a]);
    wheel(json, c);
    points(json, c, false);
    members(json, c->layout, false);
    joints(json, c->layout, a, false);
    line(json, "spring", c, "rate_N_per_mm", c->spring.v);
    line(json, "damper", c, "rate_Ns_per_mm", c->damper.v);
    gw_json_close(json);
}

static bool shares(const gw_start_layout *l)
{
    for (int i = 0; i < l->n_joints; i++)
        if (l->joint[i].of != GW_START_OF_CORNER) return true;
    return false;
}

/* What both wheels of an axle share. */
static void shared_parts(gw_json *json, const gw_start_car *car)
{
    if (!shares(car->corner[GW_FRONT].layout) && !shares(car->corner[GW_REAR].layout)) return;
    gw_json_object(json, "axles");
    for (int a = 0; a < GW_AXLES; a++) {
        const gw_start_layout *l = car->corner[a].layout;
        if (!shares(l)) continue;
        gw_json_object(json, AXLE[a]);
        points(json, &car->corner[a], true);
        members(json, l, true);
        joints(json, l, a, true);
        if (l->final_drive && car->driven[0] != 'f') gw_json_string(json, "final_drive_on", l->final_drive);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void size_of(gw_json *json, int b)
{
    gw_json_number(json, "inner_diameter_mm", SIZE[b].inner);
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
    snprintf(name, sizeof name, "nr-%g", gw_start_bush_hardness(b));
    const gw_material *m = gw_materials_find(set, name);
    if (!car->hardness[b].read) {
        gw_json_string(json, "material", name);
    } else if (h >= 30 && h <= 75) {
        gw_json_object_on_line(json, "material");
        gw_json_string(json, "family", "natural_rubber");
        gw_json_number(json, "hardness_points", h);
        gw_json_close(json);
    } else if (m) {
        made_material(json, m, gw_start_bush_hardness(b), h);
    }
}

static void rubber_and_others(gw_json *json, const gw_start_car *car, const gw_material_set *set, int b)
{
    char name[40];
    const char *stem = gw_start_bush_name(b);
    int n = (int)(strrchr(stem, '_') - stem);
    gw_json_object(json, stem);
    gw_json_string(json, "type", "bonded");
    material(json, car, set, b);
    size_of(json, b);
    gw_json_close(json);
    snprintf(name, sizeof name, "%.*s_poly", n, stem);
    gw_json_object(json, name);
    gw_json_string(json, "type", "unbonded");
    gw_json_string(json, "material", "pu-85a");
    size_of(json, b);
    gw_json_number(json, "friction_coefficient", 0.15);
    gw_json_close(json);
    snprintf(name, sizeof name, "%.*s_bearing", n, stem);
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

/* Welds, and the twist of a beam: stiff but in torsion, which grows with the car. */
static void shared_bushes(gw_json *json, const gw_start_car *car)
{
    if (gw_start_uses(car, GW_START_WELD)) {
        gw_json_object_on_line(json, gw_start_bush_name(GW_START_WELD));
        gw_json_string(json, "type", "rigid");
        gw_json_close(json);
    }
    if (!gw_start_uses(car, GW_START_BEAM)) return;
    gw_json_object(json, gw_start_bush_name(GW_START_BEAM));
    gw_json_string(json, "type", "rates");
    gw_json_number(json, "radial_N_per_mm", 60000);
    gw_json_number(json, "axial_N_per_mm", 60000);
    gw_json_number(json, "conical_Nm_per_deg", 2500);
    gw_json_number(json, "torsional_Nm_per_deg", gw_start_rounded(BEAM_TWIST * car->mass.v, 0.5));
    gw_json_number(json, "loss_factor", 0.01);
    gw_json_number(json, "dynamic_ratio", 1);
    gw_json_close(json);
}

static void bushes(gw_json *json, const gw_start_car *car, const gw_material_set *set)
{
    gw_json_object(json, "bushes");
    for (int b = 0; b < GW_START_RUBBERS; b++)
        if (gw_start_uses(car, b)) rubber_and_others(json, car, set, b);
    if (gw_start_uses(car, GW_START_STRUT_MOUNT)) {
        gw_json_object(json, gw_start_bush_name(GW_START_STRUT_MOUNT));
        gw_json_string(json, "type", "rates");
        gw_json_number(json, "radial_N_per_mm", 900);
        gw_json_number(json, "axial_N_per_mm", 0);
        gw_json_number(json, "conical_Nm_per_deg", 0.5);
        gw_json_number(json, "torsional_Nm_per_deg", 0.05);
        gw_json_number(json, "loss_factor", 0.1);
        gw_json_number(json, "dynamic_ratio", 1.4);
        gw_json_close(json);
    }
    if (gw_start_uses(car, GW_START_BALL)) {
        gw_json_object_on_line(json, gw_start_bush_name(GW_START_BALL));
        gw_json_string(json, "type", "ball_joint");
        gw_json_close(json);
    }
    shared_bushes(json, car);
    gw_json_close(json);
}

static void kit(gw_json *json, const gw_start_car *car, const char *name, const char *label)
{
    gw_json_object(json, NULL);
    gw_json_string(json, "name", name);
    gw_json_string(json, "label", label);
    gw_json_object(json, "fits");
    for (int a = 0; a < GW_AXLES && strcmp(name, "rubber") != 0; a++)
        for (int j = 0; j < car->corner[a].layout->n_joints; j++) {
            const gw_start_joint *at = &car->corner[a].layout->joint[j];
            char joint_name[64], bush[40];
            const char *stem = gw_start_bush_name((int)at->bush);
            if ((int)at->bush >= GW_START_RUBBERS) continue;
            snprintf(joint_name, sizeof joint_name, "%s.%s", AXLE[a], at->name);
            snprintf(bush, sizeof bush, "%.*s_%s", (int)(strrchr(stem, '_') - stem), stem, name);
            gw_json_string(json, joint_name, bush);
        }
    gw_json_close(json);
    gw_json_close(json);
}

/* What any car of these proportions carries with all four wheels on the ground. */
static void loads(gw_json *json, const gw_start_car *car)
{
    double h = car->cg_height.v, t = fmin(car->corner[0].track.v, car->corner[1].track.v);
    double stop = gw_start_rounded(fmin(0.9, 0.6 * (1 - car->front_fraction.v) * car->wheelbase.v / h), 0.05);
    double bend = gw_start_rounded(fmin(0.7, 0.3 * t / h), 0.05), some = gw_start_rounded(0.5 * stop, 0.05);
    const struct {
        const char *name;
        double brake, drive, lateral;
    } load[] = { { "stop", stop, 0, 0 },
                 { "bend", 0, 0, bend },
                 { "braking into the bend", some, 0, gw_start_rounded(0.6 * bend, 0.05) },
                 { "driving out of the bend", 0, 0.25, gw_start_rounded(0.6 * bend, 0.05) } };
    gw_json_array(json, "loads");
    for (int i = 0; i < GW_START_COUNT(load); i++) {
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "name", load[i].name);
        if (load[i].brake > 0) gw_json_number(json, "brake_g", load[i].brake);
        if (load[i].drive > 0) gw_json_number(json, "drive_g", load[i].drive);
        if (load[i].lateral > 0) gw_json_number(json, "lateral_g", load[i].lateral);
        if (load[i].drive > 0) gw_json_string(json, "driven", car->driven);
        gw_json_close(json);
    }
    gw_json_close(json);
}

/* The first joint that has rubber, into which an off-centre bush can go. */
static const char *first_rubber(const gw_start_layout *l)
{
    int j = 0;
    while (j < l->n_joints - 1 && (int)l->joint[j].bush >= GW_START_RUBBERS) j++;
    return l->joint[j].name;
}

static void align(gw_json *json, const gw_start_car *car)
{
    gw_json_object(json, "align");
    for (int a = 0; a < GW_AXLES; a++) {
        const gw_start_layout *l = car->corner[a].layout;
        gw_json_object(json, AXLE[a]);
        gw_json_object_on_line(json, "target");
        gw_json_number(json, "camber_deg", car->corner[a].camber.v);
        gw_json_number(json, "toe_deg", car->corner[a].toe.v);
        gw_json_close(json);
        gw_json_array(json, "adjusters");
        gw_json_object_on_line(json, NULL);
        gw_json_string(json, "kind", "offset");
        gw_json_string(json, "joint", first_rubber(l));
        gw_json_number(json, "max_mm", 4);
        gw_json_close(json);
        if (l->adjustable) {
            gw_json_object_on_line(json, NULL);
            gw_json_string(json, "kind", "length");
            gw_json_string(json, "member", l->adjustable);
            gw_json_number(json, "min_mm", -6);
            gw_json_number(json, "max_mm", 6);
            gw_json_number(json, "thread_pitch_mm", 1.5);
            gw_json_string(json, "threads", "single");
            gw_json_close(json);
        }
        gw_json_close(json);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void band(gw_json *json, const char *of, const char *unit, double v)
{
    gw_json_object_on_line(json, NULL);
    gw_json_string(json, "of", of);
    gw_json_number(json, unit, v);
    gw_json_close(json);
}

static void read_bands(gw_json *json, const gw_start_car *car)
{
    char of[120], path[100];
    for (int i = 0; i < GW_START_N_KEYS; i++) {
        const gw_start_key *k = &GW_START_KEYS[i];
        const gw_start_figure *f = gw_start_figure_of(car, k);
        if (f->read && f->within > 0 && k->kind != ' ')
            band(json, k->of, k->kind == 'l' ? "mm" : k->kind == 'a' ? "deg" : "percent", f->within);
    }
    for (int a = 0; a < GW_AXLES; a++)
        for (int p = 0; p < car->corner[a].layout->n_points; p++)
            for (int i = 0; i < 3; i++) {
                const gw_start_figure *f = &car->corner[a].place[p][i];
                if (!(f->within > 0)) continue;
                gw_start_point_path(car->corner[a].layout, a, p, path, sizeof path);
                snprintf(of, sizeof of, "%s[%d]", path, i);
                band(json, of, "mm", f->within);
            }
    for (int b = 0; b < GW_START_RUBBERS; b++) {
        if (!car->hardness[b].read || !gw_start_uses(car, b)) continue;
        snprintf(of, sizeof of, "bushes.%s.material", gw_start_bush_name(b));
        band(json, of, "hardness_points", car->hardness[b].within);
    }
}

static void uncertain(gw_json *json, const gw_start_car *car)
{
    gw_json_array(json, "uncertain");
    band(json, "bushes", "percent", BUSH_BAND);
    band(json, "corners.front.points_mm", "mm", POINT_BAND);
    band(json, "corners.rear.points_mm", "mm", POINT_BAND);
    if (shares(car->corner[GW_FRONT].layout)) band(json, "axles.front.points_mm", "mm", POINT_BAND);
    if (shares(car->corner[GW_REAR].layout)) band(json, "axles.rear.points_mm", "mm", POINT_BAND);
    read_bands(json, car);
    gw_json_close(json);
}

void gw_start_case(const gw_start_car *car, const gw_material_set *materials, gw_buf *out)
{
    gw_json json = { .out = out };
    gw_json_object(&json, NULL);
    gw_json_string(&json, "// what",
                   "a first case of usual proportions: what was not read off the car is assumed, and is "
                   "no real car's");
    gw_json_string(&json, "format", "giveway-case-1");
    gw_json_string(&json, "title", car->title);
    vehicle(&json, car);
    gw_json_object(&json, "corners");
    for (int a = 0; a < GW_AXLES; a++) corner(&json, car, a);
    gw_json_close(&json);
    shared_parts(&json, car);
    bushes(&json, car, materials);
    gw_json_array(&json, "kits");
    kit(&json, car, "rubber", "Rubber as fitted");
    kit(&json, car, "poly", "Polyurethane");
    kit(&json, car, "bearing", "Spherical bearings");
    gw_json_close(&json);
    loads(&json, car);
    gw_json_object(&json, "ride");
    gw_json_string(&json, "road_class", "B");
    gw_json_number(&json, "speed_km_h", 80);
    gw_json_close(&json);
    align(&json, car);
    uncertain(&json, car);
    gw_json_close(&json);
}
