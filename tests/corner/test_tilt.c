/* SPDX-License-Identifier: MIT */
/* Tilt of joints: known angles, and what a link's free spin must not change. */
#include "support/check.h"
#include "support/corner_fixture.h"

#include "giveway/corner_travel.h"
#include "giveway/units.h"

#include <gsl/gsl_errno.h>

static const double TEN_DEG = 10.0 * GW_DEG;

typedef struct opened {
    gw_corner_ws *ws;
    gw_state state;
    double limit[FIXTURE_JOINTS], tilt[FIXTURE_JOINTS];
} opened;

static void open_at(fixture *f, double travel, opened *o)
{
    gw_error err = { 0 };
    gw_corner_result result = { .joints = f->results };
    gw_travel_rates rates;
    const gw_corner_load none = { 0 };
    *o = (opened){ 0 };
    for (int j = 0; j < FIXTURE_JOINTS; j++) o->limit[j] = TEN_DEG;
    if (gw_corner_open(&f->corner, f->fit, &o->ws, &err) != GW_OK) fail_msg("%s", err.msg);
    assert_int_equal(gw_state_alloc(&f->corner, &o->state, &err), GW_OK);
    if (gw_corner_travel_at(o->ws, &none, travel, &o->state, &result, &rates, &err) != GW_OK)
        fail_msg("%s", err.msg);
}

static void close_it(opened *o)
{
    gw_state_free(&o->state);
    gw_corner_close(o->ws);
}

/* Turn a member about a line through a point that stays where it is. */
static void spin(gw_state *state, int body, gw_vec3 from, gw_vec3 to, gw_vec3 datum, double angle)
{
    gw_pose *pose = &state->pose[body];
    gw_vec3 fixed = gw_sub(from, datum), line = gw_mul(&pose->r, gw_sub(to, from));
    gw_vec3 now = gw_add(gw_mul(&pose->r, fixed), pose->p);
    gw_mat3 turn = gw_rot_exp(gw_scale(angle / gw_norm(line), line));
    pose->r = gw_matmul(&turn, &pose->r);
    pose->p = gw_sub(now, gw_mul(&pose->r, fixed));
}

static void a_trailing_arm_tilts_an_axis_that_lies_across_its_pivot(void **unused)
{
    (void)unused;
    fixture f;
    opened o;
    const double length = 0.437;
    fixture_start(&f);
    f.corner.wheel.static_load = 0.01;
    const gw_vec3 axes[3] = { { 0, 1, 0 }, { 0, 0, 1 }, { 1, 1, 0 } };
    for (int i = 0; i < 3; i++)
        fixture_joint(&f, "pivot", GW_CHASSIS, GW_UPRIGHT, gw_v3(437, 420 + 130 * i, 310), axes[i], 30000,
                      30000, 0, 0);
    fixture_spring(&f, GW_UPRIGHT, gw_v3(30, 600, 300), gw_v3(30, 600, 700), 1e-3);
    open_at(&f, 0.061, &o);
    gw_corner_tilt(o.ws, &o.state, o.limit, o.tilt);
    double turn = asin(0.061 / length);
    check_abs(o.tilt[0], 0.0, 2e-8, "along the pivot");
    check_abs(o.tilt[1], turn, 2e-8, "across the pivot");
    /* An axis at 45 degrees to the pivot: cos tilt = 1/2 + 1/2 cos turn. */
    check_abs(o.tilt[2], acos(0.5 + 0.5 * cos(turn)), 2e-8, "half across the pivot");
    close_it(&o);
}

/* Joints of the double wishbone: the tie rod is the free link; its ball joints stand upright. */
enum { ROD_INNER = 7, ROD_OUTER = 8 };
static const gw_vec3 ROD_IN = { 0.12, 0.36, 0.25 }, ROD_OUT = { 0.13, 0.69, 0.24 };

static int member_of(const fixture *f, int joint)
{
    return f->corner.joints[joint].body_a > GW_UPRIGHT ? f->corner.joints[joint].body_a
                                                       : f->corner.joints[joint].body_b;
}

static void a_free_spin_does_not_change_the_tilt(void **unused)
{
    (void)unused;
    fixture f;
    opened o;
    double before[FIXTURE_JOINTS];
    fixture_double_wishbone(&f);
    open_at(&f, 0.05, &o);
    o.limit[ROD_OUTER] = 0.7 * TEN_DEG;
    gw_corner_tilt(o.ws, &o.state, o.limit, before);
    int rod = f.corner.joints[ROD_OUTER].body_a;
    for (int i = 1; i < 6; i++) {
        spin(&o.state, rod, ROD_IN, ROD_OUT, f.corner.wheel.centre, 37.0 * GW_DEG);
        gw_corner_tilt(o.ws, &o.state, o.limit, o.tilt);
        for (int j = 0; j < f.corner.n_joints; j++) check_abs(o.tilt[j], before[j], 1e-9, f.joints[j].name);
    }
    close_it(&o);
}

