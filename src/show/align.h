/* SPDX-License-Identifier: MIT */
/** What an align study is shown as: JSON, CSV, text with the alignment sheet, charts. */
#ifndef SHOW_ALIGN_H
#define SHOW_ALIGN_H

#include "base/buf.h"
#include "chart/chart.h"
#include "format/number.h"
#include "giveway/align.h"
#include "record/paper.h"
#include "show/words.h"

/** Rows over a gw_align_study. */
extern const gw_result GW_ALIGN_RESULT;

void gw_align_text(const gw_case *c, const void *study, gw_paper *paper);

/** What each adjuster does to camber and toe; what the loads take before and after. */
void gw_align_charts(const gw_case *c, const void *study, gw_charts *charts);

/** What an adjuster is called: "off-centre bush in X", "length of Y", "shims at Z". */
void gw_adjuster_words(const gw_corner *corner, const gw_adjuster *adjuster, gw_buf *out);
/** The same of a joint or member that is told by another name. */
void gw_adjuster_say(const gw_adjuster *adjuster, const char *name, gw_buf *out);

/** A sentence where the kit's own bush at an offset is off centre already: what is set adds to it, and their
 * sum is the bush to fit, which the limit holds for. False, and nothing said, where it is not. */
bool gw_adjuster_sum(const gw_case *c, const gw_align_item *item, const gw_adjustment *set, int adjuster,
                     gw_buf *out);

/** From where a clock mark is seen and what it counts from, by gw_view. */
extern const char *const GW_VIEW_WORDS[];

/** A figure of a verdict in the unit of the trade, and that unit. */
typedef struct gw_trade_figure {
    double scale;
    const char *unit;
    int decimals;
} gw_trade_figure;
gw_trade_figure gw_trade_figure_of(const gw_verdict *verdict);

/** "toe", "camber", "caster". */
const char *gw_target_name(gw_target which);

/** Steps of the work, in order; NULL past the last. Common practice. */
const char *gw_order_of_work(int index);

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
