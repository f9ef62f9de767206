/* SPDX-License-Identifier: MIT */
/* From the table of all cars to the results: quantity by quantity, and less the first kit. */
#include "giveway/spread.h"

#include "study/spread_parts.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* What the functions here share: scratch for one quantity over all draws. */
typedef struct gw_spread_work {
    gw_spread_table *t;
    const gw_spread_options *o;
    gw_spread_study *study;
    double *values, *linear; /* [draw] */
    double *deviation;       /* [draw][figure] of z from the centre */
    gw_error *err;
} gw_spread_work;

static double value(const gw_spread_table *t, long draw, int column)
{
    return t->value[draw * t->plan.n_columns + column];
}

/* Column less column `base` (-1: alone) of one car's row. */
static double less(const double *row, int column, int base)
{
    return base < 0 ? row[column] : row[column] - row[base];
}

/* Of what was had in no draw. */
static const gw_spread_band NOT_HAD = { NAN, NAN, NAN, NAN, NAN, NAN };

/* The band and the slopes of one quantity, over the draws in which it was had; returns their number. */
static long one_quantity(gw_spread_work *w, int column, int base, gw_spread_band *band, gw_slopes *slopes)
{
    gw_spread_table *t = w->t;
    const int columns = t->plan.n_columns, figures = t->n_figures;
    long n = 0;
    for (int j = 0; j < figures; j++) slopes->g[j] = less(t->slope + (long)j * columns, column, base);
    gw_spread_shares(w->o, figures, slopes->g, slopes->share, &slopes->moved);
    slopes->n_ranked = gw_spread_rank(slopes->share, figures, slopes->ranked);
    for (long i = 0; i < t->draws; i++) {
        double v = less(t->value + i * columns, column, base), sum = 0.0;
        if (isnan(v)) continue;
        for (int j = 0; j < figures; j++) sum += slopes->g[j] * w->deviation[i * figures + j];
        w->values[n] = v;
        w->linear[n++] = sum;
    }
    slopes->linear_r2 = slopes->moved && n > 1 ? gw_spread_r2(w->values, w->linear, n) : (double)NAN;
    *band = NOT_HAD;
    band->nominal = less(t->nominal, column, base);
    if (n > 0) gw_spread_band_of(w->values, n, band);
    return n;
}

static gw_status part(gw_spread_work *w, const gw_car_slot *slot, int base, gw_spread_part *out)
{
    int n = slot->load >= 0 ? (int)GW_SPREAD_QUANTITIES : (int)GW_SPREAD_RIDE_QUANTITIES;
    for (int q = 0; q < n; q++) {
        size_t room = (size_t)w->t->n_figures + 1;
        gw_slopes *s = &out->slopes[q];
        s->g = gw_arena_alloc(&w->study->arena, room, sizeof *s->g);
        s->share = gw_arena_alloc(&w->study->arena, room, sizeof *s->share);
        s->ranked = gw_arena_alloc(&w->study->arena, room, sizeof *s->ranked);
        if (!s->g || !s->share || !s->ranked) return gw_fail(w->err, GW_E_NOMEM, "out of memory for results");
        out->draws = one_quantity(w, slot->first + q, base < 0 ? -1 : base + q, &out->band[q], s);
    }
    return GW_OK;
}

/* Share of the draws in which the toe change is the smaller in size; equal: half. */
static double better_share(const gw_spread_table *t, int column, int base)
{
    double better = 0.0;
    long n = 0;
    for (long i = 0; i < t->draws; i++) {
        double a = fabs(value(t, i, column)), b = fabs(value(t, i, base));
        if (isnan(a) || isnan(b)) continue;
        better += a < b ? 1.0 : a == b ? 0.5 : 0.0;
        n++;
    }
    return n ? better / (double)n : (double)NAN;
}

