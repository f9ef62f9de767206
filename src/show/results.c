/* SPDX-License-Identifier: MIT */
#include "show/results.h"

#include "record/schema.h"

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

/* The members of "$defs" that rows make, in place of a line of the part that is written by hand. */
static void put_made(gw_buf *out)
{
    gw_json json = { .out = out, .depth = 2 };
    for (int i = 0; i < N; i++) {
        gw_buf name = { 0 };
        gw_buf_fmt(&name, "%s_result", RESULTS[i]->command);
        gw_result_schema(RESULTS[i], gw_buf_str(&name), &json);
        if (name.failed) out->failed = true;
        gw_buf_free(&name);
    }
    gw_record_schema(&GW_DEFLECTION_RECORD, "deflection", &json);
    gw_record_schema(&GW_BANDS_RECORD, "bands", &json);
}

void gw_results_schema(gw_buf *out)
{
    static const char MARK[] = "\"$defs\": {";
    const char *mark = strstr(gw_schema_written, MARK) + sizeof MARK - 1;
    gw_buf_bytes(out, gw_schema_written, (size_t)(mark - gw_schema_written));
    put_made(out);
    gw_buf_add(out, ",");
    gw_buf_add(out, mark);
}
