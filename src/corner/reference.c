/* SPDX-License-Identifier: MIT */
/* Opening a corner: joints made ready, S0 solved without and with the parts that move points, wheel set. */
#include "corner/workspace.h"

#include <stdlib.h>
#include <string.h>

double gw_corner_static_camber(const gw_corner_ws *ws)
{
    return ws->wheel[GW_LEFT_WHEEL].static_camber;
}

double gw_corner_static_camber_of(const gw_corner_ws *ws, gw_wheel_side side)
{
    return ws->wheel[side].static_camber;
}

gw_corner_setting gw_corner_as_fitted(const gw_corner_ws *ws)
{
    return ws->wheel[GW_LEFT_WHEEL].setting;
}

const gw_state *gw_corner_reference(const gw_corner_ws *ws)
{
    return &ws->reference;
}

static void make_link(const gw_corner_ws *ws, const gw_joint *joint, const gw_fit *fit, gw_link *link)
{
    link->a = joint->body_a;
    link->b = joint->body_b;
    link->frame = joint->frame;
    link->at = gw_sub(joint->at, ws->datum);
    link->pa = gw_sub(fit->point_a, ws->datum);
    link->pb = gw_sub(fit->point_b, ws->datum);
    link->law = joint->bracket > 0.0 ? gw_bush_law_on_bracket(&fit->law, joint->bracket) : fit->law;
    link->hand = gw_hand(&joint->frame);
    link->linear = gw_bush_law_is_linear(&link->law);
    link->curved_turn = gw_bush_turns_by_curves(&link->law);
    link->turns_freely = link->law.c[0] == 0.0 && link->law.c[1] == 0.0 && link->law.c[2] == 0.0;
}

static void make_wheel(gw_corner_ws *ws, int w)
{
    const gw_corner *corner = ws->corner;
    const gw_spring *spring = w == GW_LEFT_WHEEL ? &corner->spring : &corner->right_spring;
    gw_wheel_ws *wheel = &ws->wheel[w];
    wheel->upright = w == GW_LEFT_WHEEL ? GW_UPRIGHT : corner->right_upright;
    wheel->hub = gw_sub(gw_mirror(w, corner->wheel.centre), ws->datum);
    wheel->patch = gw_sub(wheel->hub, gw_v3(0, 0, corner->wheel.loaded_radius));
    wheel->spring_body = spring->body;
    wheel->spring_at = gw_sub(spring->at, ws->datum);
    wheel->spring_to = gw_sub(spring->to, ws->datum);
}

static gw_status make_ready(gw_corner_ws *ws, const gw_fit *fit, gw_error *err)
{
    const gw_corner *corner = ws->corner;
    size_t joints = (size_t)corner->n_joints;
    size_t holds = (ws->bare ? 1 : 3) * (size_t)corner->n_bodies; /* spins of links alone, or of any body */
    ws->datum = corner->wheel.centre;
    ws->n_wheels = gw_is_pair(corner) ? 2 : 1;
    for (int w = 0; w < ws->n_wheels; w++) make_wheel(ws, w);
    ws->link = gw_arena_alloc(&ws->arena, joints + holds, sizeof *ws->link);
    ws->strain0 = gw_arena_alloc(&ws->arena, joints, sizeof *ws->strain0);
    ws->strain = gw_arena_alloc(&ws->arena, joints + holds, sizeof *ws->strain);
    if (!ws->link || !ws->strain0 || !ws->strain || gw_state_in_arena(ws, &ws->reference) != GW_OK ||
        gw_state_in_arena(ws, &ws->work) != GW_OK || gw_state_in_arena(ws, &ws->resume) != GW_OK ||
        gw_state_in_arena(ws, &ws->unmoved) != GW_OK)
        return gw_fail(err, GW_E_NOMEM, "out of memory for the %s corner", corner->name);
    for (int j = 0; j < corner->n_joints; j++) make_link(ws, &corner->joints[j], &fit[j], &ws->link[j]);
    ws->n_links = corner->n_joints;
    return GW_OK;
}

/* Joints with the share `part` of what was fitted: 0 is the design geometry, 1 the parts as they are. */
static void shift_points(gw_corner_ws *ws, const gw_fit *fit, double part)
{
    for (int j = 0; j < ws->corner->n_joints; j++) {
        gw_link *link = &ws->link[j];
        gw_vec3 a = gw_sub(gw_sub(fit[j].point_a, ws->datum), link->at);
        gw_vec3 b = gw_sub(gw_sub(fit[j].point_b, ws->datum), link->at);
        link->pa = gw_axpy(link->at, part, a);
        link->pb = gw_axpy(link->at, part, b);
    }
}

