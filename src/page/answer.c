/* SPDX-License-Identifier: MIT */
/* The question in the customer's words, and the answer in one sentence a kit. */
#include "page/sections.h"
#include "page/stand.h"
#include "show/ride_words.h"

#include "giveway/cost.h"
#include "giveway/reversal.h"
#include "giveway/units.h"
#include "show/bands.h"
#include "show/phrase.h"

#include <math.h>

enum { TURNS = 16 }; /* changes of direction that are looked at */

static gw_words way_of(double toe)
{
    return toe < 0.0 ? GW_WORDS_PAGE_WAY_OUT : GW_WORDS_PAGE_WAY_IN;
}

static gw_words axle_words(const gw_page *p, gw_axle axle, int load)
{
    bool outer = p->c->loads[load].kind == GW_LOAD_MANOEUVRE && p->c->loads[load].manoeuvre.lateral_g > 0.0 &&
                 p->c->loads[load].manoeuvre.side == GW_OUTER;
    if (axle == GW_FRONT) return outer ? GW_WORDS_PAGE_OUTER_FRONT : GW_WORDS_PAGE_FRONT;
    return outer ? GW_WORDS_PAGE_OUTER_REAR : GW_WORDS_PAGE_REAR;
}

/* Of a kit whose sides differ one wheel is told: which, is said. */
static const char *wheel_said(const gw_page *p, int kit, const gw_deflection *of)
{
    const char *axle = gw_words_text(axle_words(p, of->axle, of->load));
    if (!gw_kit_differs_by_side(p->c, kit, of->axle)) return axle;
    return gw_page_fmt(
        p, "%s %s",
        gw_words_text(of->wheel == GW_LEFT_WHEEL ? GW_WORDS_PAGE_LEFT_ONE : GW_WORDS_PAGE_RIGHT_ONE), axle);
}

/* Differences below this show as none: the figures are printed to a hundredth of a degree. */
static const double SAME = 0.005 * GW_DEG;

/* None that counts, though on both sides of where the last printed digit turns it may read as one. */
static gw_words same_words(double toe, double base)
{
    bool alike = lround(fabs(toe) / (0.01 * GW_DEG)) == lround(fabs(base) / (0.01 * GW_DEG));
    return alike ? GW_WORDS_PAGE_ANSWER_SAME : GW_WORDS_PAGE_ANSWER_HARDLY;
}

static gw_words turn_words(double toe, double base)
{
    if (fabs(toe - base) < SAME) return same_words(toe, base);
    if (fabs(toe - base) < 0.005 * fabs(base)) return GW_WORDS_PAGE_ANSWER_HARDLY; /* no "0 % less" */
    /* More than twice as much is a percentage that frightens without telling: then the angles alone. */
    if (toe * base <= 0.0 || fabs(base) < 4 * SAME || fabs(toe) > 2.0 * fabs(base))
        return GW_WORDS_PAGE_ANSWER_OTHER_WAY;
    return fabs(toe) < fabs(base) ? GW_WORDS_PAGE_ANSWER_LESS : GW_WORDS_PAGE_ANSWER_MORE;
}

/* What turns the other way is told by its angles: open only where these may be the same, not their sizes. */
static bool is_open(const gw_page *p, const gw_deflection *of, gw_words words)
{
    const gw_bands_study *bands = p->r->banded ? &p->r->bands : NULL;
    return words == GW_WORDS_PAGE_ANSWER_OTHER_WAY ? gw_band_may_be_same(bands, of)
                                                   : gw_band_is_close(bands, of);
}

