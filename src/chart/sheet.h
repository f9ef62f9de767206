/* SPDX-License-Identifier: MIT */
/** A figure while it is laid out. Internal to the charts: words, frame and marks work on it in turn. */
#ifndef CHART_SHEET_H
#define CHART_SHEET_H

#include "chart/axis.h"
#include "chart/layout.h"
#include "chart/style.h"
#include "chart/type.h"

enum { GW_LEADING = 17, GW_LEADER = 22, GW_MOST_LABELS = 12, GW_LABEL_TEXT = 256 };

/** A name at its part of the first row of a stack. */
typedef struct gw_bar_label {
    int key;
    bool inside;     /**< in the part itself; nothing below `x` counts then */
    double x;        /**< the middle of the part [px]                       */
    bool leftward;   /**< it stands to the left of its tie                  */
    int line, lines; /**< the lowest it takes, from the bar upwards; how many */
    double within;   /**< room in which it was broken into lines            */
    double room;     /**< that they take of it                              */
} gw_bar_label;

typedef struct gw_bar_labels {
    int n, lines;
    gw_bar_label label[GW_MOST_LABELS];
} gw_bar_labels;

typedef struct gw_sheet {
    gw_layout *out;
    const gw_figure *figure;
    bool inlined;
    bool numbered; /**< more styles than can be told apart */
    gw_text_lines title, subtitle, note, x_title, y_title;
    double left, right, top, bottom; /**< of the plot */
    gw_axis x, y;
    gw_bar_labels labels; /**< of a stack */
} gw_sheet;

/** Breaks the words around the plot to the width of the page. */
void gw_caption_measure(gw_sheet *s);
/** Height that they and the keys take above and below the plot. */
double gw_caption_above(const gw_sheet *s);
double gw_caption_below(const gw_sheet *s);
void gw_caption_put(gw_sheet *s);
/** The colour of a key with its letter or number, 15 pixels wide from x on, its middle at y. */
void gw_sample_put(gw_sheet *s, double x, double y, int key);

/** A name as it stands in the figure: with its number in front where styles are numbered. */
gw_text_lines gw_sheet_name(const gw_sheet *s, const gw_chart_mark *mark, double room);
/** The lines of a block, centred on y. */
void gw_sheet_block(gw_sheet *s, double x, double y, const gw_text_lines *lines, gw_text_side side);

/** The number of a style on a disc, where it lies on no other text. */
void gw_badge_put(gw_sheet *s, gw_point at, int style);

/** Rules, ticks and figures of both axes. */
void gw_frame_put(gw_sheet *s);
/** As many ticks as leave their figures apart; `length` in pixels. */
gw_axis gw_frame_ticks(double from, double to, double length, int most, bool widen);

/** Does a point show on these axes? */
bool gw_sheet_shows(const gw_sheet *s, double x, double y);
gw_point gw_sheet_at(const gw_sheet *s, double x, double y);

/** Room that names at the ends of lines take beside the plot and, one below the other, of its height. */
double gw_ends_room(const gw_sheet *s);
double gw_ends_height(const gw_sheet *s);
void gw_lines_put(gw_sheet *s);
void gw_ends_put(gw_sheet *s);
void gw_levels_put(gw_sheet *s);
void gw_stretches_put(gw_sheet *s);

/** Room of the widest name of a row, and height of one row. On a narrow page names stand above their bars and
 * take height instead: of that, in each row alike. */
double gw_rows_room(const gw_sheet *s);
double gw_names_height(const gw_sheet *s);
double gw_row_height(const gw_sheet *s);
/** Scales values from `lo` to `hi` into what the figures at the bars leave of the plot. */
void gw_bars_fit(gw_sheet *s, double lo, double hi);
void gw_bars_put(gw_sheet *s);

/** Names at the bars of a stack, where the x axis is known: which parts have one, and the height they take
 * above the first row. */
void gw_labels_find(gw_sheet *s);
double gw_labels_height(const gw_sheet *s);
/** NULL: the part of this key is named among the keys alone. */
const gw_bar_label *gw_label_of(const gw_sheet *s, int key);
/** Ends of what it takes across, its sample and clear room with it [px]. */
enum { GW_LABEL_SAMPLE = 24, GW_LABEL_CLEAR = 3, GW_LABEL_FOOT = 4 };
double gw_label_from(const gw_bar_label *label);
double gw_label_to(const gw_bar_label *label);
/** What stands in a part that has room for its name. */
void gw_label_inside(const gw_chart_mark *mark, const char *name, char text[GW_LABEL_TEXT]);
/** Names end at `foot`, their ties at the top of the bar. */
void gw_labels_put(gw_sheet *s, double foot, double bar);

/** Area that names beside points take, in square pixels. */
double gw_points_area(const gw_sheet *s);
void gw_points_put(gw_sheet *s);

/** Moves blocks of the given heights, sorted by where they want to be, apart so that none overlap. */
void gw_spread(double *centre, const double *height, int n, double top, double bottom);

#endif
