/* SPDX-License-Identifier: MIT */
/* Friction at the wheel: two solutions of the linear corner, at rest and along its travel. */
#include "giveway/corner_friction.h"

#include "corner/dense.h"
#include "corner/workspace.h"

#include <math.h>
#include <string.h>

enum { PASSES = 30 };

/* Along a line from a body to the chassis: the row that gives its shortening at `at`. */
static void line_row(gw_vec3 at, gw_vec3 to, double row[6])
{
    gw_vec3 line = gw_sub(at, to), along = gw_scale(1.0 / gw_norm(line), line), lever = gw_cross(at, along);
    const double r[6] = { along.x, along.y, along.z, lever.x, lever.y, lever.z };
    memcpy(row, r, sizeof r);
}

static double dot_body(const gw_dense *d, int body, const double row[6])
{
    double sum = 0.0;
    for (int i = 0; body != GW_CHASSIS && i < 6; i++) sum += row[i] * d->x[6 * (body - 1) + i];
    return sum;
}

/* At rest the spring's force is the unknown, in a last column; on the path the vertical load is. A last row
 * holds the wheel centre's travel. An axle has two of each, and both wheels move alike. */
static void put_wheel(const gw_corner_ws *ws, bool rest, int w, double scale, gw_dense *d)
{
    const gw_wheel_ws *wheel = &ws->wheel[w];
    int last = d->n - ws->n_wheels + w, body = 6 * (wheel->spring_body - 1),
        upright = 6 * (wheel->upright - 1);
    const double up[6] = { 0, 0, 1, wheel->hub.y, -wheel->hub.x, 0 }, weight = ws->corner->wheel.static_load;
    double spring[6];
    line_row(wheel->spring_at, wheel->spring_to, spring);
    for (int i = 0; i < 6; i++) {
        if (rest) *gw_dense_at(d, body + i, last) = scale * spring[i];
        for (int j = 0; !rest && j < 6; j++)
            *gw_dense_at(d, body + i, body + j) += ws->corner->spring.rate * spring[i] * spring[j];
        if (!rest) *gw_dense_at(d, upright + i, last) = scale * up[i];
        *gw_dense_at(d, last, upright + i) = scale * up[i];
        if (rest) d->rhs[upright + i] = weight * up[i];
    }
    if (!rest) d->rhs[last] = scale;
}

static gw_status solve(const gw_corner_ws *ws, bool rest, gw_dense *d, gw_error *err)
{
    double scale = gw_linear_stiffness(ws, d);
    for (int w = 0; w < ws->n_wheels; w++) put_wheel(ws, rest, w, scale, d);
    bool solved = gw_dense_factor(d);
    if (solved) gw_dense_solve(d);
    for (int i = 0; solved && i < d->n; i++) solved = isfinite(d->x[i]);
    if (solved) return GW_OK;
    return gw_fail(err, GW_E_NUMERIC,
                   "the %s corner: the spring does not carry the wheel, so its travel cannot be set",
                   ws->corner->name);
}

/* Deflection and rotation of a joint in its frame. */
static void strain_of(const gw_corner_ws *ws, const gw_dense *d, int joint, double strain[6])
{
    const gw_link *link = &ws->link[joint];
    double b[6][6];
    gw_link_jacobian(&link->frame, link->at, b);
    for (int i = 0; i < 6; i++) strain[i] = dot_body(d, link->b, b[i]) - dot_body(d, link->a, b[i]);
}

static bool slips_about(const gw_slider *slider, int axis)
{
    return slider->all_axes || axis == 2;
}

static double strength_of(const gw_corner_ws *ws, const gw_dense *d, int joint)
{
    const gw_bush_law *law = &ws->link[joint].law;
    double u[6], radial = 0.0;
    strain_of(ws, d, joint, u);
    for (int i = 0; i < 2; i++) radial += law->k[i] * u[i] * law->k[i] * u[i];
    double axial = law->slider.radial_only ? 0.0 : law->k[2] * u[2];
    return law->slider.torque + law->slider.per_force * sqrt(radial + axial * axial);
}

/* A spin that a hold keeps is free: how fast it goes is where its sliders lose least. `theta` of each joint
 * follows. */
