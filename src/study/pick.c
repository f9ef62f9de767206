/* SPDX-License-Identifier: MIT */
#include "giveway/pick.h"

/* Items stand by kit, so the first one is of the kit that the others are compared with. */
static bool carried(const gw_deflect_study *study, int load)
{
    bool any = false;
    for (int i = 0; i < study->n && study->item[i].kit == study->item[0].kit; i++) {
        if (study->item[i].load != load) continue;
        if (study->item[i].failed) return false;
        any = true;
    }
    return any;
}

static double asked(const gw_manoeuvre *m, gw_pick what)
{
    return what == GW_PICK_STOP ? m->brake_g : m->lateral_g;
}

static double besides(const gw_manoeuvre *m, gw_pick what)
{
    return m->drive_g + (what == GW_PICK_STOP ? m->lateral_g : m->brake_g);
}

int gw_pick_load(const gw_case *c, const gw_deflect_study *study, gw_pick what)
{
    int any = -1;
    for (int l = 0; l < c->n_loads; l++) {
        const gw_manoeuvre *m = &c->loads[l].manoeuvre;
        if (c->loads[l].kind != GW_LOAD_MANOEUVRE || !(asked(m, what) > 0.0) || !carried(study, l)) continue;
        if (!(besides(m, what) > 0.0)) return l;
        if (any < 0) any = l;
    }
    return any;
}
