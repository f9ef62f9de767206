/* SPDX-License-Identifier: MIT */
/* What to fit first: single changes of the first kit, and the order that leads to a recommendation. */
#include "study/choose_parts.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static const double SAME = 1e-6 * 0.017453292519943295; /* of what is told, in rad; in m less still */

/* The option puts another bush into a joint of the choice than the first kit has there. */
static bool is_change(const gw_planner *p, int choice, int option)
{
    const gw_among *among = &p->out->offer.among[choice];
    for (int j = 0; j < among->n_joints; j++)
        if (among->bush[option] != p->c->kits[0].fits[among->axle][among->joint[j]]) return true;
    return false;
}

/* -- swaps -- */

static int by_gain(const void *a, const void *b)
{
    const gw_swap *x = a, *y = b;
    if (x->gain != y->gain) return x->gain > y->gain ? -1 : 1;
    if (x->choice != y->choice) return x->choice < y->choice ? -1 : 1;
    return (x->option > y->option) - (x->option < y->option);
}

static gw_status list_swaps(gw_planner *p, gw_combination **list, gw_error *err)
{
    gw_choose_study *out = p->out;
    for (int i = 0; i < gw_choices(p); i++)
        for (int b = 0; b < out->offer.among[i].n_bushes; b++) {
            if (!is_change(p, i, b)) continue;
            gw_swap *swap = &out->swap[out->n_swaps];
            *swap = (gw_swap){ .choice = i, .option = b };
            gw_status status = gw_combination_make(p, &swap->is, err);
            if (status != GW_OK) return status;
            for (int c = 0; c < gw_choices(p); c++) swap->is.option[c] = -1;
            swap->is.option[i] = b;
            list[out->n_swaps++] = &swap->is;
        }
    return GW_OK;
}

gw_status gw_choose_swaps(gw_planner *p, gw_error *err)
{
    gw_choose_study *out = p->out;
    size_t room = 1;
    int kept = 0;
    for (int i = 0; i < gw_choices(p); i++) room += (size_t)out->offer.among[i].n_bushes;
    gw_combination **list = gw_arena_alloc(p->arena, room, sizeof(gw_combination *));
    out->swap = gw_arena_alloc(p->arena, room, sizeof *out->swap);
    if (!list || !out->swap) return gw_fail(err, GW_E_NOMEM, "out of memory for single changes");
    gw_status status = list_swaps(p, list, err);
    if (status == GW_OK) status = gw_work_each(p, list, out->n_swaps, GW_EACH_MAY_FAIL | GW_EACH_IN_SUM, err);
    for (int i = 0; i < out->n_swaps && status == GW_OK; i++) {
        gw_swap *swap = &out->swap[i];
        if (isnan(swap->is.unsteadiness)) continue; /* it cannot carry a goal's load */
        swap->gain = out->now.unsteadiness - swap->is.unsteadiness;
        swap->within_limits = gw_is_within_limits(p, &swap->is, -1);
        out->swap[kept++] = *swap;
    }
    out->n_swaps = kept;
    if (kept) qsort(out->swap, (size_t)kept, sizeof *out->swap, by_gain);
    return status;
}

/* -- the order of fitting -- */

typedef struct gw_order_work {
    gw_combination *trial; /* [fitting still to come] */
    gw_combination **list;
    int *choice; /* [fitting still to come] */
    int n;
} gw_order_work;

static gw_status order_open(gw_planner *p, gw_order_work *w, gw_error *err)
{
    size_t n = (size_t)gw_choices(p);
    gw_status status = GW_OK;
    *w = (gw_order_work){ gw_arena_alloc(p->arena, n, sizeof *w->trial),
                          gw_arena_alloc(p->arena, n, sizeof(gw_combination *)),
                          gw_arena_alloc(p->arena, n, sizeof *w->choice), 0 };
    if (!w->trial || !w->list || !w->choice) return gw_fail(err, GW_E_NOMEM, "out of memory for the order");
    for (size_t i = 0; i < n && status == GW_OK; i++) {
        w->list[i] = &w->trial[i];
        status = gw_combination_make(p, &w->trial[i], err);
    }
    return status;
}

/* The next fitting: the first of those that leave least unsteadiness. */
static int next_of(const gw_order_work *w)
{
    int best = 0;
    for (int i = 1; i < w->n; i++) {
        double u = w->trial[i].unsteadiness, least = w->trial[best].unsteadiness;
        if (!isnan(u) && (isnan(least) || u < least - SAME)) best = i;
    }
    return best;
}

static gw_status fit_next(gw_planner *p, gw_order_work *w, const gw_combination *goal, int *fitted,
                          gw_recommendation *out, gw_error *err)
{
    size_t n = (size_t)gw_choices(p) * sizeof *fitted;
    for (int i = 0; i < w->n; i++) {
        memcpy(w->trial[i].option, fitted, n);
        w->trial[i].option[w->choice[i]] = goal->option[w->choice[i]];
    }
    gw_status status =
        gw_work_each(p, w->list, w->n, GW_EACH_MAY_FAIL | GW_EACH_WITHOUT_RIDE | GW_EACH_IN_SUM, err);
    if (status != GW_OK) return status;
    int best = next_of(w), choice = w->choice[best];
    fitted[choice] = goal->option[choice];
    out->order[out->n_order++] = (gw_choose_fitting){ choice, fitted[choice], w->trial[best].unsteadiness };
    w->n--;
    for (int i = best; i < w->n; i++) w->choice[i] = w->choice[i + 1];
    return GW_OK;
}

static gw_status order_of(gw_planner *p, gw_recommendation *out, gw_error *err)
{
    gw_order_work w = { 0 };
    const gw_combination *goal = &p->out->front[out->member];
    int *fitted = gw_arena_alloc(p->arena, (size_t)gw_choices(p), sizeof *fitted);
    out->order = gw_arena_alloc(p->arena, (size_t)gw_choices(p), sizeof *out->order);
    gw_status status = fitted && out->order ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for the order");
    if (status == GW_OK) status = order_open(p, &w, err);
    for (int i = 0; i < gw_choices(p) && status == GW_OK; i++) {
        fitted[i] = -1;
        if (is_change(p, i, goal->option[i])) w.choice[w.n++] = i;
    }
    while (status == GW_OK && w.n) status = fit_next(p, &w, goal, fitted, out, err);
    return status;
}

gw_status gw_choose_orders(gw_planner *p, gw_error *err)
{
    gw_choose_study *out = p->out;
    gw_status status = GW_OK;
    for (int i = 0; i < GW_RECOMMENDED && out->has_recommended && status == GW_OK; i++) {
        int same = 0;
        while (same < i && out->recommended[same].member != out->recommended[i].member) same++;
        if (same == i) {
            status = order_of(p, &out->recommended[i], err);
            continue;
        }
        out->recommended[i].n_order = out->recommended[same].n_order;
        out->recommended[i].order = out->recommended[same].order;
    }
    return status;
}
