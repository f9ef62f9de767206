/* SPDX-License-Identifier: MIT */
/* The answer in words first: which kit is steadier whatever the parts turn out to be. Then bands, then what
 * to measure. */
#include "show/spread.h"

#include "format/table.h"
#include "giveway/units.h"
#include "show/phrase.h"

#include <math.h>

static void head_words(const gw_case *c, const gw_spread_study *s, gw_paper *paper)
{
    gw_buf text = { 0 };
    gw_buf_fmt(
        &text,
        "%ld cars like this one, each with other figures: %d are uncertain%s. Of 100 such cars 95 lie in "
        "the bands; what no figure varies (the model itself, the loads) is not in them.",
        s->options.draws, s->n_figures,
        s->options.centre    ? ", as the readings leave them"
        : c->uncertain.given ? ""
                             : ", as common practice has them (the case has no \"uncertain\")");
    gw_paper_say_of(paper, 0, &text);
    gw_paper_gap(paper);
}

static int of_100(double share)
{
    int n = (int)lround(100.0 * share);
    return n == 100 && share < 1.0 ? 99 : n == 0 && share > 0.0 ? 1 : n;
}

/* Nothing that is printed of the difference is other than 0.000 deg: which is the smaller, nobody can say. */
static bool is_nothing(double nominal, double low, double high)
{
    return fmax(fabs(nominal), fmax(fabs(low), fabs(high))) < 0.0005 * GW_DEG;
}

static bool as_steady(const gw_spread_band *a, const gw_spread_band *b)
{
    return is_nothing(a->nominal - b->nominal, a->low - b->low, a->high - b->high);
}

static void summary_words(const gw_case *c, const gw_spread_study *s, int k, gw_paper *paper)
{
    const gw_spread_summary *sum = &s->summary[k];
    gw_buf text = { 0 };
    gw_buf_clean(&text, gw_kit_said(c, k));
    if (!sum->draws)
        gw_buf_add(&text, ": stands in none of them");
    else if (k > 0 && as_steady(&sum->unsteadiness, &s->summary[0].unsteadiness))
        gw_buf_say(&text, ": as steady as %s", gw_kit_said(c, 0));
    else if (k > 0 && !isnan(sum->steadier)) {
        bool open = sum->steadier > 0.025 && sum->steadier < 0.975;
        gw_buf_say(&text, "%s than %s: %d of 100 such cars%s",
                   sum->steadier >= 0.5 ? ": steadier" : ": less steady", gw_kit_said(c, 0),
                   of_100(sum->steadier >= 0.5 ? sum->steadier : 1.0 - sum->steadier),
                   open ? " (too close to call)" : "");
    }
    if (sum->draws)
        gw_buf_fmt(&text,
                   "%s %.2f deg of toe in all loads together (root mean square), %.2f to %.2f; steadiest of "
                   "all in %d of "
                   "100",
                   k > 0 ? "." : ":", sum->unsteadiness.nominal / GW_DEG, sum->unsteadiness.low / GW_DEG,
                   sum->unsteadiness.high / GW_DEG, of_100(sum->steadiest));
    gw_buf_add(&text, ".");
    gw_paper_say_of(paper, 0, &text);
}

static void band_cells(gw_table *table, const gw_spread_band *b, double unit, int decimals, bool had)
{
    gw_table_cell(table, gw_signed(b->nominal / unit, decimals).s);
    if (!had) {
        gw_table_cell(table, "");
        return;
    }
    gw_table_cellf(table, "%s to %s", gw_signed(b->low / unit, decimals).s,
                   gw_signed(b->high / unit, decimals).s);
}

/* The load stands in the first of its rows alone; the wheel where both are told. */
static void name_cells(gw_table *table, const gw_case *c, const gw_spread_item *item, bool first)
{
    const char *kit = c->kits[item->kit].name;
    gw_table_cell(table, first ? c->loads[item->load].name : "");
    if (item->sided)
        gw_table_cellf(table, "%s, %s", kit, GW_WHEEL_NAMES[item->wheel]);
    else if (c->loads[item->load].both)
        gw_table_cellf(table, "%s, %s", kit, gw_side_name(item->side));
    else
        gw_table_cell(table, kit);
}

