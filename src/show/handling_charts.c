/* SPDX-License-Identifier: MIT */
#include "show/compare_charts.h"

#include "format/number.h"
#include "giveway/casefile.h"
#include "giveway/units.h"
#include "show/handling.h"
#include "show/message.h"
#include "show/phrase.h"

#include <math.h>
#include <stdio.h>

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
    gw_buf title = { 0 };
    double moved = 0.0;
    for (int i = 0; i < causes.n; i++) moved += causes.value[i];
    const char *stem = gw_charts_fmt(charts, "%s-budget-%s-%.120s", camber ? "camber" : "toe",
                                     gw_axle_name(b->axle), cmp->c->kits[b->kit].name);
    const char *what =
        gw_charts_fmt(charts, "From the setting to %s of the outer %s wheel (deg), %.100s",
                      camber ? "the camber to the road" : "the toe", gw_axle_name(b->axle), load);
    const char *of = gw_charts_fmt(charts, "The outer %s wheel's %s change", gw_axle_name(b->axle),
                                   camber ? "camber" : "toe");
    const gw_message message = { .of = of, .unit = "deg", .decimals = 2, .is_signed = true };
    gw_message_part(&message, causes.name, causes.value, causes.n, moved, gw_kit_said(cmp->c, b->kit),
                    &title);
    const gw_waterfall_chart chart = { .words = { gw_charts_kept(charts, &title), cmp->c->title,
                                                  camber ? "camber to the road (deg, top outboard positive)"
                                                         : "toe (deg, toe-in positive)",
                                                  NULL, NULL, what },
                                       .start_name = "static setting",
                                       .end_name = camber ? "to the road" : "in the corner",
                                       .start = (camber ? b->camber : b->toe).setting / GW_DEG,
                                       .names = causes.name,
                                       .values = causes.value,
                                       .n = causes.n,
                                       .decimals = 2 };
    gw_charts_waterfall(charts, stem, &chart);
}

