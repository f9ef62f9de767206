/* SPDX-License-Identifier: MIT */
/* What to fit for the money: the recommendations with the case's kits among them, and what more money buys.
 */
#include "show/choose.h"
#include "page/page.h"
#include "page/tables.h"

#include <math.h>

static double shown(const gw_choose_study *s, double x)
{
    return gw_unit_out(s->in_mm ? GW_UNIT_MM : GW_UNIT_DEG, x);
}

static void head(const gw_page *p, gw_words first)
{
    const gw_words heads[] = { GW_WORDS_PAGE_CHOOSE_UNSTEADY, GW_WORDS_PAGE_CHOOSE_HARSH,
                               GW_WORDS_PAGE_CHOOSE_NOISE,
                               p->c->shop.has_tax ? GW_WORDS_PAGE_CHOOSE_COST_TAX
                                                  : GW_WORDS_PAGE_CHOOSE_COST };
    gw_buf_add(p->out, "<thead><tr><th scope=\"col\">");
    gw_html_text(p->out, gw_words_text(first));
    for (size_t i = 0; i < sizeof heads / sizeof *heads; i++) {
        gw_buf_add(p->out, "</th><th scope=\"col\">");
        gw_html_text(p->out, gw_words_text(heads[i]));
    }
    gw_buf_add(p->out, "</th></tr></thead>\n<tbody>\n");
}

static void cells(const gw_page *p, const gw_combination *of)
{
    const gw_choose_study *s = p->wish->choose;
    gw_buf cost = { 0 };
    gw_page_planned(p, of->cost, &cost);
    gw_html_figure(p->out, gw_fixed(shown(s, of->unsteadiness), 3), s->in_mm ? "\xC2\xA0mm" : "\xC2\xB0");
    gw_buf_add(p->out, "</td><td>");
    gw_html_figure(p->out, gw_signed(of->harshness, 1),
                   "\xC2\xA0"
                   "dB");
    gw_buf_add(p->out, "</td><td>");
    gw_html_figure(p->out, gw_signed(of->noise, 1),
                   "\xC2\xA0"
                   "dB");
    gw_buf_add(p->out, "</td><td>");
    gw_html_text(p->out, gw_buf_str(&cost));
    gw_buf_drop(&cost, p->out);
}

static void row(const gw_page *p, const char *name, const gw_combination *of)
{
    gw_buf_add(p->out, "<tr><th scope=\"row\">");
    gw_html_name(p->out, name);
    gw_buf_add(p->out, "</th><td>");
    cells(p, of);
    gw_buf_add(p->out, "</td></tr>\n");
}

static void picked(const gw_page *p, int which)
{
    const gw_choose_study *s = p->wish->choose;
    gw_buf name = { 0 };
    if (gw_page_pick(p, which, &name)) row(p, gw_buf_str(&name), &s->front[s->recommended[which].member]);
    gw_buf_drop(&name, p->out);
}

static void table(const gw_page *p)
{
    const gw_choose_study *s = p->wish->choose;
    gw_page_frame_begin(p, GW_WORDS_PAGE_CHOOSE);
    gw_buf_add(p->out, "<table>");
    head(p, GW_WORDS_PAGE_CHOOSE_WHAT);
    row(p, gw_words_text(GW_WORDS_PAGE_CHOOSE_NOW), &s->now);
    for (int r = 0; r < GW_RECOMMENDED && s->has_recommended; r++) picked(p, r);
    for (int i = 0; i < s->n_own; i++) row(p, gw_page_kit(p, s->own[i].kit), &s->own[i].is);
    gw_buf_add(p->out, "</tbody></table></div>\n");
}

/* "Best value: 1. arm bearing in front lower arm, front bush; 2. ..." */
static void order(const gw_page *p, const gw_recommendation *r, int which)
{
    const gw_choose_study *s = p->wish->choose;
    gw_buf text = { 0 };
    if (!gw_page_pick(p, which, &text)) return;
    gw_buf_add(&text, ": ");
    for (int i = 0; i < r->n_order; i++) {
        const gw_among *among = &s->offer.among[r->order[i].choice];
        gw_buf_fmt(&text, "%s%d. ", i ? "; " : "", i + 1);
        gw_buf_clean(&text, gw_page_bush(&p->c->bushes[among->bush[r->order[i].option]]));
        for (int j = 0; j < among->n_joints; j++) {
            gw_buf_add(&text, j ? ", " : " \xE2\x80\x93 ");
            gw_page_joint(p, among->axle, among->joint[j], &text);
        }
    }
    gw_buf_add(p->out, "<li>");
    gw_html_name(p->out, gw_buf_str(&text));
    gw_buf_add(p->out, "</li>\n");
    gw_buf_drop(&text, p->out);
}

static void ladder(const gw_page *p)
{
    const gw_choose_study *s = p->wish->choose;
    gw_page_heading(p, GW_WORDS_PAGE_CHOOSE_LADDER, GW_WORDS_PAGE_CHOOSE_LADDER_NOTE);
    gw_page_frame_begin(p, GW_WORDS_PAGE_CHOOSE_LADDER);
    gw_buf_add(p->out, "<table>");
    head(p, GW_WORDS_PAGE_CHOOSE_STEP);
    for (int i = 0, n = 0; i < s->n_front; i++)
        if (s->front[i].step) row(p, gw_fixed(++n, 0).s, &s->front[i]);
    gw_buf_add(p->out, "</tbody></table></div>\n");
}

void gw_page_choose(const gw_page *p)
{
    const gw_choose_study *s = p->wish->choose;
    if (!s || !s->n_front) return;
    gw_buf_add(p->out, "<section aria-labelledby=\"choose\" class=\"screen\">\n<h2 id=\"choose\">");
    GW_TELL(p->out, PAGE_CHOOSE);
    gw_buf_add(p->out, "</h2>\n<p class=\"note\">");
    GW_TELL(p->out, PAGE_CHOOSE_NOTE);
    gw_buf_add(p->out, "</p>\n");
    table(p);
    gw_buf_add(p->out, "<ul>\n");
    for (int r = 0; r < GW_RECOMMENDED && s->has_recommended; r++)
        if (s->recommended[r].n_order) order(p, &s->recommended[r], r);
    gw_buf_add(p->out, "</ul>\n");
    ladder(p);
    gw_buf_add(p->out, "</section>\n");
}
