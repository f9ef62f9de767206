/* SPDX-License-Identifier: MIT */
#include "giveway/stand.h"

#include <math.h>
#include <string.h>

const char *gw_stand_word(gw_stand_state state)
{
    static const char *const WORDS[] = { "not judged", "within", "close", "beyond" };
    return WORDS[state];
}

static bool looked_at(const gw_deflect_study *deflect, int kit, gw_axle axle)
{
    for (int i = 0; i < deflect->n; i++) {
        const gw_deflection *item = &deflect->item[i];
        if (item->kit == kit && item->axle == axle && !item->failed) return true;
    }
    return false;
}

static bool is_judged(const gw_strength_study *peaks, int kit, gw_axle axle, int joint)
{
    for (int i = 0; i < peaks->n; i++) {
        const gw_overload *o = &peaks->item[i];
        if (o->kit == kit && o->axle == axle && o->joint == joint) return true;
    }
    return false;
}

static void count(const gw_case *c, const gw_strength_study *peaks, int kit, gw_axle axle, gw_stand *out)
{
    const gw_corner *corner = &c->corners[axle];
    for (int j = 0; j < corner->n_joints; j++) {
        out->joints++;
        if (is_judged(peaks, kit, axle, j))
            out->judged++;
        else if (c->bushes[c->kits[kit].fits[axle][j]].type == GW_BUSH_BALL_JOINT)
            out->ball_joints++;
        else
            out->by_rates++;
    }
}

static gw_stand_state state_of(const gw_overload *nearest)
{
    if (!nearest) return GW_STAND_UNKNOWN;
    if (!nearest->verdict.holds) return GW_STAND_BEYOND;
    return gw_overload_ratio(nearest) >= GW_STAND_CLOSE_FROM ? GW_STAND_CLOSE : GW_STAND_WITHIN;
}

/* Left and right of a symmetric car are alike but for rounding: then the first of the list stands. */
static const double ALIKE = 1e-9;

gw_stand gw_stand_of(const gw_case *c, const gw_deflect_study *deflect, const gw_strength_study *peaks,
                     int kit)
{
    gw_stand stand = { 0 };
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        if (looked_at(deflect, kit, a)) count(c, peaks, kit, a, &stand);
    for (int i = 0; i < peaks->n; i++) {
        const gw_overload *o = &peaks->item[i];
        if (o->kit != kit) continue;
        if (!stand.nearest || gw_overload_ratio(o) > (1.0 + ALIKE) * gw_overload_ratio(stand.nearest))
            stand.nearest = o;
    }
    stand.state = state_of(stand.nearest);
    return stand;
}

bool gw_stand_same_joint(const gw_case *c, const gw_overload *a, const gw_overload *b)
{
    const gw_corner *corner = &c->corners[a->axle];
    return a->axle == b->axle &&
           strcmp(gw_joint_as_written(corner, a->joint), gw_joint_as_written(corner, b->joint)) == 0;
}

/* Of one kit, in one joint or in it and its mirror image, where both have the same bush. */
static bool one_part(const gw_case *c, const gw_overload *a, const gw_overload *b)
{
    if (a->kit != b->kit || !gw_stand_same_joint(c, a, b)) return false;
    const int *fits = c->kits[a->kit].fits[a->axle];
    return fits[a->joint] == fits[b->joint];
}

bool gw_stand_is_outdone(const gw_case *c, const gw_strength_study *study, int item)
{
    const gw_overload *o = &study->item[item];
    for (int i = 0; i < study->n; i++) {
        const gw_overload *other = &study->item[i];
        if (other->joint == o->joint || other->verdict.what != o->verdict.what || !one_part(c, other, o))
            continue;
        double a = gw_overload_ratio(other), b = gw_overload_ratio(o);
        if (a > b || (a == b && i < item)) return true;
    }
    return false;
}

int gw_stand_joints_beyond(const gw_case *c, const gw_strength_study *study, int kit)
{
    int n = 0;
    for (int i = 0; i < study->n; i++) {
        const gw_overload *o = &study->item[i];
        bool known = o->kit != kit || o->verdict.holds;
        for (int k = 0; k < i && !known; k++)
            known = !study->item[k].verdict.holds && one_part(c, &study->item[k], o);
        if (!known) n++;
    }
    return n;
}

/* What is said twice in the same words tells nothing more: a rod that is one makes the sides differ by
 * thousandths. */
static const double AS_TOLD = 0.01;

bool gw_stand_is_told(const gw_case *c, const gw_strength_study *study, int item)
{
    const gw_overload *o = &study->item[item];
    for (int i = 0; i < item; i++) {
        const gw_overload *known = &study->item[i];
        bool alike = known->kit == o->kit && known->load == o->load &&
                     known->verdict.what == o->verdict.what && known->verdict.holds == o->verdict.holds &&
                     fabs(known->verdict.value - o->verdict.value) <= AS_TOLD * fabs(o->verdict.value);
        if (alike && gw_stand_same_joint(c, known, o)) return true;
    }
    return false;
}
