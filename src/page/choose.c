/* SPDX-License-Identifier: MIT */
/* What to fit for the money: the recommendations with the case's kits among them, and what more money buys.
 */
#include "page/sections.h"

#include "show/choose.h"

static void put_fitting(const gw_page *p, gw_slots *slots, const char *list, const char *name,
                        const gw_combination *of)
{
    static const char DB[] = GW_NBSP "dB";
    bool mm = p->wish->choose->in_mm;
    double unsteady = gw_unit_out(mm ? GW_UNIT_MM : GW_UNIT_DEG, of->unsteadiness);
    gw_slots *row = gw_slots_element(slots, list);
    gw_slots_text(row, "name", name);
    gw_slots_figure(row, "unsteady", gw_fixed(unsteady, 3), mm ? "\xC2\xA0mm" : "\xC2\xB0");
    gw_slots_figure(row, "harsh", gw_signed(of->harshness, 1), DB);
    gw_slots_figure(row, "noise", gw_signed(of->noise, 1), DB);
    gw_slots_text(row, "cost", gw_page_planned(p, of->cost));
}

/* "Best value: 1. arm bearing in front lower arm, front bush; 2. ..." */
static void put_order(const gw_page *p, gw_slots *slots, const char *name, const gw_recommendation *r)
{
    const gw_choose_study *s = p->wish->choose;
    gw_slots *of = gw_slots_element(slots, "orders");
    gw_buf text = { 0 };
    for (int i = 0; i < r->n_order; i++) {
        const gw_among *among = &s->offer.among[r->order[i].choice];
        gw_buf_fmt(&text, "%s%d. %s", i ? "; " : "", i + 1,
                   gw_page_bush(p, &p->c->bushes[among->bush[r->order[i].option]]));
        for (int j = 0; j < among->n_joints; j++)
            gw_buf_fmt(&text, "%s%s", j ? " and " : " in ", /* a label may hold a comma */
                       gw_page_joint(p, among->axle, among->joint[j]));
    }
    gw_slots_text(of, "name", name);
    gw_slots_take(of, "order", &text);
}

static void put_recommended(const gw_page *p, gw_slots *slots, const gw_choose_study *s)
{
    for (int r = 0; r < GW_RECOMMENDED && s->has_recommended; r++) {
        const gw_recommendation *of = &s->recommended[r];
        const char *name = gw_page_pick(p, r);
        if (!name) continue;
        put_fitting(p, slots, "fittings", name, &s->front[of->member]);
        if (of->n_order) put_order(p, slots, name, of);
    }
}

/* What is recommended keeps within limits that the kits of the page need not keep. */
void gw_page_choose(const gw_page *p, gw_slots *slots)
{
    const gw_choose_study *s = p->wish->choose;
    gw_buf limits = { 0 };
    if (!s || !s->n_front) return;
    gw_choose_say_limits(p->c, p->wish->choose, &limits);
    gw_slots_take(slots, "within", &limits);
    gw_slots_flag(slots, "offers", true);
    put_fitting(p, slots, "fittings", gw_words_text(GW_WORDS_PAGE_CHOOSE_NOW), &s->now);
    put_recommended(p, slots, s);
    for (int i = 0; i < s->n_own; i++)
        put_fitting(p, slots, "fittings", gw_kit_said(p->c, s->own[i].kit), &s->own[i].is);
    for (int i = 0, n = 0; i < s->n_front; i++)
        if (s->front[i].step) put_fitting(p, slots, "steps", gw_fixed(++n, 0).s, &s->front[i]);
}
