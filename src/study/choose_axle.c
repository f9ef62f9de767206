/* SPDX-License-Identifier: MIT */
/* Every kit of an axle once: the figures that it decides alone, and its ride. */
#include "base/parallel.h"
#include "giveway/compare.h"
#include "study/choose_parts.h"

#include <math.h>
#include <stdlib.h>

typedef struct gw_axle_work {
    gw_planner *p;
    gw_axle axle;
    struct gw_kit_outcome {
        gw_status status;
        gw_error err;
    } * of; /* [kit of the axle] */
} gw_axle_work;

static gw_status one_kit(gw_planner *p, gw_bench_kit *kit, gw_axle axle, int k, double *value, gw_error *err)
{
    gw_axle_kits *kits = &p->axle[axle];
    gw_status status;
    for (int i = 0; i < gw_choices(p); i++) kit->option[i] = -1;
    gw_kit_options(p, axle, k, kit->option);
    gw_bench_kit_fit(p, kit);
    status = gw_kit_alone(p, kit, axle, value, err);
    if (gw_is_serious(status)) return status;
    kits->unsteady[k] = status == GW_OK ? 0.0 : (double)NAN;
    for (int f = 0; f < p->out->n_figures; f++)
        if (p->out->figure[f].axle == axle && p->drive_of[f] < 0)
            kits->unsteady[k] += gw_unsteady_part(&p->out->figure[f], value[f]);
    if (!p->out->has_ride || !p->corner[axle]) return GW_OK;
    status = gw_kit_ride(p, kit, axle, &kits->harsh[k], &kits->loud[k], err);
    kits->harsh[k] = 20.0 * log10(kits->harsh[k] / p->base_harsh[axle]);
    kits->loud[k] = 20.0 * log10(kits->loud[k] / p->base_loud[axle]);
    return status;
}

/* A kit a piece: the last ones of an axle of few kits would leave a processor waiting for another. */
static void work_kit(void *context, int index)
{
    gw_axle_work *work = context;
    gw_planner *p = work->p;
    struct gw_kit_outcome *of = &work->of[index];
    gw_bench_kit *kit = NULL;
    double *value = calloc((size_t)p->out->n_figures, sizeof *value);
    of->status = gw_bench_kit_open(p, &kit, &of->err);
    if (!value) of->status = gw_fail(&of->err, GW_E_NOMEM, "out of memory for figures");
    if (of->status == GW_OK && gw_plan_goes_on(p, 0))
        of->status = one_kit(p, kit, work->axle, index, value, &of->err);
    gw_bench_kit_close(kit);
    free(value);
}

static gw_status work_axle(gw_planner *p, gw_axle axle, gw_error *err)
{
    int n = p->axle[axle].n;
    gw_status status = GW_OK;
    gw_axle_work work = { p, axle, calloc((size_t)n, sizeof *work.of) };
    if (!work.of) return gw_fail(err, GW_E_NOMEM, "out of memory for figures");
    gw_parallel(n, work_kit, &work);
    for (int i = 0; i < n && status == GW_OK; i++)
        if (work.of[i].status != GW_OK) status = gw_fail(err, work.of[i].status, "%s", work.of[i].err.msg);
    free(work.of);
    return status;
}

static const char *ride_lacks(const gw_planner *p)
{
    for (int a = 0; a < GW_AXLES; a++) {
        const char *lacks = p->corner[a] ? gw_ride_lacks(p->c, (gw_axle)a) : NULL;
        if (lacks) return lacks;
    }
    return NULL;
}

static gw_status warn_of_ride(gw_planner *p, const char *lacks, gw_error *err)
{
    const gw_choose *offer = &p->out->offer;
    for (int l = GW_LIMIT_HARSHNESS; l < GW_LIMITS; l++)
        if (offer->has_limit[l])
            return gw_fail(
                err, GW_E_SCHEMA,
                "%s: choose.limits.%s: there is no such figure, since the case lacks %s: give it, or take "
                "the limit out",
                p->c->path, GW_LIMIT_NAMES[l], lacks);
    gw_error line = { 0 };
    gw_fail(&line, GW_OK, "harshness and road noise are taken as 0: the case lacks %s", lacks);
    const char *kept = gw_arena_strdup(p->arena, line.msg);
    if (!kept) return gw_fail(err, GW_E_NOMEM, "out of memory for warnings");
    return gw_run_add_warnings(p->arena, &p->out->warning, &p->out->n_warnings, &kept, 1, err);
}

static gw_status find_base(gw_planner *p, gw_error *err)
{
    gw_bench_kit *kit = NULL;
    gw_status status = gw_bench_kit_open(p, &kit, err);
    if (status != GW_OK) return status;
    for (int i = 0; i < gw_choices(p); i++) kit->option[i] = -1;
    gw_bench_kit_fit(p, kit);
    for (int a = 0; a < GW_AXLES && status == GW_OK; a++)
        if (p->corner[a]) status = gw_kit_ride(p, kit, (gw_axle)a, &p->base_harsh[a], &p->base_loud[a], err);
    gw_bench_kit_close(kit);
    return status;
}

gw_status gw_work_axles(gw_planner *p, gw_error *err)
{
    const char *lacks = ride_lacks(p);
    p->out->has_ride = !lacks;
    gw_status status = lacks ? warn_of_ride(p, lacks, err) : find_base(p, err);
    for (int a = 0; a < GW_AXLES && status == GW_OK; a++)
        if (p->c->has_corner[a]) status = work_axle(p, (gw_axle)a, err);
    return status;
}
