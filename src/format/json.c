/* SPDX-License-Identifier: MIT */
#include "format/json.h"

#include "base/utf8.h"
#include "format/number.h"

#include <assert.h>
#include <math.h>

static void quote_one(gw_buf *out, gw_codepoint c, const char *from, size_t n)
{
    switch (c) {
    case GW_UTF8_BAD:
        gw_buf_add(out, GW_UTF8_REPLACEMENT);
        break;
    case '"':
        gw_buf_add(out, "\\\"");
        break;
    case '\\':
        gw_buf_add(out, "\\\\");
        break;
    case '\n':
        gw_buf_add(out, "\\n");
        break;
    case '\t':
        gw_buf_add(out, "\\t");
        break;
    case '\r':
        gw_buf_add(out, "\\r");
        break;
    default:
        if (gw_utf8_is_control(c) && c <= 0xFFFF)
            gw_buf_fmt(out, "\\u%04x", (unsigned)c);
        else
            gw_buf_bytes(out, from, n);
    }
}

void gw_json_quote(gw_buf *out, const char *s)
{
    gw_buf_add(out, "\"");
    while (*s) {
        const char *from = s;
        gw_codepoint c = gw_utf8_next(&s);
        quote_one(out, c, from, (size_t)(s - from));
    }
    gw_buf_add(out, "\"");
}

/* Comma, line and indentation before a member, and its key. */
static void begin_member(gw_json *json, const char *key)
{
    if (json->depth > 0) {
        bool on_line = json->level[json->depth - 1].on_line;
        if (json->level[json->depth - 1].filled) gw_buf_add(json->out, on_line ? ", " : ",");
        json->level[json->depth - 1].filled = true;
        if (!on_line) {
            gw_buf_add(json->out, "\n");
            gw_buf_repeat(json->out, ' ', 2 * json->depth);
        }
    }
    if (key) {
        gw_json_quote(json->out, key);
        gw_buf_add(json->out, ": ");
    }
}

static void begin_level(gw_json *json, const char *key, char bracket, char close, bool on_line)
{
    assert(json->depth < GW_JSON_DEPTH);
    begin_member(json, key);
    gw_buf_bytes(json->out, &bracket, 1);
    bool inherited = json->depth > 0 && json->level[json->depth - 1].on_line;
    json->level[json->depth].close = close;
    json->level[json->depth].filled = false;
    json->level[json->depth].on_line = on_line || inherited;
    json->depth++;
}

void gw_json_object(gw_json *json, const char *key)
{
    begin_level(json, key, '{', '}', false);
}

void gw_json_array(gw_json *json, const char *key)
{
    begin_level(json, key, '[', ']', false);
}

void gw_json_object_on_line(gw_json *json, const char *key)
{
    begin_level(json, key, '{', '}', true);
}

void gw_json_array_on_line(gw_json *json, const char *key)
{
    begin_level(json, key, '[', ']', true);
}

void gw_json_close(gw_json *json)
{
    assert(json->depth > 0);
    json->depth--;
    if (json->level[json->depth].filled && !json->level[json->depth].on_line) {
        gw_buf_add(json->out, "\n");
        gw_buf_repeat(json->out, ' ', 2 * json->depth);
    }
    gw_buf_bytes(json->out, &json->level[json->depth].close, 1);
    if (json->depth == 0) gw_buf_add(json->out, "\n");
}

void gw_json_string(gw_json *json, const char *key, const char *s)
{
    begin_member(json, key);
    if (s)
        gw_json_quote(json->out, s);
    else
        gw_buf_add(json->out, "null");
}

static void add_number(gw_buf *out, double value)
{
    gw_buf_add(out, isfinite(value) ? gw_exact(value).s : "null");
}

void gw_json_number(gw_json *json, const char *key, double value)
{
    begin_member(json, key);
    add_number(json->out, value);
}

void gw_json_int(gw_json *json, const char *key, long value)
{
    begin_member(json, key);
    gw_buf_fmt(json->out, "%ld", value);
}

void gw_json_bool(gw_json *json, const char *key, bool value)
{
    begin_member(json, key);
    gw_buf_add(json->out, value ? "true" : "false");
}

void gw_json_null(gw_json *json, const char *key)
{
    begin_member(json, key);
    gw_buf_add(json->out, "null");
}

void gw_json_numbers(gw_json *json, const char *key, const double *values, int n)
{
    begin_member(json, key);
    gw_buf_add(json->out, "[");
    for (int i = 0; i < n; i++) {
        if (i) gw_buf_add(json->out, ", ");
        add_number(json->out, values[i]);
    }
    gw_buf_add(json->out, "]");
}

void gw_json_line(gw_json *json, const char *key, const gw_json_member *member)
{
    gw_json_object_on_line(json, key);
    for (; member->key; member++)
        if (member->text)
            gw_json_string(json, member->key, member->text);
        else
            gw_json_number(json, member->key, member->number);
    gw_json_close(json);
}
