/* SPDX-License-Identifier: MIT */
/* What a car of a first case has: its figures by their paths, points, joints, bushes. */
#include "start/car.h"

#include "giveway/units.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* Of a step below one its inverse is whole: what comes out is the number that is written with few digits. */
double gw_start_rounded(double v, double step)
{
    return step < 1.0 ? round(v / step) / round(1.0 / step) : round(v / step) * step;
}

double gw_start_load(const gw_start_car *car, int axle)
{
    double front = car->front_fraction.v;
    return car->mass.v * GW_G0 * (axle == GW_FRONT ? front : 1 - front) / 2;
}

int gw_start_point_named(const gw_start_parts *p, const char *name)
{
    int i = 0;
    while (i < p->n_points && strcmp(p->point[i].name, name) != 0) i++;
    return i < p->n_points ? i : -1;
}

bool gw_start_shares(const gw_start_corner *c)
{
    for (int j = 0; j < c->parts.n_joints; j++)
        if (c->parts.joint[j].of != GW_START_OF_CORNER) return true;
    return false;
}

bool gw_start_uses(const gw_start_car *car, int bush)
{
    for (int a = 0; a < GW_AXLES; a++)
        for (int j = 0; j < car->corner[a].parts.n_joints; j++)
            if ((int)car->corner[a].parts.joint[j].bush == bush) return true;
    return false;
}

void gw_start_point_path(const gw_start_corner *corner, int axle, int point, char *path, size_t size)
{
    const gw_start_point *p = &corner->parts.point[point];
    snprintf(path, size, "%s.%s.points_mm.%s", p->side == GW_START_OF_CORNER ? "corners" : "axles",
             gw_axle_name((gw_axle)axle), p->name);
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
