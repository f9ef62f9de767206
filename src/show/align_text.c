/* SPDX-License-Identifier: MIT */
/* An alignment for the workshop: what to set, what it does, what else moves, and whether the parts hold. */
#include "show/align.h"

#include "giveway/units.h"
#include "record/paper.h"

#include <math.h>
#include <stdlib.h>

static void heading(const gw_align_page *p, const gw_align_item *item)
{
    const gw_kit *kit = &p->c->kits[item->kit];
    bool labelled = kit->label && kit->label != kit->name;
    const char *side = item->side == GW_RAMP_BOTH   ? ""
                       : item->side == GW_RAMP_LEFT ? ", left side"
                                                    : ", right side";
    gw_paper_heading(p->paper, "%s corner, kit %s%s%s%s", gw_axle_name(item->axle), kit->name, side,
                     labelled ? ": " : "", labelled ? kit->label : "");
}

/* ---- what to set ---- */

static void say_limits(const gw_align_page *p, const gw_align_item *item, gw_buf *out)
{
    const gw_align *align = &p->c->align[item->axle];
    int n = 0;
    for (int a = 0; a < align->n_adjusters; a++) {
        if (!item->set[a].holds) continue;
        gw_buf_add(out, n++ ? ", " : "; held by the limit of ");
        gw_adjuster_words(&p->c->corners[item->axle], &align->adjusters[a], out);
    }
    if (!n) gw_buf_add(out, "; no adjuster moves it without giving up what comes first");
    gw_buf_add(out, ".");
}

static void say_outcome(const gw_align_page *p, const gw_align_item *item)
{
    static const char *const SENTENCE[] = { "Toe", "Camber", "Caster" }; /* in the order of gw_target */
    const gw_align *align = &p->c->align[item->axle];
    gw_buf text = { 0 };
    gw_buf_add(&text, "Target:");
    for (gw_target t = GW_TARGET_TOE; t < GW_TARGETS; t++)
        if (gw_target_given(align, t))
            gw_buf_fmt(&text, " %s %s deg,", gw_target_name(t),
                       gw_signed(gw_target_of(align, t) / GW_DEG, 2).s);
    if (align->has_caster_angle)
        gw_buf_fmt(&text, " caster %s deg,", gw_signed(align->caster_angle / GW_DEG, 2).s);
    if (text.n) text.s[text.n - 1] = '.';
    bool all = true;
    for (gw_target t = GW_TARGET_TOE; t < GW_TARGETS; t++) {
        if (item->reached[t]) continue;
        all = false;
        gw_buf_fmt(&text, " %s is missed by %s deg%s", SENTENCE[t], gw_signed(item->miss[t] / GW_DEG, 3).s,
                   item->tolerated[t] ? ", within its tolerance" : "");
        say_limits(p, item, &text);
    }
    if (all) gw_buf_add(&text, " It is reached.");
    gw_paper_say_of(p->paper, 2, &text);
}

/* As it is printed: what rounds to a full turn is none. */
static double clock_deg(const gw_bore *bore)
{
    double deg = bore->clock / GW_DEG;
    return deg < 359.95 ? deg : 0.0;
}

static void offset_cells(gw_table *t, const gw_adjustment *set)
{
    const gw_bore *bore = &set->bore;
    gw_table_cellf(t, "%s mm", gw_fixed(bore->size / GW_MM, 2).s);
    if (bore->size < 5e-6) {
        gw_table_cell(t, set->off_centre ? "the kit's bush as it is" : "a bush with its bore in the middle");
        return;
    }
    gw_table_cellf(t, "bolt at %s deg left, %s deg right, %s (clock %s deg from e1 to e2)",
                   gw_fixed(bore->mark.left / GW_DEG, 0).s, gw_fixed(bore->mark.right / GW_DEG, 0).s,
                   GW_VIEW_WORDS[bore->mark.view], gw_fixed(clock_deg(bore), 1).s);
}

static void length_cell(gw_table *t, const gw_adjuster *a, const gw_adjustment *set)
{
    const double along = set->move.along[0];
    if (fabs(along) < 0.005 * GW_MM)
        gw_table_cell(t, "as it is");
    else
        gw_table_cellf(t, "%s turns %s, %s", gw_fixed(fabs(set->turns), 2).s,
                       along < 0.0 ? "shorter" : "longer",
                       a->threads == 2 ? "opposite threads" : "single thread");
}

static void adjuster_row(gw_table *t, const gw_corner *corner, const gw_adjuster *a, const gw_adjustment *set)
{
    double along = set->move.along[0];
    gw_buf name = { 0 };
    gw_adjuster_words(corner, a, &name);
    gw_table_cell_of(t, &name);
    if (a->kind == GW_ADJUST_OFFSET) {
        offset_cells(t, set);
    } else if (a->kind == GW_ADJUST_LENGTH) {
        gw_table_cellf(t, "%s mm", gw_signed(along / GW_MM, 2).s);
        length_cell(t, a, set);
    } else {
        long count = lround(set->steps);
        gw_table_cellf(t, "%s mm", gw_signed(along / GW_MM, 2).s);
        if (count == 0)
            gw_table_cell(t, "none");
        else
            gw_table_cellf(t, "%s%ld of %s mm", count < 0 ? "take out " : "", labs(count),
                           gw_significant(a->step / GW_MM, 3).s);
    }
    gw_table_cell(t, set->at_limit ? "yes" : "");
}

