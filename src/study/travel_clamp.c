/* SPDX-License-Identifier: MIT */
/*
 * What bushes add to the wheel rate by being turned, and what they do when their bolts were tightened at
 * another height.
 *
 * A bolt that is loose lets the bush turn about its own axis and holds it in every other way. Tightened at a
 * travel t, the bush is free of torque where the loosened corner stands at t; what it sags by between the
 * design position and travel 0 is left out, so that tightening at travel 0 is what every other command
 * takes for granted.
 */
#include "study/travel.h"

#include <math.h>

static const gw_corner_load VERTICAL_ALONE[GW_WHEELS];

static double *new_numbers(gw_travel_job *job, int n)
{
    return gw_arena_alloc(&job->out->arena, (size_t)n, sizeof(double));
}

/* The open corner with bolts loose; GW_E_MECHANISM where that lets it fall apart. */
static gw_status open_loose(gw_travel_job *job, const bool *loosened, gw_corner_ws **out, gw_error *err)
{
    const gw_corner *corner = gw_corner_of(job->run.ws);
    gw_fit_loosen(corner, job->run.fit, loosened, job->fit);
    return gw_corner_open(corner, job->fit, out, err);
}

/* What one place loses; the corner without rotational rates may not reach as far as the whole one. */
static void subtract(gw_travel_job *job, gw_corner_ws *bare, gw_travel_point *point)
{
    gw_travel_rates rates;
    if (gw_travel_state(job, bare, VERTICAL_ALONE, point->travel, &rates, NULL) == GW_OK)
        point->parasitic = point->rates.wheel_rate - rates.wheel_rate;
}

gw_status gw_travel_parasitic(gw_travel_job *job, gw_travel_item *item, gw_error *err)
{
    gw_corner_ws *bare;
    gw_error inner = { 0 };
    gw_status status = open_loose(job, NULL, &bare, &inner);
    if (status == GW_OK) {
        subtract(job, bare, &item->rest);
        for (int i = 0; i < item->n; i++) subtract(job, bare, &item->point[i]);
        gw_corner_close(bare);
        return GW_OK;
    }
    if (status == GW_E_NOMEM) return gw_fail(err, status, "%s", inner.msg);
    item->no_parasitic = gw_arena_strdup(&job->out->arena, inner.msg);
    return item->no_parasitic ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for results");
}

/* Which joints of the kit were tightened elsewhere and feel it; their number. */
static int mark_clamped(const gw_travel_job *job, bool *clamped)
{
    const gw_corner *corner = &job->run.c->corners[job->run.axle];
    int n = 0;
    for (int j = 0; j < corner->n_joints; j++) {
        const gw_joint *joint = &corner->joints[j];
        clamped[j] = joint->clamped && joint->clamp_travel != 0.0 && job->run.fit[j].law.c[2] > 0.0;
        n += clamped[j];
    }
    return n;
}

static gw_status read_twist(gw_travel_job *job, gw_corner_ws *loose, int joint, double travel, double *twist,
                            gw_error *err)
{
    gw_travel_rates rates;
    gw_status status = gw_travel_state(job, loose, VERTICAL_ALONE, travel, &rates, err);
    if (status == GW_OK) *twist = job->joints[joint].theta[2];
    return status;
}

static gw_status find_rest(gw_travel_job *job, gw_corner_ws *loose, const bool *clamped, double *rest,
                           gw_error *err)
{
    const gw_corner *corner = &job->run.c->corners[job->run.axle];
    for (int j = 0; j < corner->n_joints; j++) {
        double there, here;
        if (!clamped[j]) continue;
        gw_status status = read_twist(job, loose, j, corner->joints[j].clamp_travel, &there, err);
        if (status == GW_OK) status = read_twist(job, loose, j, 0.0, &here, err);
        if (status != GW_OK) return status;
        rest[j] = there - here;
    }
    return GW_OK;
}

static gw_status clamp_memory(gw_travel_job *job, int n_joints, int n_points, gw_travel_clamp *clamp,
                              gw_error *err)
{
    clamp->joint = gw_arena_alloc(&job->out->arena, (size_t)n_joints, sizeof *clamp->joint);
    clamp->clamped_at = new_numbers(job, n_joints);
    clamp->twist = new_numbers(job, n_joints);
    clamp->torque = new_numbers(job, n_joints);
    clamp->vertical_load = new_numbers(job, n_points);
    clamp->wheel_rate = new_numbers(job, n_points);
    clamp->parasitic = new_numbers(job, n_points);
    if (!clamp->joint || !clamp->clamped_at || !clamp->twist || !clamp->torque || !clamp->vertical_load ||
        !clamp->wheel_rate || !clamp->parasitic)
        return gw_fail(err, GW_E_NOMEM, "out of memory for clamped bushes");
    return GW_OK;
}