/* "the front wheel turns 28 % less in a 1.00 g stop (out by 0.28° instead of 0.39°)" */
static void say_turn(const gw_page *p, int kit, gw_axle axle, int load, gw_buf *out)
{
    const gw_deflection *of = gw_page_find(p, kit, axle, load);
    const gw_deflection *from = gw_page_find(p, p->r->baseline, axle, load);
    double toe = of->result.toe_change, base = from->result.toe_change;
    double percent = base != 0.0 ? 100.0 * fabs(fabs(toe) / fabs(base) - 1.0) : 0.0;
    GW_SAY_ID(out, kit == p->r->baseline ? GW_WORDS_PAGE_ANSWER_BASE : turn_words(toe, base),
              { "load", gw_page_load_said(p, load) }, { "axle", wheel_said(p, kit, of) },
              { "way", gw_words_text(way_of(toe)) }, { "baseway", gw_words_text(way_of(base)) },
              { "angle", gw_page_angle_said(p, fabs(toe), false) },
              { "base", gw_page_angle_said(p, fabs(base), false) },
              { "percent", gw_page_fmt(p, "%.0f %%", percent) });
    if (kit != p->r->baseline && fabs(toe - base) >= SAME && is_open(p, of, turn_words(toe, base)))
        GW_TELL(out, PAGE_ANSWER_CLOSE);
}

/* The axle where most comes through speaks for the car; NULL: ride is not known. */
static const gw_ride_difference *most_of(const gw_page *p, int kit, bool noise)
{
    const gw_ride_difference *most = NULL;
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        const gw_ride_item *item = gw_ride_find(&p->r->ride, kit, a);
        if (!item || !item->result.settled) continue;
        const gw_ride_difference *d = &item->difference;
        if (!most || (noise ? d->noise > most->noise : d->harshness > most->harshness)) most = d;
    }
    return most;
}

/* Stiction: the axle where it is most, where a kit changes it by a newton or more. */
static void say_friction(const gw_page *p, int kit, gw_buf *out)
{
    const gw_ride_item *now = NULL, *then = NULL;
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        const gw_ride_item *item = gw_ride_find(&p->r->ride, kit, a);
        if (!item || (now && item->result.friction <= now->result.friction)) continue;
        now = item;
        then = gw_ride_find(&p->r->ride, p->r->baseline, a);
    }
    if (!now || !then || fabs(now->result.friction - then->result.friction) < 1.0) return;
    GW_SAY(out, PAGE_ANSWER_FRICTION, { "now", gw_fixed(now->result.friction, 0).s },
           { "then", gw_fixed(then->result.friction, 0).s }, { "kit", gw_kit_said(p->c, p->r->baseline) });
}

static const char DB[] = GW_NBSP "dB";

static const char *decibels_said(const gw_page *p, double decibels)
{
    gw_buf text = { 0 };
    gw_html_figure(&text, gw_signed(decibels, 1), DB);
    return gw_page_kept(p, &text);
}

static void say_road(const gw_page *p, int kit, gw_buf *out)
{
    const gw_ride_difference *felt = most_of(p, kit, false), *heard = most_of(p, kit, true);
    if (kit == p->r->baseline || !felt || !heard) return;
    gw_buf feel = { 0 }, loud = { 0 }, beside = { 0 };
    gw_ride_say_grades(felt->felt_grade, false, &feel);
    gw_ride_say_grades(heard->heard_grade, true, &loud);
    gw_html_figure(&beside, gw_signed(heard->beside[0], 1), ", ");
    gw_html_figure(&beside, gw_signed(heard->beside[1], 1), " or ");
    gw_html_figure(&beside, gw_signed(heard->beside[2], 1), DB);
    if (felt->harshness >= 1.0 || heard->noise >= 1.0)
        GW_TELL(out, PAGE_ANSWER_BUT);
    else
        GW_TELL(out, PAGE_ANSWER_WITH);
    GW_SAY(out, PAGE_ANSWER_ROAD, { "feel", gw_page_kept(p, &feel) }, { "loud", gw_page_kept(p, &loud) },
           { "dB", decibels_said(p, felt->harshness) }, { "noise", decibels_said(p, heard->noise) });
    /* print has two sides: what is in the tables or is finer stays on the screen */
    gw_html_screen(out, true);
    GW_SAY(out, PAGE_ANSWER_PATHS, { "beside", gw_page_kept(p, &beside) });
    say_friction(p, kit, out);
    gw_html_screen(out, false);
}

