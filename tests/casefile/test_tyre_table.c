/* SPDX-License-Identifier: MIT */
/* Tyre tables beside a case: what is read, and every fault with file, line and column. */
#include "support/case_sample.h"
#include "support/check.h"

#include "casefile/document.h"
#include "giveway/units.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static char folder[256];

static int make_folder(void **unused)
{
    (void)unused;
    const char *root = getenv("TMPDIR");
    snprintf(folder, sizeof folder, "%s/giveway-tyre-XXXXXX", root ? root : "/tmp");
    return mkdtemp(folder) ? 0 : -1;
}

static void path_of(const char *name, char path[320])
{
    snprintf(path, 320, "%s/%s", folder, name);
}

static int remove_folder(void **unused)
{
    (void)unused;
    char path[320];
    path_of("tyre.csv", path);
    remove(path);
    return rmdir(folder);
}

static void write_table(const char *text)
{
    char path[320];
    path_of("tyre.csv", path);
    FILE *file = fopen(path, "wb");
    if (!file) {
        fail_msg("cannot write %s", path);
        return;
    }
    fputs(text, file);
    fclose(file);
}

/* 5 slip angles, 4 loads, 2 cambers of an invented law. */
static double law(double slip, double load, double camber)
{
    return 0.31 * load * slip - 0.016 * load * camber;
}

enum { TABLE_BYTES = 4096 };

static void good_table(char text[TABLE_BYTES])
{
    static const double SLIP[] = { 6, 0, 1.5, 3, -1.5 }, LOAD[] = { 2000, 1000, 7000, 4500 },
                        CAMBER[] = { -3, 2 };
    size_t n =
        (size_t)snprintf(text, TABLE_BYTES, "# invented\r\nslip_deg, load_N,camber_deg,lateral_N\r\n\n");
    for (int c = 0; c < 2; c++)
        for (int s = 0; s < 5; s++)
            for (int l = 0; l < 4; l++)
                n += (size_t)snprintf(text + n, TABLE_BYTES - n, "%g,%g, %g ,%.3f\r\n", SLIP[s], LOAD[l],
                                      CAMBER[c], law(SLIP[s], LOAD[l], CAMBER[c]));
}

static gw_status read_with(const char *key, gw_case *out, gw_faults *faults)
{
    char path[320], with[400];
    gw_material_set materials = { 0 };
    path_of("case.json", path);
    snprintf(with, sizeof with, "\"pneumatic_trail_mm\": 28, %s", key);
    char *text = sample_change(SAMPLE_FULL, "\"pneumatic_trail_mm\": 28", with);
    assert_int_equal(gw_materials_builtin(&materials, faults), GW_OK);
    gw_status status = gw_case_read(path, text, strlen(text), &materials, out, faults);
    gw_materials_free(&materials);
    free(text);
    return status;
}

#define BOTH "\"tyre_table\": { \"front\": \"tyre.csv\", \"rear\": \"tyre.csv\" }"

/* What good_table holds, as it was read: in SI, along rising slip, load and lean. */
static void check_good(const gw_tyre_table *t)
{
    assert_true(t->n_slip == 5 && t->n_load == 4 && t->n_lean == 2);
    check_rel(t->slip[0], -1.5 * GW_DEG, 1e-15, "least slip");
    check_rel(t->slip[4], 6 * GW_DEG, 1e-15, "greatest slip");
    check_abs(t->load[3], 7000, 0, "greatest load");
    check_rel(t->lean[0], -2 * GW_DEG, 1e-15, "lean is minus camber");
    check_rel(t->lean[1], 3 * GW_DEG, 1e-15, "so that it rises");
    for (int k = 0; k < 2; k++)
        for (int j = 0; j < 4; j++)
            for (int i = 0; i < 5; i++)
                check_abs(t->force[(k * 4 + j) * 5 + i],
                          law(t->slip[i] / GW_DEG, t->load[j], -t->lean[k] / GW_DEG), 6e-4, "force");
}