static gw_status item_of(gw_spread_work *w, const gw_car_slot *slot, gw_spread_item *out)
{
    const gw_spread_table *t = w->t;
    const gw_car_slot *base = &t->plan.slot[slot->base];
    *out = (gw_spread_item){ .kit = slot->kit, .load = slot->load, .axle = slot->axle };
    out->manoeuvre = slot->manoeuvre;
    out->side = slot->side;
    out->sided = slot->sided;
    out->wheel = slot->wheel;
    gw_status status = part(w, slot, -1, &out->own);
    out->failed = t->draws - out->own.draws;
    out->has_difference = slot->kit > 0 && slot->load >= 0;
    if (status != GW_OK || !out->has_difference) return status;
    out->better = better_share(t, slot->first, base->first);
    return part(w, slot, base->first, &out->difference);
}

static bool is_wanted(const gw_selection *wanted, const gw_car_slot *slot)
{
    if (wanted->kits && !wanted->kits[slot->kit]) return false;
    if (wanted->only_axle && wanted->axle != slot->axle) return false;
    return slot->load < 0 || !wanted->loads || wanted->loads[slot->load];
}

static gw_status make_items(gw_spread_work *w, const gw_selection *wanted)
{
    const gw_car_plan *plan = &w->t->plan;
    gw_spread_study *study = w->study;
    study->item = gw_arena_alloc(&study->arena, (size_t)plan->n_slots + 1, sizeof *study->item);
    if (!study->item) return gw_fail(w->err, GW_E_NOMEM, "out of memory for results");
    for (int s = 0; s < plan->n_slots; s++) {
        if (!is_wanted(wanted, &plan->slot[s])) continue;
        gw_status status = item_of(w, &plan->slot[s], &study->item[study->n++]);
        if (status != GW_OK) return status;
    }
    return GW_OK;
}

static void sum_kit(gw_spread_work *w, const double *rms, int n_kits, gw_spread_summary *out)
{
    long both = 0, all = 0, steadier = 0, steadiest = 0;
    for (long i = 0; i < w->t->draws; i++) {
        const double *row = rms + i * n_kits;
        double own = row[out->kit];
        bool every = true, least = true;
        if (isnan(own)) continue;
        w->values[out->draws++] = own;
        if (!isnan(row[0])) {
            both++;
            steadier += own < row[0];
        }
        for (int k = 0; k < n_kits; k++) {
            every = every && !isnan(row[k]);
            least = least && !(row[k] < own);
        }
        if (!every) continue;
        all++;
        steadiest += least;
    }
    out->steadier = out->kit > 0 && both ? (double)steadier / (double)both : (double)NAN;
    out->steadiest = all ? (double)steadiest / (double)all : (double)NAN;
    if (out->draws) gw_spread_band_of(w->values, out->draws, &out->unsteadiness);
}

static gw_status summarise(gw_spread_work *w, const gw_case *c)
{
    gw_spread_study *study = w->study;
    gw_spread_table *t = w->t;
    double *rms = malloc((size_t)t->draws * (size_t)c->n_kits * sizeof *rms);
    study->summary = gw_arena_alloc(&study->arena, (size_t)c->n_kits + 1, sizeof *study->summary);
    if (!rms || !study->summary) {
        free(rms);
        return gw_fail(w->err, GW_E_NOMEM, "out of memory for results");
    }
    for (long i = 0; i < t->draws; i++)
        for (int k = 0; k < c->n_kits; k++)
            rms[i * c->n_kits + k] = gw_car_unsteadiness(&t->plan, k, t->value + i * t->plan.n_columns, NULL);
    study->n_kits = c->n_kits;
    for (int k = 0; k < c->n_kits; k++) {
        study->summary[k].kit = k;
        study->summary[k].unsteadiness = NOT_HAD;
        study->summary[k].unsteadiness.nominal = gw_car_unsteadiness(&t->plan, k, t->nominal, NULL);
        sum_kit(w, rms, c->n_kits, &study->summary[k]);
    }
    free(rms);
    return GW_OK;
}

