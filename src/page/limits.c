/* SPDX-License-Identifier: MIT */
/* For the workshop: how near to its limit every joint of every kit works. */
#include "page/page.h"

static void cell(const gw_page *p, int kit, gw_axle axle, int joint)
{
    const gw_overload *o = gw_page_nearest(p, kit, axle, joint);
    if (!o) {
        gw_buf_add(p->out, "<td>\xE2\x80\x93</td>"); /* a dash */
        return;
    }
    gw_buf_fmt(p->out, "<td data-near-kit=\"%d\" data-near-axle=\"%d\" ", kit, (int)axle);
    gw_html_put(p->out, "data-near-joint=\"{}\">", p->c->corners[axle].joints[joint].name);
    gw_html_put(p->out,
                o->verdict.holds ? "{} <span>{}\xC2\xA0%</span></td>"
                                 : "<strong class=\"fails\">{} <span>{}\xC2\xA0%</span></strong></td>",
                gw_page_figure_word(&o->verdict), gw_page_percent_of_limit(o).s);
}

static void beyond(const gw_page *p, const gw_overload *o)
{
    const gw_bush *bush = &p->c->bushes[p->c->kits[o->kit].fits[o->axle][o->joint]];
    const gw_verdict *v = &o->verdict;
    gw_buf_add(p->out, "<li>");
    GW_SAY(p->out, PAGE_SHOP_BEYOND, { "kit", gw_page_kit(p, o->kit) }, { "axle", gw_page_axle(o->axle) },
           { "joint", p->c->corners[o->axle].joints[o->joint].name }, { "bush", gw_page_bush(bush) },
           { "load", gw_page_load_said(p, o->load) }, { "what", GW_JUDGED_WORDS[v->what] },
           { "value", gw_page_verdict_said(p, v, v->value) },
           { "limit", gw_page_verdict_said(p, v, v->limit) }, { "source", v->source });
    gw_buf_add(p->out, "</li>\n");
}

static void all_beyond(const gw_page *p)
{
    int n = 0;
    for (int i = 0; i < p->r->strength.n; i++) {
        if (p->r->strength.item[i].verdict.holds) continue;
        if (!n++) gw_buf_add(p->out, "<ul>\n");
        beyond(p, &p->r->strength.item[i]);
    }
    if (n) gw_buf_add(p->out, "</ul>\n");
}

/* Each limit's source once. */
static void sources(const gw_page *p)
{
    const gw_strength_study *s = &p->r->strength;
    gw_buf_add(p->out, "<p class=\"note\">");
    for (int i = 0; i < s->n; i++) {
        if (!gw_strength_names_source(s, i)) continue;
        GW_SAY(p->out, PAGE_SHOP_LIMIT_OF, { "what", GW_JUDGED_WORDS[s->item[i].verdict.what] },
               { "source", s->item[i].verdict.source });
        gw_buf_add(p->out, " ");
    }
    gw_buf_add(p->out, "</p>\n");
}

void gw_page_limits(const gw_page *p)
{
    const gw_page_joint_table near = { "near", false, cell };
    if (!p->r->strength.n) return;
    gw_page_heading(p, GW_WORDS_PAGE_SHOP_NEAR, GW_WORDS_PAGE_SHOP_NEAR_NOTE);
    all_beyond(p);
    gw_page_joint_tables(p, GW_WORDS_PAGE_SHOP_NEAR, &near);
    sources(p);
}
