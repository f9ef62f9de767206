/* SPDX-License-Identifier: MIT */
#include "study/read_model.h"

#include "giveway/corner_travel.h"

#include <math.h>

static void take(const gw_corner_result *r, gw_read_changes *out)
{
    out->v[GW_READ_TOE] = r->toe_change;
    out->v[GW_READ_CAMBER] = r->camber_change;
    out->v[GW_READ_CASTER] = r->caster_change;
    out->v[GW_READ_FORE_AFT] = r->wheel_centre.x;
    out->v[GW_READ_LATERAL] = r->wheel_centre.y;
    out->v[GW_READ_WHEEL_RATE] = (double)NAN;
}

static void look(gw_run *run, gw_read_changes *out)
{
    gw_joint_result joints[GW_MAX_JOINTS];
    gw_corner_result result = { .joints = joints };
    gw_corner_report(run->ws, &run->state, &result);
    take(&result, out);
}

/* Forces with the load cell's factor on what is added to the static load. */
static gw_corner_load scaled(const gw_corner *corner, const gw_read_state *s, double factor)
{
    const double still = corner->wheel.static_load;
    gw_corner_load load = { .patch_force = gw_scale(factor, s->load.patch_force),
                            .patch_moment = gw_scale(factor, s->load.patch_moment),
                            .hub_force = gw_scale(factor, s->load.hub_force),
                            .travel = s->travel };
    load.patch_force.z = s->static_vertical ? still : still + factor * (s->load.patch_force.z - still);
    return load;
}

/* The wheel held at a travel under a vertical load; run->state has the force that the spring would need. */
static gw_status hold(gw_run *run, double travel, double vertical, const gw_state *near, gw_error *err)
{
    const gw_corner_load held = { .patch_force = gw_v3(0, 0, vertical), .travel = travel };
    const gw_corner_load both[GW_WHEELS] = { held, held };
    return gw_axle_solve_near(run->ws, both, GW_AT_TRAVEL, near, &run->state, err);
}

/* From where it is known: the load is the guide's, and what is then left in the spring is put right by how
 * all goes on with the load. */
static gw_status without_spring_near(gw_run *run, double travel, const gw_read_spot *near,
                                     gw_read_changes *out, gw_error *err)
{
    gw_status status = hold(run, travel, near->load, &near->state, err);
    if (status != GW_OK) return status;
    look(run, out);
    double more = -run->state.spring_force / near->force_by_load;
    for (int f = 0; f < GW_READ_FIGURES; f++) out->v[f] += more * near->by_load[f];
    return GW_OK;
}

/* The vertical load that holds a travel with no force in the spring: the force that the spring would need
 * falls in a nearly straight line with the load, so a secant finds it in three or four solves. */
static gw_status without_spring(gw_run *run, double travel, gw_read_changes *out, gw_error *err)
{
    enum { MOST = 20 };
    const double still = run->c->corners[run->axle].wheel.static_load;
    double load[2] = { 0.0, 0.1 * still }, force[2] = { 0.0, 0.0 };
    for (int i = 0; i < MOST; i++) {
        const int now = i > 0;
        gw_status status = hold(run, travel, load[now], i > 1 ? &run->state : NULL, err);
        if (status != GW_OK) return status;
        force[now] = run->state.spring_force;
        if (fabs(force[now]) <= 1e-9 * still) break;
        if (i == 0) continue;
        if (i == MOST - 1 || force[0] == force[1])
            return gw_fail(err, GW_E_NUMERIC, "no vertical load holds this travel without the spring");
        double next = load[1] - force[1] * (load[1] - load[0]) / (force[1] - force[0]);
        load[0] = load[1];
        force[0] = force[1];
        load[1] = next;
    }
    look(run, out);
    return GW_OK;
}

gw_status gw_read_spring_out(gw_run *run, double travel, const gw_read_spot *near, gw_read_changes *out,
                             gw_error *err)
{
    return near ? without_spring_near(run, travel, near, out, err) : without_spring(run, travel, out, err);
}

