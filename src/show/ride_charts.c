/* SPDX-License-Identifier: MIT */
/* Charts of ride. One style a kit in all of them, in the order of the case. */
#include "chart/style.h"
#include "format/number.h"
#include "giveway/casefile.h"
#include "giveway/units.h"
#include "show/message.h"
#include "show/phrase.h"
#include "show/ride.h"
#include "show/ride_parts.h"
#include "show/ride_words.h"
#include "show/words.h"

#include <math.h>
#include <stdio.h>

/* Where it is heard rather than felt: the last stretch of the charts [Hz]. */
static const double BOOM_FROM = 30.0, BOOM_TO = 315.0;

enum { MAX_LINES = 7, PEAKS = 2, FIGURE = 64 };

/* One corner's charts. */
typedef struct gw_ride_drawing {
    const gw_case *c;
    gw_axle axle;
    const gw_ride_item *items[GW_MAX_KITS]; /* of this corner */
    const char *names[GW_MAX_KITS];         /* of their kits  */
    int styles[GW_MAX_KITS];
    int n;
    gw_charts *charts;
} gw_ride_drawing;

static void add_item(gw_ride_drawing *d, const gw_ride_item *item)
{
    d->names[d->n] = gw_kit_said(d->c, item->kit);
    d->styles[d->n] = item->kit;
    d->items[d->n++] = item;
}

/* The places that carry most of the harshness, largest first; returns how many. */
static int largest_places(const gw_ride_drawing *d, int kits, gw_ride_place **place)
{
    const gw_ride_result *r = &d->items[0]->result;
    *place = gw_charts_room(d->charts, r->n_paths + 1, sizeof **place);
    if (!*place) return 0;
    int n = gw_ride_places(&d->c->corners[d->axle], r, *place);
    return gw_ride_largest_places(d->items, kits, MAX_LINES - 1, *place, n);
}

static const char *place_said(const gw_ride_drawing *d, gw_ride_place place)
{
    gw_buf said = { 0 };
    gw_ride_place_said(&d->c->corners[d->axle], &d->items[0]->result, place, &said);
    return gw_charts_kept(d->charts, &said);
}

static const char *stem_of(const gw_ride_drawing *d, const char *what)
{
    return gw_charts_fmt(d->charts, "%s-%s", what, gw_axle_name(d->axle));
}

/* A page that holds the chart says it once for all. */
static const char *caution(const gw_ride_drawing *d)
{
    return d->charts->inlined ? NULL : gw_words_text(GW_WORDS_RIDE_ESTIMATE);
}

static const char *where(const gw_ride_drawing *d)
{
    return d->axle == GW_FRONT ? "front" : "rear";
}

static gw_chart_words words_of(const gw_ride_drawing *d, gw_buf *title, const char *what, const char *x,
                               const char *y)
{
    return (gw_chart_words){ gw_charts_kept(d->charts, title), d->c->title, x, y, caution(d), what };
}

/* Forces are shown in newtons per millimetre, as rates are. */
static void in_trade_units(const gw_ride_drawing *d, gw_chart_series *series, int n)
{
    for (int i = 0; i < n; i++) {
        double *y = gw_charts_room(d->charts, series[i].n, sizeof *y);
        for (int k = 0; y && k < series[i].n; k++) y[k] = series[i].y[k] / GW_N_PER_MM;
        series[i].y = y;
    }
}

static void force_chart(const gw_ride_drawing *d, const char *stem, gw_buf *title, const char *what,
                        gw_chart_series *series, int n)
{
    /* What people call the stretches of the frequency axis. */
    const gw_chart_band stretches[] = { { 1, 8, gw_words_text(GW_WORDS_CHART_BOUNCE) },
                                        { 8, BOOM_FROM, gw_words_text(GW_WORDS_CHART_SHAKE) },
                                        { BOOM_FROM, BOOM_TO, gw_words_text(GW_WORDS_CHART_BOOM) } };
    const gw_line_chart chart = { .words = words_of(d, title, what, gw_words_text(GW_WORDS_CHART_FREQUENCY),
                                                    gw_words_text(GW_WORDS_CHART_ROAD_FORCE)),
                                  .series = series,
                                  .n_series = n,
                                  .log_x = true,
                                  .log_y = true,
                                  .has_x_range = true,
                                  .x_from = 1.0,
                                  .x_to = BOOM_TO,
                                  .bands = stretches,
                                  .n_bands = 3 };
    in_trade_units(d, series, n);
    gw_charts_lines(d->charts, stem_of(d, stem), &chart);
}

typedef struct gw_peak {
    int kit, at; /* of the series */
} gw_peak;

