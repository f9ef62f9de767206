/* SPDX-License-Identifier: MIT */
/* Messages of one line, memory with one owner, and work shared out among threads. */
#include "support/check.h"

#include "base/parallel.h"
#include "giveway/arena.h"
#include "giveway/status.h"

#include <string.h>

static void a_message_is_one_line_and_is_cut_where_it_is_too_long(void **state)
{
    (void)state;
    gw_error err = { 0 };
    char text[2 * GW_MESSAGE_MAX];
    memset(text, 'x', sizeof text);
    text[sizeof text - 1] = '\0';
    assert_int_equal(gw_fail(&err, GW_E_RANGE, "first\nsecond\r%d", 3), GW_E_RANGE);
    assert_string_equal(err.msg, "first second 3");
    gw_fail(&err, GW_E_IO, "%s", text);
    assert_int_equal(strlen(err.msg), GW_MESSAGE_MAX - 1);
    assert_string_equal(err.msg + GW_MESSAGE_MAX - 5, "x...");
    assert_int_equal(gw_fail(NULL, GW_E_IO, "for nobody"), GW_E_IO);
}

static void every_status_has_a_text(void **state)
{
    (void)state;
    for (int code = 0; code < GW_STATUS_COUNT; code++)
        assert_true(strlen(gw_status_text((gw_status)code)) > 3);
    assert_string_equal(gw_status_text(GW_STATUS_COUNT), "unknown status");
}

static void an_arena_gives_zeroed_memory_and_refuses_what_cannot_be_counted(void **state)
{
    (void)state;
    gw_arena arena = { 0 }, other = { 0 };
    double *few = gw_arena_alloc(&arena, 3, sizeof *few);
    char *many = gw_arena_alloc(&arena, 1, 1 << 20);
    assert_non_null(few);
    assert_non_null(many);
    for (int i = 0; i < 3; i++) assert_true(few[i] == 0.0);
    for (int i = 0; i < 1 << 20; i++) assert_int_equal(many[i], 0);
    assert_null(gw_arena_alloc(&arena, SIZE_MAX / 2, 4));
    assert_null(gw_arena_alloc(&arena, 1, SIZE_MAX - 8));
    assert_null(gw_arena_strdup(&arena, NULL));
    char *kept = gw_arena_strdup(&other, "kept");
    gw_arena_absorb(&arena, &other);
    gw_arena_free(&other);
    assert_string_equal(kept, "kept");
    gw_arena_free(&arena);
}

static void count(void *context, int index)
{
    ((int *)context)[index] += 1;
}

static void every_piece_of_work_is_done_once(void **state)
{
    (void)state;
    int done[1000] = { 0 };
    gw_parallel(1000, count, done);
    for (int i = 0; i < 1000; i++) assert_int_equal(done[i], 1);
    gw_parallel(1, count, done);
    assert_int_equal(done[0], 2);
    gw_parallel(0, count, done);
    assert_int_equal(done[0], 2);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_message_is_one_line_and_is_cut_where_it_is_too_long),
        cmocka_unit_test(every_status_has_a_text),
        cmocka_unit_test(an_arena_gives_zeroed_memory_and_refuses_what_cannot_be_counted),
        cmocka_unit_test(every_piece_of_work_is_done_once),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
