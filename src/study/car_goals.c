/* SPDX-License-Identifier: MIT */
/* One number for a kit: the root mean square of what its wheels should not do. */
#include "study/cars.h"

#include <math.h>

static gw_wheel_side wheel_of(const gw_car_slot *slot)
{
    return slot->manoeuvre ? gw_wheel_of_side(slot->side) : slot->wheel;
}

static bool is_meant(const gw_goal *goal, const gw_car_slot *slot)
{
    return slot->load == goal->load && (!goal->one_corner || slot->axle == goal->axle) &&
           (!goal->one_wheel || wheel_of(slot) == goal->wheel);
}

static int column_of(const gw_goal *goal, const gw_car_slot *slot)
{
    static const int OF[] = { [GW_GOAL_TOE] = GW_SPREAD_TOE,
                              [GW_GOAL_CAMBER] = GW_SPREAD_CAMBER,
                              [GW_GOAL_CASTER] = GW_CAR_CASTER,
                              [GW_GOAL_FORE_AFT] = GW_SPREAD_FORE_AFT,
                              [GW_GOAL_TO_ROAD] = GW_CAR_TO_ROAD };
    return slot->first + OF[goal->figure];
}

/* Where the case has no goals: every toe change alike. */
static const gw_goal *goals_of(const gw_case *c, int *n)
{
    *n = c->choose.present ? c->choose.n_goals : 0;
    return c->choose.goal;
}

/* Weights and weighted squares of a kit; with `by`, weight times deviation is added to each column. */
static void add_up(const gw_car_plan *plan, int kit, const double *row, double *weights, double *squares,
                   double *by)
{
    int n;
    const gw_goal *goal = goals_of(plan->c, &n);
    for (int s = 0; s < plan->n_slots; s++) {
        const gw_car_slot *slot = &plan->slot[s];
        if (slot->kit != kit || slot->load < 0 || slot->left_out) continue;
        for (int g = 0; g < (n ? n : 1); g++) {
            if (n && !is_meant(&goal[g], slot)) continue;
            int column = n ? column_of(&goal[g], slot) : slot->first + (int)GW_SPREAD_TOE;
            double weight = n ? goal[g].weight : 1.0, off = row[column] - (n ? goal[g].wanted : 0.0);
            *weights += weight;
            *squares += weight * off * off;
            if (by) by[column] += weight * off;
        }
    }
}

double gw_car_unsteadiness(const gw_car_plan *plan, int kit, const double *row, double *by)
{
    double weights = 0.0, squares = 0.0;
    add_up(plan, kit, row, &weights, &squares, by);
    double root = weights > 0.0 ? sqrt(squares / weights) : (double)NAN;
    for (int i = 0; by && i < plan->n_columns; i++) by[i] = root > 0.0 ? by[i] / (weights * root) : 0.0;
    return root;
}
