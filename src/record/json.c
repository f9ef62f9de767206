/* SPDX-License-Identifier: MIT */
#include "record/json.h"

#include "format/number.h"

#include <math.h>

static void put_parts(const gw_field *field, const gw_shown *value, const char *key, gw_json *json)
{
    gw_json_object_on_line(json, key);
    for (int i = 0; i < value->n; i++)
        gw_json_number(json, gw_component_name(field, i), gw_shown_out(field, value, i));
    gw_json_close(json);
}

static void put_numbers(const gw_field *field, const gw_shown *value, const char *key, gw_json *json)
{
    double x[GW_COMPONENTS];
    for (int i = 0; i < value->n; i++) x[i] = gw_shown_out(field, value, i);
    gw_json_numbers(json, key, x, value->n);
}

static void put_value(const gw_field *field, const gw_place *place, gw_json *json)
{
    char key[GW_KEY_MAX];
    gw_shown value = gw_field_read(field, place);
    if (field->flags & GW_SOMETIMES && gw_shown_lacks(&value)) return;
    gw_field_key(field, value.unit, key);
    if (field->flags & GW_AS_MINUTES)
        gw_json_string(json, key, gw_degrees_minutes(value.x[0], 0).s);
    else if (!value.n)
        gw_json_string(json, key, value.text);
    else if (field->kind == GW_FLAG)
        gw_json_bool(json, key, value.x[0] != 0.0);
    else if (field->kind == GW_WHOLE && isfinite(value.x[0]))
        gw_json_int(json, key, (long)value.x[0]);
    else if (value.n == 1)
        gw_json_number(json, key, gw_shown_out(field, &value, 0));
    else if (field->kind == GW_BAND || field->kind == GW_FITTED)
        put_parts(field, &value, key, json);
    else
        put_numbers(field, &value, key, json);
}

static void open_object(const gw_field *field, const char *key, gw_json *json)
{
    if (field->flags & GW_ON_LINE)
        gw_json_object_on_line(json, key);
    else
        gw_json_object(json, key);
}

static void put_list(const gw_field *field, const gw_place *place, int only, gw_json *json)
{
    gw_json_array(json, field->key);
    for (int i = 0, n = gw_place_count(field, place); i < n; i++) {
        gw_place element;
        if (!gw_place_element(field, place, i, &element)) continue;
        open_object(field, NULL, json);
        gw_place_json(&element, only, json);
        gw_json_close(json);
    }
    gw_json_close(json);
}

static void put_series(const gw_field *field, const gw_place *place, gw_json *json)
{
    char key[GW_KEY_MAX];
    gw_json_array_on_line(json, gw_field_key(field, field->unit, key));
    for (int i = 0, n = gw_place_count(field, place); i < n; i++)
        gw_json_number(json, NULL, gw_unit_out(field->unit, gw_series_at(field, place, i)));
    gw_json_close(json);
}

static void put_points(const gw_field *field, const gw_place *place, gw_json *json)
{
    gw_json_array(json, field->key);
    for (int i = 0, n = gw_place_count(field, place); i < n; i++) {
        double point[2];
        gw_point_out(field, place, i, point);
        gw_json_numbers(json, NULL, point, 2);
    }
    gw_json_close(json);
}

static void put_lines(const gw_field *field, const gw_place *place, gw_json *json)
{
    if (field->flags & GW_ON_LINE)
        gw_json_array_on_line(json, field->key);
    else
        gw_json_array(json, field->key);
    for (int i = 0, n = gw_place_count(field, place); i < n; i++)
        gw_json_string(json, NULL, gw_line_at(field, place, i));
    gw_json_close(json);
}

static void put_named(const gw_field *field, const gw_place *place, gw_json *json)
{
    open_object(field, field->key, json);
    for (int i = 0, n = gw_place_count(field, place); i < n; i++)
        gw_json_string(json, gw_name_at(field, place, i), gw_line_at(field, place, i));
    gw_json_close(json);
}

static void put_inside(const gw_field *field, const gw_place *place, int only, gw_json *json)
{
    gw_place inner;
    if (!gw_place_enter(field, place, &inner)) {
        if (field->flags & GW_MAY_LACK) gw_json_null(json, field->key);
        return;
    }
    if (field->kind == GW_OBJECT) {
        char key[GW_KEY_MAX];
        open_object(field, gw_field_key(field, field->unit, key), json);
    }
    gw_place_json(&inner, only, json);
    if (field->kind == GW_OBJECT) gw_json_close(json);
}

static void put_field(const gw_field *field, const gw_place *place, int only, gw_json *json)
{
    switch (field->kind) {
    case GW_OBJECT:
    case GW_PART:
        put_inside(field, place, only, json);
        break;
    case GW_LIST:
        put_list(field, place, only, json);
        break;
    case GW_LINES:
        put_lines(field, place, json);
        break;
    case GW_NAMED:
        put_named(field, place, json);
        break;
    case GW_POINTS:
        put_points(field, place, json);
        break;
    case GW_NUMBERS:
        put_series(field, place, json);
        break;
    default:
        put_value(field, place, json);
    }
}

void gw_place_json(const gw_place *place, int only, gw_json *json)
{
    for (int i = 0; i < place->record->n; i++) {
        const gw_field *field = &place->record->field[i];
        if (field->flags & GW_NO_JSON || (field->kind != GW_PART && (field->flags & only) != only)) continue;
        put_field(field, place, only, json);
    }
}

void gw_result_json(const gw_result *result, const gw_case *c, const void *made, gw_buf *out)
{
    gw_json json = { .out = out };
    const gw_place top = gw_place_top(result, c, made);
    gw_json_object(&json, NULL);
    gw_json_string(&json, "format", "giveway-result-1");
    gw_json_string(&json, "command", result->command);
    if (c) gw_json_string(&json, "case", c->title);
    gw_place_json(&top, 0, &json);
    gw_json_close(&json);
}
