/* SPDX-License-Identifier: MIT */
/*
 * Imbalance and tangent of a corner at one state.
 *
 * Every body's rows hold the derivative of the potential with its twist about the datum, less what dead
 * loads and the spring do to it. The border is the extra unknown: the spring's force (GW_AT_TRAVEL), none
 * (GW_ON_SPRING), or the vertical patch load (GW_LIFTED).
 */
#include "corner/workspace.h"

#include <string.h>

typedef struct gw_spring_state {
    gw_vec3 at, along; /**< place on the body; unit direction from chassis to body */
    double length;
} gw_spring_state;

static gw_spring_state spring_state(const gw_corner_ws *ws, const gw_state *state, int w)
{
    const gw_wheel_ws *wheel = &ws->wheel[w];
    gw_spring_state s;
    s.at = gw_point_now(&state->pose[wheel->spring_body], wheel->spring_at);
    gw_vec3 d = gw_sub(s.at, wheel->spring_to);
    s.length = gw_norm(d);
    s.along = gw_scale(1.0 / s.length, d);
    return s;
}

static void add_force(gw_system *s, int body, gw_vec3 f, gw_vec3 at, int column)
{
    gw_vec3 m = gw_cross(at, f);
    const double w[6] = { f.x, f.y, f.z, m.x, m.y, m.z };
    for (int i = 0; i < 6; i++) s->rhs[body][s->n_columns * i + column] += w[i];
}

static void add_wrench(gw_system *system, int body, double s, const gw_wrench *w)
{
    const double v[6] = { w->f.x, w->f.y, w->f.z, w->m.x, w->m.y, w->m.z };
    for (int i = 0; i < 6; i++) system->rhs[body][system->n_columns * i] += s * v[i];
}

static void add_link_forces(gw_corner_ws *ws, const gw_state *state)
{
    for (int j = 0; j < ws->n_links; j++) {
        const gw_link *link = &ws->link[j];
        gw_link_push(link, state->pose, &ws->strain[j]);
        if (link->b != GW_CHASSIS) add_wrench(&ws->system, link->b, -1.0, &ws->strain[j].wrench);
        if (link->a != GW_CHASSIS) add_wrench(&ws->system, link->a, 1.0, &ws->strain[j].wrench);
    }
}

/* With the strains that the forces left. */
static void add_link_tangents(gw_corner_ws *ws, const gw_state *state, bool linear)
{
    gw_system *s = &ws->system;
    for (int j = 0; j < ws->n_links; j++) {
        const gw_link *link = &ws->link[j];
        gw_block to_b, to_a;
        gw_link_tangent(link, state->pose, &ws->strain[j], linear, to_b, to_a);
        if (link->b != GW_CHASSIS) gw_block_axpy(gw_block_at(s, link->b, link->b), 1.0, to_b);
        if (link->a != GW_CHASSIS) gw_block_axpy(gw_block_at(s, link->a, link->a), -1.0, to_a);
        if (link->a != GW_CHASSIS && link->b != GW_CHASSIS) {
            gw_block_axpy(gw_block_at(s, link->b, link->a), 1.0, to_a);
            gw_block_axpy(gw_block_at(s, link->a, link->b), -1.0, to_b);
        }
    }
}

static gw_vec3 patch_now(const gw_corner_ws *ws, const gw_state *state, int w)
{
    return gw_point_now(&state->pose[ws->wheel[w].upright], ws->wheel[w].patch);
}

static gw_vec3 hub_now(const gw_corner_ws *ws, const gw_state *state, int w)
{
    return gw_point_now(&state->pose[ws->wheel[w].upright], ws->wheel[w].hub);
}

static const gw_corner_load *load_on(const gw_state *state, int w)
{
    return w == GW_LEFT_WHEEL ? &state->load : &state->right_load;
}