/* Some mm of misfit in a stiff bush: the first step takes the tangent without the misfit's own forces. */
static gw_status solve_reference(gw_corner_ws *ws, const gw_fit *fit, double shift, gw_error *err)
{
    gw_status status = GW_OK;
    for (int parts = 1; parts <= 64; parts *= 8) {
        gw_state_at_design(ws, &ws->work);
        gw_state_copy(&ws->resume, &ws->work, ws->system.n);
        gw_shut_play(ws, 1.0);
        for (int i = 1; i <= parts; i++) {
            double part = (double)i / parts;
            shift_points(ws, fit, part * shift);
            ws->work.load = (gw_corner_load){ .patch_force = { 0, 0, part * ws->corner->wheel.static_load } };
            ws->work.right_load = ws->work.load;
            status = gw_newton(ws, &ws->work, GW_AT_TRAVEL, i == 1, err);
            if (status == GW_OK && !gw_step_is_usual(ws, &ws->resume, &ws->work))
                status = gw_fail(err, GW_E_NUMERIC, "the %s %s would snap over under its static load",
                                 ws->corner->name, gw_corner_or_axle(ws));
            if (status != GW_OK) break;
            gw_state_copy(&ws->resume, &ws->work, ws->system.n);
        }
        if (status == GW_OK && gw_has_play(ws)) status = gw_open_play(ws, GW_AT_TRAVEL, err);
        if (status == GW_OK) break;
    }
    gw_shut_play(ws, 0.0);
    if (status == GW_E_NUMERIC) {
        gw_state_at_design(ws, &ws->work);
        gw_name_the_softest(ws, &ws->work, err);
    }
    return status;
}

/* From S0 of a corner that differs little. */
static bool reference_near(gw_corner_ws *ws, const gw_fit *fit, double shift, const gw_state *near,
                           const gw_kept_system *lent)
{
    if (!ws->once && gw_has_play(ws)) return false;
    shift_points(ws, fit, shift);
    gw_state_copy(&ws->work, near, ws->system.n);
    ws->work.load = (gw_corner_load){ .patch_force = { 0, 0, ws->corner->wheel.static_load } };
    ws->work.right_load = ws->work.load;
    gw_springs_follow(ws, &ws->work, &ws->reference, GW_AT_TRAVEL);
    if (ws->once) return gw_newton_once(ws, &ws->work, GW_AT_TRAVEL, lent) == GW_OK;
    return gw_newton(ws, &ws->work, GW_AT_TRAVEL, false, NULL) == GW_OK &&
           gw_step_is_usual(ws, near, &ws->work);
}

static bool is_shifted(const gw_corner *corner, const gw_fit *fit)
{
    for (int j = 0; j < corner->n_joints; j++)
        if (gw_norm(gw_sub(fit[j].point_a, corner->joints[j].at)) > 0.0 ||
            gw_norm(gw_sub(fit[j].point_b, corner->joints[j].at)) > 0.0)
            return true;
    return false;
}

/* The wheel as set on the ramp at the S0 in ws->work, turned back into the upright's design frame. */
static void set_wheel(gw_corner_ws *ws, int w, double camber, double toe)
{
    gw_wheel_ws *wheel = &ws->wheel[w];
    wheel->upright0 = gw_mirror_turn(w, &ws->work.pose[wheel->upright].r);
    wheel->axis_body = gw_mul_t(&wheel->upright0, gw_axis_from_camber_toe(camber, toe));
    wheel->static_camber = camber;
}

static void read_setting(gw_corner_ws *ws, int w)
{
    gw_wheel_ws *wheel = &ws->wheel[w];
    gw_mat3 r = gw_mirror_turn(w, &ws->work.pose[wheel->upright].r);
    gw_vec3 axis = gw_mul(&r, wheel->axis_body);
    gw_mat3 since = gw_matmul_nt(&r, &wheel->upright0);
    wheel->setting.camber = gw_camber_of_axis(axis);
    wheel->setting.toe = gw_toe_of_axis(axis);
    wheel->setting.caster_change = -gw_rot_log(&since).y;
}

/* Small motions are those about S0 where a bush was measured; held spins are no bushes. */
static void settle_tangents(gw_corner_ws *ws)
{
    for (int j = 0; j < ws->n_links; j++) {
        static const double NOTHING[3] = { 0 };
        bool joint = j < ws->corner->n_joints;
        ws->link[j].at_rest = gw_bush_tangent_at(&ws->link[j].law, joint ? ws->strain0[j].u : NOTHING,
                                                 joint ? ws->strain0[j].theta : NOTHING);
    }
}

