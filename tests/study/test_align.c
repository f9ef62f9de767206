/* SPDX-License-Identifier: MIT */
/* Settings of an invented double wishbone: met with its points really moved, and no better ones beside them.
 */
#include "support/case_sample.h"
#include "support/check.h"
#include "support/corner_fixture.h"

#include "giveway/align.h"
#include "giveway/pressfit.h"
#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <stdlib.h>
#include <string.h>

enum { KIT = 1, MANY = 4 }; /* "standard", whose bores are in the middle */

typedef struct bench {
    gw_case c;
    gw_faults faults;
    gw_adjuster adjuster[MANY];
    gw_laws laws;
    gw_align_study study;
    const gw_align_item *item;
} bench;

static const gw_corner *corner_of(const bench *b)
{
    return &b->c.corners[GW_FRONT];
}

static void begin_with(bench *b, const char *text)
{
    memset(b, 0, sizeof *b);
    if (sample_read(text, &b->c, &b->faults) != GW_OK) fail_msg("%s", gw_faults_text(&b->faults, 0));
    assert_int_equal(gw_laws_make(&b->c, GW_METHOD_HANDBOOK, &b->laws, NULL), GW_OK);
    b->c.align[GW_FRONT] = (gw_align){ .present = true, .adjusters = b->adjuster };
}

static void begin(bench *b)
{
    begin_with(b, SAMPLE_FULL);
}

static void end(bench *b)
{
    gw_align_study_free(&b->study);
    gw_laws_free(&b->laws);
    gw_case_free(&b->c);
    gw_faults_free(&b->faults);
}

static gw_adjuster *add(bench *b, gw_adjuster_kind kind, const char *at, double min_mm, double max_mm)
{
    gw_adjuster *a = &b->adjuster[b->c.align[GW_FRONT].n_adjusters++];
    *a = (gw_adjuster){ .kind = kind,
                        .min = min_mm * GW_MM,
                        .max = max_mm * GW_MM,
                        .joint = -1,
                        .body = -1,
                        .thread_pitch = 1.5 * GW_MM,
                        .threads = 2,
                        .along = { 0, -1, 0 },
                        .step = 1.0 * GW_MM };
    if (kind == GW_ADJUST_LENGTH)
        a->body = gw_corner_find_body(corner_of(b), at);
    else
        a->joint = gw_corner_find_joint(corner_of(b), at);
    assert_true(a->body >= 0 || a->joint >= 0);
    return a;
}

static void aim(bench *b, double camber_deg, double toe_deg)
{
    gw_align *a = &b->c.align[GW_FRONT];
    a->has_camber = isfinite(camber_deg);
    a->has_toe = isfinite(toe_deg);
    a->camber = camber_deg * GW_DEG;
    a->toe = toe_deg * GW_DEG;
}

static void run_kit(bench *b, int kit)
{
    bool kits[GW_MAX_KITS] = { false };
    gw_selection wanted = { .kits = kits, .method = GW_METHOD_HANDBOOK };
    gw_error err = { 0 };
    kits[kit] = true;
    if (gw_study_align(&b->c, &wanted, &b->study, &err) != GW_OK) fail_msg("%s", err.msg);
    assert_int_equal(b->study.n, 1);
    b->item = &b->study.item[0];
}

static void run(bench *b)
{
    run_kit(b, KIT);
}

/* The corner with these movements, opened here by hand. */
static gw_corner_setting setting_at(const bench *b, int kit, const gw_move *moves)
{
    gw_fit fit[GW_MAX_JOINTS];
    gw_corner_ws *ws;
    gw_error err = { 0 };
    gw_fit_kit(&b->c, &b->laws, kit, GW_FRONT, fit);
    for (int a = 0; a < b->c.align[GW_FRONT].n_adjusters; a++)
        gw_adjuster_apply(corner_of(b), &b->adjuster[a], &moves[a], fit);
    if (gw_corner_open(corner_of(b), fit, &ws, &err) != GW_OK) fail_msg("%s", err.msg);
    gw_corner_setting s = gw_corner_as_fitted(ws);
    gw_corner_close(ws);
    return s;
}