gw_status gw_read_spring_out_goes_on(gw_run *run, double travel, gw_read_spot *spot, gw_error *err)
{
    const double step = 1e-3 * run->c->corners[run->axle].wheel.static_load;
    gw_read_changes side[2];
    double force[2];
    for (int i = 0; i < 2; i++) {
        gw_status status = hold(run, travel, spot->load + (i ? step : -step), &spot->state, err);
        if (status != GW_OK) return status;
        force[i] = run->state.spring_force;
        look(run, &side[i]);
    }
    spot->force_by_load = (force[1] - force[0]) / (2.0 * step);
    for (int f = 0; f < GW_READ_FIGURES; f++) spot->by_load[f] = (side[1].v[f] - side[0].v[f]) / (2.0 * step);
    return GW_OK;
}

/* Where nothing is shared the left wheel knows nothing of the right one. */
static bool goes_apart(const gw_run *run, const gw_read_state *s)
{
    return run->c->corners[run->axle].shared && s->other != GW_OTHER_SAME;
}

/* Held at a travel by the vertical loads, the springs in; the right wheel goes as it is told. */
static gw_status along_travel(gw_run *run, const gw_read_state *s, bool with_rate, const gw_state *near,
                              gw_read_changes *out, gw_error *err)
{
    const gw_other_wheel other = goes_apart(run, s) ? s->other : GW_OTHER_SAME;
    gw_corner_load at[GW_WHEELS] = { { .travel = s->travel }, { .travel = 0.0 } };
    gw_path path[GW_WHEELS];
    at[GW_RIGHT_WHEEL].travel = gw_wheel_goes(other, GW_RIGHT_WHEEL) * s->travel;
    gw_status status = gw_axle_solve_near(run->ws, at, GW_LIFTED, near, &run->state, err);
    if (status == GW_OK && with_rate)
        status = other == GW_OTHER_SAME ? gw_corner_path_at(run->ws, &run->state, GW_LIFTED, path, err)
                                        : gw_axle_path_at(run->ws, &run->state, GW_LIFTED, other, path, err);
    if (status != GW_OK) return status;
    look(run, out);
    if (with_rate) out->v[GW_READ_WHEEL_RATE] = path[GW_LEFT_WHEEL].force_rate;
    return GW_OK;
}

static gw_status under_load(gw_run *run, const gw_read_state *s, double factor, const gw_state *near,
                            gw_read_changes *out, gw_error *err)
{
    const gw_corner_load load = scaled(&run->c->corners[run->axle], s, factor);
    const gw_drive drive = s->has_travel ? GW_AT_TRAVEL : GW_ON_SPRING;
    gw_corner_load both[GW_WHEELS] = { load, load };
    if (goes_apart(run, s)) gw_axle_loads(&run->c->corners[run->axle], &load, s->other, both);
    gw_status status = gw_axle_solve_near(run->ws, both, drive, near, &run->state, err);
    if (status == GW_OK) look(run, out);
    return status;
}

static bool asks_rate(const gw_reading *r, int state)
{
    for (int v = 0; v < r->n_values; v++)
        if (r->value[v].state == state && r->value[v].figure == GW_READ_WHEEL_RATE) return true;
    return false;
}

/* With the spring out changes are from travel 0 held so. */
static gw_status state_of(gw_run *run, const gw_reading *r, int at, double factor,
                          const gw_read_changes *from, const gw_read_spot *near, gw_read_changes *out,
                          gw_error *err)
{
    const gw_read_state *s = &r->state[at];
    const gw_state *state = near ? &near->state : NULL;
    if (s->has_load) return under_load(run, s, factor, state, out, err);
    if (!s->spring_out) return along_travel(run, s, asks_rate(r, at), state, out, err);
    gw_status status = gw_read_spring_out(run, s->travel, near, out, err);
    for (int f = 0; f < GW_READ_FIGURES && status == GW_OK; f++) out->v[f] -= from->v[f];
    return status;
}

gw_status gw_read_at(gw_run *run, const gw_reading *r, int state, double factor, const gw_read_changes *from,
                     const gw_read_spot *near, double *y, gw_error *err)
{
    gw_read_changes now;
    gw_error why = { 0 };
    gw_status status = state_of(run, r, state, factor, from, near, &now, &why);
    if (status != GW_OK)
        return gw_fail(err, status, "%s: reading \"%s\", kit %s: %s", run->c->path, r->name,
                       run->c->kits[r->kit].name, why.msg);
    for (int v = 0; v < r->n_values; v++)
        if (r->value[v].state == state) y[v] = now.v[r->value[v].figure];
    return GW_OK;
}
