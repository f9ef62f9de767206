/* SPDX-License-Identifier: MIT */
/* Spherical plain bearings against Hertz' formulas as handbooks print them, and ISO 12240-1. */
#include "giveway/bearing.h"
#include "giveway/units.h"
#include "support/check.h"

#include <math.h>

static const double STEEL = 2.0 * (1.0 - 0.09) / 207e9;

/*
 * Sphere in a spherical socket, formulas of Pilkey (Formulas for Stress, Strain and Structural Matrices)
 * worked out independently: E 207 GPa, nu 0.3, D2 - D1 as given. The formulas are printed, and were used,
 * with constants of three digits (0.721, 0.918, 1.040; exactly 0.72112, 0.91816, 1.04004), so the tolerance
 * is half a unit of the last digit of the row plus half a unit of the last digit of the constant.
 */
static void check_printed(double got, double want, double digit, double constant, const char *what)
{
    check_abs(got, want, 0.501 * digit + 0.5e-3 / constant * want, what);
}

static void hertz_in_a_cup_matches_the_worked_rows(void **state)
{
    static const struct {
        double ball, gap, load, radius, pressure, approach, secant, digit;
    } rows[] = {
        { 40.7, 0.075, 5000, 7.144, 46.8, 0.00461, 1.084e6, 1e3 },
        { 40.7, 0.075, 10000, 9.001, 58.9, 0.00732, 1.365e6, 1e3 },
        { 35.5, 0.075, 5000, 6.522, 56.1, 0.00505, 9.89e5, 1e3 },
        { 29, 0.075, 5000, 5.700, 73.4, 0.00578, 8.65e5, 1e3 },
        { 22, 0.061, 2000, 3.743, 68.1, 0.00352, 5.68e5, 1e3 },
    };

    (void)state;
    check_from("W. D. Pilkey, Formulas for Stress, Strain, and Structural Matrices: Hertz contact, sphere in "
               "a socket, worked out apart");
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        double d1 = rows[i].ball * GW_MM, d2 = d1 + rows[i].gap * GW_MM;
        gw_bearing_contact c = gw_hertz_contact(rows[i].load, d1 * d2 / (d2 - d1), STEEL);

        check_about("ball %g mm, gap %g mm, %g N", rows[i].ball, rows[i].gap, rows[i].load);
        check_printed(c.radius / GW_MM, rows[i].radius, 1e-3, 0.721, "radius [mm]");
        check_printed(c.pressure / GW_MPA, rows[i].pressure, 0.1, 0.918, "pressure [MPa]");
        check_printed(c.approach / GW_MM, rows[i].approach, 1e-5, 1.040, "approach [mm]");
        check_printed(c.secant / GW_N_PER_MM, rows[i].secant, rows[i].digit, 1.040, "secant rate [N/mm]");
    }
}

static void hertz_constants_are_the_handbooks(void **state)
{
    /* a = 0.721 (F K g)^(1/3), p = 0.918 (F/(K g)^2)^(1/3), approach = 1.040 (F^2 g^2/K)^(1/3). */
    gw_bearing_contact c = gw_hertz_contact(1.0, 1.0, 1.0);

    (void)state;
    check_rel(c.tangent, 1.5 * c.secant, 1e-15, "tangent");
    check_printed_in(
        "W. D. Pilkey, Formulas for Stress, Strain, and Structural Matrices: Hertz contact, printed "
        "constants");
    check_abs(c.radius, 0.721, 0.5e-3, "a");
    check_abs(c.pressure, 0.918, 0.5e-3, "p");
    check_abs(c.approach, 1.040, 0.5e-3, "approach");
}

