/* SPDX-License-Identifier: MIT */
/*
 * The whole car's equilibrium: Newton's iteration with full steps from where the car stands, as for a corner;
 * where that fails, or goes further than a car that works, the manoeuvre is brought on little by little.
 */
#include "car/road.h"
#include "giveway/units.h"

#include <float.h>
#include <stdlib.h>
#include <string.h>

enum { MAX_ITERATIONS = 40, MAX_PARTS = 60, HALVINGS = 8 };
static const double SMALL_STEP = 1e-4; /* after it the tangent is near enough for what is left [m], [rad] */
static const double QUICKER = 0.1;     /* of the step before: else the tangent is worked out anew */
static const double TORN = 1.3;
static const double SMALLEST_PART = 1.0 / 256.0;

static double load_scale(const gw_road *road)
{
    double scale = 0.0;
    for (int a = 0; a < GW_AXLES; a++) {
        const gw_road_axle *axle = &road->axle[a];
        scale = fmax(scale, axle->static_load);
        scale = fmax(scale, fabs(road->load.brake[a]) + fabs(road->load.drive[a]));
        scale = fmax(scale, fabs(axle->static_load * road->load.ay / GW_G0));
    }
    return scale;
}

static double rounding_floor(const gw_road *road)
{
    return fmax(gw_rounding_floor(road->axle[GW_FRONT].ws), gw_rounding_floor(road->axle[GW_REAR].ws));
}

/* The travel of a wheel while the car is set: given, so a border as on the ramp. */
static void put_levels(gw_road_axle *axle)
{
    for (int w = 0; w < GW_WHEELS; w++)
        axle->ws->system.border_rhs[w] = axle->ws->wheel[w].hub.z - axle->wheel[w].contact.hub.z;
}

static void put_borders(gw_road_axle *axle)
{
    gw_system *s = &axle->ws->system;
    for (int w = 0; w < GW_WHEELS; w++) {
        const gw_wheel_ws *wheel = &axle->ws->wheel[w];
        const gw_vec3 hub = axle->wheel[w].contact.hub;
        gw_vec3 on = gw_point_now(&axle->state.pose[wheel->spring_body], wheel->spring_at);
        gw_vec3 line = gw_sub(on, wheel->spring_to), n = gw_scale(-1.0 / gw_norm(line), line);
        gw_vec3 m = gw_cross(on, n);
        const double row[6] = { 0, 0, 1, hub.y, -hub.x, 0 }, column[6] = { n.x, n.y, n.z, m.x, m.y, m.z };
        memcpy(s->border_row[w], row, sizeof row);
        for (int i = 0; i < 6; i++) s->rhs[wheel->spring_body][s->n_columns * i + 1 + w] += column[i];
    }
}

static gw_imbalance measure(const gw_road *road, const gw_balance_of_car *b)
{
    gw_imbalance left = { 0, 0, 0 };
    for (int a = 0; a < GW_AXLES; a++) gw_measure(&road->axle[a].ws->system, road->setting, &left);
    for (int i = 1; i < 3; i++) left.force = gw_larger(left.force, 0.25 * fabs(b->sum[i]));
    for (int i = 3; i < 6; i++) left.moment = gw_larger(left.moment, 0.1 * fabs(b->sum[i]));
    return left;
}

/* The imbalance alone; the matrices stay as they were solved last. */
static gw_imbalance assemble_forces(gw_road *road, gw_balance_of_car *b)
{
    memset(b->sum, 0, sizeof b->sum);
    for (int a = 0; a < GW_AXLES; a++) {
        gw_road_axle *axle = &road->axle[a];
        gw_assemble_part_forces(axle->ws, &axle->state);
        gw_put_on_road(road, (gw_axle)a, b);
        if (road->setting) put_levels(axle);
    }
    gw_put_chassis(road, b);
    return measure(road, b);
}

/*
 * Where a guess puts the bodies, stiff joints are strained by what it errs, some 10 kN that nobody carries,
 * and holds of free spins by 100 kN m: with that a tangent is wrong where the car is soft. What they carried
 * where the guess comes from does for it.
 */
static void expect_felt(gw_road_axle *axle)
{
    for (int j = 0; axle->felt && j < axle->ws->n_links; j++) {
        const gw_felt *felt = &axle->felt[gw_felt_place(axle->ws, j)];
        axle->ws->strain[j].wrench = felt->wrench;
        memcpy(axle->ws->strain[j].m, felt->m, sizeof felt->m);
    }
    axle->felt = NULL;
}

