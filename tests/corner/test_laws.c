/* SPDX-License-Identifier: MIT */
/* Bushes whose force is no straight line, inside a whole corner: play, closing voids, stops, stiffening
 * rubber. */
#include "support/check.h"
#include "support/corner_fixture.h"

#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <math.h>

enum { TENSION_INNER = 5, LATERAL_INNER = 3 };

static const gw_corner_load BRAKING = { { -4200, -600, 5800 }, { 0, 0, 0 }, { 0, 0, 0 }, 0.018 };

static double radial_of(const gw_joint_result *j)
{
    return hypot(j->u[0], j->u[1]);
}

static void with_play(fixture *f, double each_side)
{
    fixture_double_wishbone(f);
    gw_bush_law *law = &f->fit[LATERAL_INNER].law;
    law->k[0] = law->k[1] = 60e6;
    law->clearance = each_side;
    law->blend = 0.1 * each_side;
}

static void play_lets_the_wheel_move_by_the_play_and_no_more(void **unused)
{
    (void)unused;
    fixture tight, loose;
    with_play(&tight, 0.0);
    with_play(&loose, 0.05 * GW_MM);
    fixture_solve(&tight, BRAKING, GW_AT_TRAVEL);
    fixture_solve(&loose, BRAKING, GW_AT_TRAVEL);
    double more = radial_of(&loose.results[LATERAL_INNER]) - radial_of(&tight.results[LATERAL_INNER]);
    check_abs(more, 0.05 * GW_MM, 0.004 * GW_MM, "radial movement beyond the tight bearing");
}

static void vanishing_play_tends_to_the_tight_bearing(void **unused)
{
    (void)unused;
    fixture tight, loose;
    with_play(&tight, 0.0);
    gw_corner_result want = fixture_solve(&tight, BRAKING, GW_AT_TRAVEL);
    double last = 1.0;
    for (int i = 2; i <= 6; i += 2) {
        with_play(&loose, pow(10.0, -i) * GW_MM);
        double off = fabs(fixture_solve(&loose, BRAKING, GW_AT_TRAVEL).toe_change - want.toe_change);
        assert_true(off < last);
        last = off;
    }
    check_abs(last / GW_DEG, 0.0, 2e-6, "toe with a nanometre of play");
}

/* Forces that reverse take a bearing with play from one side to the other: all must balance. */
static void loads_from_every_side_converge_with_play(void **unused)
{
    (void)unused;
    for (int i = 0; i < 12; i++) {
        fixture f;
        double angle = 30.0 * GW_DEG * i;
        with_play(&f, 0.08 * GW_MM);
        gw_corner_load load = {
            { 4000 * cos(angle), 4000 * sin(angle), 4500 }, { 0, 0, 0 }, { 0, 0, 0 }, 0.01
        };
        gw_corner_result r = fixture_solve(&f, load, GW_AT_TRAVEL);
        assert_true(isfinite(r.toe_change) && isfinite(r.camber_change));
        load.travel = -0.01;
        fixture_solve(&f, load, GW_AT_TRAVEL);
    }
}

/* Steel bearings throughout: no joint turns hard, all have play. */
static void bearings_throughout(fixture *f, double each_side)
{
    fixture_double_wishbone(f);
    for (int j = 0; j < f->corner.n_joints; j++) {
        gw_bush_law *law = &f->fit[j].law;
        law->k[0] = law->k[1] = 500e6;
        law->k[2] = 150e6;
        law->c[0] = law->c[1] = law->c[2] = 0.0;
        law->clearance = each_side;
        law->blend = 0.05 * each_side;
    }
}

/* With play at every joint a plain iteration wanders: it was taken for a corner that snaps over. */
static void play_at_every_joint_is_opened_under_any_load(void **unused)
{
    (void)unused;
    fixture f;
    for (int i = 0; i < 12; i++) {
        double angle = 30.0 * GW_DEG * i;
        gw_corner_load load = {
            { 4500 * cos(angle), 4500 * sin(angle), 5200 }, { 0, 0, 0 }, { 0, 0, 0 }, 0.013 * (i - 6)
        };
        bearings_throughout(&f, 0.06 * GW_MM);
        gw_corner_result r = fixture_solve(&f, load, GW_AT_TRAVEL);
        assert_true(isfinite(r.toe_change));
    }
}

/* Twice the play moves the wheel twice as far from where the tight bearings leave it: the play is opened to
 * its end and no further. A few micrometres, so that each joint is pressed to that end and turns no geometry.
 */
