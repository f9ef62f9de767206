/* SPDX-License-Identifier: MIT */
/* What is read first: a sentence a kit, the loads, one table of the rim, ride and prices. */
#include "show/handling.h"

#include "format/number.h"
#include "giveway/cost.h"
#include "giveway/pick.h"
#include "record/unit.h"
#include "show/deflect.h"
#include "show/ride_parts.h"

#include <math.h>

/* Why a load stands as failed: once a kit and load, as the other commands say it. */
static void failed_lines(const gw_handling_page *p)
{
    const gw_deflect_study *d = p->cmp->deflect;
    const gw_case *c = p->cmp->c;
    for (int i = 0; i < d->n; i++) {
        const gw_deflection *item = &d->item[i];
        if (!item->failed || gw_deflect_failed_before(d, i)) continue;
        gw_paper_say(p->paper, 2, "%s, %s: not carried: %s", c->loads[item->load].name,
                     c->kits[item->kit].name, item->failed);
    }
}

/* The rim in millimetres is what a gauge reads: front toe, else the rear's, in the stop and the corner that
 * the sentences speak of. */
static int rim_loads(const gw_comparison *cmp, int load[2])
{
    int stop = gw_pick_load(cmp->c, cmp->deflect, GW_PICK_STOP), n = 0;
    int corner = gw_pick_load(cmp->c, cmp->deflect, GW_PICK_CORNER);
    if (!(cmp->c->corners[gw_summary_axle(cmp)].wheel.rim_diameter > 0.0)) return 0;
    if (stop >= 0) load[n++] = stop;
    if (corner >= 0 && corner != stop) load[n++] = corner;
    return n;
}

static void rim_cell(const gw_comparison *cmp, int kit, gw_table *t)
{
    gw_axle axle = gw_summary_axle(cmp);
    double rim = cmp->c->corners[axle].wheel.rim_diameter;
    gw_buf text = { 0 };
    int load[2], n = rim_loads(cmp, load);
    for (int i = 0; i < n; i++) {
        const gw_deflection *item = gw_deflect_find(cmp->deflect, kit, axle, load[i]);
        if (i) gw_buf_add(&text, "/");
        if (item)
            gw_buf_add(&text,
                       gw_signed(gw_unit_out(GW_UNIT_MM, gw_toe_at_rim(item->result.toe_change, rim)), 1).s);
        else
            gw_buf_add(&text, GW_NO_NUMBER);
    }
    gw_table_cell_of(t, &text);
}

typedef struct gw_brief_row {
    gw_summary s;
    gw_car_cost cost, same;
    double noise[GW_AXLES];
} gw_brief_row;

static gw_brief_row row_of(const gw_comparison *cmp, int kit)
{
    gw_brief_row row = { .s = gw_summary_of(cmp, kit),
                         .cost = gw_car_cost_of(cmp->c, kit),
                         .same = gw_car_cost_renewed(cmp->c, kit) };
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        const gw_ride_item *item = gw_ride_find(cmp->ride, kit, a);
        row.noise[a] = item ? item->difference.noise : (double)NAN;
    }
    return row;
}

/* Front and rear, or the one that was looked at. */
static void pair_cell(gw_table *t, const double value[GW_AXLES])
{
    if (isfinite(value[GW_FRONT]) && isfinite(value[GW_REAR]))
        gw_table_cellf(t, "%s/%s", gw_signed(value[GW_FRONT], 1).s, gw_signed(value[GW_REAR], 1).s);
    else
        gw_table_cell(t, gw_signed(value[isfinite(value[GW_FRONT]) ? GW_FRONT : GW_REAR], 1).s);
}

static void price_cells(gw_table *t, const gw_brief_row *row)
{
    gw_cost_sum time = gw_cost_time(&row->cost);
    if (isfinite(row->cost.labour)) time.value = row->cost.labour;
    gw_sum_cell(t, gw_cost_price(&row->cost));
    gw_sum_cell(t, time);
    gw_sum_cell(t, gw_cost_total(&row->cost));
    if (row->s.kit == 0)
        gw_table_cell(t, "");
    else
        gw_sum_cell(t, gw_cost_total(&row->same));
}

static void money_column(const gw_shop *shop, const char *head, gw_table *t)
{
    gw_buf text = { 0 };
    gw_buf_fmt(&text, "%s\n", head);
    if (shop->currency) gw_buf_clean(&text, shop->currency);
    gw_table_column_of(t, GW_RIGHT, &text);
}

/* Whether the case gives a price or a fitting time for anything that a kit buys. */
static bool has_prices(const gw_comparison *cmp)
{
    for (int k = 0; k < cmp->c->n_kits; k++) {
        gw_car_cost cost = gw_car_cost_of(cmp->c, k);
        bool known = gw_cost_price(&cost).known || gw_cost_time(&cost).known;
        if (gw_compare_shows(cmp, k) && cost.parts && known) return true;
    }
    return false;
}

/* Whether a plus stands behind some sum. */
static bool lacks_figures(const gw_comparison *cmp)
{
    for (int k = 0; k < cmp->c->n_kits; k++) {
        gw_car_cost cost = gw_car_cost_of(cmp->c, k), same = gw_car_cost_renewed(cmp->c, k);
        if (gw_compare_shows(cmp, k) && cost.unpriced + cost.untimed + same.unpriced + same.untimed)
            return true;
    }
    return false;
}

