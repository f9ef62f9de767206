/* SPDX-License-Identifier: MIT */
/** Reading a case anew from a tree in which numbers were changed. */
#ifndef GW_CASEFILE_AGAIN_H
#define GW_CASEFILE_AGAIN_H

#include "giveway/casefile.h"

#include <cjson/cJSON.h>

/** Sections that are taken over where no number in them was changed. */
enum {
    GW_SECTION_VEHICLE,
    GW_SECTION_FRONT, /**< the corner, and what its wheels share: one of these per axle, in their order */
    GW_SECTION_REAR,
    GW_SECTION_BUSHES,
    GW_SECTION_KITS,
    GW_SECTION_RIDE,
    GW_SECTION_ALIGN,
    GW_SECTIONS
};

typedef struct gw_again {
    const gw_case *known;      /**< with other numbers of the same file; outlives what is read   */
    bool section[GW_SECTIONS]; /**< one in which numbers were changed                            */
    int n_touched;
    const cJSON **touched; /**< changed numbers, but for stiffness factors                   */
    bool *anew;            /**< out: one a bush, true where it was read                      */
} gw_again;

/** As gw_case_read, from a tree, without faults that were looked for when the file was read. */
gw_status gw_case_read_again(const gw_again *again, cJSON *document, gw_case *out, gw_faults *faults);

#endif