/* The whole sum, and beside it what the same work costs with the first kit's bushes. */
static void say_total(const gw_page *p, int kit, const gw_car_cost *cost, gw_buf *out)
{
    gw_car_cost renewed = gw_car_cost_renewed(p->c, kit);
    gw_cost_sum total = gw_cost_total(cost), again = gw_cost_total(&renewed);
    GW_SAY_ID(out, p->c->shop.has_tax ? GW_WORDS_PAGE_ANSWER_TOTAL_TAX : GW_WORDS_PAGE_ANSWER_TOTAL,
              { "total", gw_page_money_said(p, total.value, total.more) });
    gw_html_screen(out, true);
    if (kit != 0 && gw_cost_price(&renewed).known)
        GW_SAY(out, PAGE_ANSWER_SAME_JOINTS, { "kit", gw_kit_said(p->c, 0) },
               { "total", gw_page_money_said(p, again.value, again.more) });
    gw_html_screen(out, false);
}

static void say_cost(const gw_page *p, int kit, gw_buf *out)
{
    gw_car_cost cost = gw_car_cost_of(p->c, kit);
    gw_cost_sum price = gw_cost_price(&cost), time = gw_cost_time(&cost);
    gw_buf minutes = { 0 };
    if (!cost.parts) return;
    gw_page_minutes(&minutes, time.value);
    if (time.more) gw_buf_add(&minutes, "+");
    const gw_html_part parts[] = { { "price", gw_page_money_said(p, price.value, price.more) },
                                   { "time", gw_page_kept(p, &minutes) },
                                   { NULL, NULL } };
    if (price.known && (p->c->shop.has_labour || p->c->shop.has_tax)) /* parts and time stand in the table */
        say_total(p, kit, &cost, out);
    else if (price.known && time.known)
        gw_html_say(out, kit == 0 ? GW_TOLD(PAGE_ANSWER_RENEW) : GW_TOLD(PAGE_ANSWER_COST), parts);
    else if (price.known || time.known)
        gw_html_say(out, price.known ? GW_TOLD(PAGE_ANSWER_PRICE) : GW_TOLD(PAGE_ANSWER_TIME), parts);
}

/* Told among the warnings. */
static bool is_warned(const gw_page *p, int kit, gw_axle axle, int load)
{
    gw_reversal turned[TURNS];
    int n = gw_reversals_find(p->c, &p->r->deflect, p->r->baseline, kit, turned, TURNS);
    for (int i = 0; i < n && i < TURNS; i++)
        if (turned[i].warns && turned[i].axle == axle && turned[i].load == load) return true;
    return false;
}

/* The turns of the wheel that a sentence tells: the axle looked at, under the two loads; the other axle only
 * where it gets worse by more than a twentieth of a degree. */
static void say_turns(const gw_page *p, int kit, gw_buf *out)
{
    const int loads[] = { p->brake_load, p->corner_load };
    int known = 0, told = 0;
    for (int i = 0; i < 2; i++) {
        if (loads[i] < 0 || !gw_page_find(p, kit, p->axle, loads[i])) continue;
        known++;
        if (is_warned(p, kit, p->axle, loads[i])) continue;
        if (told++) GW_TELL(out, PAGE_ANSWER_AND);
        say_turn(p, kit, p->axle, loads[i], out);
    }
    if (!known) say_turn(p, kit, p->axle, p->load, out);
    gw_axle other = p->axle == GW_FRONT ? GW_REAR : GW_FRONT;
    for (int i = 0; i < 2 && kit != p->r->baseline; i++) {
        const gw_deflection *of = loads[i] < 0 ? NULL : gw_page_find(p, kit, other, loads[i]);
        if (!of || is_warned(p, kit, other, loads[i])) continue;
        const gw_deflection *from = gw_page_find(p, p->r->baseline, other, loads[i]);
        if (fabs(of->result.toe_change) < fabs(from->result.toe_change) + 0.05 * GW_DEG) continue;
        GW_TELL(out, PAGE_ANSWER_COMMA);
        say_turn(p, kit, other, loads[i], out);
    }
}

