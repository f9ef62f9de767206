/* SPDX-License-Identifier: MIT */
#include "record/paper.h"

#include <math.h>

enum { INDENT = 2 };

void gw_paper_heading(gw_paper *paper, const char *fmt, ...)
{
    va_list args;
    va_start(args, fmt);
    gw_buf_add(paper->out, paper->bold ? "\n\033[1m" : "\n");
    gw_buf_vsay(paper->out, fmt, args);
    gw_buf_add(paper->out, paper->bold ? "\033[0m\n" : "\n");
    va_end(args);
}

void gw_paper_say(gw_paper *paper, int indent, const char *fmt, ...)
{
    gw_buf text = { 0 };
    va_list args;
    va_start(args, fmt);
    gw_buf_vsay(&text, fmt, args);
    gw_buf_paragraph(paper->out, gw_buf_str(&text), paper->width, indent);
    gw_buf_drop(&text, paper->out);
    va_end(args);
}

void gw_paper_say_of(gw_paper *paper, int indent, gw_buf *text)
{
    gw_paper_say(paper, indent, "%s", gw_buf_str(text));
    gw_buf_drop(text, paper->out);
}

void gw_paper_line(gw_paper *paper, const char *fmt, ...)
{
    va_list args;
    va_start(args, fmt);
    gw_buf_vsay(paper->out, fmt, args);
    gw_buf_add(paper->out, "\n");
    va_end(args);
}

void gw_paper_gap(gw_paper *paper)
{
    gw_buf_add(paper->out, "\n");
}

static gw_number number(gw_style style, double shown, int decimals)
{
    if (style == GW_SIGNED) return gw_signed(shown, decimals);
    if (style == GW_DIGITS) return gw_significant(shown, decimals);
    return gw_fixed(style == GW_SIZE ? fabs(shown) : shown, decimals);
}

static gw_number figure(const gw_found_row *found, gw_style style, int decimals)
{
    if (found->absent) return number(style, (double)NAN, decimals);
    gw_shown value = gw_field_read(found->field, &found->at[found->depth - 1]);
    int i = found->component < 0 ? 0 : found->component;
    if (style == GW_MINUTES) return gw_degrees_minutes(value.x[i], decimals);
    return number(style, gw_shown_out(found->field, &value, i), decimals);
}

gw_number gw_paper_figure(const gw_place *place, const char *key, gw_style style, int decimals)
{
    gw_found_row found;
    gw_find(place, key, &found);
    return figure(&found, style, decimals);
}

/* -- tables -- */

static int lines_of(const char *s)
{
    int n = 1;
    for (; *s; s++) n += *s == '\n';
    return n;
}

/* Three numbers stand side by side in one cell. */
static void whole_cell(const gw_found_row *found, const gw_column *column, gw_buf *cell)
{
    gw_shown value = gw_field_read(found->field, &found->at[found->depth - 1]);
    for (int i = 0; i < value.n; i++)
        gw_buf_fmt(cell, "%s%s", i ? " " : "",
                   number(column->style, gw_shown_out(found->field, &value, i), column->decimals).s);
}

static void band_cell(const gw_found_row *found, const gw_column *column, gw_buf *cell)
{
    gw_shown value = gw_field_read(found->field, &found->at[found->depth - 1]);
    const gw_field *f = found->field;
    gw_buf_fmt(cell, "%s (%s to %s)", number(column->style, gw_shown_out(f, &value, 0), column->decimals).s,
               number(column->style, gw_shown_out(f, &value, 3), column->decimals).s,
               number(column->style, gw_shown_out(f, &value, 5), column->decimals).s);
}

static void fill_cell(const gw_place *place, const gw_column *column, gw_buf *cell)
{
    gw_found_row found;
    if (column->cell) {
        column->cell(place, cell);
        return;
    }
    gw_find(place, column->key, &found);
    if (column->style == GW_WORDS)
        gw_buf_add(cell, found.absent ? NULL : gw_field_read(found.field, &found.at[found.depth - 1]).text);
    else if (!found.absent && found.component < 0 && found.field->kind == GW_BAND)
        band_cell(&found, column, cell);
    else if (!found.absent && found.component < 0 &&
             (found.field->kind == GW_THREE || found.field->kind == GW_PAIR))
        whole_cell(&found, column, cell);
    else
        gw_buf_add(cell, figure(&found, column->style, column->decimals).s);
}

