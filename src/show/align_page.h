/* SPDX-License-Identifier: MIT */
/** The parts of the text of an alignment; private to it. */
#ifndef SHOW_ALIGN_PAGE_H
#define SHOW_ALIGN_PAGE_H

#include "format/table.h"
#include "show/align.h"
#include "show/deflect.h"

typedef struct gw_align_page {
    const gw_case *c;
    int width;
    bool bold;
    gw_buf *out;
} gw_align_page;

/** Prints and frees a text; prints and frees a table under its title. */
void gw_align_paragraph(const gw_align_page *p, gw_buf *text, int indent);
void gw_align_table(const gw_align_page *p, const char *title, gw_table *table);

/** The sheet: before and after, left and right, with tolerances. */
void gw_align_sheet(const gw_align_page *p, const gw_align_item *item);

/** Track, bump steer and what the loads take, before and after. */
void gw_align_moved(const gw_align_page *p, const gw_align_item *item);

/** Tilt, walls, press fits and bearings against their limits. */
void gw_align_verdicts(const gw_align_page *p, const gw_align_item *item);

#endif
