/* SPDX-License-Identifier: MIT */
#include "format/csv.h"

#include "format/number.h"

#include <math.h>
#include <string.h>

static void separate(gw_csv *csv)
{
    if (csv->started) gw_buf_add(csv->out, ",");
    csv->started = true;
}

static bool needs_quotes(const char *s)
{
    size_t n = strlen(s);
    return strpbrk(s, ",\"\r\n") || (n && (s[0] == ' ' || s[n - 1] == ' '));
}

void gw_csv_string(gw_csv *csv, const char *s)
{
    separate(csv);
    if (!s) return;
    if (!needs_quotes(s)) {
        gw_buf_add(csv->out, s);
        return;
    }
    gw_buf_add(csv->out, "\"");
    for (; *s; s++) gw_buf_bytes(csv->out, *s == '"' ? "\"\"" : s, *s == '"' ? 2 : 1);
    gw_buf_add(csv->out, "\"");
}

void gw_csv_text(gw_csv *csv, gw_buf *text)
{
    gw_csv_string(csv, gw_buf_str(text));
    gw_buf_drop(text, csv->out);
}

void gw_csv_number(gw_csv *csv, double value)
{
    separate(csv);
    if (isfinite(value)) gw_buf_add(csv->out, gw_exact(value).s);
}

void gw_csv_numbers(gw_csv *csv, const double *values, int n)
{
    for (int i = 0; i < n; i++) gw_csv_number(csv, values[i]);
}

void gw_csv_end_row(gw_csv *csv)
{
    gw_buf_add(csv->out, "\n");
    csv->started = false;
}
