/* SPDX-License-Identifier: MIT */
/* Any combinations, each solved from the start as `compare` solves a kit. */
#include "base/parallel.h"
#include "giveway/cost.h"
#include "study/choose_parts.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { BLOCK = 4, FEW = 8 };

typedef struct gw_each_work {
    const gw_planner *p;
    gw_combination *const *list;
    int n, flags, block;
    gw_status *status; /* [block] */
    gw_error *err;
} gw_each_work;

gw_status gw_combination_make(const gw_planner *p, gw_combination *out, gw_error *err)
{
    *out = (gw_combination){ 0 };
    out->option = gw_arena_alloc(p->arena, (size_t)gw_choices(p), sizeof *out->option);
    out->value = gw_arena_alloc(p->arena, (size_t)p->out->n_figures, sizeof *out->value);
    return out->option && out->value ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for combinations");
}

/* The option that fits what the first kit has there; -1: it is not on offer. */
static int option_as_now(const gw_planner *p, const gw_among *among)
{
    const int *now = p->c->kits[0].fits[among->axle];
    for (int b = 0; b < among->n_bushes; b++) {
        int same = 0;
        while (same < among->n_joints && now[among->joint[same]] == among->bush[b]) same++;
        if (same == among->n_joints) return b;
    }
    return -1;
}

/* Number of the axle's kit; -1: it has a bush of the first kit that is not on offer. */
static int kit_number(const gw_planner *p, gw_axle axle, const int *option)
{
    int k = 0;
    for (int i = 0; i < gw_choices(p); i++) {
        const gw_among *among = &p->out->offer.among[i];
        if (among->axle != axle) continue;
        int at = option[i] < 0 ? option_as_now(p, among) : option[i];
        if (at < 0) return -1;
        k = k * among->n_bushes + at;
    }
    return k;
}

/* `own`: a kit of the case, which may fit what is not on offer; -1: a combination. */
static gw_status ride_on(const gw_planner *p, gw_bench_kit *kit, gw_axle axle, int own, double *harsh,
                         double *loud, gw_error *err)
{
    int k = own < 0 ? kit_number(p, axle, kit->option) : -1;
    gw_status status = GW_OK;
    if (k >= 0) {
        *harsh = p->axle[axle].harsh[k];
        *loud = p->axle[axle].loud[k];
    } else {
        status = gw_kit_ride(p, kit, axle, harsh, loud, err);
        *harsh = 20.0 * log10(*harsh / p->base_harsh[axle]);
        *loud = 20.0 * log10(*loud / p->base_loud[axle]);
    }
    return status;
}

static gw_status ride(const gw_planner *p, gw_bench_kit *kit, int own, gw_combination *out, gw_error *err)
{
    gw_status status = GW_OK;
    if (!p->out->has_ride) return GW_OK;
    out->harshness = out->noise = -HUGE_VAL;
    for (int a = 0; a < GW_AXLES && status == GW_OK; a++) {
        double harsh = 0.0, loud = 0.0;
        if (!p->corner[a]) continue;
        status = ride_on(p, kit, (gw_axle)a, own, &harsh, &loud, err);
        out->harshness = fmax(out->harshness, harsh);
        out->noise = fmax(out->noise, loud);
    }
    return status;
}

static gw_status figures_of_fitted(const gw_planner *p, gw_bench_kit *kit, gw_road **road, double *value,
                                   double *unsteadiness, gw_error *err)
{
    gw_status status = GW_OK;
    double sum = 0.0;
    for (int a = 0; a < GW_AXLES && status == GW_OK; a++)
        if (p->corner[a]) status = gw_kit_alone(p, kit, (gw_axle)a, value, err);
    if (status == GW_OK) status = gw_kit_on_road(p, kit, road, value, err);
    for (int f = 0; f < p->out->n_figures; f++) sum += gw_unsteady_part(&p->out->figure[f], value[f]);
    *unsteadiness = status == GW_OK ? sqrt(sum / p->weights) : (double)NAN;
    return status;
}

