/* SPDX-License-Identifier: MIT */
/**
 * Material files and the set of compounds that a case may name.
 *
 * A material file is JSON (RFC 8259) of format "giveway-material-1": `name`, `label`, and values, each an
 * object {"value", "tolerance", "trust", "source"} under a key that carries its unit. `tolerance` is a
 * relative half band (0.2 = +-20 %, left out: 0); `trust` is "published", "from memory" or
 * "common practice"; `source` says who printed it. Numbers are read in the C locale: the library
 * never calls setlocale, and neither may a program that uses these functions.
 */
#ifndef GIVEWAY_MATERIALS_H
#define GIVEWAY_MATERIALS_H

#include "giveway/api.h"
#include "giveway/faults.h"
#include "giveway/material.h"
#include "giveway/status.h"

GW_API_BEGIN

/** Limits of a set. */
enum { GW_MAX_MATERIALS = 1000 };

/** Owned by the caller: start with `{0}`, end with gw_materials_free. */
typedef struct gw_material_set {
    gw_material *items;
    int n, capacity;
} gw_material_set;

/**
 * Adds the compounds that are compiled into the library.
 *
 * @param[in,out] set     a later compound of the same name replaces an earlier one.
 * @param[in,out] faults  one line a fault; the set is untouched by files that have any.
 * @retval GW_OK, GW_E_SCHEMA, GW_E_NOMEM
 */
gw_status gw_materials_builtin(gw_material_set *set, gw_faults *faults);

/** Adds every file DIR/NAME.json, in the order of the names. GW_E_IO: the directory cannot be read. */
gw_status gw_materials_add_dir(gw_material_set *set, const char *dir, gw_faults *faults);

/** Adds one file. @retval GW_OK, GW_E_IO, GW_E_PARSE, GW_E_SCHEMA, GW_E_NOMEM */
gw_status gw_materials_add_file(gw_material_set *set, const char *path, gw_faults *faults);

/** Adds one material from `size` bytes of JSON; `file` is only named in faults. */
gw_status gw_materials_add_text(gw_material_set *set, const char *file, const char *text, size_t size,
                                gw_faults *faults);

/** The compound of that name, borrowed until the set changes; NULL: none. */
const gw_material *gw_materials_find(const gw_material_set *set, const char *name);

/** Frees the set and leaves it empty and usable. */
void gw_materials_free(gw_material_set *set);

GW_API_END

#endif
