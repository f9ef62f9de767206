/* SPDX-License-Identifier: MIT */
#include "support/check.h"

#include "base/utf8.h"
#include "format/table.h"

#include <stdio.h>
#include <string.h>

static void two_columns(gw_table *t)
{
    gw_table_column(t, GW_LEFT, "kit");
    gw_table_column(t, GW_RIGHT, "toe\ndeg");
}

static void cells_that_are_given_together_stand_side_by_side(void **state)
{
    (void)state;
    gw_table t = { 0 };
    gw_buf out = { 0 };
    gw_table_heads(&t, "lr", "a", "b");
    gw_table_cells(&t, "one", "2", "", "3");
    gw_table_put(&t, 40, 0, false, &out);
    assert_string_equal(out.s, "a    b\n---  -\none  2\n     3\n");
    gw_buf_free(&out);
}

static void columns_line_up_and_lines_end_without_blanks(void **state)
{
    (void)state;
    gw_table t = { 0 };
    gw_buf out = { 0 };
    two_columns(&t);
    gw_table_cell(&t, "rubber");
    gw_table_cell(&t, "-0.21");
    gw_table_cell(&t, "ball");
    gw_table_end_row(&t);
    assert_int_equal(gw_table_print(&t, 80, 2, false, &out, NULL), GW_OK);
    assert_string_equal(out.s, "  kit       toe\n"
                               "            deg\n"
                               "  ------  -----\n"
                               "  rubber  -0.21\n"
                               "  ball\n");
    gw_table_free(&t);
    gw_buf_free(&out);
}

static void width_counts_letters_and_not_bytes(void **state)
{
    (void)state;
    assert_int_equal(gw_utf8_width("B\xC3\xBCgel"), 5);
    assert_int_equal(gw_utf8_width("e\xCC\x81"), 1);          /* e with a combining accent */
    assert_int_equal(gw_utf8_width("\xE8\xBB\x8A"), 2);       /* a wide letter             */
    assert_int_equal(gw_utf8_width("0\xC2\xB0\x31\x32'"), 5); /* degrees and minutes       */
    assert_int_equal(gw_utf8_width("\xD7\x90\xD7\x91"), 2);   /* right-to-left             */
    assert_int_equal(gw_utf8_width("a\xFF"
                                   "b"),
                     3); /* a stray byte              */
}

static void what_is_cut_ends_behind_a_whole_letter(void **state)
{
    (void)state;
    assert_int_equal(gw_utf8_fit("B\xC3\xBCgel", 5), 5);
    assert_int_equal(gw_utf8_fit("B\xC3\xBCgel", 3), 3);
    assert_int_equal(gw_utf8_fit("B\xC3\xBCgel", 2), 1);
    assert_int_equal(gw_utf8_fit("B\xC3\xBCgel", 60), 6);
    assert_int_equal(gw_utf8_fit("\xE8\xBB\x8A", 2), 0);
    assert_int_equal(gw_utf8_fit("", 9), 0);
}

static int longest_line(const char *s)
{
    int longest = 0;
    while (*s) {
        size_t n = strcspn(s, "\n");
        if ((int)n > longest) longest = (int)n;
        s += n + (s[n] == '\n');
    }
    return longest;
}

static void words_wrap_and_numbers_are_never_cut(void **state)
{
    (void)state;
    gw_table t = { 0 };
    gw_buf out = { 0 };
    two_columns(&t);
    gw_table_cell(
        &t, "a very long label of a kit that nobody would ever type Donaudampfschifffahrtsgesellschaft");
    gw_table_cell(&t, "-123456.789");
    assert_int_equal(gw_table_print(&t, 32, 0, false, &out, NULL), GW_OK);
    assert_true(longest_line(out.s) <= 32);
    check_contains(out.s, "-123456.789");
    check_contains(out.s, "Donaudampfschifffah\n");
    gw_table_free(&t);
    gw_buf_free(&out);
}

static void pieces_are(const char *s, int width, const char *first, const char *second)
{
    size_t n;
    const char *at = gw_wrap_next(&s, width, &n);
    assert_int_equal(n, strlen(first));
    assert_memory_equal(at, first, n);
    at = gw_wrap_next(&s, width, &n);
    assert_int_equal(n, strlen(second));
    assert_memory_equal(at, second, n);
}

