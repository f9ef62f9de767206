/* SPDX-License-Identifier: MIT */
/** Horizontal bars, common to contributions and waterfalls. Internal to the charts. */
#ifndef SHOW_CHART_HBARS_H
#define SHOW_CHART_HBARS_H

#include "show/chart_canvas.h"

enum { GW_BAR = 15 /**< thickness of a bar in a group, and half that of a single one [pixels] */ };

/** One bar: pixels down the page, values across. */
typedef struct gw_hbar {
    double from, to, top, bottom;
    int style;
} gw_hbar;

/** Room for the widest of the names at the left. */
double gw_hbar_names_room(const gw_canvas *cv, const char *const *names, int n);
void gw_hbar_name(gw_canvas *cv, double y, const char *name);

/** Height of the tallest of the names: a row of bars is at least as high, or names would touch. */
double gw_hbar_names_height(int width, const char *const *names, int n);

/** Axes over values from `lo` to `hi`, with zero in them and `figure_width` pixels beyond for figures. */
void gw_hbar_axes(gw_canvas *cv, double lo, double hi, const char *x_title, double figure_width);

/** Pixels that the figures of these two values take, with their distance from the bar. */
double gw_hbar_figure_width(double lo, double hi, int decimals);
/** A figure beyond the end `at` of a bar that points to the left or to the right. */
void gw_hbar_figure(gw_canvas *cv, const char *figure, double at, double y, bool leftwards);

void gw_hbar_add(gw_canvas *cv, const gw_hbar *bar);
/** Plots all bars and frees their data. */
void gw_hbar_plot(gw_canvas *cv, bool hatched);

#endif
