/* SPDX-License-Identifier: MIT */
/**
 * Rows of comma-separated values, quoted as RFC 4180 says; a row ends with a line feed alone, as the
 * other tools of a Unix shell expect. Numbers keep full precision; no number is an empty field.
 */
#ifndef FORMAT_CSV_H
#define FORMAT_CSV_H

#include "base/buf.h"

typedef struct gw_csv {
    gw_buf *out;
    bool started; /**< a field of this row is written */
} gw_csv;

void gw_csv_string(gw_csv *csv, const char *s); /**< NULL: an empty field */
void gw_csv_text(gw_csv *csv, gw_buf *text);    /**< frees it; that it failed is handed on */
void gw_csv_number(gw_csv *csv, double value);  /**< not finite: an empty field */
void gw_csv_numbers(gw_csv *csv, const double *values, int n);
void gw_csv_end_row(gw_csv *csv);

#endif
