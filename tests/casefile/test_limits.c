/* SPDX-License-Identifier: MIT */
/* Stated limits, files that cannot be read, and memory that runs out. */
#include "base/buf.h"
#include "casefile/nearest.h"
#include "support/case_sample.h"
#include "support/check.h"

#include <cjson/cJSON.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* `head`, then `item` n times with its number in it and commas between, then `tail`. */
static char *repeat(const char *head, const char *item, int n, const char *tail)
{
    gw_buf text = { 0 };
    gw_buf_add(&text, head);
    for (int i = 0; i < n; i++) {
        const char *mark = strchr(item, '#');
        if (i) gw_buf_add(&text, ",");
        gw_buf_bytes(&text, item, (size_t)(mark - item));
        gw_buf_fmt(&text, "%d", i);
        gw_buf_add(&text, mark + 1);
    }
    gw_buf_add(&text, tail);
    assert_false(text.failed);
    return text.s;
}

#define TOP "{\"format\":\"giveway-case-1\",\"title\":\"t\","

static void expect_first(const char *text, const char *part)
{
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    assert_int_equal(sample_read(text, &c, &faults), GW_E_SCHEMA);
    check_contains(gw_faults_text(&faults, 0), part);
    gw_faults_free(&faults);
}

static void expect_limit(const char *from, const char *head, const char *item, int n, const char *tail,
                         const char *part)
{
    char *list = repeat(head, item, n, tail);
    char *text = sample_change(SAMPLE_MINIMAL, from, list);
    expect_first(text, part);
    free(text);
    free(list);
}

static void what_is_too_many_is_said(void **state)
{
    (void)state;
    expect_limit("\"joints\": [", "\"joints\": [", "{\"name\": \"j#\"}", 95, ", ",
                 "joints: 97 joints are more than the 96");
    expect_limit("\"joints\": [", "\"members\": {", "\"m#\": {}", 31, "}, \"joints\": [",
                 "members: 31 members are more than the 30");
    expect_limit("\"joints\": [", "\"points_mm\": {", "\"p#\": [0,0,0]", 1001, "}, \"joints\": [",
                 "points_mm: 1001 points are more than the 1000");
    expect_limit("\"bushes\": {", "\"bushes\": {", "\"b#\": {\"type\":\"ball_joint\"}", 1000, ", ",
                 "bushes: 1001 bushes, with those written in place, are more than the 1000");
    expect_limit("\"bushes\": {", "\"kits\": [", "{\"name\": \"k#\"}", 65, "], \"bushes\": {",
                 "kits: 65 kits are more than the 64");
    expect_limit("\"bushes\": {", "\"loads\": [", "{\"name\": \"l#\", \"corner\": \"rear\"}", 1001,
                 "], \"bushes\": {", "loads: 1001 loads are more than the 1000");
    expect_limit("\"bushes\": {", "\"align\": {\"rear\": {\"target\": {\"toe_deg\": 0}, \"adjusters\": [",
                 "{\"kind\": \"#\"}", 65, "]}}, \"bushes\": {",
                 "adjusters: 65 adjusters are more than the 64");
}

static void what_is_just_allowed_is_read(void **state)
{
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    (void)state;
    char *kits = repeat("\"kits\": [{\"name\": \"base\"},", "{\"name\": \"k#\", \"based_on\": \"base\"}", 63,
                        "], \"bushes\": {");
    char *text = sample_change(SAMPLE_MINIMAL, "\"bushes\": {", kits);
    assert_int_equal(sample_read(text, &c, &faults), GW_OK);
    assert_int_equal(c.n_kits, GW_MAX_KITS);
    gw_case_free(&c);
    gw_faults_free(&faults);
    free(text);
    free(kits);
}

static void names_and_texts_have_a_length(void **state)
{
    char name[GW_MAX_NAME_BYTES + 2], text[GW_MAX_TEXT_BYTES + 2], json[2000];
    (void)state;
    memset(name, 'n', sizeof name);
    name[sizeof name - 1] = '\0';
    memset(text, 't', sizeof text);
    text[sizeof text - 1] = '\0';
    snprintf(json, sizeof json, TOP "\"bushes\":{\"%s\":{\"type\":\"ball_joint\"}}}", name);
    expect_first(json, "expected a name of 1 to 63 bytes");
    snprintf(json, sizeof json, "{\"format\":\"giveway-case-1\",\"title\":\"%s\",\"bushes\":{}}", text);
    expect_first(json, "title: expected a text of at most 1000 bytes, found 1001");
    expect_first(TOP "\"bushes\":{\"\":{\"type\":\"ball_joint\"}}}", "bushes[\"\"]: expected a name");
}

