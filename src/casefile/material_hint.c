/* SPDX-License-Identifier: MIT */
#include "casefile/material_hint.h"

#include "casefile/nearest.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* "nr-52": the number after the last dash and the length of what stands before; -1: no number. */
static int grade(const char *name, size_t *stem)
{
    const char *dash = strrchr(name, '-');
    char *end;
    if (!dash || dash[1] < '0' || dash[1] > '9') return -1;
    long v = strtol(dash + 1, &end, 10);
    *stem = (size_t)(dash - name);
    return *end == '\0' && v <= 1000 ? (int)v : -1;
}

/* The compounds of the same family next below and next above in hardness; NULL where there is none. */
static void neighbours(const gw_material_set *set, const char *name, const char **below, const char **above)
{
    size_t stem = 0, other_stem = 0;
    int want = grade(name, &stem), lower = -1, upper = 1001;
    *below = *above = NULL;
    for (int i = 0; want >= 0 && i < set->n; i++) {
        const char *other = set->items[i].name;
        int g = grade(other, &other_stem);
        if (g < 0 || other_stem != stem || strncmp(other, name, stem) != 0) continue;
        if (g <= want && g > lower) lower = g, *below = other;
        if (g >= want && g < upper) upper = g, *above = other;
    }
}

const char *gw_material_hint(const gw_material_set *set, const char *name, char hint[GW_MATERIAL_HINT_MAX])
{
    const char *below, *above;
    char one[GW_HINT_MAX];
    gw_nearest near = { .want = name };
    neighbours(set, name, &below, &above);
    if (below && above) {
        snprintf(hint, GW_MATERIAL_HINT_MAX, "; its neighbours in hardness are \"%s\" and \"%s\": name one",
                 below, above);
    } else if (below || above) {
        snprintf(hint, GW_MATERIAL_HINT_MAX,
                 "; that hardness is outside the table, which %s at \"%s\": name that",
                 below ? "ends" : "begins", below ? below : above);
    } else {
        for (int i = 0; i < set->n; i++) gw_nearest_offer(&near, set->items[i].name);
        snprintf(hint, GW_MATERIAL_HINT_MAX, "%s", gw_nearest_hint(&near, one));
    }
    return hint;
}
