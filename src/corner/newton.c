/* SPDX-License-Identifier: MIT */
/*
 * Newton's iteration with full steps and the exact tangent.
 *
 * A large step of travel first raises the imbalance a thousandfold (stiff joints are pulled apart to second
 * order in the rotation) and then converges quadratically, so no line search on the force cuts it. Steps
 * are only bounded where they would turn a body by more than a radian. Poses are moved along the screw of
 * their twist, which keeps the pivots of links in place.
 */
#include "corner/workspace.h"

#include <float.h>

enum { MAX_ITERATIONS = 40, USUAL_ITERATIONS = 8 };

static const double RESIDUAL = 1e-10;   /* of the largest load                                     */
static const double ARM = 0.3;          /* length that makes a moment of a force [m]               */
static const double BORDER = 1e-13;     /* travel met to [m]                                       */
static const double LARGEST_TURN = 1.0; /* of one body in one step [rad]                           */
static const double LARGEST_MOVE = 0.5; /* of one body in one step [m]                             */
static const double SETTLED = 1e-11;    /* a step this small at the level of rounding is the end [m], [rad] */
static const double TORN = 1.3;         /* a body turned by more has left the linkage [rad]        */
static const double SMALL_STEP = 1e-5;  /* after it the tangent is near enough for what is left [m], [rad] */
static const double QUICKER = 0.1;      /* of the step before: else the tangent is worked out anew */
static const double USUAL_TURN =
    0.2; /* of the upright in one go: 120 mm of travel on an arm of 0.6 m [rad] */

static double load_scale(const gw_corner_ws *ws, const gw_state *state)
{
    double scale = ws->corner->wheel.static_load;
    for (int w = 0; w < ws->n_wheels; w++) {
        const gw_corner_load *load = w == GW_LEFT_WHEEL ? &state->load : &state->right_load;
        scale = fmax(scale, gw_norm(load->patch_force));
        scale = fmax(scale, gw_norm(load->hub_force));
        scale = fmax(scale, gw_norm(load->patch_moment));
    }
    return scale;
}

double gw_rounding_floor(const gw_corner_ws *ws)
{
    double stiffest = 0.0;
    for (int j = 0; j < ws->n_links; j++)
        for (int i = 0; i < 3; i++) {
            stiffest = fmax(stiffest, ws->link[j].law.k[i]);
            stiffest = fmax(stiffest, ws->link[j].law.c[i]);
        }
    return 32.0 * DBL_EPSILON * stiffest;
}

/* Where a point goes along the screw of a twist: J(phi) v with J the left Jacobian of SO(3). */
static gw_vec3 screw_shift(gw_vec3 v, gw_vec3 phi)
{
    double t2 = gw_dot(phi, phi), t = sqrt(t2), a, b;
    if (t2 < 1e-6) {
        a = 0.5 - t2 / 24.0;
        b = 1.0 / 6.0 - t2 / 120.0;
    } else {
        a = (1.0 - cos(t)) / t2;
        b = (t - sin(t)) / (t2 * t);
    }
    gw_vec3 w = gw_cross(phi, v);
    return gw_add(gw_axpy(v, a, w), gw_scale(b, gw_cross(phi, w)));
}

void gw_move_body(gw_pose *pose, const double twist[6], double s)
{
    gw_vec3 v = gw_v3(s * twist[0], s * twist[1], s * twist[2]);
    gw_vec3 phi = gw_v3(s * twist[3], s * twist[4], s * twist[5]);
    gw_mat3 turn = gw_rot_exp(phi);
    pose->r = gw_matmul(&turn, &pose->r);
    pose->p = gw_add(gw_mul(&turn, pose->p), screw_shift(v, phi));
}

void gw_look_for_largest(const gw_system *s, gw_largest_step *out)
{
    for (int b = 1; b < s->n; b++) {
        const double *x = s->step[b];
        out->move = fmax(out->move, gw_norm(gw_v3(x[0], x[1], x[2])));
        out->turn = fmax(out->turn, gw_norm(gw_v3(x[3], x[4], x[5])));
    }
}

double gw_step_factor(const gw_largest_step *of)
{
    return fmin(1.0, fmin(LARGEST_TURN / fmax(of->turn, DBL_MIN), LARGEST_MOVE / fmax(of->move, DBL_MIN)));
}