/* Where the forces were asked for last. */
static void assemble_tangents(gw_road *road, gw_balance_of_car *b)
{
    memset(b->by_stance, 0, sizeof b->by_stance);
    memset(b->by_lateral, 0, sizeof b->by_lateral);
    for (int a = 0; a < GW_AXLES; a++) {
        gw_road_axle *axle = &road->axle[a];
        expect_felt(axle);
        gw_assemble_part_tangents(axle->ws, &axle->state, road->setting ? GW_AT_TRAVEL : GW_ON_SPRING);
        gw_put_road_tangents(road, (gw_axle)a, b);
        if (road->setting) put_borders(axle);
    }
    gw_put_chassis_tangents(road, b);
}

void gw_road_springs_follow(gw_road *road)
{
    for (int a = 0; a < GW_AXLES; a++) {
        gw_road_axle *axle = &road->axle[a];
        gw_springs_follow(axle->ws, &axle->state, &axle->start, road->setting ? GW_AT_TRAVEL : GW_ON_SPRING);
    }
}

/* The axles follow the step; the largest movement. Bounded where a body would turn by more than a radian. */
static double follow(gw_road *road)
{
    gw_largest_step largest = { 0 };
    for (int a = 0; a < GW_AXLES; a++) gw_look_for_largest(&road->axle[a].ws->system, &largest);
    const double factor = gw_step_factor(&largest);
    for (int a = 0; a < GW_AXLES; a++) {
        gw_road_axle *axle = &road->axle[a];
        for (int b = 1; b < axle->ws->system.n; b++)
            gw_move_body(&axle->state.pose[b], axle->ws->system.step[b], factor);
        for (int w = 0; w < GW_WHEELS && road->setting; w++)
            *gw_spring_force_of(&axle->state, w) += axle->ws->system.border_step[w];
    }
    gw_road_springs_follow(road);
    return fmax(largest.move, largest.turn);
}

static bool is_torn(const gw_road *road)
{
    for (int a = 0; a < GW_AXLES; a++)
        for (int b = 1; b < road->axle[a].ws->system.n; b++)
            if (!(gw_norm(gw_rot_log(&road->axle[a].state.pose[b].r)) <= TORN)) return true;
    return fabs(road->stance.roll) > TORN || fabs(road->stance.pitch) > TORN;
}

/* The axles follow one step, with a tangent of this state or with the last one; how far they moved, -1: not
 * at all, since the matrix is singular. */
static double take_step(gw_road *road, gw_balance_of_car *b, bool kept)
{
    if (!kept) assemble_tangents(road, b);
    bool solved = kept ? gw_road_step_again(road, b) : gw_road_step(road, b);
    return solved ? follow(road) : -1.0;
}

/* After a small step the tangent is kept as long as the steps get small quickly, with play as in a corner. */
gw_status gw_road_newton(gw_road *road, gw_error *err)
{
    const gw_balance_goal wanted = gw_balance_goal_make(load_scale(road), rounding_floor(road));
    double step = HUGE_VAL;
    const bool played = gw_road_has_play(road);
    bool kept = false;
    gw_balance_of_car b;
    road->iterations = 0;
    for (int i = 0; i < MAX_ITERATIONS; i++) {
        gw_imbalance left = assemble_forces(road, &b);
        road->residual = left.force;
        if (gw_balance_is_met(&wanted, &left, step)) {
            if (is_torn(road))
                return gw_fail(err, GW_E_NUMERIC, "the car leaves its linkages in this manoeuvre");
            return GW_OK;
        }
        const double before = kept || played ? step : HUGE_VAL;
        road->iterations += !kept;
        step = take_step(road, &b, kept);
        if (step < 0.0) return gw_fail(err, GW_E_NUMERIC, "the car has no stiffness left in some direction");
        kept = step <= SMALL_STEP && step <= QUICKER * before && !(played && i == 0);
    }
    return gw_fail(err, GW_E_NUMERIC,
                   "the car found no equilibrium in %d steps: the g is more than it can carry",
                   (int)MAX_ITERATIONS);
}

bool gw_road_tangent_here(gw_road *road, gw_balance_of_car *b)
{
    assemble_forces(road, b);
    assemble_tangents(road, b);
    return gw_road_step(road, b);
}

