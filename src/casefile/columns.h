/* SPDX-License-Identifier: MIT */
/**
 * A table of readings: text that any spreadsheet program writes.
 *
 * Lines that begin with # and blank ones (also those of parting characters alone) are remarks. The first
 * other line holds the heads, in any order, columns that nobody asked for are passed over; it decides what
 * parts the fields: a tab where it holds one, else semicolons, else commas. Fields may stand in quotes, "" in
 * them is one (RFC 4180), but do not go on in the next line. A byte-order mark and CR LF pass. A decimal
 * comma passes where commas do not part the fields.
 */
#ifndef GW_CASEFILE_COLUMNS_H
#define GW_CASEFILE_COLUMNS_H

#include "casefile/get.h"
#include "giveway/status.h"

enum { GW_COLUMNS_HEADS = 32, GW_COLUMNS_MOST = 1024 };

/** Owned by the caller: start with `{0}`, end with gw_columns_free. */
typedef struct gw_columns {
    const char *const *head; /**< as asked for, `n_heads` of them                           */
    int n_heads;
    int column[GW_COLUMNS_HEADS]; /**< column of the file, from 0; -1: the file has no such head */
    int place[GW_COLUMNS_HEADS];  /**< place in a row of `cell`; -1 likewise                     */
    int stride;                   /**< cells that are kept of each row                           */
    int n_rows;
    int heads_line;    /**< line of the heads, from 1                                 */
    int *line;         /**< of each row, from 1                                       */
    const char **cell; /**< of each row `stride` texts, trimmed, "": empty            */
    char separator;    /**< '\t', ';' or ','                                          */
    char *text;        /**< what the cells point into                                 */
} gw_columns;

/**
 * Reads the file at `path`; faults are told under rd->file.
 * @param head  the heads that the caller knows, n <= GW_COLUMNS_HEADS; borrowed.
 * @retval GW_OK, GW_E_IO, GW_E_PARSE (with faults), GW_E_NOMEM
 */
gw_status gw_columns_read(const gw_reader *rd, const char *path, const char *const *head, int n,
                          gw_columns *out);

/** The same from `size` bytes with a closing zero, which are changed and which the caller keeps. */
gw_status gw_columns_parse(const gw_reader *rd, char *text, size_t size, const char *const *head, int n,
                           gw_columns *out);

/** True where the file has that head. */
bool gw_columns_has(const gw_columns *table, int head);

/** The text of a cell, "" where it is empty or the head is missing. */
const char *gw_columns_text(const gw_columns *table, int row, int head);

/** Adds "FILE: line 7, force_N: text" to the faults. */
void gw_columns_fault(const gw_reader *rd, const gw_columns *table, int row, int head, const char *fmt, ...)
    __attribute__((format(printf, 5, 6)));

/** The number of a cell in `range`, or false with a fault that names line and head. */
bool gw_columns_number(const gw_reader *rd, const gw_columns *table, int row, int head, gw_range range,
                       double *out);

void gw_columns_free(gw_columns *table);

#endif
