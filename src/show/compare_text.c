/* SPDX-License-Identifier: MIT */
/* Kits side by side, to be read aloud: a table a load and corner, who is to blame, one sentence. */
#include "show/compare.h"

#include "format/number.h"
#include "format/table.h"
#include "giveway/units.h"
#include "record/paper.h"
#include "show/bands.h"
#include "show/joint.h"
#include "show/deflect.h"
#include "show/handling.h"
#include "show/phrase.h"
#include "show/ride_parts.h"
#include "show/words.h"

#include <ctype.h>
#include <math.h>

static const gw_deflection *find(const gw_handling_page *p, int kit, gw_axle axle, int load)
{
    return gw_deflect_find(p->cmp->deflect, kit, axle, load);
}

/* First letter of what is in `text` from `at` on in upper case. */
static void begin_sentence(gw_buf *text, size_t at)
{
    if (text->n > at) text->s[at] = (char)toupper((unsigned char)text->s[at]);
}

static void heading(const gw_handling_page *p, const gw_deflection *item)
{
    const gw_load *load = &p->cmp->c->loads[item->load];
    gw_buf text = { 0 };
    gw_buf_say(&text, "%s: the %s wheel", load->name, gw_axle_name(item->axle));
    if (item->manoeuvre && load->manoeuvre.lateral_g > 0.0)
        gw_buf_fmt(&text, " on the %s side", gw_side_name(item->side));
    if (load->kind == GW_LOAD_MANOEUVRE) {
        gw_buf_add(&text, " ");
        gw_phrase_load(load, &text);
    }
    gw_paper_heading(p->paper, "%s", gw_buf_str(&text));
    gw_buf_drop(&text, p->paper->out);
}

static void kit_columns(gw_table *t, bool rim, bool bands)
{
    gw_table_heads(t, "lr", "kit", "toe change\ndeg");
    if (bands) gw_table_column(t, GW_RIGHT, "95 of 100\ndeg");
    gw_table_column(t, GW_RIGHT, "\ndeg min");
    if (rim) gw_table_column(t, GW_RIGHT, "at the rim\nmm");
    gw_table_heads(t, "rrr", "camber change\ndeg", "camber\ndeg", "wheel fore-aft\nmm");
}

static void band_cell(gw_table *t, const gw_bands_item *band)
{
    const gw_half_band none = { NAN, NAN }, toe = band ? band->own[GW_SPREAD_TOE] : none;
    if (isnan(toe.half))
        gw_table_cell(t, "");
    else
        gw_table_cellf(t, "%s to %s", gw_signed((toe.value - toe.half) / GW_DEG, 3).s,
                       gw_signed((toe.value + toe.half) / GW_DEG, 3).s);
}

static void kit_row(gw_table *t, const gw_comparison *cmp, const gw_deflection *item, double rim)
{
    const gw_corner_result *r = &item->result;
    gw_table_cells(t, cmp->c->kits[item->kit].name, gw_signed(r->toe_change / GW_DEG, 3).s);
    if (cmp->bands) band_cell(t, gw_band_of(cmp->bands, item));
    gw_table_cell(t, gw_degrees_minutes(r->toe_change, 0).s);
    if (rim > 0.0) gw_table_cell(t, gw_signed(gw_toe_at_rim(r->toe_change, rim) / GW_MM, 2).s);
    gw_table_cells(t, gw_signed(r->camber_change / GW_DEG, 3).s, gw_signed(r->camber / GW_DEG, 2).s,
                   gw_signed(r->wheel_centre.x / GW_MM, 2).s);
}

static void kit_table(const gw_handling_page *p, gw_axle axle, int load)
{
    double rim = p->cmp->c->corners[axle].wheel.rim_diameter;
    gw_table table = { 0 };
    kit_columns(&table, rim > 0.0, p->cmp->bands != NULL);
    for (int k = 0; k < p->cmp->c->n_kits; k++) {
        const gw_deflection *item = find(p, k, axle, load);
        if (item) kit_row(&table, p->cmp, item, rim);
    }
    gw_paper_table(p->paper, &table, 2);
}

