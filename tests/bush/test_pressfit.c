/* SPDX-License-Identifier: MIT */
/* Press fits against worked examples; ISO 286-2 limits from 30 to 80 mm. */
#include "giveway/pressfit.h"
#include "giveway/units.h"
#include "support/check.h"

#include <math.h>

static void solid_shaft_100_in_hub_150_matches_the_published_example(void **state)
{
    /* Interference 0.1 mm, E 210 GPa, l 50, mu 0.15: p 58.3 MPa, bore hoop 151.7 MPa, T 6.87 kN m (a
     * published web example of the formulas in Shigley). Half a unit of the last printed digit. */
    gw_press_fit f = { 100e-3, 150e-3, 0.0, 50e-3, 0.1e-3, 0.15, { 210e9, 0.3 }, { 210e9, 0.3 } };
    gw_press_result r;

    (void)state;
    assert_int_equal(gw_press_fit_solve(&f, &r, NULL), GW_OK);
    check_abs(r.sleeve_hoop, -r.pressure, 1e-6, "a solid shaft is squeezed alike everywhere");
    check_printed_in(
        "J. E. Shigley, Mechanical Engineering Design (Budynas, Nisbett), press fits, a published "
        "worked example");
    check_abs(r.pressure / GW_MPA, 58.3, 0.05, "pressure [MPa]");
    check_abs(r.housing_hoop / GW_MPA, 151.7, 0.05, "bore hoop [MPa]");
    check_abs(r.torque / GW_KN, 6.87, 0.005, "torque [kN m]");
    check_abs(r.pressure / GW_MPA, 58.3333, 0.5e-4, "pressure, recomputed");
    check_abs(r.housing_hoop / GW_MPA, 151.6667, 0.5e-4, "bore hoop, recomputed");
    check_abs(r.torque / GW_KN, 6.87223, 0.5e-5, "torque, recomputed");
}

/** Joint 45, housing 61, sleeve bore 40, interference 0.05 on the diameter. */
static gw_press_fit hollow(void)
{
    return (gw_press_fit){ 45e-3, 61e-3, 40e-3, 40e-3, 0.05e-3, 0.1, { 207e9, 0.3 }, { 207e9, 0.3 } };
}

static void hollow_sleeve_in_a_steel_hub_matches_the_worked_values(void **state)
{
    gw_press_fit f = hollow();
    gw_press_result r;

    (void)state;
    check_from("J. E. Shigley, Mechanical Engineering Design (Budynas, Nisbett), press fits, hollow sleeve "
               "in steel, worked out apart");
    assert_int_equal(gw_press_fit_solve(&f, &r, NULL), GW_OK);
    check_abs(r.pressure / GW_MPA, 19.29954, 0.5e-5, "pressure [MPa]");
    check_abs(r.housing_hoop / GW_MPA, 65.3863, 0.5e-4, "hub bore hoop [MPa]");
    check_abs(r.sleeve_hoop / GW_MPA, -183.913, 0.5e-3, "sleeve bore hoop [MPa]");
    check_abs(r.force, 10913.6, 0.05, "force [N]");
}

static void one_material_agrees_with_the_short_formula(void **state)
{
    /* p = E delta/(2 R^3) (ro^2-R^2)(R^2-ri^2)/(ro^2-ri^2), delta radial. */
    gw_press_fit f = hollow();
    gw_press_result r;
    double ro2 = 30.5 * 30.5, r2 = 22.5 * 22.5, ri2 = 400.0;

    (void)state;
    assert_int_equal(gw_press_fit_solve(&f, &r, NULL), GW_OK);
    check_rel(r.pressure / GW_MPA, 207e3 * 0.025 / (2.0 * 22.5 * r2) * (ro2 - r2) * (r2 - ri2) / (ro2 - ri2),
              1e-12, "pressure");
}

static void aluminium_hub_matches_the_worked_value(void **state)
{
    gw_press_fit f = hollow();
    gw_press_result r;

    (void)state;
    check_from("J. E. Shigley, Mechanical Engineering Design (Budynas, Nisbett), press fits, hollow sleeve "
               "in aluminium, worked out apart");
    f.housing = GW_RING_ALUMINIUM;
    assert_int_equal(gw_press_fit_solve(&f, &r, NULL), GW_OK);
    check_abs(r.pressure / GW_MPA, 11.96422, 0.5e-5, "pressure [MPa]");
}

