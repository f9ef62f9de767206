/* SPDX-License-Identifier: MIT */
/* For the workshop: what each adjuster is set to, whether the parts fit and hold, and the order of work. */
#include "page/sections.h"

#include "giveway/units.h"
#include "show/align.h"
#include "show/joint.h"

#include <math.h>

/* A table of one axle of one kit. */
static gw_slots *table_of(const gw_page *p, gw_slots *slots, const char *list, const gw_align_item *item)
{
    gw_slots *table = gw_slots_element(slots, list);
    gw_page_put_kit(p, table, item->kit);
    gw_slots_text(table, "axle", gw_page_axle(item->axle));
    return table;
}

static void put_offset(gw_slots *row, const gw_adjustment *set)
{
    const gw_bore *bore = &set->bore;
    if (bore->size < 0.005 * GW_MM) {
        gw_slots_flag(row, set->off_centre ? "own" : "centred", true);
        return;
    }
    GW_SLOTS(gw_slots_element(row, "mark"), { "size", gw_fixed(bore->size / GW_MM, 2).s },
             { "left", gw_fixed(bore->mark.left / GW_DEG, 0).s },
             { "right", gw_fixed(bore->mark.right / GW_DEG, 0).s },
             { "view", GW_VIEW_WORDS[bore->mark.view] });
}

static void put_length(gw_slots *row, const gw_adjustment *set)
{
    const double along = set->move.along[0];
    gw_slots *length = gw_slots_element(row, "length");
    gw_slots_figure(length, "change", gw_signed(along / GW_MM, 2), "\xC2\xA0mm");
    if (fabs(along) >= 0.005 * GW_MM)
        gw_slots_text(length, along > 0.0 ? "longer" : "shorter", gw_fixed(fabs(set->turns), 2).s);
}

static void put_shims(gw_slots *row, double count, double step)
{
    gw_slots *shims = gw_slots_element(row, "shims");
    gw_slots_text(shims, "step", gw_significant(step / GW_MM, 3).s);
    if (count != 0.0) gw_slots_text(shims, count > 0.0 ? "put_in" : "take_out", gw_fixed(fabs(count), 0).s);
}

/* What is set is set on both sides alike, so no side is named. */
static void put_name(const gw_corner *corner, gw_slots *row, const gw_adjuster *a)
{
    const bool length = a->kind == GW_ADJUST_LENGTH;
    const char *label = length ? NULL : corner->joints[a->joint].label;
    gw_buf part = { 0 }, name = { 0 };
    if (label)
        gw_buf_add(&part, label);
    else
        gw_name_in_words(length ? gw_body_as_written(corner, a->body) : gw_joint_as_written(corner, a->joint),
                         &part);
    gw_adjuster_say(a, gw_buf_str(&part), &name);
    gw_buf_drop(&part, &name);
    gw_slots_take(row, "name", &name);
}

static void put_adjuster(const gw_corner *corner, gw_slots *table, const gw_adjuster *a,
                         const gw_adjustment *set)
{
    gw_slots *row = gw_slots_element(table, "adjusters");
    put_name(corner, row, a);
    if (a->kind == GW_ADJUST_OFFSET) put_offset(row, set);
    if (a->kind == GW_ADJUST_LENGTH) put_length(row, set);
    if (a->kind == GW_ADJUST_SHIM) put_shims(row, set->steps, a->step);
    gw_slots_flag(row, "at_limit", set->at_limit);
}

static void put_set(const gw_page *p, gw_slots *slots, const gw_align_item *item)
{
    const gw_align *align = &p->c->align[item->axle];
    gw_slots *table = table_of(p, slots, "set_to", item);
    for (int i = 0; i < align->n_adjusters; i++) {
        gw_buf sum = { 0 };
        put_adjuster(&p->c->corners[item->axle], table, &align->adjusters[i], &item->set[i]);
        if (gw_adjuster_sum(p->c, item, item->set, i, &sum))
            gw_slots_signed_text(gw_slots_element(table, "sums"), "sum", gw_buf_str(&sum));
        gw_buf_drop(&sum, p->out);
    }
}

/* ---- does it fit and hold ---- */

static void put_verdict(gw_slots *table, const char *joint, const gw_verdict *v)
{
    gw_trade_figure f = gw_trade_figure_of(v);
    gw_slots *row = gw_slots_element(table, "verdicts");
    GW_SLOTS(row, { "joint", joint }, { "what", GW_JUDGED_WORDS[v->what] }, { "unit", f.unit });
    gw_slots_figure(row, "value", gw_fixed(v->value / f.scale, f.decimals), "");
    gw_slots_figure(row, "limit", gw_fixed(v->limit / f.scale, f.decimals), "");
    gw_slots_flag(row, "at_most", v->bound == GW_AT_MOST);
    gw_slots_flag(row, "holds", v->holds);
}

static void put_verdicts(const gw_page *p, gw_slots *slots, const gw_align_item *item)
{
    if (!item->n_tilts && !item->n_checks) return;
    gw_slots *table = table_of(p, slots, "judged_as_set", item);
    for (int i = 0; i < item->n_tilts; i++) {
        const gw_align_tilt *t = &item->tilt[i];
        gw_verdict v = gw_verdict_of(GW_JUDGED_TILT_IN_TRAVEL, t->after, GW_AT_MOST, t->limit, "");
        put_verdict(table, gw_page_joint_of_table(p, item->axle, t->joint), &v);
    }
    for (int i = 0; i < item->n_checks; i++)
        put_verdict(table, gw_page_joint_of_table(p, item->axle, item->check[i].joint),
                    &item->check[i].verdict);
}

void gw_page_settings(const gw_page *p, gw_slots *slots)
{
    const gw_align_study *study = &p->r->align;
    for (int i = 0; gw_order_of_work(i); i++)
        gw_slots_text(gw_slots_element(slots, "order"), "step", gw_order_of_work(i));
    for (int i = 0; i < study->n; i++) {
        put_set(p, slots, &study->item[i]);
        put_verdicts(p, slots, &study->item[i]);
    }
}
