/* SPDX-License-Identifier: MIT */
#include "casefile/tyre_rows.h"

#include "casefile/columns.h"

#include <stdlib.h>

const char *const GW_TYRE_HEADS[GW_TYRE_COLUMNS] = { "slip_deg", "load_N", "camber_deg", "lateral_N" };

static const gw_range RANGES[GW_TYRE_COLUMNS] = { GW_FROM(-90, 90), GW_ABOVE(0, 1e6), GW_FROM(-90, 90),
                                                  GW_FROM(-1e6, 1e6) };

static void check_heads(const gw_reader *rd, const gw_columns *table)
{
    for (int i = 0; i < GW_TYRE_COLUMNS; i++)
        if (!gw_columns_has(table, i))
            gw_fault(rd, NULL, "line %d: no head %s: expected slip_deg, load_N, camber_deg and lateral_N",
                     table->heads_line, GW_TYRE_HEADS[i]);
}

/* Every row is looked at, so that every fault is told. */
static void take_rows(const gw_reader *rd, const gw_columns *table, gw_tyre_rows *rows)
{
    for (int i = 0; i < table->n_rows; i++) {
        rows->row[i].line = table->line[i];
        for (int c = 0; c < GW_TYRE_COLUMNS; c++)
            (void)gw_columns_number(rd, table, i, c, RANGES[c], &rows->row[i].v[c]);
    }
    rows->n = table->n_rows;
}

bool gw_read_tyre_rows(const gw_reader *rd, gw_tyre_rows *rows)
{
    const int before = gw_faults_count(rd->faults);
    gw_columns table = { 0 };
    *rows = (gw_tyre_rows){ 0 };
    if (gw_columns_read(rd, rd->file, GW_TYRE_HEADS, GW_TYRE_COLUMNS, &table) != GW_OK) return false;
    check_heads(rd, &table);
    rows->row = calloc((size_t)table.n_rows + 1, sizeof *rows->row);
    if (!rows->row)
        rd->faults->out_of_memory = true;
    else if (gw_faults_count(rd->faults) == before)
        take_rows(rd, &table, rows);
    gw_columns_free(&table);
    if (rows->row && gw_faults_count(rd->faults) == before) return true;
    free(rows->row);
    *rows = (gw_tyre_rows){ 0 };
    return false;
}
