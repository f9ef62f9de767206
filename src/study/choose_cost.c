/* SPDX-License-Identifier: MIT */
/* What a combination costs: bushes that differ from the first kit's, and the jobs that they bring along. */
#include "giveway/cost.h"
#include "study/choose_parts.h"

#include <string.h>

static bool changes(const gw_planner *p, const int *option, int choice, int joint)
{
    const gw_among *among = &p->out->offer.among[choice];
    return gw_choose_bush(p->c, &p->out->offer, option, choice, joint) !=
           p->c->kits[0].fits[among->axle][among->joint[joint]];
}

/* Bushes alone, of the choices of one axle. */
static void price_bushes(const gw_planner *p, gw_axle axle, const int *option, double *price, double *minutes)
{
    for (int i = 0; i < gw_choices(p); i++) {
        const gw_among *among = &p->out->offer.among[i];
        for (int j = 0; among->axle == axle && j < among->n_joints; j++) {
            if (!changes(p, option, i, j)) continue;
            const gw_bush *bush = &p->c->bushes[gw_choose_bush(p->c, &p->out->offer, option, i, j)];
            int n = gw_joint_count_both(p->c, axle, among->joint[j]);
            if (bush->price >= 0.0) *price += n * bush->price;
            if (bush->fit_minutes >= 0.0) *minutes += n * bush->fit_minutes;
        }
    }
}

static bool needs(const gw_planner *p, const gw_shop_job *job, gw_axle axle, const int *option)
{
    for (int at = 0; at < job->n_joints; at++)
        for (int i = 0; job->joints[at].axle == axle && i < gw_choices(p); i++) {
            const gw_among *among = &p->out->offer.among[i];
            for (int j = 0; among->axle == axle && j < among->n_joints; j++)
                if (among->joint[j] == job->joints[at].joint && changes(p, option, i, j)) return true;
        }
    return false;
}

static void finish(const gw_planner *p, gw_combination *out)
{
    out->cost = out->price + p->out->hourly_rate * out->minutes / 60.0;
}

void gw_cost_of_options(const gw_planner *p, const int *option, gw_combination *out)
{
    out->price = out->minutes = 0.0;
    for (int a = 0; a < GW_AXLES; a++) price_bushes(p, (gw_axle)a, option, &out->price, &out->minutes);
    for (int i = 0; i < p->c->n_jobs; i++) {
        const gw_shop_job *job = &p->c->jobs[i];
        if (!needs(p, job, GW_FRONT, option) && !needs(p, job, GW_REAR, option)) continue;
        out->price += job->price;
        out->minutes += job->minutes;
    }
    finish(p, out);
}

void gw_cost_of_pair(const gw_planner *p, int front, int rear, gw_combination *out)
{
    const gw_axle_kits *f = &p->axle[GW_FRONT], *r = &p->axle[GW_REAR];
    const size_t n = (size_t)p->c->n_jobs;
    const unsigned char *due_f = f->jobs + (size_t)front * n, *due_r = r->jobs + (size_t)rear * n;
    out->price = f->price[front] + r->price[rear];
    out->minutes = f->minutes[front] + r->minutes[rear];
    for (size_t i = 0; i < n; i++)
        if (due_f[i] || due_r[i]) {
            out->price += p->c->jobs[i].price;
            out->minutes += p->c->jobs[i].minutes;
        }
    finish(p, out);
}

static gw_status cost_axle(gw_planner *p, gw_axle axle, int *option, gw_error *err)
{
    gw_axle_kits *kits = &p->axle[axle];
    size_t n = (size_t)kits->n, jobs = (size_t)p->c->n_jobs;
    kits->price = gw_arena_alloc(p->arena, n, sizeof *kits->price);
    kits->minutes = gw_arena_alloc(p->arena, n, sizeof *kits->minutes);
    kits->jobs = gw_arena_alloc(p->arena, n * jobs + 1, sizeof *kits->jobs);
    if (!kits->price || !kits->minutes || !kits->jobs)
        return gw_fail(err, GW_E_NOMEM, "out of memory for costs");
    for (int k = 0; k < kits->n; k++) {
        gw_kit_options(p, axle, k, option);
        price_bushes(p, axle, option, &kits->price[k], &kits->minutes[k]);
        for (size_t i = 0; i < jobs; i++)
            kits->jobs[(size_t)k * jobs + i] = needs(p, &p->c->jobs[i], axle, option);
    }
    return GW_OK;
}

gw_status gw_plan_costs(gw_planner *p, gw_error *err)
{
    int *option = gw_arena_alloc(p->arena, (size_t)gw_choices(p), sizeof *option);
    if (!option) return gw_fail(err, GW_E_NOMEM, "out of memory for costs");
    gw_status status = GW_OK;
    for (int a = 0; a < GW_AXLES && status == GW_OK; a++) status = cost_axle(p, (gw_axle)a, option, err);
    return status;
}
