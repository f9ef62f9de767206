/* SPDX-License-Identifier: MIT */
/* What stands in the one table at the top, kit by kit. */
#include "show/handling.h"

#include "giveway/pick.h"

#include <math.h>

bool gw_compare_shows(const gw_comparison *cmp, int kit)
{
    for (int i = 0; i < cmp->deflect->n; i++)
        if (cmp->deflect->item[i].kit == kit) return true;
    return false;
}

int gw_summary_load(const gw_comparison *cmp)
{
    return gw_pick_load(cmp->c, cmp->deflect, GW_PICK_CORNER);
}

gw_axle gw_summary_axle(const gw_comparison *cmp)
{
    for (int i = 0; i < cmp->deflect->n; i++)
        if (cmp->deflect->item[i].axle == GW_FRONT) return GW_FRONT;
    return GW_REAR;
}

static double harshness_of(const gw_comparison *cmp, int kit, gw_axle axle)
{
    const gw_ride_item *item = gw_ride_find(cmp->ride, kit, axle);
    return item ? item->difference.harshness : (double)NAN;
}

gw_summary gw_summary_of(const gw_comparison *cmp, int kit)
{
    const double none = (double)NAN;
    const gw_handling_study *h = cmp->handling;
    gw_axle axle = gw_summary_axle(cmp);
    const gw_corner_budget *b = gw_corner_budget_find(h, kit, axle, gw_summary_load(cmp), GW_OUTER);
    const gw_balance_item *balance = gw_balance_find(h, kit);
    const gw_braking_item *braking = gw_braking_find(h, kit);
    gw_summary s = { .kit = kit };
    s.camber = b ? b->camber.total : none;
    s.understeer = balance ? balance->quoted.understeer : none;
    s.critical_speed = balance && balance->has_car ? balance->car.critical_speed : (double)INFINITY;
    s.brake_toe = braking && braking->corner[axle].there ? braking->corner[axle].toe_per_g : none;
    s.stop_offset = braking && braking->has_drift ? braking->stop.offset : none;
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) s.harshness[a] = harshness_of(cmp, kit, a);
    return s;
}

static const struct {
    const char *words, *key;
} ENTRIES[GW_BUDGET_ENTRIES] = {
#define AS_ENTRY(id, w, k, doc) [GW_BUDGET_##id] = { w, k },
    GW_BUDGET_LIST(AS_ENTRY)
#undef AS_ENTRY
};

const char *gw_budget_words(gw_budget_entry entry)
{
    return ENTRIES[entry].words;
}
