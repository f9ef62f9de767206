/* SPDX-License-Identifier: MIT */
/** What every kind of chart is drawn with: a page in pixels, type, axes and ticks. Internal to the charts. */
#ifndef SHOW_CHART_CANVAS_H
#define SHOW_CHART_CANVAS_H

#include "show/chart.h"

/* Page and type in pixels; a PNG has twice as many. 800 pixels across 170 mm of paper make 13 pixels 7.8
 * points. */
enum {
    GW_PAGE_WIDTH = 800,
    GW_PAGE_HEIGHT = 500,
    GW_INLINED_WIDTH = 520,
    GW_INLINED_HEIGHT = 265,
    GW_EDGE = 18,
    GW_TYPE_TITLE = 18,
    GW_TYPE_TEXT = 14,
    GW_TYPE_TICK = 13,
    GW_TYPE_NOTE = 12,
    GW_STYLES = 8,
    GW_MAX_TICKS = 64,
    GW_MAX_TEXT_LINES = 4
};

#define GW_INK      "#222222"
#define GW_SOFT_INK "#555555"
#define GW_RULE     "#d9d9d9"

/** Colour, dash and marker of a style; styles beyond GW_STYLES begin again. */
const char *gw_style_colour(int number);
/**
 * Fill of an area as gnuplot has it, with its colour. Black, heavy in an area, becomes a dark grey. With
 * `hatched` neighbours also differ by hatching, since their greys are alike in print; a bar with a letter
 * in it is better plain.
 */
void gw_style_fill(int number, bool hatched, char clause[96]);
const char *gw_style_dash(int number);
int gw_style_marker(int number);
/** White or dark, whichever reads on that colour. */
const char *gw_style_text_on(int number);

/** One axis: its range and its ticks. */
typedef struct gw_chart_axis {
    double from, to;
    bool log;
    int n_ticks;
    struct {
        double at;
        bool minor; /**< without a figure */
    } ticks[GW_MAX_TICKS];
    int decimals; /**< of the figures, linear axis */
} gw_chart_axis;

/** Ticks at 1, 2 or 5 times a power of ten, at most `most`; `widen` moves the ends to ticks. */
gw_chart_axis gw_axis_linear(double from, double to, int most, bool widen);
/** Both ends > 0; figures at 1, 2, 5 where there is room, else at powers of ten. */
gw_chart_axis gw_axis_log(double from, double to, bool widen);
/** The figure at a tick. */
void gw_axis_figure(const gw_chart_axis *axis, int tick, char figure[32]);

typedef enum gw_text_side { GW_TEXT_LEFT, GW_TEXT_CENTRE, GW_TEXT_RIGHT } gw_text_side;

typedef struct gw_canvas {
    gw_buf *out;
    int width, height;               /**< of the page                          */
    double left, right, top, bottom; /**< of the plot, from the page's top left */
    gw_chart_axis x, y;
    int tag;                /**< last number of a label, line or box */
    gw_buf bars[GW_STYLES]; /**< data of the bars so far, by style */
} gw_canvas;

/** Estimated width of text in pixels, in the widest of the usual sans-serif faces. */
double gw_text_pixels(const char *s, int size, bool bold);

/** A text broken into lines no wider than `room` pixels; what does not fit the last line ends in an ellipsis.
 */
typedef struct gw_text_lines {
    int n;
    char line[GW_MAX_TEXT_LINES][256];
} gw_text_lines;
gw_text_lines gw_text_break(const char *s, double room, int most, int size, bool bold);

/** Text in quotes that gnuplot takes literally, whatever is in it. */
void gw_plot_quote(gw_buf *out, const char *s);

/** Width of the charts of a run, and height of those that have no reason for another. */
int gw_charts_width(const gw_charts *charts);
int gw_charts_height(const gw_charts *charts);

/** Begins a page: title, subtitle, note and axis titles; sets top and bottom, and left and right to the
 * edges. */
void gw_canvas_begin(gw_canvas *cv, const gw_charts *charts, gw_buf *out, int height,
                     const gw_chart_words *words);
/** Height that begin takes for words above and below the plot. */
int gw_canvas_words_height(const gw_charts *charts, const gw_chart_words *words);

void gw_canvas_text(gw_canvas *cv, double x, double y, const char *s, int size, const char *colour,
                    gw_text_side side);
/** The lines of a block, centred on y, GW_TYPE_TEXT high. */
void gw_canvas_block(gw_canvas *cv, double x, double y, const gw_text_lines *lines, const char *colour,
                     gw_text_side side);
void gw_canvas_line(gw_canvas *cv, double x0, double y0, double x1, double y1, const char *colour,
                    double width);
void gw_canvas_box(gw_canvas *cv, double x0, double y0, double x1, double y1, const char *colour);

/** Pixel of a value. */
double gw_canvas_x(const gw_canvas *cv, double value);
double gw_canvas_y(const gw_canvas *cv, double value);

/** Room that the figures of the y axis take. */
double gw_canvas_figures_width(const gw_chart_axis *axis);

/** Margins, ranges, ticks, rules and figures, once left, right and both axes are set. */
void gw_canvas_axes(gw_canvas *cv, bool x_rules, bool y_rules);

/** A row (or more) of coloured keys under the title; returns the height taken. */
double gw_canvas_keys(gw_canvas *cv, double y, const char *const *names, const int *styles, int n,
                      bool letters);

/** In place of a plot that has nothing to show. */
void gw_canvas_empty(gw_canvas *cv);

/** Moves blocks of the given heights, sorted by where they want to be, apart so that none overlap. */
void gw_spread(double *centre, const double *height, int n, double top, double bottom);

#endif
