/* SPDX-License-Identifier: MIT */
/** A case corrected by readings, printed. */
#ifndef SHOW_MATCH_H
#define SHOW_MATCH_H

#include "base/buf.h"
#include "chart/chart.h"
#include "giveway/match.h"
#include "record/paper.h"

/** What the rows are of. */
typedef struct gw_match_made {
    const gw_readings *readings;
    const gw_match_study *study;
    const gw_next_study *next;
} gw_match_made;

void gw_match_text(const gw_case *c, const void *made, gw_paper *paper);

/** Readings against the model before and after, a chart a corner and what is read. */
void gw_match_charts(const gw_case *c, const void *made, gw_charts *charts);

/** What to read next, as a table of readings that waits to be filled in. */
void gw_match_sheet(const gw_case *c, const gw_next_study *next, gw_buf *out);

#endif
