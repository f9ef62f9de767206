/* SPDX-License-Identifier: MIT */
/* Bands as whiskers: each load and kit, less the first kit, all loads together; and what to measure next. */
#include "format/number.h"
#include "giveway/casefile.h"
#include "record/unit.h"
#include "show/message.h"
#include "show/phrase.h"
#include "show/spread.h"

#include <math.h>
#include <stdio.h>

enum { STEM = 80, SHOWN = 12 };

static const char NOTE[] = "Bar and figure: the case as written. Whisker: 95 of 100 such cars.";
static const char NOTE_LESS[] =
    "Bar and figure: the case as written. Whisker: 95 of 100 such cars. Across zero: too close to call.";

/** What is drawn of a result, and how. */
typedef struct gw_spread_kind {
    const char *stem, *of, *axis;
    int quantity;
    gw_unit unit;
    int decimals;
    bool less; /* the first kit in the same car */
} gw_spread_kind;

static const gw_spread_kind KINDS[] = {
    { "spread-toe", "toe change", "toe change (deg, toe-in positive)", GW_SPREAD_TOE, GW_UNIT_DEG, 2, false },
    { "spread-camber", "camber change", "camber change (deg, top out positive)", GW_SPREAD_CAMBER,
      GW_UNIT_DEG, 2, false },
    { "spread-fore-aft", "wheel's movement fore and aft", "wheel centre (mm, forward positive)",
      GW_SPREAD_FORE_AFT, GW_UNIT_MM, 1, false },
    { "spread-toe-difference", "toe change less the first kit's", "difference of toe change (deg)",
      GW_SPREAD_TOE, GW_UNIT_DEG, 2, true },
};

/** Bars of one chart: rows down the page, a bar a kit in each. */
typedef struct gw_spread_rows {
    gw_charts *charts; /* whose memory it is */
    const char **group;
    double *value, *low, *high;   /* [group * kits + kit - from] */
    int n, kits, from;            /* the first kit that has a bar */
    int n_bars, n_open;           /* with a band; of these whose band holds zero */
    double widest;                /* band from end to end */
    const char *at, *with;        /* where that is: its row and its kit */
    const gw_spread_item **first; /* [group]: whose row it is */
} gw_spread_rows;

/* False: no memory, which the charts know. */
static bool rows_open(gw_spread_rows *r, gw_charts *charts, int most, int kits, int from)
{
    int room = most * kits + 1;
    *r = (gw_spread_rows){ .charts = charts, .kits = kits - from, .from = from };
    r->group = gw_charts_room(charts, most + 1, sizeof *r->group);
    r->first = gw_charts_room(charts, most + 1, sizeof *r->first);
    r->value = gw_charts_room(charts, room, sizeof *r->value);
    r->low = gw_charts_room(charts, room, sizeof *r->low);
    r->high = gw_charts_room(charts, room, sizeof *r->high);
    if (!r->group || !r->first || !r->value || !r->low || !r->high) return false;
    for (int i = 0; i < room; i++) r->value[i] = r->low[i] = r->high[i] = (double)NAN;
    return true;
}

static bool one_row(const gw_spread_item *a, const gw_spread_item *b)
{
    return a->load == b->load && a->axle == b->axle && a->wheel == b->wheel && a->side == b->side;
}

static const char *row_name(gw_spread_rows *r, const gw_case *c, const gw_spread_item *item)
{
    gw_buf text = { 0 };
    if (item->load < 0) return gw_axle_name(item->axle);
    gw_buf_add(&text, c->loads[item->load].name);
    if (item->sided) gw_buf_fmt(&text, ", %s", GW_WHEEL_NAMES[item->wheel]);
    if (c->loads[item->load].both) gw_buf_fmt(&text, ", %s", gw_side_name(item->side));
    return gw_charts_kept(r->charts, &text);
}

/* The row of a result, made where it is the first of its load and wheel. */
static int row_of(gw_spread_rows *r, const gw_case *c, const gw_spread_item *item)
{
    for (int g = 0; g < r->n; g++)
        if (one_row(r->first[g], item)) return g;
    r->first[r->n] = item;
    r->group[r->n] = row_name(r, c, item);
    return r->n++;
}

