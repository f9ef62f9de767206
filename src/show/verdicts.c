/* SPDX-License-Identifier: MIT */
#include "show/handling.h"

#include "format/number.h"
#include "giveway/pick.h"
#include "record/unit.h"
#include "show/bands.h"
#include "show/deflect.h"
#include "show/phrase.h"

#include <math.h>

enum { FAILURES = 2, CHANGES = 6 }; /* told in a sentence; the rest is counted */

/* "front upper arm, front bush", or "front upper_front" where the joint has no label. */
static void say_joint(const gw_case *c, gw_axle axle, int joint, gw_buf *out)
{
    const gw_joint *j = &c->corners[axle].joints[joint];
    if (!j->label) gw_buf_fmt(out, "%s ", gw_axle_name(axle));
    gw_buf_clean(out, j->label ? j->label : j->name);
}

static const char *way(double angle, bool camber)
{
    if (fabs(gw_unit_out(GW_UNIT_DEG, angle)) < 0.005) return "";
    if (camber) return angle < 0.0 ? "top in " : "top out ";
    return angle < 0.0 ? "out " : "in ";
}

static void say_angle(double to, double from, bool camber, gw_buf *out)
{
    gw_buf_fmt(out, "%s%s deg", way(to, camber), gw_fixed(gw_unit_out(GW_UNIT_DEG, fabs(to)), 2).s);
    if (!isfinite(from)) return;
    gw_buf_fmt(out, " instead of %s%s", to * from < 0.0 ? way(from, camber) : "",
               gw_fixed(gw_unit_out(GW_UNIT_DEG, fabs(from)), 2).s);
}

/* "rear camber, trail braking" */
static void say_where(const gw_case *c, const gw_reversal *t, gw_buf *out)
{
    gw_buf_say(out, "%s %s, %s", gw_axle_name(t->axle), t->camber ? "camber" : "toe", c->loads[t->load].name);
}

/* "rear toe in a 0.90 g corner: out 0.09 deg instead of in 0.14" */
static void say_reversal(const gw_case *c, const gw_reversal *t, gw_buf *out)
{
    say_where(c, t, out);
    gw_buf_add(out, ": ");
    say_angle(t->to, t->from, t->camber, out);
}

/* "rear toe link, inner bush: compressive strain of the wall 16 %, limit 15 %, in a 0.70 g corner" */
static void say_failure(const gw_case *c, const gw_overload *o, gw_buf *out)
{
    say_joint(c, o->axle, o->joint, out);
    gw_buf_fmt(out, ": %s ", GW_JUDGED_WORDS[o->verdict.what]);
    gw_verdict_figure(&o->verdict, o->verdict.value, out);
    gw_buf_add(out, ", limit ");
    gw_verdict_figure(&o->verdict, o->verdict.limit, out);
    gw_buf_add(out, ", ");
    gw_phrase_load(&c->loads[o->load], out);
}

/* What is furthest beyond its limit of those that are not told yet; NULL: no more. Alike: as in the list. */
static const gw_overload *next_worst(const gw_comparison *cmp, int kit, const gw_overload *const *told, int n)
{
    const gw_overload *worst = NULL;
    for (int i = 0; i < cmp->strength->n; i++) {
        const gw_overload *o = &cmp->strength->item[i];
        bool known = o->kit != kit || o->verdict.holds || gw_stand_is_told(cmp->c, cmp->strength, i);
        for (int k = 0; k < n; k++) known = known || told[k] == o;
        if (!known && (!worst || gw_overload_ratio(o) > gw_overload_ratio(worst))) worst = o;
    }
    return worst;
}

static int count_failures(const gw_comparison *cmp, int kit)
{
    int n = 0;
    for (int i = 0; i < cmp->strength->n; i++) {
        const gw_overload *o = &cmp->strength->item[i];
        n += o->kit == kit && !o->verdict.holds && !gw_stand_is_told(cmp->c, cmp->strength, i);
    }
    return n;
}

