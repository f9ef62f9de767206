/* SPDX-License-Identifier: MIT */
/* Toe and camber along a sweep of braking or cornering, one line a kit. */
#include "show/compare_charts.h"

#include "giveway/units.h"
#include "show/deflect.h"

#include <stdio.h>

enum { TEXT = 160 };

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
    const char **names = gw_chart_kit_names(c, &arena);
    gw_chart_series *series = gw_arena_alloc(&arena, (size_t)c->n_kits, sizeof *series);
    bool ok = names && series;
    int n = 0;
    for (int k = 0; ok && k < c->n_kits; k++) {
        const gw_sweep *sweep = gw_sweep_find(study, k, axle);
        if (sweep && sweep->n > 1) ok = fill_series(sweep, names[k], words, &arena, &series[n++]);
    }
    snprintf(stem, sizeof stem, "%s-%s", words->stem, gw_axle_name(axle));
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
