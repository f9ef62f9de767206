/* SPDX-License-Identifier: MIT */
/** A first case as it is written. */
#ifndef START_CASE_H
#define START_CASE_H

#include "base/buf.h"
#include "format/json.h"
#include "giveway/materials.h"
#include "start/car.h"

/** The name of what a kit has on offer in place of a rubber bush. */
void gw_start_on_offer(int bush, const char *kit, char *name, size_t size);

/** The bushes of the case. */
void gw_start_bushes(gw_json *json, const gw_start_car *car, const gw_material_set *materials);

/** The case as JSON. `materials` tells the compound that a hardness outside the table is made from. */
void gw_start_case(const gw_start_car *car, const gw_material_set *materials, gw_buf *out);

#endif
