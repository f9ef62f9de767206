/* SPDX-License-Identifier: MIT */
/* The recommendations as kits: what work they share, and what they ask of the joints. */
#include "base/parallel.h"
#include "giveway/casefile.h"
#include "giveway/cost.h"
#include "giveway/stand.h"
#include "giveway/strength.h"
#include "study/choose_parts.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static gw_status make_kit(gw_planner *p, gw_recommendation *r, gw_error *err)
{
    const gw_case *c = p->c;
    r->kit = (gw_kit){ .name = r->name, .label = r->name };
    for (int a = 0; a < GW_AXLES; a++) {
        if (!c->has_corner[a]) continue;
        size_t n = (size_t)c->pairs[a].n_joints;
        if (!(r->kit.fits[a] = gw_arena_alloc(p->arena, n, sizeof(int))))
            return gw_fail(err, GW_E_NOMEM, "out of memory for kits");
        memcpy(r->kit.fits[a], c->kits[0].fits[a], n * sizeof(int));
    }
    for (int i = 0; i < p->out->n_joints; i++) {
        const gw_offered_joint *at = &p->out->joint[i];
        const gw_among *among = &p->out->offer.among[at->choice];
        int joint = among->joint[at->joint], twin = c->pairs[among->axle].joints[joint].twin;
        r->kit.fits[among->axle][joint] = r->kit.fits[among->axle][twin] =
            gw_choose_bush(c, &p->out->offer, p->out->front[r->member].option, at->choice, at->joint);
    }
    return GW_OK;
}

/* -- jobs -- */

static gw_status list_jobs(gw_planner *p, gw_recommendation *r, gw_error *err)
{
    const gw_case *c = p->c;
    r->job = gw_arena_alloc(p->arena, (size_t)c->n_jobs + 1, sizeof *r->job);
    if (!r->job) return gw_fail(err, GW_E_NOMEM, "out of memory for jobs");
    for (int i = 0; i < c->n_jobs; i++) {
        const gw_shop_job *job = &c->jobs[i];
        const gw_shared_job shared = gw_shared_job_of(c, job, &r->kit);
        if (shared.joints)
            r->job[r->n_jobs++] =
                (gw_choose_job){ job->label, shared.joints, job->minutes, job->price, shared.saved };
    }
    return GW_OK;
}

/* -- strength -- */

/* What is on offer goes into both sides, so a joint and its mirror image are one, told by the worse. */
static bool is_worst_of_joint(const gw_case *c, const gw_strength_study *s, int item)
{
    const gw_overload *o = &s->item[item];
    for (int i = 0; i < s->n; i++) {
        const gw_overload *other = &s->item[i];
        if (i == item || other->kit != o->kit || !gw_stand_same_joint(c, other, o)) continue;
        double a = gw_overload_ratio(other), b = gw_overload_ratio(o);
        if (a > b || (a == b && i < item)) return false;
    }
    return true;
}

static gw_status tell_beyond(gw_planner *p, gw_recommendation *r, const gw_strength_study *s, int kit,
                             gw_error *err)
{
    r->beyond = gw_arena_alloc(p->arena, (size_t)s->n + 1, sizeof *r->beyond);
    if (!r->beyond) return gw_fail(err, GW_E_NOMEM, "out of memory for strength");
    for (int i = 0; i < s->n; i++) {
        const gw_overload *o = &s->item[i];
        gw_error line = { 0 };
        if (o->kit != kit || !is_worst_of_joint(p->c, s, i)) continue;
        gw_fail(&line, GW_OK, "%s.%s under %s: %.0f %% of its limit", gw_axle_name(o->axle),
                gw_joint_as_written(&p->c->corners[o->axle], o->joint), p->c->loads[o->load].name,
                100.0 * gw_overload_ratio(o));
        const char *kept = gw_arena_strdup(p->arena, line.msg);
        if (!kept) return gw_fail(err, GW_E_NOMEM, "out of memory for strength");
        r->beyond[r->n_beyond++] = kept;
    }
    return GW_OK;
}

/* The recommendations as kits of a case, all loads of the case on them. */
static gw_status check_strength(gw_planner *p, const gw_selection *wanted, gw_error *err)
{
    gw_kit kit[1 + GW_RECOMMENDED] = { p->c->kits[0] };
    gw_case c = *p->c;
    gw_deflect_study deflect = { 0 };
    gw_strength_study strength = { 0 };
    gw_selection all = *wanted;
    all.kits = NULL;
    for (int i = 0; i < GW_RECOMMENDED; i++) kit[1 + i] = p->out->recommended[i].kit;
    c.kits = kit;
    c.n_kits = 1 + GW_RECOMMENDED;
    gw_status status = gw_study_deflect(&c, &all, &deflect, err);
    if (status == GW_OK) status = gw_study_strength(&c, &deflect, &strength, err);
    for (int i = 0; i < GW_RECOMMENDED && status == GW_OK; i++)
        status = tell_beyond(p, &p->out->recommended[i], &strength, 1 + i, err);
    gw_strength_study_free(&strength);
    gw_deflect_study_free(&deflect);
    return status;
}

/* One of the case's own kits. */
typedef struct gw_own_job {
    const gw_planner *p;
    gw_own_kit_place *own;
    gw_status status;
    gw_error err;
} gw_own_job;

static void work_own(void *context, int index)
{
    gw_own_job *job = &((gw_own_job *)context)[index];
    job->status = gw_own_kit(job->p, job->own->kit, &job->own->is, &job->err);
}

/* Memory is taken before the threads start. */
static gw_status plan_own(gw_planner *p, const gw_selection *wanted, gw_own_job *jobs, gw_error *err)
{
    gw_choose_study *out = p->out;
    gw_status status = GW_OK;
    out->own = gw_arena_alloc(p->arena, (size_t)p->c->n_kits, sizeof *out->own);
    if (!out->own) return gw_fail(err, GW_E_NOMEM, "out of memory for kits");
    for (int k = 1; k < p->c->n_kits && status == GW_OK; k++) {
        gw_own_kit_place *own = &out->own[out->n_own];
        if (wanted->kits && !wanted->kits[k]) continue;
        *own = (gw_own_kit_place){ .kit = k };
        jobs[out->n_own++] = (gw_own_job){ .p = p, .own = own };
        status = gw_combination_make(p, &own->is, err);
    }
    return status;
}

static gw_status place_own(gw_planner *p, const gw_selection *wanted, gw_error *err)
{
    gw_own_job *jobs = calloc((size_t)p->c->n_kits + 1, sizeof *jobs);
    gw_status status =
        jobs ? plan_own(p, wanted, jobs, err) : gw_fail(err, GW_E_NOMEM, "out of memory for kits");
    if (status == GW_OK) gw_parallel(p->out->n_own, work_own, jobs);
    for (int i = 0; i < p->out->n_own && status == GW_OK; i++)
        if (jobs[i].status != GW_OK) status = gw_fail(err, jobs[i].status, "%s", jobs[i].err.msg);
    free(jobs);
    return status;
}

gw_status gw_choose_kits(gw_planner *p, const gw_selection *wanted, gw_error *err)
{
    gw_status status = place_own(p, wanted, err);
    if (status != GW_OK) return status;
    if (!p->out->has_recommended) return GW_OK;
    for (int i = 0; i < GW_RECOMMENDED && status == GW_OK; i++) {
        status = make_kit(p, &p->out->recommended[i], err);
        if (status == GW_OK) status = list_jobs(p, &p->out->recommended[i], err);
    }
    return status == GW_OK ? check_strength(p, wanted, err) : status;
}
