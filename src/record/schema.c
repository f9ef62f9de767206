/* SPDX-License-Identifier: MIT */
#include "record/json.h"

#include <stdio.h>

static bool is_number(const gw_field *f)
{
    return f->kind == GW_NUMBER || f->kind == GW_WHOLE;
}

/* "number", or ["number", "null"] where a figure may not be known. */
static void put_type(const gw_field *f, const char *type, gw_json *json)
{
    if (!(f->flags & GW_MAY_LACK)) {
        gw_json_string(json, "type", type);
        return;
    }
    gw_json_array_on_line(json, "type");
    gw_json_string(json, NULL, type);
    gw_json_string(json, NULL, "null");
    gw_json_close(json);
}

static void put_items(const char *type, int n, gw_json *json)
{
    gw_json_string(json, "type", "array");
    GW_JSON_LINE(json, "items", { "type", type, 0 });
    if (!n) return;
    gw_json_int(json, "minItems", n);
    gw_json_int(json, "maxItems", n);
}

static void put_words(const gw_field *f, gw_json *json)
{
    gw_json_array_on_line(json, "enum");
    for (int i = 0; f->words[i]; i++) gw_json_string(json, NULL, f->words[i]);
    if (f->flags & GW_MAY_LACK) gw_json_null(json, NULL);
    gw_json_close(json);
}

static void put_points(gw_json *json)
{
    gw_json_string(json, "type", "array");
    gw_json_object_on_line(json, "items");
    put_items("number", 2, json);
    gw_json_close(json);
}

