/* SPDX-License-Identifier: MIT */
/* A card a kit: what a customer feels, as a word, a figure and its band on a scale that all cards share. */
#include "page/sections.h"
#include "page/stand.h"

#include "record/unit.h"
#include "show/phrase.h"

#include <math.h>

enum { WIDE = 200, HIGH = 14 }; /* of the drawn scale, in its own pixels */
enum { SPACIOUS = 5 };          /* so many cards have room for all their words on the first screen */
enum { ONE_ROW = 6, FIVE = 5 }; /* more cards than one row down a telephone holds stand by fives there */

/* Names of slots: the page says each in its own words. */
static const char *const KEYS[GW_FEELS] = { "brakes", "corner", "felt", "heard", "money" };
static const char *const STEPS[] = { "better3", "better2", "better1", "same", "worse1", "worse2", "worse3" };
static const char *const GRADES[GW_GRADES] = { "grade0", "grade1", "grade2", "grade3", "grade4", "grade5" };

/* What it is called: the first kit is what the others are set beside; money is no matter of better or worse.
 */
static const char *word_of(const gw_page *p, gw_feel feel, const gw_card *card)
{
    const gw_gauge *g = &card->gauge[feel];
    if (feel == GW_FEEL_MONEY && !card->cost.parts) return "nothing";
    if (card->kit == p->r->baseline || feel == GW_FEEL_MONEY) return "plain";
    if (g->one_side) return "left_wheels";
    if (g->close) return "close";
    return feel == GW_FEEL_BRAKES || feel == GW_FEEL_CORNER ? STEPS[g->step + 3] : GRADES[g->grade];
}

static void figure(const gw_page *p, gw_feel feel, const gw_card *card, gw_buf *out)
{
    const gw_gauge *g = &card->gauge[feel];
    if (feel == GW_FEEL_MONEY) {
        gw_html_text(out, gw_page_money_said(p, g->value, gw_cost_total(&card->cost).more));
    } else if (feel == GW_FEEL_BRAKES) {
        gw_html_figure(out, gw_fixed(gw_unit_out(GW_UNIT_DEG, g->value), 2), "\xC2\xB0");
    } else if (feel == GW_FEEL_CORNER) {
        gw_html_figure(out, gw_signed(gw_unit_out(GW_UNIT_DEG, g->value), 2), "\xC2\xB0");
    } else {
        gw_html_figure(out, gw_signed(g->value, 1), GW_NBSP "dB");
    }
}

/* ---- the scale ---- */

static double along(const gw_card_study *s, gw_feel feel, double value)
{
    return 3.0 + (WIDE - 6.0) * (value - s->from[feel]) / (s->to[feel] - s->from[feel]);
}

/* Zero and the first kit's figure are ticks, the band is a bar, the figure a mark on it. */
static void strip(const gw_page *p, gw_feel feel, const gw_card *card, gw_buf *out)
{
    const gw_card_study *s = p->cards;
    const gw_gauge *g = &card->gauge[feel], *base = &s->card[0].gauge[feel];
    double low = along(s, feel, g->low), high = along(s, feel, g->high), at = along(s, feel, g->value);
    gw_buf_fmt(
        out, "<svg class=\"strip\" viewBox=\"0 0 %d %d\" preserveAspectRatio=\"none\" aria-hidden=\"true\">",
        WIDE, HIGH);
    gw_buf_fmt(out, "<path class=\"line\" d=\"M3 7H%d\"/>", WIDE - 3);
    if (base->known)
        gw_buf_fmt(out, "<path class=\"first\" d=\"M%.2f 0V%d\"/>", along(s, feel, base->value), HIGH);
    gw_buf_fmt(out, "<rect class=\"band\" x=\"%.2f\" y=\"3.5\" width=\"%.2f\" height=\"7\"/>", low,
               fmax(high - low, 0.0));
    gw_buf_fmt(out, "<rect class=\"mark\" x=\"%.2f\" y=\"1\" width=\"5\" height=\"12\"/></svg>", at - 2.5);
}

