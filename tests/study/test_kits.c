/* SPDX-License-Identifier: MIT */
/* Kits fitted to corners, and studies of the demonstration car held against single solutions. */
#include "support/case_sample.h"
#include "support/check.h"

#include "base/parallel.h"
#include "giveway/casefile.h"
#include "giveway/pick.h"
#include "giveway/sweep.h"
#include "giveway/units.h"
#include "study/run.h"

#include <gsl/gsl_errno.h>

static void load_case(gw_case *c)
{
    sample_load("tests/cases/saloon-by-rule.json", c);
}

/* 3 mm at 30 degrees from e1 towards e2, in the body that the bush is pressed into and in no other. */
static void an_off_centre_bore_moves_the_point_of_its_housing(void **unused)
{
    (void)unused;
    gw_case c;
    gw_laws laws;
    gw_fit fit[GW_MAX_JOINTS];
    gw_error err = { 0 };
    load_case(&c);
    const gw_joint *joint = &c.corners[GW_FRONT].joints[0];
    gw_bush *bush = &c.bushes[c.kits[0].fits[GW_FRONT][0]];
    assert_true(joint->housing >= 0);
    assert_false(gw_kit_is_off_centre(&c, 0, GW_FRONT));
    bush->offset = 3.0 * GW_MM;
    bush->offset_clock = 30.0 * GW_DEG;
    assert_int_equal(gw_laws_make(&c, GW_METHOD_SOLVED, &laws, &err), GW_OK);
    gw_fit_kit(&c, &laws, 0, GW_FRONT, fit);
    assert_true(gw_kit_is_off_centre(&c, 0, GW_FRONT));
    bool in_a = joint->housing == joint->body_a;
    gw_vec3 moved = gw_sub(in_a ? fit[0].point_a : fit[0].point_b, joint->at);
    gw_vec3 kept = gw_sub(in_a ? fit[0].point_b : fit[0].point_a, joint->at);
    check_abs(gw_dot(moved, gw_col(&joint->frame, 0)), 3.0 * GW_MM * cos(30.0 * GW_DEG), 1e-15, "along e1");
    check_abs(gw_dot(moved, gw_col(&joint->frame, 1)), 3.0 * GW_MM * sin(30.0 * GW_DEG), 1e-15, "along e2");
    check_abs(gw_dot(moved, gw_col(&joint->frame, 2)), 0.0, 1e-15, "along e3");
    check_abs(gw_norm(kept), 0.0, 0.0, "the other body keeps its point");
    gw_laws_free(&laws);
    gw_case_free(&c);
}

static void a_sweep_meets_the_manoeuvre_at_the_same_g(void **unused)
{
    (void)unused;
    gw_case c;
    gw_sweep_study sweep;
    gw_run run;
    gw_error err = { 0 };
    gw_joint_result joints[GW_MAX_JOINTS];
    const gw_selection all = { 0 };
    const gw_sweep_plan plan = { .axis = GW_SWEEP_BRAKE, .to_g = 1.0, .n = 5 };
    load_case(&c);
    assert_int_equal(gw_study_sweep(&c, &all, &plan, &sweep, &err), GW_OK);
    assert_int_equal(gw_run_open(&run, &c, &all, &err), GW_OK);
    assert_int_equal(gw_run_open_corner(&run, 1, GW_REAR, &err), GW_OK);
    gw_deflection item = { .result = { .joints = joints } };
    const gw_manoeuvre m = { .brake_g = 0.75 };
    assert_int_equal(gw_run_manoeuvre(&run, &m, &item, &err), GW_OK);
    const gw_sweep_point *point = &gw_sweep_find(&sweep, 1, GW_REAR)->point[3];
    check_abs(point->g, 0.75, 1e-15, "g");
    check_abs(point->toe_change, item.result.toe_change, 0.0, "toe");
    check_abs(point->travel, item.applied.travel, 0.0, "travel");
    check_abs(gw_sweep_find(&sweep, 0, GW_FRONT)->point[0].toe_change, 0.0, 1e-12, "nothing at 0 g");
    gw_run_close(&run);
    gw_sweep_study_free(&sweep);
    gw_case_free(&c);
}

/* A wheel that lifts ends the sweep: what came before stands. */
static void a_sweep_ends_where_a_wheel_lifts(void **unused)
{
    (void)unused;
    gw_case c;
    gw_sweep_study sweep;
    gw_error err = { 0 };
    const gw_selection all = { 0 };
    const gw_sweep_plan plan = { .axis = GW_SWEEP_LATERAL, .to_g = 3.0, .n = 31 };
    load_case(&c);
    assert_int_equal(gw_study_sweep(&c, &all, &plan, &sweep, &err), GW_OK);
    const gw_sweep *front = gw_sweep_find(&sweep, 0, GW_FRONT);
    assert_in_range(front->n, 8, 30);
    for (int i = 0; i < front->n; i++) assert_true(isfinite(front->point[i].toe_change));
    gw_sweep_study_free(&sweep);
    c.has_vehicle = false;
    assert_int_equal(gw_study_sweep(&c, &all, &plan, &sweep, &err), GW_E_SCHEMA);
    check_contains(err.msg, "vehicle: missing");
    gw_case_free(&c);
}

