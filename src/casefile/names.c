/* SPDX-License-Identifier: MIT */
/* Names to indices, and names that stand twice. */
#include "casefile/section.h"

#include <string.h>

#define FIND(list, n, wanted)                                                                                \
    for (int i = 0; i < (n); i++)                                                                            \
        if ((list)[i].name && strcmp((list)[i].name, (wanted)) == 0) return i;                               \
    return -1

int gw_case_find_bush(const gw_case *c, const char *name)
{
    FIND(c->bushes, c->n_bushes, name);
}

int gw_case_find_kit(const gw_case *c, const char *name)
{
    FIND(c->kits, c->n_kits, name);
}

int gw_case_find_load(const gw_case *c, const char *name)
{
    FIND(c->loads, c->n_loads, name);
}

int gw_corner_find_joint(const gw_corner *corner, const char *name)
{
    for (int j = 0; j < corner->n_joints; j++) {
        const char *plain = corner->joints[j].plain;
        if (plain && strcmp(plain, name) == 0) return j;
    }
    FIND(corner->joints, corner->n_joints, name);
}

int gw_corner_find_body(const gw_corner *corner, const char *name)
{
    for (int b = 0; b < corner->n_bodies; b++) {
        const char *plain = corner->bodies[b].plain;
        if (plain && strcmp(plain, name) == 0) return b;
    }
    FIND(corner->bodies, corner->n_bodies, name);
}

const char *gw_behind_axle(const char *name, gw_axle *axle)
{
    const char *dot = strchr(name, '.');
    for (int a = 0; dot && a < GW_AXLES; a++) {
        size_t n = (size_t)(dot - name);
        if (strlen(GW_AXLE_NAMES[a]) != n || strncmp(GW_AXLE_NAMES[a], name, n) != 0) continue;
        *axle = (gw_axle)a;
        return dot + 1;
    }
    return NULL;
}

void gw_check_unique(const gw_reader *rd, const gw_node *list, const char *const *names, int n,
                     const char *what)
{
    for (int i = 1; i < n; i++) {
        gw_node entry = { NULL, list, NULL, i };
        gw_node at = gw_node_key(&entry, "name");
        int first = 0;
        while (names[i] && first < i && !(names[first] && strcmp(names[first], names[i]) == 0)) first++;
        if (names[i] && first < i)
            gw_fault(rd, &at, "there is another %s of this name, entry %d: every name must be different",
                     what, first);
    }
}
