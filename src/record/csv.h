/* SPDX-License-Identifier: MIT */
/** A result as CSV: a row an element of its list of rows, with what stands above in every one. */
#ifndef RECORD_CSV_H
#define RECORD_CSV_H

#include "base/buf.h"
#include "format/csv.h"
#include "record/record.h"

/**
 * Heads, then rows, columns in the order of the rows of the records: numbers in the unit that their head
 * tells, vectors in three columns, what is inside an object with its key before it; what is absent leaves
 * fields empty.
 */
void gw_result_csv(const gw_result *result, const gw_case *c, const void *made, gw_buf *out);

/** Part of a row that the caller ends: the heads of a record, `prefix` before each; then its fields at a
 * place, all empty without one. */
void gw_record_heads(gw_csv *csv, const gw_record *record, const char *prefix);
void gw_record_fields(gw_csv *csv, const gw_record *record, const gw_place *place);

/** Heads, then a line for each of `n` structs of `size` bytes, which `record` describes. */
void gw_records_csv(const gw_record *record, const gw_case *c, const void *it, int n, size_t size,
                    gw_buf *out);

#endif
