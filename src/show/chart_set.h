/* SPDX-License-Identifier: MIT */
/** The pages of a run, gathered into one script. Internal to the charts. */
#ifndef SHOW_CHART_SET_H
#define SHOW_CHART_SET_H

#include "show/chart.h"

/** One file that is to be drawn. */
typedef struct gw_chart_file {
    char *path;  /**< DIR/STEM.svg or .png                    */
    char *aside; /**< what gnuplot writes, in the same place  */
    char *stem;
    char *title;
    bool svg;
} gw_chart_file;

/** Adds a page, `height` pixels high, to be drawn in every format. `page` ends in its plot command. */
void gw_charts_add_page(gw_charts *charts, const char *stem, const char *title, int height,
                        const gw_buf *page);

/**
 * Makes gnuplot's SVG fit to stand in a page beside others: title for screen readers, bold type in the
 * way browsers know, and ids that begin with `stem` so that no two charts share one.
 */
void gw_svg_tidy(const char *svg, const char *stem, const char *title, gw_buf *out);

#endif