static void a_sphere_on_a_rigid_plane_matches_the_published_answer(void **state)
{
    /* R 8 mm, E 1000 MPa, nu 0.3, F = 60 pi N: a = 1.010 mm (published problem answer). */
    gw_bearing_contact c = gw_hertz_contact(60.0 * GW_PI, 16e-3, (1.0 - 0.09) / 1e9);

    (void)state;
    check_printed_in("a published problem of Hertz contact: sphere of 8 mm on a rigid plane");
    check_abs(c.radius / GW_MM, 1.010, 0.5e-3, "contact radius [mm]");
}

static void a_steel_ball_on_steel_matches_the_worked_problem(void **state)
{
    /* 50 mm, 500 N, E 200 GPa, nu 0.3; on a plane and on an equal ball. */
    double give = 2.0 * (1.0 - 0.09) / 200e9;
    gw_bearing_contact plane = gw_hertz_contact(500.0, 50e-3, give), ball = gw_hertz_contact(500.0, 25e-3, give);

    (void)state;
    check_from("W. D. Pilkey, Formulas for Stress, Strain, and Structural Matrices: Hertz contact, steel "
               "ball of 50 mm, worked out apart");
    check_printed(plane.radius / GW_MM, 0.4401, 1e-4, 0.721, "plane, radius [mm]");
    check_printed(plane.pressure / GW_MPA, 1231.7, 0.1, 0.918, "plane, pressure [MPa]");
    check_printed(plane.approach / GW_MM, 0.007751, 1e-6, 1.040, "plane, approach [mm]");
    check_printed(ball.radius / GW_MM, 0.3493, 1e-4, 0.721, "ball, radius [mm]");
    check_printed(ball.pressure / GW_MPA, 1955.1, 0.1, 0.918, "ball, pressure [MPa]");
    check_printed(ball.approach / GW_MM, 0.009766, 1e-6, 1.040, "ball, approach [mm]");
}

/** d = 20 of series E. */
static gw_bearing bearing(gw_liner liner)
{
    return (gw_bearing){
        .ball_diameter = 29e-3, .width = 12e-3, .liner = liner, .liner_young = 3.1e9, .liner_poisson = 0.4
    };
}

static void steel_rate_is_the_hertz_secant_until_the_ring_is_too_narrow(void **state)
{
    gw_bearing b = bearing(GW_LINER_STEEL);
    gw_bearing_stiffness s;

    (void)state;
    b.clearance = 0.075e-3;
    assert_int_equal(gw_bearing_stiffness_at(&b, 5000.0, &s, NULL), GW_OK);
    check_abs(s.radial / GW_N_PER_MM, 8.65e5, 0.51e3, "secant");
    check_abs(s.contact_ratio, 0.39, 0.006, "a/R");
    assert_false(s.hertz_holds || s.full_width);
    assert_int_equal(gw_bearing_stiffness_at(&b, 500.0, &s, NULL), GW_OK);
    assert_true(s.hertz_holds);
    assert_int_equal(gw_bearing_stiffness_at(&b, 50e3, &s, NULL), GW_OK);
    assert_true(s.full_width);
    check_rel(s.radial, 12e-3 / STEEL, 1e-12, "flat punch over the width");
}

static void without_clearance_the_steel_pair_is_the_limit_of_a_small_one(void **state)
{
    gw_bearing b = bearing(GW_LINER_STEEL);
    gw_bearing_stiffness tight, small;

    (void)state;
    assert_int_equal(gw_bearing_stiffness_at(&b, 5000.0, &tight, NULL), GW_OK);
    b.clearance = 1e-9;
    assert_int_equal(gw_bearing_stiffness_at(&b, 5000.0, &small, NULL), GW_OK);
    check_rel(small.radial, tight.radial, 1e-12, "radial");
}

