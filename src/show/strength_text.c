/* SPDX-License-Identifier: MIT */
#include "show/deflect.h"

#include "format/number.h"
#include "format/table.h"
#include "giveway/units.h"
#include "record/paper.h"
#include "show/align.h"

/* A ratio in per cent, a stress to three digits. */
void gw_verdict_figure(const gw_verdict *v, double value, gw_buf *out)
{
    const gw_dimension dimension = GW_JUDGED_DIMENSIONS[v->what];
    const gw_trade_figure f = gw_trade_figure_of(v);
    gw_number figure = dimension == GW_RATIO    ? gw_fixed(100.0 * value, 0)
                       : dimension == GW_STRESS ? gw_significant(value / f.scale, 3)
                                                : gw_fixed(value / f.scale, f.decimals);
    gw_buf_fmt(out, "%s %s", figure.s, dimension == GW_RATIO ? "%" : f.unit);
}

void gw_overload_words(const gw_case *c, const gw_overload *o, gw_buf *out)
{
    const gw_joint *joint = &c->corners[o->axle].joints[o->joint];
    const gw_bush *bush = &c->bushes[c->kits[o->kit].fits[o->axle][o->joint]];
    gw_buf_say(out, "kit %s, %s %s (%s), %s: %s ", c->kits[o->kit].name, gw_axle_name(o->axle), joint->name,
               bush->name, c->loads[o->load].name, GW_JUDGED_WORDS[o->verdict.what]);
    gw_verdict_figure(&o->verdict, o->verdict.value, out);
    gw_buf_add(out, ", limit ");
    gw_verdict_figure(&o->verdict, o->verdict.limit, out);
}

/* The sources of the limits, each once. */
static void sources(const gw_strength_study *study, gw_paper *paper)
{
    for (int i = 0; i < study->n; i++) {
        if (gw_strength_names_source(study, i))
            gw_paper_say(paper, 2, "limit of %s: %s", GW_JUDGED_WORDS[study->item[i].verdict.what],
                         study->item[i].verdict.source);
    }
}

void gw_overloads_text(const gw_case *c, const gw_strength_study *study, gw_paper *paper)
{
    if (!study->n) return;
    gw_paper_heading(paper, "Beyond a limit, each under the load that is worst for it:");
    for (int i = 0; i < study->n; i++) {
        gw_buf text = { 0 };
        gw_overload_words(c, &study->item[i], &text);
        gw_paper_say_of(paper, 2, &text);
    }
    sources(study, paper);
    gw_paper_say(paper, 2,
                 "Estimates: peaks at bonded edges, voids, the uneven wall of an off-centre bush and "
                 "the number of cycles are left out.");
}

static const gw_column STRENGTH[] = {
    { .head = "joint", .side = GW_LEFT, .style = GW_WORDS },
    { .head = "strength", .side = GW_LEFT, .style = GW_WORDS },
    { .head = "peak", .side = GW_RIGHT, .style = GW_WORDS },
    { .head = "limit", .side = GW_RIGHT, .style = GW_WORDS },
    { .head = "holds", .side = GW_LEFT, .style = GW_WORDS },
};

static void figure_cell(gw_paper *paper, const gw_verdict *v, double value)
{
    gw_buf figure = { 0 };
    gw_verdict_figure(v, value, &figure);
    gw_paper_cell(paper, gw_buf_str(&figure));
    gw_buf_drop(&figure, paper->out);
}

static void add_rows(gw_paper *paper, const char *joint, const gw_strength *s)
{
    for (int i = 0; i < s->n_checks; i++) {
        gw_paper_cell(paper, i ? "" : joint);
        gw_paper_cell(paper, GW_JUDGED_WORDS[s->check[i].what]);
        figure_cell(paper, &s->check[i], s->check[i].value);
        figure_cell(paper, &s->check[i], s->check[i].limit);
        gw_paper_cell(paper, s->check[i].holds ? "yes" : "NO");
    }
}

void gw_strength_text(const gw_case *c, const gw_deflection *item, gw_paper *paper)
{
    const gw_corner *corner = &c->corners[item->axle];
    int rows = 0;
    for (int j = 0; j < corner->n_joints; j++) rows += item->strength[j].n_checks;
    if (!rows) return;
    gw_paper_gap(paper);
    gw_paper_begin(paper, NULL, STRENGTH, GW_COLUMNS(STRENGTH));
    for (int j = 0; j < corner->n_joints; j++) add_rows(paper, corner->joints[j].name, &item->strength[j]);
    gw_paper_end(paper);
}
