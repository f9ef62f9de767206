/* SPDX-License-Identifier: MIT */
/*
 * The tangent of a car at a balance, lent to cars that differ little from it: with it one step of Newton's
 * iteration from there is right to first order in what differs (the implicit function theorem asks for the
 * derivative at the known balance and no other), and what is left over is all that has to be worked out.
 */
#include "car/again.h"
#include "car/road.h"

struct gw_road_tangent {
    gw_balance_of_car balance; /* its derivatives */
    gw_step_factors factors;
    gw_kept_system axle[GW_AXLES];
};

/* From the ramp's S0 of its axles other cars look for theirs. */
static gw_status learn_corners(gw_road *road, gw_error *err)
{
    gw_status status = GW_OK;
    for (int a = 0; a < GW_AXLES && status == GW_OK; a++) status = gw_corner_learn(road->axle[a].ws, err);
    return status;
}

gw_status gw_road_mark_learn(gw_road *road, const gw_manoeuvre *m, gw_arena *arena, gw_road_mark *mark,
                             gw_error *err)
{
    const gw_manoeuvre still = { 0 };
    gw_road_tangent *t = gw_arena_alloc(arena, 1, sizeof *t);
    if (!t) return gw_fail(err, GW_E_NOMEM, "out of memory for the car");
    road->setting = !m;
    road->load = gw_road_load_of(road->vehicle, m ? m : &still, 1.0);
    gw_road_put(road, mark);
    if (m) gw_road_springs_follow(road);
    bool found = gw_road_tangent_here(road, &t->balance);
    road->setting = false;
    t->factors = road->factors;
    for (int a = 0; a < GW_AXLES && found; a++)
        if (!gw_system_keep(&road->axle[a].ws->system, arena, &t->axle[a]))
            return gw_fail(err, GW_E_NOMEM, "out of memory for the car");
    mark->tangent = found ? t : NULL;
    return m ? GW_OK : learn_corners(road, err);
}

bool gw_road_can_borrow(const gw_road *road, const gw_road_tangent *t)
{
    for (int a = 0; a < GW_AXLES && t; a++)
        if (!gw_system_can_borrow(&road->axle[a].ws->system, &t->axle[a])) return false;
    return t != NULL;
}

const gw_balance_of_car *gw_road_lent_balance(const gw_road_tangent *t)
{
    return &t->balance;
}

bool gw_road_step_lent(gw_road *road, const gw_road_tangent *t, const gw_balance_of_car *b)
{
    gw_kept_system own[GW_AXLES];
    road->factors = t->factors;
    for (int a = 0; a < GW_AXLES; a++) gw_system_borrow(&road->axle[a].ws->system, &t->axle[a], &own[a]);
    bool solved = gw_road_step_again(road, b);
    for (int a = 0; a < GW_AXLES; a++) gw_system_give_back(&road->axle[a].ws->system, &own[a]);
    return solved;
}
