/* SPDX-License-Identifier: MIT */
/* What an axle is put together from, whatever it is told to have: each joint has its point and its bodies. */
#include "start/car.h"
#include "support/check.h"

#include <string.h>

/* Every rack, subframe and bar that a layout can have, one after the other; false after the last. */
static bool next(int *at, gw_start_corner *c)
{
    int i = (*at)++;
    const gw_start_layout *l = &GW_START_LAYOUTS[i / 18 % GW_START_N_LAYOUTS];
    const gw_start_rack rack = (gw_start_rack)(GW_START_AHEAD + i % 3);
    *c = (gw_start_corner){ .layout = l,
                            .rack = l->axle == GW_REAR ? GW_START_NONE : rack,
                            .subframe = i / 3 % 2 && !l->frameless,
                            .bar = i / 6 % 3 && l->bar ? 20 : 0 };
    gw_start_fit(c);
    return i < 18 * GW_START_N_LAYOUTS;
}

static bool is_body(const gw_start_parts *p, const char *name)
{
    const char *own = strchr(name, '.') ? strchr(name, '.') + 1 : name; /* "left.bar" */
    if (strcmp(name, "chassis") == 0 || strcmp(name, "upright") == 0) return true;
    for (int i = 0; i < p->n_members; i++)
        if (strcmp(p->member[i].name, own) == 0) return true;
    return false;
}

static int named(const gw_start_parts *p, const char *name)
{
    int n = 0;
    for (int i = 0; i < p->n_points; i++) n += strcmp(p->point[i].name, name) == 0;
    return n;
}

static void each_joint_stands_at_a_point_of_its_name_on_the_same_side(void **state)
{
    (void)state;
    gw_start_corner c;
    for (int at = 0; next(&at, &c);)
        for (int j = 0; j < c.parts.n_joints; j++) {
            const int p = gw_start_point_named(&c.parts, c.parts.joint[j].name);
            assert_in_range(p, 0, c.parts.n_points - 1);
            assert_int_equal(c.parts.point[p].side, c.parts.joint[j].of);
        }
}

static void each_joint_is_between_two_bodies_that_there_are(void **state)
{
    (void)state;
    gw_start_corner c;
    for (int at = 0; next(&at, &c);)
        for (int j = 0; j < c.parts.n_joints; j++) {
            const gw_start_joint *joint = &c.parts.joint[j];
            assert_true(is_body(&c.parts, joint->body_a));
            assert_true(is_body(&c.parts, joint->body_b));
            assert_string_not_equal(joint->body_a, joint->body_b);
        }
}

static void no_point_stands_twice_and_springs_have_theirs(void **state)
{
    (void)state;
    gw_start_corner c;
    for (int at = 0; next(&at, &c);) {
        assert_in_range(c.parts.n_points, 4, GW_START_POINTS);
        assert_in_range(c.parts.n_joints, 2, GW_START_JOINTS);
        assert_in_range(c.parts.n_members, 0, GW_START_MEMBERS);
        for (int i = 0; i < c.parts.n_points; i++)
            assert_int_equal(named(&c.parts, c.parts.point[i].name), 1);
        assert_int_equal(named(&c.parts, "spring_seat") + named(&c.parts, "spring_top"), 2);
        assert_true(is_body(&c.parts, c.layout->spring_on));
        assert_true(!c.layout->adjustable || is_body(&c.parts, c.layout->adjustable));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_joint_stands_at_a_point_of_its_name_on_the_same_side),
        cmocka_unit_test(each_joint_is_between_two_bodies_that_there_are),
        cmocka_unit_test(no_point_stands_twice_and_springs_have_theirs),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