static gw_corner_setting setting_as_set(const bench *b)
{
    gw_move moves[MANY] = { 0 };
    for (int a = 0; a < b->c.align[GW_FRONT].n_adjusters; a++) moves[a] = b->item->set[a].move;
    return setting_at(b, KIT, moves);
}

/* ---- what adjusters move ---- */

static void a_longer_arm_moves_its_two_points_apart_by_half_each(void **unused)
{
    (void)unused;
    bench b;
    gw_fit fit[GW_MAX_JOINTS] = { 0 };
    begin(&b);
    gw_adjuster *rod = add(&b, GW_ADJUST_LENGTH, "tie_rod", -6, 6);
    gw_adjuster_apply(corner_of(&b), rod, &(gw_move){ { 0.003, 0 } }, fit);
    const gw_fit *in = &fit[gw_corner_find_joint(corner_of(&b), "tie_inner")];
    const gw_fit *out = &fit[gw_corner_find_joint(corner_of(&b), "tie_outer")];
    check_abs(gw_norm(in->point_b), 0.0015, 1e-15, "inner end, in the rod");
    check_abs(gw_norm(in->point_a), 0.0, 0.0, "the chassis stays");
    check_abs(gw_norm(gw_add(in->point_b, out->point_a)), 0.0, 1e-15, "the ends go opposite ways");
    assert_true(out->point_a.y > 0.0); /* longer: the outer end outward */
    end(&b);
}

static void a_shim_moves_the_chassis_alone_and_an_offset_the_housing_alone(void **unused)
{
    (void)unused;
    bench b;
    gw_fit fit[GW_MAX_JOINTS] = { 0 };
    begin(&b);
    gw_adjuster *shim = add(&b, GW_ADJUST_SHIM, "upper_rear", 0, 6);
    gw_adjuster *bush = add(&b, GW_ADJUST_OFFSET, "upper_front", 0, 5);
    gw_adjuster_apply(corner_of(&b), shim, &(gw_move){ { 0.002, 0 } }, fit);
    gw_adjuster_apply(corner_of(&b), bush, &(gw_move){ { 0.003, 0.004 } }, fit);
    check_abs(fit[shim->joint].point_a.y, -0.002, 1e-15, "the chassis point, inboard");
    check_abs(gw_norm(fit[shim->joint].point_b), 0.0, 0.0, "the arm's point stays");
    check_abs(gw_norm(fit[bush->joint].point_b), 0.005, 1e-15, "the housing's point, by the offset");
    check_abs(gw_norm(fit[bush->joint].point_a), 0.0, 0.0, "the bolt stays");
    end(&b);
}

/* A trade fact, common practice, no source: 320 mm between upper and lower joints, outer ends of the lower
 * arms 5 mm outward, about 0.9 degree of negative camber. */
static void five_millimetres_outward_at_the_lower_arms_make_about_nine_tenths_of_a_degree(void **unused)
{
    (void)unused;
    fixture f;
    gw_corner_ws *ws;
    fixture_double_wishbone(&f);
    int lateral = gw_corner_find_joint(&f.corner, "lateral_outer");
    int tension = gw_corner_find_joint(&f.corner, "tension_outer");
    f.fit[lateral].point_a.y += 5.0 * GW_MM;
    f.fit[tension].point_a.y += 5.0 * GW_MM;
    assert_int_equal(gw_corner_open(&f.corner, f.fit, &ws, NULL), GW_OK);
    double gained = gw_corner_as_fitted(ws).camber - f.corner.wheel.static_camber;
    gw_corner_close(ws);
    check_abs(gained / GW_DEG, -0.9, 0.1, "camber gained");
}

/* ---- sensitivities ---- */