/* The very same bushes. What a law has besides its numbers are curves, which then are the same ones. */
static bool same_laws(const gw_corner_ws *ws, const gw_corner_ws *like)
{
    for (int j = 0; j < ws->corner->n_joints; j++)
        if (memcmp(&ws->link[j].law, &like->link[j].law, sizeof ws->link[j].law) != 0) return false;
    return true;
}

/* Of the same corner with the same bushes, wherever its parts are moved to. */
static bool unmoved_alike(gw_corner_ws *ws, const gw_fit *fit, const gw_corner_ws *near)
{
    if (near->corner != ws->corner || near->once || !same_laws(ws, near)) return false;
    shift_points(ws, fit, 0.0);
    gw_state_copy(&ws->work, &near->unmoved, ws->system.n);
    return true;
}

/* The matrix is that of the parts as they are: it serves here where no part moves a point. */
static gw_status find_unmoved(gw_corner_ws *ws, const gw_fit *fit, const gw_corner_ws *near, gw_error *err)
{
    const gw_kept_system *lent = is_shifted(ws->corner, fit) || !near ? NULL : near->lent;
    if (near && (unmoved_alike(ws, fit, near) || reference_near(ws, fit, 0.0, &near->unmoved, lent)))
        return GW_OK;
    return solve_reference(ws, fit, 0.0, err);
}

static gw_status find_reference(gw_corner_ws *ws, const gw_fit *fit, const gw_corner_ws *near, gw_error *err)
{
    const gw_wheel *wheel = &ws->corner->wheel;
    gw_status status = find_unmoved(ws, fit, near, err);
    if (status != GW_OK) return status;
    gw_state_copy(&ws->unmoved, &ws->work, ws->system.n);
    for (int w = 0; w < ws->n_wheels; w++) {
        set_wheel(ws, w, wheel->static_camber, wheel->static_toe);
        ws->wheel[w].setting = (gw_corner_setting){ wheel->static_camber, wheel->static_toe, 0.0 };
    }
    if (is_shifted(ws->corner, fit)) {
        if (!near || !reference_near(ws, fit, 1.0, &near->reference, near->lent))
            status = solve_reference(ws, fit, 1.0, err);
        if (status != GW_OK) return status;
        for (int w = 0; w < ws->n_wheels; w++) {
            read_setting(ws, w);
            set_wheel(ws, w, ws->wheel[w].setting.camber, wheel->static_toe);
        }
    }
    gw_state_copy(&ws->reference, &ws->work, ws->corner->n_bodies);
    for (int j = 0; j < ws->corner->n_joints; j++)
        gw_link_strain(&ws->link[j], ws->reference.pose, &ws->strain0[j]);
    settle_tangents(ws);
    return GW_OK;
}

/* A copy of a corner's description has the same joints. */
static bool same_corner(const gw_corner *a, const gw_corner *b)
{
    return a->joints == b->joints && a->n_joints == b->n_joints && a->n_bodies == b->n_bodies &&
           memcmp(&a->wheel, &b->wheel, sizeof a->wheel) == 0 &&
           memcmp(&a->spring, &b->spring, sizeof a->spring) == 0 &&
           memcmp(&a->right_spring, &b->right_spring, sizeof a->right_spring) == 0;
}

/* Which rates are none, and so what is free: as in another corner with the same joints in the same places. */
static bool same_freedom(const gw_corner_ws *ws, const gw_corner_ws *like)
{
    if (!like || like->bare || !same_corner(ws->corner, like->corner)) return false;
    for (int j = 0; j < ws->corner->n_joints; j++) {
        const gw_link *a = &ws->link[j], *b = &like->link[j];
        for (int i = 0; i < 3; i++)
            if ((a->law.k[i] == 0.0) != (b->law.k[i] == 0.0) || (a->law.c[i] == 0.0) != (b->law.c[i] == 0.0))
                return false;
        if (a->law.loosened != b->law.loosened || memcmp(&a->pa, &b->pa, sizeof a->pa) != 0 ||
            memcmp(&a->pb, &b->pb, sizeof a->pb) != 0)
            return false;
    }
    return true;
}

static void take_freedom(gw_corner_ws *ws, const gw_corner_ws *like)
{
    const int joints = ws->corner->n_joints;
    for (int j = joints; j < like->n_links; j++) ws->link[j] = like->link[j];
    ws->n_links = like->n_links;
    ws->n_warnings = like->n_warnings;
    memcpy(ws->warning, like->warning, sizeof ws->warning);
}

