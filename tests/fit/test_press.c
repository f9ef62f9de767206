/* SPDX-License-Identifier: MIT */
/* Readings of a press, made by hand so that their mean, loss and zero are known. */
#include "giveway/press.h"
#include "giveway/units.h"
#include "support/check.h"

#include <math.h>
#include <string.h>

enum { ROOM = 4000 };

/** Readings as they are taken; law f = 800 N/mm x, and a half-width of the loop that friction would give. */
typedef struct press_log {
    int n;
    double x[ROOM], f[ROOM];
} press_log;

static double law(double x, double k, double cubic)
{
    return k * x + cubic * x * x * x;
}

/* From one deflection to another in steps; the loop's half-width is an ellipse's over +-amplitude. */
static void go(press_log *l, double from, double to, int steps, double half, double amplitude)
{
    for (int i = l->n ? 1 : 0; i <= steps; i++) {
        double x = from + (to - from) * i / steps;
        double open = half * sqrt(fmax(0.0, 1.0 - x * x / (amplitude * amplitude)));
        l->x[l->n] = x;
        l->f[l->n++] = law(x, 8e5, 2e10) + (to > from ? open : -open);
    }
}

static gw_press fit(const press_log *l)
{
    gw_press p;
    gw_error err = { 0 };
    if (gw_press_make(l->x, l->f, l->n, false, &p, &err) != GW_OK) fail_msg("%s", err.msg);
    return p;
}

static void check_law(const gw_press *p, double zero)
{
    for (int i = 0; i < p->n; i++) check_abs(p->f[i], law(p->x[i], 8e5, 2e10), 0.5, "point");
    check_abs(p->zero, zero, 1e-7, "zero");
}

/* f = k x +- h sqrt(1 - x^2/A^2): area pi h A, so loss = h/(force at the end); linear rubber's tangent. */
static void a_whole_loop_gives_mean_and_loss(void **state)
{
    (void)state;
    press_log l = { 0 };
    const double a = 2e-3, end = law(a, 8e5, 2e10);
    go(&l, 0, a, 200, 200, a);
    go(&l, a, -a, 400, 200, a);
    go(&l, -a, a, 400, 200, a);
    gw_press p = fit(&l);
    assert_int_equal(p.sides, 2);
    assert_false(p.one_way);
    check_law(&p, 0);
    check_rel(p.loss, 200 / end, 2e-3, "loss factor");
    check_rel(p.stroke[0], a, 1e-12, "stroke");
    check_abs(p.asymmetry, 0, 1e-9, "asymmetry");
    check_abs(p.zero_force, 0, 1e-9, "force at reading 0");
    check_rel(p.rate_zero, 8e5, 2e-2, "rate at zero");
    /* largest |F - k x| over largest |F| of the 21 points, by hand from the law */
    double fx = 0, xx = 0, off = 0;
    for (int i = -10; i <= 10; i++) {
        double x = a * i / 10;
        fx += law(x, 8e5, 2e10) * x;
        xx += x * x;
    }
    for (int i = -10; i <= 10; i++) off = fmax(off, fabs(law(a * i / 10, 8e5, 2e10) - fx / xx * a * i / 10));
    check_rel(p.nonlinearity, off / end, 1e-3, "nonlinearity");
    gw_press_free(&p);
}

static void conditioning_and_a_log_that_stops_half_way_change_nothing(void **state)
{
    (void)state;
    const double a = 2e-3, end = law(a, 8e5, 2e10);
    press_log l = { 0 };
    go(&l, 0, a, 100, 600, a); /* an earlier cycle with more loss conditions the rubber */
    go(&l, a, -a, 200, 600, a);
    go(&l, -a, a, 200, 200, a);
    go(&l, a, -a, 200, 200, a);
    go(&l, -a, 0.3e-3, 115, 200, a); /* what it lacks up to a comes from the way before both */
    gw_press p = fit(&l);
    check_rel(p.loss, 200 / end, 2e-3, "loss factor");
    check_rel(p.stroke[1], a, 1e-12, "stroke");
    gw_press_free(&p);
    l = (press_log){ 0 };
    go(&l, 0, a, 200, 200, a); /* a cycle 0, A, -A, 0 is whole */
    go(&l, a, -a, 400, 200, a);
    go(&l, -a, 0, 200, 200, a);
    p = fit(&l);
    assert_false(p.one_way);
    check_rel(p.loss, 200 / end, 2e-3, "loss factor");
    check_rel(p.stroke[0], a, 1e-12, "stroke");
    gw_press_free(&p);
}

