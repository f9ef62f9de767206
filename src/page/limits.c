/* SPDX-License-Identifier: MIT */
/* For the workshop: how near to its limit every joint of every kit works. */
#include "page/sections.h"
#include "page/stand.h"
#include "page/tables.h"

#include "show/joint.h"

static void put_cell(const gw_page *p, gw_slots *cell, int kit, gw_axle axle, int joint)
{
    const gw_overload *o = gw_page_nearest(p, kit, axle, joint);
    if (!o) return;
    gw_slots_fmt(cell, "of_kit", "%d", kit);
    gw_slots_fmt(cell, "of_axle", "%d", (int)axle);
    gw_slots_flag(cell, "fails", !o->verdict.holds);
    GW_SLOTS(cell, { "figure", gw_page_figure_word(&o->verdict) },
             { "percent", gw_page_percent_of_limit(o).s });
}

static const char *joint_on_its_side(const gw_page *p, gw_axle axle, int joint)
{
    return gw_page_fmt(p, "%s%s", gw_page_joint(p, axle, joint), gw_joint_side(&p->c->corners[axle], joint));
}

static void put_beyond(const gw_page *p, gw_slots *slots, const gw_overload *o)
{
    const gw_bush *bush = &p->c->bushes[p->c->kits[o->kit].fits[o->axle][o->joint]];
    const gw_verdict *v = &o->verdict;
    gw_slots_flag(slots, "any_beyond", true);
    GW_SLOTS(gw_slots_element(slots, "all_beyond"), { "kit", gw_kit_said(p->c, o->kit) },
             { "joint", joint_on_its_side(p, o->axle, o->joint) }, { "bush", gw_page_bush(p, bush) },
             { "load", gw_page_load_said(p, o->load) }, { "what", GW_JUDGED_WORDS[v->what] },
             { "value", gw_page_verdict_said(p, v, v->value) },
             { "limit", gw_page_verdict_said(p, v, v->limit) }, { "source", v->source });
}

/* Each limit's source once. */
void gw_page_limits(const gw_page *p, gw_slots *slots)
{
    const gw_strength_study *s = &p->r->strength;
    gw_slots_flag(slots, "judges", s->n > 0);
    gw_page_joint_tables(p, slots, "near_limits", put_cell);
    for (int i = 0; i < s->n; i++) {
        const gw_verdict *v = &s->item[i].verdict;
        if (!v->holds) put_beyond(p, slots, &s->item[i]);
        if (gw_strength_names_source(s, i))
            GW_SLOTS(gw_slots_element(slots, "sources"), { "what", GW_JUDGED_WORDS[v->what] },
                     { "source", v->source });
    }
}
