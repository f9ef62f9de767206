/* SPDX-License-Identifier: MIT */
/*
 * The linear corner: small displacements about the design position, no preload stiffness; measured bushes
 * enter with their tangent at S0. Here it answers one question, once a corner: what does each bush feel under
 * a unit moment conjugate to toe, or to camber?
 *
 * With K the stiffness, b the row that gives the spring's length, c the row that gives the wheel's travel and
 * t the derivative of toe with the twist of the upright, solve
 *     K y + rho c = t,   b . y = 0.
 * For any equilibrium q of the linear corner then t . q = sum over bushes (f, m)(y) . (u, theta)(q)
 * + rho travel: the virtual work by which toe is shared out.
 */
#include "corner/dense.h"
#include "corner/workspace.h"

#include <string.h>

static void add_block(gw_dense *d, int row, int col, double s, double k[6][6])
{
    if (row == GW_CHASSIS || col == GW_CHASSIS) return;
    for (int i = 0; i < 6; i++)
        for (int j = 0; j < 6; j++) *gw_dense_at(d, 6 * (row - 1) + i, 6 * (col - 1) + j) += s * k[i][j];
}

/* Rows of the joint's strain along the axes of its tangent at S0. */
static void rows_of(const gw_link *link, double b[6][6])
{
    gw_link_jacobian(&link->frame, link->at, b);
    gw_bush_turn_rows(&link->at_rest, b);
}

static void add_link(gw_dense *d, const gw_link *link)
{
    double b[6][6], k[6][6];
    const double *rate = link->at_rest.rate;
    rows_of(link, b);
    for (int i = 0; i < 6; i++)
        for (int j = 0; j < 6; j++) {
            k[i][j] = 0.0;
            for (int r = 0; r < 6; r++) k[i][j] += b[r][i] * rate[r] * b[r][j];
        }
    add_block(d, link->b, link->b, 1.0, k);
    add_block(d, link->a, link->a, 1.0, k);
    add_block(d, link->a, link->b, -1.0, k);
    add_block(d, link->b, link->a, -1.0, k);
}

/* The border is scaled to the size of the rates, so that it takes its part in the pivoting. */
static void add_border(const gw_corner_ws *ws, gw_dense *d, int w, double scale)
{
    const gw_wheel_ws *wheel = &ws->wheel[w];
    int last = d->n - ws->n_wheels + w, body = 6 * (wheel->spring_body - 1),
        upright = 6 * (wheel->upright - 1);
    gw_vec3 line = gw_sub(wheel->spring_at, wheel->spring_to), along = gw_scale(1.0 / gw_norm(line), line);
    gw_vec3 lever = gw_cross(wheel->spring_at, along);
    const double row[6] = { along.x, along.y, along.z, lever.x, lever.y, lever.z };
    for (int i = 0; i < 6; i++) *gw_dense_at(d, last, body + i) = scale * row[i];
    *gw_dense_at(d, upright + 2, last) = scale; /* c: a force at the wheel centre, about the datum */
    *gw_dense_at(d, upright + 3, last) = scale * wheel->hub.y;
    *gw_dense_at(d, upright + 4, last) = -scale * wheel->hub.x;
}

double gw_linear_stiffness(const gw_corner_ws *ws, gw_dense *d)
{
    double stiffest = 0.0;
    for (int j = 0; j < ws->n_links; j++) {
        add_link(d, &ws->link[j]);
        for (int i = 0; i < 3; i++) stiffest = fmax(stiffest, ws->link[j].at_rest.rate[i]);
    }
    return stiffest;
}

static gw_status factor(const gw_corner_ws *ws, gw_dense *d, double *scale, gw_error *err)
{
    *scale = gw_linear_stiffness(ws, d);
    for (int w = 0; w < ws->n_wheels; w++) add_border(ws, d, w, *scale);
    if (!gw_dense_factor(d))
        return gw_fail(err, GW_E_NUMERIC,
                       "the %s %s: the spring does not carry the wheel, so its travel cannot be set",
                       ws->corner->name, gw_corner_or_axle(ws));
    return GW_OK;
}