static void liner_rate_is_the_integral_over_the_loaded_half(void **state)
{
    gw_bearing b = bearing(GW_LINER_PTFE);
    gw_bearing_stiffness s;
    double sum_x = 0.0, sum_z = 0.0, modulus = 3.1e9 * 0.6 / (1.4 * 0.2), steel = 12e-3 / STEEL;
    const int n = 400;
    double beta = asin(12.0 / 29.0);

    (void)state;
    for (int i = 0; i < n; i++)
        for (int j = 0; j < n; j++) {
            double psi = beta * (2.0 * (i + 0.5) / n - 1.0), phi = GW_PI * ((j + 0.5) / n - 0.5);
            double area = 14.5e-3 * 14.5e-3 * cos(psi) * (2.0 * beta / n) * (GW_PI / n);

            sum_x += pow(cos(psi) * cos(phi), 2) * area;
            sum_z += pow(sin(psi), 2) * area;
        }
    assert_int_equal(gw_bearing_stiffness_at(&b, 0.0, &s, NULL), GW_OK);
    check_rel(s.radial, 1.0 / (1.0 / (modulus / 0.5e-3 * sum_x) + 1.0 / steel), 1e-4, "radial");
    check_rel(s.axial / s.radial, sum_z / sum_x, 1e-4, "axial over radial");
}

static void a_liner_without_a_modulus_is_refused(void **state)
{
    gw_bearing b = bearing(GW_LINER_PTFE);
    gw_bearing_stiffness s = { .radial = -7.0 };
    gw_error err = { 0 };

    (void)state;
    b.liner_young = 0.0;
    assert_int_equal(gw_bearing_stiffness_at(&b, 0.0, &s, &err), GW_E_RANGE);
    check_contains(err.msg, "Young's modulus");
    b.liner_young = 3.1e9;
    b.liner_poisson = 0.5;
    assert_int_equal(gw_bearing_stiffness_at(&b, 0.0, &s, &err), GW_E_RANGE);
    check_contains(err.msg, "Poisson's ratio");
    check_abs(s.radial, -7.0, 0.0, "untouched output");
}

static void a_bearing_is_a_hundred_times_stiffer_than_rubber(void **state)
{
    gw_liner liners[2] = { GW_LINER_STEEL, GW_LINER_PTFE };

    (void)state;
    for (int i = 0; i < 2; i++) {
        gw_bearing b = bearing(liners[i]);
        double radial, axial;

        b.clearance = i == 0 ? 0.075e-3 : 0.0;
        assert_int_equal(gw_bearing_rates(&b, &radial, &axial, NULL), GW_OK);
        assert_true(radial > 1e8 && radial < 1e10 && axial > 1e7 && axial < radial);
    }
}

static void given_rates_win_over_the_contact(void **state)
{
    gw_bearing b = bearing(GW_LINER_PTFE);
    double radial = 0.0, axial = 0.0;

    (void)state;
    b.radial = 2.5e8;
    assert_int_equal(gw_bearing_rates(&b, &radial, &axial, NULL), GW_OK);
    check_abs(radial, 2.5e8, 0.0, "given");
    assert_true(axial > 0.0);
    b = (gw_bearing){ .radial = 2e8, .axial = 3e7 };
    assert_int_equal(gw_bearing_rates(&b, &radial, &axial, NULL), GW_OK);
    check_abs(axial, 3e7, 0.0, "both given: no geometry needed");
}

static void clearance_classes_match_iso_12240(void **state)
{
    static const struct {
        double bore;
        double um[3][2];
    } rows[] = {
        { 15, { { 10, 40 }, { 40, 82 }, { 82, 124 } } },   { 20, { { 10, 40 }, { 40, 82 }, { 82, 124 } } },
        { 30, { { 12, 50 }, { 50, 100 }, { 100, 150 } } }, { 60, { { 15, 60 }, { 60, 120 }, { 120, 180 } } },
        { 80, { { 18, 72 }, { 72, 142 }, { 142, 212 } } }, { 100, { { 18, 85 }, { 85, 165 }, { 165, 245 } } },
    };
    double min = -1.0, max = -1.0;

    (void)state;
    check_copy_of("ISO 12240-1, radial internal clearance");
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        for (int c = 0; c < 3; c++) {
            gw_clearance_class which = (gw_clearance_class)c;

            assert_int_equal(gw_bearing_clearance(rows[i].bore * GW_MM, which, &min, &max, NULL), GW_OK);
            check_about("bore %g mm, class %d of 3", rows[i].bore, c + 1);
            check_abs(min, rows[i].um[c][0] * 1e-6, 1e-12, "from [m]");
            check_abs(max, rows[i].um[c][1] * 1e-6, 1e-12, "to [m]");
        }
}

