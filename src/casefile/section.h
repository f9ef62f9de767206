/* SPDX-License-Identifier: MIT */
/** The sections of a case file. Each has its own read_*.c; read_case.c calls them in order. */
#ifndef GW_CASEFILE_SECTION_H
#define GW_CASEFILE_SECTION_H

#include "casefile/get.h"
#include "giveway/casefile.h"

/** Parts taken from shelves (see casefile/shelf.h). */
typedef struct gw_shelf {
    int n, capacity;
    struct gw_shelf_part *part;
} gw_shelf;

/** What the sections share. */
typedef struct gw_case_reader {
    gw_reader rd;
    const gw_material_set *materials;
    gw_case *c;              /**< being filled                                      */
    int n_named;             /**< bushes that can be named: those under `bushes`    */
    int capacity;            /**< room in c->bushes                                 */
    const cJSON **bush_json; /**< where each of c->bushes stands in the file */
    gw_shelf shelf;
    const struct gw_again *again; /**< a draw of a case that was read before; NULL: read for the first time */
    gw_node top;
} gw_case_reader;

/** What `ride` takes where it gives no default_bracket_N_per_mm. Common practice. */
#define GW_USUAL_BRACKET_N_PER_MM 25000

/** Fills `v`; true where the section has no fault. */
bool gw_read_vehicle(const gw_reader *rd, const gw_node *node, gw_vehicle *v);
/** `tyre_table`: names of files beside the case; read and checked here. */
void gw_read_tyre_tables(const gw_reader *rd, const gw_node *vehicle, gw_vehicle *v);
bool gw_read_wheel(const gw_reader *rd, const gw_node *corner, gw_wheel *wheel);

/** `bushes`, with room for those that are written in place elsewhere. */
void gw_read_bushes(gw_case_reader *cr);

/**
 * The bush that a joint or kit asks for: a name, or an object in place that is added under `name`.
 * `housing_known` says whether its joint names a housing, which an offset needs. @return index; -1: fault.
 */
int gw_read_bush_ref(gw_case_reader *cr, const gw_node *node, const char *name, bool housing_known);

/** Describes one bush; the parts by type are in read_rubber.c and read_bearing.c. */
void gw_read_bush(const gw_case_reader *cr, const gw_node *node, gw_bush *bush);
/** The stiffness factor alone. */
void gw_read_stiffness(const gw_reader *rd, const gw_node *node, gw_bush *bush);
void gw_read_rubber(const gw_case_reader *cr, const gw_node *node, gw_bush *bush);
void gw_read_seat(const gw_reader *rd, const gw_node *bush, gw_seat *seat);
void gw_read_measured(const gw_reader *rd, const gw_node *node, gw_bush *bush);
void gw_read_stop(const gw_reader *rd, const gw_node *bush, gw_stop *stop);

/** `node` of the corner, and of the axle that shares parts; its json is NULL where there is none. */
void gw_read_corner(gw_case_reader *cr, const gw_node *node, const gw_node *shared, gw_axle axle);
void gw_read_kits(gw_case_reader *cr);
void gw_read_loads(gw_case_reader *cr);
void gw_read_ride(const gw_reader *rd, const gw_node *node, gw_ride *ride);
void gw_read_align(gw_case_reader *cr);
void gw_read_shop(const gw_reader *rd, const gw_node *top, gw_shop *out);
void gw_read_uncertain(gw_case_reader *cr);
void gw_read_jobs(gw_case_reader *cr);
void gw_read_choose(gw_case_reader *cr);
void gw_read_goals(gw_case_reader *cr, const gw_node *choose);

/** Warns of a length of `object` that is known, above 0 and below `least_mm`: likely metres. */
void gw_warn_short(const gw_reader *rd, const gw_node *object, const char *key, double metres,
                   double least_mm);
/** Warns of a point so near the origin that no car has one there: likely metres. */
void gw_warn_near_origin(const gw_reader *rd, const gw_node *at, gw_vec3 p);

/** Adds a fault for every name in `names` (n of them, NULL allowed) that stands there twice. */
void gw_check_unique(const gw_reader *rd, const gw_node *list, const char *const *names, int n,
                     const char *what);

/** Of "front.upper_rear" the axle, and what stands behind the first dot; NULL where that names no axle. */
const char *gw_behind_axle(const char *name, gw_axle *axle);

/** The joint of that name in a corner; a fault at `at` and -1 where there is none. */
int gw_joint_named(const gw_reader *rd, const gw_node *at, const gw_corner *corner, const char *name);
int gw_body_named(const gw_reader *rd, const gw_node *at, const gw_corner *corner, const char *name);

#endif
