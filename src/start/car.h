/* SPDX-License-Identifier: MIT */
/** The car of a first case before it is written: what was asked for, what is usual, what was read. */
#ifndef START_CAR_H
#define START_CAR_H

#include "start/layout.h"

#include <stddef.h>

enum { GW_START_POINTS = 24, GW_START_JOINTS = 24, GW_START_MEMBERS = 12 };

#define GW_START_STEEL_SHEAR 79.3e9 /* shear modulus of a bar [Pa] */
#define GW_START_POINT_BAND  15.0   /* of a place that is assumed, 95 % [mm]: common practice */

typedef enum gw_start_answer { GW_START_AS_USUAL, GW_START_YES, GW_START_NO } gw_start_answer;

/** Where the rack is; NONE: the tie rods hold on to what stands still. */
typedef enum gw_start_rack {
    GW_START_RACK_AS_USUAL,
    GW_START_AHEAD,
    GW_START_BEHIND,
    GW_START_NONE
} gw_start_rack;

/** The figures that an option gives. */
typedef enum gw_start_number {
    GW_START_MASS,
    GW_START_FRONT_FRACTION,
    GW_START_WHEELBASE,
    GW_START_FRONT_TRACK,
    GW_START_REAR_TRACK,
    GW_START_RADIUS,
    GW_START_CG_HEIGHT,
    GW_START_BRAKE_FRACTION,
    GW_START_NUMBERS
} gw_start_number;

/** What one may be, and the step that a person would write it in. */
typedef struct gw_start_range {
    double low, high, step;
} gw_start_range;

extern const gw_start_range GW_START_RANGES[GW_START_NUMBERS];

/** What the options say; 0 or NULL: left out. */
typedef struct gw_start_wish {
    const gw_start_layout *layout[GW_AXLES];
    double number[GW_START_NUMBERS];
    const char *driven; /**< front, rear or all */
    const char *title;
    gw_start_answer subframe[GW_AXLES];
    double bar[GW_AXLES]; /**< diameter [mm]; below 0: none */
    gw_start_rack rack;
} gw_start_wish;

/** A figure and, where it was read, its band that holds 95 % (0: assumed, or none). */
typedef struct gw_start_figure {
    double v, within;
    bool read;
} gw_start_figure;

/** Of a layout as it is fitted: with rack, subframe and bar, or without. */
typedef struct gw_start_parts {
    gw_start_point point[GW_START_POINTS];
    gw_start_joint joint[GW_START_JOINTS];
    gw_start_member member[GW_START_MEMBERS];
    int n_points, n_joints, n_members;
} gw_start_parts;

typedef struct gw_start_corner {
    const gw_start_layout *layout;
    gw_start_parts parts;
    gw_start_rack rack;
    bool subframe;
    double bar; /**< diameter [mm]; 0: none */
    gw_start_figure track, radius, camber, toe, wheel_mass, tyre, spring, damper;
    gw_start_figure place[GW_START_POINTS]
                         [3]; /**< forward of the wheel centre, from the middle, above the floor */
} gw_start_corner;

typedef struct gw_start_car {
    char title[200];
    char driven[8];
    gw_start_figure mass, front_fraction, wheelbase, cg_height, brake_fraction;
    gw_start_corner corner[GW_AXLES];
    gw_start_figure hardness[GW_START_RUBBERS]; /**< points of gauge A */
} gw_start_car;

/** A car of usual proportions around what is given. */
void gw_start_make(const gw_start_wish *wish, gw_start_car *car);

/** What is on one wheel of the axle at rest [N]. */
double gw_start_load(const gw_start_car *car, int axle);

/** Puts together what the corner has: its layout with the rack, subframe and bar that it is told to have. */
void gw_start_fit(gw_start_corner *corner);

/** Index of a point; -1: there is none of that name. */
int gw_start_point_named(const gw_start_parts *parts, const char *name);

/** Whether the axle of the corner has joints of its own. */
bool gw_start_shares(const gw_start_corner *corner);

/** True where a joint of the car has that bush. */
bool gw_start_uses(const gw_start_car *car, int bush);

/** The path of a point in the case, of the corner's points or the axle's; 100 bytes are enough. */
void gw_start_point_path(const gw_start_corner *corner, int axle, int point, char *path, size_t size);

/** Every figure of the sheet but points and hardness. */
typedef struct gw_start_key {
    const char *of, *unit, *how;
    double low, high; /**< allowed, open                             */
    double within;    /**< band where a reading has none; 0: none    */
    char kind;        /**< 'l' length, 'a' angle, 'r' rate, ' ' else */
    size_t offset;    /**< of a gw_start_figure in gw_start_car      */
} gw_start_key;

extern const gw_start_key GW_START_KEYS[];
extern const int GW_START_N_KEYS;

const gw_start_figure *gw_start_figure_of(const gw_start_car *car, const gw_start_key *key);

/** `v` to the nearest multiple of `step`, which is 1 over a whole number, or whole. */
double gw_start_rounded(double v, double step);

#endif
