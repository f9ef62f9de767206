/* SPDX-License-Identifier: MIT */
/**
 * A figure: two scales, words, and marks between them. Size, type, colours, ticks and where words stand are
 * the same for all and are not the caller's business.
 *
 * Colours stay apart for colour-blind eyes; every line also has a dash and a marker of its own and its name
 * at its end, so that a grey print reads as well. With more styles than can be told apart each is numbered.
 */
#ifndef CHART_FIGURE_H
#define CHART_FIGURE_H

#include <stdbool.h>

/** Words around a figure. `title` is its message, a sentence; titles of axes carry the unit, "toe change
 * (deg)". */
typedef struct gw_chart_words {
    const char *title;
    const char *subtitle; /**< whose it is: the car; NULL: none           */
    const char *x_title, *y_title;
    const char *note; /**< small print at the foot; NULL: none            */
    const char *what; /**< what is drawn, with its unit; NULL: none       */
} gw_chart_words;

typedef enum gw_chart_scale_kind { GW_SCALE_LINEAR, GW_SCALE_LOG, GW_SCALE_ROWS } gw_chart_scale_kind;

/** One axis. Rows on y: bars lie across and the page grows with them; rows on x: bars stand. */
typedef struct gw_chart_scale {
    gw_chart_scale_kind kind;
    bool with_zero; /**< takes in zero                                      */
    bool fixed;     /**< from `from` to `to`; else as far as the marks go   */
    double from, to;
    bool around;             /**< some room around the marks                */
    const char *const *rows; /**< their names                               */
    int n_rows;
} gw_chart_scale;

typedef enum gw_chart_mark_kind {
    GW_MARK_STRETCH, /**< from `from` to `to` of the x axis, shaded, `name` at its top        */
    GW_MARK_LEVEL,   /**< a level line at `from`, with its name                              */
    GW_MARK_AREA,    /**< between `low` and `high` over `x`: a band of what is not sure      */
    GW_MARK_LINE,  /**< through `x`, `y`; what is not finite, or not positive on a logarithmic axis, breaks it
                    */
    GW_MARK_POINT, /**< at each `x`, `y`; with whiskers from `low` to `high`; `name` beside the first */
    GW_MARK_BAR    /**< in `row`, from `from` to `to`                                      */
} gw_chart_mark_kind;

typedef struct gw_chart_mark {
    gw_chart_mark_kind kind;
    int style; /**< 0, 1, 2 ...: give a kit the same one in every chart; 0 is the baseline; from GW_PARTS on
                    those of what is no kit */
    const char *name; /**< NULL: none                                                             */
    const double *x, *y;
    const double *low, *high; /**< NULL: none; of a bar one value each                            */
    int n;
    bool bare;    /**< LINE: thin and without markers, as measured loops are  */
    bool stepped; /**< LINE: level up to the next x, then up or down at once  */
    bool drawn;   /**< LINE: of a drawing: solid, without markers, and not read out */
    bool faint;   /**< LINE: grey and thin, as what is there to compare with        */
    double size;  /**< POINT: a bubble of so many pixels across; 0: a marker  */
    double from, to;
    int row, lane, lanes;       /**< BAR: where; lanes of a row share its thickness, 0: as 1     */
    const char *figure;         /**< BAR: beyond the end `to`; NULL: none                        */
    const char *figure_at_from; /**< BAR: beyond the other end                                   */
    char letter;                /**< BAR: inside, where there is room; 0: none                   */
    bool tied;                  /**< BAR: a thin line from its end to the row below              */
    bool hatched;
} gw_chart_mark;

typedef struct gw_figure {
    gw_chart_words words;
    gw_chart_scale x, y;
    bool true_shape; /**< a drawing: both linear scales alike                                      */
    const gw_chart_mark *mark; /**< those further back first */
    int n;
    const char *const *keys; /**< names of styles in a row above the plot; then marks need no names */
    const int *key_styles;   /**< NULL: 0, 1, 2 ...                                                 */
    int n_keys;
    bool letters; /**< keys carry A, B, C ..., as bars do                                           */
    bool lines;   /**< keys show lines and markers                                                  */
} gw_figure;

#endif
