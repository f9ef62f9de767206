/* SPDX-License-Identifier: MIT */
/**
 * A first case from a few measurements, and the sheet that says what to measure. What is here is a case
 * before it is written, so its figures stand in the units of the case (mm, N/mm, degrees), not in SI.
 */
#ifndef SHOW_START_H
#define SHOW_START_H

#include "base/buf.h"
#include "format/json.h"
#include "giveway/arena.h"
#include "giveway/corner.h"
#include "giveway/materials.h"

#include <stdbool.h>

#define GW_START_COUNT(a) ((int)(sizeof(a) / sizeof *(a)))

enum { GW_START_POINTS = 24, GW_START_JOINTS = 24, GW_START_MEMBERS = 12 };

#define GW_START_STEEL_SHEAR 79.3e9 /* shear modulus of a bar [Pa] */

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
    bool pivot;         /**< its height follows from the anti-lift wanted */
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

typedef enum gw_start_answer { GW_START_AS_USUAL, GW_START_YES, GW_START_NO } gw_start_answer;

/** Where the rack is; NONE: the tie rods hold on to what stands still. */
typedef enum gw_start_rack {
    GW_START_RACK_AS_USUAL,
    GW_START_AHEAD,
    GW_START_BEHIND,
    GW_START_NONE
} gw_start_rack;

/** What the options say; 0 or NULL: left out. */
typedef struct gw_start_wish {
    const gw_start_layout *layout[GW_AXLES];
    double mass, front_fraction, wheelbase, track[GW_AXLES], radius, cg_height, brake_fraction;
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

const char *gw_start_bush_name(int bush);
double gw_start_bush_hardness(int bush); /**< as assumed, points of gauge A */

/** The name of what a kit has on offer in place of a rubber bush. */
void gw_start_on_offer(int bush, const char *kit, char *name, size_t size);

/** The bushes of the case. */
void gw_start_bushes(gw_json *json, const gw_start_car *car, const gw_material_set *materials);

/** The case as JSON. `materials` tells the compound that a hardness outside the table is made from. */
void gw_start_case(const gw_start_car *car, const gw_material_set *materials, gw_buf *out);

/** The first nine columns of a sheet, which are what is read back. */
typedef enum gw_start_head {
    GW_START_WHAT,
    GW_START_OF,
    GW_START_TO,
    GW_START_X,
    GW_START_Y,
    GW_START_Z,
    GW_START_VALUE,
    GW_START_UNIT,
    GW_START_WITHIN,
    GW_START_HEADS
} gw_start_head;

extern const char *const GW_START_HEAD[GW_START_HEADS];

/** The rows of a filled sheet as they stood there; {0}: none. */
typedef struct gw_start_filled {
    gw_arena arena;
    const char *(*cell)[GW_START_HEADS]; /**< [n] */
    bool *written;                       /**< [n], where a sheet has taken the row up */
    int n;
} gw_start_filled;

/**
 * The sheet of what to measure, in the order one walks round the car.
 * @param[in] car     as assumed, before anything was read.
 * @param     filled  what a sheet says already stands in its rows again; rows of its own come last.
 */
void gw_start_sheet(const gw_start_car *car, gw_start_filled *filled, gw_buf *out);

/** The same for a clipboard: HTML of A4 pages, with a drawing of each corner that numbers its points. */
void gw_start_page(const gw_start_car *car, gw_buf *out);

/**
 * Puts what a filled sheet says into the car.
 * @param[in]  as_read  do not take figures far off the assumption for slips.
 * @param[out] filled   its rows, for another sheet; the caller frees the arena, whatever is returned; NULL:
 * not wanted.
 * @retval GW_OK; else faults with line and column are added, and the car is untouched.
 */
gw_status gw_start_read(const char *path, bool as_read, gw_start_car *car, gw_start_filled *filled,
                        gw_faults *faults);

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

enum { GW_START_DISTANCES = 200 };

typedef struct gw_start_distance {
    int axle[2], point[2];
    double v, within;
    int line;
} gw_start_distance;

/**
 * Least sum of ((coordinate - reading or assumption)/sigma)^2 and ((distance - reading)/sigma)^2, sigma half
 * the band; the bands of the points become two standard deviations. Distances more than three of them off
 * what the others say are warned of, the worst first.
 */
gw_status gw_start_place_points(gw_start_car *car, const gw_start_distance *distance, int n, const char *path,
                                gw_faults *faults);

#endif
