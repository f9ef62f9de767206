/* SPDX-License-Identifier: MIT */
#include "format/table.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { GAP = 2, NARROWEST = 8 };

static char *copy_clean(const char *s, bool keep_lines)
{
    gw_buf t = { 0 };
    const char *line = s;
    for (const char *end; keep_lines && (end = strchr(line, '\n')); line = end + 1) {
        gw_buf_bytes(&t, line, (size_t)(end - line));
        gw_buf_add(&t, "\n");
    }
    if (keep_lines)
        gw_buf_add(&t, line);
    else
        gw_buf_clean(&t, s);
    if (!t.failed && !t.s) gw_buf_add(&t, "");
    return t.failed ? (gw_buf_free(&t), NULL) : t.s;
}

void gw_table_column(gw_table *table, gw_align_side side, const char *head)
{
    if (table->columns >= GW_TABLE_COLUMNS || table->n_cells) {
        table->failed = true;
        return;
    }
    table->side[table->columns] = side;
    table->head[table->columns] = copy_clean(head, true);
    if (!table->head[table->columns]) table->failed = true;
    table->columns++;
}

static bool reserve_cell(gw_table *table)
{
    if (table->failed) return false;
    if (table->n_cells < table->cap) return true;
    size_t cap = table->cap ? 2 * table->cap : 64;
    char **cells = realloc(table->cells, cap * sizeof *cells);
    if (!cells) {
        table->failed = true;
        return false;
    }
    table->cells = cells;
    table->cap = cap;
    return true;
}

void gw_table_cell(gw_table *table, const char *text)
{
    if (!reserve_cell(table)) return;
    char *copy = NULL;
    if (text && *text && !(copy = copy_clean(text, false))) {
        table->failed = true;
        return;
    }
    table->cells[table->n_cells++] = copy;
}

void gw_table_cellf(gw_table *table, const char *fmt, ...)
{
    char buffer[512];
    va_list args;
    va_start(args, fmt);
    vsnprintf(buffer, sizeof buffer, fmt, args);
    va_end(args);
    gw_table_cell(table, buffer);
}

void gw_table_end_row(gw_table *table)
{
    while (!table->failed && table->columns && table->n_cells % (size_t)table->columns)
        gw_table_cell(table, NULL);
}

void gw_table_free(gw_table *table)
{
    for (int i = 0; i < table->columns; i++) free(table->head[i]);
    for (size_t i = 0; i < table->n_cells; i++) free(table->cells[i]);
    free(table->cells);
    *table = (gw_table){ 0 };
}

/* The layout: which columns stand side by side, and how wide each is. */
typedef struct layout {
    const gw_table *table;
    int width[GW_TABLE_COLUMNS];
    int list[GW_TABLE_COLUMNS], n; /* columns of this part */
    int indent;
    bool bold;
    gw_buf *out;
} layout;

static int rows_of(const gw_table *table)
{
    return table->columns ? (int)(table->n_cells / (size_t)table->columns) : 0;
}

static const char *cell_of(const gw_table *table, int row, int column)
{
    const char *s = row < 0 ? table->head[column] : table->cells[(size_t)(row * table->columns + column)];
    return s ? s : "";
}

static void natural_widths(layout *lay)
{
    for (int c = 0; c < lay->table->columns; c++) {
        lay->width[c] = 1;
        for (int r = -1; r < rows_of(lay->table); r++) {
            int w = gw_lines_width(cell_of(lay->table, r, c));
            if (w > lay->width[c]) lay->width[c] = w;
        }
    }
}

static int total_width(const layout *lay)
{
    int total = lay->indent;
    for (int i = 0; i < lay->n; i++) total += lay->width[lay->list[i]] + (i ? GAP : 0);
    return total;
}

/* Narrows the widest column of words again and again until the part fits or none can give more. */
static bool narrow_to(layout *lay, int width)
{
    while (total_width(lay) > width) {
        int widest = -1;
        for (int i = 0; i < lay->n; i++) {
            int c = lay->list[i];
            if (lay->table->side[c] != GW_LEFT || lay->width[c] <= NARROWEST) continue;
            if (widest < 0 || lay->width[c] > lay->width[widest]) widest = c;
        }
        if (widest < 0) return false;
        lay->width[widest]--;
    }
    return true;
}