static double larger_share(const opened *o, const double *tilt)
{
    return fmax(tilt[ROD_INNER] / o->limit[ROD_INNER], tilt[ROD_OUTER] / o->limit[ROD_OUTER]);
}

/* Axes of one joint in both its bodies, straight from the poses. */
static double angle_now(const fixture *f, const gw_state *state, int joint)
{
    const gw_joint *j = &f->corner.joints[joint];
    gw_vec3 e3 = gw_col(&j->frame, 2);
    gw_vec3 a = gw_mul(&state->pose[j->body_a].r, e3), b = gw_mul(&state->pose[j->body_b].r, e3);
    return atan2(gw_norm(gw_cross(a, b)), gw_dot(a, b));
}

static void no_spin_leaves_more_margin_than_the_one_chosen(void **unused)
{
    (void)unused;
    const double limits[3] = { 0.3, 1.0, 3.0 };
    for (int i = 0; i < 3; i++) {
        fixture f;
        opened o;
        double best = HUGE_VAL;
        fixture_double_wishbone(&f);
        open_at(&f, -0.055, &o);
        o.limit[ROD_INNER] = limits[i] * TEN_DEG;
        gw_corner_tilt(o.ws, &o.state, o.limit, o.tilt);
        int rod = f.corner.joints[ROD_OUTER].body_a;
        for (int k = 0; k < 3600; k++) {
            double tilt[FIXTURE_JOINTS] = { 0 };
            spin(&o.state, rod, ROD_IN, ROD_OUT, f.corner.wheel.centre, 0.1 * GW_DEG);
            tilt[ROD_INNER] = angle_now(&f, &o.state, ROD_INNER);
            tilt[ROD_OUTER] = angle_now(&f, &o.state, ROD_OUTER);
            best = fmin(best, larger_share(&o, tilt));
        }
        assert_true(larger_share(&o, o.tilt) <= best + 1e-9);
        check_abs(larger_share(&o, o.tilt), best, 0.1 * GW_DEG / (0.3 * TEN_DEG), "smallest larger share");
        close_it(&o);
    }
}

static void an_end_without_limit_leaves_the_spin_to_the_other(void **unused)
{
    (void)unused;
    fixture f;
    opened o;
    fixture_double_wishbone(&f);
    open_at(&f, 0.05, &o);
    o.limit[ROD_INNER] = 0.0;
    gw_corner_tilt(o.ws, &o.state, o.limit, o.tilt);
    double alone = o.tilt[ROD_OUTER];
    o.limit[ROD_INNER] = TEN_DEG;
    gw_corner_tilt(o.ws, &o.state, o.limit, o.tilt);
    assert_true(alone <= o.tilt[ROD_OUTER] + 1e-12);
    close_it(&o);
}

static void a_link_held_by_a_spring_off_its_line_keeps_its_spin(void **unused)
{
    (void)unused;
    fixture f;
    opened o;
    fixture_double_wishbone(&f);
    /* Both ends of the lateral link free; its spring seat 30 mm above the line. */
    f.fit[3].law = f.fit[4].law;
    f.corner.spring.at.z += 0.03;
    open_at(&f, 0.04, &o);
    gw_corner_tilt(o.ws, &o.state, o.limit, o.tilt);
    check_abs(o.tilt[3], angle_now(&f, &o.state, 3), 1e-12, "inner end as solved");
    check_abs(o.tilt[4], angle_now(&f, &o.state, 4), 1e-12, "outer end as solved");
    assert_int_equal(member_of(&f, 3), f.corner.spring.body);
    close_it(&o);
}

static void an_axis_along_the_link_does_not_feel_the_spin(void **unused)
{
    (void)unused;
    fixture f;
    opened o;
    fixture_double_wishbone(&f);
    gw_vec3 line = gw_sub(ROD_OUT, ROD_IN);
    f.joints[ROD_INNER].frame = fixture_frame(line);
    open_at(&f, 0.05, &o);
    gw_corner_tilt(o.ws, &o.state, o.limit, o.tilt);
    check_abs(o.tilt[ROD_INNER], angle_now(&f, &o.state, ROD_INNER), 1e-9, "swing of the rod");
    close_it(&o);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_trailing_arm_tilts_an_axis_that_lies_across_its_pivot),
        cmocka_unit_test(a_free_spin_does_not_change_the_tilt),
        cmocka_unit_test(no_spin_leaves_more_margin_than_the_one_chosen),
        cmocka_unit_test(an_end_without_limit_leaves_the_spin_to_the_other),
        cmocka_unit_test(a_link_held_by_a_spring_off_its_line_keeps_its_spin),
        cmocka_unit_test(an_axis_along_the_link_does_not_feel_the_spin),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