/* What titles are written from. */
static void take_in(gw_spread_rows *r, const gw_case *c, int kit, int row, int at)
{
    r->n_bars++;
    r->n_open += r->low[at] <= 0.0 && r->high[at] >= 0.0;
    if (r->high[at] - r->low[at] <= r->widest) return;
    r->widest = r->high[at] - r->low[at];
    r->at = r->group[row];
    r->with = gw_kit_said(c, kit);
}

/* How many differences are open, or which figure is the least sure. */
static void say_bands(const gw_spread_rows *r, const char *of, const char *unit, int decimals, bool less,
                      gw_buf *out)
{
    if (!r->n_bars)
        gw_buf_fmt(out, "%s, of the case as written", of);
    else if (less && r->n_open)
        gw_buf_fmt(out, "%s: too close to call in %d of %d", of, r->n_open, r->n_bars);
    else if (less)
        gw_buf_fmt(out, "%s: sure in all %d", of, r->n_bars);
    else
        gw_buf_fmt(out, "%s is least sure in %s with %s: a band of %s %s", of, r->at, r->with,
                   gw_fixed(r->widest, decimals).s, unit);
}

static void put(gw_spread_rows *r, const gw_case *c, const gw_spread_item *item, const gw_spread_part *part,
                int quantity, gw_unit unit)
{
    const int row = row_of(r, c, item), at = row * r->kits + item->kit - r->from;
    const gw_spread_band *b = &part->band[quantity];
    r->value[at] = gw_unit_out(unit, b->nominal);
    if (!part->draws) return;
    r->low[at] = gw_unit_out(unit, b->low);
    r->high[at] = gw_unit_out(unit, b->high);
    take_in(r, c, item->kit, row, at);
}

/* `kits`: names of all that the case has; NULL: bars without a kit. */
static void draw_rows(const gw_spread_rows *r, const char *stem, gw_chart_words words,
                      const char *const *kits, int decimals)
{
    int styles[GW_MAX_KITS];
    for (int k = 0; k < r->kits; k++) styles[k] = r->from + k;
    const gw_bar_chart chart = { .words = words,
                                 .groups = r->group,
                                 .n_groups = r->n,
                                 .parts = kits ? kits + r->from : NULL,
                                 .styles = styles,
                                 .n_parts = r->kits,
                                 .values = r->value,
                                 .low = r->low,
                                 .high = r->high,
                                 .decimals = decimals };
    if (r->n) gw_charts_bars(r->charts, stem, &chart);
}

static void kind_chart(const gw_case *c, const gw_spread_study *s, const gw_spread_kind *kind, gw_axle axle,
                       const char *const *kits, gw_charts *charts)
{
    gw_spread_rows r;
    gw_buf title = { 0 };
    if (!rows_open(&r, charts, s->n, c->n_kits, kind->less)) return;
    for (int i = 0; i < s->n; i++) {
        const gw_spread_item *item = &s->item[i];
        if (item->axle != axle || item->load < 0 || (kind->less && !item->has_difference)) continue;
        put(&r, c, item, kind->less ? &item->difference : &item->own, kind->quantity, kind->unit);
    }
    const char *of = gw_charts_fmt(charts, "%s %s", axle == GW_FRONT ? "Front" : "Rear", kind->of);
    say_bands(&r, of, gw_unit_word(kind->unit), kind->decimals, kind->less, &title);
    const gw_chart_words words = { gw_charts_kept(charts, &title),
                                   c->title,
                                   kind->axis,
                                   NULL,
                                   kind->less ? NOTE_LESS : NOTE,
                                   kind->less ? "By load, in the same car" : "By load, kit by kit" };
    draw_rows(&r, gw_charts_fmt(charts, "%s-%s", kind->stem, gw_axle_name(axle)), words, kits,
              kind->decimals);
}

/* Harshness and road noise over the first kit of the same car. */
static void ride_chart(const gw_case *c, const gw_spread_study *s, int quantity, const char *const *kits,
                       gw_charts *charts)
{
    gw_spread_rows r;
    gw_buf title = { 0 };
    const bool noise = quantity == GW_SPREAD_NOISE;
    if (!rows_open(&r, charts, s->n, c->n_kits, 1)) return;
    for (int i = 0; i < s->n; i++)
        if (s->item[i].load < 0 && s->item[i].kit > 0)
            put(&r, c, &s->item[i], &s->item[i].own, quantity, GW_UNIT_DB);
    say_bands(&r, noise ? "Road noise over the first kit" : "Harshness over the first kit", "dB", 1, true,
              &title);
    const gw_chart_words words = { gw_charts_kept(charts, &title),
                                   c->title,
                                   noise ? "force into the body, A-weighted (dB over the first kit)"
                                         : "harshness (dB over the first kit)",
                                   NULL,
                                   NOTE_LESS,
                                   "By axle, kit by kit (dB)" };
    draw_rows(&r, noise ? "spread-road-noise" : "spread-harshness", words, kits, 1);
}

