/* SPDX-License-Identifier: MIT */
/** The rows of a tyre table as they stand in its file. */
#ifndef GW_CASEFILE_TYRE_ROWS_H
#define GW_CASEFILE_TYRE_ROWS_H

#include "casefile/node.h"

enum { GW_TYRE_SLIP, GW_TYRE_LOAD, GW_TYRE_CAMBER, GW_TYRE_FORCE, GW_TYRE_COLUMNS };

/** In the units of the file: degrees and newtons. */
typedef struct gw_tyre_row {
    double v[GW_TYRE_COLUMNS];
    int line;
} gw_tyre_row;

typedef struct gw_tyre_rows {
    gw_tyre_row *row;
    int n;
} gw_tyre_rows;

/** Names of the columns, as in the first line of the file. */
extern const char *const GW_TYRE_HEADS[GW_TYRE_COLUMNS];

/**
 * Reads the table in the file of `rd`, as any spreadsheet program writes it (casefile/columns.h). Every fault
 * names line and column.
 *
 * @param[out] rows  owned by the caller (free rows->row); empty where false is returned.
 */
bool gw_read_tyre_rows(const gw_reader *rd, gw_tyre_rows *rows);

#endif
