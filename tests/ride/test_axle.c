/* SPDX-License-Identifier: MIT */
/* Both wheels of an axle on one road: against the corner alone, against all coordinates, against hand
 * formulas. */
#include "giveway/pair.h"
#include "ride/corners.h"
#include "support/check.h"

#include <math.h>

enum { MOST = 2 * MAX_TEST_JOINTS + 8 };

typedef struct test_axle {
    test_corner left;
    gw_corner pair;
    gw_fit fit[MOST];
    gw_arena arena;
} test_axle;

/* The corner and its image, with the axle's own joints; fits of both sides are those of the left. */
static void make_axle(test_axle *t, const gw_axle_joint *more, const gw_bush_law *law, int n_more)
{
    gw_error err = { 0 };
    if (!t->left.corner.first_shared) t->left.corner.first_shared = t->left.corner.n_bodies;
    t->left.corner.shared = true;
    if (gw_corner_pair(&t->left.corner, more, n_more, &t->arena, &t->pair, &err) != GW_OK)
        fail_msg("%s", err.msg);
    int n = t->left.corner.n_joints, at = 2 * n;
    for (int j = 0; j < 2 * n; j++) t->fit[j].law = t->left.fit[j % n].law;
    for (int i = 0; i < n_more; i++)
        for (int k = 0; k < (more[i].doubled ? 2 : 1); k++) t->fit[at++].law = law[i];
    for (int j = 0; j < t->pair.n_joints; j++) t->fit[j].point_a = t->fit[j].point_b = t->pair.joints[j].at;
}

static void solve(const gw_corner *corner, const gw_fit *fit, const gw_ride *ride, gw_ride_result *out)
{
    gw_error err = { 0 };
    if (gw_ride_solve(corner, fit, ride, NULL, out, &err) != GW_OK) fail_msg("%s", err.msg);
}

static gw_axle_joint joint_between(int a, int b, gw_vec3 at, gw_vec3 axis)
{
    gw_axle_joint j = { .joint = {
                            .name = "more", .body_a = a, .body_b = b, .at = at, .bush = -1, .housing = -1 } };
    j.joint.frame = test_frame(axis, fabs(axis.z) > 0.9 ? gw_v3(1, 0, 0) : gw_v3(0, 0, 1));
    return j;
}

static void check_same(const gw_ride_result *a, const gw_ride_result *b, double allowed)
{
    check_rel(a->comfort, b->comfort, allowed, "comfort");
    for (int i = 0; i < GW_RIDE_STATES; i++) {
        check_rel(a->harshness[i], b->harshness[i], allowed, "harshness");
        check_rel(a->noise[i], b->noise[i], allowed, "road noise");
    }
    check_rel(a->chassis_mass, b->chassis_mass, 1e-12, "mass on one wheel");
    check_rel(a->modes[a->body].hz, b->modes[b->body].hz, allowed, "body");
    check_rel(a->modes[a->wheel_vertical].hz, b->modes[b->wheel_vertical].hz, allowed, "wheel, vertical");
    check_rel(a->modes[a->wheel_fore_aft].hz, b->modes[b->wheel_fore_aft].hz, allowed, "wheel, fore and aft");
    check_rel(a->modes[a->wheel_fore_aft].wheel_fore_aft, b->modes[b->wheel_fore_aft].wheel_fore_aft, 1e-5,
              "its share");
}

/* Two wheels that share nothing that matters are two corners, and their figures those of one. */
static void an_axle_that_shares_nothing_is_its_corner(void **state)
{
    (void)state;
    static test_axle t;
    gw_ride_result one = { 0 }, both = { 0 };
    memset(&t, 0, sizeof t);
    double_wishbone(&t.left, rubber_rates());
    gw_axle_joint bar = joint_between(GW_UPRIGHT, 0, gw_v3(0, 0, 0.3), gw_v3(0, 1, 0));
    bar.joint.body_b = gw_body_in_mirror(&(gw_corner){ .first_shared = 5, .n_bodies = 5 }, GW_UPRIGHT);
    gw_bush_law none = test_law(1e-6, 1e-6, 1e-6, 0, 0, 0.0);
    make_axle(&t, &bar, &none, 1);
    solve(&t.left.corner, t.left.fit, &t.left.ride, &one);
    solve(&t.pair, t.fit, &t.left.ride, &both);
    check_same(&both, &one, 1e-8);
    assert_int_equal(both.n_modes, one.n_modes);
    assert_int_equal(both.n_paths, 2 * one.n_paths);
    check_rel(both.paths[0].force, one.paths[0].force, 1e-8, "force at one attachment");
    check_rel(both.paths[0].share, 0.5 * one.paths[0].share, 1e-8, "its share of both sides'");
    check_rel(both.curve.force[100], one.curve.force[100], 1e-8, "body force");
    check_rel(both.curve.path[100], one.curve.path[100], 1e-8, "force of an attachment");
    gw_ride_result_free(&one);
    gw_ride_result_free(&both);
}

