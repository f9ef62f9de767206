/* SPDX-License-Identifier: MIT */
/* The case of a gw_start_car, in the order of the manual. */
#include "start/case.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* What is assumed may be off by so much, 95 % [percent]: common practice. */
static const double BUSH_BAND = 40;

static void axles(gw_json *json, const char *key, double front, double rear)
{
    GW_JSON_LINE(json, key, { "front", NULL, front }, { "rear", NULL, rear });
}

static void vehicle(gw_json *json, const gw_start_car *car)
{
    double cs[2] = { gw_start_rounded(0.17 * gw_start_load(car, 0), 1),
                     gw_start_rounded(0.17 * gw_start_load(car, 1), 1) };
    gw_json_object(json, "vehicle");
    gw_json_number(json, "mass_kg", car->mass.v);
    gw_json_number(json, "front_mass_fraction", car->front_fraction.v);
    gw_json_number(json, "cg_height_mm", car->cg_height.v);
    gw_json_number(json, "wheelbase_mm", car->wheelbase.v);
    axles(json, "track_mm", car->corner[0].track.v, car->corner[1].track.v);
    gw_json_number(json, "brake_front_fraction", car->brake_fraction.v);
    /* No roll stiffness: springs and bars give it, and a car without a bar is to roll as one. */
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
    for (int i = 0; i < c->parts.n_points; i++) {
        if ((c->parts.point[i].side != GW_START_OF_CORNER) != shared) continue;
        const double at[3] = { c->place[i][0].v, c->place[i][1].v, c->place[i][2].v };
        gw_json_numbers(json, c->parts.point[i].name, at, 3);
    }
    gw_json_close(json);
}

static void members(gw_json *json, const gw_start_parts *l, bool shared)
{
    gw_json_object(json, "members");
    for (int i = 0; i < l->n_members; i++) {
        if (l->member[i].shared != shared) continue;
        GW_JSON_LINE(json, l->member[i].name, { "mass_kg", NULL, l->member[i].mass });
    }
    gw_json_close(json);
}

static void joint(gw_json *json, const gw_start_joint *j, int axle)
{
    char label[GW_NAME_MAX];
    gw_json_object(json, NULL);
    gw_json_string(json, "name", j->name);
    snprintf(label, sizeof label, "%s %s", GW_AXLE_NAMES[axle], j->label);
    gw_json_string(json, "label", label);
    gw_json_array(json, "between");
    gw_json_string(json, NULL, j->body_a);
    gw_json_string(json, NULL, j->body_b);
    gw_json_close(json);
    gw_json_string(json, "at", j->name);
    gw_json_numbers(json, "axis", j->axis, 3);
    gw_json_string(json, "bush", GW_START_BUSH[(int)j->bush].name);
    if ((int)j->bush < GW_START_RUBBERS)
        gw_json_string(json, "housing", j->bush == GW_START_BAR_RUBBER ? j->body_a : j->body_b);
    if (j->of == GW_START_LEFT || j->of == GW_START_RIGHT) gw_json_bool(json, "mirrored", false);
    gw_json_close(json);
}

static void joints(gw_json *json, const gw_start_parts *l, int axle, bool shared)
{
    gw_json_array(json, "joints");
    for (int i = 0; i < l->n_joints; i++)
        if ((l->joint[i].of != GW_START_OF_CORNER) == shared) joint(json, &l->joint[i], axle);
    gw_json_close(json);
}

static void line(gw_json *json, const char *key, const gw_start_corner *c, const char *rate, double v)
{
    GW_JSON_LINE(json, key, { "on", c->layout->spring_on, 0 }, { "at", "spring_seat", 0 },
                 { "to", "spring_top", 0 }, { rate, NULL, v });
}

static void corner(gw_json *json, const gw_start_car *car, int a)
{
    const gw_start_corner *c = &car->corner[a];
    gw_json_object(json, GW_AXLE_NAMES[a]);
    wheel(json, c);
    points(json, c, false);
    members(json, &c->parts, false);
    joints(json, &c->parts, a, false);
    line(json, "spring", c, "rate_N_per_mm", c->spring.v);
    line(json, "damper", c, "rate_Ns_per_mm", c->damper.v);
    gw_json_close(json);
}

