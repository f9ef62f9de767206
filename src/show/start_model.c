/* SPDX-License-Identifier: MIT */
/* Usual proportions of a road car around the few figures that are given: all common practice. */
#include "show/start.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const double GRAVITY = 9.80665, PI = 3.14159265358979323846;
/* Of the body on spring and tyre [Hz], and damping of it. */
static const double BODY_HZ = 1.35, DAMPING = 0.4;
static const double LOWEST_PIVOT = 130,
                    OVER_WHEEL = 20; /* above the floor, and above the wheel centre [mm] */

static const struct {
    const char *name;
    double hardness;
} BUSHES[GW_START_BUSHES] = {
    { "arm_rubber", 65 },   { "tension_rubber", 70 },  { "upper_rubber", 60 }, { "link_rubber", 60 },
    { "trail_rubber", 60 }, { "subframe_rubber", 60 }, { "rack_rubber", 65 },  { "bar_rubber", 65 },
    { "strut_mount", 0 },   { "ball_joint", 0 },       { "weld", 0 },          { "twist_beam", 0 },
    { "rack_guide", 0 },    { "front_bar", 0 },        { "rear_bar", 0 },
};

const char *gw_start_bush_name(int bush)
{
    return BUSHES[bush].name;
}

double gw_start_bush_hardness(int bush)
{
    return BUSHES[bush].hardness;
}

void gw_start_point_path(const gw_start_corner *corner, int axle, int point, char *path, size_t size)
{
    const gw_start_point *p = &corner->parts.point[point];
    snprintf(path, size, "%s.%s.points_mm.%s", p->side == GW_START_OF_CORNER ? "corners" : "axles",
             axle == GW_FRONT ? "front" : "rear", p->name);
}

const gw_start_layout *gw_start_find(const char *name, gw_axle axle)
{
    for (int i = 0; i < GW_START_N_LAYOUTS; i++)
        if (GW_START_LAYOUTS[i].axle == axle && strcmp(GW_START_LAYOUTS[i].name, name) == 0)
            return &GW_START_LAYOUTS[i];
    return NULL;
}

bool gw_start_uses(const gw_start_car *car, int bush)
{
    for (int a = 0; a < GW_AXLES; a++)
        for (int j = 0; j < car->corner[a].parts.n_joints; j++)
            if ((int)car->corner[a].parts.joint[j].bush == bush) return true;
    return false;
}

static double between(double v, double low, double high)
{
    return fmin(fmax(v, low), high);
}

/* To a step that a person would write. */
/* Of a step below one its inverse is whole: what comes out is the number that is written with few digits. */
double gw_start_rounded(double v, double step)
{
    return step < 1.0 ? round(v / step) / round(1.0 / step) : round(v / step) * step;
}

/* What is given, or what follows, within what an option may be. */
static gw_start_figure given_or(double given, double follows, double low, double high, double step)
{
    double v = given > 0.0 ? given : gw_start_rounded(between(follows, low, high), step);
    return (gw_start_figure){ .v = v };
}

static void make_vehicle(const gw_start_wish *w, gw_start_car *car)
{
    const char *driven = w->driven ? w->driven : "front";
    double front = strcmp(driven, "front") == 0 ? 0.6 : strcmp(driven, "rear") == 0 ? 0.52 : 0.55;
    car->mass = given_or(w->mass, 1400, 600, 3500, 1);
    double size = pow(car->mass.v / 1400, 0.25);
    car->front_fraction = given_or(w->front_fraction, front, 0.35, 0.65, 0.01);
    car->wheelbase = given_or(w->wheelbase, 2650 * size, 1900, 3600, 10);
    car->cg_height = given_or(w->cg_height, 0.205 * car->wheelbase.v, 350, 850, 5);
    double ideal = car->front_fraction.v + 0.8 * car->cg_height.v / car->wheelbase.v;
    car->brake_fraction = given_or(w->brake_fraction, ideal, 0.5, 0.85, 0.01);
    for (int a = 0; a < GW_AXLES; a++) {
        car->corner[a].track = given_or(w->track[a], 1540 * size - 10 * a, 1200, 1800, 5);
        car->corner[a].radius = given_or(w->radius, 310 * pow(car->mass.v / 1400, 0.15), 250, 400, 1);
    }
    snprintf(car->driven, sizeof car->driven, "%s", driven);
}

/* Wheel rate that with the tyre in series gives the body its frequency; then the spring for it. */
static void make_spring(gw_start_corner *c, double load)
{
    double body = load / GRAVITY - c->wheel_mass.v;
    double whole = 4 * PI * PI * BODY_HZ * BODY_HZ * body / 1000, wheel = 1 / (1 / whole - 1 / c->tyre.v);
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
        (gw_start_figure){ .v = gw_start_rounded(between(12 + 0.019 * mass, 15, 0.2 * load / GRAVITY), 0.5) };
    c->tyre = (gw_start_figure){ .v = gw_start_rounded(between(200 * sqrt(load / 3500), 120, 400), 5) };
    c->camber = (gw_start_figure){ .v = -0.8 };
    c->toe = (gw_start_figure){ .v = 0.08 };
}

/* Trailing arms: the pivot stands so high that braking lifts as little as is usual, whatever the car. */
static double pivot_height(const gw_start_car *car, const gw_start_corner *c)
{
    double rear = 1 - car->brake_fraction.v, q = rear * car->wheelbase.v / car->cg_height.v;
    double height = c->layout->anti_lift * c->layout->arm / q;
    return gw_start_rounded(fmin(fmax(height, LOWEST_PIVOT), c->radius.v + OVER_WHEEL), 1);
}