/* Forces and moments in every joint, in the bush frame, for the solution in d->x. */
static void recover(const gw_corner_ws *ws, const gw_dense *d, gw_link_state *out)
{
    for (int j = 0; j < ws->corner->n_joints; j++) {
        const gw_link *link = &ws->link[j];
        double b[6][6], strain[6] = { 0 };
        rows_of(link, b);
        for (int i = 0; i < 6; i++) {
            for (int c = 0; c < 6; c++) {
                if (link->b) strain[i] += b[i][c] * d->x[6 * (link->b - 1) + c];
                if (link->a) strain[i] -= b[i][c] * d->x[6 * (link->a - 1) + c];
            }
        }
        for (int i = 0; i < 6; i++) strain[i] *= link->at_rest.rate[i];
        gw_bush_turn_back(&link->at_rest, strain);
        for (int i = 0; i < 3; i++) {
            out[j].f[i] = strain[i];
            out[j].m[i] = strain[i + 3];
        }
    }
}

/* `moment` in the wheel's own axes; `rho` has an entry a wheel, in units of `scale`. */
static gw_status unit_moment(const gw_corner_ws *ws, gw_dense *d, int w, double scale, gw_vec3 moment,
                             gw_link_state *out, double rho[GW_WHEELS], gw_error *err)
{
    int upright = 6 * (ws->wheel[w].upright - 1);
    gw_vec3 m = gw_mirror_axial(w, moment);
    memset(d->rhs, 0, (size_t)d->n * sizeof *d->rhs);
    d->rhs[upright + 3] = m.x;
    d->rhs[upright + 4] = m.y;
    d->rhs[upright + 5] = m.z;
    gw_dense_solve(d);
    for (int i = 0; i < d->n; i++)
        if (!isfinite(d->x[i]))
            return gw_fail(err, GW_E_NUMERIC,
                           "the %s %s: the spring does not carry the wheel, so its travel cannot be set",
                           ws->corner->name, gw_corner_or_axle(ws));
    for (int v = 0; v < ws->n_wheels; v++) rho[v] = scale * d->x[d->n - ws->n_wheels + v];
    recover(ws, d, out);
    return GW_OK;
}

/* d toe / d phi and d camber / d phi of the wheel axis w: the unit moments. */
static gw_vec3 toe_moment(gw_vec3 w)
{
    double s = w.x * w.x + w.y * w.y;
    return gw_v3(w.x * w.z / s, w.y * w.z / s, -1.0);
}

static gw_vec3 camber_moment(gw_vec3 w)
{
    double s = sqrt(1.0 - w.z * w.z);
    return gw_v3(-w.y / s, w.x / s, 0.0);
}

static gw_status share_wheel(gw_corner_ws *ws, gw_dense *d, int w, double scale, gw_error *err)
{
    gw_wheel_ws *wheel = &ws->wheel[w];
    size_t joints = (size_t)ws->corner->n_joints;
    gw_vec3 axis = gw_axis_from_camber_toe(wheel->static_camber, ws->corner->wheel.static_toe);
    wheel->unit_toe = gw_arena_alloc(&ws->arena, joints, sizeof *wheel->unit_toe);
    wheel->unit_camber = gw_arena_alloc(&ws->arena, joints, sizeof *wheel->unit_camber);
    if (!wheel->unit_toe || !wheel->unit_camber)
        return gw_fail(err, GW_E_NOMEM, "out of memory for the %s corner", ws->corner->name);
    gw_status status =
        unit_moment(ws, d, w, scale, toe_moment(axis), wheel->unit_toe, wheel->reaction_toe, err);
    if (status == GW_OK)
        status = unit_moment(ws, d, w, scale, camber_moment(axis), wheel->unit_camber, wheel->reaction_camber,
                             err);
    return status;
}

gw_status gw_linear_shares(gw_corner_ws *ws, gw_error *err)
{
    gw_dense d;
    gw_status status = GW_OK;
    double scale = 1.0;
    if (!gw_dense_open(&d, 6 * (ws->corner->n_bodies - 1) + ws->n_wheels))
        status = gw_fail(err, GW_E_NOMEM, "out of memory for the %s corner", ws->corner->name);
    if (status == GW_OK) status = factor(ws, &d, &scale, err);
    for (int w = 0; w < ws->n_wheels && status == GW_OK; w++) status = share_wheel(ws, &d, w, scale, err);
    gw_dense_close(&d);
    return status;
}
