/* SPDX-License-Identifier: MIT */
/* Whole numbers in short. */
#include "support/check.h"

#include "page/pack.h"

#include <string.h>

static void check_packed(double value, const char *want)
{
    gw_buf out = { 0 };
    gw_pack(&out, value);
    assert_string_equal(gw_buf_str(&out), want);
    gw_buf_free(&out);
}

/* 43 digits of the lower half: "0" to "g"; those that go on are "h" to "}". */
static void a_number_is_written_low_digit_first_and_ends_with_one_of_the_lower_half(void **state)
{
    (void)state;
    check_packed(0, "0");
    check_packed(-1, "1");
    check_packed(1, "2");
    check_packed(21, "g");      /* 42 */
    check_packed(-22, "h1");    /* 43 = 0 + 1 * 43 */
    check_packed(22, "i1");     /* 44 = 1 + 1 * 43 */
    check_packed(-925, "hh1");  /* 1849 = 43 * 43 */
    check_packed(924.6, "ih1"); /* rounded to 925: 1850 = 1 + 43 * 43 */
    check_packed(-0.4, "0");
}

static void digits_are_of_two_halves_and_mean_nothing_in_json_or_markup(void **state)
{
    (void)state;
    const char *digits = gw_pack_digits();
    assert_int_equal(strlen(digits), 86);
    assert_null(strpbrk(digits, "\"\\<>&' \n"));
    for (const char *d = digits; *d; d++) assert_null(strchr(d + 1, *d));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_number_is_written_low_digit_first_and_ends_with_one_of_the_lower_half),
        cmocka_unit_test(digits_are_of_two_halves_and_mean_nothing_in_json_or_markup),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