static void wheel_moves_in_proportion_to_the_play(void **unused)
{
    (void)unused;
    fixture f;
    double toe[3];
    for (int i = 0; i < 3; i++) {
        bearings_throughout(&f, 0.004 * GW_MM * i);
        toe[i] = fixture_solve(&f, BRAKING, GW_AT_TRAVEL).toe;
    }
    assert_true(fabs(toe[1] - toe[0]) > 1e-4 * GW_DEG);
    check_rel(toe[2] - toe[0], 2.0 * (toe[1] - toe[0]), 0.02, "toe beyond the tight bearings");
}

static void void_that_closes_catches_the_bush(void **unused)
{
    (void)unused;
    fixture open, closing;
    const double gap = 2.0 * GW_MM;
    fixture_double_wishbone(&open);
    fixture_double_wishbone(&closing);
    /* The axis of the tension bush is vertical, so e1 lies fore and aft: along the braking force. */
    gw_bush_law *law = &closing.fit[TENSION_INNER].law;
    law->void_stop = (gw_stop){ gap, 8e6 };
    law->blend = 0.1 * gap;
    fixture_solve(&open, BRAKING, GW_AT_TRAVEL);
    fixture_solve(&closing, BRAKING, GW_AT_TRAVEL);
    double free_way = fabs(open.results[TENSION_INNER].u[0]),
           caught = fabs(closing.results[TENSION_INNER].u[0]);
    assert_true(free_way > 1.5 * gap);
    assert_true(caught > gap && caught < free_way);
    const gw_joint_result *j = &closing.results[TENSION_INNER];
    check_rel(fabs(j->f[0]), law->k[0] * caught + 8e6 * (caught - gap), 1e-9, "force beyond the gap");
}

static void stop_adds_its_rate_beyond_the_gap_in_any_direction(void **unused)
{
    (void)unused;
    fixture f;
    const gw_stop stop = { 1.0 * GW_MM, 5e6 };
    fixture_double_wishbone(&f);
    f.fit[TENSION_INNER].law.stop = stop;
    fixture_solve(&f, BRAKING, GW_AT_TRAVEL);
    const gw_joint_result *j = &f.results[TENSION_INNER];
    double r = radial_of(j), k = f.fit[TENSION_INNER].law.k[0];
    assert_true(r > stop.gap);
    check_rel(hypot(j->f[0], j->f[1]), k * r + stop.rate * (r - stop.gap), 1e-9, "radial force");
}

static void kinks_do_not_keep_large_travel_from_converging(void **unused)
{
    (void)unused;
    fixture f;
    fixture_double_wishbone(&f);
    for (int j = 0; j < f.corner.n_joints; j++) f.fit[j].law.stop = (gw_stop){ 0.3 * GW_MM, 30e6 };
    f.fit[LATERAL_INNER].law.clearance = 0.05 * GW_MM;
    f.fit[LATERAL_INNER].law.blend = 5e-6;
    for (int i = -8; i <= 8; i += 4) {
        gw_corner_load load = BRAKING;
        load.travel = 0.01 * i;
        assert_true(isfinite(fixture_solve(&f, load, GW_AT_TRAVEL).toe_change));
    }
}

static void stiffening_rubber_gives_less_than_linear(void **unused)
{
    (void)unused;
    fixture linear, stiff;
    fixture_double_wishbone(&linear);
    fixture_double_wishbone(&stiff);
    stiff.fit[TENSION_INNER].law.stiffening = 0.2 / (4e-3 * 4e-3);
    fixture_solve(&linear, BRAKING, GW_AT_TRAVEL);
    fixture_solve(&stiff, BRAKING, GW_AT_TRAVEL);
    const gw_joint_result *j = &stiff.results[TENSION_INNER];
    double r = radial_of(j), k = stiff.fit[TENSION_INNER].law.k[0];
    assert_true(r < radial_of(&linear.results[TENSION_INNER]));
    check_rel(hypot(j->f[0], j->f[1]), k * r * (1.0 + 0.2 * r * r / 16e-6), 1e-9, "k r (1 + s r^2)");
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(play_lets_the_wheel_move_by_the_play_and_no_more),
        cmocka_unit_test(vanishing_play_tends_to_the_tight_bearing),
        cmocka_unit_test(loads_from_every_side_converge_with_play),
        cmocka_unit_test(play_at_every_joint_is_opened_under_any_load),
        cmocka_unit_test(wheel_moves_in_proportion_to_the_play),
        cmocka_unit_test(void_that_closes_catches_the_bush),
        cmocka_unit_test(stop_adds_its_rate_beyond_the_gap_in_any_direction),
        cmocka_unit_test(kinks_do_not_keep_large_travel_from_converging),
        cmocka_unit_test(stiffening_rubber_gives_less_than_linear),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