static void shaking_of_less_than_a_tenth_turns_no_way(void **state)
{
    (void)state;
    press_log l = { 0 };
    const double a = 2e-3;
    go(&l, 0, a, 50, 0, a);
    go(&l, a, 0.5e-3, 50, 0, a);
    go(&l, 0.5e-3, 0.65e-3, 5, 0, a);
    go(&l, 0.65e-3, 0, 20, 0, a);
    gw_press p = fit(&l);
    assert_int_equal(p.sides, 1);
    assert_false(p.one_way);
    check_abs(p.loss, 0, 1e-5, "loss"); /* chords of a curve, each way its own readings */
    check_law(&p, 0);
    gw_press_free(&p);
}

static void a_zero_that_is_off_is_found_by_the_load_cell(void **state)
{
    (void)state;
    press_log l = { 0 };
    const double a = 2e-3;
    go(&l, 0, a, 200, 0, a);
    go(&l, a, 0, 200, 0, a);
    for (int i = 0; i < l.n; i++) l.x[i] += 0.31e-3;
    gw_press p = fit(&l);
    check_law(&p, 0.31e-3);
    assert_true(isnan(p.zero_force)); /* reading 0 lies outside */
    gw_press_free(&p);
}

/* Taken up only after a preload: the straight line through the start leads back to zero. */
static void a_bush_that_was_never_at_rest_is_led_back_to_zero(void **state)
{
    (void)state;
    press_log l = { 0 };
    for (int i = 0; i <= 100; i++) {
        l.x[i] = 1e-5 * i;
        l.f[i] = 8e5 * (l.x[i] + 0.2e-3);
    }
    l.n = 101;
    gw_press p = fit(&l);
    assert_true(p.one_way);
    assert_true(isnan(p.loss));
    check_rel(p.zero, -0.2e-3, 1e-9, "zero");
    check_rel(p.zero_force, 160, 1e-9, "force at reading 0");
    check_rel(p.stroke[1], 1.2e-3, 1e-9, "stroke");
    check_rel(p.rate_zero, 8e5, 1e-9, "rate");
    gw_press_free(&p);
    gw_error err = { 0 };
    for (int i = 0; i < l.n; i++) l.f[i] = 8e5 * (l.x[i] + 0.34e-3); /* further than a third of the range */
    assert_int_equal(gw_press_make(l.x, l.f, l.n, false, &p, &err), GW_E_RANGE);
    check_contains(err.msg, "begin at rest");
}

static void a_pulled_bush_is_turned_over(void **state)
{
    (void)state;
    press_log l = { 0 };
    const double a = 2e-3;
    go(&l, 0, -a, 100, 0, a);
    go(&l, -a, 0, 100, 0, a);
    gw_press p = fit(&l);
    assert_true(p.turned);
    assert_int_equal(p.sides, 1);
    check_abs(p.f[20], law(a, 8e5, 2e10), 1e-6, "last point");
    assert_true(isnan(p.asymmetry));
    check_rel(p.rate_full[0], p.rate_full[1], 1e-12, "both sides alike");
    gw_press_free(&p);
}