static void a_word_too_long_is_broken_at_a_seam_of_its_own(void **state)
{
    (void)state;
    pieces_are("corners.front.points_mm.lower_front_inner[2]", 34, "corners.front.points_mm.",
               "lower_front_inner[2]");
    pieces_are("lower_arm_front_of_the_left", 18, "lower_arm_front_", "of_the_left");
    pieces_are("a.longlonglonglong", 8, "a.longlo", "nglonglo"); /* a seam too early is none */
    pieces_are("__________", 1, "_", "_");
    pieces_are("two words.of_one", 12, "two", "words.of_one");
}

static void too_many_columns_continue_below_with_the_first_again(void **state)
{
    (void)state;
    gw_table t = { 0 };
    gw_buf out = { 0 };
    gw_table_column(&t, GW_LEFT, "name");
    for (int i = 0; i < 6; i++) gw_table_column(&t, GW_RIGHT, "newtons");
    gw_table_cell(&t, "arm");
    for (int i = 0; i < 6; i++) gw_table_cellf(&t, "%d", 1000000 + i);
    assert_int_equal(gw_table_print(&t, 30, 0, false, &out, NULL), GW_OK);
    assert_true(longest_line(out.s) <= 30);
    int parts = 0;
    for (const char *p = out.s; (p = strstr(p, "arm")); p++) parts++;
    assert_int_equal(parts, 3);
    check_contains(out.s, "1000005");
    gw_table_free(&t);
    gw_buf_free(&out);
}

static void names_cannot_steer_the_terminal(void **state)
{
    (void)state;
    gw_table t = { 0 };
    gw_buf out = { 0 };
    const char override[] = { (char)0xE2, (char)0x80, (char)0xAE, 0 }; /* U+202E, right-to-left override */
    char name[32];
    snprintf(name, sizeof name, "a\033[31m\nb\xFF%s", override);
    two_columns(&t);
    gw_table_cell(&t, name);
    gw_table_end_row(&t);
    assert_int_equal(gw_table_print(&t, 60, 0, false, &out, NULL), GW_OK);
    assert_null(strchr(out.s, '\033'));
    check_contains(out.s, "a [31m b\xEF\xBF\xBD");
    assert_null(strstr(out.s, override));
    gw_table_free(&t);
    gw_buf_free(&out);
}

static void bold_heads_keep_the_layout(void **state)
{
    (void)state;
    gw_table t = { 0 };
    gw_buf out = { 0 };
    two_columns(&t);
    gw_table_cell(&t, "rubber");
    gw_table_cell(&t, "1");
    assert_int_equal(gw_table_print(&t, 60, 0, true, &out, NULL), GW_OK);
    check_contains(out.s, "\033[1mkit\033[0m     \033[1mtoe\033[0m\n");
    gw_table_free(&t);
    gw_buf_free(&out);
}

static void an_overfull_or_late_column_is_refused(void **state)
{
    (void)state;
    gw_table t = { 0 };
    gw_buf out = { 0 };
    two_columns(&t);
    gw_table_cell(&t, "x");
    gw_table_column(&t, GW_LEFT, "late");
    gw_error err = { 0 };
    assert_int_not_equal(gw_table_print(&t, 60, 0, false, &out, &err), GW_OK);
    gw_table_free(&t);
    gw_buf_free(&out);
}

static void a_paragraph_breaks_at_blanks(void **state)
{
    (void)state;
    gw_buf out = { 0 };
    gw_buf_paragraph(&out, "under a 1 g stop the toe moves", 12, 2);
    assert_string_equal(out.s, "  under a 1\n  g stop the\n  toe moves\n");
    gw_buf_free(&out);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(cells_that_are_given_together_stand_side_by_side),
        cmocka_unit_test(columns_line_up_and_lines_end_without_blanks),
        cmocka_unit_test(width_counts_letters_and_not_bytes),
        cmocka_unit_test(what_is_cut_ends_behind_a_whole_letter),
        cmocka_unit_test(words_wrap_and_numbers_are_never_cut),
        cmocka_unit_test(a_word_too_long_is_broken_at_a_seam_of_its_own),
        cmocka_unit_test(too_many_columns_continue_below_with_the_first_again),
        cmocka_unit_test(names_cannot_steer_the_terminal),
        cmocka_unit_test(bold_heads_keep_the_layout),
        cmocka_unit_test(an_overfull_or_late_column_is_refused),
        cmocka_unit_test(a_paragraph_breaks_at_blanks),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
