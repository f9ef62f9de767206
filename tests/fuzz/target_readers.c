/* SPDX-License-Identifier: MIT */
/* The readers on any bytes: sound or faulty, and never something between. */
#include "casefile/bench_file.h"
#include "casefile/columns.h"
#include "casefile/section.h"
#include "fuzz/target.h"
#include "giveway/casefile.h"
#include "giveway/readings.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Made once and kept; static, so that it does not count as a leak. */
static const gw_material_set *builtin(void)
{
    static gw_material_set set;
    static bool ready;
    gw_faults faults = { 0 };
    if (!ready && gw_materials_builtin(&set, &faults) != GW_OK) gw_fuzz_found("the built-in materials");
    ready = true;
    gw_faults_free(&faults);
    return &set;
}

static void check_lines(const gw_faults *faults)
{
    for (int i = 0; i < gw_faults_count(faults); i++) {
        const char *line = gw_faults_text(faults, i);
        if (!*line || strpbrk(line, "\r\n\t\033")) gw_fuzz_found("a fault that is not one clean line");
    }
}

static void check_indices(const gw_case *c)
{
    for (int k = 0; k < c->n_kits; k++)
        for (int a = 0; a < GW_AXLES; a++)
            for (int j = 0; c->has_corner[a] && j < c->corners[a].n_joints; j++)
                if (c->kits[k].fits[a][j] < 0 || c->kits[k].fits[a][j] >= c->n_bushes)
                    gw_fuzz_found("kit %d fits a bush that is not there", k);
}

void gw_fuzz_case(const uint8_t *data, size_t size)
{
    gw_faults faults = { 0 };
    gw_case c = { 0 };
    gw_status status = gw_case_read("case.json", (const char *)data, size, builtin(), &c, &faults);
    if ((status == GW_OK) != (gw_faults_count(&faults) == 0)) gw_fuzz_found("status %d, but faults", status);
    if (status == GW_OK) check_indices(&c);
    check_lines(&faults);
    gw_case_free(&c);
    gw_faults_free(&faults);
}

void gw_fuzz_material(const uint8_t *data, size_t size)
{
    gw_faults faults = { 0 };
    gw_material_set set = { 0 };
    gw_status status = gw_materials_add_text(&set, "m.json", (const char *)data, size, &faults);
    if ((status == GW_OK) != (gw_faults_count(&faults) == 0)) gw_fuzz_found("status %d, but faults", status);
    if ((status == GW_OK) != (set.n == 1)) gw_fuzz_found("status %d, but %d materials", status, set.n);
    check_lines(&faults);
    gw_materials_free(&set);
    gw_faults_free(&faults);
}

/* A table is read from a file beside the case, so the bytes go through one. */
static bool read_table(const char *path, gw_faults *faults)
{
    gw_arena arena = { 0 };
    gw_vehicle vehicle = { 0 };
    gw_reader rd = { "case.json", faults, &arena, false };
    cJSON *json = cJSON_CreateObject(), *tables = cJSON_AddObjectToObject(json, "tyre_table");
    cJSON_AddStringToObject(tables, "front", path);
    cJSON_AddStringToObject(tables, "rear", path);
    gw_node node = { .json = json };
    gw_read_tyre_tables(&rd, &node, &vehicle);
    bool both = vehicle.tyre[GW_FRONT] && vehicle.tyre[GW_REAR];
    cJSON_Delete(json);
    gw_arena_free(&arena);
    return both;
}

void gw_fuzz_tyre(const uint8_t *data, size_t size)
{
    gw_faults faults = { 0 };
    const char *path = gw_fuzz_write("csv", data, size);
    bool read = read_table(path, &faults);
    if (read != (gw_faults_count(&faults) == 0)) gw_fuzz_found("a table, but faults");
    check_lines(&faults);
    gw_faults_free(&faults);
}

