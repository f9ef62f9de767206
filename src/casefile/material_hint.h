/* SPDX-License-Identifier: MIT */
#ifndef GW_CASEFILE_MATERIAL_HINT_H
#define GW_CASEFILE_MATERIAL_HINT_H

#include "giveway/materials.h"

enum { GW_MATERIAL_HINT_MAX = 300 };

/**
 * What to write instead of a material that is not in the set: for "nr-52" the neighbours "nr-50" and
 * "nr-55" by hardness, else the name with the fewest slips. Written to `hint`, which is returned.
 */
const char *gw_material_hint(const gw_material_set *set, const char *name, char hint[GW_MATERIAL_HINT_MAX]);

#endif
