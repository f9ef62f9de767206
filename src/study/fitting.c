/* SPDX-License-Identifier: MIT */
/* From a case's kits to what the corner solver fits into each joint. */
#include "study/run.h"

#include "base/parallel.h"

#include <math.h>
#include <stdlib.h>

typedef struct gw_law_job {
    const gw_bush *bush;
    gw_method method;
    gw_bush_law *law;
    gw_status status;
    gw_error err;
} gw_law_job;

static void make_law(void *context, int index)
{
    gw_law_job *job = &((gw_law_job *)context)[index];
    if (job->bush->idle) {
        *job->law = gw_bush_law_zero();
        job->status = GW_OK;
        return;
    }
    job->status = gw_bush_law_make(job->bush, job->method, job->law, &job->err);
}

gw_status gw_laws_make(const gw_case *c, gw_method method, gw_laws *out, gw_error *err)
{
    gw_status status = GW_OK;
    gw_laws laws = { c->n_bushes, calloc((size_t)c->n_bushes + 1, sizeof *laws.law) };
    gw_law_job *jobs = calloc((size_t)c->n_bushes + 1, sizeof *jobs);
    if (!laws.law || !jobs) {
        status = gw_fail(err, GW_E_NOMEM, "out of memory for %d bushes", c->n_bushes);
        goto done;
    }
    for (int i = 0; i < c->n_bushes; i++)
        jobs[i] = (gw_law_job){ .bush = &c->bushes[i], .method = method, .law = &laws.law[i] };
    gw_parallel(c->n_bushes, make_law, jobs);
    for (int i = 0; i < c->n_bushes && status == GW_OK; i++)
        if (jobs[i].status != GW_OK)
            status = gw_fail(err, jobs[i].status, "%s: %s", c->path, jobs[i].err.msg);
done:
    free(jobs);
    if (status != GW_OK) {
        gw_laws_free(&laws);
        return status;
    }
    *out = laws;
    return GW_OK;
}

void gw_laws_free(gw_laws *laws)
{
    free(laws->law);
    *laws = (gw_laws){ 0 };
}

/* Where the bolt sits, seen from the centre of the housing, in the design position. */
static gw_vec3 offset_of(const gw_bush *bush, const gw_joint *joint)
{
    gw_vec3 e1 = gw_col(&joint->frame, 0), e2 = gw_col(&joint->frame, 1);
    return gw_add(gw_scale(bush->offset * cos(bush->offset_clock), e1),
                  gw_scale(bush->offset * sin(bush->offset_clock), e2));
}

static gw_fit fit_of(const gw_case *c, const gw_laws *laws, int b, const gw_joint *joint)
{
    const gw_bush *bush = &c->bushes[b];
    gw_fit fit = { laws->law[b], joint->at, joint->at };
    if (bush->offset <= 0.0) return fit;
    gw_vec3 moved = gw_add(joint->at, offset_of(bush, joint));
    if (joint->housing == joint->body_a)
        fit.point_a = moved;
    else
        fit.point_b = moved;
    return fit;
}

void gw_fit_kit(const gw_case *c, const gw_laws *laws, int kit, gw_axle axle, gw_fit *fit)
{
    const gw_corner *corner = &c->corners[axle];
    for (int j = 0; j < corner->n_joints; j++)
        fit[j] = fit_of(c, laws, c->kits[kit].fits[axle][j], &corner->joints[j]);
}

void gw_fit_right(const gw_case *c, const gw_laws *laws, int kit, gw_axle axle, gw_fit *fit)
{
    const gw_corner *corner = &c->corners[axle];
    for (int j = 0; j < corner->n_joints; j++) {
        int right = gw_joint_of_wheel(c, axle, GW_RIGHT_WHEEL, j);
        fit[j] = fit_of(c, laws, c->kits[kit].fits[axle][right], &corner->joints[j]);
    }
}

void gw_fit_pair(const gw_case *c, const gw_laws *laws, int kit, gw_axle axle, gw_fit *fit)
{
    const gw_corner *pair = &c->pairs[axle];
    for (int j = 0; j < pair->n_joints; j++)
        fit[j] = fit_of(c, laws, c->kits[kit].fits[axle][j], &pair->joints[j]);
}

int gw_joint_of_wheel(const gw_case *c, gw_axle axle, gw_wheel_side wheel, int joint)
{
    bool right = wheel == GW_RIGHT_WHEEL && !c->corners[axle].shared;
    return right ? c->pairs[axle].joints[joint].twin : joint;
}

double gw_tilt_limit(const gw_case *c, int kit, const gw_joint *joint, gw_axle axle, int fitted)
{
    double own = joint->tilt_limit, bush = c->bushes[c->kits[kit].fits[axle][fitted]].tilt_limit;
    if (own > 0.0 && bush > 0.0) return fmin(own, bush);
    return own > 0.0 ? own : bush;
}

bool gw_kit_differs_by_side(const gw_case *c, int kit, gw_axle axle)
{
    const gw_corner *pair = &c->pairs[axle];
    const int *fits = c->kits[kit].fits[axle];
    for (int j = 0; j < pair->n_joints; j++)
        if (fits[j] != fits[pair->joints[j].twin]) return true;
    return false;
}

bool gw_kit_is_lopsided(const gw_case *c, int kit, gw_axle axle)
{
    return c->pairs[axle].lopsided || gw_kit_differs_by_side(c, kit, axle);
}

bool gw_kit_is_off_centre(const gw_case *c, int kit, gw_axle axle)
{
    for (int j = 0; j < c->pairs[axle].n_joints; j++)
        if (c->bushes[c->kits[kit].fits[axle][j]].offset > 0.0) return true;
    return false;
}