static void tilt_by_geometry_rounds_down_to_the_table_of_series_e(void **state)
{
    static const double bores[] = { 10, 12, 15, 17, 20, 25, 30, 35, 40, 50, 60 };

    (void)state;
    check_printed_in("ISO 12240-1, series E, angle of tilt");
    for (size_t i = 0; i < sizeof bores / sizeof *bores; i++) {
        const gw_bearing_size *s = gw_bearing_series_e(bores[i] * GW_MM);
        double tilt;

        assert_non_null(s);
        tilt = gw_bearing_tilt_limit(s->ball, s->inner_width, s->outer_width);
        check_about("bore %g mm", bores[i]);
        check_abs(floor(tilt / GW_DEG), s->tilt / GW_DEG, 1e-9, "tilt [deg]");
    }
    assert_null(gw_bearing_series_e(21e-3));
}

static void the_static_rating_of_the_40_mm_size_follows_from_500_n_per_mm2(void **state)
{
    /* A maker's page prints C0 500 kN for d 40, dk 52.4, C 22; grooves take 13 % of the area. */
    gw_bearing b = { .ball_diameter = 52.4e-3, .width = 22e-3 };
    bool given = true;

    (void)state;
    check_printed_in("a maker's catalogue page, bearing of 40 mm bore");
    check_rel(gw_bearing_static_rating(&b, &given), 500e3 / 0.87, 0.01, "static rating before grooves [N]");
    assert_false(given);
}

static void checks_give_figure_limit_and_verdict(void **state)
{
    gw_bearing b = bearing(GW_LINER_PTFE);
    gw_bearing_duty duty = { .peak_load = 12e3, .shock_factor = 2.0, .tilt = 8.5 * GW_DEG };
    gw_verdict v[GW_BEARING_CHECKS];
    int n = 0;

    (void)state;
    b.static_rating = 23e3;
    assert_int_equal(gw_bearing_check(&b, &duty, v, &n, NULL), GW_OK);
    assert_int_equal(n, 2);
    check_abs(v[0].value, 24e3, 1e-9, "peak with shock");
    assert_false(v[0].holds);
    check_rel(v[1].value, 12e3 / (29e-3 * 12e-3), 1e-12, "specific load");
    assert_true(v[1].holds);
    duty.tilt_limit = 9.0 * GW_DEG;
    assert_int_equal(gw_bearing_check(&b, &duty, v, &n, NULL), GW_OK);
    assert_int_equal(n, 3);
    assert_true(v[2].holds);
    duty.tilt = 9.5 * GW_DEG;
    assert_int_equal(gw_bearing_check(&b, &duty, v, &n, NULL), GW_OK);
    assert_false(v[2].holds);
}

