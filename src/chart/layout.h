/* SPDX-License-Identifier: MIT */
/**
 * A figure laid out: every text with the room that is kept for it, every mark in pixels from the page's top
 * left. Room is measured and reserved first; values are then scaled into what is left. So no text leaves its
 * page or lies on another, whatever the face.
 */
#ifndef CHART_LAYOUT_H
#define CHART_LAYOUT_H

#include "chart/figure.h"
#include "giveway/arena.h"
#include "giveway/status.h"

typedef struct gw_box {
    double x0, y0, x1, y1;
} gw_box;

typedef enum gw_text_side { GW_TEXT_LEFT, GW_TEXT_CENTRE, GW_TEXT_RIGHT } gw_text_side;

typedef struct gw_layout_text {
    const char *s;
    double x, y; /**< the end that `side` names, half way up */
    gw_text_side side;
    int size;
    bool bold;
    const char *colour;
    gw_box box; /**< what is kept free for it */
} gw_layout_text;

typedef enum gw_shape_kind {
    GW_SHAPE_LINE,
    GW_SHAPE_BOX,
    GW_SHAPE_AREA,
    GW_SHAPE_MARKER,
    GW_SHAPE_DISC
} gw_shape_kind;

typedef struct gw_point {
    double x, y;
} gw_point;

typedef struct gw_shape {
    gw_shape_kind kind;
    const char *colour;
    const char *dash;   /**< of a line */
    double width;       /**< of a line; size of a marker; diameter of a disc */
    int pattern;        /**< of a box: hatching, below zero plain; marker: its number */
    const gw_point *at; /**< of a box: two corners */
    int n;
} gw_shape;

typedef struct gw_layout {
    gw_arena *arena;
    int width, height;
    const char *title, *what,
        *description; /**< of the picture: its message, what is drawn, all of it in words */
    gw_layout_text *text;
    int n_texts, texts_cap;
    gw_shape *shape; /**< those further back first */
    int n_shapes, shapes_cap;
    bool failed; /**< memory ran out */
} gw_layout;

enum {
    GW_PAGE_WIDTH = 800,
    GW_PAGE_HEIGHT = 460,
    GW_INLINED_WIDTH = 376, /* a telephone's: nothing has to be slid there */
    GW_INLINED_HEIGHT = 260,
    GW_EDGE = 18
};

/**
 * Lays a figure out.
 *
 * @param[in]  inlined  for a page that names it itself: smaller, without title and subtitle
 * @param      arena    holds all of it, copies of the words too
 * @retval GW_OK, GW_E_NOMEM
 */
gw_status gw_figure_lay_out(const gw_figure *figure, bool inlined, gw_arena *arena, gw_layout *out,
                            gw_error *err);

/** What a picture shows, in sentences, for whoever does not see it. NULL when memory is out. */
const char *gw_figure_describe(const gw_figure *figure, gw_arena *arena);

typedef struct gw_pen {
    const char *colour;
    double width;
    const char *dash; /**< NULL: solid */
} gw_pen;

/** Room for `n` points of a new shape, or NULL (`failed` is set). */
gw_point *gw_layout_shape(gw_layout *l, gw_shape shape);
void gw_layout_line(gw_layout *l, gw_point from, gw_point to, gw_pen pen);
void gw_layout_box(gw_layout *l, gw_box box, const char *colour, int hatching);
void gw_layout_marker(gw_layout *l, gw_point at, int marker, double size, const char *colour);
void gw_layout_disc(gw_layout *l, gw_point at, double across, const char *colour);

/** A text as a picture tells it, with true minus signs; NULL when memory is out. */
const char *gw_layout_words(gw_layout *l, const char *s);
void gw_layout_text_at(gw_layout *l, double x, double y, const char *s, int size, const char *colour,
                       gw_text_side side);

/** Area of a box, in square pixels, that other texts take; 0: it is free. */
double gw_layout_taken(const gw_layout *l, gw_box box);
double gw_box_overlap(const gw_box *a, const gw_box *b);

#endif
