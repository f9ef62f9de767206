/* SPDX-License-Identifier: MIT */
/* Where the camber of the outer wheel goes in a corner: setting, body roll, wheel travel, bushes. */
#include "page/page.h"

#include "giveway/pick.h"
#include "giveway/units.h"

#include <stdio.h>

enum { PARTS = 4, TITLE = 240 };

static int fill(const gw_report *r, gw_axle axle, int load, const char **groups, double *values)
{
    int n = 0;
    for (int k = 0; k < r->c->n_kits; k++) {
        const gw_corner_budget *b = gw_corner_budget_find(&r->handling, k, axle, load, GW_OUTER);
        if (!b) continue;
        groups[n] = r->c->kits[k].label ? r->c->kits[k].label : r->c->kits[k].name;
        const double parts[PARTS] = { b->camber.setting, b->camber.roll, b->camber.travel,
                                      b->camber.compliance };
        for (int i = 0; i < PARTS; i++) values[n * PARTS + i] = parts[i] / GW_DEG;
        n++;
    }
    return n;
}

static void draw(const gw_report *r, gw_axle axle, int load, gw_bar_chart *chart, gw_charts *charts)
{
    gw_buf title = { 0 };
    const char *stem = axle == GW_FRONT ? "camber-budget-front" : "camber-budget-rear";
    const gw_html_part parts[] = { { "load", r->c->loads[load].name },
                                   { "axle", gw_page_axle(axle) },
                                   { NULL, NULL } };
    gw_plain_say(&title, gw_words_text(GW_WORDS_PAGE_BUDGET_TITLE), parts);
    chart->words =
        (gw_chart_words){ .title = gw_buf_str(&title), .x_title = gw_words_text(GW_WORDS_PAGE_BUDGET_X) };
    gw_charts_bars(charts, stem, chart);
    if (title.failed) charts->failed = true;
    gw_buf_free(&title);
}

gw_status gw_page_budget_charts(const gw_report *r, gw_charts *charts, gw_error *err)
{
    const char *parts[PARTS] = { gw_words_text(GW_WORDS_PAGE_BUDGET_SETTING),
                                 gw_words_text(GW_WORDS_PAGE_BUDGET_ROLL),
                                 gw_words_text(GW_WORDS_PAGE_BUDGET_TRAVEL),
                                 gw_words_text(GW_WORDS_PAGE_BUDGET_BUSHES) };
    gw_arena arena = { 0 };
    size_t kits = (size_t)r->c->n_kits;
    const char **groups = gw_arena_alloc(&arena, kits, sizeof *groups);
    double *values = gw_arena_alloc(&arena, kits * PARTS, sizeof *values);
    int load = gw_pick_load(r->c, &r->deflect, GW_PICK_CORNER);
    gw_status status =
        groups && values ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for the camber budget");
    for (gw_axle a = GW_FRONT; a < GW_AXLES && status == GW_OK && load >= 0; a++) {
        int n = fill(r, a, load, groups, values);
        gw_bar_chart chart = { .groups = groups,
                               .n_groups = n,
                               .parts = parts,
                               .n_parts = PARTS,
                               .values = values,
                               .stacked = true,
                               .decimals = 2 };
        if (n) draw(r, a, load, &chart, charts);
    }
    gw_arena_free(&arena);
    return status;
}
