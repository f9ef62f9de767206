/* SPDX-License-Identifier: MIT */
/* The outer and the inner wheel of each axle next to each other, in the corner that the charts look at. */
#include "page/tables.h"

#include "format/number.h"
#include "giveway/pick.h"
#include "record/unit.h"

#include <stddef.h>

typedef const gw_corner_budget *both_wheels[GW_INNER + 1];

static const struct {
    gw_words head;
    size_t at; /* of a gw_corner_budget */
    gw_unit unit;
    int decimals;
    bool is_signed;
} COLUMNS[] = {
    { GW_WORDS_PAGE_SIDES_TRAVEL, offsetof(gw_corner_budget, travel), GW_UNIT_MM, 1, true },
    { GW_WORDS_PAGE_SIDES_LOAD, offsetof(gw_corner_budget, vertical), GW_UNIT_N, 0, false },
    { GW_WORDS_PAGE_SIDES_FORCE, offsetof(gw_corner_budget, lateral), GW_UNIT_N, 0, false },
    { GW_WORDS_PAGE_SIDES_TOE, offsetof(gw_corner_budget, toe.total), GW_UNIT_DEG, 2, true },
    { GW_WORDS_PAGE_SIDES_CAMBER, offsetof(gw_corner_budget, camber.total), GW_UNIT_DEG, 2, true },
};
enum { N_COLUMNS = sizeof COLUMNS / sizeof *COLUMNS };

static bool find_both(const gw_page *p, int kit, gw_axle axle, int load, both_wheels out)
{
    for (gw_side s = GW_OUTER; s <= GW_INNER; s++)
        out[s] = gw_corner_budget_find(&p->r->handling, kit, axle, load, s);
    return out[GW_OUTER] && out[GW_INNER];
}

static gw_number figure(int column, const gw_corner_budget *b)
{
    double x = gw_unit_of_member(COLUMNS[column].unit, b, COLUMNS[column].at);
    return (COLUMNS[column].is_signed ? gw_signed : gw_fixed)(x, COLUMNS[column].decimals);
}

static void cell(const gw_page *p, const both_wheels both, int i)
{
    gw_buf_fmt(p->out, "<td>%s / %s</td>", figure(i, both[GW_OUTER]).s, figure(i, both[GW_INNER]).s);
}

static void row(const gw_page *p, int kit, const both_wheels both)
{
    gw_html_put(p->out, "<tr><th scope=\"row\"><bdi>{}</bdi></th>", gw_page_kit(p, kit));
    for (int i = 0; i < N_COLUMNS; i++) cell(p, both, i);
    gw_buf_add(p->out, "</tr>\n");
}

static void axle_table(const gw_page *p, gw_axle axle, int load)
{
    gw_buf_fmt(p->out, "<table class=\"sides\" data-axle=\"%d\">", (int)axle);
    gw_html_put(p->out, "<caption>{}</caption><thead><tr><th scope=\"col\">{}</th>", gw_page_wheel_of(axle),
                GW_TOLD(PAGE_SIDES_KIT));
    for (int i = 0; i < N_COLUMNS; i++) gw_page_heads(p, &COLUMNS[i].head, 1);
    gw_buf_add(p->out, "</tr></thead>\n<tbody>\n");
    for (int k = 0; k < p->c->n_kits; k++) {
        both_wheels both;
        if (gw_page_has_kit(p, k) && find_both(p, k, axle, load, both)) row(p, k, both);
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