static void toe_cells(gw_table *table, const gw_spread_item *item)
{
    band_cells(table, &item->own.band[GW_SPREAD_TOE], GW_DEG, 3, item->own.draws > 0);
    if (!item->has_difference || isnan(item->better)) return;
    const gw_spread_band *less = &item->difference.band[GW_SPREAD_TOE];
    band_cells(table, less, GW_DEG, 3, true);
    if (is_nothing(less->nominal, less->low, less->high))
        gw_table_cell(table, "alike");
    else
        gw_table_cellf(table, "%d of 100", of_100(item->better));
}

static void wheel_cells(gw_table *table, const gw_spread_item *item)
{
    const bool had = item->own.draws > 0;
    band_cells(table, &item->own.band[GW_SPREAD_CAMBER], GW_DEG, 3, had);
    band_cells(table, &item->own.band[GW_SPREAD_FORE_AFT], GW_MM, 2, had);
}

/* A table with its heads: what is said of each wheel goes into `cells`. */
static void result_table(const gw_case *c, const gw_spread_study *s, gw_axle axle, gw_table *table,
                         void (*cells)(gw_table *, const gw_spread_item *), gw_paper *paper)
{
    for (int l = 0; l < c->n_loads; l++) {
        bool first = true;
        for (int i = 0; i < s->n; i++) {
            if (s->item[i].axle != axle || s->item[i].load != l) continue;
            name_cells(table, c, &s->item[i], first);
            if (s->item[i].why)
                gw_table_cell(table, "failed");
            else
                cells(table, &s->item[i]);
            gw_table_end_row(table);
            first = false;
        }
    }
    if (table->n_cells || table->failed) gw_paper_table(paper, table, 2);
    gw_table_free(table);
}

static bool has_results(const gw_spread_study *s, gw_axle axle)
{
    for (int i = 0; i < s->n; i++)
        if (s->item[i].axle == axle && s->item[i].load >= 0) return true;
    return false;
}

/* What the case as written does not carry, and why: in its place, once a kit and load. */
static void failed_words(const gw_case *c, const gw_spread_study *s, gw_axle axle, gw_paper *paper)
{
    for (int i = 0; i < s->n; i++) {
        const gw_spread_item *item = &s->item[i];
        if (!item->why || item->axle != axle) continue;
        gw_paper_say(paper, 2, "%s, %s: not carried: %s", c->loads[item->load].name, c->kits[item->kit].name,
                     item->why);
    }
}

static void corner_tables(const gw_case *c, const gw_spread_study *s, gw_axle axle, gw_paper *paper)
{
    gw_table toe = { 0 }, wheel = { 0 };
    if (!has_results(s, axle)) return;
    gw_buf_fmt(paper->out, "\n%s corner, changes from standing still\n", axle == GW_FRONT ? "Front" : "Rear");
    gw_table_heads(&toe, "llrrrrr", "load", "kit", "toe\ndeg", "95 of 100\ndeg", "less the first\ndeg",
                   "95 of 100\ndeg", "smaller toe\nthan the first");
    result_table(c, s, axle, &toe, toe_cells, paper);
    gw_paper_gap(paper);
    gw_table_heads(&wheel, "llrrrr", "load", "kit", "camber\ndeg", "95 of 100\ndeg", "fore-aft\nmm",
                   "95 of 100\nmm");
    result_table(c, s, axle, &wheel, wheel_cells, paper);
    failed_words(c, s, axle, paper);
}