static void sensitivities_match_differences_of_solved_corners(void **unused)
{
    (void)unused;
    bench b;
    begin(&b);
    add(&b, GW_ADJUST_OFFSET, "upper_front", 0, 5);
    add(&b, GW_ADJUST_LENGTH, "tie_rod", -6, 6);
    add(&b, GW_ADJUST_SHIM, "lower_front", 0, 6);
    aim(&b, -1.2, 0.1);
    run(&b);
    assert_int_equal(b.item->n_sensitivities, 4);
    for (int i = 0; i < 4; i++) {
        const gw_sensitivity *s = &b.item->sensitivity[i];
        const double step = 7e-5; /* not the step of the study */
        gw_move up[MANY] = { 0 }, down[MANY] = { 0 };
        up[s->adjuster].along[s->axis] = step;
        down[s->adjuster].along[s->axis] = -step;
        gw_corner_setting p = setting_at(&b, KIT, up), m = setting_at(&b, KIT, down);
        double size = fabs(s->camber) + fabs(s->toe) + fabs(s->caster);
        check_abs(s->camber, (p.camber - m.camber) / (2 * step), 1e-5 * size, "camber");
        check_abs(s->toe, (p.toe - m.toe) / (2 * step), 1e-5 * size, "toe");
        check_abs(s->caster, (p.caster_change - m.caster_change) / (2 * step), 1e-5 * size, "caster");
    }
    end(&b);
}

/* ---- settings ---- */

static void the_target_is_met_with_the_points_really_moved(void **unused)
{
    (void)unused;
    bench b;
    begin(&b);
    add(&b, GW_ADJUST_OFFSET, "upper_front", 0, 5);
    add(&b, GW_ADJUST_LENGTH, "tie_rod", -6, 6);
    aim(&b, -1.43, 0.137);
    run(&b);
    gw_corner_setting s = setting_as_set(&b);
    check_abs(s.camber / GW_DEG, -1.43, 1e-8, "camber");
    check_abs(s.toe / GW_DEG, 0.137, 1e-8, "toe");
    check_abs(b.item->after.setting.caster_change, s.caster_change, 1e-13, "caster goes along");
    assert_true(b.item->reached[GW_TARGET_TOE] && b.item->reached[GW_TARGET_CAMBER]);
    assert_false(b.item->set[0].at_limit || b.item->set[1].at_limit);
    end(&b);
}

/* Toe set again by the rod for a given offset: secant steps on the corner itself. */
static gw_corner_setting with_toe_reset(const bench *b, gw_move *moves, double toe)
{
    double slope = b->item->sensitivity[2].toe;
    gw_corner_setting s = setting_at(b, KIT, moves);
    for (int i = 0; i < 20 && fabs(s.toe - toe) > 1e-12; i++) {
        moves[1].along[0] -= (s.toe - toe) / slope;
        s = setting_at(b, KIT, moves);
    }
    return s;
}

static void no_smaller_offset_reaches_the_target(void **unused)
{
    (void)unused;
    bench b;
    begin(&b);
    add(&b, GW_ADJUST_OFFSET, "upper_front", 0, 5);
    add(&b, GW_ADJUST_LENGTH, "tie_rod", -6, 6);
    aim(&b, -1.43, 0.137);
    run(&b);
    const gw_move best = b.item->set[0].move;
    for (int deg = -90; deg <= 90; deg += 15) { /* as large, turned: the camber must fall short */
        double clock = gw_offset_clock(&best) + deg * GW_DEG, size = gw_offset_size(&best);
        gw_move moves[MANY] = { { { size * cos(clock), size * sin(clock) } }, b.item->set[1].move };
        double camber = with_toe_reset(&b, moves, 0.137 * GW_DEG).camber;
        if (deg && camber < -1.43 * GW_DEG + 1e-9) fail_msg("turned by %d deg it does as much", deg);
    }
    end(&b);
}