static const char *unit_below(const gw_record *sample, const gw_column *column)
{
    if (column->cell || column->style == GW_WORDS || column->no_unit) return "";
    if (column->style == GW_MINUTES) return "\xC2\xB0 '";
    const gw_place nowhere = { .record = sample };
    gw_found_row found;
    gw_find(&nowhere, column->key, &found);
    return gw_unit_word(found.field->unit);
}

void gw_paper_begin(gw_paper *paper, const gw_record *sample, const gw_column *column, int n)
{
    int tallest = 1;
    for (int i = 0; i < n; i++)
        if (lines_of(column[i].head) > tallest) tallest = lines_of(column[i].head);
    paper->column = column;
    for (int i = 0; i < n; i++) {
        const char *unit = unit_below(sample, &column[i]);
        gw_buf head = { 0 };
        gw_buf_add(&head, column[i].head);
        if (*unit) gw_buf_repeat(&head, '\n', tallest - lines_of(column[i].head) + 1);
        gw_buf_add(&head, unit);
        gw_table_column_of(&paper->table, column[i].side, &head);
    }
}

void gw_paper_cell(gw_paper *paper, const char *text)
{
    gw_table_cell(&paper->table, text);
}

void gw_paper_row(gw_paper *paper, const gw_place *place)
{
    for (int i = 0; i < paper->table.columns; i++) {
        gw_buf cell = { 0 };
        fill_cell(place, &paper->column[i], &cell);
        gw_table_cell_of(&paper->table, &cell);
    }
}

void gw_paper_table(gw_paper *paper, gw_table *table, int indent)
{
    gw_table_put(table, paper->width, indent, paper->bold, paper->out);
}

void gw_paper_end(gw_paper *paper)
{
    gw_paper_table(paper, &paper->table, INDENT);
}

void gw_paper_list(gw_paper *paper, const gw_place *up, const char *key, const gw_column *column, int n,
                   bool (*only)(const gw_paper *paper, const gw_place *element))
{
    gw_found_row list;
    gw_find(up, key, &list);
    const gw_place *place = &list.at[list.depth - 1];
    gw_paper_begin(paper, list.field->record, column, n);
    for (int i = 0, count = list.absent ? 0 : gw_place_count(list.field, place); i < count; i++) {
        gw_place element;
        if (gw_place_element(list.field, place, i, &element) && (!only || only(paper, &element)))
            gw_paper_row(paper, &element);
    }
    gw_paper_end(paper);
}

void gw_paper_each(gw_paper *paper, const gw_place *up, const char *key,
                   void (*write)(gw_paper *paper, const gw_place *element))
{
    gw_found_row list;
    gw_find(up, key, &list);
    const gw_place *place = &list.at[list.depth - 1];
    for (int i = 0, count = list.absent ? 0 : gw_place_count(list.field, place); i < count; i++) {
        gw_place element;
        if (gw_place_element(list.field, place, i, &element)) write(paper, &element);
    }
}

/* -- facts -- */

static void put_fact(gw_paper *paper, const gw_place *place, const gw_fact *fact)
{
    gw_found_row found;
    gw_fact_line line = { 0 };
    gw_find(place, fact->key, &found);
    if (found.absent) return;
    const gw_place *at = &found.at[found.depth - 1];
    gw_shown value = gw_field_read(found.field, at);
    if (found.field->flags & GW_SOMETIMES && gw_shown_lacks(&value)) return;
    line.shown = gw_shown_out(found.field, &value, 0);
    line.figure = figure(&found, fact->style, fact->decimals);
    line.unit = gw_shown_lacks(&value) ? "" : gw_unit_word(value.unit);
    line.words = fact->words;
    if (fact->say) fact->say(place, &line);
    if (line.left_out) return;
    gw_table_cell(&paper->table, fact->name);
    gw_table_cell(&paper->table, line.figure.s);
    gw_table_cell(&paper->table, line.unit);
    gw_table_cell(&paper->table, line.words);
}

void gw_paper_facts(gw_paper *paper, const char *head, const gw_place *place, const gw_fact *fact, int n)
{
    gw_table_column(&paper->table, GW_LEFT, head);
    gw_table_column(&paper->table, GW_RIGHT, "");
    gw_table_column(&paper->table, GW_LEFT, "");
    gw_table_column(&paper->table, GW_LEFT, "");
    for (int i = 0; i < n; i++) put_fact(paper, place, &fact[i]);
    gw_paper_gap(paper);
    gw_paper_end(paper);
}
