/* SPDX-License-Identifier: MIT */
/* Where the camber and the toe of a wheel in a corner come from. */
#include "study/handling_run.h"

#include <string.h>

static const gw_axle_look *known_look(const gw_handling_run *h, const gw_corner_load load[GW_WHEELS],
                                      gw_drive drive)
{
    for (int i = 0; i < h->n_looks && i < GW_LOOKS; i++) {
        const gw_axle_look *look = &h->look[i];
        if (look->drive == drive && !memcmp(look->load, load, sizeof look->load)) return look;
    }
    return NULL;
}

/* Both wheels are read off the state that was solved last. */
static void note_look(gw_handling_run *h, const gw_corner_load load[GW_WHEELS], gw_drive drive)
{
    gw_axle_look *look = &h->look[h->n_looks++ % GW_LOOKS];
    memcpy(look->load, load, sizeof look->load);
    look->drive = drive;
    for (int w = 0; w < GW_WHEELS; w++) {
        gw_corner_result r = { .joints = h->joints };
        gw_corner_report_of(h->run.ws, &h->run.state, (gw_wheel_side)w, &r);
        look->wheel[w] = (gw_wheel_angles){ r.toe, r.camber };
    }
}

gw_status gw_handling_look(gw_handling_run *h, const gw_corner_load load[GW_WHEELS], gw_wheel_side wheel,
                           gw_drive drive, gw_wheel_angles *out, gw_error *err)
{
    const bool pair = gw_is_pair(&h->run.c->corners[h->run.axle]);
    const gw_axle_look *known = pair ? known_look(h, load, drive) : NULL;
    gw_corner_result r = { .joints = h->joints };
    if (known) {
        *out = known->wheel[wheel];
        return GW_OK;
    }
    gw_status status = gw_run_look(&h->run, load, wheel, drive, &r, err);
    if (status != GW_OK) return status;
    *out = (gw_wheel_angles){ r.toe, r.camber };
    if (pair) note_look(h, load, drive);
    return GW_OK;
}

gw_status gw_handling_manoeuvre(gw_handling_run *h, const gw_manoeuvre *m, gw_deflection *item, gw_error *err)
{
    *item = (gw_deflection){ .load = -1, .result = { .joints = h->joints } };
    return gw_run_manoeuvre(&h->run, m, item, err);
}

void gw_handling_loads(const gw_deflection *item, gw_corner_load out[GW_WHEELS])
{
    out[item->wheel] = item->applied;
    out[gw_wheel_beside(item->wheel)] = item->beside;
}

gw_wheel_angles gw_handling_setting(const gw_handling_run *h, gw_wheel_side wheel)
{
    return (gw_wheel_angles){ h->run.c->corners[h->run.axle].wheel.static_toe,
                              gw_run_static_camber(&h->run, wheel) };
}

/* What the path of the wheels gives, with no load but what holds them there. */
typedef struct gw_path_angles {
    gw_wheel_angles together; /* both wheels at the mean of their travels                   */
    gw_wheel_angles lifted;   /* each at its own                                            */
} gw_path_angles;

static gw_status look_along(gw_handling_run *h, const gw_deflection *item, gw_path_angles *out, gw_error *err)
{
    const double mean = 0.5 * (item->applied.travel + item->beside.travel);
    const gw_corner_load level[GW_WHEELS] = { { .travel = mean }, { .travel = mean } };
    gw_corner_load own[GW_WHEELS], bare[GW_WHEELS] = { 0 };
    gw_handling_loads(item, own);
    for (int w = 0; w < GW_WHEELS; w++) bare[w].travel = own[w].travel;
    gw_status status = gw_handling_look(h, bare, item->wheel, GW_LIFTED, &out->lifted, err);
    if (status != GW_OK || !item->on_road) return status;
    return gw_handling_look(h, level, item->wheel, GW_LIFTED, &out->together, err);
}

/* The lean of the body over the line of the axle's wheel centres, as this wheel sees it. */
static double lean_on_springs(const gw_handling_run *h, const gw_deflection *item)
{
    double distance = 2.0 * h->run.c->corners[h->run.axle].wheel.centre.y;
    return atan((item->applied.travel - item->beside.travel) / distance);
}

static gw_angle_parts parts_of(double setting, double lifted, double loaded)
{
    return (gw_angle_parts){
        .setting = setting, .travel = lifted - setting, .compliance = loaded - lifted, .total = loaded
    };
}

/* Of the travel that which both wheels have in common apart, of the lean that of the tyres. */
static void split(const gw_handling_run *h, const gw_deflection *item, const gw_path_angles *path,
                  gw_corner_budget *b)
{
    double lean = item->camber_to_road - item->result.camber;
    b->camber.roll = item->on_road ? lean_on_springs(h, item) : lean;
    b->camber.tyre = lean - b->camber.roll;
    b->camber.total += lean;
    if (!item->on_road) return;
    b->camber.jacking = path->together.camber - b->camber.setting;
    b->camber.travel -= b->camber.jacking;
    b->toe.jacking = path->together.toe - b->toe.setting;
    b->toe.travel -= b->toe.jacking;
}

static gw_status add_budget(gw_handling_run *h, int load, gw_side side, gw_error *err)
{
    gw_manoeuvre m = h->run.c->loads[load].manoeuvre;
    gw_corner_budget *b = &h->out->budget[h->out->n_budgets];
    gw_deflection item;
    gw_path_angles path = { { 0.0, 0.0 }, { 0.0, 0.0 } };
    m.side = side;
    gw_status status = gw_handling_manoeuvre(h, &m, &item, err);
    if (status == GW_OK) status = look_along(h, &item, &path, err);
    if (status != GW_OK) return status;
    const gw_wheel_angles setting = gw_handling_setting(h, item.wheel);
    *b = (gw_corner_budget){ .kit = h->run.kit,
                             .load = load,
                             .axle = h->run.axle,
                             .side = side,
                             .on_road = item.on_road,
                             .travel = item.applied.travel,
                             .vertical = item.applied.patch_force.z,
                             .lateral = (side == GW_OUTER ? -1.0 : 1.0) * item.applied.patch_force.y,
                             .camber = parts_of(setting.camber, path.lifted.camber, item.result.camber),
                             .toe = parts_of(setting.toe, path.lifted.toe, item.result.toe) };
    split(h, &item, &path, b);
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