static void add_load_forces(gw_corner_ws *ws, const gw_state *state, int w)
{
    gw_system *s = &ws->system;
    const gw_corner_load *load = load_on(state, w);
    const int upright = ws->wheel[w].upright;
    add_force(s, upright, gw_mirror(w, load->patch_force), patch_now(ws, state, w), 0);
    add_force(s, upright, gw_mirror(w, load->hub_force), hub_now(ws, state, w), 0);
    const gw_wrench moment = { { 0, 0, 0 }, gw_mirror_axial(w, load->patch_moment) };
    add_wrench(s, upright, 1.0, &moment);
}

/* A dead force keeps its direction, so its moment about the datum changes as its point moves. */
static void add_dead_tangent(gw_system *s, int body, gw_vec3 f, gw_vec3 at)
{
    gw_mat3 sf = gw_skew(f), sx = gw_skew(at), fx = gw_matmul(&sf, &sx);
    double *k = gw_block_at(s, body, body);
    gw_block_add(k, 1, 0, 1.0, &sf);
    gw_block_add(k, 1, 1, -1.0, &fx);
}

static void add_load_tangents(gw_corner_ws *ws, const gw_state *state, int w)
{
    const gw_corner_load *load = load_on(state, w);
    const int upright = ws->wheel[w].upright;
    add_dead_tangent(&ws->system, upright, gw_mirror(w, load->patch_force), patch_now(ws, state, w));
    add_dead_tangent(&ws->system, upright, gw_mirror(w, load->hub_force), hub_now(ws, state, w));
}

static double pushes(const gw_state *state, int w)
{
    return w == GW_LEFT_WHEEL ? state->spring_force : state->right_spring_force;
}

static void add_spring_force(gw_corner_ws *ws, const gw_state *state, int w)
{
    gw_spring_state spring = spring_state(ws, state, w);
    add_force(&ws->system, ws->wheel[w].spring_body, gw_scale(pushes(state, w), spring.along), spring.at, 0);
}

/* d(S n)/dx = S (I - n n^T)/l, less rate n n^T where the spring follows its law. */
static void add_spring_tangent(gw_corner_ws *ws, const gw_state *state, int w, gw_drive drive, bool linear)
{
    gw_system *s = &ws->system;
    int body = ws->wheel[w].spring_body;
    gw_spring_state spring = spring_state(ws, state, w);
    gw_vec3 force = gw_scale(pushes(state, w), spring.along), n = spring.along;
    double across = linear ? 0.0 : pushes(state, w) / spring.length;
    double along = drive == GW_AT_TRAVEL
                       ? 0.0
                       : -(w == GW_LEFT_WHEEL ? ws->corner->spring.rate : ws->corner->right_spring.rate);
    gw_mat3 g = { { { across + (along - across) * n.x * n.x, (along - across) * n.x * n.y,
                      (along - across) * n.x * n.z },
                    { (along - across) * n.y * n.x, across + (along - across) * n.y * n.y,
                      (along - across) * n.y * n.z },
                    { (along - across) * n.z * n.x, (along - across) * n.z * n.y,
                      across + (along - across) * n.z * n.z } } };
    gw_mat3 sx = gw_skew(spring.at), gx = gw_matmul(&g, &sx), xg = gw_matmul(&sx, &g),
            xgx = gw_matmul(&sx, &gx);
    double *k = gw_block_at(s, body, body);
    gw_block_add(k, 0, 0, -1.0, &g);
    gw_block_add(k, 0, 1, 1.0, &gx);
    gw_block_add(k, 1, 0, -1.0, &xg);
    gw_block_add(k, 1, 1, 1.0, &xgx);
    if (linear) return;
    gw_mat3 sf = gw_skew(force), fx = gw_matmul(&sf, &sx);
    gw_block_add(k, 1, 0, 1.0, &sf);
    gw_block_add(k, 1, 1, -1.0, &fx);
}

/* How far the wheel is from where it is wanted. */
static void put_border_rhs(gw_corner_ws *ws, const gw_state *state, int w, gw_drive drive)
{
    double by = hub_now(ws, state, w).z - ws->wheel[w].hub.z;
    ws->system.border_rhs[w] = drive == GW_ON_SPRING ? 0.0 : load_on(state, w)->travel - by;
}

