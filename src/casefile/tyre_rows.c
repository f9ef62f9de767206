/* SPDX-License-Identifier: MIT */
#include "casefile/tyre_rows.h"

#include "base/buf.h"
#include "casefile/get.h"

#include <stdlib.h>
#include <string.h>

const char *const GW_TYRE_HEADS[GW_TYRE_COLUMNS] = { "slip_deg", "load_N", "camber_deg", "lateral_N" };

static const gw_range RANGES[GW_TYRE_COLUMNS] = { GW_FROM(-90, 90), GW_ABOVE(0, 1e6), GW_FROM(-90, 90),
                                                  GW_FROM(-1e6, 1e6) };

/* One field of a line: where it begins and how long it is without the blanks around it. */
typedef struct gw_tyre_field {
    const char *s;
    size_t n;
} gw_tyre_field;

static gw_tyre_field trimmed(const char *from, const char *to)
{
    while (from < to && (*from == ' ' || *from == '\t')) from++;
    while (to > from && (to[-1] == ' ' || to[-1] == '\t' || to[-1] == '\r')) to--;
    return (gw_tyre_field){ from, (size_t)(to - from) };
}

/* Fields of a line; more than there is room for are counted. */
static int split(const char *line, const char *end, gw_tyre_field field[GW_TYRE_COLUMNS])
{
    int n = 0;
    for (const char *at = line;; n++) {
        const char *comma = memchr(at, ',', (size_t)(end - at));
        if (n < GW_TYRE_COLUMNS) field[n] = trimmed(at, comma ? comma : end);
        if (!comma) return n + 1;
        at = comma + 1;
    }
}

static void wrong_field(const gw_reader *rd, int line, int column, gw_tyre_field f)
{
    gw_buf found = { 0 };
    char word[40];
    size_t n = f.n < sizeof word - 1 ? f.n : sizeof word - 1;
    memcpy(word, f.s, n);
    word[n] = '\0';
    gw_buf_quote(&found, word);
    gw_range r = RANGES[column];
    gw_fault(rd, NULL, "line %d, column %d (%s): expected a number %s %g and at most %g, found %s", line,
             column + 1, GW_TYRE_HEADS[column], r.open_lo ? "above" : "of at least", r.lo, r.hi,
             f.n ? gw_buf_str(&found) : "nothing");
    gw_buf_free(&found);
}

static bool take_field(gw_tyre_field f, gw_range r, double *out)
{
    char word[64], *end;
    if (f.n == 0 || f.n >= sizeof word) return false;
    memcpy(word, f.s, f.n);
    word[f.n] = '\0';
    double x = strtod(word, &end);
    if (*end != '\0' || !gw_in_range(x, r)) return false;
    *out = x;
    return true;
}

static bool is_heads(const gw_tyre_field *field, int n)
{
    if (n != GW_TYRE_COLUMNS) return false;
    for (int i = 0; i < n; i++)
        if (strlen(GW_TYRE_HEADS[i]) != field[i].n || memcmp(field[i].s, GW_TYRE_HEADS[i], field[i].n) != 0)
            return false;
    return true;
}

static bool add_row(const gw_reader *rd, const gw_tyre_field *field, int line, gw_tyre_rows *rows,
                    int *capacity)
{
    gw_tyre_row row = { .line = line };
    for (int i = 0; i < GW_TYRE_COLUMNS; i++)
        if (!take_field(field[i], RANGES[i], &row.v[i])) {
            wrong_field(rd, line, i, field[i]);
            return true; /* reading goes on, so that every fault is told */
        }
    if (rows->n == *capacity) {
        int larger = *capacity ? 2 * *capacity : 256;
        gw_tyre_row *moved = realloc(rows->row, (size_t)larger * sizeof *moved);
        if (!moved) {
            rd->faults->out_of_memory = true;
            return false;
        }
        rows->row = moved;
        *capacity = larger;
    }
    rows->row[rows->n++] = row;
    return true;
}

bool gw_read_tyre_rows(const gw_reader *rd, const char *text, gw_tyre_rows *rows)
{
    const int before = gw_faults_count(rd->faults);
    int line = 0, capacity = 0;
    bool heads = false, more = true;
    *rows = (gw_tyre_rows){ 0 };
    for (const char *at = text, *end; *at && more; at = *end ? end + 1 : end) {
        gw_tyre_field field[GW_TYRE_COLUMNS];
        end = at + strcspn(at, "\n");
        line++;
        if (trimmed(at, end).n == 0 || *at == '#') continue;
        int n = split(at, end, field);
        if (!heads) {
            heads = is_heads(field, n);
            if (heads) continue;
            gw_fault(rd, NULL, "line %d: expected the heads slip_deg,load_N,camber_deg,lateral_N", line);
            break;
        }
        if (n != GW_TYRE_COLUMNS)
            gw_fault(rd, NULL, "line %d: expected %d numbers, found %d", line, GW_TYRE_COLUMNS, n);
        else
            more = add_row(rd, field, line, rows, &capacity);
    }
    if (line == 0 || (!heads && gw_faults_count(rd->faults) == before))
        gw_fault(rd, NULL,
                 "empty: expected the heads slip_deg,load_N,camber_deg,lateral_N and rows of numbers");
    if (gw_faults_count(rd->faults) == before) return true;
    free(rows->row);
    *rows = (gw_tyre_rows){ 0 };
    return false;
}