/* At travel 0: torques of the bushes, and what they carry of the body. */
static gw_status clamped_at_rest(gw_travel_job *job, const bool *clamped, const double *rest,
                                 gw_travel_item *item, gw_error *err)
{
    const gw_corner *corner = &job->run.c->corners[job->run.axle];
    gw_travel_clamp *clamp = &item->clamp;
    gw_travel_rates rates;
    gw_status status = gw_travel_state(job, job->run.ws, VERTICAL_ALONE, 0.0, &rates, err);
    if (status != GW_OK) return status;
    for (int j = 0; j < corner->n_joints; j++) {
        if (!clamped[j]) continue;
        clamp->joint[clamp->n] = j;
        clamp->clamped_at[clamp->n] = corner->joints[j].clamp_travel;
        clamp->twist[clamp->n] = job->joints[j].theta[2] - rest[j];
        clamp->torque[clamp->n++] = job->joints[j].m[2];
    }
    clamp->lift = rates.vertical_load - corner->wheel.static_load;
    clamp->rest_rate = rates.wheel_rate;
    clamp->rest_parasitic = rates.wheel_rate - (item->rest.rates.wheel_rate - item->rest.parasitic);
    return GW_OK;
}

static gw_status clamped_ride_height(gw_travel_job *job, gw_travel_clamp *clamp, gw_error *err)
{
    double weight = job->run.c->corners[job->run.axle].wheel.static_load;
    const gw_corner_load standing = { .patch_force = { 0, 0, weight } };
    gw_status status = gw_corner_solve(job->run.ws, &standing, GW_ON_SPRING, &job->run.state, err);
    if (status == GW_OK) clamp->ride_height = -job->run.state.load.travel;
    return status;
}

static gw_status clamped_points(gw_travel_job *job, gw_travel_item *item, gw_error *err)
{
    gw_status status = GW_OK;
    for (int i = 0; i < item->n && status == GW_OK; i++) {
        const gw_travel_point *right = &item->point[i];
        gw_travel_rates rates;
        status = gw_travel_state(job, job->run.ws, VERTICAL_ALONE, right->travel, &rates, err);
        if (status != GW_OK) break;
        item->clamp.vertical_load[i] = rates.vertical_load;
        item->clamp.wheel_rate[i] = rates.wheel_rate;
        item->clamp.parasitic[i] = rates.wheel_rate - (right->rates.wheel_rate - right->parasitic);
    }
    return status;
}

static gw_status clamp_corner(gw_travel_job *job, const bool *clamped, const double *rest, int n,
                              gw_travel_item *item, gw_error *err)
{
    double none[GW_MAX_JOINTS] = { 0 };
    gw_status status = clamp_memory(job, n, item->n, &item->clamp, err);
    if (status != GW_OK) return status;
    gw_corner_clamp(job->run.ws, rest);
    status = clamped_at_rest(job, clamped, rest, item, err);
    if (status == GW_OK) status = clamped_ride_height(job, &item->clamp, err);
    if (status == GW_OK) status = clamped_points(job, item, err);
    gw_corner_clamp(job->run.ws, none);
    item->clamp.present = status == GW_OK;
    return status;
}

gw_status gw_travel_clamped(gw_travel_job *job, gw_travel_item *item, gw_error *err)
{
    bool clamped[GW_MAX_JOINTS] = { false };
    double rest[GW_MAX_JOINTS] = { 0 };
    gw_corner_ws *loose;
    gw_error inner = { 0 }, text = { 0 };
    int n = mark_clamped(job, clamped);
    if (n == 0) return GW_OK;
    gw_status status = open_loose(job, clamped, &loose, &inner);
    if (status == GW_E_MECHANISM) {
        gw_fail(&text, GW_OK, "clamp_travel_mm left out, since with these bolts loose %s", inner.msg);
        return gw_travel_warn(job, text.msg, err);
    }
    if (status != GW_OK) return gw_fail(err, status, "%s", inner.msg);
    status = find_rest(job, loose, clamped, rest, err);
    gw_corner_close(loose);
    return status == GW_OK ? clamp_corner(job, clamped, rest, n, item, err) : status;
}