static void say_failures(const gw_comparison *cmp, int kit, gw_buf *out)
{
    const gw_overload *told[FAILURES];
    int n = 0, all = count_failures(cmp, kit);
    gw_buf_add(out, " WILL NOT STAND THE LOADS: ");
    for (const gw_overload *o; n < FAILURES && (o = next_worst(cmp, kit, told, n)); told[n++] = o) {
        if (n) gw_buf_add(out, "; ");
        say_failure(cmp->c, o, out);
    }
    if (all > n) gw_buf_fmt(out, "; and %d more (--detail)", all - n);
    gw_buf_add(out, ".");
}

/* "out 0.63 deg in hard stop" of the first kit shown; of the others what they change of it: "33 % less in
 * hard stop", or where it turns the other way both. */
static void say_toe(const gw_comparison *cmp, const gw_deflection *of, gw_buf *out)
{
    const gw_deflection *from = gw_deflect_find(cmp->deflect, cmp->baseline, of->axle, of->load);
    double to = of->result.toe_change, base = from ? from->result.toe_change : (double)NAN;
    bool compares = of->kit != cmp->baseline && fabs(base) >= GW_REVERSAL_LEAST && to * base > 0.0;
    bool nothing = of->kit != cmp->baseline && !*way(to, false) && !*way(base, false);
    double more = 100.0 * (fabs(to) / fabs(base) - 1.0);
    if (nothing)
        gw_buf_add(out, "as much");
    else if (!compares)
        say_angle(to, of->kit == cmp->baseline ? (double)NAN : base, false, out);
    else if (fabs(more) < 0.5)
        gw_buf_add(out, "as much");
    else
        gw_buf_fmt(out, "%s %% %s", gw_fixed(fabs(more), 0).s, more < 0.0 ? "less" : "more");
    gw_buf_say(out, " in %s", cmp->c->loads[of->load].name);
    bool differs = !nothing && !(compares && fabs(more) < 0.5);
    bool open = compares ? gw_band_is_close(cmp->bands, of) : gw_band_may_be_same(cmp->bands, of);
    if (differs && open) gw_buf_add(out, " (too close to call)");
}

static void say_toe_of(const gw_comparison *cmp, int kit, int load, bool *any, gw_buf *out)
{
    gw_axle axle = gw_summary_axle(cmp);
    const gw_deflection *of = load < 0 ? NULL : gw_deflect_find(cmp->deflect, kit, axle, load);
    if (!of) return;
    if (*any)
        gw_buf_add(out, ", ");
    else
        gw_buf_fmt(out, " %s toe ", gw_axle_name(axle));
    *any = true;
    say_toe(cmp, of, out);
}

static void say_toes(const gw_comparison *cmp, int kit, gw_buf *out)
{
    int stop = gw_pick_load(cmp->c, cmp->deflect, GW_PICK_STOP);
    int corner = gw_pick_load(cmp->c, cmp->deflect, GW_PICK_CORNER);
    bool any = false;
    say_toe_of(cmp, kit, stop, &any, out);
    if (corner != stop) say_toe_of(cmp, kit, corner, &any, out);
    for (int l = 0; !any && l < cmp->c->n_loads; l++) say_toe_of(cmp, kit, l, &any, out);
    if (any) gw_buf_add(out, ".");
}

/* Toe-out that the rear gains is a warning of this kit. */
static void say_warnings(const gw_comparison *cmp, int kit, gw_buf *out)
{
    int warned = 0;
    for (int l = 0; l < cmp->c->n_loads; l++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            const gw_deflection *of = gw_deflect_find(cmp->deflect, kit, a, l);
            gw_reversal t;
            if (!of || !gw_reversal_at(cmp->c, cmp->deflect, cmp->baseline, of, false, &t) || !t.warns)
                continue;
            gw_buf_add(out, warned++ ? "; " : " WARNING, toe-out gained: ");
            say_reversal(cmp->c, &t, out);
        }
    if (warned) gw_buf_add(out, ".");
}

static void say_critical(const gw_handling_page *p, int kit, gw_buf *out)
{
    gw_summary s = gw_summary_of(p->cmp, kit);
    if (isfinite(s.critical_speed))
        gw_buf_fmt(out, " WARNING, the car oversteers and is unstable above %s km/h (critical speed).",
                   gw_fixed(gw_unit_out(GW_UNIT_KM_H, s.critical_speed), 0).s);
}

