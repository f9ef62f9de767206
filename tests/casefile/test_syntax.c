/* SPDX-License-Identifier: MIT */
/* The grammar of JSON: RFC 8259; of UTF-8: RFC 3629, section 4. */
#include "casefile/syntax.h"
#include "support/case_sample.h"
#include "support/check.h"

#include <stdlib.h>
#include <string.h>

static bool sound(const char *text)
{
    gw_syntax_error error;
    return gw_json_syntax(text, strlen(text), 32, &error);
}

static void every_form_of_the_standard_is_accepted(void **state)
{
    static const char *const LIST[] = {
        "0",
        "-0",
        "12",
        "-1.5",
        "1e5",
        "1E+5",
        "0.5e-7",
        "true",
        "false",
        "null",
        "\"\"",
        "[]",
        "{}",
        " \t\r\n[ ] \n",
        "[1, 2,3]",
        "{\"a\":1,\"b\":[{}]}",
        "\"\\\"\\\\\\/\\b\\f\\n\\r\\t\\u00e4\"",
        "\"\\ud83d\\ude00\"",
        "\"\xC3\xA4 \xE2\x82\xAC \xF0\x9F\x98\x80\"",
    };
    (void)state;
    for (size_t i = 0; i < sizeof LIST / sizeof *LIST; i++)
        if (!sound(LIST[i])) fail_msg("refused: %s", LIST[i]);
}

typedef struct flawed {
    const char *text;
    size_t line, column;
    const char *expected;
} flawed;

static void every_flaw_is_found_where_it_is(void **state)
{
    static const flawed LIST[] = {
        { "", 1, 1, "the file ends where a value is expected" },
        { "{\n  \"a\": 1,\n}", 3, 1, "a comma too many" },
        { "[1, 2,]", 1, 7, "a comma too many" },
        { "{\n \"a\": 1\n \"b\": 2 }", 3, 2, "expected a comma or a closing brace" },
        { "[1 2]", 1, 4, "expected a comma or a closing bracket" },
        { "{\"a\" 1}", 1, 6, "expected a colon" },
        { "{a: 1}", 1, 2, "expected a key in double quotes" },
        { "{'a': 1}", 1, 2, "expected a key in double quotes" },
        { "{\"a\": 0,41}", 1, 9, "a decimal comma? Write a point" },
        { "{\"a\": 1, 41}", 1, 10, "expected a key in double quotes" },
        { "{\n// a\n\"b\": 1}", 2, 1, "a remark is a key of its own" },
        { "{\"a\": }", 1, 7, "a key without one" },
        { "{\"a\": 'x'}", 1, 7, "expected a value" },
        { "[01]", 1, 3, "must not begin with 0" },
        { "[+1]", 1, 2, "expected a value" },
        { "[.5]", 1, 2, "expected a value" },
        { "[1.]", 1, 4, "a digit must follow" },
        { "[-]", 1, 3, "a digit must follow" },
        { "[1e]", 1, 4, "a digit must follow" },
        { "[NaN]", 1, 2, "expected a value" },
        { "[Infinity]", 1, 2, "expected a value" },
        { "[-inf]", 1, 3, "a digit must follow" },
        { "[0x10]", 1, 3, "expected a comma" },
        { "[tru]", 1, 2, "expected a value" },
        { "[1", 1, 3, "expected a comma or a closing bracket" },
        { "[\"abc", 1, 6, "not closed by a quote" },
        { "[\"ab\nc\"]", 1, 5, "not closed by a quote before the line" },
        { "\"\\x\"", 1, 3, "no such escape" },
        { "\"\\u12g4\"", 1, 3, "four hexadecimal digits" },
        { "\"\\u0000\"", 1, 3, "not allowed" },
        { "\"\\ud83d\"", 1, 3, "first half of a pair" },
        { "\"\\ude00\"", 1, 3, "second half of a pair" },
        { "\"\xC3\xA4\xFF\"", 1, 3, "not UTF-8" },
        { "\"\xC0\x80\"", 1, 2, "not UTF-8" },
        { "\"\xE0\x80\x80\"", 1, 2, "not UTF-8" },
        { "\"\xED\xA0\x80\"", 1, 2, "not UTF-8" },
        { "\"\xF4\x90\x80\x80\"", 1, 2, "not UTF-8" },
        { "\"\xE2\x82", 1, 2, "not UTF-8" },
        { "{} x", 1, 4, "nothing may follow" },
        { "// note\n{}", 1, 1, "expected a value" },
        { "[1234567890123456789012345678901234567890123456789012345678901]", 1, 63, "longer than 60" },
    };
    (void)state;
    for (size_t i = 0; i < sizeof LIST / sizeof *LIST; i++) {
        gw_syntax_error e;
        const flawed *f = &LIST[i];
        if (gw_json_syntax(f->text, strlen(f->text), 32, &e)) fail_msg("accepted: %s", f->text);
        if (e.line != f->line || e.column != f->column)
            fail_msg("%s: line %zu column %zu, want %zu, %zu", f->text, e.line, e.column, f->line, f->column);
        check_contains(e.expected, f->expected);
    }
}

static void a_zero_byte_is_no_end(void **state)
{
    static const char TEXT[] = "{}\0{}";
    gw_syntax_error e;
    (void)state;
    assert_false(gw_json_syntax(TEXT, sizeof TEXT - 1, 32, &e));
    assert_int_equal(e.at, 2);
}

static void depth_is_limited(void **state)
{
    char text[80];
    gw_syntax_error e;
    (void)state;
    memset(text, '[', 33);
    memset(text + 33, ']', 33);
    assert_true(gw_json_syntax(text + 1, 64, 32, &e));
    assert_false(gw_json_syntax(text, 66, 32, &e));
    check_contains(e.expected, "nested too deeply");
    assert_int_equal(e.column, 33);
}

static void a_case_reports_line_and_column(void **state)
{
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    (void)state;
    char *text = sample_change(SAMPLE_MINIMAL, "\"axis\": [0, 2, 0], \"bush\": \"arm\" },",
                               "\"axis\": [0, 2, 0] \"bush\": \"arm\" },");
    assert_int_equal(sample_read(text, &c, &faults), GW_E_PARSE);
    assert_int_equal(gw_faults_count(&faults), 1);
    assert_string_equal(gw_faults_text(&faults, 0),
                        "sample.json: line 8, column 27: expected a comma or a closing brace");
    gw_faults_free(&faults);
    free(text);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_form_of_the_standard_is_accepted),
        cmocka_unit_test(every_flaw_is_found_where_it_is),
        cmocka_unit_test(a_zero_byte_is_no_end),
        cmocka_unit_test(depth_is_limited),
        cmocka_unit_test(a_case_reports_line_and_column),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
