/* SPDX-License-Identifier: MIT */
/* Usual proportions of a road car around the few figures that are given: all common practice. */
#include "giveway/units.h"
#include "start/car.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* Of the body on spring and tyre [Hz], and damping of it. */
static const double BODY_HZ = 1.35, DAMPING = 0.4;

static double between(double v, double low, double high)
{
    return fmin(fmax(v, low), high);
}

const gw_start_range GW_START_RANGES[GW_START_NUMBERS] = {
    [GW_START_MASS] = { 600, 3500, 1 },        [GW_START_FRONT_FRACTION] = { 0.35, 0.65, 0.01 },
    [GW_START_WHEELBASE] = { 1900, 3600, 10 }, [GW_START_FRONT_TRACK] = { 1200, 1800, 5 },
    [GW_START_REAR_TRACK] = { 1200, 1800, 5 }, [GW_START_RADIUS] = { 250, 400, 1 },
    [GW_START_CG_HEIGHT] = { 350, 850, 5 },    [GW_START_BRAKE_FRACTION] = { 0.5, 0.85, 0.01 },
};

/* What is given, or what follows, within what an option may be. */
static gw_start_figure given_or(const gw_start_wish *w, gw_start_number number, double follows)
{
    const gw_start_range r = GW_START_RANGES[number];
    double given = w->number[number];
    double v = given > 0.0 ? given : gw_start_rounded(between(follows, r.low, r.high), r.step);
    return (gw_start_figure){ .v = v };
}

static void make_vehicle(const gw_start_wish *w, gw_start_car *car)
{
    const char *driven = w->driven ? w->driven : "front";
    double front = strcmp(driven, "front") == 0 ? 0.6 : strcmp(driven, "rear") == 0 ? 0.52 : 0.55;
    car->mass = given_or(w, GW_START_MASS, 1400);
    double part = car->mass.v / 1400, size = pow(part, 0.25);
    car->front_fraction = given_or(w, GW_START_FRONT_FRACTION, front);
    car->wheelbase = given_or(w, GW_START_WHEELBASE, 2650 * size);
    car->cg_height = given_or(w, GW_START_CG_HEIGHT, 0.205 * car->wheelbase.v);
    double ideal = car->front_fraction.v + 0.8 * car->cg_height.v / car->wheelbase.v;
    car->brake_fraction = given_or(w, GW_START_BRAKE_FRACTION, ideal);
    for (int a = 0; a < GW_AXLES; a++) {
        const gw_start_number track = a == GW_FRONT ? GW_START_FRONT_TRACK : GW_START_REAR_TRACK;
        car->corner[a].track = given_or(w, track, 1540 * size - 10 * a);
        car->corner[a].radius = given_or(w, GW_START_RADIUS, 310 * pow(part, 0.15));
    }
    snprintf(car->driven, sizeof car->driven, "%s", driven);
}

/* Wheel rate that with the tyre in series gives the body its frequency; then the spring for it. */
static void make_spring(gw_start_corner *c, double load)
{
    double body = load / GW_G0 - c->wheel_mass.v;
    double whole = 4 * GW_PI * GW_PI * BODY_HZ * BODY_HZ * body / 1000,
           wheel = 1 / (1 / whole - 1 / c->tyre.v);
    double bushes = c->layout->bushes_rate + c->layout->bushes_per_load * load,
           ratio2 = c->layout->motion_ratio2;
    double spring = fmax((wheel - bushes) / ratio2, 0.2 * wheel / ratio2);
    double critical = 2 * sqrt(whole * 1000 * body) / 1000;
    c->spring = (gw_start_figure){ .v = gw_start_rounded(spring, 0.1) };
    c->damper = (gw_start_figure){ .v = fmax(gw_start_rounded(DAMPING * critical / ratio2, 0.01), 0.01) };
}

static void make_wheel(gw_start_corner *c, double load, double mass)
{
    c->wheel_mass =
        (gw_start_figure){ .v = gw_start_rounded(between(12 + 0.019 * mass, 15, 0.2 * load / GW_G0), 0.5) };
    c->tyre = (gw_start_figure){ .v = gw_start_rounded(between(200 * sqrt(load / 3500), 120, 400), 5) };
    c->camber = (gw_start_figure){ .v = -0.8 };
    c->toe = (gw_start_figure){ .v = 0.08 };
}

static void make_places(gw_start_corner *c)
{
    for (int i = 0; i < c->parts.n_points; i++) {
        const gw_start_point *p = &c->parts.point[i];
        c->place[i][0].v = p->from_wheel[0];
        double y = gw_start_rounded(c->track.v / 2 - p->from_wheel[1], 1e-4);
        c->place[i][1].v = p->side == GW_START_MIDDLE ? 0.0 : p->side == GW_START_RIGHT ? -y : y;
        c->place[i][2].v = gw_start_rounded(c->radius.v + p->from_wheel[2], 1e-4);
    }
}

/* As thick as adds to what the springs resist roll with: in front four fifths of it, behind half as much. */
static double usual_bar(const gw_start_corner *c, double load)
{
    const gw_start_bar *b = c->layout->bar;
    double arm = fabs(b->end.from_wheel[0] - b->bush.from_wheel[0]) / 1000;
    double length = c->track.v / 1000 - 2 * b->bush.from_wheel[1] / 1000;
    double wheel = 4 * GW_PI * GW_PI * BODY_HZ * BODY_HZ * (load / GW_G0 - c->wheel_mass.v);
    double twist = (c->layout->axle == GW_FRONT ? 0.8 : 0.4) * wheel * pow(arm / b->ratio, 2) / 2;
    return between(round(1000 * pow(32 * length * twist / (GW_PI * GW_START_STEEL_SHEAR), 0.25)), 10, 30);
}

/* As wished, else as usual. */
static void choose_parts(const gw_start_wish *w, int a, double load, gw_start_corner *c)
{
    c->layout = w->layout[a];
    c->rack = a == GW_REAR ? GW_START_NONE : w->rack == GW_START_RACK_AS_USUAL ? GW_START_AHEAD : w->rack;
    c->subframe = w->subframe[a] == GW_START_AS_USUAL ? c->layout->framed : w->subframe[a] == GW_START_YES;
    bool usual = w->bar[a] == 0 && !c->layout->barless;
    c->bar = !c->layout->bar ? 0 : usual ? usual_bar(c, load) : fmax(w->bar[a], 0);
    gw_start_fit(c);
}

/* Layouts by their words: "five link". */
static void make_title(const gw_start_wish *wish, gw_start_car *car)
{
    if (wish->title) {
        snprintf(car->title, sizeof car->title, "%s", wish->title);
        return;
    }
    snprintf(car->title, sizeof car->title, "First case, assumed: %s in front, %s behind",
             wish->layout[GW_FRONT]->name, wish->layout[GW_REAR]->name);
    for (char *c = car->title; *c; c++)
        if (*c == '_') *c = ' ';
}

void gw_start_make(const gw_start_wish *wish, gw_start_car *car)
{
    *car = (gw_start_car){ 0 };
    make_vehicle(wish, car);
    for (int a = 0; a < GW_AXLES; a++) {
        gw_start_corner *c = &car->corner[a];
        double load = gw_start_load(car, a);
        make_wheel(c, load, car->mass.v);
        choose_parts(wish, a, load, c);
        make_spring(c, load);
        make_places(c);
    }
    for (int b = 0; b < GW_START_RUBBERS; b++) car->hardness[b].v = GW_START_BUSH[b].hardness;
    make_title(wish, car);
}
