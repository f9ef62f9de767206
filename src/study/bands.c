/* SPDX-License-Identifier: MIT */
/* Bands from slopes: every answer's, and of one less another in the same car. */
#include "giveway/bands.h"

#include "study/spread_parts.h"

#include <math.h>
#include <string.h>

/* What the functions here share. */
typedef struct gw_bands_work {
    const gw_spread_table *t;
    gw_bands_study *study;
    gw_error *err;
} gw_bands_work;

bool gw_is_close(const gw_half_band *b)
{
    return !(fabs(b->value) > b->half);
}

/* Two standard deviations of what is linear in independent z. */
static double half_of(const double *g, int n)
{
    double sum = 0.0;
    for (int j = 0; j < n; j++) sum += g[j] * g[j];
    return 2.0 * sqrt(sum);
}

/* Of `b` times its sign less `a` times its own. */
static gw_half_band between(const double *a, double sign_a, const double *b, double sign_b, double value,
                            int n)
{
    double sum = 0.0;
    for (int j = 0; j < n; j++) {
        double g = sign_b * b[j] - sign_a * a[j];
        sum += g * g;
    }
    return (gw_half_band){ value, isnan(value) ? (double)NAN : 2.0 * sqrt(sum) };
}

static double sign(double x)
{
    return x < 0.0 ? -1.0 : 1.0;
}

gw_half_band gw_bands_between(const gw_bands_study *s, const gw_bands_item *a, const gw_bands_item *b)
{
    double toe_a = a->own[GW_SPREAD_TOE].value, toe_b = b->own[GW_SPREAD_TOE].value;
    return between(a->toe, sign(toe_a), b->toe, sign(toe_b), fabs(toe_b) - fabs(toe_a), s->n_figures);
}

gw_half_band gw_bands_between_kits(const gw_bands_study *s, const gw_bands_kit *a, const gw_bands_kit *b)
{
    return between(a->slope, 1.0, b->slope, 1.0, b->unsteadiness.value - a->unsteadiness.value, s->n_figures);
}

const gw_bands_item *gw_bands_find(const gw_bands_study *s, int kit, gw_axle axle, int load,
                                   gw_wheel_side wheel)
{
    const gw_bands_item *first = NULL;
    for (int i = 0; i < s->n; i++) {
        const gw_bands_item *it = &s->item[i];
        gw_wheel_side is = it->manoeuvre ? gw_wheel_of_side(it->side) : it->wheel;
        if (it->kit != kit || it->axle != axle || it->load != load) continue;
        if (is == wheel) return it;
        if (!first) first = it;
    }
    return first;
}

const gw_bands_kit *gw_bands_kit_of(const gw_bands_study *s, int kit)
{
    for (int k = 0; k < s->n_kits; k++)
        if (s->kit[k].kit == kit) return &s->kit[k];
    return NULL;
}

/* Slopes of one column, or less another, into `g`. */
static gw_half_band quantity(const gw_bands_work *w, int column, int base, double *g)
{
    const gw_spread_table *t = w->t;
    const int n = t->plan.n_columns;
    const double value = t->nominal[column] - (base < 0 ? 0.0 : t->nominal[base]);
    for (int j = 0; j < t->n_figures; j++) {
        const double *row = t->slope + (long)j * n;
        g[j] = row[column] - (base < 0 ? 0.0 : row[base]);
    }
    return (gw_half_band){ value, isnan(value) ? (double)NAN : half_of(g, t->n_figures) };
}

static gw_status make_item(const gw_bands_work *w, const gw_car_slot *slot, double *scratch,
                           gw_bands_item *out)
{
    const gw_car_slot *base = &w->t->plan.slot[slot->base];
    double *toe = gw_arena_alloc(&w->study->arena, (size_t)w->t->n_figures + 1, sizeof *toe);
    if (!toe) return gw_fail(w->err, GW_E_NOMEM, "out of memory for bands");
    *out = (gw_bands_item){ .kit = slot->kit,
                            .load = slot->load,
                            .axle = slot->axle,
                            .manoeuvre = slot->manoeuvre,
                            .side = slot->side,
                            .sided = slot->sided,
                            .wheel = slot->wheel,
                            .has_difference = slot->kit != w->study->first_kit,
                            .toe = toe };
    for (int q = 0; q < GW_SPREAD_QUANTITIES; q++) {
        out->own[q] = quantity(w, slot->first + q, -1, q == GW_SPREAD_TOE ? toe : scratch);
        if (out->has_difference) out->difference[q] = quantity(w, slot->first + q, base->first + q, scratch);
    }
    return GW_OK;
}

/* |b| < |a| exactly where (b - a) (b + a) < 0: the order is sure only where both keep their signs. The
 * difference of the sizes alone would not see a figure that all kits share turn the toe of each the other
 * way. */
static bool is_order_open(const gw_bands_study *s, const gw_bands_item *a, const gw_bands_item *b)
{
    const double toe_a = a->own[GW_SPREAD_TOE].value, toe_b = b->own[GW_SPREAD_TOE].value;
    const gw_half_band less = between(a->toe, 1.0, b->toe, 1.0, toe_b - toe_a, s->n_figures);
    const gw_half_band sum = between(a->toe, -1.0, b->toe, 1.0, toe_b + toe_a, s->n_figures);
    return gw_is_close(&less) || gw_is_close(&sum);
}

