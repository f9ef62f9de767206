/* SPDX-License-Identifier: MIT */
/*
 * Tyres between the chassis and the road, seen from the chassis.
 *
 * The chassis is the frame in which everything is written, so that the suspensions stand in it as on the
 * ramp; it is the road that is high, rolled and pitched. Three numbers say how, and only the uprights feel
 * them. Derivatives are exact, direction by direction: the six of an upright's twist, then height, roll and
 * pitch.
 */
#include "car/workspace.h"
#include "giveway/units.h"

#include <string.h>

static gw_vec3 rolled(gw_vec3 v, double roll)
{
    double c = cos(roll), s = sin(roll);
    return gw_v3(v.x, c * v.y + s * v.z, -s * v.y + c * v.z);
}

/* Derivative of the above with the roll. */
static gw_vec3 rolling(gw_vec3 v, double roll)
{
    double c = cos(roll), s = sin(roll);
    return gw_v3(0.0, -s * v.y + c * v.z, -c * v.y - s * v.z);
}

void gw_look_from(gw_stance_on_road *s)
{
    double c = cos(s->pitch), n = sin(s->pitch);
    s->along = rolled(gw_v3(c, 0, n), s->roll);
    s->left = rolled(gw_v3(0, 1, 0), s->roll);
    s->up = rolled(gw_v3(-n, 0, c), s->roll);
}

/* The road's axes as roll (way GW_ROLL) or pitch (GW_PITCH) changes. */
static gw_stance_on_road axes_as_it_turns(const gw_stance_on_road *s, int way)
{
    double c = cos(s->pitch), n = sin(s->pitch);
    gw_stance_on_road d = { 0 };
    if (way == GW_ROLL) {
        d.along = rolling(gw_v3(c, 0, n), s->roll);
        d.left = rolling(gw_v3(0, 1, 0), s->roll);
        d.up = rolling(gw_v3(-n, 0, c), s->roll);
    } else if (way == GW_PITCH) {
        d.along = rolled(gw_v3(-n, 0, c), s->roll);
        d.up = rolled(gw_v3(-c, 0, -n), s->roll);
    }
    return d;
}

static void find_contact(const gw_road *road, gw_road_axle *axle, int w)
{
    const gw_wheel_ws *wheel = &axle->ws->wheel[w];
    const gw_pose *upright = &axle->state.pose[wheel->upright];
    const gw_stance_on_road *s = &road->stance;
    gw_contact *c = &axle->wheel[w].contact;
    c->hub = gw_point_now(upright, wheel->hub);
    c->axis = road->setting ? axle->wheel[w].axis_set : gw_mul(&upright->r, axle->wheel[w].axis_body);
    c->lean = gw_dot(s->up, c->axis);
    c->level = sqrt(1.0 - c->lean * c->lean);
    c->above = gw_dot(s->up, gw_add(axle->place, c->hub)) + s->height;
    c->length = c->above / c->level;
    c->down = gw_scale(-1.0 / c->level, gw_axpy(s->up, -c->lean, c->axis));
    c->patch = gw_axpy(c->hub, c->length, c->down);
    c->vertical = axle->tyre * (axle->free_length - c->length);
}

/* How a contact changes in one direction. */
typedef struct gw_change {
    gw_vec3 hub, patch;
    gw_stance_on_road axes;
    double vertical;
} gw_change;

static gw_change change(const gw_road *road, const gw_road_axle *axle, int w, int way)
{
    const gw_contact *c = &axle->wheel[w].contact;
    const gw_vec3 up = road->stance.up;
    gw_change d = { 0 };
    gw_vec3 axis = { 0, 0, 0 };
    double one[6] = { 0 };
    if (way < GW_TWIST) {
        one[way] = 1.0;
        gw_vec3 turn = gw_v3(one[3], one[4], one[5]);
        d.hub = gw_add(gw_v3(one[0], one[1], one[2]), gw_cross(turn, c->hub));
        if (!road->setting) axis = gw_cross(turn, c->axis);
    } else {
        d.axes = axes_as_it_turns(&road->stance, way);
    }
    double above = gw_dot(up, d.hub) + gw_dot(d.axes.up, gw_add(axle->place, c->hub));
    if (way == GW_HEIGHT) above += 1.0;
    double lean = gw_dot(up, axis) + gw_dot(d.axes.up, c->axis), level = -c->lean * lean / c->level;
    double length = (above - c->length * level) / c->level;
    gw_vec3 n = gw_sub(gw_axpy(d.axes.up, -lean, c->axis), gw_scale(c->lean, axis));
    gw_vec3 down = gw_scale(-1.0 / c->level, gw_axpy(n, level, c->down));
    d.patch = gw_add(gw_axpy(d.hub, length, c->down), gw_scale(c->length, down));
    d.vertical = -axle->tyre * length;
    return d;
}