/* The three that contribute most to toe, one line a kit. */
static void blame(const gw_handling_page *p, gw_axle axle, int load)
{
    gw_buf_add(p->paper->out, "  toe comes from (share of all contributions by size):\n");
    for (int k = 0; k < p->cmp->c->n_kits; k++) {
        const gw_deflection *item = find(p, k, axle, load);
        gw_contributor top[3];
        if (!item) continue;
        int n = gw_contributors(&p->cmp->c->corners[axle], &item->result, GW_TOE, 3, top);
        gw_buf line = { 0 };
        gw_buf_say(&line, "%s: ", gw_kit_said(p->cmp->c, k));
        if (n)
            gw_contributors_words(top, n, GW_TOE, &line);
        else
            gw_buf_add(&line, "no bush");
        gw_paper_say_of(p->paper, 4, &line);
    }
}

/* "0.11 deg less with X, 0.20 deg less with Y." */
static void say_toe(const gw_handling_page *p, const gw_deflection *from, gw_axle axle, int load, gw_buf *out)
{
    bool first = true;
    for (int k = 0; k < p->cmp->c->n_kits; k++) {
        const gw_deflection *item = find(p, k, axle, load);
        if (!item || item == from) continue;
        double less = (fabs(from->result.toe_change) - fabs(item->result.toe_change)) / GW_DEG;
        gw_buf_add(out, first ? " " : ", ");
        first = false;
        if (fabs(less) < 0.005)
            gw_buf_add(out, "about as much");
        else
            gw_buf_fmt(out, "%s deg %s", gw_fixed(fabs(less), 2).s, less > 0.0 ? "less" : "more");
        gw_buf_say(out, " with %s", gw_kit_said(p->cmp->c, k));
        if (fabs(less) >= 0.005 && gw_band_is_close(p->cmp->bands, item))
            gw_buf_add(out, " (too close to call)");
    }
    gw_buf_add(out, ".");
}

static void sentence(const gw_handling_page *p, gw_axle axle, int load)
{
    const gw_deflection *from = find(p, p->cmp->baseline, axle, load);
    int others = 0;
    for (int k = 0; k < p->cmp->c->n_kits; k++) others += k != p->cmp->baseline && find(p, k, axle, load);
    if (!from || !others) return;
    gw_buf text = { 0 };
    gw_phrase_load(&p->cmp->c->loads[load], &text);
    begin_sentence(&text, 0);
    gw_buf_say(&text, " the %s toe moves, compared with %s:", gw_axle_name(axle),
               gw_kit_said(p->cmp->c, from->kit));
    say_toe(p, from, axle, load, &text);
    gw_paper_say_of(p->paper, 2, &text);
}

static void failed_lines(const gw_handling_page *p, gw_axle axle, int load)
{
    const gw_deflect_study *d = p->cmp->deflect;
    for (int i = 0; i < d->n; i++)
        if (d->item[i].axle == axle && d->item[i].load == load && d->item[i].failed)
            gw_failed_line(p->cmp->c, &d->item[i], true, p->paper);
}

/* One that tells of the load: carried, or at least tried. */
static const gw_deflection *any_item(const gw_handling_page *p, gw_axle axle, int load)
{
    for (int k = 0; k < p->cmp->c->n_kits; k++) {
        const gw_deflection *item = find(p, k, axle, load);
        if (item) return item;
    }
    const gw_deflect_study *d = p->cmp->deflect;
    for (int i = 0; i < d->n; i++)
        if (d->item[i].axle == axle && d->item[i].load == load) return &d->item[i];
    return NULL;
}

static void all_loads(const gw_handling_page *p)
{
    for (int l = 0; l < p->cmp->c->n_loads; l++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            const gw_deflection *item = any_item(p, a, l);
            if (!item) continue;
            heading(p, item);
            if (!item->failed) kit_table(p, a, l);
            failed_lines(p, a, l);
            if (item->failed) continue;
            blame(p, a, l);
            sentence(p, a, l);
        }
}

