/* SPDX-License-Identifier: MIT */
/* Which joints let the wheel move most, and where harshness comes in: lists of a few that are known. */
#include "support/check.h"

#include "giveway/contributors.h"
#include "giveway/ride_places.h"
#include "giveway/units.h"

enum { JOINTS = 4 };

static gw_joint joints[JOINTS] = {
    { .name = "small" }, { .name = "large" }, { .name = "none" }, { .name = "in" }
};
static const gw_corner CORNER = { .joints = joints, .n_joints = JOINTS };

/* Toe [deg]: 0.1, -0.5, nothing, 0.2; travel 0.1 and geometry -0.1 count in the whole, which is 1. */
static void the_largest_come_first_with_their_part_of_all(void **state)
{
    (void)state;
    gw_joint_result of[JOINTS] = { { .toe_share = 0.1 * GW_DEG, .camber_share = -0.3 * GW_DEG },
                                   { .toe_share = -0.5 * GW_DEG },
                                   { .toe_share = 1e-10 * GW_DEG },
                                   { .toe_share = 0.2 * GW_DEG, .camber_share = 0.1 * GW_DEG } };
    gw_corner_result r = { .joints = of, .travel_toe = 0.1 * GW_DEG, .geometry_toe = -0.1 * GW_DEG };
    gw_contributor list[JOINTS];
    assert_int_equal(gw_contributors(&CORNER, &r, GW_TOE, JOINTS, list), 3);
    assert_string_equal(list[0].name, "large");
    assert_string_equal(list[1].name, "in");
    assert_string_equal(list[2].name, "small");
    assert_int_equal(list[0].joint, 1);
    check_abs(list[0].angle, -0.5 * GW_DEG, 1e-15, "angle");
    check_abs(list[0].part, 0.5, 1e-9, "part");
    check_abs(list[2].part, 0.1, 1e-9, "part");
    assert_int_equal(gw_contributors(&CORNER, &r, GW_TOE, 2, list), 2);
    assert_string_equal(list[1].name, "in");
    assert_int_equal(gw_contributors(&CORNER, &r, GW_CAMBER, JOINTS, list), 2);
    check_abs(list[0].part, 0.75, 1e-9, "part");
}

/* A pair of a joint, its springs, and a joint in the middle, whose mirror image it is itself. */
static void both_sides_are_one_place(void **state)
{
    (void)state;
    gw_joint both[3] = { { .twin = 1 }, { .twin = 0 }, { .twin = 2 } };
    const gw_corner pair = { .joints = both, .n_joints = 3 };
    gw_ride_path path[5] = { { .kind = GW_PATH_JOINT, .joint = 0, .share = 0.1 },
                             { .kind = GW_PATH_JOINT, .joint = 1, .share = 0.2 },
                             { .kind = GW_PATH_JOINT, .joint = 2, .share = 0.25 },
                             { .kind = GW_PATH_SPRING, .joint = -1, .share = 0.15 },
                             { .kind = GW_PATH_SPRING, .joint = -1, .share = 0.3 } };
    const gw_ride_item item = { .result = { .n_paths = 5, .paths = path } }, *items[] = { &item };
    gw_ride_place place[5];
    assert_int_equal(gw_ride_places(&pair, &item.result, place), 3);
    assert_int_equal(place[0].path, 0);
    assert_int_equal(place[0].image, 1);
    assert_int_equal(place[1].image, -1);
    assert_int_equal(place[2].image, 4);
    check_abs(gw_ride_place_share(&item.result, place[0]), 0.3, 1e-15, "share of harshness");
    check_abs(gw_ride_place_share(&item.result, place[1]), 0.25, 1e-15, "share of harshness");
    assert_int_equal(gw_ride_largest_places(items, 1, 2, place, 3), 2);
    assert_int_equal(place[0].path, 3);
    assert_int_equal(place[1].path, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_largest_come_first_with_their_part_of_all),
        cmocka_unit_test(both_sides_are_one_place),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