/* Laws worked out beforehand serve a study as its own would; a narrowed run keeps the order of the case. */
static void a_narrowed_study_gives_the_same_figures(void **unused)
{
    (void)unused;
    gw_case c;
    gw_laws laws;
    gw_deflect_study whole, part;
    gw_error err = { 0 };
    load_case(&c);
    bool kits[GW_AXLES * 32] = { false }, loads[64] = { false };
    kits[2] = loads[1] = true;
    assert_int_equal(gw_laws_make(&c, GW_METHOD_SOLVED, &laws, &err), GW_OK);
    const gw_selection all = { 0 }, narrow = {
        .kits = kits, .loads = loads, .only_axle = true, .axle = GW_REAR, .laws = &laws
    };
    assert_int_equal(gw_study_deflect(&c, &all, &whole, &err), GW_OK);
    assert_int_equal(gw_study_deflect(&c, &narrow, &part, &err), GW_OK);
    assert_int_equal(part.n, 1);
    const gw_deflection *same = gw_deflect_find(&whole, 2, GW_REAR, 1);
    assert_non_null(same);
    assert_null(gw_deflect_find(&part, 0, GW_REAR, 1));
    check_abs(part.item[0].result.toe_change, same->result.toe_change, 0.0, "toe");
    for (int i = 1; i < whole.n; i++) assert_true(whole.item[i].kit >= whole.item[i - 1].kit);
    gw_deflect_study_free(&whole);
    gw_deflect_study_free(&part);
    gw_laws_free(&laws);
    gw_case_free(&c);
}

/* One rule for every place that has to choose: alone before together, carried before not. */
static void one_load_stands_for_the_stop_and_one_for_the_corner(void **unused)
{
    (void)unused;
    gw_case c;
    gw_deflect_study d;
    const gw_selection all = { 0 };
    load_case(&c); /* direct, stop, sweeper, braking into a corner, driving out of one */
    assert_int_equal(gw_study_deflect(&c, &all, &d, NULL), GW_OK);
    assert_int_equal(gw_pick_load(&c, &d, GW_PICK_STOP), 1);
    assert_int_equal(gw_pick_load(&c, &d, GW_PICK_CORNER), 2);
    c.loads[1].manoeuvre.lateral_g = 0.1;
    c.loads[2].manoeuvre.drive_g = 0.1;
    assert_int_equal(gw_pick_load(&c, &d, GW_PICK_STOP), 1); /* the first that brakes at all */
    assert_int_equal(gw_pick_load(&c, &d, GW_PICK_CORNER), 1);
    c.loads[4].manoeuvre.drive_g = 0.0;
    assert_int_equal(gw_pick_load(&c, &d, GW_PICK_CORNER), 4); /* alone */
    for (int i = 0; i < d.n; i++)
        if (d.item[i].kit == 0 && d.item[i].axle == GW_REAR && d.item[i].load == 4)
            d.item[i].failed = "a wheel lifts";
    assert_int_equal(gw_pick_load(&c, &d, GW_PICK_CORNER), 1);
    assert_null(gw_deflect_find(&d, 0, GW_REAR, 4));
    for (int l = 1; l < c.n_loads; l++) c.loads[l].manoeuvre.brake_g = 0.0;
    assert_int_equal(gw_pick_load(&c, &d, GW_PICK_STOP), -1);
    gw_deflect_study_free(&d);
    gw_case_free(&c);
}

static void mark(void *context, int index)
{
    ((int *)context)[index] += index + 1;
}

static void every_piece_of_work_is_done_once(void **unused)
{
    (void)unused;
    int done[257] = { 0 };
    gw_parallel(257, mark, done);
    for (int i = 0; i < 257; i++) assert_int_equal(done[i], i + 1);
    gw_parallel(0, mark, done);
    gw_parallel(1, mark, done);
    assert_int_equal(done[0], 2);
}

/* What cannot be carried was told of the outer wheel, whichever was looked at. */
static void a_load_that_is_not_carried_still_says_of_which_wheel(void **unused)
{
    (void)unused;
    gw_case c;
    gw_deflect_study study;
    gw_error err = { 0 };
    int seen[2] = { 0 };
    const gw_selection all = { 0 };
    load_case(&c);
    for (int l = 0; l < c.n_loads; l++)
        if (c.loads[l].manoeuvre.lateral_g > 0.0) {
            c.loads[l].manoeuvre.lateral_g = 3.0;
            c.loads[l].both = true;
        }
    assert_int_equal(gw_study_deflect(&c, &all, &study, &err), GW_OK);
    for (int i = 0; i < study.n; i++)
        if (study.item[i].failed) seen[study.item[i].side]++;
    assert_true(study.n_failed > 0);
    assert_int_equal(seen[GW_OUTER], seen[GW_INNER]);
    gw_deflect_study_free(&study);
    gw_case_free(&c);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_off_centre_bore_moves_the_point_of_its_housing),
        cmocka_unit_test(a_sweep_meets_the_manoeuvre_at_the_same_g),
        cmocka_unit_test(a_sweep_ends_where_a_wheel_lifts),
        cmocka_unit_test(a_narrowed_study_gives_the_same_figures),
        cmocka_unit_test(one_load_stands_for_the_stop_and_one_for_the_corner),
        cmocka_unit_test(every_piece_of_work_is_done_once),
        cmocka_unit_test(a_load_that_is_not_carried_still_says_of_which_wheel),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
