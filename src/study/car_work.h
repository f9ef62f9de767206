/* SPDX-License-Identifier: MIT */
/** What the files share that work one car out for a spread. */
#ifndef STUDY_CAR_WORK_H
#define STUDY_CAR_WORK_H

#include "study/cars.h"

/** One car being worked out. */
typedef struct gw_car_work {
    const gw_car_plan *plan;
    gw_run run;
    const gw_car_guide *from;
    gw_car_guide *keep;
    gw_car_guide *states; /**< states go there, `keep` or another's; NULL: nowhere */
    double *row;
    gw_status first; /**< failure */
    gw_error *err;
} gw_car_work;

/** Whether all that statics asks of a corner, but for its bushes, is the same. */
bool gw_same_corner(const gw_corner *a, const gw_corner *b);

/** The first failure is the one that is told. */
static inline void gw_car_note(gw_car_work *w, gw_status status, const gw_error *why)
{
    if (status == GW_OK || w->first != GW_OK) return;
    w->first = status;
    gw_fail(w->err, status, "%s", why->msg);
}

/** The slots of one kit in one corner, from `s` on: the first that is another's. */
static inline int gw_car_slots_end(const gw_car_plan *plan, int s)
{
    int end = s;
    while (end < plan->n_slots && plan->slot[end].kit == plan->slot[s].kit &&
           plan->slot[end].axle == plan->slot[s].axle)
        end++;
    return end;
}

/** What is solved with one corner open, from slot `s` to before `end`: all but the car on the road. */
void gw_car_work_corner(gw_car_work *w, int s, int end);

/** The car on the road, once a manoeuvre for all its wheels. */
void gw_car_work_road(gw_car_work *w, int kit);

#endif