static void say_pull(const gw_handling_page *p, int kit, gw_buf *out)
{
    const gw_handling_study *h = p->cmp->handling;
    double pull = gw_braking_pull(h, kit);
    if (pull != 0.0)
        gw_buf_fmt(
            out,
            " WARNING, the sides of the car are unlike: it pulls %s m to the %s in a %s g stop from %s km/h, "
            "brakes alike, steering held.",
            gw_fixed(fabs(pull), 2).s, gw_phrase_pulled(pull), gw_fixed(GW_FIRM_STOP, 1).s,
            gw_fixed(gw_unit_out(GW_UNIT_KM_H, h->speed), 0).s);
}

void gw_verdict_text(const gw_handling_page *p, int kit)
{
    const gw_comparison *cmp = p->cmp;
    gw_buf text = { 0 };
    gw_buf_say(&text, "%s (%s):", cmp->c->kits[kit].name, gw_kit_said(cmp->c, kit));
    say_toes(cmp, kit, &text);
    say_warnings(cmp, kit, &text);
    say_critical(p, kit, &text);
    say_pull(p, kit, &text);
    if (gw_stand_of(cmp->c, cmp->deflect, cmp->peaks, kit).state == GW_STAND_BEYOND)
        say_failures(cmp, kit, &text);
    gw_paper_say_of(p->paper, 2, &text);
}

/* ---- all kits in one line ---- */

/* "rear camber, trail braking (poly, mixed)": one angle under one load with every kit whose change it is;
 * what is a warning stands with its kit. */
static bool say_change(const gw_comparison *cmp, gw_axle axle, int load, bool camber, const char *before,
                       gw_buf *out)
{
    int told = 0;
    for (int k = 0; k < cmp->c->n_kits; k++) {
        const gw_deflection *of = gw_deflect_find(cmp->deflect, k, axle, load);
        gw_reversal t;
        if (!of || !gw_reversal_at(cmp->c, cmp->deflect, cmp->baseline, of, camber, &t) || t.warns) continue;
        if (!told) gw_buf_add(out, before);
        if (!told) say_where(cmp->c, &t, out);
        gw_buf_say(out, "%s%s", told++ ? ", " : " (", cmp->c->kits[k].name);
    }
    gw_buf_add(out, told ? ")" : "");
    return told;
}

