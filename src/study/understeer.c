/* SPDX-License-Identifier: MIT */
/* The understeer budget against lateral g, each entry from corners solved with one more load at a time. */
#include "study/handling_run.h"

enum { QUOTED = 1 }; /* the point at GW_BALANCE_G */

/* Travel alone, then vertical load, then lateral force, then aligning torque: what each adds to toe. */
static gw_status wheel_state(gw_handling_run *h, double g, gw_side side, gw_wheel_state *out, gw_error *err)
{
    const gw_manoeuvre m = { .lateral_g = g, .side = side };
    gw_wheel_angles travel, loaded, pushed;
    gw_corner_load of[GW_WHEELS], load[GW_WHEELS] = { 0 };
    gw_deflection item;
    gw_status status = gw_handling_manoeuvre(h, &m, &item, err);
    if (status != GW_OK) return status;
    const gw_wheel_angles setting = gw_handling_setting(h, item.wheel);
    gw_handling_loads(&item, of);
    for (int w = 0; w < GW_WHEELS; w++) load[w].travel = of[w].travel;
    if ((status = gw_handling_look(h, load, item.wheel, GW_LIFTED, &travel, err)) != GW_OK) return status;
    for (int w = 0; w < GW_WHEELS; w++) load[w].patch_force.z = of[w].patch_force.z;
    if ((status = gw_handling_look(h, load, item.wheel, GW_AT_TRAVEL, &loaded, err)) != GW_OK) return status;
    for (int w = 0; w < GW_WHEELS; w++) load[w].patch_force.y = of[w].patch_force.y;
    if ((status = gw_handling_look(h, load, item.wheel, GW_AT_TRAVEL, &pushed, err)) != GW_OK) return status;
    double roll = item.camber_to_road - item.result.camber;
    *out = (gw_wheel_state){
        .vertical = item.applied.patch_force.z,
        .toe = { [GW_TOE_SETTING] = setting.toe,
                 [GW_TOE_TRAVEL] = travel.toe - setting.toe,
                 [GW_TOE_LOAD] = loaded.toe - travel.toe,
                 [GW_TOE_LATERAL] = pushed.toe - loaded.toe,
                 [GW_TOE_ALIGNING] = item.result.toe - pushed.toe },
        .camber = { [GW_CAMBER_SETTING] = setting.camber,
                    [GW_CAMBER_ROLL] = roll + travel.camber - setting.camber,
                    [GW_CAMBER_COMPLIANCE] = item.result.camber - travel.camber },
    };
    return GW_OK;
}

/* A wheel that lifts, or a corner that gives up, ends the row; what came before stands. */
gw_status gw_handling_states(gw_handling_run *h, gw_error *err)
{
    gw_kit_states *k = &h->states[h->run.kit];
    gw_axle axle = h->run.axle;
    int points = h->run.wanted->brief ? QUOTED + 1 : GW_BALANCE_POINTS;
    for (int i = 0; i < points; i++) {
        double g = 0.1 * (i + 1);
        gw_axle_state *s = &k->state[axle][i];
        *s = (gw_axle_state){ .g = g,
                              .force = 2.0 * gw_vehicle_static_load(&h->run.vehicle, axle) * g,
                              .aligning = gw_aligning_force(&h->run.vehicle, axle, g) };
        gw_status status = wheel_state(h, g, GW_OUTER, &s->wheel[GW_OUTER], err);
        if (status == GW_OK) status = wheel_state(h, g, GW_INNER, &s->wheel[GW_INNER], err);
        if (status == GW_E_NUMERIC) return GW_OK;
        if (status != GW_OK) return status;
        k->n[axle] = i + 1;
    }
    return GW_OK;
}

static double camber_of(const gw_wheel_state *w)
{
    double sum = 0.0;
    for (int i = 0; i < GW_CAMBER_PARTS; i++) sum += w->camber[i];
    return sum;
}

static bool within_tables(const gw_handling_run *h, const gw_kit_states *k, int point)
{
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        const gw_wheel_state *w = k->state[a][point].wheel;
        if (!gw_tyre_within(h->tyre[a], w[GW_OUTER].vertical, -camber_of(&w[GW_OUTER])) ||
            !gw_tyre_within(h->tyre[a], w[GW_INNER].vertical, camber_of(&w[GW_INNER])))
            return false;
    }
    return true;
}

static bool bends(const gw_budget *b, const gw_budget *quoted)
{
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        double from = quoted->axle[a];
        if (fabs(b->axle[a] - from) > GW_LINEAR_BEND * fabs(from)) return true;
    }
    return false;
}

/* The last point up to which everything stays near what is quoted. */
static void find_end(const gw_handling_run *h, gw_balance_item *item)
{
    bool curved = gw_tyre_is_curved(h->tyre[GW_FRONT]) && gw_tyre_is_curved(h->tyre[GW_REAR]);
    item->linear_to = item->g[QUOTED];
    item->end = item->n < GW_BALANCE_POINTS ? GW_END_LIFT : GW_END_RANGE;
    for (int i = QUOTED + 1; i < item->n; i++) {
        if (bends(&item->budget[i], &item->quoted)) {
            item->end = GW_END_BEND;
            return;
        }
        if (!curved && item->g[i] > GW_LINEAR_TYRE + 1e-9) {
            item->end = GW_END_TYRE;
            return;
        }
        item->linear_to = item->g[i];
        item->outside_table = item->outside_table || !within_tables(h, &h->states[item->kit], i);
    }
}

static gw_status budgets(gw_handling_run *h, const gw_kit_states *k, gw_balance_item *item, gw_error *err)
{
    int n = k->n[GW_FRONT] < k->n[GW_REAR] ? k->n[GW_FRONT] : k->n[GW_REAR];
    for (int i = 0; i < n; i++) {
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            gw_status status = gw_budget_entries(h->tyre[a], &k->state[a][i], item->budget[i].entry[a], err);
            if (status == GW_E_NUMERIC && i > QUOTED) return GW_OK;
            if (status != GW_OK) return status;
        }
        gw_budget_sum(&item->budget[i]);
        item->g[i] = k->state[GW_FRONT][i].g;
        item->n = i + 1;
    }
    if (item->n <= QUOTED)
        return gw_fail(err, GW_E_NUMERIC, "a wheel lifts or a corner finds no equilibrium below %.1f g",
                       GW_BALANCE_G);
    return GW_OK;
}

static gw_status drive_car(gw_handling_run *h, gw_balance_item *item, gw_error *err)
{
    gw_error why = { 0 };
    if (gw_bicycle_make(&h->run.vehicle, item->quoted.axle, &item->bicycle, &why) == GW_OK) {
        item->has_car = true;
        gw_bicycle_solve(&item->bicycle, h->out->speed, &item->car);
        return GW_OK;
    }
    item->no_car = gw_arena_strdup(&h->out->arena, why.msg);
    return item->no_car ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for handling");
}

gw_status gw_handling_balance(gw_handling_run *h, int kit, gw_balance_item *out, bool *there, gw_error *err)
{
    gw_error inner = { 0 };
    *out = (gw_balance_item){ .kit = kit };
    if (budgets(h, &h->states[kit], out, &inner) != GW_OK) {
        *there = false;
        return gw_handling_leave_out(h, kit, GW_AXLES, -1, "balance is", &inner, err);
    }
    *there = true;
    out->quoted = out->budget[QUOTED];
    out->outside_table = !within_tables(h, &h->states[kit], QUOTED);
    find_end(h, out);
    return drive_car(h, out, err);
}
