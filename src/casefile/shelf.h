/* SPDX-License-Identifier: MIT */
/** Parts of the workshop that several cases share: their bushes, shop and jobs are taken into the case. */
#ifndef GW_CASEFILE_SHELF_H
#define GW_CASEFILE_SHELF_H

#include "casefile/section.h"

/** What may stand in a shelf; ends with NULL. */
extern const char *const GW_SHELF_KEYS[];

/** Where a part that was taken from a shelf comes from. */
typedef struct gw_shelf_part {
    const cJSON *json;
    const char *file;
} gw_shelf_part;

/**
 * Reads the files that `shelf` of the case at cr->top names, beside the case, and takes over what the case
 * and later shelves do not have themselves. What is overridden is noted in the case. Faults name the shelf's
 * file.
 */
void gw_take_shelves(gw_case_reader *cr, cJSON *case_root);

/** The shelf's file that a part was taken from; NULL: it is the case's own. */
const char *gw_shelf_of(const gw_shelf *shelf, const cJSON *json);

/** True where the file is a shelf itself, which may stand where a case does. */
bool gw_is_shelf(const gw_node *top);

#endif
