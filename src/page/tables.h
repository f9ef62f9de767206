/* SPDX-License-Identifier: MIT */
/** Tables of the workshop's copy. */
#ifndef PAGE_TABLES_H
#define PAGE_TABLES_H

#include "page/say.h"

/** A list with a table a wheel, of a row a joint and a column a kit: what stands in each. */
typedef void gw_page_joint_cell(const gw_page *p, gw_slots *cell, int kit, gw_axle axle, int joint);
void gw_page_joint_tables(const gw_page *p, gw_slots *slots, const char *list, gw_page_joint_cell *put);

#endif