static bool is_angle(gw_feel feel)
{
    return feel == GW_FEEL_BRAKES || feel == GW_FEEL_CORNER;
}

static double shown(gw_feel feel, double value)
{
    return is_angle(feel) ? gw_unit_out(GW_UNIT_DEG, value) : value;
}

static const char *unit_of(gw_feel feel)
{
    return is_angle(feel) ? "\xC2\xB0" : GW_NBSP "dB";
}

/* For those who do not see the scale. */
static void put_band(gw_slots *slots, gw_feel feel, const gw_gauge *g)
{
    int decimals = is_angle(feel) ? 2 : 1;
    if (!(g->high > g->low)) return;
    gw_slots_figure(slots, "low", gw_fixed(shown(feel, g->low), decimals), "");
    gw_slots_figure(slots, "high", gw_fixed(shown(feel, g->high), decimals), unit_of(feel));
}

static void put_balance(gw_slots *slots, const gw_card *card)
{
    double change = card->understeer_change;
    if (!card->has_balance) return;
    gw_slots_text(slots, fabs(change) < GW_BALANCE_ALIKE ? "balance" : change > 0.0 ? "wide" : "in", "yes");
}

/* What the same joints cost as they are now is the measure. */
static void put_sum(const gw_page *p, gw_slots *slots, const gw_gauge *g)
{
    if (!(fabs(g->change) >= 0.005)) return;
    gw_slots_text(slots, g->change > 0.0 ? "dearer" : "cheaper",
                  gw_page_money_said(p, fabs(g->change), false));
}

static void put_gauge(const gw_page *p, gw_slots *card_slots, gw_feel feel, const gw_card *card)
{
    gw_buf shown = { 0 }, drawn = { 0 };
    gw_slots *slots = gw_slots_element(card_slots, "gauges");
    bool first = card->kit == p->r->baseline;
    figure(p, feel, card, &shown);
    strip(p, feel, card, &drawn);
    gw_slots_text(slots, "feel", KEYS[feel]);
    gw_slots_text(slots, KEYS[feel], "yes");
    gw_slots_text(slots, word_of(p, feel, card), "yes");
    gw_slots_take(slots, "figure", &shown);
    gw_slots_take(slots, "strip", &drawn);
    put_band(slots, feel, &card->gauge[feel]);
    if (feel == GW_FEEL_CORNER && !first) put_balance(slots, card);
    if (feel == GW_FEEL_MONEY && isfinite(card->cost.labour)) gw_slots_text(slots, "worked", "yes");
    if (feel == GW_FEEL_MONEY && !first) put_sum(p, slots, &card->gauge[feel]);
}

/* ---- badges and warnings ---- */

static void put_beaten(const gw_page *p, gw_slots *slots, const gw_card *card)
{
    const gw_choose_study *s = p->wish->choose;
    if (card->beaten_by < 0) return;
    gw_slots *badge = gw_slots_element(slots, "badges");
    gw_slots_text(badge, "pick", gw_page_pick(p, card->beaten_by));
    gw_slots_text(badge, "cost", gw_page_planned(p, s->front[s->recommended[card->beaten_by].member].cost));
}

/* As many as the sentence below the cards and the table of what will stand tell. */
static void put_warnings(const gw_page *p, gw_slots *slots, const gw_card *card)
{
    int beyond = gw_page_failures_of(p, card->kit).joints;
    if (card->toe_out) gw_slots_text(slots, "toe_out", "yes");
    if (card->pull != 0.0) gw_slots_text(slots, "pull", gw_phrase_pulled(card->pull));
    if (beyond) gw_slots_fmt(slots, "beyond", "%d", beyond);
    if (beyond > 1) gw_slots_text(slots, "several", "yes");
    if (card->near_limit && !beyond) gw_slots_text(slots, "near", "yes");
}

static bool has_limits(const gw_choose_study *s)
{
    bool any = false;
    for (int l = 0; l < GW_LIMITS; l++) any = any || s->offer.has_limit[l];
    return any;
}

