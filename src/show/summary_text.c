/* SPDX-License-Identifier: MIT */
/* One table: what each kit does to the car, with the difference from the baseline beside, and what it costs.
 */
#include "show/handling.h"

#include "format/number.h"
#include "giveway/cost.h"
#include "giveway/units.h"
#include "record/paper.h"
#include "show/phrase.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

/* One quantity of the summary: a member of a gw_summary. */
typedef struct gw_summary_quantity {
    const char *head;
    size_t at;
    gw_unit unit;
    int decimals;
} gw_summary_quantity;

static const gw_summary_quantity QUANTITIES[] = {
    { "outer camber\ndeg", offsetof(gw_summary, camber), GW_UNIT_DEG, 2 },
    { "understeer\ndeg/g", offsetof(gw_summary, understeer), GW_UNIT_DEG, 2 },
    { "toe, braking\ndeg/g", offsetof(gw_summary, brake_toe), GW_UNIT_DEG, 2 },
    { "side drift\nm", offsetof(gw_summary, stop_offset), GW_UNIT_M, 2 },
};
enum { N_QUANTITIES = sizeof QUANTITIES / sizeof *QUANTITIES };

static double quantity(const gw_summary_quantity *q, const gw_summary *s)
{
    return gw_unit_of_member(q->unit, s, q->at);
}

static bool any_harshness(const gw_summary *s)
{
    return isfinite(s->harshness[GW_FRONT]) || isfinite(s->harshness[GW_REAR]);
}

static void put_quantity(gw_table *t, const gw_summary_quantity *q, const gw_summary *s,
                         const gw_summary *from)
{
    double value = quantity(q, s), before = quantity(q, from);
    if (s->kit == from->kit || !isfinite(value) || !isfinite(before))
        gw_table_cell(t, gw_signed(value, q->decimals).s);
    else
        gw_table_cellf(t, "%s (%s)", gw_signed(value, q->decimals).s,
                       gw_signed(value - before, q->decimals).s);
}

/* Front and rear, or the one that is looked at. */
static void put_harshness(gw_table *t, const gw_summary *s, const gw_summary *from)
{
    const double front = from->harshness[GW_FRONT], rear = from->harshness[GW_REAR];
    if (isfinite(front) && isfinite(rear))
        gw_table_cellf(t, "%s/%s", gw_signed(s->harshness[GW_FRONT], 1).s,
                       gw_signed(s->harshness[GW_REAR], 1).s);
    else
        gw_table_cell(t, gw_signed(s->harshness[isfinite(front) ? GW_FRONT : GW_REAR], 1).s);
}

static void put_row(const gw_handling_page *p, const gw_summary *s, const gw_summary *from, gw_table *t)
{
    gw_car_cost cost = gw_car_cost_of(p->cmp->c, s->kit);
    gw_table_cell(t, p->cmp->c->kits[s->kit].name);
    for (int i = 0; i < N_QUANTITIES; i++)
        if (isfinite(quantity(&QUANTITIES[i], from))) put_quantity(t, &QUANTITIES[i], s, from);
    if (any_harshness(from)) put_harshness(t, s, from);
    gw_sum_cell(t, gw_cost_price(&cost));
    gw_sum_cell(t, gw_cost_time(&cost));
    gw_table_end_row(t);
}

static void put_table(const gw_handling_page *p, const gw_summary *from)
{
    gw_table t = { 0 };
    gw_table_column(&t, GW_LEFT, "kit");
    for (int i = 0; i < N_QUANTITIES; i++)
        if (isfinite(quantity(&QUANTITIES[i], from))) gw_table_column(&t, GW_RIGHT, QUANTITIES[i].head);
    if (any_harshness(from)) gw_table_column(&t, GW_RIGHT, "harshness\ndB");
    gw_table_heads(&t, "rr", "price", "fit\nmin");
    for (int k = 0; k < p->cmp->c->n_kits; k++) {
        gw_summary s = gw_summary_of(p->cmp, k);
        if (gw_compare_shows(p->cmp, k)) put_row(p, &s, from, &t);
    }
    gw_paper_table(p->paper, &t, 2);
}