static void put_line_of_row(layout *lay, int row, const char *rest[], bool *more)
{
    gw_buf_repeat(lay->out, ' ', lay->indent);
    int pending = 0; /* blanks are held back so that no line ends in them */
    *more = false;
    for (int i = 0; i < lay->n; i++) {
        int c = lay->list[i];
        size_t n = 0;
        const char *piece = gw_wrap_next(&rest[i], lay->width[c], &n);
        int room = lay->width[c] - gw_bytes_width(piece, n);
        bool right = lay->table->side[c] == GW_RIGHT;
        if (i) pending += GAP;
        if (n) {
            gw_buf_repeat(lay->out, ' ', pending + (right ? room : 0));
            if (lay->bold && row < 0) gw_buf_add(lay->out, "\033[1m");
            gw_buf_bytes(lay->out, piece, n);
            if (lay->bold && row < 0) gw_buf_add(lay->out, "\033[0m");
            pending = right ? 0 : room;
        } else {
            pending += lay->width[c];
        }
        if (*rest[i]) *more = true;
    }
    gw_buf_add(lay->out, "\n");
}

static void put_row(layout *lay, int row)
{
    const char *rest[GW_TABLE_COLUMNS];
    for (int i = 0; i < lay->n; i++) rest[i] = cell_of(lay->table, row, lay->list[i]);
    for (bool more = true; more;) put_line_of_row(lay, row, rest, &more);
}

static void put_rule(layout *lay)
{
    gw_buf_repeat(lay->out, ' ', lay->indent);
    for (int i = 0; i < lay->n; i++) {
        if (i) gw_buf_repeat(lay->out, ' ', GAP);
        gw_buf_repeat(lay->out, '-', lay->width[lay->list[i]]);
    }
    gw_buf_add(lay->out, "\n");
}

static void put_part(layout *lay)
{
    put_row(lay, -1);
    put_rule(lay);
    for (int r = 0; r < rows_of(lay->table); r++) put_row(lay, r);
}

/* Takes as many further columns beside the first as the width allows; at least one. */
static int fill_part(layout *lay, int next, int width)
{
    lay->list[0] = 0;
    lay->n = 1;
    while (next < lay->table->columns) {
        lay->list[lay->n++] = next;
        if (lay->n > 2 && total_width(lay) > width) {
            lay->n--;
            break;
        }
        next++;
    }
    return next;
}

static layout whole(const gw_table *table, int indent)
{
    layout lay = { .table = table, .indent = indent, .n = table->columns };
    natural_widths(&lay);
    for (int c = 0; c < table->columns; c++) lay.list[c] = c;
    return lay;
}

bool gw_table_fits(const gw_table *table, int width, int indent)
{
    const layout lay = whole(table, indent);
    return total_width(&lay) <= width;
}

gw_status gw_table_print(const gw_table *table, int width, int indent, bool bold, gw_buf *out, gw_error *err)
{
    if (table->failed) return gw_fail(err, GW_E_NOMEM, "out of memory while a table was made");
    if (!table->columns) return GW_OK;
    layout lay = whole(table, indent);
    lay.bold = bold;
    lay.out = out;
    if (narrow_to(&lay, width)) {
        put_part(&lay);
        return gw_buf_status(out, err);
    }
    for (int next = 1; next < table->columns;) {
        if (next > 1) gw_buf_add(out, "\n");
        next = fill_part(&lay, next, width);
        put_part(&lay);
    }
    return gw_buf_status(out, err);
}

void gw_buf_paragraph(gw_buf *out, const char *s, int width, int indent)
{
    while (*s) {
        size_t n = 0;
        const char *piece = gw_wrap_next(&s, width - indent, &n);
        gw_buf_repeat(out, ' ', indent);
        gw_buf_bytes(out, piece, n);
        gw_buf_add(out, "\n");
    }
}

void gw_table_cells_to_null(gw_table *table, ...)
{
    va_list texts;
    va_start(texts, table);
    for (const char *text; (text = va_arg(texts, const char *));) gw_table_cell(table, text);
    va_end(texts);
}

void gw_table_heads_to_null(gw_table *table, const char *sides, ...)
{
    const char *head;
    va_list heads;
    va_start(heads, sides);
    while ((head = va_arg(heads, const char *)) != NULL) {
        gw_table_column(table, *sides == 'l' ? GW_LEFT : GW_RIGHT, head);
        if (*sides) sides++;
    }
    va_end(heads);
}

/* -- of texts that are freed -- */

static void drop(gw_table *table, gw_buf *text)
{
    if (text->failed) table->failed = true;
    gw_buf_free(text);
}

void gw_table_column_of(gw_table *table, gw_align_side side, gw_buf *head)
{
    gw_table_column(table, side, gw_buf_str(head));
    drop(table, head);
}

void gw_table_cell_of(gw_table *table, gw_buf *text)
{
    gw_table_cell(table, gw_buf_str(text));
    drop(table, text);
}

void gw_paragraph_of(gw_buf *out, gw_buf *text, int width, int indent)
{
    gw_buf_paragraph(out, gw_buf_str(text), width, indent);
    gw_buf_drop(text, out);
}

void gw_table_put(gw_table *table, int width, int indent, bool bold, gw_buf *out)
{
    if (gw_table_print(table, width, indent, bold, out, NULL) != GW_OK) out->failed = true;
    gw_table_free(table);
}