static void make_places(const gw_start_car *car, gw_start_corner *c)
{
    for (int i = 0; i < c->parts.n_points; i++) {
        const gw_start_point *p = &c->parts.point[i];
        double base = p->pivot ? pivot_height(car, c) : c->radius.v;
        c->place[i][0].v = p->from_wheel[0];
        double y = gw_start_rounded(c->track.v / 2 - p->from_wheel[1], 1e-4);
        c->place[i][1].v = p->side == GW_START_MIDDLE ? 0.0 : p->side == GW_START_RIGHT ? -y : y;
        c->place[i][2].v = gw_start_rounded(base + p->from_wheel[2], 1e-4);
    }
}

/* As thick as adds to what the springs resist roll with: in front four fifths of it, behind half as much. */
static double usual_bar(const gw_start_corner *c, double load)
{
    const gw_start_bar *b = c->layout->bar;
    double arm = fabs(b->end.from_wheel[0] - b->bush.from_wheel[0]) / 1000;
    double length = c->track.v / 1000 - 2 * b->bush.from_wheel[1] / 1000;
    double wheel = 4 * PI * PI * BODY_HZ * BODY_HZ * (load / GRAVITY - c->wheel_mass.v);
    double twist = (c->layout->axle == GW_FRONT ? 0.8 : 0.4) * wheel * pow(arm / b->ratio, 2) / 2;
    return between(round(1000 * pow(32 * length * twist / (PI * GW_START_STEEL_SHEAR), 0.25)), 10, 30);
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
        double share = a == GW_FRONT ? car->front_fraction.v : 1 - car->front_fraction.v;
        double load = car->mass.v * GRAVITY * share / 2;
        make_wheel(c, load, car->mass.v);
        choose_parts(wish, a, load, c);
        make_spring(c, load);
        make_places(car, c);
    }
    for (int b = 0; b < GW_START_RUBBERS; b++) car->hardness[b].v = BUSHES[b].hardness;
    make_title(wish, car);
}

#define IN_CAR(field) offsetof(gw_start_car, field)
#define IN_CORNER(a, field)                                                                                  \
    (offsetof(gw_start_car, corner) + (a) * sizeof(gw_start_corner) + offsetof(gw_start_corner, field))
/* clang-format off */
#define OF_AXLE(name, a) \
    { "corners." name ".wheel.loaded_radius_mm", "mm", "floor to wheel centre, car on its wheels", 100, 800, 0, 'l', IN_CORNER(a, radius) }, \
    { "corners." name ".wheel.static_camber_deg", "deg", "camber of one wheel, top outboard positive", -15, 15, 0.05, 'a', IN_CORNER(a, camber) }, \
    { "corners." name ".wheel.static_toe_deg", "deg", "toe of one wheel, toe-in positive", -10, 10, 0.05, 'a', IN_CORNER(a, toe) }, \
    { "corners." name ".wheel.mass_kg", "kg", "wheel, hub, brake and upright on the scales", 0, 500, 0, ' ', IN_CORNER(a, wheel_mass) }, \
    { "corners." name ".wheel.tyre_vertical_N_per_mm", "N/mm", "tyre: load over squash", 0, 5000, 10, 'r', IN_CORNER(a, tyre) }, \
    { "corners." name ".spring.rate_N_per_mm", "N/mm", "spring in the press, or off its label", 0, 5000, 10, 'r', IN_CORNER(a, spring) }, \
    { "corners." name ".damper.rate_Ns_per_mm", "N s/mm", "damper on its test bench", 0, 500, 10, 'r', IN_CORNER(a, damper) }
/* clang-format on */

const gw_start_key GW_START_KEYS[] = {
    { "vehicle.mass_kg", "kg", "all four wheels on scales, ready to drive, driver aboard", 50, 20000, 0, ' ',
      IN_CAR(mass) },
    { "vehicle.front_mass_fraction", "", "front scales over all", 0.05, 0.95, 0, ' ',
      IN_CAR(front_fraction) },
    { "vehicle.cg_height_mm", "mm", "rear lifted on scales, or a good guess", 50, 3000, 0, 'l',
      IN_CAR(cg_height) },
    { "vehicle.wheelbase_mm", "mm", "front to rear wheel centre", 500, 8000, 0, 'l', IN_CAR(wheelbase) },
    { "vehicle.track_mm.front", "mm", "middle to middle of the tyres at the floor, front", 500, 3000, 0, 'l',
      IN_CORNER(GW_FRONT, track) },
    { "vehicle.track_mm.rear", "mm", "middle to middle of the tyres at the floor, rear", 500, 3000, 0, 'l',
      IN_CORNER(GW_REAR, track) },
    { "vehicle.brake_front_fraction", "", "front brake force over all", 0.05, 0.95, 0, ' ',
      IN_CAR(brake_fraction) },
    OF_AXLE("front", GW_FRONT),
    OF_AXLE("rear", GW_REAR),
};
const int GW_START_N_KEYS = GW_START_COUNT(GW_START_KEYS);

const gw_start_figure *gw_start_figure_of(const gw_start_car *car, const gw_start_key *key)
{
    return (const gw_start_figure *)(const void *)((const char *)car + key->offset);
}
