/* SPDX-License-Identifier: MIT */
#include "show/strength.h"

#include "format/number.h"
#include "format/table.h"
#include "giveway/units.h"
#include "show/deflect.h"

#include <string.h>

void gw_verdict_figure(const gw_verdict *v, double value, gw_buf *out)
{
    if (strcmp(v->unit, "-") == 0)
        gw_buf_fmt(out, "%s %%", gw_fixed(100.0 * value, 0).s);
    else if (strcmp(v->unit, "Pa") == 0)
        gw_buf_fmt(out, "%s MPa", gw_significant(value / GW_MPA, 3).s);
    else if (strcmp(v->unit, "m") == 0)
        gw_buf_fmt(out, "%s mm", gw_fixed(value / GW_MM, 2).s);
    else if (strcmp(v->unit, "rad") == 0)
        gw_buf_fmt(out, "%s deg", gw_fixed(value / GW_DEG, 1).s);
    else
        gw_buf_fmt(out, "%s %s", gw_fixed(value, 0).s, v->unit);
}

void gw_overload_words(const gw_case *c, const gw_overload *o, gw_buf *out)
{
    const gw_joint *joint = &c->corners[o->axle].joints[o->joint];
    const gw_bush *bush = &c->bushes[c->kits[o->kit].fits[o->axle][o->joint]];
    gw_buf_add(out, "kit ");
    gw_buf_clean(out, c->kits[o->kit].name);
    gw_buf_fmt(out, ", %s ", gw_axle_name(o->axle));
    gw_buf_clean(out, joint->name);
    gw_buf_add(out, " (");
    gw_buf_clean(out, bush->name);
    gw_buf_add(out, "), ");
    gw_buf_clean(out, c->loads[o->load].name);
    gw_buf_fmt(out, ": %s ", o->verdict.what);
    gw_verdict_figure(&o->verdict, o->verdict.value, out);
    gw_buf_add(out, ", limit ");
    gw_verdict_figure(&o->verdict, o->verdict.limit, out);
}

/* The sources of the limits, each once. */
static void sources(const gw_strength_study *study, int width, gw_buf *out)
{
    for (int i = 0; i < study->n; i++) {
        if (!gw_strength_names_source(study, i)) continue;
        gw_buf text = { 0 };
        gw_buf_fmt(&text, "limit of %s: %s", study->item[i].verdict.what, study->item[i].verdict.source);
        gw_buf_paragraph(out, gw_buf_str(&text), width, 2);
        if (text.failed) out->failed = true;
        gw_buf_free(&text);
    }
}

void gw_overloads_text(const gw_case *c, const gw_strength_study *study, int width, bool bold, gw_buf *out)
{
    if (!study->n) return;
    gw_buf_fmt(out, "\n%sBeyond a limit%s, each under the load that is worst for it:\n",
               bold ? "\033[1m" : "", bold ? "\033[0m" : "");
    for (int i = 0; i < study->n; i++) {
        gw_buf text = { 0 };
        gw_overload_words(c, &study->item[i], &text);
        gw_buf_paragraph(out, gw_buf_str(&text), width, 2);
        if (text.failed) out->failed = true;
        gw_buf_free(&text);
    }
    sources(study, width, out);
    gw_buf_paragraph(out,
                     "Estimates: peaks at bonded edges, voids, the uneven wall of an off-centre bush and "
                     "the number of cycles are left out.",
                     width, 2);
}

static void add_rows(gw_table *table, const char *joint, const gw_strength *s)
{
    for (int i = 0; i < s->n_checks; i++) {
        gw_buf value = { 0 }, limit = { 0 };
        gw_verdict_figure(&s->check[i], s->check[i].value, &value);
        gw_verdict_figure(&s->check[i], s->check[i].limit, &limit);
        gw_table_cell(table, i ? "" : joint);
        gw_table_cell(table, s->check[i].what);
        gw_table_cell(table, gw_buf_str(&value));
        gw_table_cell(table, gw_buf_str(&limit));
        gw_table_cell(table, s->check[i].holds ? "yes" : "NO");
        if (value.failed || limit.failed) table->failed = true;
        gw_buf_free(&value);
        gw_buf_free(&limit);
    }
}

gw_status gw_strength_text(const gw_case *c, const gw_deflection *item, int width, bool bold, gw_buf *out,
                           gw_error *err)
{
    const gw_corner *corner = &c->corners[item->axle];
    gw_table table = { 0 };
    gw_status status = GW_OK;
    int rows = 0;
    gw_table_column(&table, GW_LEFT, "joint");
    gw_table_column(&table, GW_LEFT, "strength");
    gw_table_column(&table, GW_RIGHT, "peak");
    gw_table_column(&table, GW_RIGHT, "limit");
    gw_table_column(&table, GW_LEFT, "holds");
    for (int j = 0; j < corner->n_joints; j++) {
        gw_strength s = gw_strength_of(c, item, j);
        rows += s.n_checks;
        add_rows(&table, corner->joints[j].name, &s);
    }
    if (rows) {
        gw_buf_add(out, "\n");
        status = gw_table_print(&table, width, 2, bold, out, err);
    }
    gw_table_free(&table);
    return status;
}
