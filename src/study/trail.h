/* SPDX-License-Identifier: MIT */
/** One manoeuvre after another of a car on the road, each started from where those before it lead. */
#ifndef STUDY_TRAIL_H
#define STUDY_TRAIL_H

#include "study/run.h"

/** Where the car stood, place by place; all zero at first. */
typedef struct gw_trail {
    gw_arena arena;
    int n;
    gw_road_mark *at, guess;
    bool *known;
} gw_trail;

/**
 * The next manoeuvre of `run` starts as at place `own`, moved besides as from `origin` to `there`; from S0
 * where one of them is below 0 or not known: false.
 */
bool gw_trail_lead(gw_trail *trail, gw_run *run, int own, int there, int origin);

/**
 * Note at a place where the car stands now, if it does.
 *
 * @param[in] n  places that the trail is to have; the same each time.
 */
gw_status gw_trail_note(gw_trail *trail, const gw_run *run, int n, int place, gw_error *err);
void gw_trail_free(gw_trail *trail);

#endif