static void out_of_reach_toe_is_exact_and_camber_nearest(void **unused)
{
    (void)unused;
    bench b;
    begin(&b);
    add(&b, GW_ADJUST_OFFSET, "upper_front", 0, 3);
    add(&b, GW_ADJUST_LENGTH, "tie_rod", -6, 6);
    aim(&b, -4.0, 0.1);
    run(&b);
    gw_corner_setting s = setting_as_set(&b);
    check_abs(s.toe / GW_DEG, 0.1, 1e-8, "toe is exact");
    assert_false(b.item->reached[GW_TARGET_CAMBER]);
    assert_true(b.item->set[0].at_limit && b.item->set[0].holds);
    assert_false(b.item->set[1].holds);
    check_abs(gw_offset_size(&b.item->set[0].move), 0.003, 1e-12, "the offset is at its limit");
    check_abs(b.item->set[0].bore.size, 0.003, 1e-12, "and a fitter reads so");
    check_abs(tan(b.item->set[0].bore.clock), b.item->set[0].move.along[1] / b.item->set[0].move.along[0],
              1e-9, "its clock");
    check_abs(b.item->set[1].turns, b.item->set[1].move.along[0] / 0.003, 1e-9,
              "two threads of 1.5 mm a turn");
    assert_true(isnan(b.item->set[0].turns) && isnan(b.item->set[0].fit.size) &&
                isnan(b.item->set[1].bore.size));
    check_abs(b.item->miss[GW_TARGET_CAMBER], s.camber + 4.0 * GW_DEG, 1e-12, "the miss that is told");
    for (int deg = 0; deg < 360; deg += 10) {
        gw_move moves[MANY] = { { { 0.003 * cos(deg * GW_DEG), 0.003 * sin(deg * GW_DEG) } }, { { 0, 0 } } };
        double camber = with_toe_reset(&b, moves, 0.1 * GW_DEG).camber;
        if (camber < s.camber - 1e-9) fail_msg("at %d deg the camber comes nearer", deg);
    }
    end(&b);
}

static void one_adjuster_and_two_targets_leave_camber_with_no_limit_to_blame(void **unused)
{
    (void)unused;
    bench b;
    begin(&b);
    add(&b, GW_ADJUST_LENGTH, "tie_rod", -6, 6);
    aim(&b, -1.5, 0.2);
    run(&b);
    check_abs(setting_as_set(&b).toe / GW_DEG, 0.2, 1e-8, "toe");
    assert_false(b.item->reached[GW_TARGET_CAMBER] || b.item->set[0].holds);
    end(&b);
}

static void an_arm_at_its_limit_holds_the_toe(void **unused)
{
    (void)unused;
    bench b;
    begin(&b);
    add(&b, GW_ADJUST_LENGTH, "tie_rod", -1, 1);
    aim(&b, NAN, 2.0);
    run(&b);
    assert_true(b.item->set[0].at_limit && b.item->set[0].holds);
    check_abs(fabs(b.item->set[0].move.along[0]), 0.001, 1e-15, "length");
    end(&b);
}

static void shims_come_in_whole_steps_and_the_rod_is_set_after_them(void **unused)
{
    (void)unused;
    bench b;
    begin(&b);
    add(&b, GW_ADJUST_SHIM, "upper_front", 0, 6);
    add(&b, GW_ADJUST_SHIM, "upper_rear", 0, 6);
    add(&b, GW_ADJUST_LENGTH, "tie_rod", -6, 6);
    aim(&b, -1.37, 0.1);
    run(&b);
    double best = fabs(b.item->miss[GW_TARGET_CAMBER]);
    for (int a = 0; a < 2; a++) {
        double steps = b.item->set[a].move.along[0] / GW_MM;
        check_abs(steps, round(steps), 1e-12, "whole shims");
    }
    check_abs(setting_as_set(&b).toe / GW_DEG, 0.1, 1e-8, "toe after the shims");
    for (int i = 0; i <= 6; i++) /* every other pair of shims, toe set again, comes no nearer */
        for (int j = 0; j <= 6; j++) {
            gw_move moves[MANY] = { { { i * GW_MM, 0 } }, { { j * GW_MM, 0 } }, b.item->set[2].move };
            double slope = b.item->sensitivity[2].toe;
            gw_corner_setting s = setting_at(&b, KIT, moves);
            for (int k = 0; k < 3; k++) {
                moves[2].along[0] -= (s.toe - 0.1 * GW_DEG) / slope;
                s = setting_at(&b, KIT, moves);
            }
            if (fabs(s.camber + 1.37 * GW_DEG) < best - 1e-6) fail_msg("%d and %d come nearer", i, j);
        }
    end(&b);
}