static void say_unsteadiness(const gw_case *c, const gw_spread_study *s, gw_buf *out)
{
    const gw_message message = { .of = "Unsteadiness over all loads", .unit = "deg", .decimals = 3 };
    gw_told told[GW_MAX_KITS];
    int n = 0;
    for (; n < s->n_kits && n < GW_MAX_KITS; n++) {
        const double often = s->summary[n].steadier; /* NAN of the first */
        told[n] = (gw_told){ gw_kit_said(c, s->summary[n].kit),
                             gw_unit_out(GW_UNIT_DEG, s->summary[n].unsteadiness.nominal),
                             often > 0.025 && often < 0.975 };
    }
    gw_message_kits(&message, told, n, out);
}

/* All toe changes of a kit together. */
static void summary_chart(const gw_case *c, const gw_spread_study *s, const char *const *kits,
                          gw_charts *charts)
{
    gw_spread_rows r;
    gw_buf title = { 0 };
    if (!rows_open(&r, charts, 1, s->n_kits, 0)) return;
    r.group[r.n++] = "all loads";
    for (int k = 0; k < s->n_kits; k++) {
        const gw_spread_summary *sum = &s->summary[k];
        r.value[k] = gw_unit_out(GW_UNIT_DEG, sum->unsteadiness.nominal);
        r.low[k] = sum->draws ? gw_unit_out(GW_UNIT_DEG, sum->unsteadiness.low) : (double)NAN;
        r.high[k] = sum->draws ? gw_unit_out(GW_UNIT_DEG, sum->unsteadiness.high) : (double)NAN;
    }
    say_unsteadiness(c, s, &title);
    const gw_chart_words words = { gw_charts_kept(charts, &title),
                                   c->title,
                                   "root mean square of what the wheels should not do (deg)",
                                   NULL,
                                   NOTE,
                                   "Unsteadiness over all loads (deg)" };
    draw_rows(&r, "spread-unsteadiness", words, kits, 3);
}

/* Shares of the variance of all toe changes, the greatest first. */
static void shares_chart(const gw_case *c, const gw_spread_study *s, gw_charts *charts)
{
    gw_spread_rows r;
    gw_buf title = { 0 };
    if (!rows_open(&r, charts, s->n_figures, 1, 0)) return;
    for (; r.n < s->n_ranked && r.n < SHOWN; r.n++) {
        gw_buf text = { 0 };
        gw_phrase_unsure(c, s->figure[s->ranked[r.n].figure].of, &text);
        r.group[r.n] = gw_charts_kept(charts, &text);
        r.value[r.n] = gw_unit_out(GW_UNIT_PERCENT, s->ranked[r.n].share);
    }
    if (r.n)
        gw_buf_fmt(&title, "Measure next: %s makes %s %% of what is not sure of toe", r.group[0],
                   gw_fixed(r.value[0], 0).s);
    const gw_chart_words words = { gw_charts_kept(charts, &title),
                                   c->title,
                                   "share of the variance of all toe changes (%)",
                                   NULL,
                                   s->n_figures > SHOWN ? "The greatest shares; what is left out is smaller."
                                                        : NULL,
                                   "Where the bands of toe come from (%)" };
    draw_rows(&r, "spread-measure-next", words, NULL, 1);
}

void gw_spread_charts(const gw_case *c, const void *study, gw_charts *charts)
{
    const gw_spread_study *s = study;
    const char *kits[GW_MAX_KITS];
    for (int k = 0; k < c->n_kits; k++) kits[k] = gw_kit_said(c, k);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        for (size_t k = 0; k < sizeof KINDS / sizeof *KINDS; k++)
            kind_chart(c, s, &KINDS[k], a, kits, charts);
    for (int q = 0; q < GW_SPREAD_RIDE_QUANTITIES && s->options.ride; q++) ride_chart(c, s, q, kits, charts);
    summary_chart(c, s, kits, charts);
    shares_chart(c, s, charts);
}
