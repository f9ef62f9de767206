/* SPDX-License-Identifier: MIT */
/** The pages and files of a run. */
#ifndef CHART_SET_H
#define CHART_SET_H

#include "base/buf.h"
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
    gw_buf made; /**< for a page: the SVG as it stands there, and nothing at `path` */
} gw_chart_file;

/**
 * Gives the picture `title` and `description` for screen readers, takes out those that gnuplot wrote and its
 * ids, and lets the others begin with `stem`, so that no two charts of a page share one.
 */
void gw_svg_tidy(const char *svg, const char *stem, const char *title, const char *description, gw_buf *out);

#endif
