/* SPDX-License-Identifier: MIT */
/* The outer and the inner wheel of each axle next to each other, in the corner that the charts look at. */
#include "page/page.h"

#include "giveway/pick.h"
#include "show/handling.h"

/* In the order of gw_wheel_figure. */
static const gw_words HEADS[GW_WHEEL_FIGURES] = { GW_WORDS_PAGE_SIDES_TRAVEL, GW_WORDS_PAGE_SIDES_LOAD,
                                                  GW_WORDS_PAGE_SIDES_FORCE, GW_WORDS_PAGE_SIDES_TOE,
                                                  GW_WORDS_PAGE_SIDES_CAMBER };

static void cell(const gw_page *p, const gw_both_wheels both, int i)
{
    gw_buf_fmt(p->out, "<td>%s / %s</td>", gw_wheel_figure(both[GW_OUTER], i).s,
               gw_wheel_figure(both[GW_INNER], i).s);
}

static void row(const gw_page *p, int kit, const gw_both_wheels both)
{
    gw_html_put(p->out, "<tr><th scope=\"row\"><bdi>{}</bdi></th>", gw_page_kit(p, kit));
    for (int i = 0; i < GW_WHEEL_FIGURES; i++) cell(p, both, i);
    gw_buf_add(p->out, "</tr>\n");
}

static void axle_table(const gw_page *p, gw_axle axle, int load)
{
    gw_buf_fmt(p->out, "<table class=\"sides\" data-axle=\"%d\">", (int)axle);
    gw_html_put(p->out, "<caption>{}</caption><thead><tr><th scope=\"col\">{}</th>", gw_page_wheel_of(axle),
                GW_TOLD(PAGE_SIDES_KIT));
    gw_page_heads(p, HEADS, GW_WHEEL_FIGURES);
    gw_buf_add(p->out, "</tr></thead>\n<tbody>\n");
    for (int k = 0; k < p->c->n_kits; k++) {
        gw_both_wheels both;
        if (gw_page_has_kit(p, k) && gw_both_wheels_find(&p->r->handling, k, axle, load, both))
            row(p, k, both);
    }
    gw_buf_add(p->out, "</tbody></table>\n");
}

void gw_page_sides(const gw_page *p)
{
    int load = gw_pick_load(p->c, &p->r->deflect, GW_PICK_CORNER);
    if (load < 0 || !p->r->handling.n_budgets) return;
    gw_page_section_begin(p, "sides", "shop", GW_WORDS_PAGE_SIDES);
    gw_buf_add(p->out, "<p class=\"note\">");
    GW_SAY(p->out, PAGE_SIDES_NOTE, { "load", p->c->loads[load].name });
    gw_buf_add(p->out, "</p>\n");
    gw_page_frame_begin(p, GW_WORDS_PAGE_SIDES);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        if (gw_page_has_axle(p, a)) axle_table(p, a, load);
    gw_buf_add(p->out, "</div>\n</section>\n");
}
