/* SPDX-License-Identifier: MIT */
/* What to fit for the money: the recommendations with the case's kits among them, and what more money buys.
 */
#include "page/page.h"

#include "show/choose.h"

static void head(const gw_page *p, gw_words first)
{
    const gw_words heads[] = { first, GW_WORDS_PAGE_CHOOSE_UNSTEADY, GW_WORDS_PAGE_CHOOSE_HARSH,
                               GW_WORDS_PAGE_CHOOSE_NOISE,
                               p->c->shop.has_tax ? GW_WORDS_PAGE_CHOOSE_COST_TAX
                                                  : GW_WORDS_PAGE_CHOOSE_COST };
    gw_buf_add(p->out, "<thead><tr>");
    gw_page_heads(p, heads, sizeof heads / sizeof *heads);
    gw_buf_add(p->out, "</tr></thead>\n<tbody>\n");
}

static void row(const gw_page *p, const char *name, const gw_combination *of)
{
    static const char BETWEEN[] = "</td><td>", DB[] = "\xC2\xA0"
                                                      "dB";
    bool mm = p->wish->choose->in_mm;
    double unsteady = gw_unit_out(mm ? GW_UNIT_MM : GW_UNIT_DEG, of->unsteadiness);
    gw_html_put(p->out, "<tr><th scope=\"row\"><bdi>{}</bdi></th><td>", name);
    gw_html_figure(p->out, gw_fixed(unsteady, 3), mm ? "\xC2\xA0mm" : "\xC2\xB0");
    gw_buf_add(p->out, BETWEEN);
    gw_html_figure(p->out, gw_signed(of->harshness, 1), DB);
    gw_buf_add(p->out, BETWEEN);
    gw_html_figure(p->out, gw_signed(of->noise, 1), DB);
    gw_html_put(p->out, "</td><td>{}</td></tr>\n", gw_page_planned(p, of->cost));
}

static void picked(const gw_page *p, int which)
{
    const gw_choose_study *s = p->wish->choose;
    const char *name = gw_page_pick(p, which);
    if (name) row(p, name, &s->front[s->recommended[which].member]);
}

static void table(const gw_page *p)
{
    const gw_choose_study *s = p->wish->choose;
    gw_page_frame_begin(p, GW_WORDS_PAGE_CHOOSE);
    gw_buf_add(p->out, "<table class=\"glance\">");
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
    const char *name = gw_page_pick(p, which);
    gw_buf text = { 0 };
    if (!name) return;
    for (int i = 0; i < r->n_order; i++) {
        const gw_among *among = &s->offer.among[r->order[i].choice];
        gw_buf_fmt(&text, "%s%d. %s", i ? "; " : "", i + 1,
                   gw_page_bush(&p->c->bushes[among->bush[r->order[i].option]]));
        for (int j = 0; j < among->n_joints; j++)
            gw_buf_fmt(&text, "%s%s", j ? ", " : " \xE2\x80\x93 ",
                       gw_page_joint(p, among->axle, among->joint[j]));
    }
    gw_html_put(p->out, "<li><bdi>{}: {}</bdi></li>\n", name, gw_page_kept(p, &text));
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

/* What is recommended keeps within limits that the kits of the page need not keep. */
static void note(const gw_page *p)
{
    gw_buf limits = { 0 };
    gw_choose_say_limits(p->c, p->wish->choose, &limits);
    gw_buf_add(p->out, "<p class=\"note\">");
    GW_SAY(p->out, PAGE_CHOOSE_NOTE, { "limits", gw_page_kept(p, &limits) });
    gw_buf_add(p->out, "</p>\n");
}

void gw_page_choose(const gw_page *p)
{
    const gw_choose_study *s = p->wish->choose;
    if (!s || !s->n_front) return;
    gw_page_section_begin(p, "choose", "screen", GW_WORDS_PAGE_CHOOSE);
    note(p);
    table(p);
    gw_buf_add(p->out, "<ul>\n");
    for (int r = 0; r < GW_RECOMMENDED && s->has_recommended; r++)
        if (s->recommended[r].n_order) order(p, &s->recommended[r], r);
    gw_buf_add(p->out, "</ul>\n");
    ladder(p);
    gw_buf_add(p->out, "</section>\n");
}