static bool step_lent(gw_road *road, const gw_road_tangent *lent)
{
    gw_balance_of_car b = *gw_road_lent_balance(lent);
    road->residual = assemble_forces(road, &b).force;
    if (!gw_road_step_lent(road, lent, &b)) return false;
    follow(road);
    return true;
}

gw_status gw_road_newton_once(gw_road *road, const gw_road_tangent *lent)
{
    gw_balance_of_car b;
    if (gw_road_can_borrow(road, lent)) {
        road->iterations = 0;
        if (!step_lent(road, lent)) return GW_E_NUMERIC;
        gw_find_contacts(road);
        return GW_OK;
    }
    road->residual = assemble_forces(road, &b).force;
    road->iterations = 1;
    if (take_step(road, &b, false) < 0.0) return GW_E_NUMERIC;
    gw_find_contacts(road);
    return GW_OK;
}

static void keep(gw_road *road)
{
    road->kept = road->stance;
    for (int a = 0; a < GW_AXLES; a++) {
        gw_road_axle *axle = &road->axle[a];
        gw_state_copy(&axle->resume, &axle->state, axle->ws->system.n);
        axle->lateral0 = axle->lateral;
    }
}

static void go_back(gw_road *road)
{
    road->stance = road->kept;
    for (int a = 0; a < GW_AXLES; a++) {
        gw_road_axle *axle = &road->axle[a];
        gw_state_copy(&axle->state, &axle->resume, axle->ws->system.n);
        axle->lateral = axle->lateral0;
    }
}

static bool is_usual(const gw_road *road)
{
    for (int a = 0; a < GW_AXLES; a++)
        if (!gw_turn_is_usual(road->axle[a].ws, &road->axle[a].resume, &road->axle[a].state)) return false;
    return road->iterations <= 12;
}

bool gw_road_has_play(const gw_road *road)
{
    return gw_has_play(road->axle[GW_FRONT].ws) || gw_has_play(road->axle[GW_REAR].ws);
}

static void shut_play(gw_road *road, double share)
{
    for (int a = 0; a < GW_AXLES; a++) gw_shut_play(road->axle[a].ws, share);
}

/* From where the car stands; the state of before is kept where it does not get there. */
static gw_status try_step(gw_road *road, gw_error *err)
{
    keep(road);
    gw_status status = gw_road_newton(road, err);
    if (status == GW_OK && !is_usual(road))
        status = gw_fail(err, GW_E_NUMERIC, "the car would snap over in this manoeuvre");
    if (status != GW_OK) go_back(road);
    return status;
}

static gw_status try_share(void *of, double share, gw_error *err)
{
    shut_play(of, share);
    return try_step(of, err);
}

static gw_status open_play(gw_road *road, gw_error *err)
{
    gw_status status = gw_open_by_shares(try_share, road, err);
    shut_play(road, 0.0);
    return status;
}

static double drive_share(gw_driven driven, gw_axle axle)
{
    if (driven == GW_DRIVEN_ALL) return 0.5;
    return (driven == GW_DRIVEN_FRONT) == (axle == GW_FRONT) ? 1.0 : 0.0;
}

gw_road_load gw_road_load_of(const gw_vehicle *v, const gw_manoeuvre *m, double part)
{
    gw_road_load load = { .ax = part * (m->drive_g - m->brake_g) * GW_G0,
                          .ay = -part * m->lateral_g * GW_G0 };
    double weight = part * v->mass * GW_G0;
    for (int a = 0; a < GW_AXLES; a++) {
        double brakes = a == GW_FRONT ? v->brake_front_fraction : 1.0 - v->brake_front_fraction;
        load.brake[a] = -0.5 * weight * m->brake_g * brakes;
        load.drive[a] = 0.5 * weight * m->drive_g * drive_share(m->driven, (gw_axle)a);
    }
    return load;
}

static void stand_still(gw_road *road)
{
    road->stance = road->stance0;
    for (int a = 0; a < GW_AXLES; a++) {
        gw_road_axle *axle = &road->axle[a];
        gw_state_copy(&axle->state, &axle->start, axle->ws->system.n);
        axle->lateral = 0.0;
    }
}