/* All toe changes together: what each figure adds to the sum of their variances. */
static gw_status share_all(gw_spread_work *w)
{
    const gw_spread_table *t = w->t;
    const int n = t->n_figures;
    double *own = calloc(2 * (size_t)n + 1, sizeof *own), whole = 0.0;
    w->study->share = gw_arena_alloc(&w->study->arena, (size_t)n + 1, sizeof *w->study->share);
    w->study->ranked = gw_arena_alloc(&w->study->arena, (size_t)n + 1, sizeof *w->study->ranked);
    if (!own || !w->study->share || !w->study->ranked) {
        free(own);
        return gw_fail(w->err, GW_E_NOMEM, "out of memory for results");
    }
    double *all = w->study->share, *g = own + n;
    for (int s = 0; s < t->plan.n_slots; s++) {
        bool moved;
        double variance = 0.0;
        if (t->plan.slot[s].load < 0) continue;
        for (int j = 0; j < n; j++)
            g[j] = t->slope[(long)j * t->plan.n_columns + t->plan.slot[s].first + GW_SPREAD_TOE];
        gw_spread_shares(w->o, n, g, own, &moved);
        for (int j = 0; j < n; j++) {
            double along = w->o->covariance ? 0.0 : g[j];
            for (int k = 0; k < n && w->o->covariance; k++) along += w->o->covariance[j * n + k] * g[k];
            variance += g[j] * along;
        }
        for (int j = 0; j < n; j++) all[j] += own[j] * variance;
        whole += variance;
    }
    for (int j = 0; j < n; j++) all[j] = whole > 0.0 ? all[j] / whole : 0.0;
    w->study->n_ranked = gw_spread_rank(all, n, w->study->ranked);
    free(own);
    return GW_OK;
}

static gw_status warn(gw_spread_work *w, const gw_case *c, const gw_spread_item *item)
{
    gw_error line = { 0 };
    gw_spread_study *study = w->study;
    if (item->why || (double)item->failed <= 0.05 * (double)w->t->draws) return GW_OK;
    gw_fail(&line, GW_OK, "kit %s, %s corner%s%s: %ld of %ld draws could not be had and are left out",
            c->kits[item->kit].name, c->corners[item->axle].name, item->load >= 0 ? ", " : ", ride",
            item->load >= 0 ? c->loads[item->load].name : "", item->failed, w->t->draws);
    const char *kept = gw_arena_strdup(&study->arena, line.msg);
    if (!kept) return gw_fail(w->err, GW_E_NOMEM, "out of memory for warnings");
    return gw_run_add_warnings(&study->arena, &study->warning, &study->n_warnings, &kept, 1, w->err);
}

static gw_status tell_figures(gw_spread_work *w)
{
    gw_spread_study *s = w->study;
    const gw_spread_options *o = w->o;
    s->drawn = gw_arena_alloc(&s->arena, (size_t)s->n_figures + 1, sizeof *s->drawn);
    if (!s->drawn) return gw_fail(w->err, GW_E_NOMEM, "out of memory for results");
    for (int i = 0; i < s->n_figures; i++) {
        const gw_unsure *f = &s->figure[i];
        double z = o->centre ? o->centre[i] : 0.0;
        double sd = o->covariance ? sqrt(o->covariance[i * s->n_figures + i]) : 1.0;
        s->drawn[i] = (gw_spread_figure){ f->of, gw_unsure_at(f, z), gw_unsure_at(f, z - 2.0 * sd),
                                          gw_unsure_at(f, z + 2.0 * sd) };
    }
    return GW_OK;
}

static gw_status check(const gw_case *c, gw_error *err)
{
    if (!c->has_corner[GW_FRONT] && !c->has_corner[GW_REAR])
        return gw_fail(err, GW_E_SCHEMA, "%s: corners: the case describes no corner to load", c->path);
    if (c->n_loads == 0)
        return gw_fail(err, GW_E_SCHEMA, "%s: loads: the case has no loads; add at least one", c->path);
    return GW_OK;
}