static void more_faults_than_a_list_holds_are_cut(void **state)
{
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    (void)state;
    char *text = repeat(TOP, "\"unknown#\":1", 3000, ",\"bushes\":{}}");
    assert_int_equal(sample_read(text, &c, &faults), GW_E_SCHEMA);
    assert_int_equal(gw_faults_count(&faults), GW_MAX_FAULTS + 1);
    check_contains(gw_faults_text(&faults, GW_MAX_FAULTS - 1), "unknown999: unknown key");
    check_contains(gw_faults_text(&faults, GW_MAX_FAULTS), "more faults than can be listed");
    gw_faults_free(&faults);
    free(text);
}

static void large_files_are_refused(void **state)
{
    char path[] = "/tmp/giveway-large-XXXXXX";
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    gw_material_set none = { 0 };
    (void)state;
    int fd = mkstemp(path);
    assert_true(fd >= 0);
    FILE *file = fdopen(fd, "w");
    assert_non_null(file);
    for (int i = 0; i <= GW_MAX_FILE_BYTES; i++) fputc(' ', file);
    assert_int_equal(fclose(file), 0);
    assert_int_equal(gw_case_load(path, &none, &c, &faults), GW_E_IO);
    check_contains(gw_faults_text(&faults, 0), "larger than 4 MiB");
    gw_faults_free(&faults);
    remove(path);
}

static void files_that_cannot_be_read_say_why(void **state)
{
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    gw_material_set none = { 0 };
    (void)state;
    assert_int_equal(gw_case_load("/no/such/case.json", &none, &c, &faults), GW_E_IO);
    assert_string_equal(gw_faults_text(&faults, 0),
                        "/no/such/case.json: cannot be read: No such file or directory");
    gw_faults_free(&faults);
    assert_int_equal(gw_case_load("/tmp", &none, &c, &faults), GW_E_IO);
    check_contains(gw_faults_text(&faults, 0), "/tmp: cannot be read: Is a directory");
    gw_faults_free(&faults);
}

static void hints_follow_the_slip(void **state)
{
    static const char *const NAMES[] = { "loaded_radius_mm", "mass_kg", "rim_diameter_mm", "between" };
    static const char *const PAIRS[][2] = {
        { "loaded_radius", "loaded_radius_mm" },
        { "mass", "mass_kg" },
        { "Mass_Kg", "mass_kg" },
        { "rim_diametre_mm", "rim_diameter_mm" },
        { "betwene", "between" },
        { "zebra", NULL },
        { "", NULL },
    };
    (void)state;
    for (size_t i = 0; i < sizeof PAIRS / sizeof *PAIRS; i++) {
        gw_nearest near = { .want = PAIRS[i][0] };
        for (size_t k = 0; k < 4; k++) gw_nearest_offer(&near, NAMES[k]);
        if (!PAIRS[i][1] != !near.best || (near.best && strcmp(near.best, PAIRS[i][1]) != 0))
            fail_msg("%s: %s", PAIRS[i][0], near.best ? near.best : "nothing");
    }
}

/* The parser's memory fails at each of its allocations in turn: never a crash, always the reason. */
static long allocations_left;

static void *scarce(size_t size)
{
    return allocations_left-- > 0 ? malloc(size) : NULL;
}

static void memory_that_runs_out_is_no_syntax_error(void **state)
{
    gw_material_set none = { 0 };
    cJSON_Hooks hooks = { scarce, free };
    gw_status st = GW_E_NOMEM;
    long n = 0;
    (void)state;
    cJSON_InitHooks(&hooks);
    for (; st == GW_E_NOMEM && n < 10000; n++) {
        gw_case c = { 0 };
        gw_faults faults = { 0 };
        allocations_left = n;
        st = gw_case_read("sample.json", SAMPLE_MINIMAL, strlen(SAMPLE_MINIMAL), &none, &c, &faults);
        if (st == GW_E_NOMEM)
            check_contains(gw_faults_text(&faults, gw_faults_count(&faults) - 1), "out of memory");
        gw_case_free(&c);
        gw_faults_free(&faults);
    }
    cJSON_InitHooks(NULL);
    assert_int_equal(st, GW_OK);
    assert_true(n > 50);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_too_many_is_said),
        cmocka_unit_test(what_is_just_allowed_is_read),
        cmocka_unit_test(names_and_texts_have_a_length),
        cmocka_unit_test(more_faults_than_a_list_holds_are_cut),
        cmocka_unit_test(large_files_are_refused),
        cmocka_unit_test(files_that_cannot_be_read_say_why),
        cmocka_unit_test(hints_follow_the_slip),
        cmocka_unit_test(memory_that_runs_out_is_no_syntax_error),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
