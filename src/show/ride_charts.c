/* SPDX-License-Identifier: MIT */
/* Charts of ride. One style a kit in all of them, in the order of the case. */
#include "format/html.h"
#include "giveway/units.h"
#include "show/deflect.h"
#include "show/ride.h"
#include "show/ride_parts.h"
#include "show/ride_words.h"
#include "show/words.h"

#include <math.h>
#include <stdio.h>

enum { TEXT = 200, MAX_LINES = 7 };

/* One corner's charts; memory for them is the arena's. */
typedef struct gw_ride_drawing {
    const gw_case *c;
    const gw_ride_study *study;
    gw_axle axle;
    gw_arena arena;
    const gw_ride_item **items; /* of this corner */
    const char **names;         /* of their kits  */
    int *styles;
    int n;
    gw_charts *charts;
} gw_ride_drawing;

static bool begin(gw_ride_drawing *d)
{
    size_t room = (size_t)d->study->n + 1;
    d->items = gw_arena_alloc(&d->arena, room, sizeof *d->items);
    d->names = gw_arena_alloc(&d->arena, room, sizeof *d->names);
    d->styles = gw_arena_alloc(&d->arena, room, sizeof *d->styles);
    if (!d->items || !d->names || !d->styles) return false;
    for (int i = 0; i < d->study->n; i++) {
        const gw_ride_item *item = &d->study->item[i];
        if (item->axle != d->axle) continue;
        const gw_kit *kit = &d->c->kits[item->kit];
        d->names[d->n] = kit->label ? kit->label : kit->name;
        d->styles[d->n] = item->kit;
        d->items[d->n++] = item;
    }
    return true;
}

typedef struct gw_ride_title {
    char stem[TEXT], title[2 * TEXT];
} gw_ride_title;

static gw_ride_title title_of(const gw_ride_drawing *d, const char *stem, const char *title)
{
    gw_ride_title out;
    snprintf(out.stem, sizeof out.stem, "%s-%s", stem, gw_axle_name(d->axle));
    snprintf(out.title, sizeof out.title, "%s, %s corner", title, gw_axle_name(d->axle));
    return out;
}

static gw_ride_title title_in_words(const gw_ride_drawing *d, const char *stem, gw_words words)
{
    gw_ride_title out;
    gw_buf text = { 0 };
    const gw_html_part parts[] = { { "axle", gw_axle_name(d->axle) }, { NULL, NULL } };
    gw_plain_say(&text, gw_words_text(words), parts);
    snprintf(out.stem, sizeof out.stem, "%s-%s", stem, gw_axle_name(d->axle));
    snprintf(out.title, sizeof out.title, "%s", gw_buf_str(&text));
    if (text.failed) d->charts->failed = true;
    gw_buf_free(&text);
    return out;
}

/* A page that holds the chart says it once for all. */
static const char *caution(const gw_ride_drawing *d)
{
    return d->charts->inlined ? NULL : gw_words_text(GW_WORDS_RIDE_ESTIMATE);
}

/* Forces are shown in newtons per millimetre, as rates are; copies are the arena's. */
static bool in_trade_units(gw_ride_drawing *d, gw_chart_series *series, int n)
{
    for (int i = 0; i < n; i++) {
        double *y = gw_arena_alloc(&d->arena, (size_t)series[i].n, sizeof *y);
        if (!y) return false;
        for (int k = 0; k < series[i].n; k++) y[k] = series[i].y[k] / GW_N_PER_MM;
        series[i].y = y;
    }
    return true;
}

static bool force_chart(gw_ride_drawing *d, const gw_ride_title *title, gw_chart_series *series, int n)
{
    /* What people call the stretches of the frequency axis. */
    const gw_chart_band stretches[] = { { 1, 8, gw_words_text(GW_WORDS_CHART_BOUNCE) },
                                        { 8, 30, gw_words_text(GW_WORDS_CHART_SHAKE) },
                                        { 30, 315, gw_words_text(GW_WORDS_CHART_BOOM) } };
    const gw_line_chart chart = { .words = { title->title, d->c->title,
                                             gw_words_text(GW_WORDS_CHART_FREQUENCY),
                                             gw_words_text(GW_WORDS_CHART_ROAD_FORCE), caution(d) },
                                  .series = series,
                                  .n_series = n,
                                  .log_x = true,
                                  .log_y = true,
                                  .has_x_range = true,
                                  .x_from = 1.0,
                                  .x_to = 315.0,
                                  .bands = stretches,
                                  .n_bands = 3 };
    if (!in_trade_units(d, series, n)) return false;
    if (n) gw_charts_lines(d->charts, title->stem, &chart);
    return true;
}

