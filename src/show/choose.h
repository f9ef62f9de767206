/* SPDX-License-Identifier: MIT */
/** What the planner's study is shown as. */
#ifndef SHOW_CHOOSE_H
#define SHOW_CHOOSE_H

#include "chart/chart.h"
#include "giveway/choose.h"
#include "record/paper.h"

/** What the command makes: the study, with what the command line asks. */
typedef struct gw_chosen {
    gw_choose_study study; /**< first, so that rows over the study find it here */
    bool quiet;
    long draws;
    const char *file; /**< --case; NULL: not asked for */
} gw_chosen;

/** Rows over a gw_choose_study. */
extern const gw_record GW_CHOOSE_RECORD;
extern const gw_result GW_CHOOSE_RESULT;

/** " within the limits (a price of 450 EUR, 3.00 dB of harshness)"; false, and nothing said, where none is
 * set. */
bool gw_choose_say_limits(const gw_case *c, const gw_choose_study *s, gw_buf *out);

/** With `detail` the whole front and all single changes. */
void gw_choose_text(const gw_case *c, const void *study, gw_paper *paper);

/** Steadiness against harshness, cost as size; the ladder of what more money buys. */
void gw_choose_charts(const gw_case *c, const void *study, gw_charts *charts);

/** In which unsteadiness is shown. */
gw_unit gw_choose_unit(const gw_choose_study *s);

/** Whether no recommendation before this one is the same combination. */
bool gw_choose_is_first(const gw_choose_study *s, int recommended);

/** The word for the wheel that a figure is of. */
const char *gw_choose_wheel(const gw_case *c, const gw_chosen_figure *figure);

#endif