/* A share of the manoeuvre, in one go or in parts. */
static gw_status bring_on(gw_road *road, const gw_manoeuvre *m, double whole, gw_error *err)
{
    gw_status status = GW_E_NUMERIC;
    double done = 0.0, part = 1.0;
    stand_still(road);
    for (int i = 0; i < MAX_PARTS && done < 1.0; i++) {
        double next = fmin(1.0, done + part);
        road->load = gw_road_load_of(road->vehicle, m, whole * next);
        status = try_step(road, err);
        if (status == GW_OK) {
            done = next;
            part *= 1.5;
        } else if ((part = part == 1.0 ? 0.25 : 0.5 * part) < SMALLEST_PART) {
            return status;
        }
    }
    return done < 1.0 ? status : GW_OK;
}

static gw_status reach(gw_road *road, const gw_manoeuvre *m, double whole, gw_error *err)
{
    if (!gw_road_has_play(road)) return bring_on(road, m, whole, err);
    stand_still(road);
    road->load = gw_road_load_of(road->vehicle, m, whole);
    if (try_step(road, NULL) == GW_OK) return GW_OK;
    shut_play(road, 1.0);
    gw_status status = bring_on(road, m, whole, err);
    if (status == GW_OK) return open_play(road, err);
    shut_play(road, 0.0);
    return status;
}

double gw_road_least_load(const gw_road *road)
{
    double least = HUGE_VAL;
    for (int a = 0; a < GW_AXLES; a++)
        for (int w = 0; w < GW_WHEELS; w++) least = fmin(least, road->axle[a].wheel[w].contact.vertical);
    return least;
}

/* The share of the manoeuvre at which the first wheel lifts, and which; `hi` is one at which one has lifted.
 */
static double find_lift(gw_road *road, const gw_manoeuvre *m, double hi, gw_axle *axle, bool lifts[GW_WHEELS])
{
    double lo = 0.0;
    for (int i = 0; i < 24; i++) {
        double middle = 0.5 * (lo + hi);
        bool stands = reach(road, m, middle, NULL) == GW_OK && gw_road_least_load(road) >= 0.0;
        *(stands ? &lo : &hi) = middle;
    }
    if (reach(road, m, lo, NULL) != GW_OK) return lo;
    double least = gw_road_least_load(road);
    for (int a = 0; a < GW_AXLES; a++)
        for (int w = 0; w < GW_WHEELS; w++)
            if (road->axle[a].wheel[w].contact.vertical == least) *axle = (gw_axle)a;
    double near = 1e-4 * road->axle[*axle].static_load;
    for (int w = 0; w < GW_WHEELS; w++) lifts[w] = road->axle[*axle].wheel[w].contact.vertical < least + near;
    return lo;
}

static gw_status report_lift(gw_road *road, const gw_manoeuvre *m, double hi, gw_error *err)
{
    gw_axle axle = GW_FRONT;
    bool lifts[GW_WHEELS] = { false };
    double part = find_lift(road, m, hi, &axle, lifts);
    const char *name = axle == GW_FRONT ? "front" : "rear";
    bool lateral = m->lateral_g > 0.0, braking = m->brake_g > 0.0;
    double g = lateral ? m->lateral_g : braking ? m->brake_g : m->drive_g;
    const char *of = lateral ? "lateral" : braking ? "braking" : "driving";
    if (lifts[0] && lifts[1])
        return gw_fail(err, GW_E_NUMERIC, "the %s wheels lift at %.2f g %s (of %.2f g): lower the g", name,
                       part * g, of, g);
    return gw_fail(err, GW_E_NUMERIC, "the %s %s wheel lifts at %.2f g %s (of %.2f g): lower the g",
                   lifts[0] ? "outer" : "inner", name, part * g, of, g);
}

/* Where the whole of it is not reached, a wheel may have lifted before: looked for from above, and then
 * between what is reached with every wheel down and what is not reached. */
static gw_status look_for_lift(gw_road *road, const gw_manoeuvre *m, const gw_error *why, gw_error *err)
{
    double stands = 0.0, falls = 1.0;
    for (int tenths = 9; tenths > 0 && stands == 0.0; tenths--) {
        const double part = 0.1 * tenths;
        if (reach(road, m, part, NULL) != GW_OK) {
            falls = part;
            continue;
        }
        if (gw_road_least_load(road) < 0.0) return report_lift(road, m, part, err);
        stands = part;
    }
    for (int i = 0; i < HALVINGS; i++) {
        const double middle = 0.5 * (stands + falls);
        const bool reached = reach(road, m, middle, NULL) == GW_OK;
        if (reached && gw_road_least_load(road) < 0.0) return report_lift(road, m, middle, err);
        *(reached ? &stands : &falls) = middle;
    }
    return gw_fail(err, GW_E_NUMERIC, "%s", why->msg);
}

