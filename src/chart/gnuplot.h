/* SPDX-License-Identifier: MIT */
/** The only place that writes gnuplot's language. Everything is told in pixels: gnuplot lays nothing out. */
#ifndef CHART_GNUPLOT_H
#define CHART_GNUPLOT_H

#include "base/buf.h"
#include "chart/layout.h"

/** One picture: where it goes, and how. */
typedef struct gw_gnuplot_output {
    int file; /**< number of the name that gw_gnuplot_name gave */
    bool svg; /**< else PNG, with twice as many pixels each way */
} gw_gnuplot_output;

/** Begins a script that is sent to gnuplot's standard input. */
void gw_gnuplot_begin(gw_buf *script);

/** Gives file `number` its name, before what draws it. */
void gw_gnuplot_name(int number, const char *name, gw_buf *script);

/** Adds commands that draw a page `n` times. */
void gw_gnuplot_page(const gw_layout *layout, const gw_gnuplot_output *output, int n, gw_buf *script);

#endif
