/* SPDX-License-Identifier: MIT */
/* Markup from texts that hold anything. What must be escaped: HTML Living Standard, 13.1.2.3 and 13.1.4. */
#include "support/check.h"

#include "format/html.h"

#include <cjson/cJSON.h>
#include <string.h>

static void what_means_something_in_markup_is_escaped_in_text_and_attributes(void **state)
{
    (void)state;
    gw_buf out = { 0 };
    gw_html_text(&out, "a <b onclick=\"x\"> & 'c' \xC3\xA9");
    assert_string_equal(out.s, "a &lt;b onclick=&quot;x&quot;&gt; &amp; &#39;c&#39; \xC3\xA9");
    gw_buf_free(&out);
}

static void control_characters_go_and_broken_bytes_are_shown_as_such(void **state)
{
    (void)state;
    gw_buf out = { 0 };
    gw_html_text(&out, "a\x01\n\x1B[1m\xFFz");
    assert_string_equal(out.s, "a   [1m\xEF\xBF\xBDz");
    gw_buf_free(&out);
}

static void a_name_is_isolated_so_that_its_direction_of_reading_stays_its_own(void **state)
{
    (void)state;
    gw_buf out = { 0 };
    gw_html_name(&out, "\xD7\x92\xD7\x95\xD7\x9E\xD7\x99 <1>");
    assert_string_equal(out.s, "<bdi>\xD7\x92\xD7\x95\xD7\x9E\xD7\x99 &lt;1&gt;</bdi>");
    gw_buf_free(&out);
}

static void texts_go_into_markup_where_it_has_room_for_them_and_are_escaped(void **state)
{
    (void)state;
    gw_buf out = { 0 };
    gw_html_put(&out, "<li id=\"{}\">{}, <b>{}</b></li>", "a\"b", "{}", "<1>");
    gw_html_put(&out, "<hr>");
    assert_string_equal(out.s, "<li id=\"a&quot;b\">{}, <b>&lt;1&gt;</b></li><hr>");
    gw_buf_free(&out);
}

static void figures_have_a_true_minus_and_their_unit(void **state)
{
    (void)state;
    gw_buf out = { 0 };
    gw_html_figure(&out, gw_fixed(-0.385, 2), "\xC2\xB0");
    gw_html_figure(&out, gw_signed(3.16, 1), " dB");
    gw_html_figure(&out, (gw_number){ GW_NO_NUMBER }, "");
    assert_string_equal(out.s, "\xE2\x88\x92"
                               "0.39\xC2\xB0+3.2 dB-");
    gw_buf_free(&out);
}

static void a_sentence_takes_its_parts_and_what_is_put_in_is_not_read_again(void **state)
{
    (void)state;
    gw_buf out = { 0 };
    const gw_html_part parts[] = { { "kit", "{load} <i>" }, { "load", "a & b" }, { NULL, NULL } };
    gw_html_say(&out, "{kit} < {load}, {unknown} {", parts);
    assert_string_equal(out.s, "<bdi>{load} &lt;i&gt;</bdi> &lt; <bdi>a &amp; b</bdi>, {unknown} {");
    gw_buf_free(&out);
    gw_plain_say(&out, "{kit}, {load}.", parts);
    assert_string_equal(out.s, "{load} <i>, a & b.");
    gw_buf_free(&out);
}

static void json_in_a_script_cannot_end_it_and_reads_back_as_it_was(void **state)
{
    (void)state;
    gw_buf out = { 0 };
    gw_html_json(&out, "{\"kit\": \"</script><!-- & \xE2\x80\xA8\"}");
    assert_null(strchr(out.s, '<'));
    assert_null(strchr(out.s, '&'));
    cJSON *back = cJSON_Parse(out.s);
    assert_non_null(back);
    assert_string_equal(cJSON_GetObjectItem(back, "kit")->valuestring, "</script><!-- & \xE2\x80\xA8");
    cJSON_Delete(back);
    gw_buf_free(&out);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_means_something_in_markup_is_escaped_in_text_and_attributes),
        cmocka_unit_test(control_characters_go_and_broken_bytes_are_shown_as_such),
        cmocka_unit_test(a_name_is_isolated_so_that_its_direction_of_reading_stays_its_own),
        cmocka_unit_test(texts_go_into_markup_where_it_has_room_for_them_and_are_escaped),
        cmocka_unit_test(figures_have_a_true_minus_and_their_unit),
        cmocka_unit_test(a_sentence_takes_its_parts_and_what_is_put_in_is_not_read_again),
        cmocka_unit_test(json_in_a_script_cannot_end_it_and_reads_back_as_it_was),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
