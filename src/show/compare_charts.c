/* SPDX-License-Identifier: MIT */
/* Charts of the comparison. One style a kit in all of them, in the order of the case. */
#include "show/compare_charts.h"

#include "giveway/units.h"
#include "show/contributors.h"
#include "show/deflect.h"
#include "show/phrase.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { TEXT = 160, MAX_PARTS = 8 };

/* Names of kits as charts show them; owned by the arena. */
static const char **kit_names(const gw_case *c, gw_arena *arena)
{
    const char **names = gw_arena_alloc(arena, (size_t)c->n_kits, sizeof *names);
    for (int k = 0; names && k < c->n_kits; k++)
        names[k] = c->kits[k].label ? c->kits[k].label : c->kits[k].name;
    return names;
}

static void stem_of(char *stem, const char *what, gw_axle axle)
{
    snprintf(stem, TEXT, "%s-%s", what, gw_axle_name(axle));
}

/* ---- toe and camber along a sweep ---- */

typedef struct gw_sweep_words {
    const char *stem, *title, *y_title;
    double (*value)(const gw_sweep_point *p);
} gw_sweep_words;

static double toe_of(const gw_sweep_point *p)
{
    return p->toe_change / GW_DEG;
}

static double camber_of(const gw_sweep_point *p)
{
    return p->camber_change / GW_DEG;
}

static const gw_sweep_words SWEEPS[2][2] = {
    { { "toe-braking", "Toe under braking", "toe change (deg, toe-in positive)", toe_of },
      { "camber-braking", "Camber under braking", "camber change (deg, top outboard positive)", camber_of } },
    { { "toe-cornering", "Toe of the outer wheel in a corner", "toe change (deg, toe-in positive)", toe_of },
      { "camber-cornering", "Camber of the outer wheel in a corner",
        "camber change (deg, top outboard positive)", camber_of } },
};

static bool fill_series(const gw_sweep *sweep, const char *name, const gw_sweep_words *words, gw_arena *arena,
                        gw_chart_series *out)
{
    size_t n = (size_t)sweep->n;
    double *x = gw_arena_alloc(arena, n, sizeof *x), *y = gw_arena_alloc(arena, n, sizeof *y);
    if (!x || !y) return false;
    for (size_t i = 0; i < n; i++) {
        x[i] = sweep->point[i].g;
        y[i] = words->value(&sweep->point[i]);
    }
    *out = (gw_chart_series){ .name = name, .x = x, .y = y, .n = sweep->n, .style = sweep->kit };
    return true;
}

static gw_status sweep_chart(const gw_case *c, const gw_sweep_study *study, const gw_sweep_words *words,
                             gw_axle axle, const char *x_title, gw_charts *charts, gw_error *err)
{
    gw_arena arena = { 0 };
    char stem[TEXT], title[TEXT];
    gw_status status = GW_OK;
    const char **names = kit_names(c, &arena);
    gw_chart_series *series = gw_arena_alloc(&arena, (size_t)c->n_kits, sizeof *series);
    bool ok = names && series;
    int n = 0;
    for (int k = 0; ok && k < c->n_kits; k++) {
        const gw_sweep *sweep = gw_sweep_find(study, k, axle);
        if (sweep && sweep->n > 1) ok = fill_series(sweep, names[k], words, &arena, &series[n++]);
    }
    stem_of(stem, words->stem, axle);
    snprintf(title, sizeof title, "%s, %s axle", words->title, gw_axle_name(axle));
    const gw_line_chart chart = { .words = { title, c->title, x_title, words->y_title, NULL },
                                  .series = series,
                                  .n_series = n,
                                  .with_zero = true };
    if (!ok) status = gw_fail(err, GW_E_NOMEM, "out of memory for a chart");
    if (ok && n) gw_charts_lines(charts, stem, &chart);
    gw_arena_free(&arena);
    return status;
}

gw_status gw_sweep_charts(const gw_case *c, const gw_sweep_study *study, gw_charts *charts, gw_error *err)
{
    bool braking = study->plan.axis == GW_SWEEP_BRAKE;
    const char *x_title = braking ? "braking (g)" : "cornering (g)";
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        for (int i = 0; i < 2; i++) {
            gw_status status = sweep_chart(c, study, &SWEEPS[braking ? 0 : 1][i], a, x_title, charts, err);
            if (status != GW_OK) return status;
        }
    return GW_OK;
}

/* ---- which bush lets it ---- */