/* Every cell is asked for, as text and as a number. */
static void read_cells(const gw_reader *rd, const gw_columns *table)
{
    const gw_range range = GW_FROM(-1e6, 1e6);
    for (int row = 0; row < table->n_rows; row++)
        for (int h = 0; h < table->n_heads; h++) {
            double x = 0.0;
            if (strlen(gw_columns_text(table, row, h)) > 0 && !gw_columns_has(table, h))
                gw_fuzz_found("a text under a head that is not there");
            if (gw_columns_number(rd, table, row, h, range, &x) && !(x >= -1e6 && x <= 1e6))
                gw_fuzz_found("a number out of range");
        }
}

void gw_fuzz_table(const uint8_t *data, size_t size)
{
    static const char *const HEADS[] = { "deflection_mm", "force_N", "how", "what" };
    gw_faults faults = { 0 };
    gw_columns table = { 0 };
    gw_reader rd = { "table.csv", &faults, NULL, false };
    gw_status status = gw_columns_read(&rd, gw_fuzz_write("csv", data, size), HEADS, 4, &table);
    if ((status == GW_OK) != (gw_faults_count(&faults) == 0)) gw_fuzz_found("status %d, but faults", status);
    if (status == GW_OK) read_cells(&rd, &table);
    check_lines(&faults);
    gw_columns_free(&table);
    gw_faults_free(&faults);
}

/* A law that was found rises, and every figure of it is one. */
static void check_press(const gw_press *p)
{
    for (int i = 1; i < p->n; i++)
        if (!(p->x[i] > p->x[i - 1] && p->f[i] > p->f[i - 1])) gw_fuzz_found("a curve that does not rise");
    if (!(p->rate_zero > 0.0) || !isfinite(p->rate_zero) || !isfinite(p->nonlinearity))
        gw_fuzz_found("a curve without a rate");
}

void gw_fuzz_bench(const uint8_t *data, size_t size)
{
    gw_faults faults = { 0 };
    gw_bench_file file = { 0 };
    gw_reader rd = { "press.csv", &faults, NULL, false };
    gw_status status = gw_bench_file_read(&rd, gw_fuzz_write("csv", data, size), &file);
    if ((status == GW_OK) != (gw_faults_count(&faults) == 0)) gw_fuzz_found("status %d, but faults", status);
    if (status == GW_OK) gw_bench_file_doubts(&rd, &file);
    if (status == GW_OK && file.kind != GW_BENCH_DYNAMIC) check_press(&file.press);
    if (status == GW_OK && file.kind == GW_BENCH_DYNAMIC && !(file.rig.law.rate > 0.0))
        gw_fuzz_found("a test rig without a rate");
    check_lines(&faults);
    gw_bench_file_free(&file);
    gw_faults_free(&faults);
}

/* What was read lies inside the case, and every figure of it is one. */
static void check_readings(const gw_readings *readings, const gw_case *c)
{
    int n = 0;
    for (int i = 0; i < readings->n; i++) {
        const gw_reading *r = &readings->reading[i];
        n += r->n_values;
        if (!c->has_corner[r->axle] || r->kit < 0 || r->kit >= c->n_kits)
            gw_fuzz_found("a reading of nothing");
        for (int v = 0; v < r->n_values; v++)
            if (!(r->value[v].sigma > 0.0) || !isfinite(r->value[v].reading) ||
                r->value[v].state >= r->n_states)
                gw_fuzz_found("a value that is none");
    }
    if (n != readings->n_values || n == 0) gw_fuzz_found("%d values for %d", n, readings->n_values);
}

void gw_fuzz_readings(const uint8_t *data, size_t size)
{
    static gw_case c;
    static gw_kit kit[2] = { { .name = "rubber" }, { .name = "poly" } };
    gw_faults faults = { 0 };
    gw_readings readings = { 0 };
    c = (gw_case){ .path = "car.json", .kits = kit, .n_kits = 2, .has_corner = { true, true } };
    gw_status status = gw_readings_read("ramp", (const char *)data, size, &c, &readings, &faults);
    if ((status == GW_OK) != (gw_faults_count(&faults) == 0)) gw_fuzz_found("status %d, but faults", status);
    if (status == GW_OK) check_readings(&readings, &c);
    check_lines(&faults);
    gw_readings_free(&readings);
    gw_faults_free(&faults);
}