static void a_bush_of_full_eccentricity_reaches_the_target_at_two_clock_angles(void **unused)
{
    (void)unused;
    bench b;
    begin(&b);
    add(&b, GW_ADJUST_OFFSET, "upper_front", 0, 5);
    add(&b, GW_ADJUST_LENGTH, "tie_rod", -6, 6);
    aim(&b, -1.2, 0.1);
    run(&b);
    assert_int_equal(b.item->n_turned, 2);
    for (int i = 0; i < 2; i++) {
        const gw_turned *t = &b.item->turned[i];
        gw_move moves[MANY] = { t->set[0].move, t->set[1].move };
        gw_corner_setting s = setting_at(&b, KIT, moves);
        check_abs(gw_offset_size(&moves[0]), 0.005, 1e-12, "full eccentricity");
        check_abs(s.camber / GW_DEG, -1.2, 1e-8, "camber");
        check_abs(s.toe / GW_DEG, 0.1, 1e-8, "toe");
    }
    double apart =
        gw_offset_clock(&b.item->turned[0].set[0].move) - gw_offset_clock(&b.item->turned[1].set[0].move);
    assert_true(fabs(remainder(apart, 2 * GW_PI)) > 0.1);
    end(&b);
}

static void off_centre_bushes_of_the_kit_count_before_anything_is_set(void **unused)
{
    (void)unused;
    bench b;
    begin(&b);
    add(&b, GW_ADJUST_LENGTH, "tie_rod", -6, 6);
    aim(&b, NAN, 0.08);
    run_kit(&b, 0); /* "sport": 3 mm off centre at the upper front */
    gw_move none[MANY] = { 0 };
    gw_corner_setting s = setting_at(&b, 0, none);
    assert_true(fabs(s.camber + 1.0 * GW_DEG) > 1e-3);
    check_abs(b.item->before.setting.camber, s.camber, 1e-14, "camber that the kit gives");
    check_abs(b.item->before.setting.toe, s.toe, 1e-14, "toe that it gives, not yet set again");
    check_abs(b.item->after.setting.toe / GW_DEG, 0.08, 1e-8, "toe, set again by the rod");
    end(&b);
}

/* ---- marks and turns ---- */

static gw_mark mark(gw_vec3 axis, gw_vec3 offset)
{
    gw_joint joint = { .frame = fixture_frame(axis) };
    return gw_mark_of(&joint, offset);
}

static void the_mark_is_clockwise_for_whoever_stands_there(void **unused)
{
    (void)unused;
    const gw_vec3 x = { 1, 0, 0 }, back = { -1, 0, 0 }, y = { 0, 1, 0 }, z = { 0, 0, 1 };
    gw_mark m = mark(x, z);
    assert_int_equal(m.view, GW_VIEW_FRONT);
    check_abs(m.left, 0.0, 1e-12, "up is the top");
    m = mark(x, y); /* face to face with the car its left is on the right-hand side */
    check_abs(m.left / GW_DEG, 90.0, 1e-9, "outboard, left");
    check_abs(m.right / GW_DEG, 270.0, 1e-9, "outboard, right");
    check_abs(mark(back, y).left / GW_DEG, 90.0, 1e-9, "whichever way the axis is written");
    m = mark(z, y);
    assert_int_equal(m.view, GW_VIEW_ABOVE);
    check_abs(m.left / GW_DEG, 270.0, 1e-9, "from above, nose up, the left is on the left");
    m = mark(y, x);
    assert_int_equal(m.view, GW_VIEW_OUTBOARD);
    check_abs(m.left / GW_DEG, 270.0, 1e-9, "beside the left wheel the nose points left");
}

/* ---- fit and hold ---- */

/* ISO 286-2, H7/p6 at 45 mm: 1 to 42 um. Pressures by Lame as in J. E. Shigley, Mechanical Engineering
 * Design. */