/* The answer is no answer where the kit does not last; what, is told further down. */
static void say_stand(const gw_page *p, int kit, gw_buf *out)
{
    int joints = gw_page_failures_of(p, kit).joints;
    if (joints == 1)
        GW_TELL(out, PAGE_ANSWER_STAND_ONE);
    else if (joints)
        GW_SAY(out, PAGE_ANSWER_STAND, { "count", gw_fixed(joints, 0).s });
}

/* Direction before size: a rear wheel that now turns out is worse than any degree that is saved. */
static void say_warnings(const gw_page *p, int kit, gw_buf *out)
{
    gw_reversal turned[TURNS];
    int n = gw_reversals_find(p->c, &p->r->deflect, p->r->baseline, kit, turned, TURNS), told = 0;
    for (int i = 0; i < n && i < TURNS; i++) {
        if (!turned[i].warns) continue;
        if (out->n) GW_TELL(out, PAGE_ANSWER_COMMA);
        if (!told++) gw_html_put(out, "<strong class=\"fails\">{}</strong> ", GW_TOLD(PAGE_ANSWER_WARN));
        say_turn(p, kit, GW_REAR, turned[i].load, out);
    }
}

static void say_pull(const gw_page *p, int kit, gw_buf *out)
{
    const gw_handling_study *h = &p->r->handling;
    double pull = gw_braking_pull(h, kit);
    if (pull == 0.0) return;
    GW_TELL(out, PAGE_ANSWER_COMMA);
    gw_html_put(out, "<strong class=\"fails\">{}</strong> ", GW_TOLD(PAGE_ANSWER_PULLS));
    GW_SAY(out, PAGE_ANSWER_PULL, { "aside", gw_page_fmt(p, "%.1f m", fabs(pull)) },
           { "side", gw_phrase_pulled(pull) }, { "brake", gw_fixed(GW_FIRM_STOP, 1).s },
           { "speed", gw_page_fmt(p, "%.0f km/h", gw_unit_out(GW_UNIT_KM_H, h->speed)) });
}

static void answer_of(const gw_page *p, int kit)
{
    gw_buf text = { 0 };
    say_turns(p, kit, &text);
    say_warnings(p, kit, &text);
    say_pull(p, kit, &text);
    say_road(p, kit, &text);
    say_cost(p, kit, &text);
    say_stand(p, kit, &text);
    if (kit == p->r->baseline) GW_TELL(&text, PAGE_ANSWER_BASE_END);
    GW_TELL(&text, PAGE_ANSWER_END);
    gw_buf_fmt(p->out, "<li class=\"k%d\"><strong>", kit % GW_STYLES);
    if (p->c->n_kits > GW_STYLES) gw_buf_fmt(p->out, "%d ", kit + 1);
    gw_html_put(p->out, "<bdi>{}</bdi>:</strong> ", gw_kit_said(p->c, kit));
    gw_buf_fmt(p->out, "%s</li>\n", gw_buf_str(&text));
    gw_buf_drop(&text, p->out);
}

gw_words gw_page_question(const gw_page *p)
{
    if (p->brake_load >= 0 && p->corner_load >= 0) return GW_WORDS_PAGE_QUESTION_BRAKE_CORNER;
    if (p->brake_load >= 0) return GW_WORDS_PAGE_QUESTION_BRAKE;
    return p->corner_load >= 0 ? GW_WORDS_PAGE_QUESTION_CORNER : GW_WORDS_PAGE_QUESTION_OTHER;
}

void gw_page_answer(const gw_page *p)
{
    for (int k = 0; k < p->c->n_kits; k++)
        if (gw_page_has_kit(p, k)) answer_of(p, k);
}
