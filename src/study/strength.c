/* SPDX-License-Identifier: MIT */
/* Strain of the rubber and load of the bearings under every load that was solved. */
#include "giveway/strength.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

_Static_assert((int)GW_STRENGTH_CHECKS >= (int)GW_STRAIN_CHECKS &&
                   (int)GW_STRENGTH_CHECKS >= (int)GW_BEARING_CHECKS,
               "room for all checks");

/* The bush carries the same force as its bracket; rounding must not make it give the other way. */
static void without_bracket(const gw_joint_result *r, double bracket, double u[3])
{
    for (int i = 0; i < 3; i++) {
        double bush = bracket > 0.0 ? r->u[i] - r->f[i] / bracket : r->u[i];
        u[i] = bush * r->u[i] > 0.0 ? bush : 0.0;
    }
}

static void rubber(const gw_joint *joint, const gw_joint_result *r, gw_strength *s)
{
    const gw_annulus *annulus = &s->bush->annulus;
    double u[3];
    without_bracket(r, joint->bracket, u);
    if (gw_rubber_strain_of(annulus, s->bush->type == GW_BUSH_BONDED, u, r->theta, &s->strain, NULL) != GW_OK)
        return;
    s->kind = GW_STRENGTH_RUBBER;
    s->n_checks = gw_rubber_check(&annulus->material, &s->strain, s->check);
}

static void bearing(const gw_align *align, const gw_joint_result *r, gw_strength *s)
{
    double load = gw_norm(gw_v3(r->f[0], r->f[1], r->f[2]));
    double shock = align->shock_factor > 0.0 ? align->shock_factor : GW_SHOCK_FACTOR;
    const gw_bearing_duty duty = { .peak_load = load, .shock_factor = shock };
    if (gw_bearing_check(&s->bush->bearing, &duty, s->check, &s->n_checks, NULL) != GW_OK) return;
    s->kind = GW_STRENGTH_BEARING;
    s->load = load;
    s->specific_load = gw_bearing_specific_load(&s->bush->bearing, load);
}

gw_strength gw_strength_of(const gw_case *c, const gw_deflection *item, int joint)
{
    const gw_joint_result *r = &item->result.joints[joint];
    const int fitted = gw_joint_of_wheel(c, item->axle, item->wheel, joint);
    gw_strength s = { .bush = &c->bushes[c->kits[item->kit].fits[item->axle][fitted]], .holds = true };
    if (gw_bush_is_rubber(s.bush))
        rubber(&c->corners[item->axle].joints[joint], r, &s);
    else if (s.bush->type == GW_BUSH_BEARING)
        bearing(&c->align[item->axle], r, &s);
    for (int i = 0; i < s.n_checks; i++) s.holds = s.holds && s.check[i].holds;
    return s;
}

double gw_overload_ratio(const gw_overload *o)
{
    return o->verdict.value / o->verdict.limit;
}

static bool same_joint(const gw_overload *a, const gw_overload *b)
{
    return a->kit == b->kit && a->axle == b->axle && a->joint == b->joint;
}

/* A joint is told once a figure (its text is a constant), under the load that is worst for it. */
static gw_overload *find(gw_strength_study *study, const gw_overload *wanted)
{
    for (int i = study->n - 1; i >= 0; i--) {
        gw_overload *other = &study->item[i];
        if (same_joint(other, wanted) && other->verdict.what == wanted->verdict.what) return other;
    }
    return NULL;
}

static void take(gw_strength_study *study, const gw_overload *found)
{
    gw_overload *before = find(study, found);
    if (!before)
        study->item[study->n++] = *found;
    else if (gw_overload_ratio(found) > gw_overload_ratio(before))
        *before = *found;
}

static void look_at(const gw_case *c, const gw_deflection *item, int joint, bool all,
                    gw_strength_study *study)
{
    gw_strength s = gw_strength_of(c, item, joint);
    for (int i = 0; i < s.n_checks; i++) {
        const gw_overload found = { item->kit, joint, item->load, item->axle, s.check[i] };
        if (all || !s.check[i].holds) take(study, &found);
    }
}

/* Items of a kit and corner follow one another, so that a joint's overloads lie together. */
static int by_place(const void *a, const void *b)
{
    const gw_overload *p = a, *q = b;
    if (p->kit != q->kit) return p->kit < q->kit ? -1 : 1;
    if (p->axle != q->axle) return p->axle < q->axle ? -1 : 1;
    if (p->joint != q->joint) return p->joint < q->joint ? -1 : 1;
    if (p->load != q->load) return p->load < q->load ? -1 : 1;
    return (int)p->verdict.what - (int)q->verdict.what;
}

static gw_status worst_of(const gw_case *c, const gw_deflect_study *deflect, bool all, gw_strength_study *out,
                          gw_error *err)
{
    size_t room = 1;
    for (int i = 0; i < deflect->n; i++)
        room += (size_t)c->corners[deflect->item[i].axle].n_joints * GW_STRENGTH_CHECKS;
    gw_strength_study study = { .item = calloc(room, sizeof *study.item) };
    if (!study.item) return gw_fail(err, GW_E_NOMEM, "out of memory for strength");
    for (int i = 0; i < deflect->n; i++)
        for (int j = 0; !deflect->item[i].failed && j < c->corners[deflect->item[i].axle].n_joints; j++)
            look_at(c, &deflect->item[i], j, all, &study);
    qsort(study.item, (size_t)study.n, sizeof *study.item, by_place);
    *out = study;
    return GW_OK;
}

gw_status gw_study_strength(const gw_case *c, const gw_deflect_study *deflect, gw_strength_study *out,
                            gw_error *err)
{
    return worst_of(c, deflect, false, out, err);
}

gw_status gw_study_strength_peaks(const gw_case *c, const gw_deflect_study *deflect, gw_strength_study *out,
                                  gw_error *err)
{
    return worst_of(c, deflect, true, out, err);
}

/* The texts of sources are constants of the program. */
bool gw_strength_names_source(const gw_strength_study *study, int item)
{
    for (int i = 0; i < item; i++)
        if (study->item[i].verdict.source == study->item[item].verdict.source) return false;
    return true;
}

void gw_strength_study_free(gw_strength_study *study)
{
    free(study->item);
    *study = (gw_strength_study){ 0 };
}