static gw_wrench at(gw_vec3 place, gw_vec3 f)
{
    return (gw_wrench){ f, gw_cross(place, f) };
}

static void add(double out[6], double s, gw_vec3 f, gw_vec3 m)
{
    const double v[6] = { f.x, f.y, f.z, m.x, m.y, m.z };
    for (int i = 0; i < 6; i++) out[i] += s * v[i];
}

/* What a mass carries: its weight and its inertia. */
static gw_vec3 weigh(const gw_road_load *load, double mass, const gw_stance_on_road *s)
{
    gw_vec3 f = gw_axpy(gw_scale(-load->ax, s->along), -load->ay, s->left);
    return gw_scale(mass, gw_axpy(f, -GW_G0, s->up));
}

/* Wrenches of one wheel about the datum, and their sum for the whole car about its origin. */
typedef struct gw_wheel_forces {
    gw_vec3 road, mass, drive, bar; /* at the contact, and three at the wheel centre */
    double upright[6], car[6];
} gw_wheel_forces;

static gw_vec3 bar_force(const gw_road_axle *axle, int w)
{
    double travel[GW_WHEELS];
    for (int v = 0; v < GW_WHEELS; v++) travel[v] = axle->wheel[v].contact.hub.z - axle->ws->wheel[v].hub.z;
    double lift = -axle->made_up * (travel[0] - travel[1]);
    return gw_v3(0, 0, w == GW_LEFT_WHEEL ? lift : -lift);
}

static gw_wheel_forces forces_of(const gw_road *road, gw_axle which, int w)
{
    const gw_road_axle *axle = &road->axle[which];
    const gw_contact *c = &axle->wheel[w].contact;
    const gw_stance_on_road *s = &road->stance;
    double trail = -road->vehicle->pneumatic_trail * c->lateral;
    gw_wheel_forces f = { 0 };
    f.road = gw_axpy(gw_scale(c->vertical, s->up), c->lateral, s->left);
    f.road = gw_axpy(f.road, road->load.brake[which], s->along);
    f.mass = weigh(&road->load, axle->mass, s);
    f.drive = gw_scale(road->load.drive[which], s->along);
    f.bar = bar_force(axle, w);
    gw_vec3 hub = gw_add(gw_add(f.mass, f.drive), f.bar), both = gw_add(f.road, f.drive);
    add(f.upright, 1.0, f.road, gw_axpy(gw_cross(c->patch, f.road), trail, s->up));
    add(f.upright, 1.0, hub, gw_cross(c->hub, hub));
    gw_vec3 patch = gw_add(axle->place, c->patch), centre = gw_add(axle->place, c->hub);
    add(f.car, 1.0, both, gw_axpy(gw_cross(patch, both), trail, s->up));
    add(f.car, 1.0, f.mass, gw_cross(centre, f.mass));
    return f;
}

/* A newton of lateral force: on the upright about the datum, on the car about its origin. */
static void unit_lateral(const gw_road *road, const gw_road_axle *axle, int w, double upright[6],
                         double car[6])
{
    const gw_contact *c = &axle->wheel[w].contact;
    const gw_stance_on_road *s = &road->stance;
    gw_vec3 trail = gw_scale(-road->vehicle->pneumatic_trail, s->up);
    memset(upright, 0, 6 * sizeof *upright);
    memset(car, 0, 6 * sizeof *car);
    add(upright, 1.0, s->left, gw_add(gw_cross(c->patch, s->left), trail));
    add(car, 1.0, s->left, gw_add(gw_cross(gw_add(axle->place, c->patch), s->left), trail));
}

