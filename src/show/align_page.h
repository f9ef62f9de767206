/* SPDX-License-Identifier: MIT */
/** The parts of the text of an alignment; private to it. */
#ifndef SHOW_ALIGN_PAGE_H
#define SHOW_ALIGN_PAGE_H

#include "show/align.h"
#include "show/deflect.h"
#include "show/say.h"

typedef struct gw_align_page {
    const gw_case *c;
    gw_paper *paper;
} gw_align_page;

/** The sheet: before and after, left and right, with tolerances. */
void gw_align_sheet(const gw_align_page *p, const gw_align_item *item);

/** Track, bump steer and what the loads take, before and after. */
void gw_align_moved(const gw_align_page *p, const gw_align_item *item);

/** Tilt, walls, press fits and bearings against their limits. */
void gw_align_verdicts(const gw_align_page *p, const gw_align_item *item);

#endif
