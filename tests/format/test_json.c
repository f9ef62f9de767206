/* SPDX-License-Identifier: MIT */
#include "support/check.h"

#include "format/csv.h"
#include "format/json.h"

#include <cjson/cJSON.h>
#include <math.h>
#include <string.h>

static void members_stand_a_line_each_and_vectors_on_one(void **state)
{
    (void)state;
    gw_buf out = { 0 };
    gw_json j = { .out = &out };
    const double v[] = { 0.1, -2, (double)NAN };
    gw_json_object(&j, NULL);
    gw_json_string(&j, "kit", "rubber");
    gw_json_numbers(&j, "force_N", v, 3);
    gw_json_array(&j, "results");
    gw_json_object_on_line(&j, NULL);
    gw_json_int(&j, "n", 3);
    gw_json_bool(&j, "sound", true);
    gw_json_close(&j);
    gw_json_close(&j);
    gw_json_array(&j, "none");
    gw_json_close(&j);
    gw_json_null(&j, "price");
    gw_json_close(&j);
    assert_string_equal(out.s,
                        "{\n  \"kit\": \"rubber\",\n  \"force_N\": [0.1, -2, null],\n  \"results\": [\n"
                        "    {\"n\": 3, \"sound\": true}\n  ],\n  \"none\": [],\n  \"price\": null\n}\n");
    gw_buf_free(&out);
}

/* An independent parser (cJSON) must read back what went in. */
static void any_text_reads_back_through_another_parser(void **state)
{
    (void)state;
    const char *texts[] = { "plain",
                            "\"quoted\" \\ / <b>&amp;</b>",
                            "line\nbreak\ttab\r",
                            "\x01\x1F\x7F",
                            "B\xC3\xBCgel \xD7\x90\xD7\x91 \xF0\x9F\x9A\x97",
                            "" };
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        gw_buf out = { 0 };
        gw_json_quote(&out, texts[i]);
        cJSON *back = cJSON_Parse(out.s);
        assert_non_null(back);
        assert_string_equal(cJSON_GetStringValue(back), texts[i]);
        cJSON_Delete(back);
        gw_buf_free(&out);
    }
}

static void bytes_that_are_not_utf8_become_replacement_characters(void **state)
{
    (void)state;
    /* Stray, cut, overlong, surrogate and out of range, after RFC 3629 section 3. */
    const char *bad[] = { "\xFF", "\xC3", "\xC0\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\x80" };
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        gw_buf out = { 0 };
        gw_json_quote(&out, bad[i]);
        assert_int_equal(strncmp(out.s, "\"\xEF\xBF\xBD", 4), 0);
        for (const char *p = out.s; *p; p++)
            assert_true((unsigned char)*p < 0x80 || strchr("\xEF\xBF\xBD", *p));
        gw_buf_free(&out);
    }
}

static void numbers_that_are_not_finite_are_null(void **state)
{
    (void)state;
    gw_buf out = { 0 };
    gw_json j = { .out = &out };
    gw_json_object_on_line(&j, NULL);
    gw_json_number(&j, "a", HUGE_VAL);
    gw_json_number(&j, "b", (double)NAN);
    gw_json_number(&j, "c", -0.0);
    gw_json_string(&j, "d", NULL);
    gw_json_close(&j);
    assert_string_equal(out.s, "{\"a\": null, \"b\": null, \"c\": 0, \"d\": null}\n");
    gw_buf_free(&out);
}

/* Source: RFC 4180 (2005), section 2, rules 5 to 7. */
static void csv_quotes_as_rfc_4180_says(void **state)
{
    (void)state;
    gw_buf out = { 0 };
    gw_csv csv = { .out = &out };
    gw_csv_string(&csv, "aaa");
    gw_csv_string(&csv, "b\nbb");
    gw_csv_string(&csv, "c,c");
    gw_csv_string(&csv, "d\"d");
    gw_csv_string(&csv, NULL);
    gw_csv_number(&csv, 0.1);
    gw_csv_number(&csv, (double)NAN);
    gw_csv_end_row(&csv);
    gw_csv_number(&csv, -1.5);
    gw_csv_end_row(&csv);
    assert_string_equal(out.s, "aaa,\"b\nbb\",\"c,c\",\"d\"\"d\",,0.1,\n-1.5\n");
    gw_buf_free(&out);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(members_stand_a_line_each_and_vectors_on_one),
        cmocka_unit_test(any_text_reads_back_through_another_parser),
        cmocka_unit_test(bytes_that_are_not_utf8_become_replacement_characters),
        cmocka_unit_test(numbers_that_are_not_finite_are_null),
        cmocka_unit_test(csv_quotes_as_rfc_4180_says),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
