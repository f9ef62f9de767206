/* SPDX-License-Identifier: MIT */
/* Laws that hold for any passive linear corner: power, reciprocity, and motions that must not matter. */
#include "ride/corners.h"
#include "ride/model.h"
#include "support/check.h"

#include <gsl/gsl_errno.h>
#include <math.h>

enum { MAX_DOFS = 80 };

static void open_model(test_corner *t, gw_ride_model *model, gw_arena *arena)
{
    gw_error err = { 0 };
    if (gw_ride_model_open(model, &t->corner, t->fit, &t->ride, arena, &err) != GW_OK)
        fail_msg("%s", err.msg);
    assert_true(model->n <= MAX_DOFS);
}

/*
 * From 0.3 Hz on; the figures begin at 0.5 Hz. Further down the wheel follows the road to more digits than a
 * double holds, and the tyre's push, a difference of the two, has no nine digits left.
 */
static void check_power(test_corner *t)
{
    gw_arena arena = { 0 };
    gw_ride_model model;
    open_model(t, &model, &arena);
    for (double hz = 0.3; hz < 400; hz *= 1.01) {
        double in = 0, lost = 0;
        assert_int_equal(gw_ride_power(&model, hz, &in, &lost, NULL), GW_OK);
        check_rel(lost, in, 1e-9, "power lost, against power put in by the road");
        assert_true(in > 0);
    }
    gw_arena_free(&arena);
}

static void give_zener_laws(test_corner *t)
{
    for (int j = 0; j < t->corner.n_joints; j++) {
        gw_dynamic_law *law = &t->fit[j].law.dynamic;
        *law = (gw_dynamic_law){ .ratio = 1.0, .zener_gain = 0.8, .zener_tau = 2e-4, .zener_alpha = 0.5 };
    }
}

static void power_of_the_road_is_lost_in_bushes_damper_and_tyre(void **state)
{
    (void)state;
    test_corner t;
    double_wishbone(&t, rubber_rates());
    check_power(&t);
    t.corner.damper.top_mount = 0.0;
    check_power(&t);
    test_rates nearly_lossless = { 20e6, 40e6, 0.003 };
    double_wishbone(&t, nearly_lossless);
    t.corner.wheel.tyre_slip_stiffness = 0.0;
    t.ride.bracket_loss = 0.003;
    check_power(&t);
}

static void power_balances_with_laws_that_depend_on_frequency(void **state)
{
    (void)state;
    test_corner t;
    double_wishbone(&t, rubber_rates());
    give_zener_laws(&t);
    check_power(&t);
}

/* Movement of point i in direction a per force at point k in direction b, in lane 0. */
static double complex transfer(gw_ride_model *model, double hz, const gw_ride_element *push,
                               const gw_ride_element *look)
{
    gw_lanes x[MAX_DOFS], p;
    for (int r = 0; r < model->n; r++) gw_lanes_fill(&x[r], 0.0);
    for (int i = 0; i < push->n; i++) gw_lanes_fill(&x[push->dof[i]], push->row[i]);
    gw_lanes_fill(&p, gw_complex(0, 2 * GW_PI * hz));
    gw_ride_factorise(model, &p, 1.0);
    gw_ride_backsolve(model, 0, x);
    gw_lanes moved = gw_element_deflection(look, x);
    return gw_lanes_get(&moved, 0);
}

/* Maxwell and Betti: push here and look there, or push there and look here. */
static void push_and_look_can_be_exchanged(void **state)
{
    (void)state;
    test_corner t;
    gw_arena arena = { 0 };
    gw_ride_model model;
    double_wishbone(&t, rubber_rates());
    open_model(&t, &model, &arena);
    gw_ride_element at[3] = { { 0 }, { 0 }, { 0 } };
    gw_element_add_point(&at[0], &model.bodies[GW_UPRIGHT], gw_v3(0.1, 0.8, 0.05), gw_v3(0.6, 0, 0.8), 1);
    gw_element_add_point(&at[1], &model.bodies[GW_CHASSIS], gw_v3(0, 0, 0), gw_v3(0.6, 0.5, 0.8), 1);
    gw_element_add_point(&at[2], &model.bodies[2], gw_v3(-0.1, 0.5, 0.2), gw_v3(0, 1, 0), 1);
    for (double hz = 0.7; hz < 350; hz *= 1.4) {
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < i; k++) {
                double complex there = transfer(&model, hz, &at[i], &at[k]);
                double complex back = transfer(&model, hz, &at[k], &at[i]);
                check_abs(cabs(there - back) / cabs(there), 0.0, 1e-9, "reciprocity");
            }
        }
    }
    gw_arena_free(&arena);
}

