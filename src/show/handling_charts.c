/* SPDX-License-Identifier: MIT */
#include "show/handling_charts.h"

#include "giveway/units.h"
#include "show/deflect.h"
#include "show/handling.h"
#include "show/phrase.h"

#include <math.h>
#include <stdio.h>

enum { TEXT = 240 };

static const char *kit_name(const gw_comparison *cmp, int kit)
{
    const gw_kit *k = &cmp->c->kits[kit];
    return k->label ? k->label : k->name;
}

static gw_status no_memory(gw_error *err)
{
    return gw_fail(err, GW_E_NOMEM, "out of memory for a chart");
}

/* ---- where camber and toe come from ---- */

enum { MOST_CAUSES = 5 };

typedef struct gw_causes {
    const char *name[MOST_CAUSES];
    double value[MOST_CAUSES]; /* [deg] */
    int n;
} gw_causes;

static void add_cause(gw_causes *to, const char *name, double angle)
{
    to->name[to->n] = name;
    to->value[to->n++] = angle / GW_DEG;
}

/* A body that leans turns no wheel about its vertical. */
static gw_causes causes_of(const gw_corner_budget *b, bool camber)
{
    const gw_angle_parts *a = camber ? &b->camber : &b->toe;
    gw_causes causes = { .n = 0 };
    if (camber) add_cause(&causes, b->on_road ? "body roll on springs" : "body roll", a->roll);
    if (camber && b->on_road) add_cause(&causes, "roll on tyres", a->tyre);
    add_cause(&causes, b->on_road ? "travel in roll" : "suspension travel", a->travel);
    if (b->on_road) add_cause(&causes, "jacking, dive, squat", a->jacking);
    add_cause(&causes, "bushes", a->compliance);
    return causes;
}

static void waterfall(const gw_comparison *cmp, const gw_corner_budget *b, bool camber, const char *load,
                      gw_charts *charts)
{
    const gw_causes causes = causes_of(b, camber);
    char stem[TEXT], title[TEXT], subtitle[TEXT];
    snprintf(stem, sizeof stem, "%s-budget-%s-%.120s", camber ? "camber" : "toe", gw_axle_name(b->axle),
             cmp->c->kits[b->kit].name);
    snprintf(title, sizeof title, "%s of the outer %s wheel: %.120s", camber ? "Camber" : "Toe",
             gw_axle_name(b->axle), kit_name(cmp, b->kit));
    snprintf(subtitle, sizeof subtitle, "%.120s, %.100s", cmp->c->title, load);
    const gw_waterfall_chart chart = { .words = { title, subtitle,
                                                  camber ? "camber to the road (deg, top outboard positive)"
                                                         : "toe (deg, toe-in positive)",
                                                  NULL, NULL },
                                       .start_name = "static setting",
                                       .end_name = camber ? "to the road" : "in the corner",
                                       .start = (camber ? b->camber : b->toe).setting / GW_DEG,
                                       .names = causes.name,
                                       .values = causes.value,
                                       .n = causes.n,
                                       .decimals = 2 };
    gw_charts_waterfall(charts, stem, &chart);
}

static gw_status waterfalls(const gw_comparison *cmp, gw_charts *charts, gw_error *err)
{
    const gw_handling_study *h = cmp->handling;
    int load = gw_summary_load(cmp);
    gw_buf words = { 0 };
    if (load < 0) return GW_OK;
    gw_phrase_load(&cmp->c->loads[load], &words);
    for (int i = 0; i < h->n_budgets; i++) {
        const gw_corner_budget *b = &h->budget[i];
        if (b->load != load || b->side != GW_OUTER) continue;
        waterfall(cmp, b, true, gw_buf_str(&words), charts);
        waterfall(cmp, b, false, gw_buf_str(&words), charts);
    }
    gw_status status = gw_buf_status(&words, err);
    gw_buf_free(&words);
    return status;
}