static const gw_deflection *find_failed(const gw_deflect_study *d, const gw_spread_item *item)
{
    for (int i = 0; i < d->n; i++) {
        const gw_deflection *f = &d->item[i];
        if (f->failed && f->kit == item->kit && f->axle == item->axle && f->load == item->load) return f;
    }
    return NULL;
}

/* Of what the case as written does not carry, the reason as deflect gives it; with readings the car in the
 * middle is another, and may be the one that does not. */
static gw_status give_reasons(gw_spread_work *w, const gw_case *c, const gw_selection *wanted)
{
    gw_spread_study *study = w->study;
    gw_deflect_study told = { 0 };
    gw_status status = GW_OK;
    bool asked = false;
    for (int i = 0; i < study->n && status == GW_OK; i++) {
        gw_spread_item *item = &study->item[i];
        if (item->load < 0 || !isnan(item->own.band[GW_SPREAD_TOE].nominal)) continue;
        if (!asked) status = gw_study_deflect(c, wanted, &told, w->err);
        asked = true;
        if (status != GW_OK) break;
        const gw_deflection *failed = find_failed(&told, item);
        item->why = gw_arena_strdup(&study->arena, failed ? failed->failed
                                                          : "not carried by the car that the readings leave");
        if (!item->why) status = gw_fail(w->err, GW_E_NOMEM, "out of memory for results");
        study->n_not_carried++;
    }
    gw_deflect_study_free(&told);
    return status;
}

static gw_status evaluate(gw_spread_work *w, const gw_case *c, const gw_selection *wanted)
{
    gw_spread_table *t = w->t;
    w->values = malloc((size_t)t->draws * sizeof *w->values);
    w->linear = malloc((size_t)t->draws * sizeof *w->linear);
    w->deviation = malloc(((size_t)t->draws * (size_t)t->n_figures + 1) * sizeof *w->deviation);
    if (!w->values || !w->linear || !w->deviation)
        return gw_fail(w->err, GW_E_NOMEM, "out of memory for results");
    for (long i = 0; i < t->draws; i++)
        gw_spread_deviation(w->o, t->n_figures, i, w->deviation + i * t->n_figures);
    gw_status status = make_items(w, wanted);
    if (status == GW_OK) status = give_reasons(w, c, wanted);
    if (status == GW_OK) status = summarise(w, c);
    if (status == GW_OK) status = share_all(w);
    if (status == GW_OK) status = tell_figures(w);
    for (int i = 0; i < w->study->n && status == GW_OK; i++) status = warn(w, c, &w->study->item[i]);
    return status;
}

gw_status gw_study_spread(const gw_case *c, const gw_selection *wanted, const gw_spread_options *options,
                          gw_spread_study *out, gw_error *err)
{
    gw_spread_study study = { .options = *options, .figure = c->uncertain.figure };
    gw_spread_table table = { 0 };
    if (study.options.draws == 0) study.options.draws = GW_SPREAD_USUAL;
    gw_spread_work w = { .t = &table, .o = &study.options, .study = &study, .err = err };
    gw_status status = check(c, err);
    if (status == GW_OK) status = gw_spread_fill(c, wanted, &study.options, &study.arena, &table, err);
    study.n_figures = table.n_figures;
    if (status == GW_OK) status = evaluate(&w, c, wanted);
    free(w.values);
    free(w.linear);
    free(w.deviation);
    gw_spread_table_free(&table);
    if (status != GW_OK) {
        gw_spread_study_free(&study);
        return status;
    }
    *out = study;
    return GW_OK;
}

void gw_spread_study_free(gw_spread_study *study)
{
    gw_arena_free(&study->arena);
    *study = (gw_spread_study){ 0 };
}
