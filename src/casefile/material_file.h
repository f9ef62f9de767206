/* SPDX-License-Identifier: MIT */
/** One compound: from a material file, or written in place in a bush. */
#ifndef GW_CASEFILE_MATERIAL_FILE_H
#define GW_CASEFILE_MATERIAL_FILE_H

#include "casefile/get.h"
#include "giveway/materials.h"

/** A whole material file: every value an object with trust and source. True where it has no fault. */
bool gw_read_material(const gw_reader *rd, const gw_node *top, gw_material *out);

/** The `material` of a bush of rubber: a name, or an object whose values may be plain numbers. */
bool gw_read_material_ref(const gw_reader *rd, const gw_node *bush, const gw_material_set *set,
                          gw_material *out);

/** A compound that is compiled in; the list ends with a name of NULL. Made by scripts/embed_materials.sh. */
typedef struct gw_embedded_file {
    const char *name; /**< "nr-50.json" */
    const unsigned char *bytes;
    size_t size;
} gw_embedded_file;

extern const gw_embedded_file gw_embedded_materials[];

#endif
