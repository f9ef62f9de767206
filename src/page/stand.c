/* SPDX-License-Identifier: MIT */
/* What will stand the loads and what will not: one row a kit. */

#include "page/stand.h"
#include "page/sections.h"
#include "show/joint.h"
#include "show/deflect.h"

#include <math.h>

enum { TOLD = 3 }; /* failures that a customer reads a kit; the workshop reads all */

static bool same_place(const gw_page_failure *f, gw_axle axle, int joint)
{
    return f->axle == axle && f->joint == joint;
}

/* Left and right with the same bush are one part. */
static bool same_part(const gw_page *p, int kit, const gw_page_failure *f, gw_axle axle, int joint)
{
    const int *fits = p->c->kits[kit].fits[axle];
    return f->axle == axle && (f->joint == joint || (gw_joint_image(p->c, axle, joint) == f->joint &&
                                                     fits[joint] == fits[f->joint]));
}

static bool told(const gw_page_failures *all, gw_axle axle, int joint, gw_dimension dimension)
{
    for (int i = 0; i < all->n && i < GW_PAGE_FAILURES; i++)
        if (same_place(&all->item[i], axle, joint) &&
            GW_JUDGED_DIMENSIONS[all->item[i].verdict.what] == dimension)
            return true;
    return false;
}

static void add(const gw_page *p, int kit, gw_page_failures *all, gw_page_failure failure)
{
    bool known = false;
    for (int i = 0; i < all->n && i < GW_PAGE_FAILURES; i++)
        known = known || same_part(p, kit, &all->item[i], failure.axle, failure.joint);
    if (!known) all->joints++;
    if (all->n < GW_PAGE_FAILURES) all->item[all->n] = failure;
    all->n++;
}

/* With the adjusters set: tilts, press fits, walls; what the loads have told already is not told again. */
static void as_set(const gw_page *p, const gw_align_item *item, gw_page_failures *all)
{
    for (int i = 0; i < item->n_tilts; i++) {
        const gw_align_tilt *t = &item->tilt[i];
        gw_verdict v = gw_verdict_of(GW_JUDGED_TILT_IN_TRAVEL, t->after, GW_AT_MOST, t->limit, "");
        if (isfinite(t->after) && !v.holds)
            add(p, item->kit, all, (gw_page_failure){ item->axle, t->joint, -1, v });
    }
    for (int i = 0; i < item->n_checks; i++) {
        const gw_align_check *c = &item->check[i];
        if (!c->verdict.holds && !told(all, item->axle, c->joint, GW_JUDGED_DIMENSIONS[c->verdict.what]))
            add(p, item->kit, all, (gw_page_failure){ item->axle, c->joint, -1, c->verdict });
    }
}

gw_page_failures gw_page_failures_of(const gw_page *p, int kit)
{
    gw_page_failures all = { 0 };
    for (int i = 0; i < p->r->strength.n; i++) {
        const gw_overload *o = &p->r->strength.item[i];
        if (o->kit == kit && !o->verdict.holds && !gw_stand_is_outdone(p->c, &p->r->strength, i))
            add(p, kit, &all, (gw_page_failure){ o->axle, o->joint, o->load, o->verdict });
    }
    for (int i = 0; i < p->r->align.n; i++)
        if (p->r->align.item[i].kit == kit) as_set(p, &p->r->align.item[i], &all);
    return all;
}

static bool is_judged(const gw_page *p, int kit, gw_axle axle, int joint)
{
    if (gw_page_nearest(p, kit, axle, joint)) return true;
    for (int i = 0; i < p->r->align.n; i++) {
        const gw_align_item *item = &p->r->align.item[i];
        for (int j = 0; item->kit == kit && item->axle == axle && j < item->n_checks; j++)
            if (item->check[j].joint == joint) return true;
    }
    return false;
}

const gw_overload *gw_page_nearest(const gw_page *p, int kit, gw_axle axle, int joint)
{
    const gw_overload *most = NULL;
    for (int i = 0; i < p->r->strength.n; i++) {
        const gw_overload *o = &p->r->strength.item[i];
        if (o->kit != kit || (joint >= 0 && (o->axle != axle || o->joint != joint))) continue;
        if (!most || gw_overload_ratio(o) > gw_overload_ratio(most)) most = o;
    }
    return most;
}

gw_number gw_page_percent_of_limit(const gw_overload *o)
{
    return gw_fixed(100.0 * gw_overload_ratio(o), 0);
}

