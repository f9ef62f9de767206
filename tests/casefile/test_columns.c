/* SPDX-License-Identifier: MIT */
/* Tables of readings as spreadsheet programs and loggers write them, and what is wrong with others. */
#include "casefile/columns.h"
#include "support/check.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static const char *const HEADS[] = { "deflection_mm", "force_N", "how" };
enum { MM, N, HOW };
static const gw_range ANY = GW_FROM(-1e6, 1e6);

typedef struct bench {
    gw_faults faults;
    gw_columns table;
    char *text;
    gw_status status;
} bench;

static bench parse(const char *text)
{
    bench b = { .text = strdup(text) };
    gw_reader rd = { "press.csv", &b.faults, NULL, false };
    assert_non_null(b.text);
    b.status = gw_columns_parse(&rd, b.text, strlen(text), HEADS, 3, &b.table);
    return b;
}

static void done(bench *b)
{
    gw_columns_free(&b->table);
    gw_faults_free(&b->faults);
    free(b->text);
}

static double number(bench *b, int row, int head)
{
    gw_reader rd = { "press.csv", &b->faults, NULL, false };
    double x = -99;
    assert_true(gw_columns_number(&rd, &b->table, row, head, ANY, &x));
    return x;
}

static void heads_may_stand_in_any_order_among_others(void **state)
{
    (void)state;
    bench b = parse("# a press\n\nforce_N,time_s,deflection_mm\n100,0.0,0.5\n# more\n-250.5,0.1,-1.25\n");
    assert_int_equal(b.status, GW_OK);
    assert_int_equal(b.table.n_rows, 2);
    assert_true(gw_columns_has(&b.table, MM));
    assert_false(gw_columns_has(&b.table, HOW));
    check_abs(number(&b, 0, MM), 0.5, 0, "mm");
    check_abs(number(&b, 0, N), 100, 0, "N");
    check_abs(number(&b, 1, MM), -1.25, 0, "mm");
    check_abs(number(&b, 1, N), -250.5, 0, "N");
    assert_int_equal(b.table.line[1], 6);
    assert_string_equal(gw_columns_text(&b.table, 1, HOW), "");
    done(&b);
}

static void semicolons_tabs_and_decimal_commas_pass(void **state)
{
    static const char *const TEXTS[] = {
        "deflection_mm;force_N\n0,5;-1,25e3\n",
        "deflection_mm\tforce_N\r\n0,5\t-1250\r\n",
        "\357\273\277deflection_mm;force_N\r\n \"0,5\" ; -1250 ;;\r\n;;\r\n", /* a byte order mark first */
        "deflection_mm , force_N\n 0.5 ,\t\"-1250\" \n,\n",
        "deflection_mm;force_N,how\n0.5;1\n", /* a semicolon parts: the other head is passed over */
    };
    (void)state;
    for (int i = 0; i < 4; i++) {
        bench b = parse(TEXTS[i]);
        if (b.status != GW_OK) fail_msg("%d: %s", i, gw_faults_text(&b.faults, 0));
        assert_int_equal(b.table.n_rows, 1);
        check_abs(number(&b, 0, MM), 0.5, 0, "mm");
        check_abs(number(&b, 0, N), -1250, 0, "N");
        done(&b);
    }
    bench b = parse(TEXTS[4]);
    assert_false(gw_columns_has(&b.table, N));
    done(&b);
}

static void fields_in_quotes_hold_what_would_part_them(void **state)
{
    (void)state;
    bench b = parse("how,force_N\n\"hub, inner \"\"face\"\"\",7\n\"# remark, too\",,\n");
    assert_int_equal(b.status, GW_OK);
    assert_int_equal(b.table.n_rows, 1);
    assert_string_equal(gw_columns_text(&b.table, 0, HOW), "hub, inner \"face\"");
    check_abs(number(&b, 0, N), 7, 0, "N");
    done(&b);
}

static void expect_fault(const char *text, const char *part)
{
    bench b = parse(text);
    gw_reader rd = { "press.csv", &b.faults, NULL, false };
    double x;
    for (int row = 0; b.status == GW_OK && row < b.table.n_rows; row++)
        for (int h = MM; h <= N; h++) gw_columns_number(&rd, &b.table, row, h, ANY, &x);
    assert_true(gw_faults_count(&b.faults) > 0);
    check_contains(gw_faults_text(&b.faults, 0), part);
    done(&b);
}

