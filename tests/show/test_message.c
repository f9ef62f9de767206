/* SPDX-License-Identifier: MIT */
/* Titles of charts say what the figures say: direction, size, and where the order is open. */
#include "support/check.h"

#include "show/message.h"

#include <math.h>
#include <string.h>

static const gw_message TOE = { .of = "Toe", .unit = "deg", .decimals = 2, .is_signed = true };

static void says(const gw_message *m, double first, double second, bool close, const char *want)
{
    const gw_told told[] = { { "old", first, false }, { "new", second, close } };
    gw_buf out = { 0 };
    gw_message_kits(m, told, 2, &out);
    assert_string_equal(gw_buf_str(&out), want);
    gw_buf_free(&out);
}

static void direction_and_size_are_those_of_the_figures(void **state)
{
    (void)state;
    says(&TOE, -0.39, -0.195, false, "Toe halves with new: -0.39 to -0.20 deg");
    says(&TOE, -0.39, -0.30, false, "Toe shrinks by 23 % with new: -0.39 to -0.30 deg");
    says(&TOE, -0.30, -0.39, false, "Toe grows by 30 % with new: -0.30 to -0.39 deg");
    says(&TOE, 0.20, 0.41, false, "Toe doubles with new: +0.20 to +0.41 deg");
    says(&TOE, 0.10, 0.35, false, "Toe grows to 3.5 times with new: +0.10 to +0.35 deg");
    says(&TOE, 0.02, 0.62, false, "Toe grows with new: +0.02 to +0.62 deg");
    says(&TOE, 0.30, -0.30, false, "Toe turns round with new: +0.30 to -0.30 deg");
    says(&TOE, 0.0, -0.30, false, "Toe appears with new: 0.00 to -0.30 deg");
    says(&TOE, 0.30, 0.01, false, "Toe all but goes with new: +0.30 to +0.01 deg");
}

static void what_is_open_is_said_to_be(void **state)
{
    (void)state;
    says(&TOE, -0.39, -0.30, true, "Toe is too close to call: -0.39 to -0.30 deg");
    says(&TOE, -0.39, -0.383, false, "Toe hardly changes from kit to kit: -0.39 to -0.38 deg");
    says(&TOE, -0.39, -0.39, false, "Toe hardly changes from kit to kit: -0.39 deg");
    says(&TOE, (double)NAN, 1.0, false, "Toe");
    const gw_message dB = { .of = "Noise", .unit = "dB", .decimals = 1, .over_first = true };
    says(&dB, 0.0, 5.1, false, "Noise rises most with new: +5.1 dB over old");
    says(&dB, 0.0, -5.1, false, "Noise falls most with new: -5.1 dB over old");
}

/* Of three kits the one that changes most is told, but not one whose order is open. */
static void the_kit_that_changes_most_and_surely_is_told(void **state)
{
    (void)state;
    const gw_told told[] = { { "old", -0.4, false }, { "open", -0.1, true }, { "sure", -0.3, false } };
    gw_buf out = { 0 };
    gw_message_kits(&TOE, told, 3, &out);
    assert_string_equal(gw_buf_str(&out), "Toe shrinks by 25 % with sure: -0.40 to -0.30 deg");
    gw_buf_free(&out);
    gw_message_kits(&TOE, told, 1, &out);
    assert_string_equal(gw_buf_str(&out), "Toe: -0.40 deg with old");
    gw_buf_free(&out);
}

static void part(double a, double b, double whole, const char *want)
{
    const char *const names[] = { "arm", "link" };
    const double values[] = { a, b };
    gw_buf out = { 0 };
    gw_message_part(&TOE, names, values, 2, whole, "old", &out);
    assert_string_equal(gw_buf_str(&out), want);
    gw_buf_free(&out);
}

static void the_largest_part_is_told_with_its_direction(void **state)
{
    (void)state;
    part(-0.3, -0.1, -0.4, "Toe comes mostly from arm: -0.30 of -0.40 deg with old");
    part(-0.1, -0.3, -0.9, "Toe comes first of all from link: -0.30 of -0.90 deg with old");
    part(0.3, -0.1, 0.2,
         "Toe comes from arm, of which the rest takes back a part: +0.30 to +0.20 deg with old");
    part(0.3, -0.1, -0.2, "Toe: arm pulls most, against the rest: +0.30 where all is -0.20 deg with old");
    part(0.0, 0.001, 0.0, "Toe has no part worth telling with old");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(direction_and_size_are_those_of_the_figures),
        cmocka_unit_test(what_is_open_is_said_to_be),
        cmocka_unit_test(the_kit_that_changes_most_and_surely_is_told),
        cmocka_unit_test(the_largest_part_is_told_with_its_direction),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
