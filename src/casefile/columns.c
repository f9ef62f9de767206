/* SPDX-License-Identifier: MIT */
#include "casefile/columns.h"

#include "base/buf.h"
#include "casefile/document.h"

#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

enum { MANY_LONG = 6 }; /* lines that are told one by one are fewer */
static const size_t MOST_BYTES = (size_t)256 << 20;

/** One pass over the text, which is cut into cells where it stands. */
typedef struct cutter {
    const gw_reader *rd;
    gw_columns *table;
    char *at;      /**< first byte of the next line     */
    int line;      /**< its number                      */
    int *head_of;  /**< place in a row of each column, -1: passed over */
    int columns;   /**< of the heads                    */
    int room;      /**< rows that there is memory for   */
    bool unclosed; /**< a quote that its line does not close */
    struct long_line {
        int line, fields;
    } long_line[MANY_LONG]; /**< the first with more fields than heads */
    int n_long;
} cutter;

static bool is_blank(char c)
{
    return c == ' ' || c == '\t' || c == '\r';
}

/* Ends the line with a zero and steps behind it; NULL at the end of the text. */
static char *next_line(cutter *c)
{
    char *line = c->at, *end;
    if (*line == '\0') return NULL;
    end = strchr(line, '\n');
    if (end) *end = '\0';
    c->at = end ? end + 1 : line + strlen(line);
    c->line++;
    return line;
}

/* Nothing but blanks, quotes and the character that parts fields; or # as the first that is written. */
static bool is_remark(const char *line, char separator)
{
    const char *s = line;
    while (is_blank(*s)) s++;
    if (*s == '#' || (*s == '"' && s[1] == '#')) return true;
    while (is_blank(*s) || *s == '"' || *s == separator) s++;
    return *s == '\0';
}

/* A field in quotes, its quotes taken away in place; `s` stands behind the first. */
static char *quoted(cutter *c, char *s, char **next)
{
    char *from = s, *to = s;
    for (; *s && !(*s == '"' && s[1] != '"'); s++) {
        if (*s == '"') s++;
        *to++ = *s;
    }
    if (*s != '"') c->unclosed = true;
    *next = *s ? s + 1 : s;
    *to = '\0';
    return from;
}

static void trim_end(char *from, char *end)
{
    while (end > from && is_blank(end[-1])) end--;
    *end = '\0';
}

/* The field at *at, trimmed; *at is moved behind what parts it from the next, or NULL at the line's end. */
static char *take(cutter *c, char **at)
{
    char separator = c->table->separator, *s = *at, *field, *end;
    while (is_blank(*s) && *s != separator) s++;
    field = s;
    if (*s == '"') field = quoted(c, s + 1, &s);
    end = strchr(s, separator);
    *at = end ? end + 1 : NULL;
    if (!end) end = s + strlen(s);
    if (field != s) { /* it stood in quotes, and nothing may follow them */
        while (s < end && is_blank(*s)) s++;
        c->unclosed = c->unclosed || s < end;
        end = field + strlen(field);
    }
    *end = '\0';
    trim_end(field, end);
    return field;
}

/* The character that parts the fields of the heads' line. */
static char separator_of(const char *line)
{
    return strchr(line, '\t') ? '\t' : strchr(line, ';') ? ';' : ',';
}

static int known_head(const gw_columns *t, const char *name)
{
    for (int h = 0; h < t->n_heads; h++)
        if (strcmp(t->head[h], name) == 0) return h;
    return -1;
}

static void take_head(cutter *c, const char *name)
{
    gw_columns *t = c->table;
    int h = known_head(t, name);
    c->head_of[c->columns] = -1;
    if (h >= 0 && t->column[h] >= 0) {
        gw_fault(c->rd, NULL, "line %d: the head %s stands there twice: take one of the columns away",
                 c->line, name);
    } else if (h >= 0) {
        t->column[h] = c->columns;
        t->place[h] = c->head_of[c->columns] = t->stride++;
    }
    c->columns++;
}

static void take_heads(cutter *c, char *line)
{
    c->table->separator = separator_of(line);
    c->table->heads_line = c->line;
    while (line && c->columns < GW_COLUMNS_MOST) take_head(c, take(c, &line));
    if (line)
        gw_fault(c->rd, NULL, "line %d: more than %d columns: keep those that are needed", c->line,
                 GW_COLUMNS_MOST);
}