/* D x = b is what was asked: multiply back with D assembled afresh. */
static void the_solution_satisfies_the_equations(void **state)
{
    (void)state;
    test_corner t;
    gw_arena arena = { 0 };
    gw_ride_model model;
    double_wishbone(&t, rubber_rates());
    open_model(&t, &model, &arena);
    for (double at = 0.5; at < 350; at *= 1.5) {
        double hz[GW_LANES];
        gw_lanes x[MAX_DOFS], p;
        for (int l = 0; l < GW_LANES; l++) hz[l] = at * (1 + 0.01 * l);
        gw_ride_respond_hz(&model, hz, x);
        for (int l = 0; l < GW_LANES; l++) gw_lanes_put(&p, l, gw_complex(0, 2 * GW_PI * hz[l]));
        gw_ride_assemble(&model, &p, 1.0);
        for (int r = 0; r < model.n; r++) {
            double complex sum = 0, size = 0;
            for (int c = 0; c < model.n; c++) {
                int high = r > c ? r : c, low = r > c ? c : r;
                if (low < model.start[high]) continue;
                double complex d = gw_lanes_get(&model.factor[model.base[high] + low], 5);
                sum += d * gw_lanes_get(&x[c], 5);
                size += cabs(d) * cabs(gw_lanes_get(&x[c], 5));
            }
            double complex pushed = 0;
            if (r == model.wheel) pushed = -3900.0 * gw_lanes_get(&p, 5) / t.ride.speed;
            if (r == model.wheel + 2) pushed = 230e3 + 100 * gw_lanes_get(&p, 5);
            check_abs(cabs(sum - pushed), 0.0, 1e-11 * cabs(size) + 1e-9, "residual");
        }
    }
    gw_arena_free(&arena);
}

static void solve(test_corner *t, gw_ride_result *r)
{
    gw_error err = { 0 };
    if (gw_ride_solve(&t->corner, t->fit, &t->ride, NULL, r, &err) != GW_OK) fail_msg("%s", err.msg);
}

/* The tie rod spins about itself on two ball joints; a little torsional rate in one must change nothing. */
static void free_spin_of_a_link_does_not_matter(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result free_spin = { 0 }, held = { 0 };
    gw_vec3 axis;
    double_wishbone(&t, rubber_rates());
    gw_ride_model model = { .corner = &t.corner, .fit = t.fit };
    assert_true(gw_ride_free_spin(&model, 4, &axis));
    assert_false(gw_ride_free_spin(&model, 2, &axis));
    solve(&t, &free_spin);
    /* About the rod's line only: turn the outer joint's frame so that its axis is that line. */
    gw_vec3 line = gw_sub(t.joints[ROD_OUTER].at, t.joints[ROD_INNER].at);
    t.joints[ROD_OUTER].frame = test_frame(line, gw_v3(0, 0, 1));
    t.fit[ROD_OUTER].law.c[2] = 50.0;
    assert_false(gw_ride_free_spin(&model, 4, &axis));
    solve(&t, &held);
    check_rel(held.harshness[0], free_spin.harshness[0], 1e-9, "harshness");
    check_rel(held.comfort, free_spin.comfort, 1e-9, "comfort");
    gw_ride_result_free(&free_spin);
    gw_ride_result_free(&held);
}

/* A rod in two halves, joined stiffly on its line, spins as one; neither half is free by itself. */
static void free_spin_of_two_members_together_is_held(void **state)
{
    (void)state;
    test_corner t;
    gw_ride_result one = { 0 }, two = { 0 };
    double_wishbone(&t, rubber_rates());
    t.bodies[4].mass = 0.0;
    solve(&t, &one);
    int outer = add_member(&t, "outer_half", 0.0);
    gw_vec3 a = t.joints[ROD_INNER].at, b = t.joints[ROD_OUTER].at;
    gw_vec3 middle = gw_scale(0.5, gw_add(a, b));
    gw_bush_law stiff = test_law(1e12, 1e12, 1e12, 1e11, 1e11, 0.0);
    add_test_joint(&t, "sleeve", 4, outer, middle, gw_sub(b, a), stiff);
    t.joints[ROD_OUTER].body_a = outer;
    solve(&t, &two);
    check_rel(two.harshness[0], one.harshness[0], 2e-4, "harshness");
    check_rel(two.comfort, one.comfort, 2e-4, "comfort");
    gw_ride_result_free(&one);
    gw_ride_result_free(&two);
}

/* A seat a little off the line of a link on ball joints: the link's roll-over is held, the spring still
 * carries. */
static void spring_seat_off_the_joint_line_still_carries(void **state)
{
    (void)state;
    double comfort[2];
    for (int i = 0; i < 2; i++) {
        test_corner t;
        gw_ride_result r = { 0 };
        double_wishbone(&t, rubber_rates());
        int link = add_member(&t, "link", 1.5);
        gw_vec3 inner = gw_v3(-0.1, 0.36, 0.2), outer = gw_v3(-0.1, 0.72, 0.2);
        add_test_joint(&t, "link_inner", GW_CHASSIS, link, inner, gw_v3(0, 1, 0), test_ball());
        add_test_joint(&t, "link_outer", link, GW_UPRIGHT, outer, gw_v3(0, 0, 1), test_ball());
        gw_vec3 seat = gw_v3(-0.1 + 0.004 * i, 0.6, 0.2);
        t.corner.spring = (gw_spring){ link, seat, gw_add(seat, gw_v3(0, 0, 0.4)), 60e3 };
        solve(&t, &r);
        comfort[i] = r.comfort;
        gw_ride_result_free(&r);
    }
    check_rel(comfort[1], comfort[0], 5e-3, "comfort with the seat 4 mm off the line");
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(power_of_the_road_is_lost_in_bushes_damper_and_tyre),
        cmocka_unit_test(power_balances_with_laws_that_depend_on_frequency),
        cmocka_unit_test(push_and_look_can_be_exchanged),
        cmocka_unit_test(the_solution_satisfies_the_equations),
        cmocka_unit_test(free_spin_of_a_link_does_not_matter),
        cmocka_unit_test(free_spin_of_two_members_together_is_held),
        cmocka_unit_test(spring_seat_off_the_joint_line_still_carries),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