static void read_good(const char *text)
{
    gw_case c;
    gw_faults faults = { 0 };
    write_table(text);
    if (read_with(BOTH, &c, &faults) != GW_OK) fail_msg("%s", gw_faults_text(&faults, 0));
    check_good(c.vehicle.tyre[GW_FRONT]);
    gw_case_free(&c);
    gw_faults_free(&faults);
}

static void table_in_any_order_becomes_a_grid_in_si_units(void **unused)
{
    (void)unused;
    char text[TABLE_BYTES];
    good_table(text);
    read_good(text);
}

/* With a byte-order mark, semicolons and a decimal comma, as spreadsheets of half of Europe write it. */
static void table_as_a_spreadsheet_writes_it_passes(void **unused)
{
    (void)unused;
    char text[TABLE_BYTES], other[TABLE_BYTES + 4] = "\xEF\xBB\xBF";
    good_table(text);
    char *to = other + 3;
    for (const char *p = text; *p; p++) *to++ = *p == ',' ? ';' : *p == '.' ? ',' : *p;
    *to = '\0';
    read_good(other);
}

/* Reads the table with `from` in it changed to `to`; the one fault must hold `want` after the file's name. */
static void expect_fault(const char *from, const char *to, const char *want)
{
    char text[TABLE_BYTES];
    gw_case c;
    gw_faults faults = { 0 };
    good_table(text);
    char *bad = sample_change(text, from, to);
    write_table(bad);
    assert_int_equal(
        read_with("\"tyre_table\": { \"front\": \"tyre.csv\", \"rear\": \"tyre.csv\" }", &c, &faults),
        GW_E_SCHEMA);
    assert_int_equal(gw_faults_count(&faults), 1); /* told once, though the file serves both axles */
    check_contains(gw_faults_text(&faults, 0), "tyre.csv: ");
    check_contains(gw_faults_text(&faults, 0), want);
    gw_faults_free(&faults);
    free(bad);
}

static void every_fault_names_line_and_column(void **unused)
{
    (void)unused;
    expect_fault("slip_deg, load_N", "slip, load_N",
                 "line 2: no head slip_deg: expected slip_deg, load_N, camber_deg and lateral_N");
    expect_fault("6,2000, -3 ,3816.000", "6,2000, -3 ,3816.000x",
                 "line 4, lateral_N: expected a number at least -1e+06 and at most 1e+06, found "
                 "\"3816.000x\"");
    expect_fault("6,2000, -3 ,3816.000", "6,0, -3 ,3816.000", "line 4, load_N: expected a number above 0");
    expect_fault("6,2000, -3 ,3816.000", "6,2000, ,3816.000", "line 4, camber_deg: expected a number");
    expect_fault("6,2000, -3 ,3816.000", "0x6,2000, -3 ,3816.000", "line 4, slip_deg: expected a number");
    expect_fault("6,2000, -3 ,3816.000", "nan,2000, -3 ,3816.000", "line 4, slip_deg: expected a number");
    expect_fault("6,2000, -3 ,3816.000", "6,2000, -3", "line 4, lateral_N: expected a number");
    expect_fault("6,2000, -3 ,3816.000", "6,2000, -3 ,3816.000,1", "line 4: 5 fields under 4 heads");
    expect_fault("6,2000, -3 ,3816.000\r\n", "",
                 "no row for slip_deg 6, load_N 2000, camber_deg -3: the table must hold every combination");
    expect_fault("6,2000, -3 ,3816.000", "6,2000, -3 ,3816.000\n6,2000,-3,1",
                 "line 5: the same slip, load and camber as line 4");
}

static void expect_text_fault(const char *text, const char *want)
{
    gw_case c;
    gw_faults faults = { 0 };
    write_table(text);
    assert_int_equal(read_with(BOTH, &c, &faults), GW_E_SCHEMA);
    check_contains(gw_faults_text(&faults, 0), want);
    gw_faults_free(&faults);
}