static bool grow(cutter *c)
{
    gw_columns *t = c->table;
    int room = c->room ? 2 * c->room : 64;
    int *line = realloc(t->line, (size_t)room * sizeof *line);
    if (line) t->line = line;
    const char **cell = line ? realloc(t->cell, (size_t)room * ((size_t)t->stride + 1) * sizeof *cell) : NULL;
    if (!cell) {
        c->rd->faults->out_of_memory = true;
        return false;
    }
    t->cell = cell;
    c->room = room;
    return true;
}

static const char *comma_hint(const cutter *c)
{
    return c->table->separator == ',' ? " (a decimal comma? write 0.5, or part the fields with semicolons)"
                                      : "";
}

static void too_many(cutter *c, int fields)
{
    if (c->n_long < MANY_LONG) c->long_line[c->n_long] = (struct long_line){ c->line, fields };
    c->n_long++;
}

/* Lines with more fields than heads: each, or where there are many the first for all. */
static void tell_long(const cutter *c)
{
    const struct long_line *l = c->long_line;
    for (int i = 0; i < c->n_long && c->n_long < MANY_LONG; i++)
        gw_fault(c->rd, NULL, "line %d: %d fields under %d heads%s", l[i].line, l[i].fields, c->columns,
                 comma_hint(c));
    if (c->n_long >= MANY_LONG)
        gw_fault(c->rd, NULL, "line %d: %d fields under %d heads, too many in %d of %d lines%s", l->line,
                 l->fields, c->columns, c->n_long, c->table->n_rows, comma_hint(c));
}

/* Cells of one line into the next row; empty ones may be missing at its end, or be too many. */
static bool take_row(cutter *c, char *line)
{
    gw_columns *t = c->table;
    int n = 0, beyond = 0;
    if (t->n_rows == c->room && !grow(c)) return false;
    const char **row = t->cell + (size_t)t->n_rows * (size_t)t->stride;
    for (int i = 0; i < t->stride; i++) row[i] = "";
    for (; line; n++) {
        const char *field = take(c, &line);
        if (n >= c->columns)
            beyond = *field ? n + 1 : beyond;
        else if (c->head_of[n] >= 0)
            row[c->head_of[n]] = field;
    }
    if (beyond) too_many(c, beyond);
    t->line[t->n_rows++] = c->line;
    return true;
}

static void tell_unclosed(cutter *c)
{
    if (c->unclosed)
        gw_fault(c->rd, NULL, "line %d: quotes that do not hold a whole field: close them in the same line",
                 c->line);
    c->unclosed = false;
}

static void no_heads(cutter *c)
{
    gw_buf list = { 0 };
    for (int h = 0; h < c->table->n_heads; h++) gw_buf_fmt(&list, "%s%s", h ? ", " : "", c->table->head[h]);
    if (c->columns == 0)
        gw_fault(c->rd, NULL, "empty: expected one line of heads (of %s) and readings", gw_buf_str(&list));
    else
        gw_fault(c->rd, NULL, "line %d: none of its heads is known: expected some of %s",
                 c->table->heads_line, gw_buf_str(&list));
    gw_buf_free(&list);
}

static void cut(cutter *c)
{
    const int before = gw_faults_count(c->rd->faults);
    bool more = true;
    for (char *line; more && (line = next_line(c));) {
        char separator = c->columns ? c->table->separator : separator_of(line);
        if (is_remark(line, separator)) continue;
        if (c->columns == 0)
            take_heads(c, line);
        else
            more = take_row(c, line);
        tell_unclosed(c);
        if (c->table->stride == 0 || c->rd->faults->overflow) break;
    }
    tell_long(c);
    if (c->table->stride == 0 && gw_faults_count(c->rd->faults) == before) no_heads(c);
}

static void skip_mark(char **text)
{
    if (strncmp(*text, "\xEF\xBB\xBF", 3) == 0) *text += 3;
}

