/* SPDX-License-Identifier: MIT */
/* What each kit does: figures, modes, bump. A row a kit. */

#include "format/number.h"
#include "format/table.h"
#include "show/phrase.h"
#include "show/ride_parts.h"
#include "show/ride_words.h"
#include "show/words.h"

/* The name that other tables go by, with what people call the kit where that is asked for. */
static void kit_cell(const gw_ride_page *p, gw_table *t, const gw_ride_item *item, bool label)
{
    const gw_kit *kit = &p->c->kits[item->kit];
    gw_buf name = { 0 };
    gw_buf_clean(&name, kit->name);
    if (label && kit->label && kit->label != kit->name) {
        gw_buf_add(&name, ": ");
        gw_buf_clean(&name, kit->label);
    }
    gw_table_cell_of(t, &name);
}

/* ---- comfort, harshness, noise ---- */

static void figure_row(const gw_ride_page *p, gw_table *t, const gw_ride_item *item)
{
    const gw_ride_result *r = &item->result;
    const gw_ride_difference *d = &item->difference;
    kit_cell(p, t, item, true);
    gw_table_cells(t, gw_fixed(r->comfort, 3).s, gw_significant(r->harshness[0], 3).s,
                   gw_signed(d->harshness, 1).s);
    gw_ride_range_cell(t, item, d->harshness_low, d->harshness_high);
    gw_table_cells(t, gw_significant(r->noise[0], 3).s, gw_signed(d->noise, 1).s);
    gw_ride_range_cell(t, item, d->noise_low, d->noise_high);
}

/* A line a kit: what is felt, what is heard, and what of that among other things. */
static void say_grades(const gw_ride_page *p, const gw_ride_item *item)
{
    const gw_ride_difference *d = &item->difference;
    gw_buf text = { 0 };
    if (item->kit == 0 || !item->result.settled) return;
    gw_buf_say(&text, "%s: ", p->c->kits[item->kit].name);
    gw_ride_say_grades(d->felt_grade, false, &text);
    gw_buf_add(&text, "; force into the body, A-weighted: ");
    gw_ride_say_grades(d->heard_grade, true, &text);
    gw_buf_add(
        &text,
        "; where other paths carry a half, three quarters or nine tenths of what is heard in the cabin, ");
    gw_ride_say_beside(d->beside, &text);
    gw_buf_add(&text, ".");
    gw_paper_say_of(p->paper, 2, &text);
}

static void say_close(const gw_ride_page *p, gw_axle axle, bool heard)
{
    gw_buf text = { 0 };
    int n = 0;
    for (int i = 0; i < p->study->n_close; i++) {
        const gw_ride_close *close = &p->study->close[i];
        if (close->axle != axle || close->heard != heard) continue;
        gw_buf_say(&text, "%s%s/%s",
                   n++     ? ", "
                   : heard ? "Too close to call, A-weighted: "
                           : "Too close to call in harshness: ",
                   p->c->kits[close->kit[0]].name, p->c->kits[close->kit[1]].name);
    }
    if (n) gw_buf_add(&text, ".");
    if (n)
        gw_paper_say_of(p->paper, 2, &text);
    else
        gw_buf_free(&text);
}

void gw_ride_figures_table(const gw_ride_page *p, const gw_ride_item *const *items, int n)
{
    gw_table t = { 0 };
    gw_table_heads(&t, "lrrrrrrr", "kit", "comfort\nm/s2", "harshness\nN", "\ndB", "range\ndB",
                   "A-weighted\nN", "\ndB", "range\ndB");
    for (int i = 0; i < n; i++) figure_row(p, &t, items[i]);
    gw_paper_table(p->paper, &t, 2);
    gw_paper_say(p->paper, 2, "%s", gw_ride_caution());
    if (items[0]->result.belt_note) gw_paper_say(p->paper, 2, "%s", items[0]->result.belt_note);
    for (int i = 0; i < n; i++) say_grades(p, items[i]);
    for (int heard = 0; heard < 2; heard++) say_close(p, items[0]->axle, heard);
    gw_paper_say(p->paper, 2, "%s", gw_words_text(GW_WORDS_RIDE_RANGE));
    gw_ride_say_comfort(p->study, items[0]->axle, p->paper);
}

/* ---- modes ---- */

static void mode_row(const gw_ride_page *p, gw_table *t, const gw_ride_item *item, const gw_ride_mode *mode,
                     bool first)
{
    if (first)
        kit_cell(p, t, item, false);
    else
        gw_table_cell(t, NULL);
    gw_table_cell(t, gw_fixed(mode->hz, mode->hz < 10.0 ? 2 : 1).s);
    gw_table_cell(t, mode->tracked ? gw_fixed(100.0 * mode->zeta, 1).s : GW_NO_NUMBER);
    gw_table_cell(t, mode->words);
}

static void mode_rows(const gw_ride_page *p, gw_table *t, const gw_ride_item *item)
{
    const gw_ride_result *r = &item->result;
    bool first = true;
    for (int i = 0; i < r->n_modes; i++) {
        bool named = i == r->body || i == r->wheel_vertical || i == r->wheel_fore_aft;
        if (!named && !(p->paper->detail && r->modes[i].hz <= GW_NOISE_HIGH)) continue;
        mode_row(p, t, item, &r->modes[i], first);
        first = false;
    }
}

void gw_ride_modes_table(const gw_ride_page *p, const gw_ride_item *const *items, int n)
{
    gw_table t = { 0 };
    gw_table_heads(&t, "lrrl", "mode of", "undamped\nHz", "damping\n%", "what moves, by kinetic energy");
    for (int i = 0; i < n; i++) mode_rows(p, &t, items[i]);
    gw_paper_gap(p->paper);
    gw_paper_table(p->paper, &t, 2);
}

/* ---- a bump ---- */

static void bump_row(const gw_ride_page *p, gw_table *t, const gw_ride_item *item)
{
    const gw_obstacle *o = &item->result.obstacle;
    kit_cell(p, t, item, false);
    gw_table_cells(t, gw_significant(o->peak_fore_aft, 3).s, gw_fixed(o->decay_fore_aft, 2).s,
                   gw_significant(o->peak_vertical, 3).s, gw_fixed(o->decay_vertical, 2).s);
}

void gw_ride_obstacle_table(const gw_ride_page *p, const gw_ride_item *const *items, int n)
{
    gw_table t = { 0 };
    bool settled = true;
    if (!items[0]->result.obstacle.n) return;
    gw_table_heads(&t, "lrrrr", "over the bump", "fore-aft peak\nN", "decays in\ns", "vertical peak\nN",
                   "decays in\ns");
    for (int i = 0; i < n; i++) {
        bump_row(p, &t, items[i]);
        settled = settled && items[i]->result.obstacle.settled;
    }
    gw_paper_gap(p->paper);
    gw_paper_table(p->paper, &t, 2);
    gw_buf text = { 0 };
    gw_buf_add(&text, "Net force on the body after a half-sine bump, up to 315 Hz; it has died away when it "
                      "stays below a tenth of its peak.");
    if (!settled) gw_buf_add(&text, " Where it has not within a second, the time is only a lower bound.");
    gw_paper_say_of(p->paper, 2, &text);
}
