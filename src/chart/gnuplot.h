/* SPDX-License-Identifier: MIT */
/** The only place that writes gnuplot's language. Everything is told in pixels: gnuplot lays nothing out. */
#ifndef CHART_GNUPLOT_H
#define CHART_GNUPLOT_H

#include "base/buf.h"
#include "chart/layout.h"
#include "giveway/status.h"

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

enum { GW_MAX_PLOTTERS = 8 };

/**
 * Feeds each script to a gnuplot of its own; all run at once, in `dir`.
 *
 * @param[in]  n        number of scripts, 1 to GW_MAX_PLOTTERS
 * @param[in]  seconds  after which they are ended, > 0
 * @param[out] missing  true: there is no gnuplot on the PATH; GW_OK is returned and nothing was done
 * @param[out] said     what they wrote to standard error is added
 * @retval GW_OK    all ended well
 * @retval GW_E_IO  one could not start, failed or did not end; the message says why; the others were ended
 */
gw_status gw_gnuplot_run(const char *dir, const gw_buf *script, int n, int seconds, bool *missing,
                         gw_buf *said, gw_error *err);

#endif
