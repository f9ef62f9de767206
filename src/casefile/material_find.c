/* SPDX-License-Identifier: MIT */
/* A material by its name. */
#include "giveway/materials.h"

#include <string.h>

const gw_material *gw_materials_find(const gw_material_set *set, const char *name)
{
    for (int i = 0; i < set->n; i++)
        if (strcmp(set->items[i].name, name) == 0) return &set->items[i];
    return NULL;
}