/* The member that carries the final drive where the axle is driven; NULL: the body does, or it is not. */
static const char *final_drive(const gw_start_car *car, int a)
{
    const gw_start_corner *c = &car->corner[a];
    if (car->driven[0] == (a == GW_FRONT ? 'r' : 'f')) return NULL;
    return c->subframe ? "subframe" : c->layout->final_drive;
}

/* What both wheels of an axle share. */
static void shared_parts(gw_json *json, const gw_start_car *car)
{
    if (!gw_start_shares(&car->corner[GW_FRONT]) && !gw_start_shares(&car->corner[GW_REAR])) return;
    gw_json_object(json, "axles");
    for (int a = 0; a < GW_AXLES; a++) {
        const gw_start_parts *l = &car->corner[a].parts;
        if (!gw_start_shares(&car->corner[a])) continue;
        gw_json_object(json, GW_AXLE_NAMES[a]);
        points(json, &car->corner[a], true);
        members(json, l, true);
        joints(json, l, a, true);
        if (final_drive(car, a)) gw_json_string(json, "final_drive_on", final_drive(car, a));
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void kit(gw_json *json, const gw_start_car *car, const char *name, const char *label)
{
    gw_json_object(json, NULL);
    gw_json_string(json, "name", name);
    gw_json_string(json, "label", label);
    gw_json_object(json, "fits");
    for (int a = 0; a < GW_AXLES && strcmp(name, "rubber") != 0; a++)
        for (int j = 0; j < car->corner[a].parts.n_joints; j++) {
            const gw_start_joint *at = &car->corner[a].parts.joint[j];
            char joint_name[64], bush[40];
            if ((int)at->bush >= GW_START_RUBBERS || at->bush == GW_START_BAR_RUBBER) continue;
            snprintf(joint_name, sizeof joint_name, "%s.%s", GW_AXLE_NAMES[a], at->name);
            gw_start_on_offer((int)at->bush, name, bush, sizeof bush);
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
static const char *first_rubber(const gw_start_parts *l)
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
        gw_json_object(json, GW_AXLE_NAMES[a]);
        GW_JSON_LINE(json, "target", { "camber_deg", NULL, car->corner[a].camber.v },
                     { "toe_deg", NULL, car->corner[a].toe.v });
        gw_json_array(json, "adjusters");
        GW_JSON_LINE(json, NULL, { "kind", "offset", 0 }, { "joint", first_rubber(&car->corner[a].parts), 0 },
                     { "max_mm", NULL, 4 });
        if (l->adjustable)
            GW_JSON_LINE(json, NULL, { "kind", "length", 0 }, { "member", l->adjustable, 0 },
                         { "min_mm", NULL, -6 }, { "max_mm", NULL, 6 }, { "thread_pitch_mm", NULL, 1.5 },
                         { "threads", "single", 0 });
        gw_json_close(json);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void band(gw_json *json, const char *of, const char *unit, double v)
{
    GW_JSON_LINE(json, NULL, { "of", of, 0 }, { unit, NULL, v });
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
        for (int p = 0; p < car->corner[a].parts.n_points; p++)
            for (int i = 0; i < 3; i++) {
                const gw_start_figure *f = &car->corner[a].place[p][i];
                if (!(f->within > 0)) continue;
                gw_start_point_path(&car->corner[a], a, p, path, sizeof path);
                snprintf(of, sizeof of, "%s[%d]", path, i);
                band(json, of, "mm", f->within);
            }
    for (int b = 0; b < GW_START_RUBBERS; b++) {
        if (!car->hardness[b].read || !gw_start_uses(car, b)) continue;
        snprintf(of, sizeof of, "bushes.%s.material", GW_START_BUSH[b].name);
        band(json, of, "hardness_points", car->hardness[b].within);
    }
}

static void uncertain(gw_json *json, const gw_start_car *car)
{
    gw_json_array(json, "uncertain");
    band(json, "bushes", "percent", BUSH_BAND);
    band(json, "corners.front.points_mm", "mm", GW_START_POINT_BAND);
    band(json, "corners.rear.points_mm", "mm", GW_START_POINT_BAND);
    if (gw_start_shares(&car->corner[GW_FRONT]))
        band(json, "axles.front.points_mm", "mm", GW_START_POINT_BAND);
    if (gw_start_shares(&car->corner[GW_REAR])) band(json, "axles.rear.points_mm", "mm", GW_START_POINT_BAND);
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
    gw_start_bushes(&json, car, materials);
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
