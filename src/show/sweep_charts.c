/* SPDX-License-Identifier: MIT */
/* Toe and camber along a sweep of braking or cornering, one line a kit. */
#include "show/compare_charts.h"

#include "format/number.h"
#include "giveway/casefile.h"
#include "giveway/pick.h"
#include "giveway/units.h"
#include "show/bands.h"
#include "show/message.h"
#include "show/phrase.h"

#include <stdio.h>

enum { TEXT = 160 };

typedef struct gw_sweep_words {
    const char *stem, *of, *y_title, *what;
    double (*value)(const gw_sweep_point *p);
    bool braking;
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
    { { "toe-braking", "toe change when braking", "toe change (deg, toe-in positive)",
        "Toe change (deg) over g, kit by kit", toe_of, true },
      { "camber-braking", "camber change when braking", "camber change (deg, top outboard positive)",
        "Camber change (deg) over g, kit by kit", camber_of, true } },
    { { "toe-cornering", "toe change of the outer wheel in a corner", "toe change (deg, toe-in positive)",
        "Toe change (deg) over g, kit by kit", toe_of, false },
      { "camber-cornering", "camber change of the outer wheel in a corner",
        "camber change (deg, top outboard positive)", "Camber change (deg) over g, kit by kit", camber_of,
        false } },
};

static gw_chart_series series_of(const gw_case *c, const gw_sweep *sweep, const gw_sweep_words *words,
                                 gw_charts *charts)
{
    double *x = gw_charts_room(charts, sweep->n, sizeof *x), *y = gw_charts_room(charts, sweep->n, sizeof *y);
    for (int i = 0; x && y && i < sweep->n; i++) {
        x[i] = sweep->point[i].g;
        y[i] = words->value(&sweep->point[i]);
    }
    return (gw_chart_series){
        .name = gw_kit_said(c, sweep->kit), .x = x, .y = y, .n = sweep->n, .style = sweep->kit
    };
}

/* Its order to the first kit is not sure in the case's own stop or corner: then it is not here. */
static bool is_open(const gw_comparison *cmp, const gw_sweep_words *words, gw_axle axle, int kit)
{
    int load = gw_pick_load(cmp->c, cmp->deflect, words->braking ? GW_PICK_STOP : GW_PICK_CORNER);
    const gw_deflection *item = load < 0 ? NULL : gw_deflect_find(cmp->deflect, kit, axle, load);
    const gw_bands_item *band = gw_band_of(cmp->bands, item);
    if (!band || !band->has_difference) return false;
    return words->value == toe_of ? band->close : gw_is_close(&band->difference[GW_SPREAD_CAMBER]);
}

/* What is told is the last state that every kit of the chart has been solved for. */
static void say(const gw_comparison *cmp, const gw_sweep_words *words, gw_axle axle,
                const gw_chart_series *series, int n, gw_buf *out)
{
    gw_told told[GW_MAX_KITS];
    gw_buf of = { 0 };
    int last = n ? series[0].n - 1 : -1;
    for (int i = 1; i < n; i++) last = series[i].n - 1 < last ? series[i].n - 1 : last;
    if (last < 0) return;
    for (int i = 0; i < n; i++)
        told[i] = (gw_told){ series[i].name, series[i].y[last], is_open(cmp, words, axle, series[i].style) };
    gw_buf_fmt(&of, "%s %s at %s g", axle == GW_FRONT ? "Front" : "Rear", words->of,
               gw_fixed(series[0].x[last], 2).s);
    const gw_message m = { .of = gw_buf_str(&of), .unit = "deg", .decimals = 2, .is_signed = true };
    gw_message_kits(&m, told, n, out);
    gw_buf_drop(&of, out);
}

static void sweep_chart(const gw_comparison *cmp, const gw_sweep_study *study, const gw_sweep_words *words,
                        gw_axle axle, const char *x_title, gw_charts *charts)
{
    const gw_case *c = cmp->c;
    gw_buf title = { 0 };
    gw_chart_series series[GW_MAX_KITS];
    int n = 0;
    for (int k = 0; k < c->n_kits; k++) {
        const gw_sweep *sweep = gw_sweep_find(study, k, axle);
        if (sweep && sweep->n > 1) series[n++] = series_of(c, sweep, words, charts);
    }
    if (!n || charts->failed) return;
    say(cmp, words, axle, series, n, &title);
    const gw_line_chart chart = { .words = { .title = gw_charts_kept(charts, &title),
                                             .subtitle = c->title,
                                             .x_title = x_title,
                                             .y_title = words->y_title,
                                             .what = words->what },
                                  .series = series,
                                  .n_series = n,
                                  .with_zero = true };
    gw_charts_lines(charts, gw_charts_fmt(charts, "%s-%s", words->stem, gw_axle_name(axle)), &chart);
}

void gw_sweep_charts(const gw_comparison *cmp, const gw_sweep_study *study, gw_charts *charts)
{
    bool braking = study->plan.axis == GW_SWEEP_BRAKE;
    const char *x_title = braking ? "braking (g)" : "cornering (g)";
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        for (int i = 0; i < 2; i++) sweep_chart(cmp, study, &SWEEPS[braking ? 0 : 1][i], a, x_title, charts);
}
