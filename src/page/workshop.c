/* SPDX-License-Identifier: MIT */
/* What the workshop's copy adds of the bushes: which goes where, how stiff it is, what it carries. */
#include "page/sections.h"
#include "page/tables.h"

#include "giveway/units.h"

#include <math.h>

/* ---- which bush goes where ---- */

static void put_fitted(const gw_page *p, gw_slots *cell, int kit, gw_axle axle, int joint)
{
    gw_slots_text(cell, "bush", gw_page_bush(p, &p->c->bushes[p->c->kits[kit].fits[axle][joint]]));
}

/* ---- how stiff ---- */

static bool is_fitted(const gw_page *p, int bush)
{
    for (int k = 0; k < p->c->n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
            for (int j = 0; gw_page_has_kit(p, k) && gw_page_has_axle(p, a) && j < p->c->corners[a].n_joints;
                 j++)
                if (p->c->kits[k].fits[a][j] == bush) return true;
    return false;
}

static void put_rates(const gw_page *p, gw_slots *slots, int bush)
{
    const gw_bush *b = &p->c->bushes[bush];
    const gw_bush_law *law = &p->r->laws.law[bush];
    gw_slots *row = gw_slots_element(slots, "rates");
    gw_slots_text(row, "bush", gw_page_bush(p, b));
    for (int i = 0; i < 6; i++) {
        double rate = i < 3 ? law->k[i] / GW_N_PER_MM : law->c[i - 3] / GW_NM_PER_DEG;
        gw_slots_text(gw_slots_element(row, "ways"), "rate", gw_significant(rate, 3).s);
    }
    GW_SLOTS(row, { "offset", b->offset > 0.0 ? gw_fixed(b->offset / GW_MM, 1).s : "" },
             { "price", b->price >= 0.0 ? gw_page_price(b->price).s : "" },
             { "minutes", b->fit_minutes >= 0.0 ? gw_fixed(b->fit_minutes, 0).s : "" });
}

/* ---- what it carries: the largest over the loads of the case ---- */

typedef struct peak {
    double force, moved, turned; /* [N], [m], [rad] */
} peak;

static double length_of(const double x[3])
{
    return sqrt(x[0] * x[0] + x[1] * x[1] + x[2] * x[2]);
}

static peak peak_of(const gw_page *p, int kit, gw_axle axle, int joint)
{
    peak most = { 0 };
    for (int l = 0; l < p->c->n_loads; l++) {
        const gw_deflection *item = gw_page_find(p, kit, axle, l);
        if (!item) continue;
        const gw_joint_result *j = &item->result.joints[joint];
        most.force = fmax(most.force, length_of(j->f));
        most.moved = fmax(most.moved, length_of(j->u));
        most.turned = fmax(most.turned, length_of(j->theta));
    }
    return most;
}

static void put_peak(const gw_page *p, gw_slots *cell, int kit, gw_axle axle, int joint)
{
    peak most = peak_of(p, kit, axle, joint);
    GW_SLOTS(cell, { "force", gw_fixed(most.force / GW_KN, 1).s },
             { "moved", gw_fixed(most.moved / GW_MM, 2).s },
             { "turned", gw_fixed(most.turned / GW_DEG, 1).s });
}

void gw_page_bushes(const gw_page *p, gw_slots *slots)
{
    gw_page_joint_tables(p, slots, "fitted", put_fitted);
    for (int b = 0; b < p->c->n_bushes; b++)
        if (is_fitted(p, b)) put_rates(p, slots, b);
    gw_page_joint_tables(p, slots, "peaks", put_peak);
    gw_page_limits(p, slots);
}