/* Of the axle that got softer since it was set, where the car stood last. */
static void name_the_softest(gw_road *road, gw_error *err)
{
    double motion[GW_AXLES][6 * GW_MAX_BODIES], by[GW_AXLES];
    for (int a = 0; a < GW_AXLES; a++) {
        gw_road_axle *axle = &road->axle[a];
        by[a] = gw_softened(axle->ws, &axle->start, &axle->resume, motion[a]);
    }
    int softer = by[GW_REAR] > by[GW_FRONT] ? GW_REAR : GW_FRONT;
    if (by[softer] > GW_SOFTENED)
        gw_add_what_gives(road->axle[softer].ws, motion[softer], softer == GW_REAR ? "rear " : "front ", err);
}

gw_status gw_road_solve(gw_road *road, const gw_manoeuvre *m, gw_error *err)
{
    gw_error why = { 0 };
    road->manoeuvre = *m;
    if (reach(road, m, 1.0, &why) != GW_OK) {
        if (!err) return GW_E_NUMERIC;
        name_the_softest(road, &why);
        return look_for_lift(road, m, &why, err);
    }
    if (gw_road_least_load(road) >= 0.0) return GW_OK;
    return err ? report_lift(road, m, 1.0, err) : GW_E_NUMERIC;
}

/* S0 on the road: from the ramp, with what hangs on the springs there and not here. */
gw_status gw_road_find_reference(gw_road *road, gw_error *err)
{
    const gw_manoeuvre still = { 0 };
    road->setting = true;
    road->load = gw_road_load_of(road->vehicle, &still, 1.0);
    for (int a = 0; a < GW_AXLES; a++)
        gw_state_copy(&road->axle[a].state, gw_corner_reference(road->axle[a].ws),
                      road->axle[a].ws->system.n);
    gw_look_from(&road->stance);
    gw_status status = try_step(road, err);
    if (status != GW_OK && gw_road_has_play(road)) {
        shut_play(road, 1.0);
        status = try_step(road, err);
        if (status == GW_OK) status = open_play(road, err);
        shut_play(road, 0.0);
    }
    road->setting = false;
    return status;
}

void gw_road_note_strains(gw_road *road)
{
    for (int a = 0; a < GW_AXLES; a++) {
        gw_road_axle *axle = &road->axle[a];
        for (int j = 0; j < axle->ws->corner->n_joints; j++)
            gw_link_strain(&axle->ws->link[j], axle->start.pose, &axle->strain0[j]);
    }
}

void gw_road_set_wheels(gw_road *road)
{
    road->stance0 = road->stance;
    for (int a = 0; a < GW_AXLES; a++) {
        gw_road_axle *axle = &road->axle[a];
        gw_state_copy(&axle->start, &axle->state, axle->ws->system.n);
        for (int w = 0; w < GW_WHEELS; w++) {
            const gw_mat3 *r = &axle->start.pose[axle->ws->wheel[w].upright].r;
            axle->wheel[w].axis_body = gw_mul_t(r, axle->wheel[w].axis_set);
            axle->wheel[w].upright0 = gw_mirror_turn(w, r);
        }
    }
}

gw_status gw_road_make_axle(gw_road *road, gw_axle which, double made_up, gw_error *err)
{
    gw_road_axle *axle = &road->axle[which];
    const gw_corner *pair = axle->ws->corner;
    const gw_wheel *wheel = &pair->wheel;
    axle->strain0 = gw_arena_alloc(&road->arena, (size_t)pair->n_joints + 1, sizeof *axle->strain0);
    if (!axle->strain0 || gw_state_in_arena(axle->ws, &axle->state) != GW_OK ||
        gw_state_in_arena(axle->ws, &axle->start) != GW_OK ||
        gw_state_in_arena(axle->ws, &axle->resume) != GW_OK)
        return gw_fail(err, GW_E_NOMEM, "out of memory for the car");
    axle->place = wheel->centre;
    axle->place.x = which == GW_FRONT ? 0.0 : -road->vehicle->wheelbase;
    axle->made_up = made_up;
    axle->static_load = gw_vehicle_static_load(road->vehicle, which);
    axle->tyre = wheel->tyre_vertical;
    axle->free_length = wheel->loaded_radius + axle->static_load / axle->tyre;
    axle->mass = wheel->mass;
    return GW_OK;
}

