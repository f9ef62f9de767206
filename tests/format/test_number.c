/* SPDX-License-Identifier: MIT */
#include "support/check.h"

#include "format/number.h"
#include "giveway/units.h"

#include <float.h>
#include <locale.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

static void fixed_rounds_and_drops_the_sign_of_zero(void **state)
{
    (void)state;
    assert_string_equal(gw_fixed(-0.0004, 3).s, "0.000");
    assert_string_equal(gw_fixed(-0.0006, 3).s, "-0.001");
    assert_string_equal(gw_fixed(2.385, 1).s, "2.4");
    assert_string_equal(gw_fixed(-0.0, 0).s, "0");
}

static void signed_puts_a_plus_only_above_zero(void **state)
{
    (void)state;
    assert_string_equal(gw_signed(0.213, 2).s, "+0.21");
    assert_string_equal(gw_signed(-0.213, 2).s, "-0.21");
    assert_string_equal(gw_signed(0.001, 2).s, "0.00");
}

static void what_is_no_number_is_a_dash_everywhere(void **state)
{
    (void)state;
    const double bad[] = { (double)NAN, HUGE_VAL, -HUGE_VAL };
    for (int i = 0; i < 3; i++) {
        assert_string_equal(gw_fixed(bad[i], 2).s, "-");
        assert_string_equal(gw_signed(bad[i], 2).s, "-");
        assert_string_equal(gw_significant(bad[i], 3).s, "-");
        assert_string_equal(gw_exact(bad[i]).s, "-");
        assert_string_equal(gw_degrees_minutes(bad[i], 0).s, "-");
    }
}

static void significant_digits_keep_sensible_forms(void **state)
{
    (void)state;
    assert_string_equal(gw_significant(12412.0, 3).s, "12412");
    assert_string_equal(gw_significant(412.34, 3).s, "412");
    assert_string_equal(gw_significant(9.996, 3).s, "10.0");
    assert_string_equal(gw_significant(0.012345, 3).s, "0.0123");
    assert_string_equal(gw_significant(-1.5e-9, 2).s, "-1.5e-09");
    assert_string_equal(gw_significant(0.0, 3).s, "0");
}

static void exact_reads_back_bit_for_bit_and_is_short(void **state)
{
    (void)state;
    assert_string_equal(gw_exact(0.1).s, "0.1");
    assert_string_equal(gw_exact(0.1 + 0.2).s, "0.30000000000000004");
    assert_string_equal(gw_exact(-0.0).s, "0");
    const double values[] = { DBL_MAX, DBL_MIN, 5e-324, GW_PI, -2.0 / 3.0, 1e22, 123456789012345680.0 };
    for (size_t i = 0; i < sizeof values / sizeof *values; i++)
        assert_true(strtod(gw_exact(values[i]).s, NULL) == values[i]);
}

static void minutes_carry_into_degrees(void **state)
{
    (void)state;
    assert_string_equal(gw_degrees_minutes(0.2 * GW_DEG, 0).s, "0\xC2\xB0"
                                                               "12'");
    assert_string_equal(gw_degrees_minutes(0.9999 * GW_DEG, 0).s, "1\xC2\xB0"
                                                                  "00'");
    assert_string_equal(gw_degrees_minutes(-(1.0 + 5.5 / 60.0) * GW_DEG, 1).s, "-1\xC2\xB0"
                                                                               "05.5'");
    assert_string_equal(gw_degrees_minutes(-0.001 * GW_DEG, 0).s, "0\xC2\xB0"
                                                                  "00'");
}

static void toe_at_the_rim_is_the_offset_of_its_edges(void **state)
{
    (void)state;
    /* Edges of a rim 457 mm across, turned by 0.2 degrees, worked out from their coordinates. */
    double front = 0.457 / 2 * sin(0.2 * GW_PI / 180), rear = -front;
    check_abs(gw_toe_at_rim(0.2 * GW_DEG, 0.457), front - rear, 1e-15, "toe at the rim [m]");
}

/* A locale with a decimal comma, made for this test: few machines have one ready. */
static const char *set_comma_locale(void)
{
    const char *dir = getenv("TMPDIR");
    char make[1024];
    snprintf(make, sizeof make, "localedef -i de_DE -f UTF-8 '%s/de_DE.UTF-8' >/dev/null 2>&1",
             dir ? dir : "/tmp");
    if (system(make) < 0)
        return NULL; /* its warnings have a status, too: what counts is whether it takes hold */
    setenv("LOCPATH", dir ? dir : "/tmp", 1);
    return setlocale(LC_NUMERIC, "de_DE.UTF-8");
}

static void a_decimal_comma_of_the_host_program_does_not_get_in(void **state)
{
    (void)state;
    if (!set_comma_locale()) skip();
    assert_string_equal(localeconv()->decimal_point, ",");
    assert_string_equal(gw_exact(0.5).s, "0.5");
    assert_string_equal(gw_fixed(-2.385, 2).s, "-2.38");
    assert_string_equal(gw_significant(0.012345, 3).s, "0.0123");
    setlocale(LC_NUMERIC, "C");
}

/* A hyphen stood for every minus of a chart. What is no number keeps its hyphen. */
static void a_hyphen_before_a_number_is_a_minus_and_one_between_is_not(void **state)
{
    (void)state;
    static const char *const SAID[][2] = {
        { "-0.31 of -0.67 deg", "\xE2\x88\x92"
                                "0.31 of \xE2\x88\x92"
                                "0.67 deg" },
        { "+29.4/-45.4 (-2)", "+29.4/\xE2\x88\x92"
                              "45.4 (\xE2\x88\x92"
                              "2)" },
        { "20-200 Hz, A-3, 2026-03-01", "20-200 Hz, A-3, 2026-03-01" },
        { "off-centre - none", "off-centre - none" },
        { "1e-07 of --3", "1e-07 of --3" },
        { "\xC2\xA0-1", "\xC2\xA0\xE2\x88\x92"
                        "1" },
    };
    for (size_t i = 0; i < sizeof SAID / sizeof *SAID; i++) {
        gw_buf out = { 0 };
        gw_minus_signs(&out, SAID[i][0]);
        assert_string_equal(gw_buf_str(&out), SAID[i][1]);
        gw_buf_free(&out);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(fixed_rounds_and_drops_the_sign_of_zero),
        cmocka_unit_test(signed_puts_a_plus_only_above_zero),
        cmocka_unit_test(what_is_no_number_is_a_dash_everywhere),
        cmocka_unit_test(significant_digits_keep_sensible_forms),
        cmocka_unit_test(exact_reads_back_bit_for_bit_and_is_short),
        cmocka_unit_test(minutes_carry_into_degrees),
        cmocka_unit_test(toe_at_the_rim_is_the_offset_of_its_edges),
        cmocka_unit_test(a_hyphen_before_a_number_is_a_minus_and_one_between_is_not),
        cmocka_unit_test(a_decimal_comma_of_the_host_program_does_not_get_in),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