static void put_parts(const gw_field *f, int n, gw_json *json)
{
    gw_json_string(json, "type", "object");
    gw_json_object_on_line(json, "properties");
    for (int i = 0; i < n; i++) {
        gw_json_object_on_line(json, gw_component_name(f, i));
        put_type(f, "number", json);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_named(gw_json *json)
{
    gw_json_string(json, "type", "object");
    GW_JSON_LINE(json, "additionalProperties", { "type", "string", 0 });
}

static void put_scalar(const gw_field *f, gw_json *json)
{
    if (f->flags & GW_AS_MINUTES)
        gw_json_string(json, "type", "string");
    else if (f->kind == GW_NUMBER)
        put_type(f, "number", json);
    else if (f->kind == GW_WHOLE)
        put_type(f, "integer", json);
    else if (f->kind == GW_FLAG)
        gw_json_string(json, "type", "boolean");
    else if (f->kind == GW_ONE_OF)
        put_words(f, json);
    else if (f->kind == GW_PAIR || f->kind == GW_THREE)
        put_items("number", f->kind == GW_PAIR ? 2 : 3, json);
    else if (f->kind == GW_NUMBERS)
        put_items("number", 0, json);
    else if (f->kind == GW_LINES)
        put_items("string", 0, json);
    else if (f->kind == GW_BAND || f->kind == GW_FITTED)
        put_parts(f, f->kind == GW_BAND ? GW_COMPONENTS : 2, json);
    else if (f->kind == GW_POINTS)
        put_points(json);
    else if (f->kind == GW_NAMED)
        put_named(json);
    else
        put_type(f, "string", json);
}

static void put_members(const gw_record *record, gw_json *json);

static void put_object_or_null(const gw_field *f, gw_json *json)
{
    gw_json_object(json, f->key);
    gw_json_array(json, "anyOf");
    gw_record_schema(f->record, NULL, json);
    GW_JSON_LINE(json, NULL, { "type", "null", 0 });
    gw_json_close(json);
    gw_json_close(json);
}

static void put_property(const gw_field *f, gw_json *json)
{
    char key[GW_KEY_MAX];
    if (f->kind == GW_OBJECT && f->flags & GW_MAY_LACK) {
        put_object_or_null(f, json);
        return;
    }
    if (f->kind == GW_OBJECT) {
        gw_record_schema(f->record, gw_field_key(f, f->unit, key), json);
        return;
    }
    if (f->kind == GW_LIST) {
        gw_json_object(json, f->key);
        gw_json_string(json, "type", "array");
        gw_json_string(json, "description", f->doc);
        gw_record_schema(f->record, "items", json);
    } else {
        gw_json_object_on_line(json, gw_field_key(f, f->unit, key));
        put_scalar(f, json);
        gw_json_string(json, "description", f->doc);
    }
    gw_json_close(json);
}

static void put_members(const gw_record *record, gw_json *json)
{
    for (int i = 0; i < record->n; i++) {
        const gw_field *f = &record->field[i];
        if (f->flags & GW_NO_JSON) continue;
        if (f->kind == GW_PART)
            put_members(f->record, json);
        else
            put_property(f, json);
    }
}

static bool always_there(const gw_field *f)
{
    return !(f->flags & (GW_NO_JSON | GW_SOMETIMES)) &&
           (f->kind == GW_LIST || !gw_field_may_be_absent(f) || f->flags & GW_MAY_LACK);
}

/* Keys that stand wherever the record does; those of a part that may be absent only with its first. */
static void put_required(const gw_record *record, int skip, gw_json *json)
{
    char key[GW_KEY_MAX];
    for (int i = 0; i < record->n; i++) {
        const gw_field *f = &record->field[i];
        if (!always_there(f) || skip-- > 0) continue;
        if (f->kind == GW_PART)
            put_required(f->record, 0, json);
        else
            gw_json_string(json, NULL, f->kind == GW_LIST ? f->key : gw_field_key(f, f->unit, key));
    }
}

/* The row whose key stands wherever the record does; its length: none of them, as where all are columns. */
static int first_there(const gw_record *record)
{
    int i = 0;
    while (i < record->n && (!always_there(&record->field[i]) || record->field[i].kind == GW_PART)) i++;
    return i;
}

/* Parts in parts as well. */
static void put_dependents(const gw_record *record, bool *any, gw_json *json)
{
    char key[GW_KEY_MAX];
    for (int i = 0; i < record->n; i++) {
        const gw_field *f = &record->field[i];
        if (f->kind != GW_PART) continue;
        const int first = first_there(f->record);
        if (gw_field_may_be_absent(f) && first < f->record->n) {
            if (!*any) gw_json_object(json, "dependentRequired");
            *any = true;
            gw_json_array_on_line(json,
                                  gw_field_key(&f->record->field[first], f->record->field[first].unit, key));
            put_required(f->record, 1, json);
            gw_json_close(json);
        }
        put_dependents(f->record, any, json);
    }
}

void gw_record_schema(const gw_record *record, const char *key, gw_json *json)
{
    gw_json_object(json, key);
    gw_json_string(json, "type", "object");
    gw_json_array_on_line(json, "required");
    put_required(record, 0, json);
    gw_json_close(json);
    bool any = false;
    put_dependents(record, &any, json);
    if (any) gw_json_close(json);
    gw_json_object(json, "properties");
    put_members(record, json);
    gw_json_close(json);
    gw_json_close(json);
}

void gw_result_schema(const gw_result *result, const char *key, gw_json *json)
{
    gw_json_object(json, key);
    gw_json_string(json, "type", "object");
    gw_json_array_on_line(json, "required");
    gw_json_string(json, NULL, "format");
    gw_json_string(json, NULL, "command");
    if (!result->caseless) gw_json_string(json, NULL, "case");
    put_required(result->record, 0, json);
    gw_json_close(json);
    gw_json_object(json, "properties");
    GW_JSON_LINE(json, "format", { "const", "giveway-result-1", 0 });
    GW_JSON_LINE(json, "command", { "const", result->command, 0 });
    GW_JSON_LINE(json, "case", { "type", "string", 0 });
    put_members(result->record, json);
    gw_json_close(json);
    gw_json_close(json);
}

/* -- in words -- */

static void put_keys(const gw_record *record, int depth, gw_buf *out)
{
    char key[GW_KEY_MAX + 16];
    for (int i = 0; i < record->n; i++) {
        const gw_field *f = &record->field[i];
        if (f->kind == GW_PART) {
            put_keys(f->record, depth, out);
            continue;
        }
        const char *mark = f->kind == GW_LIST ? "[]" : f->flags & GW_NO_JSON ? " (CSV alone)" : "";
        int room = 40 - 2 * depth;
        char name[GW_KEY_MAX];
        snprintf(key, sizeof key, "%s%s", gw_field_key(f, f->unit, name), mark);
        gw_buf_repeat(out, ' ', 2 * depth + 2);
        gw_buf_fmt(out, "%-*s  %s%s\n", room > 0 ? room : 0, key, f->doc,
                   is_number(f) && f->flags & GW_MAY_LACK ? "; null: not known" : "");
        if (f->record) put_keys(f->record, depth + 1, out);
    }
}

void gw_result_keys(const gw_result *result, gw_buf *out)
{
    put_keys(result->record, 0, out);
}