static void put_subframe(test_axle *t, gw_axle_joint more[3], gw_bush_law law[3])
{
    test_corner *c = &t->left;
    int subframe = add_member(c, "subframe", 18.0);
    c->corner.first_shared = subframe;
    c->joints[LOWER_FRONT].body_a = c->joints[LOWER_REAR].body_a = subframe;
    more[0] = joint_between(GW_CHASSIS, subframe, gw_v3(0.2, 0.4, 0.25), gw_v3(0, 0, 1));
    more[1] = joint_between(GW_CHASSIS, subframe, gw_v3(-0.35, 0.42, 0.26), gw_v3(0, 0, 1));
    more[2] = joint_between(subframe, GW_CHASSIS, gw_v3(-0.1, 0, 0.3), gw_v3(1, 0, 0));
    more[0].doubled = more[1].doubled = true;
    law[0] = law[1] = test_law(2.2e6, 1.8e6, 0.9e6, 20, 40, 0.1);
    law[2] = test_law(0.3e6, 0.2e6, 0.4e6, 3, 4, 0.1);
}

/* The mirror image's coordinates are all that the axle needs: the same with every coordinate of both sides.
 */
static void half_the_coordinates_say_what_all_of_them_say(void **state)
{
    (void)state;
    static test_axle t, all;
    gw_axle_joint more[4];
    gw_bush_law law[4];
    gw_ride_result few = { 0 }, many = { 0 };
    memset(&t, 0, sizeof t);
    memset(&all, 0, sizeof all);
    double_wishbone(&t.left, rubber_rates());
    put_subframe(&t, more, law);
    all.left = t.left;
    all.left.corner.bodies = all.left.bodies;
    all.left.corner.joints = all.left.joints;
    make_axle(&t, more, law, 3);
    more[3] = joint_between(GW_CHASSIS, GW_UPRIGHT, gw_v3(0, 0.7, 0.4), gw_v3(1, 0, 0)); /* does nothing */
    more[3].alone = true;
    law[3] = test_law(1e-7, 1e-7, 1e-7, 0, 0, 0.0);
    make_axle(&all, more, law, 4);
    assert_true(all.pair.lopsided && !t.pair.lopsided);
    solve(&t.pair, t.fit, &t.left.ride, &few);
    solve(&all.pair, all.fit, &t.left.ride, &many);
    check_same(&few, &many, 1e-6); /* integrals are good to 1e-5: other poles, other panels */
    assert_true(many.n_modes > few.n_modes + 6);
    gw_ride_result_free(&few);
    gw_ride_result_free(&many);
}

/* A wheel guided up and down on a subframe that two soft bushes hold fore and aft: sqrt(2 k / m). */
static void a_subframe_has_its_own_mode_and_its_name(void **state)
{
    (void)state;
    static test_axle t;
    gw_ride_result r = { 0 };
    double k = 1.5e6, mass = 30.0, wheel = 40.0;
    memset(&t, 0, sizeof t);
    quarter_car(&t.left, 3000, wheel, 20000, 1500, 200000);
    int subframe = add_member(&t.left, "subframe", mass);
    t.left.corner.first_shared = subframe;
    t.left.joints[0].body_a = subframe;
    gw_axle_joint mount = joint_between(GW_CHASSIS, subframe, gw_v3(0, 0.5, 0.3), gw_v3(0, 0, 1));
    mount.doubled = true;
    gw_bush_law law = test_law(k, 1e11, 1e11, 1e11, 1e11, 0.1);
    make_axle(&t, &mount, &law, 1);
    solve(&t.pair, t.fit, &t.left.ride, &r);
    /* fore and aft subframe and both wheels go together against the chassis, which is what the load leaves */
    double moving = mass + 2 * wheel, chassis = 2 * 3000 - mass;
    double hz = sqrt(2 * k * (moving + chassis) / (moving * chassis)) / (2 * GW_PI);
    check_rel(r.modes[r.wheel_fore_aft].hz, hz, 1e-4, "subframe and wheels on two bushes");
    check_rel(r.modes[r.wheel_fore_aft].wheel_fore_aft, chassis / (chassis + moving) * 2 * wheel / moving,
              1e-3, "the wheels' share");
    bool named = false;
    for (int i = 0; i < r.n_warnings; i++)
        named =
            named || strncmp(r.warnings[i], "the subframe that both wheels share moves most at ", 50) == 0;
    assert_true(named);
    gw_ride_result_free(&r);
}

/* Another bush on one side: the axle is no mirror image, and the wheel's modes are those of the mean. */
static void another_bush_on_one_side_needs_all_coordinates(void **state)
{
    (void)state;
    static test_axle t;
    gw_axle_joint more[3];
    gw_bush_law law[3];
    gw_ride_result alike = { 0 }, other = { 0 };
    memset(&t, 0, sizeof t);
    double_wishbone(&t.left, rubber_rates());
    put_subframe(&t, more, law);
    make_axle(&t, more, law, 3);
    solve(&t.pair, t.fit, &t.left.ride, &alike);
    t.fit[LOWER_REAR].law.k[0] *= 4.0;
    solve(&t.pair, t.fit, &t.left.ride, &other);
    assert_true(other.n_modes > alike.n_modes + 6);
    double was = alike.modes[alike.wheel_fore_aft].hz, is = other.modes[other.wheel_fore_aft].hz;
    assert_true(is > 0.9 * was && is < 2.0 * was && fabs(is - was) > 0.01);
    assert_true(other.modes[other.wheel_fore_aft].hz < GW_NOISE_HIGH);
    gw_ride_result_free(&alike);
    gw_ride_result_free(&other);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_axle_that_shares_nothing_is_its_corner),
        cmocka_unit_test(half_the_coordinates_say_what_all_of_them_say),
        cmocka_unit_test(a_subframe_has_its_own_mode_and_its_name),
        cmocka_unit_test(another_bush_on_one_side_needs_all_coordinates),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