/* The highest point of all lines where it booms; all have the same frequencies. */
static gw_peak highest(const gw_chart_series *series, int n)
{
    gw_peak peak = { 0, -1 };
    for (int i = 0; i < n; i++)
        for (int k = 0; k < series[i].n; k++) {
            if (series[i].x[k] < BOOM_FROM || series[i].x[k] > BOOM_TO) continue;
            if (peak.at < 0 || series[i].y[k] > series[peak.kit].y[peak.at]) peak = (gw_peak){ i, k };
        }
    return peak;
}

/* Where it booms most, with which kit, and how much of that comes with the first one, or least with another.
 */
static void say_peak_of_boom(const gw_ride_drawing *d, const gw_chart_series *series, int n, gw_buf *out)
{
    gw_peak peak = highest(series, n);
    int other = peak.kit || n == 1 ? 0 : 1;
    if (peak.at < 0) return;
    for (int i = 2; i < n && !peak.kit; i++)
        if (series[i].y[peak.at] < series[other].y[peak.at]) other = i;
    double ratio = series[peak.kit].y[peak.at] / series[other].y[peak.at];
    gw_buf_fmt(out, "Boom at the %s peaks at %s Hz with %s", where(d),
               gw_significant(series[peak.kit].x[peak.at], 2).s, series[peak.kit].name);
    if (n > 1 && ratio < 1.1)
        gw_buf_fmt(out, ", much the same as with %s", series[other].name);
    else if (n > 1)
        gw_buf_fmt(out, ": %s times as much as with %s there", gw_significant(ratio, 2).s,
                   series[other].name);
}

static void by_kit(const gw_ride_drawing *d)
{
    gw_chart_series series[GW_MAX_KITS];
    gw_buf title = { 0 };
    int n = 0;
    for (int i = 0; i < d->n; i++) {
        const gw_ride_curve *curve = &d->items[i]->result.curve;
        if (!curve->n) continue;
        series[n++] = (gw_chart_series){ d->names[i], curve->hz, curve->force, curve->n, d->styles[i] };
    }
    if (!n) return;
    say_peak_of_boom(d, series, n, &title);
    force_chart(d, "transmissibility", &title, gw_words_text(GW_WORDS_CHART_ROAD), series, n);
}

/* What one wheel sends into the body through a place [N/m]: the squares of all places add up to that of the
 * curve of all together, in which an axle's two wheels count half each. NULL: no memory. */
static double *place_curve(const gw_ride_drawing *d, gw_ride_place place)
{
    const gw_ride_curve *curve = &d->items[0]->result.curve;
    const double *one = &curve->path[place.path * curve->n];
    const double wheels = gw_is_pair(&d->c->corners[d->axle]) ? 2.0 : 1.0;
    double *sum = gw_charts_room(d->charts, curve->n, sizeof *sum);
    for (int k = 0; sum && k < curve->n; k++) {
        double image = place.image < 0 ? 0.0 : curve->path[place.image * curve->n + k];
        sum[k] = hypot(one[k], image) / sqrt(wheels);
    }
    return sum;
}

/* The first kit, place by place: those that carry most of its harshness. */
static void by_place(const gw_ride_drawing *d)
{
    const gw_ride_result *r = &d->items[0]->result;
    gw_chart_series series[MAX_LINES];
    gw_buf title = { 0 };
    gw_ride_place *place;
    int n = largest_places(d, 1, &place);
    if (!r->curve.n || !n) return;
    series[0] = (gw_chart_series){ "all together", r->curve.hz, r->curve.force, r->curve.n, GW_PARTS };
    for (int i = 0; i < n; i++) {
        const double *force = place_curve(d, place[i]);
        if (!force) return;
        series[i + 1] =
            (gw_chart_series){ place_said(d, place[i]), r->curve.hz, force, r->curve.n, GW_PARTS + 1 + i };
    }
    gw_buf_fmt(&title, "At the %s with %s most of the harshness comes through %s: %s %%", where(d),
               d->names[0], series[1].name, gw_fixed(100.0 * gw_ride_place_share(r, place[0]), 0).s);
    force_chart(d, "transmissibility-paths", &title,
                "Body force of one wheel per road height (N/mm) by attachment", series, n + 1);
}

/* The kit whose noise parts most from the first kit's, where most of it is heard: bands in which next to
 * nothing comes through part by more, and say nothing. */
