/* SPDX-License-Identifier: MIT */
/** A result as JSON: its rows in their order. */
#ifndef RECORD_JSON_H
#define RECORD_JSON_H

#include "base/buf.h"
#include "format/json.h"
#include "record/record.h"

/** The whole object, "format", "command" and (where there is one) "case" first. */
void gw_result_json(const gw_result *result, const gw_case *c, const void *made, gw_buf *out);

/** The rows of one place, inside an object that is already open; those with all of the flags in `only`. */
void gw_place_json(const gw_place *place, int only, gw_json *json);

/** An object that describes a record, or the whole result of a command, under `key` (draft 2020-12). */
void gw_record_schema(const gw_record *record, const char *key, gw_json *json);
void gw_result_schema(const gw_result *result, const char *key, gw_json *json);

/** Every key of a result with what it means, a line each, those inside an object or a list set in. */
void gw_result_keys(const gw_result *result, gw_buf *out);

#endif