/* ---- balance ---- */

/* Entries that belong together share a part, so that no two parts look alike. */
static const struct {
    const char *name;
    gw_budget_entry entry[3];
    int n;
} PARTS[] = {
    { "tyre and load", { GW_BUDGET_TYRE, GW_BUDGET_CURVE }, 2 },
    { "aligning torque on the body", { GW_BUDGET_ALIGNING }, 1 },
    { "static toe and camber", { GW_BUDGET_SETTING }, 1 },
    { "roll steer", { GW_BUDGET_ROLL_STEER }, 1 },
    { "vertical-load steer", { GW_BUDGET_LOAD_STEER }, 1 },
    { "lateral-force steer", { GW_BUDGET_LATERAL_STEER }, 1 },
    { "aligning-torque steer", { GW_BUDGET_ALIGNING_STEER }, 1 },
    { "roll and compliance camber", { GW_BUDGET_ROLL_CAMBER, GW_BUDGET_COMPLIANCE_CAMBER }, 2 },
};
enum { N_PARTS = sizeof PARTS / sizeof *PARTS, FRONT = 0, REAR = 1, BOTH = 2 };

static double part_of(const gw_budget *b, int which, int part)
{
    double sum = 0.0;
    for (int i = 0; i < PARTS[part].n; i++) {
        gw_budget_entry e = PARTS[part].entry[i];
        if (which != REAR) sum += b->entry[GW_FRONT][e];
        if (which != FRONT) sum += (which == REAR ? 1.0 : -1.0) * b->entry[GW_REAR][e];
    }
    return sum / GW_DEG;
}

static gw_status budget_bars(const gw_comparison *cmp, int which, gw_charts *charts, gw_error *err)
{
    static const char *const STEMS[] = { "understeer-budget-front", "understeer-budget-rear",
                                         "understeer-budget" };
    static const char *const TITLES[] = { "What the front axle's slip and steer come from",
                                          "What the rear axle's slip and steer come from",
                                          "Where the understeer comes from, front less rear" };
    const gw_handling_study *h = cmp->handling;
    gw_arena arena = { 0 };
    size_t n = (size_t)h->n_balance;
    const char **groups = gw_arena_alloc(&arena, n, sizeof *groups), *parts[N_PARTS];
    double *values = gw_arena_alloc(&arena, n * N_PARTS, sizeof *values);
    if (!groups || !values) {
        gw_arena_free(&arena);
        return no_memory(err);
    }
    for (int p = 0; p < N_PARTS; p++) parts[p] = PARTS[p].name;
    for (int i = 0; i < h->n_balance; i++) {
        groups[i] = kit_name(cmp, h->balance[i].kit);
        for (int p = 0; p < N_PARTS; p++) values[i * N_PARTS + p] = part_of(&h->balance[i].quoted, which, p);
    }
    const gw_bar_chart chart = { .words = { TITLES[which], cmp->c->title,
                                            which == BOTH ? "deg/g, understeer positive" : "deg/g", NULL,
                                            "at 0.2 g" },
                                 .groups = groups,
                                 .n_groups = h->n_balance,
                                 .parts = parts,
                                 .n_parts = N_PARTS,
                                 .values = values,
                                 .stacked = true,
                                 .decimals = 2 };
    gw_charts_bars(charts, STEMS[which], &chart);
    gw_arena_free(&arena);
    return GW_OK;
}

static bool fill_line(const gw_balance_item *b, const char *name, gw_arena *arena, gw_chart_series *out)
{
    double *y = gw_arena_alloc(arena, GW_BALANCE_POINTS, sizeof *y);
    int n = 0;
    if (!y) return false;
    while (n < b->n && b->g[n] < b->linear_to + 1e-9) {
        y[n] = b->budget[n].understeer / GW_DEG;
        n++;
    }
    *out = (gw_chart_series){ .name = name, .x = b->g, .y = y, .n = n, .style = b->kit };
    return true;
}

