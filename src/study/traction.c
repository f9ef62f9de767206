/* SPDX-License-Identifier: MIT */
/* Toe and camber of the driven wheels, and what the error of their toe costs. */
#include "study/handling_run.h"

/* Stiffness about straight running at the load on the wheel, of tables and coefficients alike. */
static void put_force(const gw_handling_run *h, double load, gw_traction_item *t)
{
    const gw_tyre *tyre = h->tyre[h->run.axle];
    gw_tyre_force f;
    if (!tyre || gw_tyre_chord(tyre, 0.0, load, 0.0, GW_TYRE_STRETCH, &f, NULL) != GW_OK) return;
    t->has_force = true;
    t->toe_force = f.cornering * t->toe_change;
    t->camber_force = f.camber * t->camber_change;
}

static gw_status add_wheel(gw_handling_run *h, int load, gw_side side, bool straight, gw_error *err)
{
    gw_manoeuvre m = h->run.c->loads[load].manoeuvre;
    gw_traction_item *t = &h->out->traction[h->out->n_traction];
    gw_deflection item;
    m.side = side;
    if (straight) m.lateral_g = 0.0;
    gw_status status = gw_handling_manoeuvre(h, &m, &item, err);
    if (status != GW_OK) return status;
    *t =
        (gw_traction_item){ .kit = h->run.kit,
                            .load = load,
                            .axle = h->run.axle,
                            .side = side,
                            .straight = straight,
                            .vertical = item.applied.patch_force.z,
                            .toe = item.result.toe,
                            .toe_change = item.result.toe_change,
                            .camber_to_road = item.camber_to_road,
                            .camber_change = item.result.camber - gw_handling_setting(h, item.wheel).camber };
    put_force(h, t->vertical, t);
    h->out->n_traction++;
    return GW_OK;
}

gw_status gw_handling_traction(gw_handling_run *h, gw_error *err)
{
    const gw_case *c = h->run.c;
    for (int l = 0; l < c->n_loads; l++) {
        const gw_load *load = &c->loads[l];
        gw_status status = GW_OK;
        gw_error why = { 0 };
        if (!gw_run_wants_load(&h->run, l, h->run.axle) || load->kind != GW_LOAD_MANOEUVRE) continue;
        if (!(load->manoeuvre.drive_g > 0.0) ||
            !(gw_vehicle_drive_share(load->manoeuvre.driven, h->run.axle) > 0.0))
            continue;
        if (load->manoeuvre.lateral_g > 0.0)
            for (gw_side s = GW_OUTER; s <= GW_INNER && status == GW_OK; s++)
                status = add_wheel(h, l, s, false, &why);
        if (status == GW_OK) status = add_wheel(h, l, GW_OUTER, true, &why);
        if (status != GW_OK)
            status = gw_handling_leave_out(h, h->run.kit, h->run.axle, l, "traction is", &why, err);
        if (status != GW_OK) return status;
    }
    return GW_OK;
}
