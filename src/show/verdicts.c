/* SPDX-License-Identifier: MIT */
#include "show/verdicts.h"

#include "format/number.h"
#include "giveway/pick.h"
#include "giveway/units.h"
#include "show/deflect.h"
#include "show/phrase.h"
#include "show/strength.h"

#include <math.h>

enum { TURNS = 3, FAILURES = 2 }; /* told in a sentence; the rest is counted */

void gw_phrase_joint(const gw_case *c, gw_axle axle, int joint, gw_buf *out)
{
    const gw_joint *j = &c->corners[axle].joints[joint];
    if (!j->label) gw_buf_fmt(out, "%s ", gw_axle_name(axle));
    gw_buf_clean(out, j->label ? j->label : j->name);
}

static const char *way(double angle, bool camber)
{
    if (fabs(angle) < 0.005 * GW_DEG) return "";
    if (camber) return angle < 0.0 ? "top in " : "top out ";
    return angle < 0.0 ? "out " : "in ";
}

static void say_angle(double to, double from, bool camber, gw_buf *out)
{
    gw_buf_fmt(out, "%s%s deg", way(to, camber), gw_fixed(fabs(to) / GW_DEG, 2).s);
    if (!isfinite(from)) return;
    gw_buf_fmt(out, " instead of %s%s", to * from < 0.0 ? way(from, camber) : "",
               gw_fixed(fabs(from) / GW_DEG, 2).s);
}

/* "rear camber, trail braking" */
static void say_where(const gw_case *c, const gw_reversal *t, gw_buf *out)
{
    gw_buf_fmt(out, "%s %s, ", gw_axle_name(t->axle), t->camber ? "camber" : "toe");
    gw_buf_clean(out, c->loads[t->load].name);
}

void gw_phrase_reversal(const gw_case *c, const gw_reversal *t, gw_buf *out)
{
    say_where(c, t, out);
    gw_buf_add(out, ": ");
    say_angle(t->to, t->from, t->camber, out);
}

void gw_phrase_stand(const gw_case *c, const gw_stand *s, gw_buf *out)
{
    if (s->state == GW_STAND_UNKNOWN) {
        gw_buf_add(out, "no joint could be judged");
        return;
    }
    const gw_overload *o = s->nearest;
    gw_buf_add(out,
               s->state == GW_STAND_BEYOND ? "beyond a limit: " : "nothing judged is beyond its limit; ");
    if (s->state == GW_STAND_CLOSE) gw_buf_add(out, "CLOSE: ");
    if (s->state == GW_STAND_WITHIN) gw_buf_add(out, "nearest ");
    gw_phrase_joint(c, o->axle, o->joint, out);
    gw_buf_fmt(out, " at %s %%", gw_fixed(100.0 * gw_overload_ratio(o), 0).s);
}

/* "rear toe link, inner bush: compressive strain of the wall 16 %, limit 15 %, in a 0.70 g corner" */
static void say_failure(const gw_case *c, const gw_overload *o, gw_buf *out)
{
    gw_phrase_joint(c, o->axle, o->joint, out);
    gw_buf_fmt(out, ": %s ", GW_JUDGED_WORDS[o->verdict.what]);
    gw_verdict_figure(&o->verdict, o->verdict.value, out);
    gw_buf_add(out, ", limit ");
    gw_verdict_figure(&o->verdict, o->verdict.limit, out);
    gw_buf_add(out, ", ");
    gw_phrase_load(&c->loads[o->load], out);
}

static void say_failures(const gw_comparison *cmp, int kit, gw_buf *out)
{
    int told = 0, all = 0;
    gw_buf_add(out, "WILL NOT STAND THE LOADS: ");
    for (int i = 0; i < cmp->strength->n; i++) {
        const gw_overload *o = &cmp->strength->item[i];
        if (o->kit != kit || o->verdict.holds) continue;
        if (all++ >= FAILURES) continue;
        if (told++) gw_buf_add(out, "; ");
        say_failure(cmp->c, o, out);
    }
    if (all > told) gw_buf_fmt(out, "; and %d more (--detail)", all - told);
}

static void say_toe(const gw_handling_page *p, int kit, gw_axle axle, int load, bool *any, gw_buf *out)
{
    const gw_comparison *cmp = p->cmp;
    const gw_deflection *of = load < 0 ? NULL : gw_deflect_find(cmp->deflect, kit, axle, load);
    const gw_deflection *from = load < 0 ? NULL : gw_deflect_find(cmp->deflect, cmp->baseline, axle, load);
    if (!of) return;
    if (*any)
        gw_buf_add(out, "; ");
    else
        gw_buf_fmt(out, "%s toe, ", gw_axle_name(axle));
    *any = true;
    gw_buf_clean(out, cmp->c->loads[load].name);
    gw_buf_add(out, ": ");
    say_angle(of->result.toe_change, kit == cmp->baseline || !from ? (double)NAN : from->result.toe_change,
              false, out);
}

