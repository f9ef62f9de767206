/* SPDX-License-Identifier: MIT */
/** Horizontal spans: from where to where something moves, one row a name. */
#ifndef SHOW_CHART_SPANS_H
#define SHOW_CHART_SPANS_H

#include "show/chart.h"

typedef struct gw_span_chart {
    gw_chart_words words; /**< x_title names the values, y_title is not used */
    const char *const *names;
    const double *low, *high; /**< a row without finite ends is left empty       */
    const int *styles;        /**< NULL: 0, 1, 2 ...                             */
    int n;
    int decimals; /**< of the figures at both ends                    */
} gw_span_chart;

void gw_charts_spans(gw_charts *charts, const char *stem, const gw_span_chart *chart);

#endif
