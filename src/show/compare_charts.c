/* SPDX-License-Identifier: MIT */
/* Charts of the comparison. One style a kit in all of them, in the order of the case. */
#include "show/compare_charts.h"

#include "format/html.h"
#include "giveway/casefile.h"
#include "giveway/pick.h"
#include "giveway/reversal.h"
#include "show/bands.h"
#include "show/joint.h"
#include "show/message.h"
#include "show/phrase.h"
#include "show/ride.h"
#include "show/words.h"

#include <math.h>
#include <stdio.h>

enum { MAX_PARTS = 8, TURNS = 64 };

/* A title with the axle and the load in it. */
static void words_about(gw_words which, gw_axle axle, const char *load, gw_buf *out)
{
    const gw_html_part parts[] = { { "axle", gw_axle_name(axle) }, { "load", load }, { NULL, NULL } };
    gw_plain_say(out, gw_words_text(which), parts);
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

/* Why a kit has no result under a load; NULL: it has one, or was not wanted. */
static const char *failure_of(const gw_comparison *cmp, int kit, gw_axle axle, int load)
{
    for (int i = 0; i < cmp->deflect->n; i++) {
        const gw_deflection *item = &cmp->deflect->item[i];
        if (item->kit == kit && item->axle == axle && item->load == load) return item->failed;
    }
    return NULL;
}

/* What a chart of contributions is made of. */
typedef struct gw_stack {
    const char *groups[GW_MAX_KITS], *parts[MAX_PARTS], *failure;
    double values[GW_MAX_KITS * MAX_PARTS], half[GW_MAX_KITS];
    int joints[MAX_PARTS], n_joints, n_parts, n;
    double whole; /* of the first group [deg] */
} gw_stack;

static const char *name_of(const gw_corner *corner, int joint, gw_charts *charts)
{
    gw_buf said = { 0 };
    gw_joint_said(corner, joint, &said);
    return gw_charts_kept(charts, &said);
}

static void begin_stack(const gw_comparison *cmp, gw_axle axle, int load, gw_stack *s, gw_charts *charts)
{
    s->n_joints = pick_joints(cmp, axle, load, s->joints);
    s->n_parts = s->n_joints + 2;
    for (int i = 0; i < s->n_joints; i++) s->parts[i] = name_of(&cmp->c->corners[axle], s->joints[i], charts);
    s->parts[s->n_joints] = gw_words_text(GW_WORDS_CHART_TRAVEL);
    s->parts[s->n_joints + 1] = gw_words_text(GW_WORDS_CHART_ALL_ELSE);
}

/* A kit that carries the load, or one that does not and says so; others are left out. */
static void add_stack(const gw_comparison *cmp, int kit, gw_axle axle, int load, gw_stack *s)
{
    const gw_deflection *item = gw_deflect_find(cmp->deflect, kit, axle, load);
    const char *why = failure_of(cmp, kit, axle, load);
    double *values = &s->values[s->n * s->n_parts];
    if (!item && !why) return;
    if (why && !s->failure) s->failure = why;
    for (int i = 0; i < s->n_parts; i++) values[i] = (double)NAN;
    if (item) fill_parts(item, s->n_joints, s->joints, values);
    const gw_bands_item *band = gw_band_of(cmp->bands, item);
    s->half[s->n] = band ? band->own[GW_SPREAD_TOE].half / GW_DEG : (double)NAN;
    if (!s->n) s->whole = item ? item->result.toe_change / GW_DEG : (double)NAN;
    s->groups[s->n++] = gw_kit_said(cmp->c, kit);
}

/* What most of it comes from: a bush, or the wheel's travel. What is left over has no name. */
static void draw_stack(const gw_comparison *cmp, gw_axle axle, int load, const char *stem, const gw_stack *s,
                       gw_charts *charts)
{
    gw_buf title = { 0 }, of = { 0 };
    gw_buf_fmt(&of, "%s toe change ", axle == GW_FRONT ? "Front" : "Rear");
    gw_phrase_load(&cmp->c->loads[load], &of);
    const gw_message message = {
        .of = gw_charts_kept(charts, &of), .unit = "deg", .decimals = 2, .is_signed = true
    };
    gw_message_part(&message, s->parts, s->values, s->n_joints + 1, s->whole, s->groups[0], &title);
    const gw_bar_chart chart = { .words = { .title = gw_charts_kept(charts, &title),
                                            .subtitle = cmp->c->title,
                                            .x_title = gw_words_text(GW_WORDS_CHART_SHARE),
                                            .note = s->failure,
                                            .what =
                                                gw_words_text(cmp->bands ? GW_WORDS_CHART_CONTRIBUTIONS_BAND
                                                                         : GW_WORDS_CHART_CONTRIBUTIONS) },
                                 .groups = s->groups,
                                 .n_groups = s->n,
                                 .parts = s->parts,
                                 .n_parts = s->n_parts,
                                 .values = s->values,
                                 .half = s->half,
                                 .stacked = true,
                                 .decimals = 2 };
    gw_charts_bars(charts, stem, &chart);
}

static void contribution_chart(const gw_comparison *cmp, gw_axle axle, int load, const char *stem,
                               gw_charts *charts)
{
    gw_stack s = { 0 };
    begin_stack(cmp, axle, load, &s, charts);
    for (int k = 0; k < cmp->c->n_kits; k++) add_stack(cmp, k, axle, load, &s);
    if (s.n) draw_stack(cmp, axle, load, stem, &s, charts);
}

static bool acts_on(const gw_comparison *cmp, int load, gw_axle axle, bool or_fails)
{
    for (int k = 0; k < cmp->c->n_kits; k++)
        if (gw_deflect_find(cmp->deflect, k, axle, load) || (or_fails && failure_of(cmp, k, axle, load)))
            return true;
    return false;
}

static void contribution_charts(const gw_comparison *cmp, gw_charts *charts)
{
    static const char *const STEMS[] = { "contributions-braking", "contributions-cornering" };
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        for (int i = 0; i < 2; i++) {
            int load = gw_pick_load(cmp->c, cmp->deflect, i ? GW_PICK_CORNER : GW_PICK_STOP);
            const char *stem = gw_charts_fmt(charts, "%s-%s", STEMS[i], gw_axle_name(a));
            if (load >= 0 && acts_on(cmp, load, a, false)) contribution_chart(cmp, a, load, stem, charts);
        }
}

void gw_deflect_charts(const gw_case *c, const gw_deflect_study *study, gw_charts *charts)
{
    const gw_comparison cmp = { .c = c, .deflect = study };
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        for (int l = 0; l < c->n_loads; l++) {
            /* The number keeps apart what names cut short or written with dashes would not. */
            const char *stem = gw_charts_fmt(charts, "contributions-%s-%d-%s", gw_axle_name(a), l + 1, c->loads[l].name);
            if (acts_on(&cmp, l, a, true)) contribution_chart(&cmp, a, l, stem, charts);
        }
}

/* ---- steadiness against harshness ---- */

/* Points of the trade-off. */
typedef struct gw_trade {
    const char *names[GW_MAX_KITS];
    double x[GW_MAX_KITS], y[GW_MAX_KITS], low[GW_MAX_KITS], high[GW_MAX_KITS]; /* low and high of y */
    bool banded;                                                                /* all of them have a band */
    bool open[GW_MAX_KITS], close; /* whose order to the first is open; any of them */
    int styles[GW_MAX_KITS], n;
} gw_trade;

/* Sizes alone would let a wheel that now turns the other way look steadier: its name says where it turns. */
static const char *name_with_direction(const gw_comparison *cmp, gw_axle axle, int load, int kit,
                                       gw_charts *charts)
{
    const char *name = gw_kit_said(cmp->c, kit);
    gw_reversal turned[TURNS];
    int n = gw_reversals_find(cmp->c, cmp->deflect, cmp->baseline, kit, turned, TURNS);
    for (int i = 0; i < n && i < TURNS; i++) {
        const gw_reversal *t = &turned[i];
        if (t->camber || t->axle != axle || t->load != load) continue;
        return gw_charts_fmt(charts, "%s: %s%s", name, t->warns ? "gains " : "turns to ",
                             t->to < 0 ? "toe-out" : "toe-in");
    }
    return name;
}

/* A size has no band below zero. */
static void band_trade(const gw_comparison *cmp, const gw_deflection *item, gw_trade *t)
{
    const gw_bands_item *band = gw_band_of(cmp->bands, item);
    double half = band ? band->own[GW_SPREAD_TOE].half / GW_DEG : (double)NAN;
    t->low[t->n] = fmax(0.0, t->y[t->n] - half);
    t->high[t->n] = t->y[t->n] + half;
    t->banded = t->banded && isfinite(half);
    t->open[t->n] = band && band->has_difference && band->close;
    t->close = t->close || t->open[t->n];
}

static void fill_trade(const gw_comparison *cmp, gw_axle axle, int load, gw_trade *t, gw_charts *charts)
{
    for (int k = 0; k < cmp->c->n_kits; k++) {
        const gw_ride_item *ride = gw_ride_find(cmp->ride, k, axle);
        const gw_deflection *item = gw_deflect_find(cmp->deflect, k, axle, load);
        if (!ride || !item) continue;
        t->x[t->n] = ride->difference.harshness;
        t->y[t->n] = fabs(item->result.toe_change) / GW_DEG;
        t->styles[t->n] = k;
        band_trade(cmp, item, t);
        t->names[t->n++] = name_with_direction(cmp, axle, load, k, charts);
    }
}

/* The steadiest kit that surely is: what it gains, and what that costs. */
static void say_trade(const gw_comparison *cmp, gw_axle axle, const gw_trade *t, gw_buf *out)
{
    const char *where = axle == GW_FRONT ? "front" : "rear";
    int best = 0, open = 0;
    for (int i = 1; i < t->n; i++) {
        open = t->y[i] < t->y[0] && t->open[i] ? i : open;
        if (!t->open[i] && t->y[i] < t->y[best] - 0.005) best = i;
    }
    const char *kit = gw_kit_said(cmp->c, t->styles[best]);
    if (t->n < 2) {
        gw_buf_fmt(out, "The %s wheel's toe moves %s deg with %s", where, gw_fixed(t->y[0], 2).s, kit);
    } else if (!best) {
        gw_buf_fmt(out,
                   open ? "Too close to call whether any kit is steadier at the %s than %s"
                        : "No kit is steadier at the %s than %s",
                   where, kit);
    } else {
        double dB = t->x[best] - t->x[0];
        gw_buf_fmt(out, "With %s the %s is %s deg steadier", kit, where, gw_fixed(t->y[0] - t->y[best], 2).s);
        if (fabs(dB) < 0.05)
            gw_buf_add(out, " and no harsher");
        else
            gw_buf_fmt(out, dB > 0.0 ? " and %s dB harsher" : " and %s dB less harsh",
                       gw_fixed(fabs(dB), 1).s);
    }
}

static void draw_trade(const gw_comparison *cmp, gw_axle axle, int load, const gw_trade *t, gw_charts *charts)
{
    gw_buf title = { 0 }, y_title = { 0 };
    say_trade(cmp, axle, t, &title);
    words_about(GW_WORDS_CHART_TRADE_Y, axle, cmp->c->loads[load].name, &y_title);
    const gw_words note = !t->banded ? GW_WORDS_CHART_TRADE_NOTE
                          : t->close ? GW_WORDS_CHART_TRADE_CLOSE
                                     : GW_WORDS_CHART_TRADE_BAND;
    const gw_point_chart chart = { .words = { gw_charts_kept(charts, &title), cmp->c->title,
                                              gw_words_text(GW_WORDS_CHART_TRADE_X),
                                              gw_charts_kept(charts, &y_title), gw_words_text(note),
                                              gw_words_text(GW_WORDS_CHART_TRADE) },
                                   .names = t->names,
                                   .x = t->x,
                                   .y = t->y,
                                   .low = t->banded ? t->low : NULL,
                                   .high = t->banded ? t->high : NULL,
                                   .styles = t->styles,
                                   .n = t->n };
    gw_charts_points(charts, gw_charts_fmt(charts, "grip-against-harshness-%s", gw_axle_name(axle)), &chart);
}

/* The load that sentences speak of first, the same for both axles: a stop, else a corner, else what there is.
 */
static int trade_load(const gw_comparison *cmp, gw_axle axle)
{
    int load = gw_pick_load(cmp->c, cmp->deflect, GW_PICK_STOP);
    if (load < 0) load = gw_pick_load(cmp->c, cmp->deflect, GW_PICK_CORNER);
    for (int l = 0; l < cmp->c->n_loads && load < 0; l++)
        if (acts_on(cmp, l, axle, false)) load = l;
    return load;
}

/* One point a kit: toe change against harshness. */
static void trade_off_chart(const gw_comparison *cmp, gw_axle axle, gw_charts *charts)
{
    gw_trade trade = { .banded = true };
    int load = trade_load(cmp, axle);
    if (load >= 0) fill_trade(cmp, axle, load, &trade, charts);
    if (trade.n) draw_trade(cmp, axle, load, &trade, charts);
}

void gw_compare_charts(const gw_comparison *cmp, gw_charts *charts)
{
    contribution_charts(cmp, charts);
    gw_transmissibility_charts(cmp->c, cmp->ride, charts);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) trade_off_chart(cmp, a, charts);
}
