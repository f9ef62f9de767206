/* SPDX-License-Identifier: MIT */
/* vehicle.tyre_table: from the rows of a file, in any order, to a full grid in SI units. */
#include "casefile/document.h"
#include "casefile/section.h"
#include "casefile/tyre_rows.h"
#include "giveway/units.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { GRID_MOST = 1 << 20, GRID_LEAST = 4 };

/* One axis of the grid: its values in rising order, in the units of the file. */
typedef struct gw_tyre_axis {
    double *v;
    int n;
} gw_tyre_axis;

static int by_value(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

static bool find_axis(const gw_reader *rd, const gw_tyre_rows *rows, int column, gw_tyre_axis *axis)
{
    axis->v = gw_reader_make(rd, rows->n, sizeof *axis->v);
    if (!axis->v) return false;
    for (int i = 0; i < rows->n; i++) axis->v[i] = rows->row[i].v[column];
    qsort(axis->v, (size_t)rows->n, sizeof *axis->v, by_value);
    for (int i = 0; i < rows->n; i++)
        if (axis->n == 0 || axis->v[i] != axis->v[axis->n - 1]) axis->v[axis->n++] = axis->v[i];
    return true;
}

static int place(const gw_tyre_axis *axis, double x)
{
    const double *at = bsearch(&x, axis->v, (size_t)axis->n, sizeof x, by_value);
    return (int)(at - axis->v);
}

static bool check_axes(const gw_reader *rd, const gw_tyre_axis axis[3])
{
    const int before = gw_faults_count(rd->faults);
    for (int c = GW_TYRE_SLIP; c <= GW_TYRE_LOAD; c++)
        if (axis[c].n < GRID_LEAST)
            gw_fault(rd, NULL, "column %d (%s): expected at least %d different values, found %d", c + 1,
                     GW_TYRE_HEADS[c], GRID_LEAST, axis[c].n);
    const gw_tyre_axis *slip = &axis[GW_TYRE_SLIP];
    if (slip->n && !(slip->v[0] <= 0.0 && slip->v[slip->n - 1] > 0.0))
        gw_fault(rd, NULL,
                 "column 1 (slip_deg): expected to begin at 0 or below and to go above it, found "
                 "%g to %g",
                 slip->v[0], slip->v[slip->n - 1]);
    if ((double)axis[0].n * axis[1].n * axis[2].n > GRID_MOST)
        gw_fault(rd, NULL,
                 "%d slip angles, %d loads and %d cambers make no grid: give a row for each combination",
                 axis[0].n, axis[1].n, axis[2].n);
    return gw_faults_count(rd->faults) == before;
}

/* Camber stands in the file with its sign on the outer wheel; lean into the turn is its opposite. */
static size_t cell(const gw_tyre_axis axis[3], const double v[3])
{
    int slip = place(&axis[0], v[0]), load = place(&axis[1], v[1]);
    int lean = axis[2].n - 1 - place(&axis[2], v[2]);
    return ((size_t)lean * (size_t)axis[1].n + (size_t)load) * (size_t)axis[0].n + (size_t)slip;
}

static void missing_row(const gw_reader *rd, const gw_tyre_axis axis[3], int at)
{
    int slip = at % axis[0].n, load = at / axis[0].n % axis[1].n, lean = at / axis[0].n / axis[1].n;
    gw_fault(rd, NULL,
             "no row for slip_deg %g, load_N %g, camber_deg %g: the table must hold every combination",
             axis[0].v[slip], axis[1].v[load], axis[2].v[axis[2].n - 1 - lean]);
}

static bool fill(const gw_reader *rd, const gw_tyre_rows *rows, const gw_tyre_axis axis[3], double *force)
{
    const int before = gw_faults_count(rd->faults), n = axis[0].n * axis[1].n * axis[2].n;
    int *line = calloc((size_t)n + 1, sizeof *line), first = -1;
    if (!line) {
        rd->faults->out_of_memory = true;
        return false;
    }
    for (int i = 0; i < rows->n; i++) {
        const gw_tyre_row *row = &rows->row[i];
        size_t at = cell(axis, row->v);
        if (line[at])
            gw_fault(rd, NULL, "line %d: the same slip, load and camber as line %d; keep one", row->line,
                     line[at]);
        line[at] = row->line;
        force[at] = row->v[GW_TYRE_FORCE];
    }
    for (int i = 0; i < n && first < 0; i++)
        if (!line[i]) first = i;
    if (first >= 0) missing_row(rd, axis, first);
    free(line);
    return gw_faults_count(rd->faults) == before;
}

static void to_si(const gw_tyre_axis axis[3], double *lean)
{
    for (int i = 0; i < axis[0].n; i++) axis[0].v[i] *= GW_DEG;
    for (int i = 0; i < axis[2].n; i++) lean[i] = -axis[2].v[axis[2].n - 1 - i] * GW_DEG;
}

static const gw_tyre_table *make_table(const gw_reader *rd, const gw_tyre_rows *rows)
{
    gw_tyre_axis axis[3] = { { 0 } };
    for (int c = 0; c < 3; c++)
        if (!find_axis(rd, rows, c, &axis[c])) return NULL;
    if (!check_axes(rd, axis)) return NULL;
    gw_tyre_table *t = gw_reader_make(rd, 1, sizeof *t);
    double *force = gw_reader_make(rd, axis[0].n * axis[1].n * axis[2].n, sizeof *force);
    double *lean = gw_reader_make(rd, axis[2].n, sizeof *lean);
    if (!t || !force || !lean || !fill(rd, rows, axis, force)) return NULL;
    to_si(axis, lean);
    *t = (gw_tyre_table){ axis[0].n, axis[1].n, axis[2].n, axis[0].v, axis[1].v, lean, force };
    return t;
}

static const gw_tyre_table *read_table(const gw_reader *rd, const char *name)
{
    gw_tyre_rows rows;
    gw_reader at = { gw_beside(rd, name), rd->faults, rd->arena, rd->again };
    if (!at.file || !gw_read_tyre_rows(&at, &rows)) return NULL;
    const gw_tyre_table *table = make_table(&at, &rows);
    free(rows.row);
    return table;
}

void gw_read_tyre_tables(const gw_reader *rd, const gw_node *vehicle, gw_vehicle *v)
{
    gw_node node;
    if (!gw_get_object(rd, vehicle, "tyre_table", GW_OPTIONAL, &node)) return;
    gw_check_keys(rd, &node, NULL, 0, GW_AXLE_NAMES);
    const char *name[GW_AXLES] = { NULL };
    for (int a = 0; a < GW_AXLES; a++) {
        if (!gw_get_text(rd, &node, GW_AXLE_NAMES[a], GW_REQUIRED, GW_MAX_TEXT_BYTES, &name[a])) continue;
        bool again = a > GW_FRONT && name[GW_FRONT] && strcmp(name[a], name[GW_FRONT]) == 0;
        v->tyre[a] = again ? v->tyre[GW_FRONT] : read_table(rd, name[a]); /* so its faults are told once */
    }
}
