/* SPDX-License-Identifier: MIT */
/*
 * The tangent of a car at a balance, lent to cars that differ little from it: with it one step of Newton's
 * iteration from there is right to first order in what differs (the implicit function theorem asks for the
 * derivative at the known balance and no other), and what is left over is all that has to be worked out.
 */
#include "car/workspace.h"

bool gw_road_can_borrow(const gw_road *road, const gw_road_tangent *t)
{
    for (int a = 0; a < GW_AXLES && t; a++)
        if (!gw_system_can_borrow(&road->axle[a].ws->system, &t->axle[a])) return false;
    return t != NULL;
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
