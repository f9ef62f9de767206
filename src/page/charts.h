/* SPDX-License-Identifier: MIT */
/** The charts of the page, as they came from gnuplot. */
#ifndef PAGE_CHARTS_H
#define PAGE_CHARTS_H

#include "base/buf.h"
#include "chart/chart.h"
#include "giveway/report.h"

/** One chart as it came from gnuplot, ready to stand in the page. */
typedef struct gw_page_chart {
    char *stem, *title, *what;
    gw_buf svg;
} gw_page_chart;

typedef struct gw_page_charts {
    gw_page_chart *chart;
    int n;
    bool left_out; /**< gnuplot is not installed */
} gw_page_charts;

/** Charts of the report, drawn in a folder of their own that is gone afterwards. */
gw_status gw_page_charts_draw(const gw_report *report, bool workshop, gw_page_charts *out, gw_error *err);
void gw_page_charts_free(gw_page_charts *charts);

/** Lays out every chart of the page. */
void gw_page_charts_gather(const gw_report *report, bool workshop, gw_charts *charts);

#endif
