/* SPDX-License-Identifier: MIT */
/** What rows promise: the JSON Schema of a record or a result, and its keys in words. */
#ifndef RECORD_SCHEMA_H
#define RECORD_SCHEMA_H

#include "format/json.h"
#include "record/record.h"

/** An object that describes a record, or the whole result of a command, under `key` (draft 2020-12). */
void gw_record_schema(const gw_record *record, const char *key, gw_json *json);
void gw_result_schema(const gw_result *result, const char *key, gw_json *json);

/** Every key of a result with what it means, a line each, those inside an object or a list set in. */
void gw_result_keys(const gw_result *result, gw_buf *out);

#endif