static void say_bands(const gw_ride_drawing *d, int from, gw_buf *out)
{
    int kit = from;
    for (int i = from + 1; i < d->n; i++)
        if (fabs(d->items[i]->difference.noise) > fabs(d->items[kit]->difference.noise)) kit = i;
    int band = d->items[kit]->result.heard_band;
    double more = d->items[kit]->difference.band[band];
    gw_number hz = gw_exact(gw_band_nominal(GW_BAND_FIRST + band));
    gw_buf_fmt(out, "At %s Hz, where most is heard at the %s with %s, ", hz.s, where(d), d->names[kit]);
    if (fabs(more) < 0.05)
        gw_buf_add(out, "as much comes through as before");
    else
        gw_buf_fmt(out, "%s dB %s comes through", gw_fixed(fabs(more), 1).s, more > 0.0 ? "more" : "less");
}

/* The baseline would be a row of nothing: it is left out where it is not alone. */
static void bands(const gw_ride_drawing *d)
{
    double centres[GW_BANDS], values[GW_MAX_KITS * GW_BANDS];
    int from = d->n > 1 && d->items[0]->kit == 0 ? 1 : 0;
    gw_buf title = { 0 };
    for (int b = 0; b < GW_BANDS; b++) centres[b] = gw_band_nominal(GW_BAND_FIRST + b);
    for (int i = from; i < d->n; i++)
        for (int b = 0; b < GW_BANDS; b++)
            values[(i - from) * GW_BANDS + b] = d->items[i]->difference.band[b];
    say_bands(d, from, &title);
    const gw_band_chart chart = { .words = words_of(
                                      d, &title, "Body force over the first kit (dB) by third-octave",
                                      "third-octave band (Hz)", "body force over the first kit (dB)"),
                                  .centre_hz = centres,
                                  .n_bands = GW_BANDS,
                                  .names = d->names + from,
                                  .styles = d->styles + from,
                                  .n_names = d->n - from,
                                  .values = values };
    gw_charts_bands(d->charts, stem_of(d, "third-octaves"), &chart);
}

/* What these places leave of a kit's harshness to others [%]. */
static double rest_of(const gw_ride_item *item, const gw_ride_place *place, int n)
{
    double rest = 100.0;
    for (int p = 0; p < n; p++) rest -= 100.0 * gw_ride_place_share(&item->result, place[p]);
    return fmax(rest, 0.0);
}

/* A row a kit: its shares, and the rest in the last column where there is one. */
static void fill_shares(const gw_ride_drawing *d, const gw_ride_place *place, int n, int parts,
                        double *values)
{
    for (int i = 0; i < d->n; i++)
        for (int p = 0; p < parts; p++)
            values[i * parts + p] = p < n ? 100.0 * gw_ride_place_share(&d->items[i]->result, place[p])
                                          : rest_of(d->items[i], place, n);
}

static void shares(const gw_ride_drawing *d)
{
    gw_ride_place *place;
    const char *names[MAX_LINES];
    int n = largest_places(d, d->n, &place), parts = n;
    for (int p = 0; p < n; p++) names[p] = place_said(d, place[p]);
    for (int i = 0; i < d->n && parts == n; i++)
        if (rest_of(d->items[i], place, n) > 1e-6) names[parts++] = "all else";
    double values[GW_MAX_KITS * MAX_LINES];
    fill_shares(d, place, n, parts, values);
    gw_buf title = { 0 }, of = { 0 };
    gw_buf_fmt(&of, "Harshness at the %s", where(d));
    const gw_message message = { .of = gw_charts_kept(d->charts, &of), .unit = "%" };
    gw_message_part(&message, names, values, n, 100.0, d->names[0], &title);
    const gw_bar_chart chart = { .words = words_of(d, &title,
                                                   gw_is_pair(&d->c->corners[d->axle])
                                                       ? "Share of the squared harshness by attachment, "
                                                         "both sides together (%)"
                                                       : "Share of the squared harshness by attachment (%)",
                                                   "share of the squared harshness, 20 to 200 Hz (%)", NULL),
                                 .groups = d->names,
                                 .n_groups = d->n,
                                 .parts = names,
                                 .n_parts = parts,
                                 .values = values,
                                 .stacked = true,
                                 .decimals = 0 };
    gw_charts_bars(d->charts, stem_of(d, "paths"), &chart);
}

