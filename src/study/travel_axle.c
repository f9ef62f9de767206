/* SPDX-License-Identifier: MIT */
/* Travel of both wheels of an axle: which corners are solved, and what a load puts on each wheel. */
#include "study/travel.h"

gw_status gw_travel_open_axle(gw_travel_job *job, gw_error *err)
{
    gw_run *run = &job->run;
    const gw_corner *pair = &run->c->pairs[run->axle];
    gw_error inner = { 0 };
    bool shared = run->c->corners[run->axle].shared;
    job->both = shared || job->out->plan.wheels != GW_OTHER_SAME;
    if (shared || !job->both) return GW_OK;
    int kit = run->kit;
    gw_run_close_corner(run);
    gw_fit_pair(run->c, &run->laws, kit, run->axle, run->fit);
    gw_status status = gw_corner_open(pair, run->fit, &run->ws, &inner);
    if (status == GW_OK) status = gw_state_alloc(pair, &run->state, &inner);
    if (status != GW_OK)
        return gw_fail(err, status, "%s: kit %s: %s", run->c->path, run->c->kits[kit].name, inner.msg);
    return GW_OK;
}

int gw_travel_fitted(const gw_travel_job *job, int solved)
{
    const gw_run *run = &job->run;
    const gw_corner *corner = &run->c->corners[run->axle], *pair = &run->c->pairs[run->axle];
    if (corner->shared) return solved;
    if (!job->both) return job->wheel == GW_LEFT_WHEEL ? solved : pair->joints[solved].twin;
    bool right = solved >= corner->n_joints;
    return right == (job->wheel == GW_RIGHT_WHEEL) ? solved : -1;
}

/* On the road the axle carries what the car's equilibrium puts on it. */
static gw_status drive(gw_travel_job *job, const gw_load *l, gw_error *err)
{
    gw_joint_result joints[GW_MAX_JOINTS];
    gw_deflection found = { .result.joints = joints };
    gw_manoeuvre m = l->manoeuvre;
    if (job->both || job->sided) m.side = GW_OUTER;
    gw_status status = gw_run_manoeuvre(&job->run, &m, &found, err);
    if (status != GW_OK) return status;
    job->force[GW_LEFT_WHEEL] = found.applied;
    job->force[GW_RIGHT_WHEEL] = job->both || job->sided ? found.beside : found.applied;
    return GW_OK;
}

static gw_status by_rule(gw_travel_job *job, const gw_load *l, gw_error *err)
{
    gw_status status = GW_OK;
    for (int w = 0; w < GW_WHEELS && status == GW_OK; w++) {
        gw_manoeuvre m = l->manoeuvre;
        gw_wheel_load wheel;
        if (job->both || job->sided) m.side = gw_side_of_wheel((gw_wheel_side)w);
        status = gw_vehicle_wheel_load(&job->run.vehicle, &m, job->run.axle, &wheel, err);
        if (status == GW_OK)
            job->force[w] = (gw_corner_load){ wheel.patch_force, wheel.patch_moment, wheel.hub_force, 0.0 };
    }
    return status;
}

gw_status gw_travel_forces(gw_travel_job *job, int load, gw_error *err)
{
    const gw_load *l = load < 0 ? NULL : &job->run.c->loads[load];
    gw_error inner = { 0 };
    job->force[GW_LEFT_WHEEL] = job->force[GW_RIGHT_WHEEL] = (gw_corner_load){ 0 };
    if (!l) return GW_OK;
    if (l->kind == GW_LOAD_DIRECT) {
        gw_axle_loads(&job->run.c->corners[job->run.axle], &l->direct, l->other, job->force);
        return GW_OK;
    }
    gw_status status = job->run.on_road ? drive(job, l, &inner) : by_rule(job, l, &inner);
    if (status == GW_OK) return GW_OK;
    return gw_fail(err, status, "%s: load \"%s\": %s", job->run.c->path, l->name, inner.msg);
}