void gw_road_note_setting(gw_road_axle *axle)
{
    for (int w = 0; w < GW_WHEELS; w++) {
        double camber = gw_corner_static_camber_of(axle->ws, (gw_wheel_side)w);
        axle->wheel[w].axis_set =
            gw_mirror(w, gw_axis_from_camber_toe(camber, axle->ws->corner->wheel.static_toe));
    }
}

/* What is left of the car's mass without its wheels, and where. */
gw_status gw_road_place_chassis(gw_road *road, gw_error *err)
{
    const gw_vehicle *v = road->vehicle;
    double mass = v->mass;
    gw_vec3 moment =
        gw_scale(v->mass, gw_v3(-(1.0 - v->front_mass_fraction) * v->wheelbase, 0.0, v->cg_height));
    for (int a = 0; a < GW_AXLES; a++) {
        const gw_road_axle *axle = &road->axle[a];
        mass -= 2.0 * axle->mass;
        moment = gw_axpy(moment, -2.0 * axle->mass, gw_v3(axle->place.x, 0.0, axle->place.z));
    }
    if (!(mass > 0.0))
        return gw_fail(err, GW_E_RANGE, "vehicle.mass_kg: the wheels alone weigh more than the car");
    road->mass = mass;
    road->centre = gw_scale(1.0 / mass, moment);
    return GW_OK;
}

gw_status gw_road_begin(const gw_vehicle *vehicle, const gw_road_part part[GW_AXLES], gw_axle_opener *open,
                        const gw_axle_origin *from, gw_road **out, gw_error *err)
{
    *out = NULL;
    gw_road *road = calloc(1, sizeof *road);
    if (!road) return gw_fail(err, GW_E_NOMEM, "out of memory for the car");
    road->vehicle = vehicle;
    gw_status status = GW_OK;
    for (int a = 0; a < GW_AXLES && status == GW_OK; a++) {
        status = open(&part[a], from, (gw_axle)a, &road->axle[a].ws, err);
        if (status == GW_OK) status = gw_road_make_axle(road, (gw_axle)a, part[a].made_up, err);
    }
    if (status == GW_OK) status = gw_road_place_chassis(road, err);
    if (status == GW_OK)
        *out = road;
    else
        gw_road_close(road);
    return status;
}

gw_status gw_road_finish(gw_road *road, gw_status status, gw_road **out)
{
    *out = NULL;
    if (status == GW_OK) {
        gw_road_note_strains(road);
        *out = road;
    } else {
        gw_road_close(road);
    }
    return status;
}

static gw_status open_axle(const gw_road_part *part, const gw_axle_origin *from, gw_axle which,
                           gw_corner_ws **ws, gw_error *err)
{
    (void)from, (void)which;
    return gw_corner_open_like(part->pair, part->fit, part->like, ws, err);
}

gw_status gw_road_open(const gw_vehicle *vehicle, const gw_road_part part[GW_AXLES], gw_road **out,
                       gw_error *err)
{
    gw_status status = gw_road_begin(vehicle, part, open_axle, NULL, out, err);
    gw_road *road = *out;
    if (status != GW_OK) return status;
    for (int a = 0; a < GW_AXLES; a++) gw_road_note_setting(&road->axle[a]);
    status = gw_road_find_reference(road, err);
    if (status == GW_OK) gw_road_set_wheels(road);
    return gw_road_finish(road, status, out);
}

void gw_road_close(gw_road *road)
{
    if (!road) return;
    for (int a = 0; a < GW_AXLES; a++) gw_corner_close(road->axle[a].ws);
    gw_arena_free(&road->arena);
    free(road);
}

gw_corner_ws *gw_road_axle_ws(const gw_road *road, gw_axle axle)
{
    return road->axle[axle].ws;
}

const gw_state *gw_road_axle_state(const gw_road *road, gw_axle axle)
{
    return &road->axle[axle].state;
}

const gw_state *gw_road_axle_start(const gw_road *road, gw_axle axle)
{
    return &road->axle[axle].start;
}