/* What the upper end of each unknown adds to what is heard, a bar a kit. */
static void unknowns(const gw_ride_drawing *d)
{
    int from = d->items[0]->kit == 0 ? 1 : 0, kits = d->n - from, most = 0;
    const char *names[GW_UNKNOWNS];
    double values[GW_MAX_KITS * GW_UNKNOWNS];
    gw_buf title = { 0 };
    if (kits <= 0) return;
    for (int u = 0; u < GW_UNKNOWNS; u++) {
        names[u] = gw_ride_unknown_name(u);
        for (int i = 0; i < kits; i++) values[u * kits + i] = d->items[from + i]->difference.heard_effect[u];
    }
    for (int i = 1; i < kits * GW_UNKNOWNS; i++)
        if (fabs(values[i]) > fabs(values[most])) most = i;
    gw_buf_fmt(&title, "Of what is not known at the %s, most hangs on %s: %s dB with %s", where(d),
               names[most / kits], gw_signed(values[most], 1).s, d->names[from + most % kits]);
    const gw_bar_chart chart = {
        .words = words_of(d, &title, "What the upper end of each unknown adds to what is heard (dB)",
                          "upper end over the middle, force into the body, A-weighted (dB)", NULL),
        .groups = names,
        .n_groups = GW_UNKNOWNS,
        .parts = d->names + from,
        .styles = d->styles + from,
        .n_parts = kits,
        .values = values,
        .decimals = 1
    };
    gw_charts_bars(d->charts, stem_of(d, "unknowns"), &chart);
}

/* ---- after the bump ---- */

static void say_bump(const gw_ride_drawing *d, gw_buf *out)
{
    gw_told told[GW_MAX_KITS];
    gw_buf of = { 0 };
    int n = 0;
    for (; n < d->n && n < GW_MAX_KITS; n++)
        told[n] = (gw_told){ .kit = d->names[n], .value = d->items[n]->result.obstacle.peak_fore_aft };
    gw_buf_fmt(&of, "The knock of a bump, fore and aft at the %s,", where(d));
    const gw_message message = { .of = gw_buf_str(&of), .unit = "N" };
    gw_message_kits(&message, told, n, out);
    gw_buf_drop(&of, out);
}

/* "812 N, 0.21 s": until a tenth of it is left, where the record is long enough. */
static void say_peak(const gw_obstacle *o, bool vertical, char text[FIGURE])
{
    double decay = vertical ? o->decay_vertical : o->decay_fore_aft;
    bool told = o->settled && isfinite(decay);
    snprintf(text, FIGURE, "%.20s N%s%.20s%s", gw_fixed(vertical ? o->peak_vertical : o->peak_fore_aft, 0).s,
             told ? ", " : "", told ? gw_fixed(decay, 2).s : "", told ? " s" : "");
}

/* A row a kit in the kit's colour: the peaks of both directions, and how long they take to die away. */
static void bump(const gw_ride_drawing *d)
{
    gw_chart_mark mark[GW_MAX_KITS * PEAKS];
    char figure[GW_MAX_KITS * PEAKS][FIGURE];
    gw_buf title = { 0 };
    int n = 0;
    if (!d->items[0]->result.obstacle.n) return;
    for (int i = 0; i < d->n * PEAKS; i++) {
        const gw_obstacle *o = &d->items[i / PEAKS]->result.obstacle;
        say_peak(o, i % PEAKS, figure[i]);
        mark[n++] = (gw_chart_mark){ .kind = GW_MARK_BAR,
                                     .row = i / PEAKS,
                                     .lane = i % PEAKS,
                                     .lanes = PEAKS,
                                     .to = i % PEAKS ? o->peak_vertical : o->peak_fore_aft,
                                     .style = d->styles[i / PEAKS],
                                     .figure = figure[i] };
    }
    say_bump(d, &title);
    gw_charts_figure(d->charts, stem_of(d, "bump"),
                     &(gw_figure){ .words = words_of(d, &title, gw_words_text(GW_WORDS_CHART_BUMP),
                                                     gw_words_text(GW_WORDS_CHART_BUMP_X), NULL),
                                   .x = { .with_zero = true },
                                   .y = { .kind = GW_SCALE_ROWS, .rows = d->names, .n_rows = d->n },
                                   .mark = mark,
                                   .n = n });
}

static void all_of(const gw_ride_drawing *d)
{
    by_kit(d);
    by_place(d);
    bands(d);
    shares(d);
    unknowns(d);
    bump(d);
}

static void draw_corners(const gw_case *c, const gw_ride_study *study, void (*draw)(const gw_ride_drawing *d),
                         gw_charts *charts)
{
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        gw_ride_drawing d = { .c = c, .axle = a, .charts = charts };
        for (int i = 0; i < study->n; i++)
            if (study->item[i].axle == a) add_item(&d, &study->item[i]);
        if (d.n) draw(&d);
    }
}

void gw_transmissibility_charts(const gw_case *c, const gw_ride_study *study, gw_charts *charts)
{
    draw_corners(c, study, by_kit, charts);
}

void gw_ride_charts(const gw_case *c, const void *made, gw_charts *charts)
{
    draw_corners(c, &((const gw_ride_made *)made)->study, all_of, charts);
}