static bool by_kit(gw_ride_drawing *d)
{
    gw_ride_title title = title_in_words(d, "transmissibility", GW_WORDS_CHART_ROAD);
    gw_chart_series *series = gw_arena_alloc(&d->arena, (size_t)d->n + 1, sizeof *series);
    int n = 0;
    for (int i = 0; series && i < d->n; i++) {
        const gw_ride_curve *curve = &d->items[i]->result.curve;
        if (!curve->n) continue;
        series[n++] = (gw_chart_series){ d->names[i], curve->hz, curve->force, curve->n, d->styles[i] };
    }
    return series && force_chart(d, &title, series, n);
}

/* The first kit, path by path: those that carry most of its harshness. */
static bool by_path(gw_ride_drawing *d)
{
    const gw_ride_result *r = &d->items[0]->result;
    char what[TEXT];
    gw_chart_series series[MAX_LINES];
    int paths[MAX_LINES], n = gw_ride_largest_paths(&d->items[0], 1, MAX_LINES - 1, paths);
    snprintf(what, sizeof what, "Through which attachment: %.80s", d->names[0]);
    gw_ride_title title = title_of(d, "transmissibility-paths", what);
    if (!r->curve.n) return true;
    series[0] = (gw_chart_series){ "all together", r->curve.hz, r->curve.force, r->curve.n, 0 };
    for (int i = 0; i < n; i++)
        series[i + 1] = (gw_chart_series){ r->paths[paths[i]].name, r->curve.hz,
                                           &r->curve.path[paths[i] * r->curve.n], r->curve.n, i + 1 };
    return force_chart(d, &title, series, n + 1);
}

/* The baseline would be a row of nothing: it is left out where it is not alone. */
static bool bands(gw_ride_drawing *d)
{
    gw_ride_title title = title_of(d, "third-octaves", "Third-octave bands over the first kit");
    double centres[GW_BANDS], *values = gw_arena_alloc(&d->arena, (size_t)d->n * GW_BANDS, sizeof *values);
    int from = d->n > 1 && d->items[0]->kit == 0 ? 1 : 0;
    if (!values) return false;
    for (int b = 0; b < GW_BANDS; b++) centres[b] = gw_band_nominal(GW_BAND_FIRST + b);
    for (int i = from; i < d->n; i++)
        for (int b = 0; b < GW_BANDS; b++)
            values[(i - from) * GW_BANDS + b] = d->items[i]->difference.band[b];
    const gw_band_chart chart = { .words = { title.title, d->c->title, "third-octave band (Hz)",
                                             "body force over the first kit (dB)", caution(d) },
                                  .centre_hz = centres,
                                  .n_bands = GW_BANDS,
                                  .names = d->names + from,
                                  .styles = d->styles + from,
                                  .n_names = d->n - from,
                                  .values = values };
    gw_charts_bands(d->charts, title.stem, &chart);
    return true;
}

static bool shares(gw_ride_drawing *d)
{
    gw_ride_title title = title_of(d, "paths", "Where harshness comes through");
    int paths[MAX_LINES], n = gw_ride_largest_paths(d->items, d->n, MAX_LINES - 1, paths), parts = n + 1;
    const char *names[MAX_LINES];
    double *values = gw_arena_alloc(&d->arena, (size_t)(d->n * parts), sizeof *values);
    if (!values) return false;
    for (int p = 0; p < n; p++) names[p] = d->items[0]->result.paths[paths[p]].name;
    names[n] = "all else";
    for (int i = 0; i < d->n; i++) {
        double rest = 100.0;
        for (int p = 0; p < n; p++) {
            values[i * parts + p] = 100.0 * d->items[i]->result.paths[paths[p]].share;
            rest -= values[i * parts + p];
        }
        values[i * parts + n] = fmax(rest, 0.0);
    }
    const gw_bar_chart chart = { .words = { title.title, d->c->title,
                                            "share of the squared harshness, 20 to 200 Hz (%)", NULL,
                                            caution(d) },
                                 .groups = d->names,
                                 .n_groups = d->n,
                                 .parts = names,
                                 .n_parts = parts,
                                 .values = values,
                                 .stacked = true,
                                 .decimals = 0 };
    gw_charts_bars(d->charts, title.stem, &chart);
    return true;
}