/* What the planner found, each with what it comes to. */
static void put_pick(const gw_page *p, gw_slots *slots, int which, const char *name)
{
    const gw_choose_study *s = p->wish->choose;
    const gw_combination *of = &s->front[s->recommended[which].member];
    gw_slots *pick = gw_slots_element(slots, "picks");
    double unsteady = gw_unit_out(s->in_mm ? GW_UNIT_MM : GW_UNIT_DEG, of->unsteadiness);
    gw_slots_text(pick, "name", name);
    if (has_limits(s)) gw_slots_text(pick, "limited", "yes");
    gw_slots_text(pick, "cost", gw_page_planned(p, of->cost));
    gw_slots_figure(pick, "steady", gw_fixed(unsteady, 3), s->in_mm ? "\xC2\xA0mm" : "\xC2\xB0");
    gw_slots_figure(pick, "felt", gw_signed(of->harshness, 1), unit_of(GW_FEEL_FELT));
}

static void put_picks(const gw_page *p, gw_slots *slots)
{
    const gw_choose_study *s = p->wish->choose;
    for (int r = 0; s && s->n_front && s->has_recommended && r < GW_RECOMMENDED; r++) {
        const char *name = gw_page_pick(p, r);
        if (name) put_pick(p, slots, r, name);
    }
}

static void put_scales(const gw_page *p, gw_slots *slots)
{
    for (int f = 0; f < GW_FEELS; f++) {
        gw_feel feel = (gw_feel)f;
        int decimals = is_angle(feel) ? 2 : 0;
        bool known = false;
        for (int i = 0; i < p->cards->n; i++) known = known || p->cards->card[i].gauge[f].known;
        if (!known) continue;
        gw_slots *scale = gw_slots_element(slots, "scales");
        gw_slots_text(scale, KEYS[f], "yes");
        gw_slots_figure(scale, "from", gw_fixed(shown(feel, p->cards->from[f]), decimals), "");
        gw_slots_figure(scale, "to", gw_fixed(shown(feel, p->cards->to[f]), decimals),
                        feel == GW_FEEL_MONEY ? "" : unit_of(feel));
    }
}

/* The first and the last of five begin and end their box. */
static void put_five(const gw_page *p, gw_slots *card, int at)
{
    if (p->cards->n <= ONE_ROW) return;
    if (at % FIVE == 0) gw_slots_text(card, "opens", "yes");
    if (at % FIVE == FIVE - 1 || at == p->cards->n - 1) gw_slots_text(card, "closes", "yes");
}

static void put_card(const gw_page *p, gw_slots *slots, int at)
{
    const gw_card *card = &p->cards->card[at];
    gw_slots *of = gw_slots_element(slots, "cards");
    put_five(p, of, at);
    gw_page_put_kit(p, of, card->kit);
    gw_slots_flag(of, "is_first", card->kit == p->r->baseline);
    for (int f = 0; f < GW_FEELS; f++)
        if (card->gauge[f].known) put_gauge(p, of, (gw_feel)f, card);
    put_beaten(p, of, card);
    put_warnings(p, of, card);
}

void gw_page_cards(const gw_page *p, gw_slots *slots)
{
    const int stop = p->cards->stop, corner = p->cards->corner;
    for (int i = 0; i < p->cards->n; i++) put_card(p, slots, i);
    if (p->cards->n > SPACIOUS) gw_slots_text(slots, "many", "yes");
    if (p->cards->n > ONE_ROW) gw_slots_fmt(slots, "rows", "%d", p->cards->n);
    put_picks(p, slots);
    put_scales(p, slots);
    gw_slots_text(slots, "the_stop", stop >= 0 ? gw_page_load_said(p, stop) : "");
    gw_slots_text(slots, "the_corner", corner >= 0 ? gw_page_load_said(p, corner) : "");
    if (gw_page_compares(p)) gw_slots_text(slots, "compares", "yes");
    gw_slots_text(slots, "first_kit", gw_kit_said(p->c, p->r->baseline));
    if (p->r->banded) gw_slots_text(slots, "banded", "yes");
}