gw_status gw_kit_figures(const gw_planner *p, gw_bench_kit *kit, gw_road **road, double *value,
                         double *unsteadiness, gw_error *err)
{
    gw_bench_kit_fit(p, kit);
    return figures_of_fitted(p, kit, road, value, unsteadiness, err);
}

/* -- the case's own kits, whatever they fit -- */

gw_status gw_own_kit(const gw_planner *p, int own, gw_combination *out, gw_error *err)
{
    gw_bench_kit *kit = NULL;
    gw_road *road = NULL;
    gw_car_cost cost = gw_car_cost_of(p->c, own);
    gw_status status = gw_bench_kit_open(p, &kit, err);
    if (status != GW_OK) return status;
    for (int a = 0; a < GW_AXLES; a++)
        if (p->c->has_corner[a])
            memcpy(kit->kit[1].fits[a], p->c->kits[own].fits[a],
                   (size_t)p->c->pairs[a].n_joints * sizeof(int));
    status = figures_of_fitted(p, kit, &road, out->value, &out->unsteadiness, err);
    if (!gw_is_serious(status)) status = ride(p, kit, own, out, err);
    out->price = cost.price;
    out->minutes = cost.minutes;
    out->cost = cost.price + p->out->hourly_rate * cost.minutes / 60.0;
    gw_road_close(road);
    gw_bench_kit_close(kit);
    return status;
}

/* As it was found among all combinations; false: it is none of them. */
static bool known_sum(const gw_planner *p, const int *option, double *unsteadiness)
{
    int front = kit_number(p, GW_FRONT, option), rear = kit_number(p, GW_REAR, option);
    if (front < 0 || rear < 0) return false;
    *unsteadiness = p->unsteadiness[p->axle[GW_FRONT].part[front] + p->axle[GW_REAR].part[rear]];
    return true;
}

static gw_status one(const gw_each_work *w, gw_bench_kit *kit, gw_road **road, gw_combination *out,
                     gw_error *err)
{
    const gw_planner *p = w->p;
    for (int i = 0; i < gw_choices(p); i++) kit->option[i] = out->option[i];
    gw_cost_of_options(p, out->option, out);
    bool known = w->flags & GW_EACH_IN_SUM && known_sum(p, out->option, &out->unsteadiness);
    gw_status status = known ? GW_OK : gw_kit_figures(p, kit, road, out->value, &out->unsteadiness, err);
    if (status != GW_OK) return w->flags & GW_EACH_MAY_FAIL && !gw_is_serious(status) ? GW_OK : status;
    return w->flags & GW_EACH_WITHOUT_RIDE ? GW_OK : ride(p, kit, -1, out, err);
}

static void work_block(void *context, int index)
{
    gw_each_work *w = context;
    gw_bench_kit *kit = NULL;
    gw_road *road = NULL;
    gw_status status = gw_bench_kit_open(w->p, &kit, &w->err[index]);
    for (int i = w->block * index; i < w->block * (index + 1) && i < w->n && status == GW_OK; i++)
        status = one(w, kit, &road, w->list[i], &w->err[index]);
    w->status[index] = status;
    gw_road_close(road);
    gw_bench_kit_close(kit);
}

gw_status gw_work_each(const gw_planner *p, gw_combination *const *list, int n, int flags, gw_error *err)
{
    int block = n > FEW ? BLOCK : 1, blocks = (n + block - 1) / block;
    gw_status status = GW_OK;
    gw_each_work w = { p,
                       list,
                       n,
                       flags,
                       block,
                       calloc((size_t)blocks + 1, sizeof *w.status),
                       calloc((size_t)blocks + 1, sizeof *w.err) };
    if (!w.status || !w.err) status = gw_fail(err, GW_E_NOMEM, "out of memory for combinations");
    if (status == GW_OK) gw_parallel(blocks, work_block, &w);
    for (int i = 0; i < blocks && status == GW_OK; i++)
        if (w.status[i] != GW_OK) status = gw_fail(err, w.status[i], "%s", w.err[i].msg);
    free(w.status);
    free(w.err);
    return status;
}