static void ride_table(const gw_case *c, const gw_spread_study *s, gw_paper *paper)
{
    gw_table table = { 0 };
    gw_table_heads(&table, "llrrrr", "corner", "kit", "harshness\ndB", "95 of 100\ndB", "road noise\ndB",
                   "95 of 100\ndB");
    for (int i = 0; i < s->n; i++) {
        const gw_spread_item *item = &s->item[i];
        if (item->load >= 0 || item->kit == 0) continue;
        gw_table_cells(&table, gw_axle_name(item->axle), c->kits[item->kit].name);
        for (int q = 0; q < GW_SPREAD_RIDE_QUANTITIES; q++)
            band_cells(&table, &item->own.band[q], 1.0, 1, item->own.draws > 0);
    }
    gw_buf_add(paper->out, "\nOn the road, over the first kit of the same car\n");
    gw_paper_table(paper, &table, 2);
}

/* The result that a figure does most to: where knowing it would narrow the toe's band by most. */
static const gw_spread_item *most_moved(const gw_spread_study *s, int figure)
{
    const gw_spread_item *best = NULL;
    double most = 0.0;
    for (int i = 0; i < s->n; i++) {
        const gw_spread_item *item = &s->item[i];
        if (item->load < 0 || !item->own.draws) continue;
        const gw_spread_band *b = &item->own.band[GW_SPREAD_TOE];
        double gain = item->own.slopes[GW_SPREAD_TOE].share[figure] * b->sd * b->sd;
        if (gain > most) {
            most = gain;
            best = item;
        }
    }
    return best;
}

/* What is left of a figure's variance once it is measured: a bush to 5 %, a point to 0.5 mm, an angle to 0.02
 * deg. Common practice. */
static double left_over(const gw_unsure *f, const char **how)
{
    const bool factor = f->unit == GW_UNSURE_FACTOR;
    double fine = factor ? 0.5 * log(1.05) : f->unit == GW_UNSURE_MM ? 0.25 : 0.01;
    *how = factor ? "to 5 %" : f->unit == GW_UNSURE_MM ? "to 0.5 mm" : "to 0.02 deg";
    return fmin(1.0, fine * fine / (f->scale * f->scale));
}

static void measure_line(const gw_case *c, const gw_spread_study *s, int figure, gw_paper *paper)
{
    gw_buf text = { 0 };
    const char *how;
    double left = left_over(&s->figure[figure], &how);
    const gw_spread_item *item = most_moved(s, figure);
    gw_phrase_unsure(c, s->figure[figure].of, &text);
    gw_buf_fmt(&text, ": %.0f %% of the variance of all toe changes.", 100.0 * s->share[figure]);
    if (item && left < 0.9) {
        const gw_spread_band *b = &item->own.band[GW_SPREAD_TOE];
        double half = 0.5 * (b->high - b->low), share = item->own.slopes[GW_SPREAD_TOE].share[figure];
        gw_buf_say(&text, " Measured %s, the band of the toe with %s ", how, gw_kit_said(c, item->kit));
        gw_phrase_load(&c->loads[item->load], &text);
        gw_buf_fmt(&text, " (%s) would shrink from +-%.2f to +-%.2f deg.", gw_axle_name(item->axle),
                   half / GW_DEG, half * sqrt(1.0 - share * (1.0 - left)) / GW_DEG);
    }
    gw_paper_say_of(paper, 2, &text);
}

static void measure_words(const gw_case *c, const gw_spread_study *s, gw_paper *paper)
{
    enum { SHOWN = 5 };
    const gw_spread_share *most = s->ranked;
    double sum = 0.0;
    int many = 0;
    while (many < s->n_ranked && sum < 0.8) sum += most[many++].share;
    if (!s->n_ranked) return;
    gw_buf_fmt(paper->out, "\nWhat to measure next\n  %d of %d figures make 80 %% of the variance.\n", many,
               s->n_figures);
    for (int i = 0; i < s->n_ranked && i < SHOWN && most[i].share >= 0.01; i++)
        measure_line(c, s, most[i].figure, paper);
}

void gw_spread_text(const gw_case *c, const void *study, gw_paper *paper)
{
    const gw_spread_study *s = study;
    head_words(c, s, paper);
    for (int k = 0; k < s->n_kits; k++) summary_words(c, s, k, paper);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) corner_tables(c, s, a, paper);
    if (s->options.ride) ride_table(c, s, paper);
    measure_words(c, s, paper);
}
