/* SPDX-License-Identifier: MIT */
/**
 * A first case from a few measurements, and the sheet that says what to measure. What is here is a case
 * before it is written, so its figures stand in the units of the case (mm, N/mm, degrees), not in SI.
 */
#ifndef SHOW_START_H
#define SHOW_START_H

#include "base/buf.h"
#include "giveway/corner.h"
#include "giveway/materials.h"

#include <stdbool.h>

#define GW_START_COUNT(a) ((int)(sizeof(a) / sizeof *(a)))

enum { GW_START_POINTS = 16, GW_START_MEMBERS = 5 };

/** Bushes of a first case; those of rubber have a harder and a stiffer one on offer. */
typedef enum gw_start_bush_id {
    GW_START_ARM_RUBBER,
    GW_START_TENSION_RUBBER,
    GW_START_UPPER_RUBBER,
    GW_START_LINK_RUBBER,
    GW_START_TRAIL_RUBBER,
    GW_START_RUBBERS,
    GW_START_STRUT_MOUNT = GW_START_RUBBERS,
    GW_START_BALL,
    GW_START_WELD,
    GW_START_BEAM,
    GW_START_BUSHES
} gw_start_bush_id;

/** Of a point of an axle: left, right, or on the car's middle, which is where it stays. */
typedef enum gw_start_side {
    GW_START_OF_CORNER,
    GW_START_LEFT,
    GW_START_RIGHT,
    GW_START_MIDDLE
} gw_start_side;

/** A place from the wheel centre: forward, inward, above [mm]. */
typedef struct gw_start_point {
    const char *name;
    double from_wheel[3];
    bool pivot;         /**< its height follows from the anti-lift wanted */
    const char *how;    /**< where to hold the tape                       */
    gw_start_side side; /**< whose point it is: the corner's, or the axle's */
} gw_start_point;

typedef struct gw_start_joint {
    const char *name, *label, *body_a, *body_b; /**< at the point of its own name */
    double axis[3];
    gw_start_bush_id bush;
    gw_start_side of; /**< the corner's; else the axle's: one, in the middle of the car or beside it */
} gw_start_joint;

typedef struct gw_start_member {
    const char *name;
    double mass; /**< [kg] */
    bool shared; /**< by both wheels */
} gw_start_member;

typedef struct gw_start_layout {
    const char *name;
    gw_axle axle;
    const gw_start_point *point;
    int n_points;
    const gw_start_joint *joint;
    int n_joints;
    gw_start_member member[GW_START_MEMBERS];
    int n_members;
    const char *spring_on;
    double bushes_rate,
        bushes_per_load;     /**< part of the wheel rate that bushes have [N/mm], and its growth per N */
    double motion_ratio2;    /**< wheel rate per spring rate                                    */
    double anti_lift, arm;   /**< wanted [-] on an arm so long [mm]; 0: as the points are        */
    const char *adjustable;  /**< the member whose length can be set; NULL: none                       */
    const char *final_drive; /**< the member that carries it where the axle is driven; NULL: the body */
} gw_start_layout;

extern const gw_start_layout GW_START_LAYOUTS[];
extern const int GW_START_N_LAYOUTS;

/** The layout of that name for an axle; NULL: none. */
const gw_start_layout *gw_start_find(const char *name, gw_axle axle);

/** What the options say; 0 or NULL: left out. */
typedef struct gw_start_wish {
    const gw_start_layout *layout[GW_AXLES];
    double mass, front_fraction, wheelbase, track[GW_AXLES], radius, cg_height, brake_fraction;
    const char *driven; /**< front, rear or all */
    const char *title;
} gw_start_wish;

/** A figure and, where it was read, its band that holds 95 % (0: assumed, or none). */
typedef struct gw_start_figure {
    double v, within;
    bool read;
} gw_start_figure;

typedef struct gw_start_corner {
    const gw_start_layout *layout;
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

/** True where a joint of the car has that bush. */
bool gw_start_uses(const gw_start_car *car, int bush);

/** The path of a point in the case, of the corner's points or the axle's; 100 bytes are enough. */
void gw_start_point_path(const gw_start_layout *layout, int axle, int point, char *path, size_t size);

const char *gw_start_bush_name(int bush);
double gw_start_bush_hardness(int bush); /**< as assumed, points of gauge A */

/** The case as JSON. `materials` tells the compound that a hardness outside the table is made from. */
void gw_start_case(const gw_start_car *car, const gw_material_set *materials, gw_buf *out);

/** The sheet of what to measure, in the order one walks round the car. */
void gw_start_sheet(const gw_start_car *car, gw_buf *out);

/** The same for a clipboard: HTML of A4 pages, with a drawing of each corner that numbers its points. */
void gw_start_page(const gw_start_car *car, gw_buf *out);

/**
 * Puts what a filled sheet says into the car.
 * @param[in] as_read  do not take figures far off the assumption for slips.
 * @retval GW_OK; else faults with line and column are added, and the car is untouched.
 */
gw_status gw_start_read(const char *path, bool as_read, gw_start_car *car, gw_faults *faults);

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