static void tables_that_are_too_small_or_empty_are_refused(void **unused)
{
    (void)unused;
    expect_text_fault("", "empty: expected one line of heads (of slip_deg");
    expect_text_fault("# nothing\n\n", "empty: expected one line of heads (of slip_deg");
    expect_text_fault("slip_deg,load_N,camber_deg,lateral_N\n1,1000,0,1\n",
                      "column 1 (slip_deg): expected at least 4 different values, found 1");
    expect_text_fault(
        "slip_deg,load_N,camber_deg,lateral_N\n1,1000,0,1\n2,1000,0,1\n3,1000,0,1\n4,1000,0,1\n",
        "column 2 (load_N): expected at least 4 different values, found 1");
    expect_text_fault("slip_deg,load_N,camber_deg,lateral_N\n1,1,0,1\n2,2,0,1\n3,3,0,1\n4,4,0,1\n",
                      "expected to begin at 0 or below");
}

static void file_that_is_not_there_and_key_that_is_missing_are_told(void **unused)
{
    (void)unused;
    gw_case c;
    gw_faults faults = { 0 };
    assert_int_equal(read_with("\"tyre_table\": { \"front\": \"no.csv\" }", &c, &faults), GW_E_SCHEMA);
    check_contains(gw_faults_text(&faults, 0), "no.csv: cannot be read");
    check_contains(gw_faults_text(&faults, 1), "vehicle.tyre_table.rear: this key is missing");
    gw_faults_free(&faults);
}

static void keys_of_handling_have_defaults_and_ranges(void **unused)
{
    (void)unused;
    gw_case c;
    gw_faults faults = { 0 };
    assert_int_equal(read_with("\"yaw_inertia_kgm2\": 2385", &c, &faults), GW_OK);
    check_rel(c.vehicle.speed, 100 / 3.6, 1e-14, "100 km/h");
    check_abs(c.vehicle.brake_imbalance, 0.1, 0, "10 %");
    check_abs(c.vehicle.yaw_inertia, 2385, 0, "as given");
    gw_case_free(&c);
    assert_int_equal(
        read_with("\"speed_km_h\": 5, \"brake_imbalance\": 2, \"yaw_inertia_kgm2\": 0", &c, &faults),
        GW_E_SCHEMA);
    assert_int_equal(gw_faults_count(&faults), 3);
    check_contains(gw_faults_text(&faults, 0), "vehicle.yaw_inertia_kgm2");
    gw_faults_free(&faults);
}

/* The example that is shipped. */
static void shipped_example_is_a_sound_table(void **unused)
{
    (void)unused;
    gw_case c;
    gw_faults faults = { 0 };
    char key[600], here[400];
    if (!getcwd(here, sizeof here)) fail_msg("no working directory");
    snprintf(key, sizeof key,
             "\"tyre_table\": { \"front\": \"%.120s/cases/road-tyre.csv\", \"rear\": \"tyre.csv\" }", here);
    char text[TABLE_BYTES];
    good_table(text);
    write_table(text);
    if (read_with(key, &c, &faults) != GW_OK) fail_msg("%s", gw_faults_text(&faults, 0));
    const gw_tyre_table *t = c.vehicle.tyre[GW_FRONT];
    assert_true(t->n_slip == 12 && t->n_load == 7 && t->n_lean == 3);
    gw_tyre *tyre = NULL;
    gw_tyre_force f;
    const gw_tyre_data data = { .table = t };
    assert_int_equal(gw_tyre_open(&data, &tyre, NULL), GW_OK);
    assert_int_equal(gw_tyre_lateral(tyre, 0.0, 4386, 0.0, &f, NULL), GW_OK);
    assert_true(f.cornering > 1000 * GW_N_PER_DEG && f.cornering < 2500 * GW_N_PER_DEG && f.camber > 0);
    gw_tyre_close(tyre);
    gw_case_free(&c);
    gw_faults_free(&faults);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(table_in_any_order_becomes_a_grid_in_si_units),
        cmocka_unit_test(table_as_a_spreadsheet_writes_it_passes),
        cmocka_unit_test(every_fault_names_line_and_column),
        cmocka_unit_test(tables_that_are_too_small_or_empty_are_refused),
        cmocka_unit_test(file_that_is_not_there_and_key_that_is_missing_are_told),
        cmocka_unit_test(keys_of_handling_have_defaults_and_ranges),
        cmocka_unit_test(shipped_example_is_a_sound_table),
    };
    return cmocka_run_group_tests(tests, make_folder, remove_folder);
}