static void explain_car(const gw_handling_page *p, const gw_summary *from, gw_buf *text)
{
    const gw_comparison *cmp = p->cmp;
    const gw_handling_study *h = cmp->handling;
    const char *axle = gw_axle_name(gw_summary_axle(cmp));
    if (isfinite(from->camber)) {
        gw_buf_fmt(text, "Outer camber: of the %s wheel to the road ", axle);
        gw_phrase_load(&cmp->c->loads[gw_summary_load(cmp)], text);
        gw_buf_add(text, ". ");
    }
    if (isfinite(from->understeer))
        gw_buf_fmt(text, "Understeer: at %s g, plus is understeer. ", gw_fixed(GW_BALANCE_G, 1).s);
    if (isfinite(from->brake_toe))
        gw_buf_fmt(text, "Toe, braking: of one %s wheel, toe-in positive, per g of a %s g stop. ", axle,
                   gw_fixed(GW_FIRM_STOP, 1).s);
    if (isfinite(from->stop_offset))
        gw_buf_fmt(
            text,
            "Side drift: in that stop from %s km/h with one side braking %s %% harder and the steering "
            "held, towards the harder side. ",
            gw_fixed(h->speed / GW_KM_H, 0).s, gw_fixed(100.0 * h->brake_imbalance, 0).s);
}

static bool any_unknown(const gw_handling_page *p)
{
    for (int k = 0; k < p->cmp->c->n_kits; k++) {
        gw_car_cost cost = gw_car_cost_of(p->cmp->c, k);
        if (gw_compare_shows(p->cmp, k) && (cost.unpriced || cost.untimed)) return true;
    }
    return false;
}

static void explain(const gw_handling_page *p, const gw_summary *from)
{
    gw_buf text = { 0 };
    explain_car(p, from, &text);
    if (text.n) {
        gw_buf_say(&text, "In brackets: the difference from %s. ", gw_kit_said(p->cmp->c, p->cmp->baseline));
    }
    if (any_harshness(from)) {
        bool both = isfinite(from->harshness[GW_FRONT]) && isfinite(from->harshness[GW_REAR]);
        gw_buf_say(&text, "Harshness:%s over %s. ", both ? " front/rear," : "", gw_kit_said(p->cmp->c, 0));
    }
    gw_buf_say(&text,
               "Price and minutes: what differs from %s, both sides of the car, in the currency of the case; "
               "for that kit itself, renewing it. ",
               gw_kit_said(p->cmp->c, 0));
    if (any_unknown(p)) gw_buf_add(&text, "A plus sign behind a sum: some parts carry no figure. ");
    gw_buf_add(&text, "Prices of demonstration cases are invented.");
    gw_paper_say_of(p->paper, 2, &text);
}

/* "-0.45 to -0.33 deg under a 1.00 g stop" */
static void put_ends(const gw_comparison *cmp, const gw_tolerance_item *item, gw_buf *text)
{
    gw_buf_fmt(text, "%s to %s deg ", gw_signed(item->toe[0] / GW_DEG, 2).s,
               gw_signed(item->toe[1] / GW_DEG, 2).s);
    gw_phrase_load(&cmp->c->loads[item->load], text);
}

/* A line a kit: the toe change with all its rubber softer, and harder. */
static void ends_line(const gw_handling_page *p, int kit)
{
    const gw_comparison *cmp = p->cmp;
    gw_buf text = { 0 };
    bool first = true;
    gw_buf_clean(&text, gw_kit_said(cmp->c, kit));
    for (int i = 0; i < cmp->tolerance->n; i++) {
        const gw_tolerance_item *item = &cmp->tolerance->item[i];
        if (item->kit != kit || item->axle != gw_summary_axle(cmp) || item->failed) continue;
        gw_buf_add(&text, first ? ": " : ", ");
        first = false;
        if (item->bushes)
            put_ends(cmp, item, &text);
        else
            gw_buf_add(&text, "no rubber");
        if (!item->bushes) break;
    }
    gw_paper_say_of(p->paper, 4, &text);
}

