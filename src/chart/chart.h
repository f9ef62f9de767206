/* SPDX-License-Identifier: MIT */
/**
 * Charts of a run, drawn by gnuplot as SVG and PNG. The usual kinds are described by plain structs; anything
 * else is a gw_figure of marks. Give a kit the same style in every chart.
 */
#ifndef CHART_CHART_H
#define CHART_CHART_H

#include "base/buf.h"
#include "chart/figure.h"
#include "giveway/arena.h"

/** One line. A point that is not finite, or not positive on a logarithmic axis, breaks it. */
typedef struct gw_chart_series {
    const char *name;
    const double *x, *y;
    int n;
    int style;
} gw_chart_series;

/** A stretch of the x axis with a name, shaded behind the lines. */
typedef struct gw_chart_band {
    double from, to;
    const char *label;
} gw_chart_band;

/** Lines over a common x axis, linear or logarithmic (transmissibility: both). */
typedef struct gw_line_chart {
    gw_chart_words words;
    const gw_chart_series *series;
    int n_series;
    bool log_x, log_y;
    bool has_x_range; /**< else as far as the points go                        */
    double x_from, x_to;
    bool with_zero; /**< the y axis takes in zero                              */
    const gw_chart_band *bands;
    int n_bands;
    bool has_mark; /**< a level line with a name, say a limit                  */
    double mark;
    const char *mark_label;
} gw_line_chart;

/** Horizontal bars: groups down the page, parts within each, stacked end to end or one below the other. */
typedef struct gw_bar_chart {
    gw_chart_words words; /**< x_title names the values, y_title is not used    */
    const char *const *groups;
    int n_groups;
    const char *const *parts; /**< NULL: without names, and without keys above   */
    const int *styles;        /**< of parts side by side; NULL: 0, 1, 2 ...; stacked ones are no kits  */
    int n_parts;
    const double *values; /**< [group * n_parts + part]; not finite: no bar      */
    const double *low,
        *high; /**< ends of a whisker at each bar, as `values`; NULL or not finite: none; not stacked */
    bool stacked;
    const double *half; /**< by group: what the sum of a stack may be off; NULL or not finite: not known */
    int decimals;       /**< of the figures at the bars                               */
} gw_bar_chart;

/** Points with their names beside them: grip against harshness, one point a kit. */
typedef struct gw_point_chart {
    gw_chart_words words;
    const char *const *names;
    const double *x, *y;
    const double *low, *high; /**< ends of a whisker up and down; NULL: none */
    const int *styles;        /**< NULL: 0, 1, 2 ... */
    int n;
} gw_point_chart;

/** From a start through contributions to an end, as floating bars down the page. */
typedef struct gw_waterfall_chart {
    gw_chart_words words; /**< x_title names the values                          */
    const char *start_name, *end_name;
    double start;
    const char *const *names;
    const double *values;
    int n;
    int decimals;
} gw_waterfall_chart;

/** How far something moves: one row a name, with figures at both ends. */
typedef struct gw_span_chart {
    gw_chart_words words; /**< x_title names the values, y_title is not used */
    const char *const *names;
    const double *low, *high; /**< a row without finite ends is left empty       */
    const int *styles;        /**< NULL: 0, 1, 2 ...                             */
    int n;
    int decimals;
} gw_span_chart;

/** Third-octave bands: upright bars for one or two names, lines for more. */
typedef struct gw_band_chart {
    gw_chart_words words;
    const double *centre_hz; /**< nominal centres */
    int n_bands;
    const char *const *names;
    const int *styles; /**< NULL: 0, 1, 2 ... */
    int n_names;
    const double *values; /**< [name * n_bands + band] */
} gw_band_chart;

enum { GW_CHART_SVG = 1, GW_CHART_PNG = 2, GW_CHART_SECONDS = 60 };

/** All charts of a run. Start with gw_charts_begin, end with gw_charts_free. */
typedef struct gw_charts {
    const char *dir; /**< borrowed                                            */
    int formats;     /**< GW_CHART_SVG | GW_CHART_PNG                         */
    int seconds;     /**< time limit of the drawing                           */
    bool inlined;    /**< for a page that names them itself: smaller, without title and subtitle */
    bool (*wants)(const char *stem); /**< which charts are drawn; NULL: all   */
    gw_arena arena;
    struct gw_chart_page *page; /**< what is to be drawn (chart/set.h)        */
    int n_pages, cap;
    struct gw_chart_file *file; /**< after gw_charts_draw: what was written   */
    int n_files;
    bool failed;
    bool left_out; /**< after gw_charts_draw: gnuplot is not installed        */
    gw_buf said;   /**< what gnuplot complained of                            */
} gw_charts;

/** The line to print where `left_out` is set. */
extern const char GW_CHARTS_LEFT_OUT[];

void gw_charts_begin(gw_charts *charts, const char *dir, int formats);

/** Memory that lasts as long as the charts, zeroed; NULL where it is out, which sticks in them. */
void *gw_charts_room(gw_charts *charts, int n, size_t size);

/** A text that lasts as long, and is freed; "" where memory is out. */
const char *gw_charts_kept(gw_charts *charts, gw_buf *text);
const char *gw_charts_fmt(gw_charts *charts, const char *fmt, ...) __attribute__((format(printf, 2, 3)));

/* `stem` becomes DIR/STEM.svg and .png; other than letters, digits, '-', '_' it is written with '-'. Nothing
 * given is used after the call. A chart without a finite value is drawn empty and says so. Two of one name:
 * the first is drawn. */
void gw_charts_figure(gw_charts *charts, const char *stem, const gw_figure *figure);
void gw_charts_lines(gw_charts *charts, const char *stem, const gw_line_chart *chart);
void gw_charts_bars(gw_charts *charts, const char *stem, const gw_bar_chart *chart);
void gw_charts_points(gw_charts *charts, const char *stem, const gw_point_chart *chart);
void gw_charts_waterfall(gw_charts *charts, const char *stem, const gw_waterfall_chart *chart);
void gw_charts_spans(gw_charts *charts, const char *stem, const gw_span_chart *chart);
void gw_charts_bands(gw_charts *charts, const char *stem, const gw_band_chart *chart);

/**
 * Makes the directory and draws everything, with a gnuplot for each processor; each file appears whole or not
 * at all.
 * @retval GW_OK (also without gnuplot: see `left_out`), GW_E_IO, GW_E_NOMEM
 */
gw_status gw_charts_draw(gw_charts *charts, gw_error *err);

void gw_charts_free(gw_charts *charts);

#endif