/* Derivatives of a wheel's wrenches in one direction, its lateral force staying as it is. */
static void differentiate(const gw_road *road, gw_axle which, int w, const gw_wheel_forces *f,
                          const gw_change *d, double upright[6], double car[6])
{
    const gw_road_axle *axle = &road->axle[which];
    const gw_contact *c = &axle->wheel[w].contact;
    const gw_stance_on_road *s = &road->stance;
    double trail = -road->vehicle->pneumatic_trail * c->lateral;
    gw_vec3 df = gw_axpy(gw_scale(c->vertical, d->axes.up), d->vertical, s->up);
    df = gw_axpy(gw_axpy(df, c->lateral, d->axes.left), road->load.brake[which], d->axes.along);
    gw_vec3 mass = weigh(&road->load, axle->mass, &d->axes);
    gw_vec3 drive = gw_scale(road->load.drive[which], d->axes.along);
    gw_vec3 bar = gw_v3(0, 0, -axle->made_up * d->hub.z);
    gw_vec3 hub = gw_add(gw_add(f->mass, f->drive), f->bar), dhub = gw_add(gw_add(mass, drive), bar);
    gw_vec3 both = gw_add(f->road, f->drive), dboth = gw_add(df, drive);
    gw_vec3 patch = gw_add(axle->place, c->patch), centre = gw_add(axle->place, c->hub);
    add(upright, 1.0, df, gw_add(gw_cross(d->patch, f->road), gw_cross(c->patch, df)));
    add(upright, 1.0, dhub, gw_add(gw_cross(d->hub, hub), gw_cross(c->hub, dhub)));
    add(upright, trail, gw_v3(0, 0, 0), d->axes.up);
    add(car, 1.0, dboth, gw_add(gw_cross(d->patch, both), gw_cross(patch, dboth)));
    add(car, 1.0, mass, gw_add(gw_cross(d->hub, f->mass), gw_cross(centre, mass)));
    add(car, trail, gw_v3(0, 0, 0), d->axes.up);
}

static void axpy(double *y, double s, const double *x)
{
    for (int i = 0; i < 6; i++) y[i] += s * x[i];
}

static void subtract_column(double *block, int column, double s, const double *x)
{
    for (int i = 0; i < 6; i++) block[6 * i + column] -= s * x[i];
}

/* The lateral force is the axle's by share of the vertical loads: how a newton more on wheel v changes that
 * of w. */
static double lateral_by_vertical(const gw_road_axle *axle, int w, int v)
{
    double own = axle->wheel[w].contact.vertical, sum = 0.0;
    for (int i = 0; i < GW_WHEELS; i++) sum += axle->wheel[i].contact.vertical;
    return axle->lateral * ((v == w ? sum : 0.0) - own) / (sum * sum);
}

/* The twist of upright v: its own wrench, and the lateral force and the bar of the other wheel. */
static void put_twists(gw_road *road, gw_axle which, int v, const gw_wheel_forces f[GW_WHEELS],
                       double unit[GW_WHEELS][2][6], gw_balance_of_car *b)
{
    gw_road_axle *axle = &road->axle[which];
    gw_system *s = &axle->ws->system;
    const int *up = s->upright;
    for (int way = 0; way < GW_TWIST; way++) {
        gw_change d = change(road, axle, v, way);
        double upright[6] = { 0 }, car[6] = { 0 }, other[6] = { 0 };
        int w = 1 - v;
        differentiate(road, which, v, &f[v], &d, upright, car);
        for (int i = 0; i < GW_WHEELS; i++) {
            double more = lateral_by_vertical(axle, i, v) * d.vertical;
            axpy(i == v ? upright : other, more, unit[i][0]);
            axpy(car, more, unit[i][1]);
        }
        gw_wrench bar = at(axle->wheel[w].contact.hub, gw_v3(0, 0, axle->made_up * d.hub.z));
        add(other, 1.0, bar.f, bar.m);
        subtract_column(gw_block_at(s, up[v], up[v]), way, 1.0, upright);
        subtract_column(gw_block_at(s, up[w], up[v]), way, 1.0, other);
        for (int i = 0; i < 6; i++) b->by_twist[which][v][i][way] = -car[i];
    }
}

static void put_stances(const gw_road *road, gw_axle which, const gw_wheel_forces f[GW_WHEELS],
                        double unit[GW_WHEELS][2][6], gw_balance_of_car *b)
{
    const gw_road_axle *axle = &road->axle[which];
    for (int k = 0; k < 3; k++) {
        double vertical[GW_WHEELS], upright[GW_WHEELS][6] = { { 0 } }, car[6] = { 0 };
        for (int w = 0; w < GW_WHEELS; w++) {
            gw_change d = change(road, axle, w, GW_HEIGHT + k);
            vertical[w] = d.vertical;
            differentiate(road, which, w, &f[w], &d, upright[w], car);
        }
        for (int w = 0; w < GW_WHEELS; w++) {
            double more =
                lateral_by_vertical(axle, w, 0) * vertical[0] + lateral_by_vertical(axle, w, 1) * vertical[1];
            axpy(upright[w], more, unit[w][0]);
            axpy(car, more, unit[w][1]);
            for (int i = 0; i < 6; i++) b->upright_by_stance[which][w][i][k] = -upright[w][i];
        }
        for (int i = 0; i < 6; i++) b->by_stance[i][k] -= car[i];
    }
}

