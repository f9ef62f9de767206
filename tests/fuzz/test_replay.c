/* SPDX-License-Identifier: MIT */
/*
 * The corpus that fuzzing left, through the same targets: every file of tests/fuzz/corpus/TARGET. The ones
 * whose names begin with "found-" broke the program once. A finding ends the process, which fails the test.
 */
#include "fuzz/target.h"
#include "support/check.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MOST_BYTES = 1 << 20 };

static const char *corpus(void)
{
    const char *source = getenv("SOURCE");
    static char path[512];
    snprintf(path, sizeof path, "%s/tests/fuzz/corpus", source ? source : ".");
    return path;
}

static void replay_file(const char *path, void (*target)(const uint8_t *, size_t))
{
    static uint8_t data[MOST_BYTES];
    FILE *f = fopen(path, "rb");
    assert_non_null(f);
    size_t n = fread(data, 1, sizeof data, f);
    fclose(f);
    print_message("# %s\n", path);
    fflush(stdout);
    target(data, n);
}

static void replay(const char *name, void (*target)(const uint8_t *, size_t))
{
    char path[1024];
    int n = 0;
    snprintf(path, sizeof path, "%s/%s", corpus(), name);
    DIR *dir = opendir(path);
    if (!dir) {
        fail_msg("no corpus in %s", path);
        return;
    }
    for (struct dirent *e; (e = readdir(dir));) {
        if (e->d_name[0] == '.') continue;
        snprintf(path, sizeof path, "%s/%s/%s", corpus(), name, e->d_name);
        replay_file(path, target);
        n++;
    }
    closedir(dir);
    assert_true(n > 0);
}

static void no_case_breaks_the_reader(void **state)
{
    (void)state;
    replay("case", gw_fuzz_case);
}

static void no_material_breaks_the_reader(void **state)
{
    (void)state;
    replay("material", gw_fuzz_material);
}

static void no_tyre_table_breaks_the_reader(void **state)
{
    (void)state;
    replay("tyre", gw_fuzz_tyre);
}

static void no_table_breaks_the_reader(void **state)
{
    (void)state;
    replay("table", gw_fuzz_table);
}

static void no_test_of_a_bush_breaks_its_law(void **state)
{
    (void)state;
    replay("bench", gw_fuzz_bench);
}

static void no_readings_break_their_readers(void **state)
{
    (void)state;
    replay("readings", gw_fuzz_readings);
}

static void no_sheet_breaks_a_first_case(void **state)
{
    (void)state;
    replay("sheet", gw_fuzz_sheet);
}

static void no_case_breaks_a_run(void **state)
{
    (void)state;
    replay("run", gw_fuzz_run);
}

/* The mutator is what fuzzing stands on: what it makes must be JSON, and the same for the same seed. */
static void changes_keep_a_case_json(void **state)
{
    (void)state;
    static const char TEXT[] = "{\"a_N_per_mm\": 3, \"at\": [1, 2, 3], \"to\": [4, 5, 6], \"name\": \"x\"}";
    int different = 0;
    for (unsigned seed = 0; seed < 500; seed++) {
        uint8_t one[512], two[512];
        memcpy(one, TEXT, sizeof TEXT);
        memcpy(two, TEXT, sizeof TEXT);
        size_t n = gw_fuzz_mutate(one, sizeof TEXT - 1, sizeof one, seed);
        assert_true(n >= 2 && one[0] == '{' && one[n - 1] == '}');
        assert_int_equal(gw_fuzz_mutate(two, sizeof TEXT - 1, sizeof two, seed), n);
        assert_memory_equal(one, two, n);
        different += n != sizeof TEXT - 1 || memcmp(one, TEXT, n) != 0;
    }
    assert_true(different > 400);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(changes_keep_a_case_json),        cmocka_unit_test(no_case_breaks_the_reader),
        cmocka_unit_test(no_material_breaks_the_reader),   cmocka_unit_test(no_tyre_table_breaks_the_reader),
        cmocka_unit_test(no_table_breaks_the_reader),      cmocka_unit_test(no_case_breaks_a_run),
        cmocka_unit_test(no_sheet_breaks_a_first_case),    cmocka_unit_test(no_test_of_a_bush_breaks_its_law),
        cmocka_unit_test(no_readings_break_their_readers),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
