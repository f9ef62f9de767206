/* SPDX-License-Identifier: MIT */
/* Tables of the workshop's copy: a row a joint, a column a kit. */
#include "page/tables.h"

static void put_table(const gw_page *p, gw_slots *table, gw_axle axle, gw_page_joint_cell *put)
{
    const gw_corner *corner = &p->c->corners[axle];
    gw_slots_text(table, "axle", gw_page_wheel_of(axle));
    for (int k = 0; k < p->c->n_kits; k++)
        if (gw_page_has_kit(p, k)) gw_page_put_kit(p, gw_slots_element(table, "heads"), k);
    for (int j = 0; j < corner->n_joints; j++) {
        gw_slots *row = gw_slots_element(table, "joints");
        GW_SLOTS(row, { "joint", gw_page_joint_of_table(p, axle, j) }, { "key", corner->joints[j].name });
        gw_slots_fmt(row, "count", "%d", gw_joint_count_on_car(corner, j));
        for (int k = 0; k < p->c->n_kits; k++)
            if (gw_page_has_kit(p, k)) put(p, gw_slots_element(row, "cells"), k, axle, j);
    }
}

void gw_page_joint_tables(const gw_page *p, gw_slots *slots, const char *list, gw_page_joint_cell *put)
{
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        if (gw_page_has_axle(p, a)) put_table(p, gw_slots_element(slots, list), a, put);
}
