/* SPDX-License-Identifier: MIT */
/* Steffen's cubic against the library's own, and how a curve is used: factor, bracket, energy, inverse. */
#include "giveway/curve.h"
#include "support/check.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_spline.h>
#include <math.h>
#include <string.h>

static const double X[] = { -3.1, -1.7, -0.4, 0, 0.35, 1.2, 2.6, 4.05 };
static const double Y[] = { -9.3, -2.2, -0.55, 0, 0.9, 1.15, 3.8, 11.7 };
enum { N = 8 };

static gw_curve make(double *x, double *y)
{
    gw_curve c;
    gw_error err = { 0 };
    if (gw_curve_make(X, Y, N, x, y, &c, NULL, &err) != GW_OK) fail_msg("%s", err.msg);
    return c;
}

static void between_points_it_is_steffens_cubic(void **state)
{
    (void)state;
    double room_x[2 * N + 1], room_y[2 * N + 1], slope;
    gw_curve c = make(room_x, room_y);
    const gw_curve_use use = { &c, 1.0, 0.0 };
    gsl_spline *spline = gsl_spline_alloc(gsl_interp_steffen, N);
    gsl_spline_init(spline, X, Y, N);
    check_from("GSL gsl_interp_steffen on the same points");
    for (double x = -3.1; x <= 4.05; x += 0.0271) {
        check_abs(gw_curve_force(&use, x, &slope), gsl_spline_eval(spline, x, NULL), 1e-13, "force");
        check_abs(slope, gsl_spline_eval_deriv(spline, x, NULL), 1e-12, "slope");
        double w =
            x >= 0 ? gsl_spline_eval_integ(spline, 0, x, NULL) : -gsl_spline_eval_integ(spline, x, 0, NULL);
        check_abs(gw_curve_energy(&use, x), w, 1e-12, "energy");
    }
    gsl_spline_free(spline);
}

/*
 * M. Steffen, Astronomy and Astrophysics 239 (1990) 443, equations 8, 11 and 26 worked by hand for the points
 * (0, 0), (1, 1), (3, 2): secants 1 and 1/2, parabola's slope at 1 is (1 * 2 + 0.5 * 1)/3 = 5/6, which is
 * less than twice the smaller secant; at the ends the secants.
 */
static void slopes_are_those_of_the_paper(void **state)
{
    (void)state;
    static const double PX[] = { 0, 1, 3 }, PY[] = { 0, 1, 2 };
    double x[7], y[7], slope;
    gw_curve c;
    assert_int_equal(gw_curve_make(PX, PY, 3, x, y, &c, NULL, NULL), GW_OK);
    assert_int_equal(c.n, 5); /* made odd */
    const gw_curve_use use = { &c, 1.0, 0.0 };
    check_from("M. Steffen, Astronomy and Astrophysics 239 (1990) 443-450, equations 8 to 11");
    gw_curve_force(&use, 1, &slope);
    check_rel(slope, 5.0 / 6, 1e-15, "slope at 1");
    gw_curve_force(&use, 3, &slope);
    check_rel(slope, 0.5, 1e-15, "slope at the end");
    gw_curve_force(&use, 0, &slope);
    check_rel(slope, 1.0, 1e-15, "slope at 0 of the odd curve");
    /* a = (5/6 + 1/2 - 1)/4, b = (3/2 - 5/3 - 1/2)/2 at d = 1 */
    check_rel(gw_curve_force(&use, 2, NULL),
              1 + 5.0 / 6 + (1.5 - 5.0 / 3 - 0.5) / 2 + (5.0 / 6 + 0.5 - 1) / 4, 1e-14, "value at 2");
    check_rel(gw_curve_force(&use, -2, NULL), -gw_curve_force(&use, 2, NULL), 1e-15, "odd");
}

static void beyond_the_last_points_it_goes_straight_on(void **state)
{
    (void)state;
    double room_x[2 * N + 1], room_y[2 * N + 1], slope;
    gw_curve c = make(room_x, room_y);
    const gw_curve_use use = { &c, 2.0, 0.0 };
    check_rel(gw_curve_force(&use, 5.05, &slope), 2 * (11.7 + (11.7 - 3.8) / (4.05 - 2.6)), 1e-14, "force");
    check_rel(slope, 2 * (11.7 - 3.8) / (4.05 - 2.6), 1e-14, "slope");
    check_rel(gw_curve_force(&use, -4.1, &slope), -2 * (9.3 + (9.3 - 2.2) / 1.4), 1e-14, "force");
    check_rel(gw_curve_beyond(&use, 5.05), 1.0, 1e-14, "beyond");
    check_rel(gw_curve_beyond(&use, -4.1), 1.0, 1e-14, "beyond");
    check_abs(gw_curve_beyond(&use, 4.05), 0.0, 0, "at the last point");
    double h = 1e-5;
    for (double x = -5; x < 6; x += 0.37)
        check_abs((gw_curve_energy(&use, x + h) - gw_curve_energy(&use, x - h)) / (2 * h),
                  gw_curve_force(&use, x, NULL), 1e-7, "energy's derivative");
}

static void a_bracket_lengthens_every_point_and_the_inverse_finds_back(void **state)
{
    (void)state;
    double room_x[2 * N + 1], room_y[2 * N + 1];
    gw_curve c = make(room_x, room_y);
    const gw_curve_use use = { &c, 1.5, 20.0 };
    for (int i = 0; i < N; i++)
        check_abs(gw_curve_force(&use, X[i] + 1.5 * Y[i] / 20, NULL), 1.5 * Y[i], 1e-12,
                  "point on its bracket");
    for (double x = -6; x < 8; x += 0.23)
        check_abs(gw_curve_inverse(&use, gw_curve_force(&use, x, NULL)), x, 1e-11, "inverse");
}

static void points_that_make_no_curve_are_refused(void **state)
{
    (void)state;
    static const double FLAT_X[] = { 0, 1, 2 }, FLAT_Y[] = { 0, 3, 3 }, FALL_Y[] = { 0, 3, 2.9 },
                        UP_X[] = { 1, 2 }, UP_Y[] = { -1, 5 };
    double x[7], y[7];
    gw_curve c;
    gw_error err = { 0 };
    int bad = 9;
    assert_int_equal(gw_curve_make(FLAT_X, FLAT_Y, 3, x, y, &c, &bad, &err), GW_E_RANGE);
    assert_int_equal(bad, 2);
    assert_int_equal(gw_curve_make(FLAT_X, FALL_Y, 3, x, y, &c, &bad, &err), GW_E_RANGE);
    assert_int_equal(gw_curve_make(UP_X, UP_Y, 2, x, y, &c, &bad, &err),
                     GW_E_RANGE); /* (0, 0) lies above (1, -1) */
    assert_int_equal(bad, 0);
    assert_int_equal(gw_curve_make(FLAT_X, FLAT_Y, 2, x, y, &c, &bad, &err), GW_E_RANGE);
    assert_int_equal(bad, -1);
    check_contains(err.msg, "two points or more");
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(between_points_it_is_steffens_cubic),
        cmocka_unit_test(slopes_are_those_of_the_paper),
        cmocka_unit_test(beyond_the_last_points_it_goes_straight_on),
        cmocka_unit_test(a_bracket_lengthens_every_point_and_the_inverse_finds_back),
        cmocka_unit_test(points_that_make_no_curve_are_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
