/* SPDX-License-Identifier: MIT */
/**
 * Writes JSON (RFC 8259) as it comes, without a tree in memory. The parser library of the case
 * reader could print too, but it passes bytes that are not UTF-8 through, and only the reader is to
 * know it. The same data always gives the same bytes: members in the order of the calls, every
 * double in the shortest form that reads back exactly, no negative zero.
 */
#ifndef FORMAT_JSON_H
#define FORMAT_JSON_H

#include "base/buf.h"

enum { GW_JSON_DEPTH = 32 };

typedef struct gw_json {
    gw_buf *out;
    int depth;
    struct {
        char close;   /**< '}' or ']'                     */
        bool filled;  /**< has a member already           */
        bool on_line; /**< kept on one line               */
    } level[GW_JSON_DEPTH];
} gw_json;

/* `key` is the member's name inside an object and must be NULL inside an array and at the top. */
void gw_json_object(gw_json *json, const char *key);         /**< opens {, a member a line      */
void gw_json_array(gw_json *json, const char *key);          /**< opens [, a member a line      */
void gw_json_array_on_line(gw_json *json, const char *key);  /**< opens [, all on one line */
void gw_json_object_on_line(gw_json *json, const char *key); /**< opens {, all on one line */
void gw_json_close(gw_json *json); /**< closes the innermost one; the outermost ends the line */

void gw_json_string(gw_json *json, const char *key, const char *s); /**< NULL: null        */
void gw_json_number(gw_json *json, const char *key, double value);  /**< not finite: null  */
void gw_json_int(gw_json *json, const char *key, long value);
void gw_json_bool(gw_json *json, const char *key, bool value);
void gw_json_null(gw_json *json, const char *key);
void gw_json_numbers(gw_json *json, const char *key, const double *values, int n); /**< array on one line */

/** A member that is a text or, where that is NULL, a number. */
typedef struct gw_json_member {
    const char *key, *text;
    double number;
} gw_json_member;

/** An object on one line, all its members at once: GW_JSON_LINE(json, key, { "at", "seat" }, { .key = "rate",
 * .number = 2 }). */
#define GW_JSON_LINE(json, key, ...)                                                                         \
    gw_json_line(json, key, (const gw_json_member[]){ __VA_ARGS__, { NULL, NULL, 0 } })
void gw_json_line(gw_json *json, const char *key,
                  const gw_json_member *member); /**< ended by one without key */

/** The string in quotes, escaped: control characters as \u00XX, what is not UTF-8 as U+FFFD. */
void gw_json_quote(gw_buf *out, const char *s);

#endif