static void a_press_fit_of_the_case_is_worked_out_and_judged(void **unused)
{
    (void)unused;
    bench b;
    char *text = sample_change(
        SAMPLE_FULL, "\"label\": \"Rubber\",",
        "\"label\": \"Rubber\", \"press_fit\": { \"diameter_mm\": 45, \"length_mm\": 40, \"fit\": \"H7/p6\","
        " \"sleeve_wall_mm\": 2.5, \"housing_wall_mm\": 8, \"bore_mm\": 12 },");
    begin_with(&b, text);
    add(&b, GW_ADJUST_OFFSET, "upper_front", 0, 5);
    add(&b, GW_ADJUST_LENGTH, "tie_rod", -6, 6);
    aim(&b, -1.43, 0.137);
    run(&b);
    bool wall = false, hoop = false;
    assert_true(b.item->n_seats >= 1);
    check_abs(b.item->seat[0].least, 1e-6, 1e-12, "least interference");
    check_abs(b.item->seat[0].most, 42e-6, 1e-12, "greatest interference");
    check_abs(b.item->seat[0].worst.pressure / GW_MPA, 16.21, 0.005, "pressure at 42 um");
    check_abs(b.item->seat[0].held.pressure / GW_MPA, 0.39, 0.005, "pressure at 1 um");
    for (int i = 0; i < b.item->n_checks; i++) {
        const gw_verdict *v = &b.item->check[i].verdict;
        wall = wall || v->what == GW_JUDGED_THINNEST_WALL;
        hoop = hoop || v->what == GW_JUDGED_HOUSING_HOOP;
        if (v->what == GW_JUDGED_THINNEST_WALL)
            check_abs(v->value, 0.5 * 0.033 - gw_offset_size(&b.item->set[0].move), 1e-9, "wall");
    }
    assert_true(wall && hoop);
    end(&b);
    free(text);
}

static void bearings_are_judged_by_the_peak_of_the_loads_times_the_shock_factor(void **unused)
{
    (void)unused;
    bench b;
    begin(&b);
    add(&b, GW_ADJUST_LENGTH, "tie_rod", -6, 6);
    aim(&b, NAN, 0.1);
    b.c.align[GW_FRONT].shock_factor = 3.0;
    run_kit(&b, 0);
    int joint = gw_corner_find_joint(corner_of(&b), "upper_front");
    double peak = -1.0, specific = -1.0;
    for (int i = 0; i < b.item->n_checks; i++) {
        const gw_verdict *v = &b.item->check[i].verdict;
        if (b.item->check[i].joint != joint) continue;
        if (v->what == GW_JUDGED_PEAK_LOAD) peak = v->value;
        if (v->what == GW_JUDGED_SPECIFIC_LOAD) specific = v->value;
    }
    assert_true(peak > 0.0);
    check_rel(peak, 3.0 * specific * 0.022 * 0.012, 1e-12, "peak load: 3 x specific load x dk x C");
    end(&b);
}

/* ---- what cannot be done ---- */

static void nothing_to_align_is_said(void **unused)
{
    (void)unused;
    bench b;
    gw_error err = { 0 };
    gw_selection wanted = { 0 };
    begin(&b);
    b.c.align[GW_FRONT].present = false;
    assert_int_equal(gw_study_align(&b.c, &wanted, &b.study, &err), GW_E_SCHEMA);
    check_contains(err.msg, "align: missing");
    end(&b);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_longer_arm_moves_its_two_points_apart_by_half_each),
        cmocka_unit_test(a_shim_moves_the_chassis_alone_and_an_offset_the_housing_alone),
        cmocka_unit_test(five_millimetres_outward_at_the_lower_arms_make_about_nine_tenths_of_a_degree),
        cmocka_unit_test(sensitivities_match_differences_of_solved_corners),
        cmocka_unit_test(the_target_is_met_with_the_points_really_moved),
        cmocka_unit_test(no_smaller_offset_reaches_the_target),
        cmocka_unit_test(out_of_reach_toe_is_exact_and_camber_nearest),
        cmocka_unit_test(one_adjuster_and_two_targets_leave_camber_with_no_limit_to_blame),
        cmocka_unit_test(an_arm_at_its_limit_holds_the_toe),
        cmocka_unit_test(shims_come_in_whole_steps_and_the_rod_is_set_after_them),
        cmocka_unit_test(a_bush_of_full_eccentricity_reaches_the_target_at_two_clock_angles),
        cmocka_unit_test(off_centre_bushes_of_the_kit_count_before_anything_is_set),
        cmocka_unit_test(the_mark_is_clockwise_for_whoever_stands_there),
        cmocka_unit_test(a_press_fit_of_the_case_is_worked_out_and_judged),
        cmocka_unit_test(bearings_are_judged_by_the_peak_of_the_loads_times_the_shock_factor),
        cmocka_unit_test(nothing_to_align_is_said),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