static gw_status against_g(const gw_comparison *cmp, gw_charts *charts, gw_error *err)
{
    const gw_handling_study *h = cmp->handling;
    gw_arena arena = { 0 };
    gw_chart_series *series = gw_arena_alloc(&arena, (size_t)h->n_balance, sizeof *series);
    bool ok = series != NULL;
    for (int i = 0; ok && i < h->n_balance; i++)
        ok = fill_line(&h->balance[i], kit_name(cmp, h->balance[i].kit), &arena, &series[i]);
    const gw_line_chart chart = { .words = { "Understeer, as far as it is linear", cmp->c->title,
                                             "cornering (g)", "understeer gradient (deg/g)", NULL },
                                  .series = series,
                                  .n_series = h->n_balance,
                                  .with_zero = true };
    if (ok) gw_charts_lines(charts, "understeer-against-g", &chart);
    gw_arena_free(&arena);
    return ok ? GW_OK : no_memory(err);
}

static gw_status balance_charts(const gw_comparison *cmp, gw_charts *charts, gw_error *err)
{
    gw_status status = GW_OK;
    if (!cmp->handling->n_balance) return GW_OK;
    for (int which = FRONT; which <= BOTH && status == GW_OK; which++)
        status = budget_bars(cmp, which, charts, err);
    return status == GW_OK ? against_g(cmp, charts, err) : status;
}

/* ---- consistency ---- */

static gw_status band_chart(const gw_comparison *cmp, gw_axle axle, bool camber, gw_charts *charts,
                            gw_error *err)
{
    const gw_handling_study *h = cmp->handling;
    gw_arena arena = { 0 };
    size_t most = (size_t)h->n_bands;
    const char **names = gw_arena_alloc(&arena, most, sizeof *names);
    double *low = gw_arena_alloc(&arena, most, sizeof *low),
           *high = gw_arena_alloc(&arena, most, sizeof *high);
    int *styles = gw_arena_alloc(&arena, most, sizeof *styles), n = 0;
    char stem[TEXT], title[TEXT];
    if (!names || !low || !high || !styles) {
        gw_arena_free(&arena);
        return no_memory(err);
    }
    for (int i = 0; i < h->n_bands; i++) {
        const gw_band_item *b = &h->band[i];
        if (b->axle != axle) continue;
        names[n] = kit_name(cmp, b->kit);
        low[n] = (camber ? b->camber_low : b->toe_low) / GW_DEG;
        high[n] = (camber ? b->camber_high : b->toe_high) / GW_DEG;
        styles[n++] = b->kit;
    }
    snprintf(stem, sizeof stem, "consistency-%s-%s", camber ? "camber" : "toe", gw_axle_name(axle));
    snprintf(title, sizeof title, "How far the %s of the outer %s wheel moves in use",
             camber ? "camber" : "toe", gw_axle_name(axle));
    const gw_span_chart chart = {
        .words = { title, cmp->c->title,
                   camber ? "camber to the body (deg, top outboard positive)" : "toe (deg, toe-in positive)",
                   NULL, "from 0.2 to 1.0 g of cornering, or as far as the wheels stay down" },
        .names = names,
        .low = low,
        .high = high,
        .styles = styles,
        .n = n,
        .decimals = 2
    };
    if (n) gw_charts_spans(charts, stem, &chart);
    gw_arena_free(&arena);
    return GW_OK;
}

gw_status gw_handling_charts(const gw_comparison *cmp, gw_charts *charts, gw_error *err)
{
    gw_status status = waterfalls(cmp, charts, err);
    if (status == GW_OK) status = balance_charts(cmp, charts, err);
    for (gw_axle a = GW_FRONT; a < GW_AXLES && status == GW_OK; a++) {
        status = band_chart(cmp, a, false, charts, err);
        if (status == GW_OK) status = band_chart(cmp, a, true, charts, err);
    }
    return status;
}