static void ride_row(gw_table *t, const gw_comparison *cmp, const gw_ride_item *item)
{
    const gw_ride_result *r = &item->result;
    const gw_ride_difference *d = &item->difference;
    gw_table_cells(t, cmp->c->kits[item->kit].name, gw_fixed(r->comfort, 3).s, gw_signed(d->harshness, 1).s);
    gw_ride_range_cell(t, item, d->harshness_low, d->harshness_high);
    gw_table_cell(t, gw_signed(d->noise, 1).s);
    gw_ride_range_cell(t, item, d->noise_low, d->noise_high);
    gw_table_cells(t, gw_fixed(r->modes[r->wheel_fore_aft].hz, 1).s, gw_fixed(r->friction, 0).s);
}

static void ride_table(const gw_handling_page *p, gw_axle axle)
{
    gw_table table = { 0 };
    gw_table_heads(&table, "lrrrrrrr", "kit", "comfort\nm/s2", "harshness\ndB", "range\ndB", "A-weighted\ndB",
                   "range\ndB", "fore-aft mode\nHz", "wheel moves\nat N");
    for (int i = 0; i < p->cmp->ride->n; i++)
        if (p->cmp->ride->item[i].axle == axle) ride_row(&table, p->cmp, &p->cmp->ride->item[i]);
    gw_paper_table(p->paper, &table, 2);
}

static void ride_part(const gw_handling_page *p)
{
    if (p->cmp->no_ride) {
        gw_buf_fmt(p->paper->out, "\nRide and harshness are left out: the case lacks %s.\n", p->cmp->no_ride);
        return;
    }
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        bool there = false;
        for (int i = 0; i < p->cmp->ride->n; i++) there = there || p->cmp->ride->item[i].axle == a;
        if (!there) continue;
        gw_ride_heading(p->cmp->c, a, p->paper);
        ride_table(p, a);
        gw_ride_say_comfort(p->cmp->ride, a, p->paper);
    }
    gw_paper_say(p->paper, 2, "%s", gw_words_text(GW_WORDS_RIDE_RANGE));
    gw_paper_say(p->paper, 2, "%s", gw_words_text(GW_WORDS_RIDE_ESTIMATE));
}

/* What the kits do to the car, past the summary. */
static void handling_part(const gw_handling_page *p)
{
    void (*const PARTS[])(const gw_handling_page *) = { gw_budget_text, gw_balance_text, gw_braking_text,
                                                        gw_traction_text, gw_consistency_text };
    for (size_t i = 0; i < sizeof PARTS / sizeof *PARTS && p->cmp->detail; i++) PARTS[i](p);
    gw_handling_lacks_text(p);
}

/* What stands behind --detail. */
static void all_detail(const gw_handling_page *page)
{
    const gw_comparison *cmp = page->cmp;
    gw_summary_text(page);
    all_loads(page);
    ride_part(page);
    handling_part(page);
    if (cmp->strength) gw_overloads_text(cmp->c, cmp->strength, page->paper);
}

static void cautions(const gw_handling_page *p)
{
    gw_buf text = { 0 };
    gw_paper_gap(p->paper);
    if (p->cmp->detail) {
        gw_paper_say(p->paper, 0, "%s", gw_words_text(GW_WORDS_ESTIMATE));
        gw_paper_say(p->paper, 0, "%s", gw_words_text(GW_WORDS_STATIC_ONLY));
    } else
        gw_buf_add(&text, "Estimates. --detail prints the rest: joints, comfort, budgets, braking, traction, "
                          "limits, sources. ");
    gw_buf_fmt(&text, "%s %s", gw_words_text(GW_WORDS_SAFETY), gw_words_text(GW_WORDS_DEFER));
    gw_paper_say_of(p->paper, 0, &text);
}

void gw_compare_text(const gw_case *c, const void *made, gw_paper *paper)
{
    const gw_comparison *cmp = &((const gw_compare_made *)made)->cmp;
    const gw_handling_page page = { cmp, paper };
    gw_paper_line(paper, "%s", c->title);
    gw_paper_say(paper, 0,
                 "Kits side by side: changes since standing still. Plus: toe-in, camber top out, x forward.");
    gw_compare_brief(&page);
    if (cmp->detail)
        all_detail(&page);
    else
        gw_handling_lacks_text(&page);
    if (cmp->bands) {
        if (cmp->detail) gw_paper_gap(paper);
        gw_bands_words(c, cmp->bands, paper);
    }
    cautions(&page);
}
