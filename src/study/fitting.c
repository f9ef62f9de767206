/* SPDX-License-Identifier: MIT */
/* From a case's kits to what the corner solver fits into each joint. */
#include "giveway/study.h"

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

void gw_fit_kit(const gw_case *c, const gw_laws *laws, int kit, gw_axle axle, gw_fit *fit)
{
    const gw_corner *corner = &c->corners[axle];
    for (int j = 0; j < corner->n_joints; j++) {
        const gw_joint *joint = &corner->joints[j];
        int b = c->kits[kit].fits[axle][j];
        const gw_bush *bush = &c->bushes[b];
        fit[j] = (gw_fit){ laws->law[b], joint->at, joint->at };
        if (bush->offset <= 0.0) continue;
        gw_vec3 moved = gw_add(joint->at, offset_of(bush, joint));
        if (joint->housing == joint->body_a)
            fit[j].point_a = moved;
        else
            fit[j].point_b = moved;
    }
}

bool gw_kit_is_off_centre(const gw_case *c, int kit, gw_axle axle)
{
    for (int j = 0; j < c->corners[axle].n_joints; j++)
        if (c->bushes[c->kits[kit].fits[axle][j]].offset > 0.0) return true;
    return false;
}
