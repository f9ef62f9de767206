/* SPDX-License-Identifier: MIT */
/* Where the camber of the outer wheel goes in a corner: setting, body roll, tyres, wheel travel, jacking,
 * bushes. */
#include "page/budget.h"
#include "page/say.h"

#include "giveway/casefile.h"
#include "giveway/pick.h"
#include "giveway/units.h"
#include "show/message.h"
#include "show/phrase.h"

#include <stddef.h>

enum { MOST_PARTS = 6 };

static const struct {
    gw_words name;
    size_t at;
    bool road; /* of a car solved whole alone */
} PARTS[MOST_PARTS] = {
    { GW_WORDS_PAGE_BUDGET_SETTING, offsetof(gw_angle_parts, setting), false },
    { GW_WORDS_PAGE_BUDGET_ROLL, offsetof(gw_angle_parts, roll), false },
    { GW_WORDS_PAGE_BUDGET_TYRE, offsetof(gw_angle_parts, tyre), true },
    { GW_WORDS_PAGE_BUDGET_TRAVEL, offsetof(gw_angle_parts, travel), false },
    { GW_WORDS_PAGE_BUDGET_JACKING, offsetof(gw_angle_parts, jacking), true },
    { GW_WORDS_PAGE_BUDGET_BUSHES, offsetof(gw_angle_parts, compliance), false },
};

static int name_parts(bool road, const char **parts)
{
    int n = 0;
    for (int i = 0; i < MOST_PARTS; i++)
        if (road || !PARTS[i].road) parts[n++] = gw_words_text(PARTS[i].name);
    return n;
}

static int fill(const gw_report *r, gw_axle axle, int load, const char **groups, double *values, bool *road)
{
    int n = 0, at = 0;
    for (int k = 0; k < r->c->n_kits; k++) {
        const gw_corner_budget *b = gw_corner_budget_find(&r->handling, k, axle, load, GW_OUTER);
        if (!b) continue;
        groups[n++] = gw_kit_said(r->c, k);
        *road = b->on_road;
        for (int i = 0; i < MOST_PARTS; i++)
            if (b->on_road || !PARTS[i].road)
                values[at++] =
                    *(const double *)(const void *)((const char *)&b->camber + PARTS[i].at) / GW_DEG;
    }
    return n;
}

static void draw(const gw_report *r, gw_axle axle, int load, gw_bar_chart *chart, gw_charts *charts)
{
    gw_buf title = { 0 }, of = { 0 }, phrase = { 0 };
    gw_told told[GW_MAX_KITS] = { 0 };
    const char *stem = axle == GW_FRONT ? "camber-budget-front" : "camber-budget-rear";
    gw_phrase_load(&r->c->loads[load], &phrase);
    const gw_html_part parts[] = { { "load", gw_charts_kept(charts, &phrase) },
                                   { "axle", gw_page_axle(axle) },
                                   { NULL, NULL } };
    gw_plain_say(&of, gw_words_text(GW_WORDS_PAGE_BUDGET_TITLE), parts);
    for (int k = 0; k < chart->n_groups && k < GW_MAX_KITS; k++) {
        told[k].kit = chart->groups[k];
        for (int i = 0; i < chart->n_parts; i++) told[k].value += chart->values[k * chart->n_parts + i];
    }
    const gw_message message = {
        .of = gw_charts_kept(charts, &of), .unit = "deg", .decimals = 2, .is_signed = true
    };
    gw_message_kits(&message, told, chart->n_groups, &title);
    chart->words = (gw_chart_words){ .title = gw_charts_kept(charts, &title),
                                     .x_title = gw_words_text(GW_WORDS_PAGE_BUDGET_X),
                                     .what = gw_words_text(GW_WORDS_PAGE_BUDGET_WHAT) };
    gw_charts_bars(charts, stem, chart);
}

void gw_page_budget_charts(const gw_report *r, gw_charts *charts)
{
    const char *parts[MOST_PARTS], *groups[GW_MAX_KITS];
    double values[GW_MAX_KITS * MOST_PARTS];
    int load = gw_pick_load(r->c, &r->deflect, GW_PICK_CORNER);
    for (gw_axle a = GW_FRONT; a < GW_AXLES && load >= 0; a++) {
        bool road = false;
        int n = fill(r, a, load, groups, values, &road);
        gw_bar_chart chart = { .groups = groups,
                               .n_groups = n,
                               .parts = parts,
                               .n_parts = name_parts(road, parts),
                               .values = values,
                               .stacked = true,
                               .decimals = 2 };
        if (n) draw(r, a, load, &chart, charts);
    }
}
