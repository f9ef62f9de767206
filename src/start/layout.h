/* SPDX-License-Identifier: MIT */
/**
 * What a suspension of a first case is made of: points, joints, members, bars, one row a layout and axle. In
 * the units of a case (mm, N/mm, degrees), as all of a first case is until it is written.
 */
#ifndef START_LAYOUT_H
#define START_LAYOUT_H

#include "giveway/names.h"

#include <stdbool.h>

#define GW_START_COUNT(a) ((int)(sizeof(a) / sizeof *(a)))

/** Bushes of a first case; those of rubber have a harder and a stiffer one on offer. */
typedef enum gw_start_bush_id {
    GW_START_ARM_RUBBER,
    GW_START_TENSION_RUBBER,
    GW_START_UPPER_RUBBER,
    GW_START_LINK_RUBBER,
    GW_START_TRAIL_RUBBER,
    GW_START_SUBFRAME_RUBBER,
    GW_START_RACK_RUBBER,
    GW_START_BAR_RUBBER,
    GW_START_RUBBERS,
    GW_START_STRUT_MOUNT = GW_START_RUBBERS,
    GW_START_BALL,
    GW_START_WELD,
    GW_START_BEAM,
    GW_START_RACK_GUIDE,
    GW_START_FRONT_BAR,
    GW_START_REAR_BAR,
    GW_START_BUSHES
} gw_start_bush_id;

/** A bush by its name in the case, and its rubber as assumed [points of gauge A]; 0: it is none. */
typedef struct gw_start_bush {
    const char *name;
    double hardness;
} gw_start_bush;

extern const gw_start_bush GW_START_BUSH[GW_START_BUSHES];

/** Of a point of an axle: left, right, left for both, or on the car's middle, which is where it stays. */
typedef enum gw_start_side {
    GW_START_OF_CORNER,
    GW_START_LEFT,
    GW_START_RIGHT,
    GW_START_BOTH,
    GW_START_MIDDLE
} gw_start_side;

/** What a joint of the chassis hangs on where the axle has it. */
typedef enum gw_start_hung {
    GW_START_ON_BODY,
    GW_START_ON_SUBFRAME,
    GW_START_ON_SUBFRAME_BEHIND, /**< of the rear axle only */
    GW_START_ON_RACK
} gw_start_hung;

/** A place from the wheel centre: forward, inward, above [mm]. */
typedef struct gw_start_point {
    const char *name;
    double from_wheel[3];
    const char *how;    /**< where to hold the tape                       */
    gw_start_side side; /**< whose point it is: the corner's, or the axle's */
} gw_start_point;

typedef struct gw_start_joint {
    const char *name, *label, *body_a, *body_b; /**< at the point of its own name */
    double axis[3];
    gw_start_bush_id bush;
    gw_start_side
        of; /**< the corner's; else the axle's: one, in the middle of the car or beside it, or two */
    gw_start_hung on;
} gw_start_joint;

typedef struct gw_start_member {
    const char *name;
    double mass; /**< [kg] */
    bool shared; /**< by both wheels */
} gw_start_member;

/** A bar and its drop links: where on a corner the bar turns in its bush, where its end is, and where the
 * link goes. */
typedef struct gw_start_bar {
    gw_start_point bush, end, link;
    const char *turns_on, *link_on;
    double ratio; /**< the end's travel per wheel travel */
} gw_start_bar;

typedef struct gw_start_layout {
    const char *name;
    gw_axle axle;
    const gw_start_point *point, *other_point, *behind; /**< other: in place of those of their names behind;
                                                             behind: with the rack behind the axle */
    int n_points, n_other_points, n_behinds;
    const gw_start_joint *joint, *other_joint;
    int n_joints, n_other_joints;
    gw_start_member member[5];
    int n_members;
    const gw_start_bar *bar;         /**< NULL: none can be fitted      */
    bool frameless, framed, barless; /**< no subframe can be fitted; as usual there is one, and no bar */
    const char *spring_on;
    double bushes_rate, bushes_per_load; /**< part of the wheel rate on a tyre that bushes have [N/mm], and
                                            its growth per N */
    double motion_ratio2;    /**< wheel rate on a tyre per spring rate                                    */
    const char *adjustable;  /**< the member whose length can be set; NULL: none                       */
    const char *final_drive; /**< the member that carries it where the axle is driven; NULL: the body */
} gw_start_layout;

extern const gw_start_layout GW_START_LAYOUTS[];
extern const int GW_START_N_LAYOUTS;

/** The layout of that name for an axle; NULL: none. */
const gw_start_layout *gw_start_find(const char *name, gw_axle axle);

#endif
