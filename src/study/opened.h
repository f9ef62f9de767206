/* SPDX-License-Identifier: MIT */
/** Corners and axles that one study opened, kept for those after it, which then need not look anew. */
#ifndef STUDY_OPENED_H
#define STUDY_OPENED_H

#include "car/again.h"
#include "giveway/road_car.h"
#include "giveway/study.h"

/** Filled once, then only read, so that many threads may look at it. */
struct gw_opened {
    const gw_case *c;
    int n;                      /**< kits                                                         */
    gw_corner_ws **ws, **right; /**< [kit * GW_AXLES + axle] NULL: not opened; the right wheel's own  */
    gw_road **road;             /**< [kit] the car on the road; NULL: not stood up                    */
    gw_road_mark *mark;         /**< [kit * loads + load] where it stood in a manoeuvre, if `marked`      */
    bool *marked;
};

/** Memory for every kit of the case; nothing is opened yet. NULL where there is none to be had. */
gw_opened *gw_opened_make(const gw_case *c);
void gw_opened_free(gw_opened *opened); /**< NULL is allowed */

/** What was opened of a kit of this case; NULL: nothing. */
const gw_corner_ws *gw_opened_corner(const gw_opened *opened, const gw_case *c, int kit, gw_axle axle,
                                     bool right);
const gw_corner_ws *gw_opened_pair(const gw_opened *opened, const gw_case *c, int kit, gw_axle axle);

/** Notes where the car of the kit, which has just been driven, stands in a load; its memory is `arena`'s. */
gw_status gw_opened_note(gw_opened *opened, const gw_road *road, int kit, int load, gw_arena *arena,
                         gw_error *err);
/** The same for the whole car, whichever wheel of it is looked at. */
bool gw_same_manoeuvre(const gw_manoeuvre *a, const gw_manoeuvre *b);
/** Where it stood in that manoeuvre, whichever wheel is looked at; NULL: not known. */
const gw_road_mark *gw_opened_mark(const gw_opened *opened, const gw_case *c, int kit, const gw_manoeuvre *m);

#endif