static void what_the_sleeve_shrinks_and_the_hub_grows_is_the_interference(void **state)
{
    gw_press_fit f = hollow();
    gw_press_result r;
    double grown;

    (void)state;
    f.housing = GW_RING_ALUMINIUM;
    assert_int_equal(gw_press_fit_solve(&f, &r, NULL), GW_OK);
    grown = f.diameter * (r.housing_hoop + 0.33 * r.pressure) / 70e9;
    check_rel(grown + r.sleeve_shrink, f.interference, 1e-12, "together");
}

static void iso_286_limits_from_30_to_80_mm(void **state)
{
    /* ISO 286-2, micrometres; 50 H7/p6 gives 1 to 42. */
    static const struct {
        double mm;
        gw_fit_class fit;
        double hole, lower, upper, least, most;
    } rows[] = {
        { 45, GW_FIT_P6, 25, 26, 42, 1, 42 },  { 45, GW_FIT_R6, 25, 34, 50, 9, 50 },
        { 45, GW_FIT_S6, 25, 43, 59, 18, 59 }, { 50, GW_FIT_P6, 25, 26, 42, 1, 42 },
        { 60, GW_FIT_P6, 30, 32, 51, 2, 51 },  { 60, GW_FIT_R6, 30, 41, 60, 11, 60 },
        { 60, GW_FIT_S6, 30, 53, 72, 23, 72 }, { 65, GW_FIT_S6, 30, 53, 72, 23, 72 },
        { 70, GW_FIT_P6, 30, 32, 51, 2, 51 },  { 70, GW_FIT_R6, 30, 43, 62, 13, 62 },
        { 70, GW_FIT_S6, 30, 59, 78, 29, 78 }, { 80, GW_FIT_S6, 30, 59, 78, 29, 78 },
    };

    (void)state;
    check_copy_of("ISO 286-2, limits of H7 with p6, r6, s6");
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        gw_iso_fit f;

        assert_int_equal(gw_iso_fit_of(rows[i].mm * GW_MM, rows[i].fit, &f, NULL), GW_OK);
        check_about("%g %s [m]", rows[i].mm, gw_fit_name(rows[i].fit));
        check_abs(f.hole.lower, 0.0, 0.0, "hole, lower");
        check_abs(f.hole.upper, rows[i].hole * 1e-6, 1e-12, "hole, upper");
        check_abs(f.shaft.lower, rows[i].lower * 1e-6, 1e-12, "shaft, lower");
        check_abs(f.shaft.upper, rows[i].upper * 1e-6, 1e-12, "shaft, upper");
        check_abs(f.least, rows[i].least * 1e-6, 1e-12, "least");
        check_abs(f.most, rows[i].most * 1e-6, 1e-12, "most");
    }
    assert_string_equal(gw_fit_name(GW_FIT_R6), "H7/r6");
}

static void fits_of_bush_sleeves_match_the_worked_pressures_and_forces(void **state)
{
    /* Hub wall 8, sleeve wall 2.5, l 40, mu 0.12, steel 207 GPa, 0.3; least and greatest interference. */
    static const struct {
        double mm;
        gw_fit_class fit;
        double p[2], force[2];
    } rows[] = {
        { 45, GW_FIT_P6, { 0.39, 16.21 }, { 262, 11001 } },
        { 45, GW_FIT_R6, { 3.47, 19.30 }, { 2357, 13096 } },
        { 45, GW_FIT_S6, { 6.95, 22.77 }, { 4715, 15454 } },
        { 60, GW_FIT_P6, { 0.44, 11.11 }, { 394, 10056 } },
        { 60, GW_FIT_S6, { 5.01, 15.69 }, { 4535, 14197 } },
        { 70, GW_FIT_S6, { 4.65, 12.51 }, { 4908, 13200 } },
    };

    (void)state;
    check_from("J. E. Shigley, Mechanical Engineering Design (Budynas, Nisbett), press fits, with ISO 286 "
               "interference, worked out apart");
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        for (int end = 0; end < 2; end++) {
            double d = rows[i].mm * GW_MM;
            gw_press_fit f = { d, d + 16e-3, d - 5e-3, 40e-3, 0.0, 0.12, GW_RING_STEEL, GW_RING_STEEL };
            gw_press_result r;
            gw_iso_fit fit;

            assert_int_equal(gw_iso_fit_of(d, rows[i].fit, &fit, NULL), GW_OK);
            f.interference = end == 0 ? fit.least : fit.most;
            assert_int_equal(gw_press_fit_solve(&f, &r, NULL), GW_OK);
            check_about("%g %s, %s", rows[i].mm, gw_fit_name(rows[i].fit), end == 0 ? "loosest" : "tightest");
            check_abs(r.pressure / GW_MPA, rows[i].p[end], 0.00501, "pressure [MPa]");
            check_abs(r.force, rows[i].force[end], 0.501, "force [N]");
        }
}