/* Joints with the largest share over all kits, and room for what is left over. */
static int pick_joints(const gw_comparison *cmp, gw_axle axle, int load, int *joints)
{
    const gw_corner *corner = &cmp->c->corners[axle];
    double size[GW_MAX_JOINTS] = { 0 };
    int n = 0;
    for (int k = 0; k < cmp->c->n_kits; k++) {
        const gw_deflection *item = gw_deflect_find(cmp->deflect, k, axle, load);
        for (int j = 0; item && j < corner->n_joints; j++)
            size[j] = fmax(size[j], fabs(gw_joint_share(&item->result.joints[j], GW_TOE)));
    }
    while (n < MAX_PARTS - 2 && n < corner->n_joints) {
        int best = 0;
        for (int j = 1; j < corner->n_joints; j++)
            if (size[j] > size[best]) best = j;
        if (size[best] < 1e-4 * GW_DEG) break;
        joints[n++] = best;
        size[best] = -1.0;
    }
    return n;
}

static void fill_parts(const gw_deflection *item, int n_joints, const int *joints, double *values)
{
    double rest = item->result.toe_change - item->result.travel_toe;
    for (int i = 0; i < n_joints; i++) {
        double share = item->result.joints[joints[i]].toe_share;
        values[i] = share / GW_DEG;
        rest -= share;
    }
    values[n_joints] = item->result.travel_toe / GW_DEG;
    values[n_joints + 1] = rest / GW_DEG;
}

static gw_status contribution_chart(const gw_comparison *cmp, gw_axle axle, int load, const char *what,
                                    gw_charts *charts, gw_error *err)
{
    const gw_case *c = cmp->c;
    int joints[MAX_PARTS], n_joints = pick_joints(cmp, axle, load, joints), n_parts = n_joints + 2, n = 0;
    gw_arena arena = { 0 };
    const char **names = kit_names(c, &arena), *parts[MAX_PARTS], **groups;
    double *values = gw_arena_alloc(&arena, (size_t)(c->n_kits * n_parts), sizeof *values);
    char stem[TEXT], title[TEXT];
    groups = gw_arena_alloc(&arena, (size_t)c->n_kits, sizeof *groups);
    if (!names || !values || !groups) {
        gw_arena_free(&arena);
        return gw_fail(err, GW_E_NOMEM, "out of memory for a chart");
    }
    for (int i = 0; i < n_joints; i++) parts[i] = c->corners[axle].joints[joints[i]].name;
    parts[n_joints] = "travel";
    parts[n_joints + 1] = "all else";
    for (int k = 0; k < c->n_kits; k++) {
        const gw_deflection *item = gw_deflect_find(cmp->deflect, k, axle, load);
        if (!item) continue;
        fill_parts(item, n_joints, joints, &values[n * n_parts]);
        groups[n++] = names[k];
    }
    snprintf(stem, sizeof stem, "contributions-%s-%s", what, gw_axle_name(axle));
    snprintf(title, sizeof title, "Which bush lets the %s toe move: %.60s", gw_axle_name(axle),
             c->loads[load].name);
    const gw_bar_chart chart = { .words = { title, c->title, "share of the toe change (deg, toe-in positive)",
                                            NULL, NULL },
                                 .groups = groups,
                                 .n_groups = n,
                                 .parts = parts,
                                 .n_parts = n_parts,
                                 .values = values,
                                 .stacked = true,
                                 .decimals = 2 };
    if (n) gw_charts_bars(charts, stem, &chart);
    gw_arena_free(&arena);
    return GW_OK;
}

static bool brakes(const gw_load *l)
{
    return l->kind == GW_LOAD_MANOEUVRE && l->manoeuvre.brake_g > 0.0;
}

static bool corners_only(const gw_load *l)
{
    return l->kind == GW_LOAD_MANOEUVRE && l->manoeuvre.lateral_g > 0.0 && l->manoeuvre.brake_g <= 0.0;
}

static bool acts_on(const gw_comparison *cmp, int load, gw_axle axle)
{
    for (int k = 0; k < cmp->c->n_kits; k++)
        if (gw_deflect_find(cmp->deflect, k, axle, load)) return true;
    return false;
}

static int first_load(const gw_comparison *cmp, gw_axle axle, bool (*fits)(const gw_load *))
{
    for (int l = 0; l < cmp->c->n_loads; l++)
        if (fits(&cmp->c->loads[l]) && acts_on(cmp, l, axle)) return l;
    return -1;
}

static gw_status contribution_charts(const gw_comparison *cmp, gw_charts *charts, gw_error *err)
{
    gw_status status = GW_OK;
    for (gw_axle a = GW_FRONT; a < GW_AXLES && status == GW_OK; a++) {
        int stop = first_load(cmp, a, brakes), turn = first_load(cmp, a, corners_only);
        if (stop >= 0) status = contribution_chart(cmp, a, stop, "braking", charts, err);
        if (turn >= 0 && status == GW_OK) status = contribution_chart(cmp, a, turn, "cornering", charts, err);
    }
    return status;
}

