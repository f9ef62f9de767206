/* SPDX-License-Identifier: MIT */
/* Newton's iteration of the whole car, with full steps from where it stands, as for a corner. */
#include "car/workspace.h"
#include "giveway/units.h"

#include <string.h>

enum { MAX_ITERATIONS = 40 };
static const double SMALL_STEP = 1e-4; /* after it the tangent is near enough for what is left [m], [rad] */
static const double QUICKER = 0.1;     /* of the step before: else the tangent is worked out anew */
static const double TORN = 1.3;

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

bool gw_road_has_play(const gw_road *road)
{
    return gw_has_play(road->axle[GW_FRONT].ws) || gw_has_play(road->axle[GW_REAR].ws);
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
    gw_balance_of_car b = lent->balance;
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