void gw_changes_text(const gw_handling_page *p)
{
    const gw_comparison *cmp = p->cmp;
    gw_buf text = { 0 }, rest = { 0 };
    int told = 0, all = 0;
    gw_buf_say(&text, "Changes side against %s", cmp->c->kits[cmp->baseline].name);
    for (int l = 0; l < cmp->c->n_loads; l++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
            for (int camber = 0; camber < 2; camber++) {
                bool here = told < CHANGES || cmp->detail;
                if (!say_change(cmp, a, l, camber, told ? "; " : ": ", here ? &text : &rest)) continue;
                told += here;
                all++;
            }
    if (all > told) gw_buf_fmt(&text, "; and %d more (--detail)", all - told);
    gw_buf_add(&text, ".");
    if (all) gw_paper_say(p->paper, 2, "%s", gw_buf_str(&text));
    gw_buf_drop(&text, p->paper->out);
    gw_buf_drop(&rest, p->paper->out);
}

static int percent_of(const gw_stand *s)
{
    return (int)lround(100.0 * gw_overload_ratio(s->nearest));
}

/* "rear trailing link, rear bush at 87 % (mixed, camber)": kits that share it are told together, once. */
static bool say_nearest(const gw_comparison *cmp, int kit, const char *before, gw_buf *out)
{
    int told = 0;
    gw_stand of = gw_stand_of(cmp->c, cmp->deflect, cmp->peaks, kit);
    for (int k = 0; k < cmp->c->n_kits; k++) {
        gw_stand s = gw_stand_of(cmp->c, cmp->deflect, cmp->peaks, k);
        if (!gw_compare_shows(cmp, k) || s.state != of.state ||
            !gw_stand_same_joint(cmp->c, s.nearest, of.nearest) || percent_of(&s) != percent_of(&of))
            continue;
        if (k < kit) return false;
        if (!told) {
            gw_buf_add(out, before);
            say_joint(cmp->c, s.nearest->axle, s.nearest->joint, out);
            gw_buf_fmt(out, " at %d %%", percent_of(&s));
        }
        gw_buf_say(out, "%s%s", told++ ? ", " : " (", cmp->c->kits[k].name);
    }
    gw_buf_add(out, ")");
    return true;
}

/* All kits of one state: "CLOSE: ...; .... " */
static void say_state(const gw_comparison *cmp, gw_stand_state state, const char *head, gw_buf *out)
{
    int told = 0;
    for (int k = 0; k < cmp->c->n_kits; k++) {
        if (!gw_compare_shows(cmp, k) || gw_stand_of(cmp->c, cmp->deflect, cmp->peaks, k).state != state)
            continue;
        if (say_nearest(cmp, k, told ? "; " : head, out)) told++;
    }
    if (told) gw_buf_add(out, ".");
}

/* Kits of which no joint could be judged. */
static void say_unknown(const gw_comparison *cmp, gw_buf *out)
{
    int told = 0;
    for (int k = 0; k < cmp->c->n_kits; k++) {
        if (!gw_compare_shows(cmp, k) ||
            gw_stand_of(cmp->c, cmp->deflect, cmp->peaks, k).state != GW_STAND_UNKNOWN)
            continue;
        gw_buf_say(out, "%s%s",
                   told++   ? ", "
                   : out->n ? " No joint could be judged: "
                            : "No joint could be judged: ",
                   cmp->c->kits[k].name);
    }
    if (told) gw_buf_add(out, ".");
}

static int count_state(const gw_comparison *cmp, gw_stand_state state)
{
    int n = 0;
    for (int k = 0; k < cmp->c->n_kits; k++)
        n += gw_compare_shows(cmp, k) && gw_stand_of(cmp->c, cmp->deflect, cmp->peaks, k).state == state;
    return n;
}

/* "Joints not judged: rubber 11, poly 18. " */
static void say_rests(const gw_comparison *cmp, gw_buf *out)
{
    int told = 0;
    for (int k = 0; k < cmp->c->n_kits; k++) {
        gw_stand s = gw_stand_of(cmp->c, cmp->deflect, cmp->peaks, k);
        if (!gw_compare_shows(cmp, k) || s.joints == s.judged) continue;
        gw_buf_say(out, "%s%s %d",
                   told++   ? ", "
                   : out->n ? " Joints not judged: "
                            : "Joints not judged: ",
                   cmp->c->kits[k].name, s.joints - s.judged);
    }
    if (told) gw_buf_add(out, ".");
}

/* What it takes to judge them. */
static void say_remedy(const gw_comparison *cmp, gw_buf *out)
{
    bool rates = false, balls = false;
    for (int k = 0; k < cmp->c->n_kits; k++) {
        gw_stand s = gw_stand_of(cmp->c, cmp->deflect, cmp->peaks, k);
        if (!gw_compare_shows(cmp, k)) continue;
        rates = rates || s.by_rates;
        balls = balls || s.ball_joints;
    }
    if (rates) gw_buf_add(out, " Give their bushes by size and material instead of rates.");
    if (balls) gw_buf_add(out, " Limits of ball joints: ask their maker.");
}

void gw_limits_text(const gw_handling_page *p)
{
    const gw_comparison *cmp = p->cmp;
    gw_buf text = { 0 };
    int beyond = count_state(cmp, GW_STAND_BEYOND);
    if (count_state(cmp, GW_STAND_CLOSE) + count_state(cmp, GW_STAND_WITHIN) > 0)
        gw_buf_fmt(&text, "Nothing %sjudged is beyond its limit.", beyond ? "else " : "");
    say_state(cmp, GW_STAND_CLOSE, " CLOSE: ", &text);
    say_state(cmp, GW_STAND_WITHIN, " Nearest: ", &text);
    say_unknown(cmp, &text);
    say_rests(cmp, &text);
    say_remedy(cmp, &text);
    gw_paper_say_of(p->paper, 2, &text);
}