/* ---- what reaches the body ---- */

static gw_status transmissibility_chart(const gw_comparison *cmp, gw_axle axle, gw_charts *charts,
                                        gw_error *err)
{
    const gw_case *c = cmp->c;
    static const gw_chart_band BANDS[] = { { 1, 8, "bounce" }, { 8, 30, "shake" }, { 30, 315, "boom" } };
    gw_arena arena = { 0 };
    char stem[TEXT], title[TEXT];
    const char **names = kit_names(c, &arena);
    gw_chart_series *series = gw_arena_alloc(&arena, (size_t)c->n_kits, sizeof *series);
    int n = 0;
    if (!names || !series) {
        gw_arena_free(&arena);
        return gw_fail(err, GW_E_NOMEM, "out of memory for a chart");
    }
    for (int k = 0; k < c->n_kits; k++) {
        const gw_ride_item *item = gw_ride_find(cmp->ride, k, axle);
        if (!item || !item->result.curve.n) continue;
        const gw_ride_curve *curve = &item->result.curve;
        series[n++] = (gw_chart_series){
            .name = names[k], .x = curve->hz, .y = curve->force, .n = curve->n, .style = k
        };
    }
    stem_of(stem, "transmissibility", axle);
    snprintf(title, sizeof title, "What the road sends into the body, %s corner", gw_axle_name(axle));
    const gw_line_chart chart = { .words = { title, c->title, "frequency (Hz)",
                                             "body force per road height (N/m)", NULL },
                                  .series = series,
                                  .n_series = n,
                                  .log_x = true,
                                  .log_y = true,
                                  .has_x_range = true,
                                  .x_from = 1.0,
                                  .x_to = 315.0,
                                  .bands = BANDS,
                                  .n_bands = 3 };
    if (n) gw_charts_lines(charts, stem, &chart);
    gw_arena_free(&arena);
    return GW_OK;
}

/* One point a kit: toe change under the case's first stop, or its first load, against harshness. */
static gw_status trade_off_chart(const gw_comparison *cmp, gw_axle axle, gw_charts *charts, gw_error *err)
{
    const gw_case *c = cmp->c;
    gw_arena arena = { 0 };
    char stem[TEXT], title[TEXT];
    const char **names = kit_names(c, &arena),
               **shown = gw_arena_alloc(&arena, (size_t)c->n_kits, sizeof *shown);
    double *x = gw_arena_alloc(&arena, (size_t)c->n_kits, sizeof *x);
    double *y = gw_arena_alloc(&arena, (size_t)c->n_kits, sizeof *y);
    int *styles = gw_arena_alloc(&arena, (size_t)c->n_kits, sizeof *styles), n = 0, load = 0;
    if (!names || !shown || !x || !y || !styles) {
        gw_arena_free(&arena);
        return gw_fail(err, GW_E_NOMEM, "out of memory for a chart");
    }
    while (load < c->n_loads && !acts_on(cmp, load, axle)) load++;
    int stop = first_load(cmp, axle, brakes);
    if (stop >= 0) load = stop;
    for (int k = 0; k < c->n_kits && load < c->n_loads; k++) {
        const gw_ride_item *ride = gw_ride_find(cmp->ride, k, axle);
        const gw_deflection *item = gw_deflect_find(cmp->deflect, k, axle, load);
        if (!ride || !item) continue;
        x[n] = ride->difference.harshness;
        y[n] = fabs(item->result.toe_change) / GW_DEG;
        styles[n] = k;
        shown[n++] = names[k];
    }
    stem_of(stem, "grip-against-harshness", axle);
    snprintf(title, sizeof title, "What steadiness costs, %s axle", gw_axle_name(axle));
    char y_title[TEXT];
    snprintf(y_title, sizeof y_title, "toe movement, %.80s (deg)",
             load < c->n_loads ? c->loads[load].name : "");
    const gw_point_chart chart = { .words = { title, c->title, "harshness against the baseline (dB)", y_title,
                                              "down is steadier, right is harsher" },
                                   .names = shown,
                                   .x = x,
                                   .y = y,
                                   .styles = styles,
                                   .n = n };
    if (n) gw_charts_points(charts, stem, &chart);
    gw_arena_free(&arena);
    return GW_OK;
}

gw_status gw_compare_charts(const gw_comparison *cmp, gw_charts *charts, gw_error *err)
{
    gw_status status = contribution_charts(cmp, charts, err);
    for (gw_axle a = GW_FRONT; a < GW_AXLES && status == GW_OK; a++) {
        status = transmissibility_chart(cmp, a, charts, err);
        if (status == GW_OK) status = trade_off_chart(cmp, a, charts, err);
    }
    return status;
}
