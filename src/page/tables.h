/* SPDX-License-Identifier: MIT */
/** Tables of the workshop's copy: a row a joint, a column a kit. */
#ifndef PAGE_TABLES_H
#define PAGE_TABLES_H

#include "page/page.h"

typedef struct gw_page_joint_table {
    const char *kind; /**< class of the table; NULL: none                                   */
    bool with_count;  /**< a first column of how many there are on the car                  */
    void (*cell)(const gw_page *p, int kit, gw_axle axle, int joint); /**< the whole <td> */
} gw_page_joint_table;

/** One such table a wheel, in a frame called `name`. */
void gw_page_joint_tables(const gw_page *p, gw_words name, const gw_page_joint_table *table);

/** Tables too wide for a telephone move sideways in a frame of their own, with keys too; ends with </div>. */
void gw_page_frame_begin(const gw_page *p, gw_words name);

void gw_page_heading(const gw_page *p, gw_words name, gw_words note);

#endif
