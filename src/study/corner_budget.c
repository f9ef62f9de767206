/* SPDX-License-Identifier: MIT */
/* Where the camber and the toe of a wheel in a corner come from. */
#include "study/handling_run.h"

gw_status gw_handling_look(gw_handling_run *h, const gw_corner_load *load, gw_drive drive,
                           gw_wheel_angles *out, gw_error *err)
{
    gw_corner_result r = { .joints = h->joints };
    gw_status status = gw_corner_solve(h->run.ws, load, drive, &h->run.state, err);
    if (status != GW_OK) return status;
    gw_corner_report(h->run.ws, &h->run.state, &r);
    *out = (gw_wheel_angles){ r.toe, r.camber };
    return GW_OK;
}

gw_status gw_handling_manoeuvre(gw_handling_run *h, const gw_manoeuvre *m, gw_deflection *item, gw_error *err)
{
    *item = (gw_deflection){ .load = -1, .result = { .joints = h->joints } };
    return gw_run_manoeuvre(&h->run, m, item, err);
}

gw_wheel_angles gw_handling_setting(const gw_handling_run *h)
{
    return (gw_wheel_angles){ h->run.c->corners[h->run.axle].wheel.static_toe,
                              gw_corner_static_camber(h->run.ws) };
}

static gw_angle_parts parts_of(double setting, double roll, double lifted, double loaded)
{
    return (gw_angle_parts){ setting, roll, lifted - setting, loaded - lifted, loaded + roll };
}

static gw_status add_budget(gw_handling_run *h, int load, gw_side side, gw_error *err)
{
    gw_manoeuvre m = h->run.c->loads[load].manoeuvre;
    gw_corner_budget *b = &h->out->budget[h->out->n_budgets];
    gw_deflection item;
    gw_wheel_angles lifted, setting = gw_handling_setting(h);
    m.side = side;
    gw_status status = gw_handling_manoeuvre(h, &m, &item, err);
    if (status != GW_OK) return status;
    const gw_corner_load bare = { .travel = item.applied.travel };
    if ((status = gw_handling_look(h, &bare, GW_LIFTED, &lifted, err)) != GW_OK) return status;
    *b = (gw_corner_budget){ .kit = h->run.kit,
                             .load = load,
                             .axle = h->run.axle,
                             .side = side,
                             .travel = item.applied.travel,
                             .vertical = item.applied.patch_force.z };
    double roll = item.camber_to_road - item.result.camber;
    b->camber = parts_of(setting.camber, roll, lifted.camber, item.result.camber);
    b->toe = parts_of(setting.toe, 0.0, lifted.toe, item.result.toe);
    h->out->n_budgets++;
    return GW_OK;
}

gw_status gw_handling_budgets(gw_handling_run *h, gw_error *err)
{
    const gw_case *c = h->run.c;
    for (int l = 0; l < c->n_loads; l++) {
        if (!gw_run_wants_load(&h->run, l, h->run.axle) || c->loads[l].kind != GW_LOAD_MANOEUVRE) continue;
        if (!(c->loads[l].manoeuvre.lateral_g > 0.0)) continue;
        gw_error why = { 0 };
        gw_status status = add_budget(h, l, GW_OUTER, &why);
        if (status == GW_OK) status = add_budget(h, l, GW_INNER, &why);
        if (status != GW_OK)
            status =
                gw_handling_leave_out(h, h->run.kit, h->run.axle, l, "camber and toe budgets are", &why, err);
        if (status != GW_OK) return status;
    }
    return GW_OK;
}