gw_status gw_columns_parse(const gw_reader *rd, char *text, size_t size, const char *const *head, int n,
                           gw_columns *out)
{
    const int before = gw_faults_count(rd->faults);
    int head_of[GW_COLUMNS_MOST];
    gw_columns table = { .head = head, .n_heads = n };
    cutter c = { .rd = rd, .table = &table, .head_of = head_of };
    for (int h = 0; h < n; h++) table.column[h] = table.place[h] = -1;
    if (memchr(text, '\0', size)) {
        gw_fault(rd, NULL, "this is no plain text: save the table as CSV, UTF-8");
        return GW_E_PARSE;
    }
    skip_mark(&text);
    c.at = text;
    cut(&c);
    if (gw_faults_count(rd->faults) != before) {
        gw_columns_free(&table);
        return rd->faults->out_of_memory ? GW_E_NOMEM : GW_E_PARSE;
    }
    *out = table;
    return GW_OK;
}

gw_status gw_columns_read(const gw_reader *rd, const char *path, const char *const *head, int n,
                          gw_columns *out)
{
    char *text = NULL;
    size_t size = 0;
    gw_status st = gw_read_file_of(rd, path, MOST_BYTES, "table", &text, &size);
    if (st == GW_OK) st = gw_columns_parse(rd, text, size, head, n, out);
    if (st == GW_OK)
        out->text = text;
    else
        free(text);
    return st;
}

bool gw_columns_has(const gw_columns *table, int head)
{
    return table->place[head] >= 0;
}

const char *gw_columns_text(const gw_columns *table, int row, int head)
{
    int place = table->place[head];
    return place < 0 ? "" : table->cell[(size_t)row * (size_t)table->stride + (size_t)place];
}

void gw_columns_fault(const gw_reader *rd, const gw_columns *table, int row, int head, const char *fmt, ...)
{
    gw_buf text = { 0 };
    va_list args;
    va_start(args, fmt);
    gw_buf_vfmt(&text, fmt, args);
    va_end(args);
    if (text.failed) rd->faults->out_of_memory = true;
    gw_fault(rd, NULL, "line %d, %s: %s", table->line[row], table->head[head], gw_buf_str(&text));
    gw_buf_free(&text);
}

/* Digits with at most one comma or point between: "0,5". What else there is with a comma is no decimal comma.
 */
static bool has_decimal_comma(const char *s)
{
    const char *comma = strchr(s, ',');
    return comma && !strchr(comma + 1, ',') && !strchr(s, '.') && strspn(s, "+-0123456789,eE") == strlen(s);
}

static bool plain_number(const char *s, bool comma_passes, double *out)
{
    char word[64], *end, *comma;
    size_t n = strlen(s);
    if (n == 0 || n >= sizeof word || strspn(s, "+-0123456789.,eE") != n) return false;
    memcpy(word, s, n + 1);
    if (comma_passes && has_decimal_comma(word) && (comma = strchr(word, ','))) *comma = '.';
    *out = strtod(word, &end);
    return *end == '\0' && isfinite(*out);
}

/* "1,058.6": a comma before each three digits. */
static bool has_thousands(const char *s)
{
    const char *comma = strchr(s, ','), *point = strchr(s, '.');
    return comma && point && comma < point && strspn(s, "+-0123456789,.eE") == strlen(s);
}

static const char *hint_of(const gw_columns *table, const char *found)
{
    if (has_thousands(found)) return ", which parts its thousands: leave the comma out";
    return table->separator == ',' && has_decimal_comma(found)
               ? ", which has a decimal comma: write a point, or part the fields with semicolons"
               : "";
}

static void no_number(const gw_reader *rd, const gw_columns *table, int row, int head, gw_range r,
                      const char *found)
{
    gw_buf quoted = { 0 };
    char bounds[80];
    if (*found) gw_buf_quote(&quoted, found);
    gw_columns_fault(rd, table, row, head, "expected a number %s, found %s%s", gw_range_text(r, bounds),
                     *found ? gw_buf_str(&quoted) : "nothing", hint_of(table, found));
    gw_buf_free(&quoted);
}

bool gw_columns_number(const gw_reader *rd, const gw_columns *table, int row, int head, gw_range r,
                       double *out)
{
    const char *text = gw_columns_text(table, row, head);
    double x;
    if (plain_number(text, table->separator != ',', &x) && gw_in_range(x, r)) {
        *out = x;
        return true;
    }
    no_number(rd, table, row, head, r, text);
    return false;
}

void gw_columns_free(gw_columns *table)
{
    free(table->line);
    free((void *)table->cell);
    free(table->text);
    *table = (gw_columns){ 0 };
}
