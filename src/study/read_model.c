/* SPDX-License-Identifier: MIT */
#include "study/read_model.h"

#include "giveway/corner_travel.h"

#include <math.h>

/* Changes that can be read of one state. */
typedef struct changes {
    double v[GW_READ_FIGURES];
} changes;

static void take(const gw_corner_result *r, changes *out)
{
    out->v[GW_READ_TOE] = r->toe_change;
    out->v[GW_READ_CAMBER] = r->camber_change;
    out->v[GW_READ_CASTER] = r->caster_change;
    out->v[GW_READ_FORE_AFT] = r->wheel_centre.x;
    out->v[GW_READ_LATERAL] = r->wheel_centre.y;
    out->v[GW_READ_WHEEL_RATE] = (double)NAN;
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

/* The vertical load that holds a travel with no force in the spring: the force that the spring would need
 * falls in a nearly straight line with the load, so a secant finds it in three or four solves. */
static gw_status without_spring(gw_run *run, double travel, changes *out, gw_error *err)
{
    enum { MOST = 20 };
    gw_joint_result joints[GW_MAX_JOINTS];
    gw_corner_result result = { .joints = joints };
    const double still = run->c->corners[run->axle].wheel.static_load;
    double load[2] = { 0.0, 0.1 * still }, force[2] = { 0.0, 0.0 };
    for (int i = 0; i < MOST; i++) {
        const int now = i > 0;
        const gw_corner_load held = { .patch_force = gw_v3(0, 0, load[now]), .travel = travel };
        gw_status status = gw_corner_solve(run->ws, &held, GW_AT_TRAVEL, &run->state, err);
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
    gw_corner_report(run->ws, &run->state, &result);
    take(&result, out);
    return GW_OK;
}

/* Where nothing is shared the left wheel knows nothing of the right one. */
static bool goes_apart(const gw_run *run, const gw_read_state *s)
{
    return run->c->corners[run->axle].shared && s->other != GW_OTHER_SAME;
}

/* The left wheel of an axle whose right one goes another way. */
static gw_status along_both(gw_run *run, const gw_read_state *s, changes *out, gw_error *err)
{
    gw_joint_result joints[GW_WHEELS][GW_MAX_JOINTS];
    gw_corner_result result[GW_WHEELS] = { { .joints = joints[0] }, { .joints = joints[1] } };
    const gw_corner_load none[GW_WHEELS] = { { .travel = 0.0 } };
    gw_travel_rates rates[GW_WHEELS];
    gw_status status = gw_axle_travel_at(run->ws, none, s->other, s->travel, &run->state, result, rates, err);
    if (status != GW_OK) return status;
    take(&result[GW_LEFT_WHEEL], out);
    out->v[GW_READ_WHEEL_RATE] = rates[GW_LEFT_WHEEL].wheel_rate;
    return GW_OK;
}

/* Held at a travel by the vertical load, the spring in. */
static gw_status along_travel(gw_run *run, double travel, changes *out, gw_error *err)
{
    gw_joint_result joints[GW_MAX_JOINTS];
    gw_corner_result result = { .joints = joints };
    const gw_corner_load none = { 0 };
    gw_travel_rates rates;
    gw_status status = gw_corner_travel_at(run->ws, &none, travel, &run->state, &result, &rates, err);
    if (status != GW_OK) return status;
    take(&result, out);
    out->v[GW_READ_WHEEL_RATE] = rates.wheel_rate;
    return GW_OK;
}

static gw_status under_load(gw_run *run, const gw_read_state *s, double factor, changes *out, gw_error *err)
{
    gw_joint_result joints[GW_MAX_JOINTS];
    gw_corner_result result = { .joints = joints };
    const gw_corner_load load = scaled(&run->c->corners[run->axle], s, factor);
    const gw_drive drive = s->has_travel ? GW_AT_TRAVEL : GW_ON_SPRING;
    gw_corner_load both[GW_WHEELS];
    gw_axle_loads(&run->c->corners[run->axle], &load, s->other, both);
    gw_status status = goes_apart(run, s) ? gw_axle_solve(run->ws, both, drive, &run->state, err)
                                          : gw_corner_solve(run->ws, &load, drive, &run->state, err);
    if (status != GW_OK) return status;
    gw_corner_report(run->ws, &run->state, &result);
    take(&result, out);
    return GW_OK;
}

/* With the spring out changes are from travel 0 held so. */
static gw_status state_of(gw_run *run, const gw_read_state *s, double factor, const changes *from,
                          changes *out, gw_error *err)
{
    if (s->has_load) return under_load(run, s, factor, out, err);
    if (!s->spring_out)
        return goes_apart(run, s) ? along_both(run, s, out, err) : along_travel(run, s->travel, out, err);
    gw_status status = without_spring(run, s->travel, out, err);
    for (int f = 0; f < GW_READ_FIGURES && status == GW_OK; f++) out->v[f] -= from->v[f];
    return status;
}

static gw_status read_one(gw_run *run, const gw_reading *r, double factor, const changes *from, double *y,
                          gw_error *err)
{
    for (int s = 0; s < r->n_states; s++) {
        changes now;
        gw_error why = { 0 };
        gw_status status = state_of(run, &r->state[s], factor, from, &now, &why);
        if (status != GW_OK)
            return gw_fail(err, status, "%s: reading \"%s\", kit %s: %s", run->c->path, r->name,
                           run->c->kits[r->kit].name, why.msg);
        for (int v = 0; v < r->n_values; v++)
            if (r->value[v].state == s) y[v] = now.v[r->value[v].figure];
    }
    return GW_OK;
}

static bool shares_corner(const gw_reading *a, const gw_reading *b)
{
    return a->axle == b->axle && a->kit == b->kit;
}

/* All readings on one corner and kit. */
static gw_status read_corner(gw_run *run, const gw_readings *all, int first, double factor, double *y,
                             gw_error *err)
{
    changes from = { { 0 } };
    bool known = false;
    double *at = y;
    gw_status status = gw_run_open_corner(run, all->reading[first].kit, all->reading[first].axle, err);
    for (int i = 0; i < all->n && status == GW_OK; at += all->reading[i++].n_values) {
        const gw_reading *r = &all->reading[i];
        if (!shares_corner(r, &all->reading[first])) continue;
        if (r->state[0].spring_out && !known) {
            status = without_spring(run, 0.0, &from, err);
            known = true;
        }
        if (status == GW_OK) status = read_one(run, r, factor, &from, at, err);
    }
    gw_run_close_corner(run);
    return status;
}

gw_status gw_read_model(const gw_case *c, const gw_selection *wanted, const gw_readings *readings,
                        double factor, double *y, gw_error *err)
{
    gw_run run = { .c = c, .wanted = wanted, .laws = *wanted->laws };
    gw_status status = GW_OK;
    for (int i = 0; i < readings->n && status == GW_OK; i++) {
        bool done = false;
        for (int j = 0; j < i; j++)
            done = done || shares_corner(&readings->reading[j], &readings->reading[i]);
        if (!done) status = read_corner(&run, readings, i, factor, y, err);
    }
    return status;
}