static void price_columns(const gw_handling_page *p, gw_table *t)
{
    const gw_shop *shop = &p->cmp->c->shop;
    money_column(shop, "parts", t);
    if (shop->has_labour)
        money_column(shop, "labour", t);
    else
        gw_table_column(t, GW_RIGHT, "to fit\nmin");
    money_column(shop, shop->has_tax ? "with tax" : "total", t);
    gw_buf renewed = { 0 };
    gw_buf_say(&renewed, "or renewed as %s", p->cmp->c->kits[0].name);
    money_column(shop, gw_buf_str(&renewed), t);
    if (renewed.failed) t->failed = true;
    gw_buf_free(&renewed);
}

static void columns(const gw_handling_page *p, const gw_brief_row *from, gw_table *t)
{
    int load[2];
    gw_table_column(t, GW_LEFT, "kit");
    if (rim_loads(p->cmp, load)) gw_table_column(t, GW_RIGHT, "toe at the rim\nmm");
    if (isfinite(from->s.understeer)) gw_table_column(t, GW_RIGHT, "understeer\ndeg/g");
    if (p->cmp->ride->n) {
        gw_table_heads(t, "rr", "harshness\ndB", "road noise\ndB");
    }
    if (has_prices(p->cmp)) price_columns(p, t);
}

static void price_table(const gw_handling_page *p)
{
    gw_brief_row from = row_of(p->cmp, p->cmp->baseline);
    gw_table t = { 0 };
    columns(p, &from, &t);
    for (int k = 0; k < p->cmp->c->n_kits; k++) {
        if (!gw_compare_shows(p->cmp, k)) continue;
        gw_brief_row row = row_of(p->cmp, k);
        int load[2];
        gw_table_cell(&t, p->cmp->c->kits[k].name);
        if (rim_loads(p->cmp, load)) rim_cell(p->cmp, k, &t);
        if (isfinite(from.s.understeer))
            gw_table_cell(&t, gw_signed(gw_unit_out(GW_UNIT_DEG, row.s.understeer), 2).s);
        if (p->cmp->ride->n) pair_cell(&t, row.s.harshness);
        if (p->cmp->ride->n) pair_cell(&t, row.noise);
        if (has_prices(p->cmp)) price_cells(&t, &row);
    }
    gw_paper_gap(p->paper);
    gw_paper_table(p->paper, &t, 2);
}

/* The load that one line speaks of: the corner, else the stop. */
static int tolerance_load(const gw_comparison *cmp)
{
    int load = gw_pick_load(cmp->c, cmp->deflect, GW_PICK_CORNER);
    return load >= 0 ? load : gw_pick_load(cmp->c, cmp->deflect, GW_PICK_STOP);
}

/* "rubber -0.82 to -0.67, poly -0.75 to -0.52": what the hardness of delivered rubber leaves open, all kits.
 */
static void tolerance_line(const gw_handling_page *p)
{
    const gw_comparison *cmp = p->cmp;
    int load = cmp->tolerance ? tolerance_load(cmp) : -1, n = 0;
    gw_axle axle = gw_summary_axle(cmp);
    gw_buf text = { 0 };
    for (int k = 0; load >= 0 && k < cmp->c->n_kits; k++) {
        const gw_tolerance_item *item = gw_tolerance_find(cmp->tolerance, k, axle, load);
        if (!item || item->failed || !item->bushes) continue;
        if (!n++) {
            gw_buf_say(&text, "Rubber %s points softer to harder (common practice), %s toe, %s",
                       gw_fixed(GW_HARDNESS_TOLERANCE, 0).s, gw_axle_name(axle), cmp->c->loads[load].name);
        }
        gw_buf_say(&text, "%s%s %s to %s", n == 1 ? ", deg: " : ", ", cmp->c->kits[k].name,
                   gw_signed(gw_unit_out(GW_UNIT_DEG, item->toe[0]), 2).s,
                   gw_signed(gw_unit_out(GW_UNIT_DEG, item->toe[1]), 2).s);
    }
    if (n) gw_buf_add(&text, ".");
    gw_paper_say_of(p->paper, 2, &text);
}

static void explain(const gw_handling_page *p)
{
    const gw_case *c = p->cmp->c;
    gw_buf text = { 0 };
    int load[2], n = rim_loads(p->cmp, load);
    for (int i = 0; i < n; i++) {
        if (!i) gw_buf_fmt(&text, "At the rim: %s, ", gw_axle_name(gw_summary_axle(p->cmp)));
        if (i) gw_buf_add(&text, "/");
        gw_buf_clean(&text, c->loads[load[i]].name);
    }
    if (n) gw_buf_add(&text, ". ");
    if (p->cmp->ride->n) gw_buf_add(&text, "Harshness, road noise: front/rear, over the first kit. ");
    size_t before = text.n;
    gw_ride_say_close(c, p->cmp->ride, &text);
    if (text.n > before) gw_buf_add(&text, " ");
    if (has_prices(p->cmp)) {
        gw_buf_say(&text, "Prices: what the kit changes, both sides; last column: those joints with new %s%s",
                   c->kits[0].name, lacks_figures(p->cmp) ? ". Plus: some parts carry no figure." : ".");
    } else
        gw_buf_add(&text, "No prices: no bush of the case has a price or fit_minutes.");
    gw_paper_say_of(p->paper, 2, &text);
}

void gw_compare_brief(const gw_handling_page *p)
{
    for (int k = 0; k < p->cmp->c->n_kits; k++)
        if (gw_compare_shows(p->cmp, k)) gw_verdict_text(p, k);
    gw_changes_text(p);
    gw_limits_text(p);
    gw_compare_loads(p);
    failed_lines(p);
    price_table(p);
    gw_shared_work_brief(p);
    tolerance_line(p);
    explain(p);
}