static void a_side_under_a_fifth_is_left_out_and_asymmetry_told_of_two(void **state)
{
    (void)state;
    press_log l = { 0 };
    go(&l, -0.35e-3, 2e-3, 235, 0, 1);
    gw_press p = fit(&l);
    assert_int_equal(p.sides, 1);
    gw_press_free(&p);
    l = (press_log){ 0 };
    go(&l, -0.5e-3, 2e-3, 250, 0, 1);
    for (int i = 0; i < l.n; i++)
        if (l.x[i] < 0) l.f[i] *= 1.5;
    p = fit(&l);
    assert_int_equal(p.sides, 2);
    /* F(s) = f, F(-s) = -1.5 f at s = 0.5 mm: (1 - 1.5)/(1 + 1.5) */
    check_rel(p.asymmetry, -0.2, 1e-6, "asymmetry");
    check_rel(p.stroke[0], 0.5e-3, 1e-9, "stroke");
    check_rel(p.x[0], -0.5e-3, 1e-9, "first point");
    check_rel(p.x[5], -0.25e-3, 1e-9, "tenths of its own stroke");
    check_rel(p.x[15], 1e-3, 1e-9, "tenths of its own stroke");
    gw_press_free(&p);
}

static void a_loop_the_wrong_way_round_has_no_loss(void **state)
{
    (void)state;
    press_log l = { 0 };
    const double a = 2e-3;
    go(&l, -a, a, 200, -150, a);
    go(&l, a, -a, 200, -150, a);
    gw_press p = fit(&l);
    assert_true(p.wrong_way);
    assert_true(isnan(p.loss));
    check_law(&p, 0);
    gw_press_free(&p);
}

static void equal_deflections_are_averaged_and_order_does_not_matter_in_a_way(void **state)
{
    (void)state;
    static const double X[] = { 0, 1e-3, 1e-3, 0.97e-3, 2e-3, 3e-3 }, F[] = { 0, 90, 110, 97, 200, 300 };
    gw_press p;
    assert_int_equal(gw_press_make(X, F, 6, false, &p, NULL), GW_OK);
    for (int i = 0; i < p.n; i++) check_abs(p.f[i], 1e5 * p.x[i], 1e-9, "straight line");
    gw_press_free(&p);
}

static void expect_fault(const double *x, const double *f, int n, bool turns, const char *part)
{
    gw_press p;
    gw_error err = { 0 };
    assert_int_equal(gw_press_make(x, f, n, turns, &p, &err), GW_E_RANGE);
    check_contains(err.msg, part);
}

static void what_is_no_law_is_told(void **state)
{
    (void)state;
    static const double X[] = { 0, 1e-3, 2e-3, 3e-3 }, DOWN[] = { 0, -100, -200, -300 },
                        FALLS[] = { 0, 200, 150, 300 }, SAME[] = { 1e-3, 1e-3, 1e-3, 1e-3 },
                        TWO[] = { 0, 1e-3, 1e-3, 0 };
    expect_fault(X, DOWN, 4, false,
                 "the force ends below where it starts: one of the columns has the wrong sign");
    expect_fault(X, DOWN, 4, true, "the moment ends below where it starts");
    expect_fault(X, FALLS, 4, false, "the force does not rise from 1.05 to 1.2 mm");
    expect_fault(SAME, X, 4, false,
                 "no way from one end of deflection to the next has three different readings");
    expect_fault(TWO, X, 4, false, "has three different readings");
    expect_fault(X, X, 1, false, "has three different readings");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_whole_loop_gives_mean_and_loss),
        cmocka_unit_test(conditioning_and_a_log_that_stops_half_way_change_nothing),
        cmocka_unit_test(shaking_of_less_than_a_tenth_turns_no_way),
        cmocka_unit_test(a_zero_that_is_off_is_found_by_the_load_cell),
        cmocka_unit_test(a_bush_that_was_never_at_rest_is_led_back_to_zero),
        cmocka_unit_test(a_pulled_bush_is_turned_over),
        cmocka_unit_test(a_side_under_a_fifth_is_left_out_and_asymmetry_told_of_two),
        cmocka_unit_test(a_loop_the_wrong_way_round_has_no_loss),
        cmocka_unit_test(equal_deflections_are_averaged_and_order_does_not_matter_in_a_way),
        cmocka_unit_test(what_is_no_law_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