/* As short as the verdict's own text allows. */
const char *gw_page_figure_word(const gw_verdict *v)
{
    static const gw_words BRIEF[GW_JUDGED_FIGURES] = {
        [GW_JUDGED_TRAVEL_SHEAR] = GW_WORDS_PAGE_SHOP_NEAR_SHEAR,
        [GW_JUDGED_COMPRESSION] = GW_WORDS_PAGE_SHOP_NEAR_SQUEEZE,
        [GW_JUDGED_TOTAL_STRAIN] = GW_WORDS_PAGE_SHOP_NEAR_TOTAL,
        [GW_JUDGED_PEAK_LOAD] = GW_WORDS_PAGE_SHOP_NEAR_PEAK,
        [GW_JUDGED_SPECIFIC_LOAD] = GW_WORDS_PAGE_SHOP_NEAR_SPECIFIC,
    };
    return BRIEF[v->what] ? gw_words_text(BRIEF[v->what]) : GW_JUDGED_WORDS[v->what];
}

const char *gw_page_verdict_said(const gw_page *p, const gw_verdict *verdict, double value)
{
    gw_buf text = { 0 };
    gw_buf told = { 0 };
    gw_verdict_figure(verdict, value, &text);
    gw_minus_signs(&told, gw_buf_str(&text));
    gw_buf_drop(&text, &told);
    return gw_page_kept(p, &told);
}

/* "rear toe_inner, compressive strain of the wall 16 %, limit 15 %, in a 0.70 g corner" */
static void put_failure(const gw_page *p, int kit, gw_slots *row, const gw_page_failure *f, bool more)
{
    const int *fits = p->c->kits[kit].fits[f->axle];
    const bool alike = fits[gw_joint_image(p->c, f->axle, f->joint)] == fits[f->joint];
    const gw_verdict *v = &f->verdict;
    gw_slots *of = gw_slots_element(row, "failures");
    gw_slots_flag(of, "more", more);
    GW_SLOTS(of,
             { "joint", gw_page_fmt(p, "%s%s", gw_page_joint(p, f->axle, f->joint),
                                    alike ? "" : gw_joint_side(&p->c->corners[f->axle], f->joint)) },
             { "what", GW_JUDGED_WORDS[v->what] }, { "value", gw_page_verdict_said(p, v, v->value) },
             { "load", f->load >= 0 ? gw_page_load_said(p, f->load) : "" },
             { "limit", gw_page_verdict_said(p, v, v->limit) });
}

static void put_failures(const gw_page *p, int kit, gw_slots *row, const gw_page_failures *all)
{
    int most = p->wish->workshop ? GW_PAGE_FAILURES : TOLD;
    int shown = all->n < most ? all->n : most;
    gw_slots_flag(row, "fails", all->n > 0);
    for (int i = 0; i < shown; i++) put_failure(p, kit, row, &all->item[i], i > 0);
    if (all->n > shown) gw_slots_fmt(row, "left", "%d", all->n - shown);
}

/* How many joints there are; `judged` of them were judged. */
static int count_joints(const gw_page *p, int kit, int *judged)
{
    int all = 0;
    *judged = 0;
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        for (int j = 0; gw_page_has_axle(p, a) && j < p->c->corners[a].n_joints; j++) {
            all++;
            if (is_judged(p, kit, a, j)) ++*judged;
        }
    return all;
}

static void put_row(const gw_page *p, gw_slots *slots, int kit)
{
    const gw_overload *o = gw_page_nearest(p, kit, GW_FRONT, -1);
    const gw_page_failures failures = gw_page_failures_of(p, kit);
    gw_slots *row = gw_slots_element(slots, "stands");
    int judged, all = count_joints(p, kit, &judged);
    gw_page_put_kit(p, row, kit);
    gw_slots_fmt(row, "joints_beyond", "%d", failures.joints);
    gw_slots_fmt(row, "judged", "%d", judged);
    gw_slots_fmt(row, "all", "%d", all);
    put_failures(p, kit, row, &failures);
    gw_slots_flag(row, "unjudged", !judged);
    gw_slots_flag(row, "close", o && gw_overload_ratio(o) >= GW_STAND_CLOSE_FROM);
    if (o)
        GW_SLOTS(gw_slots_element(row, "nearest"), { "joint", gw_page_joint(p, o->axle, o->joint) },
                 { "percent", gw_page_percent_of_limit(o).s }, { "what", gw_page_figure_word(&o->verdict) });
}

void gw_page_stand(const gw_page *p, gw_slots *slots)
{
    for (int k = 0; k < p->c->n_kits; k++)
        if (gw_page_has_kit(p, k)) put_row(p, slots, k);
}
