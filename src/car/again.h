/* SPDX-License-Identifier: MIT */
/** One car after another, each the last one with other bushes: solved from where a neighbour stood. */
#ifndef GIVEWAY_CAR_AGAIN_H
#define GIVEWAY_CAR_AGAIN_H

#include "giveway/arena.h"
#include "giveway/road_car.h"

/** Where a car stood: its chassis, its lateral forces and both axles. */
typedef struct gw_road_mark {
    double height, roll, pitch;     /**< [m], [rad]                     */
    double lateral[GW_AXLES];       /**< [N]                            */
    gw_state state[GW_AXLES];       /**< poses of the axle's bodies, springs */
    struct gw_felt *felt[GW_AXLES]; /**< [place] what its links carried, where `knows_felt` */
    bool knows_felt;
    const struct gw_road_tangent *tangent; /**< there, for cars that take one step from it; NULL: their own */
} gw_road_mark;

/** A car without bushes yet; `fit` of the parts is not looked at. Closed with gw_road_close. */
gw_status gw_road_frame(const gw_vehicle *vehicle, const gw_road_part part[GW_AXLES], gw_road **out,
                        gw_error *err);

/** An axle gets what a workspace of its pair has fitted; that is only read. The car has to be stood up anew.
 */
void gw_road_refit(gw_road *road, gw_axle axle, const gw_corner_ws *fitted);

/** Memory for a mark of such a car. */
gw_status gw_road_mark_make(const gw_road *road, gw_arena *arena, gw_road_mark *out, gw_error *err);
void gw_road_mark_copy(const gw_road *road, gw_road_mark *to, const gw_road_mark *from);
/** Where the car stands now; `still`: where it stood at S0. */
void gw_road_mark_take(const gw_road *road, bool still, gw_road_mark *out);
/** The tangent where it stood, into the mark: at S0 without a manoeuvre. The car is moved there. */
gw_status gw_road_mark_learn(gw_road *road, const gw_manoeuvre *m, gw_arena *arena, gw_road_mark *mark,
                             gw_error *err);
/** Where a car may stand: as `own`, moved besides as it moved from `origin` to `there`. */
void gw_road_mark_lead(const gw_road *road, const gw_road_mark *own, const gw_road_mark *there,
                       const gw_road_mark *origin, gw_road_mark *out);

/**
 * Stand the car up, and drive it, from a guess of where it will stand; where that leads nowhere, or somewhere
 * that a car which works does not come to in one go, as gw_road_open and gw_road_solve do. NULL: as they do.
 */
gw_status gw_road_stand_near(gw_road *road, const gw_road_mark *guess, gw_error *err);
gw_status gw_road_solve_near(gw_road *road, const gw_manoeuvre *m, const gw_road_mark *guess, gw_error *err);

/**
 * As gw_road_open, of a car that differs from `near` by its figures alone: its corners are opened near those
 * of it, and it is stood up from `guess`. Reports tell nothing of joints.
 *
 * @param[in] near  a car of the same bodies, joints and kit; only read.
 * @param[in] how   GW_NEAR_ONCE: one step of Newton's iteration for everything that is asked of it.
 */
gw_status gw_road_open_near(const gw_vehicle *vehicle, const gw_road_part part[GW_AXLES], const gw_road *near,
                            const gw_road_mark *guess, gw_nearness how, gw_road **out, gw_error *err);

/** Steps that the last equilibrium took. */
int gw_road_steps(const gw_road *road);

#endif