static void settings(const gw_align_page *p, const gw_align_item *item, const gw_adjustment *set,
                     const char *title)
{
    const gw_align *align = &p->c->align[item->axle];
    gw_table t = { 0 };
    gw_table_heads(&t, "lrll", "adjuster", "set to", "for the fitter", "at its\nlimit");
    for (int a = 0; a < align->n_adjusters; a++)
        adjuster_row(&t, &p->c->corners[item->axle], &align->adjusters[a], &set[a]);
    gw_say_table(p->paper, title, &t);
    for (int a = 0; a < align->n_adjusters; a++) {
        gw_buf sum = { 0 };
        if (gw_adjuster_sum(p->c, item, set, a, &sum)) gw_paper_say_of(p->paper, 2, &sum);
    }
}

static void all_settings(const gw_align_page *p, const gw_align_item *item)
{
    settings(p, item, item->set,
             item->side == GW_RAMP_BOTH ? "Settings, the same on both sides" : "Settings, this side");
    for (int i = 0; i < item->n_turned; i++)
        settings(p, item, item->turned[i].set,
                 i ? "Or, the other way round, with the bush of the full eccentricity"
                   : "The same target with a bush of the full eccentricity");
}

/* ---- what each adjuster does ---- */

static void sensitivities(const gw_align_page *p, const gw_align_item *item)
{
    const gw_align *align = &p->c->align[item->axle];
    gw_table t = { 0 };
    gw_table_heads(&t, "lrrrrr", "per mm of", "camber\ndeg", "toe\ndeg", "caster\ndeg", "track\nmm",
                   "bump steer\ndeg per m");
    for (int i = 0; i < item->n_sensitivities; i++) {
        const gw_sensitivity *s = &item->sensitivity[i];
        const gw_adjuster *a = &align->adjusters[s->adjuster];
        gw_buf name = { 0 };
        gw_adjuster_words(&p->c->corners[item->axle], a, &name);
        if (a->kind == GW_ADJUST_OFFSET) gw_buf_add(&name, s->axis ? ", along e2" : ", along e1");
        gw_table_cell_of(&t, &name);
        gw_table_cells(&t, gw_signed(s->camber / GW_DEG * GW_MM, 3).s,
                       gw_signed(s->toe / GW_DEG * GW_MM, 3).s, gw_signed(s->caster / GW_DEG * GW_MM, 3).s,
                       gw_signed(2.0 * s->track, 2).s, gw_signed(s->bump_steer / GW_DEG * GW_MM, 2).s);
    }
    gw_say_table(p->paper, "What each adjuster does (both sides alike, toe not reset)", &t);
}

static void one_item(const gw_align_page *p, const gw_align_item *item)
{
    heading(p, item);
    say_outcome(p, item);
    all_settings(p, item);
    gw_align_sheet(p, item);
    sensitivities(p, item);
    gw_align_moved(p, item);
    gw_align_verdicts(p, item);
}

static void line_row(gw_table *t, const char *what, double before, double after)
{
    if (isnan(before)) return;
    gw_table_cells(t, what, gw_signed(before / GW_DEG, 2).s, gw_signed(after / GW_DEG, 2).s);
}

/* Both sides together: what a ramp shows for the axle. */
static void axle_lines(const gw_align_page *p, const gw_align_axle *a)
{
    gw_table t = { 0 };
    gw_buf title = { 0 };
    gw_table_heads(&t, "lrr", "", "before\ndeg", "after\ndeg");
    line_row(&t, "total toe", a->before.total_toe, a->after.total_toe);
    line_row(&t, "camber, left less right", a->before.camber_difference, a->after.camber_difference);
    line_row(&t, "caster, left less right", a->before.caster_difference, a->after.caster_difference);
    if (a->axle == GW_REAR)
        line_row(&t, "thrust angle, to the left positive", a->before.thrust, a->after.thrust);
    else
        line_row(&t, "steering wheel off straight, to the left positive", a->before.steering_wheel,
                 a->after.steering_wheel);
    gw_buf_say(&title, "Both sides together, %s axle, kit %s", gw_axle_name(a->axle),
               p->c->kits[a->kit].name);
    gw_say_table(p->paper, gw_buf_str(&title), &t);
    gw_buf_drop(&title, p->paper->out);
}

void gw_align_text(const gw_case *c, const void *made, gw_paper *paper)
{
    const gw_align_study *study = made;
    const gw_align_page page = { c, paper };
    gw_paper_line(paper, "%s", c->title);
    gw_buf_add(paper->out,
               "Alignment: what to set, and what else it moves. Toe-in, camber with the top outboard and\n"
               "caster with the top rearward are positive; every figure is of the corner solved as set.\n");
    for (int i = 0; i < study->n; i++) one_item(&page, &study->item[i]);
    for (int i = 0; i < study->n_axles; i++) axle_lines(&page, &study->axle_lines[i]);
    gw_paper_gap(paper);
    gw_paper_line(paper, "Order of work (common practice)");
    if (study->n_axles)
        gw_paper_say(
            paper, 2,
            "Rear first, camber before toe; then the steering wheel straight, and the front toe last.");
    for (int i = 0; gw_order_of_work(i); i++) gw_paper_say(paper, 2, "%d. %s", i + 1, gw_order_of_work(i));
    gw_say_closing(paper, GW_WORDS_STATIC_ONLY);
}
