/* SPDX-License-Identifier: MIT */
/** What the files that read a corner share. */
#ifndef GW_CASEFILE_CORNER_READER_H
#define GW_CASEFILE_CORNER_READER_H

#include "casefile/section.h"
#include "giveway/pair.h"

/** Points nearer than this are one [m]: a hundredth of a millimetre is beyond any tape measure. */
#define GW_COINCIDENT 1e-5

/** Coordinates lie within +- this [mm]. */
#define GW_POINT_LIMIT_MM 1e5

typedef struct gw_corner_point {
    const char *name; /**< in the tree */
    gw_vec3 at;       /**< [m]         */
    bool known, used;
} gw_corner_point;

struct gw_corner_reader;
typedef struct gw_corner_reader {
    gw_case_reader *cr;
    gw_node node, points_node, members_node, joints_node;
    gw_corner *corner;
    bool is_axle; /**< what both wheels share is being read, not a corner                       */
    const struct gw_corner_reader *axle; /**< of a corner: its axle, where it has one                       */
    gw_body *shared; /**< of an axle: its members                                                  */
    int n_shared;
    gw_axle_joint *more; /**< of an axle: its joints                                                   */
    int n_more;
    int n_points;
    gw_corner_point *points;
    bool *placed; /**< a joint: whether its place is known */
    bool clamped; /**< bolts tightened at `clamp_travel_mm`, for joints that do not say it themselves */
    double clamp_travel_mm;
} gw_corner_reader;

/** The place under `key`: the name of a point, or [x, y, z]. [m] */
bool gw_read_place(gw_corner_reader *r, const gw_node *up, const char *key, gw_vec3 *out);

void gw_read_points(gw_corner_reader *r);
void gw_warn_unused_points(gw_corner_reader *r);
/** One member, given under its name, into `body`. */
bool gw_read_member(const gw_reader *rd, const gw_node *node, gw_body *body);

void gw_read_joints(gw_corner_reader *r);
/** One joint; its bodies are looked for by gw_body_of. */
void gw_read_joint(gw_corner_reader *r, const gw_node *node, int index, gw_joint *joint);
/** A body that a joint, spring or damper names: of the corner and its axle, or, in an axle, with its side. */
int gw_body_of(gw_corner_reader *r, const gw_node *at, const char *name);
/** A member that both wheels share, by its name; -1: there is none. */
int gw_body_shared(const gw_corner *corner, const char *name);

/** The members and joints that the wheels of an axle share. `corner` of the second is that of the first. */
bool gw_read_axle_members(gw_corner_reader *axle);
void gw_read_axle_joints(gw_corner_reader *axle);

/** What only shows when all is read: members without joints, bodies that hang on nothing, no length. */
void gw_check_corner(gw_corner_reader *r, const gw_corner_reader *axle);

#endif