/* What the upper end of each unknown adds to what is heard, a bar a kit. */
static bool unknowns(gw_ride_drawing *d)
{
    gw_ride_title title =
        title_of(d, "unknowns", "What is not known for sure, and what it does to what is heard");
    int from = d->items[0]->kit == 0 ? 1 : 0, kits = d->n - from;
    const char *names[GW_UNKNOWNS];
    double *values = gw_arena_alloc(&d->arena, (size_t)(kits + 1) * GW_UNKNOWNS, sizeof *values);
    if (!values) return false;
    for (int u = 0; u < GW_UNKNOWNS; u++) {
        names[u] = gw_ride_unknown_name(u);
        for (int i = 0; i < kits; i++) values[u * kits + i] = d->items[from + i]->difference.heard_effect[u];
    }
    const gw_bar_chart chart = { .words = { title.title, d->c->title,
                                            "upper end over the middle, force into the body, A-weighted (dB)",
                                            NULL, caution(d) },
                                 .groups = names,
                                 .n_groups = GW_UNKNOWNS,
                                 .parts = d->names + from,
                                 .styles = d->styles + from,
                                 .n_parts = kits,
                                 .values = values,
                                 .decimals = 1 };
    if (kits > 0) gw_charts_bars(d->charts, title.stem, &chart);
    return true;
}

/* ---- after the bump ---- */

static const double SHOWN_SECONDS = 0.4;

static bool bump(gw_ride_drawing *d, bool vertical)
{
    gw_ride_title title = vertical ? title_in_words(d, "bump-vertical", GW_WORDS_CHART_BUMP_VERTICAL)
                                   : title_in_words(d, "bump-fore-aft", GW_WORDS_CHART_BUMP_FORE_AFT);
    const gw_obstacle *first = &d->items[0]->result.obstacle;
    if (!first->n) return true;
    int n = (int)fmin(first->n, SHOWN_SECONDS / first->dt);
    double *time = gw_arena_alloc(&d->arena, (size_t)n, sizeof *time);
    gw_chart_series *series = gw_arena_alloc(&d->arena, (size_t)d->n, sizeof *series);
    if (!time || !series) return false;
    for (int i = 0; i < n; i++) time[i] = i * first->dt;
    for (int i = 0; i < d->n; i++) {
        const gw_obstacle *o = &d->items[i]->result.obstacle;
        series[i] =
            (gw_chart_series){ d->names[i], time, vertical ? o->vertical : o->fore_aft, n, d->styles[i] };
    }
    const gw_line_chart chart = { .words = { title.title, d->c->title, gw_words_text(GW_WORDS_CHART_TIME),
                                             gw_words_text(vertical ? GW_WORDS_CHART_BUMP_VERTICAL_Y
                                                                    : GW_WORDS_CHART_BUMP_FORE_AFT_Y),
                                             caution(d) },
                                  .series = series,
                                  .n_series = d->n,
                                  .with_zero = true };
    gw_charts_lines(d->charts, title.stem, &chart);
    return true;
}

static bool all_of(gw_ride_drawing *d)
{
    return by_kit(d) && by_path(d) && bands(d) && shares(d) && unknowns(d) && bump(d, false) && bump(d, true);
}

static gw_status draw_corners(const gw_case *c, const gw_ride_study *study, bool (*draw)(gw_ride_drawing *d),
                              gw_charts *charts, gw_error *err)
{
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        gw_ride_drawing d = { .c = c, .study = study, .axle = a, .charts = charts };
        bool ok = begin(&d) && (d.n == 0 || draw(&d));
        gw_arena_free(&d.arena);
        if (!ok) return gw_fail(err, GW_E_NOMEM, "out of memory for a chart");
    }
    return GW_OK;
}

gw_status gw_transmissibility_charts(const gw_case *c, const gw_ride_study *study, gw_charts *charts,
                                     gw_error *err)
{
    return draw_corners(c, study, by_kit, charts, err);
}

gw_status gw_ride_charts(const gw_case *c, const void *made, gw_charts *charts, gw_error *err)
{
    return draw_corners(c, &((const gw_ride_made *)made)->study, all_of, charts, err);
}