/* Largest movement of any body in the step, and the factor that bounds it. */
static double step_size(const gw_system *s, double *factor)
{
    gw_largest_step largest = { 0 };
    gw_look_for_largest(s, &largest);
    *factor = gw_step_factor(&largest);
    return fmax(largest.move, largest.turn);
}

static double spring_rate(const gw_corner *corner, int wheel)
{
    return wheel == GW_LEFT_WHEEL ? corner->spring.rate : corner->right_spring.rate;
}

void gw_springs_follow(const gw_corner_ws *ws, gw_state *state, const gw_state *from, gw_drive drive)
{
    const double force[GW_WHEELS] = { from->spring_force, from->right_spring_force };
    const double length[GW_WHEELS] = { from->spring_length, from->right_spring_length };
    for (int w = 0; w < ws->n_wheels; w++) {
        double now = *gw_spring_length_of(state, w) = gw_spring_length(ws, state, w);
        if (drive != GW_AT_TRAVEL)
            *gw_spring_force_of(state, w) = force[w] + spring_rate(ws->corner, w) * (length[w] - now);
    }
}

static void take_step(gw_corner_ws *ws, gw_state *state, gw_drive drive, double factor)
{
    for (int b = 1; b < ws->system.n; b++) gw_move_body(&state->pose[b], ws->system.step[b], factor);
    gw_springs_follow(ws, state, &ws->reference, drive);
    for (int w = 0; w < ws->n_wheels; w++) {
        double by = factor * ws->system.border_step[w];
        if (drive == GW_AT_TRAVEL) *gw_spring_force_of(state, w) += by;
        if (drive == GW_LIFTED) gw_load_on(state, w)->patch_force.z += by;
    }
}

/* Of the angle that a rotation turns by. */
static double cosine_of(const gw_mat3 *r)
{
    return 0.5 * (r->m[0][0] + r->m[1][1] + r->m[2][2] - 1.0);
}

static bool is_torn(const gw_corner_ws *ws, const gw_state *state)
{
    for (int b = 1; b < ws->system.n; b++)
        if (cosine_of(&state->pose[b].r) < cos(TORN)) return true;
    return false;
}

bool gw_turn_is_usual(const gw_corner_ws *ws, const gw_state *from, const gw_state *to)
{
    for (int w = 0; w < ws->n_wheels; w++) {
        int upright = ws->wheel[w].upright;
        gw_mat3 turn = gw_matmul_nt(&to->pose[upright].r, &from->pose[upright].r);
        if (!(cosine_of(&turn) >= cos(USUAL_TURN))) return false;
    }
    return true;
}

bool gw_step_is_usual(const gw_corner_ws *ws, const gw_state *from, const gw_state *to)
{
    return to->iterations <= USUAL_ITERATIONS && gw_turn_is_usual(ws, from, to);
}

static void finish(gw_corner_ws *ws, gw_state *state, gw_drive drive, gw_imbalance left, int iterations)
{
    state->residual = left.force;
    state->iterations = iterations;
    for (int w = 0; w < ws->n_wheels && drive == GW_ON_SPRING; w++) {
        const gw_wheel_ws *wheel = &ws->wheel[w];
        gw_load_on(state, w)->travel =
            gw_point_now(&state->pose[wheel->upright], wheel->hub).z - wheel->hub.z;
    }
}

gw_balance_goal gw_balance_goal_make(double largest_load, double floor)
{
    return (gw_balance_goal){ RESIDUAL * largest_load, floor };
}

bool gw_balance_is_met(const gw_balance_goal *g, const gw_imbalance *left, double last_step)
{
    const double enough = g->floor + g->tolerance;
    bool balanced =
        left->force <= g->tolerance && left->moment <= ARM * g->tolerance && left->border <= BORDER;
    bool settled =
        last_step <= SETTLED && left->force <= enough && left->moment <= enough && left->border <= 1e-11;
    return balanced || settled;
}

