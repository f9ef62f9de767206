/* SPDX-License-Identifier: MIT */
/** Text tables for people: aligned columns, fitted to a width, in UTF-8. */
#ifndef FORMAT_TABLE_H
#define FORMAT_TABLE_H

#include "base/buf.h"

#include <stddef.h>

enum { GW_TABLE_COLUMNS = 24 };

typedef enum gw_align_side { GW_LEFT, GW_RIGHT } gw_align_side;

/**
 * Left columns hold words and are wrapped where the width asks for it; right columns hold numbers and
 * are never cut. Where even that is too wide, the columns are spread over several tables one below the
 * other, each with the first column again.
 */
typedef struct gw_table {
    int columns;
    gw_align_side side[GW_TABLE_COLUMNS];
    char *head[GW_TABLE_COLUMNS]; /**< may hold '\n': heads of several lines */
    char **cells;                 /**< row-major; NULL: empty                */
    size_t n_cells, cap;
    bool failed;
} gw_table;

/** Appends a column; before any cell. `head` is copied; "\n" in it starts a further line (say, for the unit).
 */
void gw_table_column(gw_table *table, gw_align_side side, const char *head);

/** Appends a cell, row by row; copied and cleaned (gw_buf_clean). NULL or "": empty. */
void gw_table_cell(gw_table *table, const char *text);

/** Cells one after the other, none of them NULL. */
#define gw_table_cells(table, ...) gw_table_cells_to_null(table, __VA_ARGS__, (const char *)NULL)
void gw_table_cells_to_null(gw_table *table, ...) __attribute__((sentinel));

/** Columns one after the other, a letter each in `sides`: l or r; then their heads. */
#define gw_table_heads(table, ...) gw_table_heads_to_null(table, __VA_ARGS__, (const char *)NULL)
void gw_table_heads_to_null(gw_table *table, const char *sides, ...) __attribute__((sentinel));

/** A column, and a cell, of a text that is freed; that it failed is handed on. */
void gw_table_column_of(gw_table *table, gw_align_side side, gw_buf *head);
void gw_table_cell_of(gw_table *table, gw_buf *text);

/** Appends a formatted cell. */
void gw_table_cellf(gw_table *table, const char *fmt, ...) __attribute__((format(printf, 2, 3)));

/** Fills the rest of the row with empty cells; nothing where the row is full. */
void gw_table_end_row(gw_table *table);

/** Whether all columns stand side by side without a cell being broken. */
bool gw_table_fits(const gw_table *table, int width, int indent);

/**
 * Lays the table out.
 * @param[in] width   columns of the page or terminal, at least 20
 * @param[in] indent  blanks before each line
 * @param[in] bold    heads in bold by terminal escapes
 */
gw_status gw_table_print(const gw_table *table, int width, int indent, bool bold, gw_buf *out, gw_error *err);

/** Prints it and frees it; memory that runs out sticks in `out`. */
void gw_table_put(gw_table *table, int width, int indent, bool bold, gw_buf *out);

void gw_table_free(gw_table *table);

/** A paragraph wrapped at `width` with `indent` blanks before each line. */
void gw_buf_paragraph(gw_buf *out, const char *s, int width, int indent);

/** The same of a text that is freed; that it failed is handed on. */
void gw_paragraph_of(gw_buf *out, gw_buf *text, int width, int indent);

/** Columns of `n` bytes. */
int gw_bytes_width(const char *s, size_t n);

/** Columns of the widest line of a text. */
int gw_lines_width(const char *s);

/**
 * The next line of at most `width` columns: up to a line break, else up to the last blank that fits,
 * else of one word as many letters as fit (at least one), broken behind a full stop or an underscore where
 * one stands in the second half of the line. Returns where it begins, its bytes in `*n`, and moves
 * `*s` to what is left, past the blanks between.
 */
const char *gw_wrap_next(const char **s, int width, size_t *n);

#endif
