/* SPDX-License-Identifier: MIT */
#include "show/results.h"

#include "record/json.h"

#include <string.h>

static const gw_result *const RESULTS[] = {
#define GW_AS_ENTRY(id) &GW_##id##_RESULT,
    GW_RESULT_LIST(GW_AS_ENTRY)
#undef GW_AS_ENTRY
};
enum { N = sizeof RESULTS / sizeof *RESULTS };

static const gw_result *find(const char *command)
{
    for (int i = 0; i < N; i++)
        if (strcmp(RESULTS[i]->command, command) == 0) return RESULTS[i];
    return NULL;
}

bool gw_results_keys(const char *command, gw_buf *out)
{
    const gw_result *result = find(command);
    if (result) gw_result_keys(result, out);
    return result != NULL;
}

/* {"if": the command is this one, "then": its part of "$defs"} */
static void put_choice(const char *command, gw_json *json)
{
    gw_buf ref = { 0 };
    gw_buf_fmt(&ref, "#/$defs/%s_result", command);
    gw_json_object_on_line(json, NULL);
    gw_json_object_on_line(json, "if");
    gw_json_object_on_line(json, "properties");
    GW_JSON_LINE(json, "command", { "const", command, 0 });
    for (int i = 0; i < 2; i++) gw_json_close(json);
    GW_JSON_LINE(json, "then", { "$ref", gw_buf_str(&ref), 0 });
    gw_json_close(json);
    gw_buf_drop(&ref, json->out);
}

static void put_head(gw_json *json)
{
    gw_json_string(json, "$schema", "https://json-schema.org/draft/2020-12/schema");
    gw_json_string(json, "$id", "urn:giveway:result-1");
    gw_json_string(json, "title", "A result of giveway (giveway-result-1)");
    gw_json_string(json, "description",
                   "What a command prints with --format json. Keys that are not listed may be added by later "
                   "versions; those listed keep their meaning. Units are in the names; axes and signs are "
                   "those of ISO 8855:2011.");
    gw_json_string(json, "type", "object");
    gw_json_array_on_line(json, "required");
    gw_json_string(json, NULL, "format");
    gw_json_string(json, NULL, "command");
    gw_json_close(json);
}

static void put_properties(gw_json *json)
{
    gw_json_object(json, "properties");
    GW_JSON_LINE(json, "format", { "const", "giveway-result-1", 0 });
    gw_json_object_on_line(json, "command");
    gw_json_array_on_line(json, "enum");
    for (int i = 0; i < N; i++) gw_json_string(json, NULL, RESULTS[i]->command);
    for (int i = 0; i < 3; i++) gw_json_close(json);
    gw_json_bool(json, "additionalProperties", true);
    gw_json_array(json, "allOf");
    for (int i = 0; i < N; i++) put_choice(RESULTS[i]->command, json);
    gw_json_close(json);
}

static void put_parts(gw_json *json)
{
    gw_json_object(json, "$defs");
    for (int i = 0; i < N; i++) {
        gw_buf name = { 0 };
        gw_buf_fmt(&name, "%s_result", RESULTS[i]->command);
        gw_result_schema(RESULTS[i], gw_buf_str(&name), json);
        gw_buf_drop(&name, json->out);
    }
    gw_record_schema(&GW_DEFLECTION_RECORD, "deflection", json);
    gw_record_schema(&GW_BANDS_RECORD, "bands", json);
    gw_json_close(json);
}

void gw_results_schema(gw_buf *out)
{
    gw_json json = { .out = out };
    gw_json_object(&json, NULL);
    put_head(&json);
    put_properties(&json);
    put_parts(&json);
    gw_json_close(&json);
}