static gw_status copy_shares(gw_corner_ws *ws, const gw_corner_ws *like, int w, gw_error *err)
{
    const size_t joints = (size_t)ws->corner->n_joints;
    gw_wheel_ws *to = &ws->wheel[w];
    const gw_wheel_ws *from = &like->wheel[w];
    *to = *from;
    to->unit_toe = gw_arena_alloc(&ws->arena, joints, sizeof *to->unit_toe);
    to->unit_camber = gw_arena_alloc(&ws->arena, joints, sizeof *to->unit_camber);
    if (!to->unit_toe || !to->unit_camber)
        return gw_fail(err, GW_E_NOMEM, "out of memory for the %s corner", ws->corner->name);
    memcpy(to->unit_toe, from->unit_toe, joints * sizeof *to->unit_toe);
    memcpy(to->unit_camber, from->unit_camber, joints * sizeof *to->unit_camber);
    return GW_OK;
}

/* S0 and what is made of it. */
static gw_status take_reference(gw_corner_ws *ws, const gw_corner_ws *like, gw_error *err)
{
    gw_status status = GW_OK;
    gw_state_copy(&ws->reference, &like->reference, ws->corner->n_bodies);
    gw_state_copy(&ws->unmoved, &like->unmoved, ws->corner->n_bodies);
    memcpy(ws->strain0, like->strain0, (size_t)ws->corner->n_joints * sizeof *ws->strain0);
    for (int j = 0; j < ws->n_links; j++) ws->link[j].at_rest = like->link[j].at_rest;
    for (int w = 0; w < ws->n_wheels && status == GW_OK; w++) status = copy_shares(ws, like, w, err);
    return status;
}

static gw_status open_cold(gw_corner_ws *ws, const gw_fit *fit, gw_error *err)
{
    gw_status status = find_reference(ws, fit, NULL, err);
    if (status == GW_OK) status = gw_check_rounding(ws, err);
    if (status == GW_OK) status = gw_linear_shares(ws, err);
    return status;
}

gw_status gw_corner_open_like(const gw_corner *corner, const gw_fit *fit, const gw_corner_ws *like,
                              gw_corner_ws **out, gw_error *err)
{
    *out = NULL;
    gw_corner_ws *ws = calloc(1, sizeof *ws);
    if (!ws) return gw_fail(err, GW_E_NOMEM, "out of memory for the %s corner", corner->name);
    ws->corner = corner;
    gw_status status = make_ready(ws, fit, err);
    bool alike = status == GW_OK && same_freedom(ws, like);
    if (status == GW_OK && alike) take_freedom(ws, like);
    if (status == GW_OK && !alike) status = gw_freedom_settle(ws, err);
    if (status == GW_OK) status = gw_system_build(ws, like, err);
    if (status == GW_OK)
        status = alike && same_laws(ws, like) ? take_reference(ws, like, err) : open_cold(ws, fit, err);
    if (status != GW_OK) {
        gw_corner_close(ws);
        return status;
    }
    *out = ws;
    return GW_OK;
}

gw_status gw_corner_open(const gw_corner *corner, const gw_fit *fit, gw_corner_ws **out, gw_error *err)
{
    return gw_corner_open_like(corner, fit, NULL, out, err);
}

/* What a draw cannot change is not looked at again; links held otherwise than by their joints are rare. */
static gw_status open_near(gw_corner_ws *ws, const gw_fit *fit, const gw_corner_ws *near, gw_nearness how)
{
    ws->bare = true;
    ws->once = how == GW_NEAR_ONCE;
    gw_status status = make_ready(ws, fit, NULL);
    if (status != GW_OK) return status;
    gw_freedom_hold_links(ws);
    if (ws->n_links != near->n_links) return GW_E_MECHANISM;
    status = gw_system_build(ws, near, NULL);
    return status == GW_OK ? find_reference(ws, fit, near, NULL) : status;
}

gw_status gw_corner_open_near(const gw_corner *corner, const gw_fit *fit, const gw_corner_ws *near,
                              gw_nearness how, gw_corner_ws **out, gw_error *err)
{
    *out = NULL;
    gw_corner_ws *ws = calloc(1, sizeof *ws);
    if (!ws) return gw_fail(err, GW_E_NOMEM, "out of memory for the %s corner", corner->name);
    ws->corner = corner;
    gw_status status = open_near(ws, fit, near, how);
    if (status == GW_OK) {
        *out = ws;
        return GW_OK;
    }
    gw_corner_close(ws);
    if (status == GW_E_NOMEM) return gw_fail(err, status, "out of memory for the %s corner", corner->name);
    return gw_corner_open(corner, fit, out, err);
}

void gw_corner_close(gw_corner_ws *ws)
{
    if (!ws) return;
    gw_arena_free(&ws->arena);
    free(ws);
}
