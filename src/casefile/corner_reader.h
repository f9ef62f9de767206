/* SPDX-License-Identifier: MIT */
/** What the files that read a corner share. */
#ifndef GW_CASEFILE_CORNER_READER_H
#define GW_CASEFILE_CORNER_READER_H

#include "casefile/section.h"

/** Points nearer than this are one [m]: a hundredth of a millimetre is beyond any tape measure. */
#define GW_COINCIDENT 1e-5

/** Coordinates lie within +- this [mm]. */
#define GW_POINT_LIMIT_MM 1e5

typedef struct gw_corner_point {
    const char *name; /**< in the tree */
    gw_vec3 at;       /**< [m]         */
    bool known, used;
} gw_corner_point;

typedef struct gw_corner_reader {
    gw_case_reader *cr;
    gw_node node, points_node, members_node, joints_node;
    gw_corner *corner;
    int n_points;
    gw_corner_point *points;
    bool *placed; /**< a joint: whether its place is known */
    bool clamped; /**< bolts tightened at `clamp_travel_mm`, for joints that do not say it themselves */
    double clamp_travel_mm;
} gw_corner_reader;

/** The place under `key`: the name of a point, or [x, y, z]. [m] */
bool gw_read_place(gw_corner_reader *r, const gw_node *up, const char *key, gw_vec3 *out);

void gw_read_joints(gw_corner_reader *r);

/** What only shows when all is read: members without joints, bodies that hang on nothing, no length. */
void gw_check_corner(gw_corner_reader *r);

#endif
