/* SPDX-License-Identifier: MIT */
/* A row by its key. */
#include "record/record.h"

#include <assert.h>
#include <math.h>
#include <string.h>

/* A part holds rows of its own: they are found as if they stood here. */
static const gw_field *among(const gw_place *place, const char *key, size_t n, gw_found_row *out);

static const gw_field *in_part(const gw_field *part, const gw_place *place, const char *key, size_t n,
                               gw_found_row *out)
{
    assert(out->depth < GW_DEEPEST);
    gw_place *inner = &out->at[out->depth++];
    bool there = gw_place_enter(part, place, inner);
    const gw_field *field = among(inner, key, n, out);
    if (field && !there) out->absent = true;
    if (!field) out->depth--;
    return field;
}

static const gw_field *among(const gw_place *place, const char *key, size_t n, gw_found_row *out)
{
    for (int i = 0; i < place->record->n; i++) {
        const gw_field *field = &place->record->field[i];
        if (field->kind == GW_PART) {
            const gw_field *found = in_part(field, place, key, n, out);
            if (found) return found;
        } else if (strncmp(field->key, key, n) == 0 && !field->key[n]) {
            return field;
        }
    }
    return NULL;
}

static int component_of(const gw_field *field, const char *name)
{
    for (int i = 0; i < GW_COMPONENTS && (field->kind == GW_BAND || i < 3); i++)
        if (strcmp(gw_component_name(field, i), name) == 0) return i;
    assert(name == NULL); /* no such component */
    return -1;
}

void gw_find(const gw_place *place, const char *key, gw_found_row *out)
{
    *out = (gw_found_row){ .component = -1, .depth = 1 };
    out->at[0] = *place;
    for (;;) {
        size_t n = strcspn(key, ".");
        out->field = among(&out->at[out->depth - 1], key, n, out);
        assert(out->field);
        if (!key[n]) return;
        key += n + 1;
        if (out->field->kind != GW_OBJECT) break;
        assert(out->depth < GW_DEEPEST);
        gw_place *inner = &out->at[out->depth];
        if (out->absent || !gw_place_enter(out->field, &out->at[out->depth - 1], inner)) {
            out->absent = true;
            *inner = (gw_place){ .record = out->field->record };
        }
        out->depth++;
    }
    out->component = component_of(out->field, key);
}

static gw_shown read_found(const gw_found_row *found)
{
    return gw_field_read(found->field, &found->at[found->depth - 1]);
}

double gw_number_at(const gw_place *place, const char *key, gw_unit *unit)
{
    gw_found_row found;
    gw_find(place, key, &found);
    if (unit) *unit = found.field->unit;
    if (found.absent) return NAN;
    gw_shown value = read_found(&found);
    if (unit) *unit = value.unit;
    assert(value.n);
    return value.x[found.component < 0 ? 0 : found.component];
}

const gw_record *gw_record_of(const gw_place *place, const char *key)
{
    gw_found_row found;
    gw_find(place, key, &found);
    return found.field->record;
}

const gw_field *gw_row_if(const gw_place *place, const char *key)
{
    for (int i = 0; i < place->record->n; i++) {
        const gw_field *field = &place->record->field[i];
        if (field->kind != GW_PART && strcmp(field->key, key) == 0) return field;
    }
    return NULL;
}

const gw_field *gw_row_of(const gw_place *place, const char *key)
{
    const gw_field *row = gw_row_if(place, key);
    assert(row);
    return row;
}