static void say_toes(const gw_handling_page *p, int kit, gw_buf *out)
{
    gw_axle axle = gw_summary_axle(p->cmp);
    int stop = gw_pick_load(p->cmp->c, p->cmp->deflect, GW_PICK_STOP);
    int corner = gw_pick_load(p->cmp->c, p->cmp->deflect, GW_PICK_CORNER);
    bool any = false;
    say_toe(p, kit, axle, stop, &any, out);
    if (corner != stop) say_toe(p, kit, axle, corner, &any, out);
    for (int l = 0; !any && l < p->cmp->c->n_loads; l++) say_toe(p, kit, axle, l, &any, out);
    if (any) gw_buf_add(out, ". ");
}

/* The front's turn under the two loads is in the sentence already. */
static void say_turns(const gw_handling_page *p, int kit, gw_buf *out)
{
    gw_reversal turned[TURNS];
    int n = gw_reversals_find(p->cmp->c, p->cmp->deflect, p->cmp->baseline, kit, turned, TURNS), warned = 0;
    for (int i = 0; i < n && i < TURNS; i++) {
        if (!turned[i].warns) continue;
        gw_buf_add(out, warned++ ? "; " : "WARNING, toe-out gained: ");
        gw_phrase_reversal(p->cmp->c, &turned[i], out);
    }
    if (warned) gw_buf_add(out, ". ");
    int told = 0;
    for (int i = 0; i < n && i < TURNS; i++) {
        if (turned[i].warns) continue;
        gw_buf_add(out, told++ ? "; " : "Changes side: ");
        say_where(p->cmp->c, &turned[i], out);
    }
    if (told) gw_buf_add(out, n > TURNS ? " ... " : ". ");
}

static void say_critical(const gw_handling_page *p, int kit, gw_buf *out)
{
    gw_summary s = gw_summary_of(p->cmp, kit);
    if (isfinite(s.critical_speed))
        gw_buf_fmt(out, "WARNING, the car oversteers and is unstable above %s km/h (critical speed). ",
                   gw_fixed(s.critical_speed / GW_KM_H, 0).s);
}

/* First letter of what follows in upper case. */
static void capital(gw_buf *text, size_t at)
{
    if (text->n > at && text->s[at] >= 'a' && text->s[at] <= 'z') text->s[at] = (char)(text->s[at] - 32);
}

void gw_verdict_text(const gw_handling_page *p, int kit)
{
    const gw_comparison *cmp = p->cmp;
    gw_stand stand = gw_stand_of(cmp->c, cmp->deflect, cmp->peaks, kit);
    gw_buf text = { 0 };
    gw_buf_clean(&text, cmp->c->kits[kit].name);
    gw_buf_add(&text, " (");
    gw_phrase_kit(&cmp->c->kits[kit], &text);
    gw_buf_add(&text, "): ");
    say_toes(p, kit, &text);
    say_turns(p, kit, &text);
    say_critical(p, kit, &text);
    size_t at = text.n;
    if (stand.state == GW_STAND_BEYOND)
        say_failures(cmp, kit, &text);
    else
        gw_phrase_stand(cmp->c, &stand, &text);
    capital(&text, at);
    gw_buf_add(&text, ".");
    gw_buf_paragraph(p->out, gw_buf_str(&text), p->width, 2);
    if (text.failed) p->out->failed = true;
    gw_buf_free(&text);
}

/* "Joints not judged: rubber 11, poly 18. " */
static void say_rests(const gw_comparison *cmp, gw_buf *out)
{
    int told = 0;
    for (int k = 0; k < cmp->c->n_kits; k++) {
        gw_stand s = gw_stand_of(cmp->c, cmp->deflect, cmp->peaks, k);
        if (s.joints == s.judged) continue;
        gw_buf_add(out, told++ ? ", " : "Joints not judged: ");
        gw_buf_clean(out, cmp->c->kits[k].name);
        gw_buf_fmt(out, " %d", s.joints - s.judged);
    }
    if (told) gw_buf_add(out, ".");
}

/* What it takes to judge them. */
static void say_remedy(const gw_comparison *cmp, gw_buf *out)
{
    bool rates = false, balls = false;
    for (int k = 0; k < cmp->c->n_kits; k++) {
        gw_stand s = gw_stand_of(cmp->c, cmp->deflect, cmp->peaks, k);
        rates = rates || s.by_rates;
        balls = balls || s.ball_joints;
    }
    if (rates) gw_buf_add(out, " Give their bushes by size and material instead of rates.");
    if (balls) gw_buf_add(out, " Limits of ball joints: ask their maker.");
}

void gw_not_judged_text(const gw_handling_page *p)
{
    gw_buf text = { 0 };
    say_rests(p->cmp, &text);
    say_remedy(p->cmp, &text);
    if (text.n) gw_buf_paragraph(p->out, gw_buf_str(&text), p->width, 2);
    if (text.failed) p->out->failed = true;
    gw_buf_free(&text);
}
