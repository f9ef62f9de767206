/* SPDX-License-Identifier: MIT */
/* Which bushes to fit: from what is on offer to what is recommended, step by step. */
#include "giveway/choose.h"

#include "study/choose_parts.h"

static gw_status work_now(gw_planner *p, gw_error *err)
{
    gw_combination *now = &p->out->now;
    gw_error inner = { 0 };
    gw_status status = gw_combination_make(p, now, err);
    if (status != GW_OK) return status;
    for (int i = 0; i < gw_choices(p); i++) now->option[i] = -1;
    gw_combination *const list[] = { now };
    status = gw_work_each(p, list, 1, 0, &inner);
    if (status == GW_OK) return GW_OK;
    return gw_fail(err, status, "%s: kit %s, with which all is compared: %s", p->c->path, p->c->kits[0].name,
                   inner.msg);
}

/* What was left undone by a stop is worth nothing. */
static gw_status unless_stopped(const gw_planner *p, gw_status status, gw_error *err)
{
    if (!p->watch->stopped) return status;
    return gw_fail(err, GW_E_USAGE, "stopped after %d of %d combinations: nothing was written",
                   p->watch->done, p->out->combinations);
}

static gw_status plan(gw_planner *p, const gw_selection *wanted, gw_error *err)
{
    if (!p->c->has_corner[GW_FRONT] && !p->c->has_corner[GW_REAR])
        return gw_fail(err, GW_E_SCHEMA, "%s: corners: the case describes no corner to fit", p->c->path);
    gw_status status = gw_plan_offer(p, wanted, err);
    if (status == GW_OK) status = gw_plan_kits(p, err);
    if (status == GW_OK) status = gw_run_open(&p->run, p->c, wanted, err);
    if (status == GW_OK) status = gw_plan_figures(p, wanted, err);
    return status == GW_OK ? gw_plan_costs(p, err) : status;
}

gw_status gw_study_choose_offer(const gw_case *c, const gw_selection *wanted, gw_error *err)
{
    gw_choose_study study = { 0 };
    const gw_choose_options none = { 0 };
    gw_planner p = { .c = c, .options = &none, .out = &study, .arena = &study.arena };
    gw_status status = plan(&p, wanted, err);
    gw_run_close(&p.run);
    gw_choose_study_free(&study);
    return status;
}

static gw_status work(gw_planner *p, const gw_selection *wanted, gw_error *err)
{
    gw_status status = plan(p, wanted, err);
    if (status == GW_OK) status = unless_stopped(p, gw_work_axles(p, err), err);
    if (status == GW_OK) status = work_now(p, err);
    if (status == GW_OK) status = unless_stopped(p, gw_work_cars(p, err), err);
    if (status == GW_OK) status = gw_choose_results(p, err);
    if (status == GW_OK) status = gw_choose_swaps(p, err);
    if (status == GW_OK) status = gw_choose_orders(p, err);
    if (status == GW_OK) status = gw_choose_kits(p, wanted, err);
    return status == GW_OK ? unless_stopped(p, gw_choose_sureness(p, wanted, err), err) : status;
}

gw_status gw_study_choose(const gw_case *c, const gw_selection *wanted, const gw_choose_options *options,
                          gw_choose_study *out, gw_error *err)
{
    gw_choose_study study = { 0 };
    gw_plan_watch watch = { .done = 0 };
    gw_planner p = { .c = c, .options = options, .out = &study, .watch = &watch, .arena = &study.arena };
    pthread_mutex_init(&watch.lock, NULL);
    gw_status status = work(&p, wanted, err);
    pthread_mutex_destroy(&watch.lock);
    gw_run_close(&p.run);
    if (status != GW_OK) {
        gw_choose_study_free(&study);
        return status;
    }
    *out = study;
    return GW_OK;
}

void gw_choose_study_free(gw_choose_study *study)
{
    gw_arena_free(&study->arena);
    *study = (gw_choose_study){ 0 };
}