static void bad_bearings_are_named_and_leave_outputs_alone(void **state)
{
    gw_bearing b = bearing(GW_LINER_STEEL);
    gw_bearing_duty duty = { .peak_load = 1e3, .shock_factor = 0.5 };
    gw_verdict v[GW_BEARING_CHECKS];
    double radial = -7.0, axial = -7.0;
    gw_error err = { 0 };
    int n = -7;

    (void)state;
    b.width = 30e-3;
    assert_int_equal(gw_bearing_rates(&b, &radial, &axial, &err), GW_E_RANGE);
    check_contains(err.msg, "width_mm");
    b = bearing(GW_LINER_STEEL);
    b.ball_diameter = 0.0;
    assert_int_equal(gw_bearing_rates(&b, &radial, &axial, &err), GW_E_RANGE);
    check_contains(err.msg, "ball_diameter_mm");
    b = bearing(GW_LINER_STEEL);
    b.clearance = -1e-6;
    assert_int_equal(gw_bearing_rates(&b, &radial, &axial, &err), GW_E_RANGE);
    check_contains(err.msg, "clearance_mm");
    check_abs(radial, -7.0, 0.0, "untouched");
    assert_int_equal(gw_bearing_clearance(141e-3, GW_CLEARANCE_C2, &radial, &axial, &err), GW_E_RANGE);
    assert_int_equal(gw_bearing_clearance(0.0, GW_CLEARANCE_C2, &radial, &axial, &err), GW_E_RANGE);
    check_contains(err.msg, "bore");
    b = bearing(GW_LINER_STEEL);
    assert_int_equal(gw_bearing_check(&b, &duty, v, &n, &err), GW_E_RANGE);
    check_contains(err.msg, "shock");
    duty = (gw_bearing_duty){ .peak_load = -1.0, .shock_factor = 2.0 };
    assert_int_equal(gw_bearing_check(&b, &duty, v, &n, &err), GW_E_RANGE);
    check_contains(err.msg, "peak load of -1 N must not be negative");
    duty = (gw_bearing_duty){ .peak_load = 1.0, .shock_factor = 2.0, .tilt = -0.1 };
    assert_int_equal(gw_bearing_check(&b, &duty, v, &n, &err), GW_E_RANGE);
    check_contains(err.msg, "tilt");
    b.width = 0.0;
    assert_int_equal(gw_bearing_check(&b, &duty, v, &n, &err), GW_E_RANGE);
    check_contains(err.msg, "width_mm 0 must be above 0");
    assert_int_equal(n, -7);
}

/* A spherical bearing at a strut's top takes no load along the strut. */
static void a_floating_bearing_has_no_axial_rate(void **unused)
{
    (void)unused;
    gw_bearing b = bearing(GW_LINER_PTFE);
    double radial = 0.0, axial = -1.0;
    gw_error err = { 0 };
    b.floats = true;
    assert_int_equal(gw_bearing_rates(&b, &radial, &axial, &err), GW_OK);
    assert_true(radial > 0.0);
    check_abs(axial, 0.0, 0.0, "axial rate");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(hertz_in_a_cup_matches_the_worked_rows),
        cmocka_unit_test(hertz_constants_are_the_handbooks),
        cmocka_unit_test(a_sphere_on_a_rigid_plane_matches_the_published_answer),
        cmocka_unit_test(a_steel_ball_on_steel_matches_the_worked_problem),
        cmocka_unit_test(steel_rate_is_the_hertz_secant_until_the_ring_is_too_narrow),
        cmocka_unit_test(without_clearance_the_steel_pair_is_the_limit_of_a_small_one),
        cmocka_unit_test(liner_rate_is_the_integral_over_the_loaded_half),
        cmocka_unit_test(a_liner_without_a_modulus_is_refused),
        cmocka_unit_test(a_bearing_is_a_hundred_times_stiffer_than_rubber),
        cmocka_unit_test(given_rates_win_over_the_contact),
        cmocka_unit_test(a_floating_bearing_has_no_axial_rate),
        cmocka_unit_test(clearance_classes_match_iso_12240),
        cmocka_unit_test(tilt_by_geometry_rounds_down_to_the_table_of_series_e),
        cmocka_unit_test(the_static_rating_of_the_40_mm_size_follows_from_500_n_per_mm2),
        cmocka_unit_test(checks_give_figure_limit_and_verdict),
        cmocka_unit_test(bad_bearings_are_named_and_leave_outputs_alone),
    };
    return cmocka_run_group_tests_name("bearing", tests, NULL, NULL);
}