static void settle_spin(const gw_corner_ws *ws, const gw_link *hold, const double *strength,
                        double (*theta)[3])
{
    gw_vec3 axis = gw_col(&hold->frame, 2);
    double above = 0.0, below = 0.0;
    for (int pass = 0; pass < 2; pass++)
        for (int j = 0; j < ws->corner->n_joints; j++) {
            const gw_link *link = &ws->link[j];
            double sign = (link->b == hold->b) - (link->a == hold->b);
            for (int i = 0; sign != 0.0 && i < 3; i++) {
                double g = sign * gw_dot(gw_col(&link->frame, i), axis);
                if (pass == 1) {
                    theta[j][i] -= below > 0.0 ? g * above / below : 0.0;
                } else if (slips_about(&link->law.slider, i)) {
                    above += strength[j] * g * theta[j][i];
                    below += strength[j] * g * g;
                }
            }
        }
}

/* Turning of each joint's slider along the path; about other axes 0. */
static void find_turns(const gw_corner_ws *ws, const gw_dense *d, const double *strength, double (*turn)[3])
{
    for (int j = 0; j < ws->corner->n_joints; j++) {
        double strain[6];
        strain_of(ws, d, j, strain);
        memcpy(turn[j], strain + 3, sizeof turn[j]);
    }
    for (int pass = 0; pass < PASSES; pass++) /* spins that share a joint settle together */
        for (int h = ws->corner->n_joints; h < ws->n_links; h++)
            settle_spin(ws, &ws->link[h], strength, turn);
    for (int j = 0; j < ws->corner->n_joints; j++)
        for (int i = 0; i < 3; i++)
            if (!slips_about(&ws->link[j].law.slider, i)) turn[j][i] = 0.0;
}

static double size_of(const double turn[3])
{
    return sqrt(turn[0] * turn[0] + turn[1] * turn[1] + turn[2] * turn[2]);
}

/* Of an axle both wheels bear it, half each. */
static void add_part(const gw_corner_ws *ws, gw_friction *f, int joint, double strength, double way,
                     const double turn[3])
{
    double wheel = strength * way / ws->n_wheels;
    if (!(strength > 0.0)) return;
    f->part[f->n++] = (gw_friction_part){ joint, strength, way, { turn[0], turn[1], turn[2] }, wheel };
    f->wheel += wheel;
}

/* Its lengthening. */
static double damper_way(const gw_corner_ws *ws, const gw_damper *damper, const gw_dense *d)
{
    double row[6];
    line_row(gw_sub(damper->at, ws->datum), gw_sub(damper->to, ws->datum), row);
    return dot_body(d, damper->body, row);
}

static void add_damper(const gw_corner_ws *ws, const gw_dense *d, gw_friction *f)
{
    const gw_corner *c = ws->corner;
    double longer[3] = { 0 };
    if (!c->damper.present) return;
    longer[0] = damper_way(ws, &c->damper, d);
    if (ws->n_wheels > 1) longer[1] = damper_way(ws, &c->right_damper, d);
    add_part(ws, f, -1, c->damper.friction, fabs(longer[0]) + fabs(longer[1]), longer);
}

gw_status gw_corner_friction(const gw_corner_ws *ws, gw_friction *out, gw_error *err)
{
    gw_dense rest, path;
    gw_friction f = { 0 };
    double strength[GW_MAX_JOINTS], turn[GW_MAX_JOINTS][3];
    int n = 6 * (ws->corner->n_bodies - 1) + ws->n_wheels;
    gw_status status = GW_OK;
    bool room = gw_dense_open(&rest, n);
    room = gw_dense_open(&path, n) && room;
    if (!room) status = gw_fail(err, GW_E_NOMEM, "out of memory for the %s corner", ws->corner->name);
    if (status == GW_OK) status = solve(ws, true, &rest, err);
    if (status == GW_OK) status = solve(ws, false, &path, err);
    if (status == GW_OK) {
        for (int j = 0; j < ws->corner->n_joints; j++) strength[j] = strength_of(ws, &rest, j);
        find_turns(ws, &path, strength, turn);
        for (int j = 0; j < ws->corner->n_joints; j++)
            add_part(ws, &f, j, strength[j], size_of(turn[j]), turn[j]);
        add_damper(ws, &path, &f);
        *out = f;
    }
    gw_dense_close(&rest);
    gw_dense_close(&path);
    return status;
}