static void put_border(gw_corner_ws *ws, const gw_state *state, int w, gw_drive drive)
{
    gw_system *s = &ws->system;
    const gw_wheel_ws *wheel = &ws->wheel[w];
    double *row = s->border_row[w];
    memset(row, 0, sizeof s->border_row[w]);
    s->border_diag[w] = 1.0;
    if (drive == GW_ON_SPRING) return;
    gw_vec3 hub = hub_now(ws, state, w);
    row[2] = 1.0;
    row[3] = hub.y;
    row[4] = -hub.x;
    s->border_diag[w] = 0.0;
    if (drive == GW_AT_TRAVEL) {
        gw_spring_state spring = spring_state(ws, state, w);
        add_force(s, wheel->spring_body, gw_scale(-1.0, spring.along), spring.at, 1 + w);
    } else {
        add_force(s, wheel->upright, gw_v3(0, 0, -1), patch_now(ws, state, w), 1 + w);
    }
}

void gw_measure(const gw_system *s, bool borders, gw_imbalance *out)
{
    for (int w = 0; w < s->n_wheels && borders; w++)
        out->border = gw_larger(out->border, fabs(s->border_rhs[w]));
    for (int b = 1; b < s->n; b++)
        for (int i = 0; i < 3; i++) {
            out->force = gw_larger(out->force, fabs(s->rhs[b][s->n_columns * i]));
            out->moment = gw_larger(out->moment, fabs(s->rhs[b][s->n_columns * (i + 3)]));
        }
}

static void clear_forces(gw_system *s)
{
    for (int b = 0; b < s->n; b++)
        for (int i = 0; i < 6; i++) s->rhs[b][s->n_columns * i] = 0.0;
}

static void clear_tangents(gw_system *s)
{
    memset(s->block, 0, (size_t)s->n_blocks * sizeof *s->block);
    for (int b = 0; b < s->n; b++)
        for (int i = 0; i < 6; i++)
            for (int w = 0; w < s->n_wheels; w++) s->rhs[b][s->n_columns * i + 1 + w] = 0.0;
}

void gw_assemble_part_forces(gw_corner_ws *ws, const gw_state *state)
{
    clear_forces(&ws->system);
    add_link_forces(ws, state);
    for (int w = 0; w < ws->n_wheels; w++) add_spring_force(ws, state, w);
}

void gw_assemble_part_tangents(gw_corner_ws *ws, const gw_state *state, gw_drive drive)
{
    clear_tangents(&ws->system);
    add_link_tangents(ws, state, false);
    for (int w = 0; w < ws->n_wheels; w++) add_spring_tangent(ws, state, w, drive, false);
}

/* Into right sides that are clear. */
static gw_imbalance add_forces(gw_corner_ws *ws, const gw_state *state, gw_drive drive)
{
    add_link_forces(ws, state);
    for (int w = 0; w < ws->n_wheels; w++) {
        add_load_forces(ws, state, w);
        add_spring_force(ws, state, w);
        put_border_rhs(ws, state, w, drive);
    }
    gw_imbalance left = { 0, 0, 0 };
    gw_measure(&ws->system, true, &left);
    return left;
}

gw_imbalance gw_assemble_forces(gw_corner_ws *ws, const gw_state *state, gw_drive drive)
{
    clear_forces(&ws->system);
    return add_forces(ws, state, drive);
}

gw_imbalance gw_assemble(gw_corner_ws *ws, const gw_state *state, gw_drive drive, bool linear)
{
    clear_forces(&ws->system);
    clear_tangents(&ws->system);
    gw_imbalance left = add_forces(ws, state, drive);
    add_link_tangents(ws, state, linear);
    for (int w = 0; w < ws->n_wheels; w++) {
        if (!linear) add_load_tangents(ws, state, w);
        add_spring_tangent(ws, state, w, drive, linear);
        put_border(ws, state, w, drive);
    }
    return left;
}
