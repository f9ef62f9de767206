/* SPDX-License-Identifier: MIT */
/* From the table of all combinations to what is told of them. */
#include "giveway/casefile.h"
#include "study/choose_parts.h"

#include <math.h>
#include <stdlib.h>

static const double WITHIN = 1e-6;

static double limited(const gw_combination *of, gw_choose_limit limit)
{
    const double figure[GW_LIMITS] = { of->price, of->minutes, of->cost, of->harshness, of->noise };
    return figure[limit];
}

bool gw_is_within_limits(const gw_planner *p, const gw_combination *of, int but)
{
    const gw_choose *offer = &p->out->offer;
    for (int l = 0; l < GW_LIMITS; l++)
        if (l != but && offer->has_limit[l] && limited(of, (gw_choose_limit)l) > offer->limit[l] + WITHIN)
            return false;
    return true;
}

static double shown(const gw_planner *p)
{
    return gw_goal_unit(p->out->in_mm ? GW_GOAL_FORE_AFT : GW_GOAL_TOE);
}

/* Everything of a combination but its figures. */
static gw_combination look_up(const gw_planner *p, int front, int rear)
{
    gw_combination out = { 0 };
    const int kit[GW_AXLES] = { front, rear };
    out.unsteadiness = p->unsteadiness[p->axle[GW_FRONT].part[front] + p->axle[GW_REAR].part[rear]];
    out.harshness = out.noise = p->out->has_ride ? -HUGE_VAL : 0.0;
    for (int a = 0; a < GW_AXLES && p->out->has_ride; a++) {
        if (!p->corner[a]) continue;
        out.harshness = fmax(out.harshness, p->axle[a].harsh[kit[a]]);
        out.noise = fmax(out.noise, p->axle[a].loud[kit[a]]);
    }
    gw_cost_of_pair(p, front, rear, &out);
    return out;
}

static double lesser(double a, double b)
{
    return isnan(a) || b < a ? b : a;
}

/* One combination into what is counted of all, and into the list of those within the limits. */
static void count(gw_planner *p, const gw_combination *of, int number, gw_rated *rated)
{
    gw_choose_study *out = p->out;
    if (isnan(of->unsteadiness)) {
        out->failed++;
        return;
    }
    for (int l = 0; l < GW_LIMITS; l++) {
        out->least[l] = lesser(out->least[l], limited(of, (gw_choose_limit)l));
        if (out->offer.has_limit[l] && gw_is_within_limits(p, of, l))
            out->freed[l] = lesser(out->freed[l], of->unsteadiness);
    }
    out->unlimited = lesser(out->unlimited, of->unsteadiness);
    if (!gw_is_within_limits(p, of, -1)) return;
    rated[out->within_limits++] = (gw_rated){ .unsteadiness = of->unsteadiness / shown(p),
                                              .harshness = of->harshness,
                                              .cost = of->cost,
                                              .number = number };
}

static void count_all(gw_planner *p, gw_rated *rated)
{
    for (int l = 0; l < GW_LIMITS; l++) p->out->least[l] = p->out->freed[l] = (double)NAN;
    p->out->unlimited = (double)NAN;
    for (int f = 0; f < p->axle[GW_FRONT].n; f++)
        for (int r = 0; r < p->axle[GW_REAR].n; r++) {
            gw_combination of = look_up(p, f, r);
            count(p, &of, p->axle[GW_FRONT].part[f] + p->axle[GW_REAR].part[r], rated);
        }
}

static gw_status make_front(gw_planner *p, const gw_rated *rated, int n, gw_error *err)
{
    gw_choose_study *out = p->out;
    gw_combination **list = gw_arena_alloc(p->arena, (size_t)n + 1, sizeof(gw_combination *));
    out->front = gw_arena_alloc(p->arena, (size_t)n + 1, sizeof *out->front);
    if (!list || !out->front) return gw_fail(err, GW_E_NOMEM, "out of memory for the front");
    for (int i = 0; i < n; i++) {
        gw_combination *of = list[i] = &out->front[i];
        gw_status status = gw_combination_make(p, of, err);
        if (status != GW_OK) return status;
        gw_combination_options(p, rated[i].number, of->option);
        of->step = rated[i].step;
    }
    out->n_front = n;
    return gw_work_each(p, list, n, 0, err);
}

static void recommend(gw_planner *p, const gw_rated *rated, int n)
{
    static const char *const NAMES[GW_RECOMMENDED] = { "value", "quiet", "steady" };
    gw_choose_study *out = p->out;
    int member[GW_RECOMMENDED];
    out->has_recommended = gw_recommend(rated, n, out->now.unsteadiness / shown(p), member);
    for (int i = 0; i < GW_RECOMMENDED && out->has_recommended; i++)
        out->recommended[i] =
            (gw_recommendation){ .name = NAMES[i],
                                 .member = member[i],
                                 .gain = out->now.unsteadiness - out->front[member[i]].unsteadiness };
}

gw_status gw_choose_results(gw_planner *p, gw_error *err)
{
    const gw_choose *offer = &p->out->offer;
    gw_rated *rated = calloc((size_t)p->out->combinations + 1, sizeof *rated);
    if (!rated) return gw_fail(err, GW_E_NOMEM, "out of memory for the front");
    count_all(p, rated);
    int n =
        gw_front_of(rated, p->out->within_limits, offer->tell_unsteadiness / shown(p), offer->tell_harshness);
    gw_status status = n < 0 ? gw_fail(err, GW_E_NOMEM, "out of memory for the front") : GW_OK;
    if (status == GW_OK) status = make_front(p, rated, n, err);
    if (status == GW_OK) recommend(p, rated, n);
    free(rated);
    return status;
}
