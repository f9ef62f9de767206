/* SPDX-License-Identifier: MIT */
/** gnuplot's SVG made fit to stand in a page beside others and to be read aloud. */
#ifndef CHART_SVG_H
#define CHART_SVG_H

#include "base/buf.h"

/**
 * Gives the picture `title` and `description` for screen readers, takes out those that gnuplot wrote and its
 * ids, and lets the others begin with `stem`, so that no two charts of a page share one.
 */
void gw_svg_tidy(const char *svg, const char *stem, const char *title, const char *description, gw_buf *out);

#endif
