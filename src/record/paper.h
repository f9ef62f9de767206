/* SPDX-License-Identifier: MIT */
/**
 * What a result is printed on for people: headings, paragraphs, tables of records, facts. Whatever comes from
 * a case is cleaned here. Running out of memory sticks in `out`: no function that writes
 * carries a status on.
 */
#ifndef RECORD_PAPER_H
#define RECORD_PAPER_H

#include "base/buf.h"
#include "format/number.h"
#include "format/table.h"
#include "record/record.h"

typedef struct gw_paper {
    gw_buf *out;
    int width;
    bool bold;   /**< headings and heads by terminal escapes */
    bool detail; /**< every figure is wanted                 */
    gw_table table;
    const struct gw_column *column;
} gw_paper;

/** How a figure is written. */
typedef enum gw_style {
    GW_FIXED,   /**< so many decimals                         */
    GW_SIGNED,  /**< with a plus sign                         */
    GW_DIGITS,  /**< so many significant digits               */
    GW_SIZE,    /**< so many decimals, without its sign       */
    GW_MINUTES, /**< an angle in degrees and minutes          */
    GW_WORDS    /**< a text, not a figure                     */
} gw_style;

/** A column of a table: a head (lines parted by \n), and what of a record stands below it. */
typedef struct gw_column {
    const char *head;
    const char *key; /**< of a row, dotted; NULL: `cell` writes it */
    gw_style style;
    int decimals;
    void (*cell)(const gw_place *place, gw_buf *out);
    gw_align_side side;
    bool no_unit; /**< the head itself tells it */
} gw_column;

#define GW_WORD_COLUMN(name, title)                                                                          \
    {                                                                                                        \
        .head = title, .key = name, .style = GW_WORDS, .side = GW_LEFT                                       \
    }
#define GW_FIGURE_COLUMN(name, title, how, places)                                                           \
    {                                                                                                        \
        .head = title, .key = name, .style = how, .decimals = places, .side = GW_RIGHT                       \
    }
#define GW_CELL_COLUMN(title, function)                                                                      \
    {                                                                                                        \
        .head = title, .cell = function, .side = GW_LEFT                                                     \
    }

/** An empty line and a heading, its words cleaned. */
void gw_paper_heading(gw_paper *paper, const char *fmt, ...) __attribute__((format(printf, 2, 3)));

/** A paragraph, wrapped. */
void gw_paper_say(gw_paper *paper, int indent, const char *fmt, ...) __attribute__((format(printf, 3, 4)));

/** The same of a text that is freed. */
void gw_paper_say_of(gw_paper *paper, int indent, gw_buf *text);

/** A line as it is, not wrapped; an empty line. */
void gw_paper_line(gw_paper *paper, const char *fmt, ...) __attribute__((format(printf, 2, 3)));
void gw_paper_gap(gw_paper *paper);

/**
 * A table: heads, with the units of the figures in a line of their own below; then rows from records, or of
 * texts that the caller has (as many as there are columns); then it is printed.
 *
 * @param[in] sample  the record of its rows, for the units.
 */
void gw_paper_begin(gw_paper *paper, const gw_record *sample, const gw_column *column, int n);
void gw_paper_row(gw_paper *paper, const gw_place *place);
void gw_paper_cell(gw_paper *paper, const char *text);
void gw_paper_end(gw_paper *paper);

/** Prints and frees a table that the caller has filled. */
void gw_paper_table(gw_paper *paper, gw_table *table, int indent);

/** A whole table, a row an element of the list `key` of a place; those that `only` (may be NULL) takes. */
void gw_paper_list(gw_paper *paper, const gw_place *up, const char *key, const gw_column *column, int n,
                   bool (*only)(const gw_paper *paper, const gw_place *element));

/** The number of entries of an array of columns or facts. */
#define GW_COLUMNS(array) ((int)(sizeof(array) / sizeof *(array)))

/** Writes every element of a list of a place. */
void gw_paper_each(gw_paper *paper, const gw_place *up, const char *key,
                   void (*write)(gw_paper *paper, const gw_place *element));

/** One line of facts: what it is, the figure, its unit, what it means. */
typedef struct gw_fact_line {
    double shown; /**< the figure in its unit; NAN: not known        */
    gw_number figure;
    const char *unit, *words;
    char own[120]; /**< room for words of the line's own             */
    bool left_out;
} gw_fact_line;

/** A fact is left out where its key is. */
typedef struct gw_fact {
    const char *name, *key;
    gw_style style;
    int decimals;
    const char *words;
    void (*say)(const gw_place *place, gw_fact_line *line); /**< may change the line; NULL */
} gw_fact;

/** One record down the page, after an empty line. */
void gw_paper_facts(gw_paper *paper, const char *head, const gw_place *place, const gw_fact *fact, int n);

/** A figure of a place as text: a number in its unit, a word as it is. */
gw_number gw_paper_figure(const gw_place *place, const char *key, gw_style style, int decimals);

#endif