/* A half-shaft sends its torque to the body that carries the final drive. */
static void put_final_drive(gw_road *road, gw_axle which, int w)
{
    gw_road_axle *axle = &road->axle[which];
    const gw_contact *c = &axle->wheel[w].contact;
    gw_system *s = &axle->ws->system;
    int body = axle->ws->corner->final_drive;
    if (body == GW_CHASSIS || road->load.drive[which] == 0.0) return;
    gw_vec3 m = gw_cross(gw_sub(c->patch, c->hub), gw_scale(road->load.drive[which], road->stance.along));
    const double v[3] = { m.x, m.y, m.z };
    for (int i = 0; i < 3; i++) s->rhs[body][s->n_columns * (3 + i)] += v[i];
}

/* Where both wheels of an axle stand and what each carries, the lateral force by load. */
static void find_contacts(const gw_road *road, gw_road_axle *axle)
{
    double sum = 0.0;
    for (int w = 0; w < GW_WHEELS; w++) {
        find_contact(road, axle, w);
        sum += axle->wheel[w].contact.vertical;
    }
    for (int w = 0; w < GW_WHEELS; w++) {
        gw_contact *c = &axle->wheel[w].contact;
        c->lateral = axle->lateral * c->vertical / sum;
    }
}

void gw_find_contacts(gw_road *road)
{
    for (int a = 0; a < GW_AXLES; a++) find_contacts(road, &road->axle[a]);
}

void gw_put_on_road(gw_road *road, gw_axle which, gw_balance_of_car *b)
{
    gw_road_axle *axle = &road->axle[which];
    gw_system *s = &axle->ws->system;
    find_contacts(road, axle);
    for (int w = 0; w < GW_WHEELS; w++) {
        gw_wheel_forces f = forces_of(road, which, w);
        for (int i = 0; i < 6; i++) s->rhs[s->upright[w]][s->n_columns * i] += f.upright[i];
        axpy(b->sum, 1.0, f.car);
        put_final_drive(road, which, w);
    }
}

void gw_put_road_tangents(gw_road *road, gw_axle which, gw_balance_of_car *b)
{
    const gw_road_axle *axle = &road->axle[which];
    gw_wheel_forces f[GW_WHEELS];
    double unit[GW_WHEELS][2][6], sum = 0.0;
    for (int w = 0; w < GW_WHEELS; w++) sum += axle->wheel[w].contact.vertical;
    for (int w = 0; w < GW_WHEELS; w++) {
        const gw_contact *c = &axle->wheel[w].contact;
        f[w] = forces_of(road, which, w);
        unit_lateral(road, axle, w, unit[w][0], unit[w][1]);
        for (int i = 0; i < 6; i++) {
            b->upright_by_lateral[which][w][i] = -c->vertical / sum * unit[w][0][i];
            b->by_lateral[which][i] -= c->vertical / sum * unit[w][1][i];
        }
    }
    for (int w = 0; w < GW_WHEELS; w++) put_twists(road, which, w, f, unit, b);
    put_stances(road, which, f, unit, b);
}

void gw_put_chassis(const gw_road *road, gw_balance_of_car *b)
{
    gw_vec3 f = weigh(&road->load, road->mass, &road->stance);
    add(b->sum, 1.0, f, gw_cross(road->centre, f));
}

void gw_put_chassis_tangents(const gw_road *road, gw_balance_of_car *b)
{
    for (int k = 1; k < 3; k++) {
        gw_stance_on_road d = axes_as_it_turns(&road->stance, GW_HEIGHT + k);
        gw_vec3 df = weigh(&road->load, road->mass, &d), dm = gw_cross(road->centre, df);
        const double v[6] = { df.x, df.y, df.z, dm.x, dm.y, dm.z };
        for (int i = 0; i < 6; i++) b->by_stance[i][k] -= v[i];
    }
}