static gw_status make_items(const gw_bands_work *w, double *scratch)
{
    const gw_car_plan *plan = &w->t->plan;
    gw_bands_study *s = w->study;
    s->item = gw_arena_alloc(&s->arena, (size_t)plan->n_slots + 1, sizeof *s->item);
    if (!s->item) return gw_fail(w->err, GW_E_NOMEM, "out of memory for bands");
    for (int i = 0; i < plan->n_slots; i++) {
        gw_status status = make_item(w, &plan->slot[i], scratch, &s->item[s->n++]);
        if (status != GW_OK) return status;
    }
    for (int i = 0; i < s->n; i++) {
        const gw_bands_item *base = &s->item[plan->slot[i].base];
        s->item[i].close = s->item[i].has_difference && is_order_open(s, base, &s->item[i]);
    }
    return GW_OK;
}

/* The unsteadiness and its slopes: through every column that plays a part. `by` holds a number a column. */
static void make_kit(const gw_bands_work *w, double *by, gw_bands_kit *out, double *slope)
{
    const gw_car_plan *plan = &w->t->plan;
    memset(by, 0, (size_t)plan->n_columns * sizeof *by);
    out->slope = slope;
    out->unsteadiness.value = gw_car_unsteadiness(plan, out->kit, w->t->nominal, by);
    for (int j = 0; j < w->t->n_figures; j++) {
        const double *row = w->t->slope + (long)j * plan->n_columns;
        slope[j] = 0.0;
        for (int i = 0; i < plan->n_columns; i++) slope[j] += isnan(by[i]) ? 0.0 : by[i] * row[i];
    }
    out->unsteadiness.half = isnan(out->unsteadiness.value) ? (double)NAN : half_of(slope, w->t->n_figures);
}

static bool is_wanted(const gw_bands_study *s, int kit)
{
    for (int i = 0; i < s->n; i++)
        if (s->item[i].kit == kit) return true;
    return false;
}

static gw_status make_kits(const gw_bands_work *w, const gw_case *c)
{
    gw_bands_study *s = w->study;
    s->kit = gw_arena_alloc(&s->arena, (size_t)c->n_kits + 1, sizeof *s->kit);
    double *by = gw_arena_alloc(&s->arena, (size_t)w->t->plan.n_columns + 1, sizeof *by);
    if (!s->kit || !by) return gw_fail(w->err, GW_E_NOMEM, "out of memory for bands");
    for (int k = 0; k < c->n_kits; k++) {
        gw_bands_kit *out = &s->kit[s->n_kits];
        double *slope = gw_arena_alloc(&s->arena, (size_t)s->n_figures + 1, sizeof *slope);
        if (!slope) return gw_fail(w->err, GW_E_NOMEM, "out of memory for bands");
        if (!is_wanted(s, k)) continue;
        *out = (gw_bands_kit){ .kit = k, .has_difference = k != s->first_kit };
        make_kit(w, by, out, slope);
        s->n_kits++;
        if (!out->has_difference) continue;
        out->difference = gw_bands_between_kits(s, &s->kit[0], out);
        out->close = gw_is_close(&out->difference);
    }
    return GW_OK;
}

static gw_status share_all(const gw_bands_work *w, double *left)
{
    gw_bands_study *s = w->study;
    double whole = 0.0, sum = 0.0;
    s->share = gw_arena_alloc(&s->arena, (size_t)s->n_figures + 1, sizeof *s->share);
    if (!s->share) return gw_fail(w->err, GW_E_NOMEM, "out of memory for bands");
    for (int j = 0; j < s->n_figures; j++) {
        left[j] = 0.0;
        for (int i = 0; i < s->n; i++) left[j] += s->item[i].toe[j] * s->item[i].toe[j];
        whole += left[j];
    }
    for (int j = 0; j < s->n_figures; j++) s->share[j] = left[j] = whole > 0.0 ? left[j] / whole : 0.0;
    while (whole > 0.0 && sum < 0.8 && s->n_needed < s->n_figures) {
        int most = 0;
        for (int j = 1; j < s->n_figures; j++)
            if (left[j] > left[most]) most = j;
        sum += left[most];
        left[most] = -1.0;
        s->n_needed++;
    }
    return GW_OK;
}

gw_status gw_study_bands(const gw_case *c, const gw_selection *wanted, gw_bands_study *out, gw_error *err)
{
    gw_bands_study study = { .figure = c->uncertain.figure };
    const gw_spread_options none = { 0 };
    gw_spread_table table = { 0 };
    const gw_bands_work w = { &table, &study, err };
    gw_status status = gw_spread_fill(c, wanted, &none, &study.arena, &table, err);
    study.n_figures = table.n_figures;
    study.first_kit = table.plan.first_kit;
    double *scratch = gw_arena_alloc(&study.arena, (size_t)study.n_figures + 1, sizeof *scratch);
    if (status == GW_OK && !scratch) status = gw_fail(err, GW_E_NOMEM, "out of memory for bands");
    if (status == GW_OK) status = make_items(&w, scratch);
    if (status == GW_OK) status = make_kits(&w, c);
    if (status == GW_OK) status = share_all(&w, scratch);
    gw_spread_table_free(&table);
    if (status != GW_OK) {
        gw_bands_study_free(&study);
        return status;
    }
    *out = study;
    return GW_OK;
}

void gw_bands_study_free(gw_bands_study *study)
{
    gw_arena_free(&study->arena);
    *study = (gw_bands_study){ 0 };
}
