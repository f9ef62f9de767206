/* SPDX-License-Identifier: MIT */
/* A page with slots. */
#include "support/check.h"

#include "page/template.h"

#include <string.h>

static void reads(const char *template, const gw_slots *slots, const char *want)
{
    gw_buf out = { 0 };
    gw_template_fill(template, slots, &out);
    assert_string_equal(gw_buf_str(&out), want);
    gw_buf_free(&out);
}

static void a_text_is_escaped_and_our_own_mark_up_is_not(void **state)
{
    (void)state;
    gw_arena arena = { 0 };
    gw_slots *s = gw_slots_make(&arena);
    gw_slots_text(s, "name", "<b>\"&'{{other}}");
    gw_slots_fmt(s, "other", "%d", 7);
    reads("[{{name}}] {{&other}}{{nothing}}", s, "[&lt;b&gt;&quot;&amp;&#39;{{other}}] 7");
    reads("{{&name}}", s, "<b>\"&'{{other}}");
    gw_arena_free(&arena);
}

static void a_part_stands_for_each_element_and_once_for_a_text(void **state)
{
    (void)state;
    gw_arena arena = { 0 };
    gw_slots *s = gw_slots_make(&arena);
    gw_slots_text(s, "title", "T");
    gw_slots_text(s, "empty", "");
    for (int i = 0; i < 2; i++) {
        gw_slots *e = gw_slots_element(s, "list");
        gw_slots_fmt(e, "n", "%d", i);
        if (i) gw_slots_text(gw_slots_element(e, "list"), "n", "in");
    }
    reads("{{#list}}{{n}}{{title}};{{/list}}", s, "0T;1T;");
    reads("{{#title}}yes{{/title}}{{^title}}no{{/title}}{{#empty}}yes{{/empty}}{{^empty}}no{{/empty}}", s,
          "yesno");
    reads("{{#list}}{{#list}}<{{n}}>{{/list}}.{{/list}}", s, "<0><1>.<in>.");
    reads("{{^none}}{{#list}}{{n}}{{/list}}{{/none}}|{{#none}}x{{/none}}", s, "01|");
    gw_arena_free(&arena);
}

static void what_is_not_closed_ends_with_the_page(void **state)
{
    (void)state;
    gw_arena arena = { 0 };
    gw_slots *s = gw_slots_make(&arena);
    gw_slots_text(s, "a", "1");
    reads("x{{#a}}y", s, "xy");
    reads("x{{a", s, "x{{a");
    gw_arena_free(&arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_text_is_escaped_and_our_own_mark_up_is_not),
        cmocka_unit_test(a_part_stands_for_each_element_and_once_for_a_text),
        cmocka_unit_test(what_is_not_closed_ends_with_the_page),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
