/* SPDX-License-Identifier: MIT */
/* Places from distances, against Pythagoras and against weights of variances by hand. */
#include "start/distances.h"
#include "support/check.h"

#include <math.h>

/* A car in front of which are four points at corners of boxes, each read within `within` but the last, which
 * is assumed. */
static gw_start_car boxes(double within)
{
    static const double AT[4][3] = { { 0, 0, 0 }, { 30, 0, 0 }, { 0, 40, 0 }, { 1, 2, 11 } };
    gw_start_wish wish = { .layout = { gw_start_find("strut", GW_FRONT), gw_start_find("strut", GW_REAR) } };
    gw_start_car car;
    gw_start_make(&wish, &car);
    for (int p = 0; p < 4; p++)
        for (int i = 0; i < 3; i++)
            car.corner[GW_FRONT].place[p][i] =
                (gw_start_figure){ AT[p][i], p < 3 ? within : GW_START_POINT_BAND, p < 3 };
    return car;
}

static gw_start_distance to_last(int point, double v, double within)
{
    return (gw_start_distance){ { GW_FRONT, GW_FRONT }, { point, 3 }, v, within, 2 };
}

static void spheres_about_three_known_points_meet_in_the_fourth(void **state)
{
    (void)state;
    gw_start_car car = boxes(1e-3);
    gw_faults faults = { 0 };
    /* at (0, 0, 12): 12 from the first, and by Pythagoras from the others */
    const gw_start_distance d[] = { to_last(0, 12, 1e-3), to_last(1, sqrt(30 * 30 + 12 * 12), 1e-3),
                                    to_last(2, sqrt(40 * 40 + 12 * 12), 1e-3) };
    assert_int_equal(gw_start_place_points(&car, d, 3, "sheet.csv", &faults), GW_OK);
    const double want[3] = { 0, 0, 12 };
    for (int i = 0; i < 3; i++) {
        check_abs(car.corner[GW_FRONT].place[3][i].v, want[i], 2e-3, "mm");
        assert_true(car.corner[GW_FRONT].place[3][i].read);
    }
    assert_int_equal(gw_faults_count(&faults), 0);
    gw_faults_free(&faults);
}

static void what_all_else_contradicts_is_warned_of(void **state)
{
    (void)state;
    gw_start_car car = boxes(1);
    gw_faults faults = { 0 };
    const gw_start_distance d[] = { { { GW_FRONT, GW_FRONT }, { 0, 1 }, 37, 1, 7 } }; /* 30 by both places */
    assert_int_equal(gw_start_place_points(&car, d, 1, "sheet.csv", &faults), GW_OK);
    /* Apart by 7 mm; 1 mm each holds 95 %: sd 0.5 of either end along the line, and of the tape: 7/sqrt(3 x
     * 0.25). */
    assert_int_equal(gw_faults_warnings(&faults), 1);
    assert_string_equal(
        gw_faults_warning(&faults, 0),
        "sheet.csv: line 7, value: the distance from lower_arm_front to lower_arm_rear was read as "
        "37.0 mm, by all else it is 30.0 mm: 8.1 standard deviations apart; measure it again");
    /* It is shared alike: 7/3 of it at either end. */
    check_abs(car.corner[GW_FRONT].place[0][0].v, -7.0 / 3, 1e-5, "mm");
    check_abs(car.corner[GW_FRONT].place[1][0].v, 30 + 7.0 / 3, 1e-5, "mm");
    gw_faults_free(&faults);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(spheres_about_three_known_points_meet_in_the_fourth),
        cmocka_unit_test(what_all_else_contradicts_is_warned_of),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