static void the_wall_beside_an_off_centre_bore(void **state)
{
    gw_offset_wall w;

    (void)state;
    assert_int_equal(gw_offset_wall_of(40e-3, 24e-3, 5e-3, &w, NULL), GW_OK);
    check_abs(w.thinnest, 3e-3, 1e-15, "thinnest");
    assert_true(gw_offset_check(&w).holds);
    assert_int_equal(gw_offset_wall_of(40e-3, 24e-3, 9e-3, &w, NULL), GW_OK);
    assert_true(w.thinnest < 0.0);
    assert_false(gw_offset_check(&w).holds);
}

static void checks_use_the_tightest_and_the_loosest_fit(void **state)
{
    gw_press_result worst = { .housing_hoop = 300e6, .sleeve_hoop = -250e6 }, held = { .force = 4e3 };
    gw_press_limits limits = { 250e6, 350e6, 5e3 };
    gw_verdict v[GW_PRESS_CHECKS];

    (void)state;
    assert_int_equal(gw_press_check(&worst, &held, &limits, v), 3);
    assert_false(v[0].holds);
    assert_true(v[1].holds);
    assert_false(v[2].holds);
    limits.push_out = 0.0;
    assert_int_equal(gw_press_check(&worst, &held, &limits, v), 2);
}

static void refuse(gw_press_fit f, const char *part)
{
    gw_press_result r = { .pressure = -7.0 };
    gw_error err = { 0 };

    assert_int_equal(gw_press_fit_solve(&f, &r, &err), GW_E_RANGE);
    check_contains(err.msg, part);
    check_abs(r.pressure, -7.0, 0.0, "untouched output");
}

static void bad_sizes_are_named(void **state)
{
    gw_press_fit f = hollow();
    gw_iso_fit iso = { .least = -7.0 };
    gw_offset_wall wall;
    gw_error err = { 0 };

    (void)state;
    f.diameter = 0.0;
    refuse(f, "diameter");
    f = hollow();
    f.housing_outside = 45e-3;
    refuse(f, "housing's outside");
    f = hollow();
    f.sleeve_inside = 46e-3;
    refuse(f, "sleeve's bore");
    f = hollow();
    f.interference = -1e-6;
    refuse(f, "clearance");
    f = hollow();
    f.friction = -0.1;
    refuse(f, "friction");
    f = hollow();
    f.housing.young = 0.0;
    refuse(f, "housing");
    f = hollow();
    f.sleeve.poisson = 0.6;
    refuse(f, "sleeve");
    assert_int_equal(gw_iso_fit_of(30e-3, GW_FIT_P6, &iso, &err), GW_E_RANGE);
    assert_int_equal(gw_iso_fit_of(81e-3, GW_FIT_P6, &iso, &err), GW_E_RANGE);
    check_contains(err.msg, "30");
    check_abs(iso.least, -7.0, 0.0, "untouched output");
    assert_int_equal(gw_offset_wall_of(20e-3, 24e-3, 0.0, &wall, &err), GW_E_RANGE);
    assert_int_equal(gw_offset_wall_of(40e-3, 24e-3, -1e-3, &wall, &err), GW_E_RANGE);
    check_contains(err.msg, "offset_mm");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(solid_shaft_100_in_hub_150_matches_the_published_example),
        cmocka_unit_test(hollow_sleeve_in_a_steel_hub_matches_the_worked_values),
        cmocka_unit_test(one_material_agrees_with_the_short_formula),
        cmocka_unit_test(aluminium_hub_matches_the_worked_value),
        cmocka_unit_test(what_the_sleeve_shrinks_and_the_hub_grows_is_the_interference),
        cmocka_unit_test(iso_286_limits_from_30_to_80_mm),
        cmocka_unit_test(fits_of_bush_sleeves_match_the_worked_pressures_and_forces),
        cmocka_unit_test(the_wall_beside_an_off_centre_bore),
        cmocka_unit_test(checks_use_the_tightest_and_the_loosest_fit),
        cmocka_unit_test(bad_sizes_are_named),
    };
    return cmocka_run_group_tests_name("press fit", tests, NULL, NULL);
}
