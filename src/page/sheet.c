/* SPDX-License-Identifier: MIT */
/* The alignment sheet: what each kit leaves, and what it can be set to. */
#include "page/sections.h"

static bool can_set(const gw_page *p, gw_axle axle)
{
    for (int i = 0; i < p->r->align.n; i++)
        if (p->r->align.item[i].axle == axle) return true;
    return false;
}

static const char *const ANGLES[GW_TARGETS] = {
    [GW_TARGET_TOE] = "toe", [GW_TARGET_CAMBER] = "camber", [GW_TARGET_CASTER] = "caster"
};

static void put_target(const gw_page *p, gw_slots *of, bool *more, const char *what, double angle)
{
    gw_slots *target = gw_slots_element(of, "targets");
    gw_slots_flag(target, "more", *more);
    gw_slots_flag(target, what, true);
    gw_slots_text(target, "angle", gw_page_angle_said(p, angle, true));
    *more = true;
}

/* "Front wheels aim at toe +0.10°, camber -1.90°" */
static void put_axle(const gw_page *p, gw_slots *slots, gw_axle axle)
{
    const gw_align *align = &p->c->align[axle];
    gw_slots *of = gw_slots_element(slots, "set_axles");
    bool more = false;
    gw_slots_text(of, "axle", gw_page_wheel_of(axle));
    for (gw_target t = GW_TARGET_TOE; t < GW_TARGETS; t++)
        if (gw_target_given(align, t)) put_target(p, of, &more, ANGLES[t], gw_target_of(align, t));
    if (align->has_caster_angle) put_target(p, of, &more, "caster_angle", align->caster_angle);
}

static const char *verdict_of(const gw_align_item *item)
{
    const char *word = "reached";
    for (gw_target t = GW_TARGET_TOE; t < GW_TARGETS; t++) {
        if (item->reached[t]) continue;
        if (!item->tolerated[t]) return "missed";
        word = "tolerated";
    }
    return word;
}

/* As fitted, as set. */
static void put_cells(const gw_page *p, gw_slots *row, const gw_align_item *item)
{
    const gw_corner_setting *before = &item->before.setting, *after = &item->after.setting;
    gw_slots *cells = gw_slots_element(row, "cells");
    GW_SLOTS(cells, { "camber", gw_page_angle_said(p, before->camber, true) },
             { "camber_set", gw_page_angle_said(p, after->camber, true) },
             { "toe", gw_page_angle_said(p, before->toe, true) },
             { "toe_set", gw_page_angle_said(p, after->toe, true) });
    gw_slots_flag(cells, verdict_of(item), true);
}

/* The side is named where the sides were measured; what was not stands in both rows. */
static void put_row(const gw_page *p, gw_slots *slots, int kit, gw_ramp_side side)
{
    gw_slots *row = gw_slots_element(slots, "aligned");
    gw_page_put_kit(p, row, kit);
    gw_slots_flag(row, "left", side == GW_RAMP_LEFT);
    gw_slots_flag(row, "right", side == GW_RAMP_RIGHT);
    for (int i = 0; i < p->r->align.n; i++) {
        const gw_align_item *item = &p->r->align.item[i];
        if (item->kit == kit && (item->side == side || item->side == GW_RAMP_BOTH)) put_cells(p, row, item);
    }
}

void gw_page_sheet(const gw_page *p, gw_slots *slots)
{
    const bool sides = p->r->align.n_axles > 0;
    gw_slots_flag(slots, "aligns", p->r->align.n > 0);
    gw_slots_flag(slots, "sides", sides);
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        if (can_set(p, a)) put_axle(p, slots, a);
    for (int k = 0; k < p->c->n_kits && p->r->align.n; k++)
        for (int side = sides; gw_page_has_kit(p, k) && side <= 2 * sides; side++)
            put_row(p, slots, k, (gw_ramp_side)side);
}