static void waterfalls(const gw_comparison *cmp, gw_charts *charts)
{
    const gw_handling_study *h = cmp->handling;
    int load = gw_summary_load(cmp);
    gw_buf phrase = { 0 };
    if (load < 0) return;
    gw_phrase_load(&cmp->c->loads[load], &phrase);
    const char *words = gw_charts_kept(charts, &phrase);
    for (int i = 0; i < h->n_budgets; i++) {
        const gw_corner_budget *b = &h->budget[i];
        if (b->load != load || b->side != GW_OUTER) continue;
        waterfall(cmp, b, true, words, charts);
        waterfall(cmp, b, false, words, charts);
    }
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

static void say_budget(const gw_comparison *cmp, int which, gw_buf *out)
{
    static const char *const OF[] = { "The front axle's slip with its steer",
                                      "The rear axle's slip with its steer", "Understeer" };
    const gw_message message = {
        .of = OF[which], .unit = "deg/g", .decimals = 2, .is_signed = which == BOTH
    };
    gw_told told[GW_MAX_KITS];
    int n = 0;
    for (; n < cmp->handling->n_balance && n < GW_MAX_KITS; n++) {
        double sum = 0.0;
        for (int p = 0; p < N_PARTS; p++) sum += part_of(&cmp->handling->balance[n].quoted, which, p);
        told[n] = (gw_told){ .kit = gw_kit_said(cmp->c, cmp->handling->balance[n].kit), .value = sum };
    }
    gw_message_kits(&message, told, n, out);
}

static void budget_bars(const gw_comparison *cmp, int which, gw_charts *charts)
{
    static const char *const STEMS[] = { "understeer-budget-front", "understeer-budget-rear",
                                         "understeer-budget" };
    static const char *const WHAT[] = { "Slip and steer of the front axle by cause (deg/g), at 0.2 g",
                                        "Slip and steer of the rear axle by cause (deg/g), at 0.2 g",
                                        "Understeer by cause, front less rear (deg/g), at 0.2 g" };
    const gw_handling_study *h = cmp->handling;
    gw_buf title = { 0 };
    const char *groups[GW_MAX_KITS], *parts[N_PARTS];
    double values[GW_MAX_KITS * N_PARTS];
    for (int p = 0; p < N_PARTS; p++) parts[p] = PARTS[p].name;
    for (int i = 0; i < h->n_balance; i++) {
        groups[i] = gw_kit_said(cmp->c, h->balance[i].kit);
        for (int p = 0; p < N_PARTS; p++) values[i * N_PARTS + p] = part_of(&h->balance[i].quoted, which, p);
    }
    say_budget(cmp, which, &title);
    const gw_bar_chart chart = { .words = { gw_charts_kept(charts, &title), cmp->c->title,
                                            which == BOTH ? "deg/g, understeer positive" : "deg/g", NULL,
                                            NULL, WHAT[which] },
                                 .groups = groups,
                                 .n_groups = h->n_balance,
                                 .parts = parts,
                                 .n_parts = N_PARTS,
                                 .values = values,
                                 .stacked = true,
                                 .decimals = 2 };
    gw_charts_bars(charts, STEMS[which], &chart);
}

/* `y` has room for every g. */
static gw_chart_series line_of(const gw_case *c, const gw_balance_item *b, double *y)
{
    int n = 0;
    for (; n < b->n && b->g[n] < b->linear_to + 1e-9; n++) y[n] = b->budget[n].understeer / GW_DEG;
    return (gw_chart_series){ .name = gw_kit_said(c, b->kit), .x = b->g, .y = y, .n = n, .style = b->kit };
}

/* The first kit from the lowest g to the highest: the budgets tell of the others. */
static void say_against_g(const gw_chart_series *first, gw_buf *out)
{
    int last = first->n - 1;
    if (last < 0) return;
    double from = first->y[0], to = first->y[last];
    gw_buf_fmt(out, "Understeer %s up to %s g: %s to %s deg/g with %s",
               fabs(to - from) < 0.02 * fabs(from) ? "hardly changes"
               : to > from                         ? "grows"
                                                   : "shrinks",
               gw_fixed(first->x[last], 2).s, gw_signed(from, 2).s, gw_signed(to, 2).s, first->name);
}

static void against_g(const gw_comparison *cmp, gw_charts *charts)
{
    const gw_handling_study *h = cmp->handling;
    gw_buf title = { 0 };
    gw_chart_series series[GW_MAX_KITS];
    double y[GW_MAX_KITS][GW_BALANCE_POINTS];
    for (int i = 0; i < h->n_balance; i++) series[i] = line_of(cmp->c, &h->balance[i], y[i]);
    say_against_g(&series[0], &title);
    const gw_line_chart chart = { .words = { gw_charts_kept(charts, &title), cmp->c->title, "cornering (g)",
                                             "understeer gradient (deg/g)", NULL,
                                             "Understeer gradient (deg/g) over g, as far as it is linear" },
                                  .series = series,
                                  .n_series = h->n_balance,
                                  .with_zero = true };
    gw_charts_lines(charts, "understeer-against-g", &chart);
}

static void balance_charts(const gw_comparison *cmp, gw_charts *charts)
{
    if (!cmp->handling->n_balance) return;
    for (int which = FRONT; which <= BOTH; which++) budget_bars(cmp, which, charts);
    against_g(cmp, charts);
}

/* ---- consistency ---- */

/* Spans of one axle. */
typedef struct gw_in_use {
    const char *names[GW_MAX_KITS];
    double low[GW_MAX_KITS], high[GW_MAX_KITS];
    int styles[GW_MAX_KITS], n;
    gw_told told[GW_MAX_KITS];
} gw_in_use;

static void gather_in_use(const gw_comparison *cmp, gw_axle axle, bool camber, gw_in_use *u)
{
    const gw_handling_study *h = cmp->handling;
    for (int i = 0; i < h->n_bands && u->n < GW_MAX_KITS; i++) {
        const gw_band_item *b = &h->band[i];
        if (b->axle != axle) continue;
        u->names[u->n] = gw_kit_said(cmp->c, b->kit);
        u->low[u->n] = (camber ? b->camber_low : b->toe_low) / GW_DEG;
        u->high[u->n] = (camber ? b->camber_high : b->toe_high) / GW_DEG;
        u->told[u->n] = (gw_told){ u->names[u->n], u->high[u->n] - u->low[u->n], false };
        u->styles[u->n++] = b->kit;
    }
}

static void band_chart(const gw_comparison *cmp, gw_axle axle, bool camber, gw_charts *charts)
{
    gw_in_use u = { 0 };
    gw_buf title = { 0 };
    gather_in_use(cmp, axle, camber, &u);
    const char *of = gw_charts_fmt(charts, "The range of %s in use, outer %s wheel,",
                                   camber ? "camber" : "toe", gw_axle_name(axle));
    const gw_message message = { .of = of, .unit = "deg", .decimals = 2 };
    gw_message_kits(&message, u.told, u.n, &title);
    const gw_span_chart chart = {
        .words = { gw_charts_kept(charts, &title), cmp->c->title,
                   camber ? "camber to the body (deg, top outboard positive)" : "toe (deg, toe-in positive)",
                   NULL, "from 0.2 to 1.0 g of cornering, or as far as the wheels stay down",
                   camber ? "Camber from its least to its most (deg)"
                          : "Toe from its least to its most (deg)" },
        .names = u.names,
        .low = u.low,
        .high = u.high,
        .styles = u.styles,
        .n = u.n,
        .decimals = 2
    };
    if (u.n)
        gw_charts_spans(
            charts, gw_charts_fmt(charts, "consistency-%s-%s", camber ? "camber" : "toe", gw_axle_name(axle)),
            &chart);
}

void gw_handling_charts(const gw_comparison *cmp, gw_charts *charts)
{
    waterfalls(cmp, charts);
    balance_charts(cmp, charts);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        band_chart(cmp, a, false, charts);
        band_chart(cmp, a, true, charts);
    }
}