/* The system holds the tangent of this state, its members eliminated. */
static gw_status accept(gw_corner_ws *ws, const gw_state *state, gw_drive drive, bool condensed,
                        gw_error *err)
{
    if (is_torn(ws, state))
        return gw_fail(err, GW_E_NUMERIC, "the %s %s leaves its linkage under this load", ws->corner->name,
                       gw_corner_or_axle(ws));
    if (!condensed || !gw_balance_stands(ws, state, drive))
        return gw_fail(err, GW_E_NUMERIC,
                       "the %s %s gives way under this load: its joints are too soft to hold it in place",
                       ws->corner->name, gw_corner_or_axle(ws));
    return GW_OK;
}

static gw_status no_stiffness(const gw_corner_ws *ws, gw_error *err)
{
    return gw_fail(err, GW_E_NUMERIC,
                   "the %s %s has no stiffness left in some direction: check rates, joints and "
                   "that the spring carries the wheel",
                   ws->corner->name, gw_corner_or_axle(ws));
}

static gw_status no_balance(const gw_corner_ws *ws, gw_error *err)
{
    return gw_fail(err, GW_E_NUMERIC,
                   "the %s %s found no equilibrium in %d steps: the load or the travel is more than it "
                   "can carry",
                   ws->corner->name, gw_corner_or_axle(ws), MAX_ITERATIONS);
}

/* A step so small that a balance stands or falls alike on both sides of it: of the bodies, and of the forces
 * that the borders stand for, which are in the tangent too. */
static bool is_small(const gw_corner_ws *ws, double step, double tolerance)
{
    for (int w = 0; w < ws->n_wheels; w++)
        if (!(fabs(ws->system.border_step[w]) <= SMALL_STEP / RESIDUAL * tolerance)) return false;
    return step <= SMALL_STEP;
}

/* After a small step the tangent is kept as long as the steps get small quickly; with play, whose tangent
 * changes within a step of its size, after a quick step alone: else a fresh tangent and a kept one may throw
 * the bodies to and fro for ever. */
gw_status gw_newton(gw_corner_ws *ws, gw_state *state, gw_drive drive, bool linear_first, gw_error *err)
{
    const gw_balance_goal wanted = gw_balance_goal_make(load_scale(ws, state), gw_rounding_floor(ws));
    double step = HUGE_VAL, before, factor;
    const bool played = gw_has_play(ws);
    bool kept = false; /* the tangent was solved with already */
    int full = 0;      /* steps with a tangent of their own    */
    gw_imbalance left = gw_assemble(ws, state, drive, linear_first);
    for (int i = 0; i < MAX_ITERATIONS; i++) {
        if (gw_balance_is_met(&wanted, &left, step)) {
            finish(ws, state, drive, left, full);
            return accept(ws, state, drive, kept || gw_system_condense(&ws->system), err);
        }
        before = kept || played ? step : HUGE_VAL;
        if (!(kept ? gw_system_solve_again(&ws->system) : gw_system_solve(&ws->system)))
            return no_stiffness(ws, err);
        full += !kept;
        step = step_size(&ws->system, &factor);
        take_step(ws, state, drive, factor);
        kept = is_small(ws, step, wanted.tolerance) && step <= QUICKER * before &&
               !((linear_first || played) && i == 0);
        left = kept ? gw_assemble_forces(ws, state, drive) : gw_assemble(ws, state, drive, false);
    }
    return no_balance(ws, err);
}

static bool solve_lent(gw_corner_ws *ws, const gw_kept_system *lent)
{
    gw_kept_system own;
    gw_system_borrow(&ws->system, lent, &own);
    bool solved = gw_system_solve_again(&ws->system);
    gw_system_give_back(&ws->system, &own);
    return solved;
}

gw_status gw_newton_once(gw_corner_ws *ws, gw_state *state, gw_drive drive, const gw_kept_system *lent)
{
    double factor;
    const bool borrows = gw_system_can_borrow(&ws->system, lent);
    gw_imbalance left = borrows ? gw_assemble_forces(ws, state, drive) : gw_assemble(ws, state, drive, false);
    if (!(borrows ? solve_lent(ws, lent) : gw_system_solve(&ws->system))) return GW_E_NUMERIC;
    step_size(&ws->system, &factor);
    take_step(ws, state, drive, factor);
    finish(ws, state, drive, left, 1);
    return GW_OK;
}