static void ends(const gw_handling_page *p)
{
    const gw_comparison *cmp = p->cmp;
    if (!cmp->tolerance || !cmp->tolerance->n) return;
    gw_buf_fmt(p->paper->out,
               "  %s toe change with rubber %s points softer, and harder (tolerance of hardness, common "
               "practice):\n",
               gw_summary_axle(cmp) == GW_FRONT ? "Front" : "Rear", gw_fixed(GW_HARDNESS_TOLERANCE, 0).s);
    for (int k = 0; k < cmp->c->n_kits; k++)
        if (gw_compare_shows(cmp, k)) ends_line(p, k);
}

/* How many joints of a kit are beyond a limit; which, is told at the end. */
static void warn_overload(const gw_handling_page *p, int kit)
{
    int joints = p->cmp->strength ? gw_stand_joints_beyond(p->cmp->c, p->cmp->strength, kit) : 0;
    if (!joints) return;
    gw_paper_say(p->paper, 2, "%s: %d of its joints will not stand the loads; see \"Beyond a limit\" below.",
                 gw_kit_said(p->cmp->c, kit), joints);
}

static void warn_unstable(const gw_handling_page *p, const gw_summary *s)
{
    if (!gw_compare_shows(p->cmp, s->kit) || !isfinite(s->critical_speed)) return;
    gw_paper_say(p->paper, 2, "%s: the car oversteers and is unstable above %s km/h (critical speed).",
                 gw_kit_said(p->cmp->c, s->kit), gw_fixed(s->critical_speed / GW_KM_H, 0).s);
}

void gw_summary_text(const gw_handling_page *p)
{
    gw_summary from = gw_summary_of(p->cmp, p->cmp->baseline);
    gw_paper_heading(p->paper, "What each kit does to the car, and what it costs");
    put_table(p, &from);
    for (int k = 0; k < p->cmp->c->n_kits; k++) {
        gw_summary s = gw_summary_of(p->cmp, k);
        warn_unstable(p, &s);
        warn_overload(p, k);
    }
    gw_shared_work_text(p);
    ends(p);
    explain(p, &from);
}

static void put_lack(const gw_handling_page *p, const char *what, const char *lacks)
{
    if (!lacks) return;
    gw_paper_say(p->paper, 0, "%s left out: the case lacks %s.", what, lacks);
}

static bool told_before(const gw_handling_study *h, int at)
{
    for (int i = 0; i < at; i++)
        if (strcmp(h->gap[i].text, h->gap[at].text) == 0) return true;
    return false;
}

/* The loads are answered; what goes beyond them is left out where a car does not go so far. Kits for which
 * the same is to be said share a line. */
static void put_gaps(const gw_handling_page *p)
{
    const gw_handling_study *h = p->cmp->handling;
    if (h->n_gaps) gw_paper_gap(p->paper);
    for (int i = 0; i < h->n_gaps; i++) {
        gw_buf text = { 0 };
        if (told_before(h, i)) continue;
        for (int k = i; k < h->n_gaps; k++) {
            if (strcmp(h->gap[k].text, h->gap[i].text) != 0) continue;
            gw_buf_say(&text, "%s%s", k == i ? "Kit " : ", ", p->cmp->c->kits[h->gap[k].kit].name);
        }
        gw_buf_say(&text, ": %s.", h->gap[i].text);
        gw_paper_say_of(p->paper, 0, &text);
    }
}

void gw_handling_lacks_text(const gw_handling_page *p)
{
    const gw_handling_study *h = p->cmp->handling;
    put_gaps(p);
    if (h->no_budgets && h->no_budgets == h->no_bands && h->no_budgets == h->no_braking) {
        gw_paper_gap(p->paper);
        put_lack(p, "What the kits do to the car is", h->no_budgets);
        return;
    }
    if (h->no_budgets || h->no_balance || h->no_braking || h->no_traction || h->no_bands)
        gw_paper_gap(p->paper);
    put_lack(p, "The camber and toe budgets are", h->no_budgets);
    put_lack(p, "Balance, and how far a stop pulls the car aside, are", h->no_balance);
    put_lack(p, "Stability under braking is", h->no_braking);
    put_lack(p, "Traction is", h->no_traction);
    put_lack(p, "Consistency is", h->no_bands);
}
