/* SPDX-License-Identifier: MIT */
/* One walk over the rows writes heads and fields, so that a field never stands under another head. */
#include "record/csv.h"

#include <assert.h>
#include <stdio.h>
#include <string.h>

enum { HEAD_MAX = 160, LEVELS = 4 };

/* The way down to the list that has a row an element. */
typedef struct way {
    gw_csv csv;
    const char *rows;              /* "results.points" */
    const gw_place *level[LEVELS]; /* the element of each list on the way; NULL: heads are written */
    bool heads;
} way;

static void walk(way *w, const gw_record *record, const gw_place *place, const char *prefix, int depth,
                 const char *rows);

static void put_head(way *w, const char *prefix, const gw_field *field, const char *component)
{
    char head[HEAD_MAX];
    bool plain = field->flags & GW_NO_UNIT || field->unit_of;
    snprintf(head, sizeof head, "%s%s%s%s%s", prefix, field->key, *component ? "_" : "", component,
             plain ? "" : gw_unit_key(field->unit));
    gw_csv_string(&w->csv, head);
}

static int components(const gw_field *field)
{
    switch (field->kind) {
    case GW_PAIR:
    case GW_FITTED:
        return 2;
    case GW_THREE:
        return 3;
    case GW_BAND:
        return 6;
    default:
        return 1;
    }
}

static void put_value(way *w, const gw_field *field, const gw_place *place)
{
    gw_shown value = gw_field_read(field, place);
    if (!value.n)
        gw_csv_string(&w->csv, value.text);
    else if (field->kind == GW_FLAG)
        gw_csv_string(&w->csv, value.x[0] != 0.0 ? "true" : "false");
    for (int i = 0; field->kind != GW_FLAG && i < value.n; i++)
        gw_csv_number(&w->csv, gw_shown_out(field, &value, i));
}

static void put_scalar(way *w, const gw_field *field, const gw_place *place, const char *prefix)
{
    if (!w->heads && place && place->it) {
        put_value(w, field, place);
        return;
    }
    for (int i = 0; i < components(field); i++)
        if (w->heads)
            put_head(w, prefix, field, field->kind == GW_FITTED && !i ? "" : gw_component_name(field, i));
        else
            gw_csv_string(&w->csv, NULL);
}

/* The list on the way to the rows; others have no place in a row. */
static void put_list(way *w, const gw_field *field, const gw_place *place, const char *prefix, int depth,
                     const char *rows)
{
    size_t n = strcspn(rows, ".");
    (void)place;
    if (!*rows || strncmp(field->key, rows, n) != 0 || field->key[n]) return;
    walk(w, field->record, w->heads ? NULL : w->level[depth], prefix, depth + 1, rows[n] ? rows + n + 1 : "");
}

static void put_inside(way *w, const gw_field *field, const gw_place *place, const char *prefix, int depth,
                       const char *rows)
{
    char longer[HEAD_MAX];
    gw_place inner;
    bool there = place && place->it && gw_place_enter(field, place, &inner);
    bool plain = field->kind == GW_PART || field->flags & GW_NO_PREFIX;
    snprintf(longer, sizeof longer, "%s%s%s", prefix, plain ? "" : field->key, plain ? "" : "_");
    walk(w, field->record, there ? &inner : NULL, longer, depth, field->kind == GW_PART ? rows : "");
}

static void walk(way *w, const gw_record *record, const gw_place *place, const char *prefix, int depth,
                 const char *rows)
{
    for (int i = 0; i < record->n; i++) {
        const gw_field *field = &record->field[i];
        if (field->flags & GW_NO_CSV || field->kind == GW_LINES || field->kind == GW_NAMED ||
            field->kind == GW_NUMBERS)
            continue;
        if (field->kind == GW_LIST)
            put_list(w, field, place, prefix, depth, rows);
        else if (field->kind == GW_OBJECT || field->kind == GW_PART)
            put_inside(w, field, place, prefix, depth, rows);
        else
            put_scalar(w, field, place, prefix);
    }
}

/* Every element of the lists on the way; a row where the last one is reached. */
static void descend(way *w, const gw_place *top, const gw_place *place, int depth, const char *rows)
{
    if (!*rows) {
        walk(w, top->record, top, "", 0, w->rows);
        gw_csv_end_row(&w->csv);
        return;
    }
    assert(depth < LEVELS);
    size_t n = strcspn(rows, ".");
    char key[HEAD_MAX];
    snprintf(key, sizeof key, "%.*s", (int)n, rows);
    const gw_field *list = gw_row_of(place, key);
    for (int i = 0, count = gw_place_count(list, place); i < count; i++) {
        gw_place element;
        if (!gw_place_element(list, place, i, &element)) continue;
        w->level[depth] = &element;
        descend(w, top, &element, depth + 1, rows[n] ? rows + n + 1 : "");
    }
}

void gw_result_csv(const gw_result *result, const gw_case *c, const void *made, gw_buf *out)
{
    if (result->csv) {
        result->csv(c, made, out);
        return;
    }
    way w = { .csv = { .out = out }, .rows = result->rows, .heads = true };
    const gw_place top = gw_place_top(result, c, made);
    walk(&w, result->record, NULL, "", 0, result->rows);
    gw_csv_end_row(&w.csv);
    w.heads = false;
    descend(&w, &top, &top, 0, result->rows);
}

static void put_columns(gw_csv *csv, const gw_record *record, const gw_place *place, const char *prefix,
                        bool heads)
{
    way w = { .csv = *csv, .rows = "", .heads = heads };
    walk(&w, record, place, prefix, 0, "");
    *csv = w.csv;
}

void gw_record_heads(gw_csv *csv, const gw_record *record, const char *prefix)
{
    put_columns(csv, record, NULL, prefix, true);
}

void gw_record_fields(gw_csv *csv, const gw_record *record, const gw_place *place)
{
    put_columns(csv, record, place, "", false);
}

void gw_records_csv(const gw_record *record, const gw_case *c, const void *it, int n, size_t size,
                    gw_buf *out)
{
    gw_csv csv = { .out = out };
    gw_record_heads(&csv, record, "");
    gw_csv_end_row(&csv);
    for (int i = 0; i < n; i++) {
        const gw_place place = {
            .c = c, .record = record, .it = (const char *)it + (size_t)i * size, .index = i
        };
        gw_record_fields(&csv, record, &place);
        gw_csv_end_row(&csv);
    }
}