static void faults_name_line_and_head(void **state)
{
    (void)state;
    expect_fault("", "press.csv: empty: expected one line of heads (of deflection_mm, force_N, how)");
    expect_fault("# only remarks\n", "empty: expected one line of heads");
    expect_fault("1,2\n3,4\n", "line 1: none of its heads is known: expected some of deflection_mm");
    expect_fault("force_N,force_N\n1,2\n", "line 1: the head force_N stands there twice");
    expect_fault("deflection_mm,force_N\n1,2\n1,abc\n",
                 "line 3, force_N: expected a number at least -1e+06 and at most 1e+06, found \"abc\"");
    expect_fault("deflection_mm,force_N\n1\n", "line 2, force_N: expected a number");
    expect_fault("deflection_mm,force_N\n1\n", "found nothing");
    expect_fault("deflection_mm,force_N\n0x10,2\n", "line 2, deflection_mm");
    expect_fault("deflection_mm,force_N\ninf,2\n", "line 2, deflection_mm");
    expect_fault("deflection_mm;force_N\n1.000,5;2\n", "line 2, deflection_mm");
    expect_fault("deflection_mm,force_N\n2,1e7\n", "line 2, force_N");
    expect_fault(
        "deflection_mm,force_N\n0,5,100\n",
        "line 2: 3 fields under 2 heads (a decimal comma? write 0.5, or part the fields with semicolons)");
    expect_fault("deflection_mm,force_N\n0,5,1\n1,1\n0,5,1\n0,5,1\n0,5,1\n0,5,1\n0,5,1\n",
                 "line 2: 3 fields under 2 heads, too many in 6 of 7 lines (a decimal comma?");
    expect_fault(
        "deflection_mm,force_N\n\"0,5\",100\n",
        "found \"0,5\", which has a decimal comma: write a point, or part the fields with semicolons");
    expect_fault("deflection_mm,force_N\n\"0.5,100\n", "line 2: quotes that do not hold a whole field");
    expect_fault("deflection_mm,force_N\n\"0.5\"7,100\n", "line 2: quotes that do not hold a whole field");
}

static void bytes_that_are_no_text_are_told(void **state)
{
    (void)state;
    char text[] = "d\0e\0f\0";
    gw_faults faults = { 0 };
    gw_columns table = { 0 };
    gw_reader rd = { "press.csv", &faults, NULL, false };
    assert_int_equal(gw_columns_parse(&rd, text, sizeof text - 1, HEADS, 3, &table), GW_E_PARSE);
    check_contains(gw_faults_text(&faults, 0), "this is no plain text: save the table as CSV, UTF-8");
    gw_faults_free(&faults);
}

static void a_million_lines_are_read_from_a_file(void **state)
{
    char path[] = "/tmp/table-XXXXXX";
    gw_faults faults = { 0 };
    gw_columns table = { 0 };
    gw_reader rd = { path, &faults, NULL, false };
    double sum = 0, x;
    (void)state;
    int fd = mkstemp(path);
    assert_true(fd >= 0);
    FILE *file = fdopen(fd, "w");
    fputs("deflection_mm,force_N\n", file);
    for (int i = 0; i < 1000000; i++) fprintf(file, "%d.5,%d\n", i % 10, i);
    assert_int_equal(fclose(file), 0);
    assert_int_equal(gw_columns_read(&rd, path, HEADS, 3, &table), GW_OK);
    assert_int_equal(table.n_rows, 1000000);
    for (int row = 0; row < table.n_rows; row++) {
        assert_true(gw_columns_number(&rd, &table, row, N, ANY, &x));
        sum += x;
    }
    check_rel(sum, 499999500000.0, 0, "sum of forces");
    assert_int_equal(table.line[999999], 1000001);
    gw_columns_free(&table);
    unlink(path);
    assert_int_equal(gw_columns_read(&rd, path, HEADS, 3, &table), GW_E_IO);
    check_contains(gw_faults_text(&faults, 0), "cannot be read");
    gw_faults_free(&faults);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(heads_may_stand_in_any_order_among_others),
        cmocka_unit_test(semicolons_tabs_and_decimal_commas_pass),
        cmocka_unit_test(fields_in_quotes_hold_what_would_part_them),
        cmocka_unit_test(faults_name_line_and_head),
        cmocka_unit_test(bytes_that_are_no_text_are_told),
        cmocka_unit_test(a_million_lines_are_read_from_a_file),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
