/* SPDX-License-Identifier: MIT */
/** The pages and files of a run. */
#ifndef CHART_SET_H
#define CHART_SET_H

#include "chart/chart.h"
#include "chart/layout.h"

/** One chart laid out. */
typedef struct gw_chart_page {
    const char *stem;
    gw_layout layout;
} gw_chart_page;

/** One file that is drawn. */
typedef struct gw_chart_file {
    char *path;                /**< DIR/STEM.svg or .png                    */
    char *aside;               /**< what gnuplot writes, in the same place  */
    const gw_chart_page *page; /**< what it shows                           */
    bool svg;
} gw_chart_file;

#endif
