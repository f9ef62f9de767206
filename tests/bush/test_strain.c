/* SPDX-License-Identifier: MIT */
/*
 * Strain estimates against the rates they belong to: the shear stress at a sleeve, added up over its face, is
 * the force, so each formula can be checked against Adkins and Gent (1954) without a second opinion.
 */
#include "bush/handbook.h"
#include "giveway/strain.h"
#include "giveway/units.h"
#include "support/check.h"

#include <math.h>
#include <string.h>

static gw_annulus bush(void)
{
    gw_annulus b = { .inner_radius = 10e-3, .outer_radius = 20e-3, .length = 40e-3 };

    b.material.shear_modulus = (gw_value){ .known = true, .v = 1e6 };
    return b;
}

static gw_rubber_strain strain_at(const gw_annulus *b, bool bonded, int axis, double amount)
{
    double move[6] = { 0 };
    gw_rubber_strain s;

    move[axis] = amount;
    assert_int_equal(gw_rubber_strain_of(b, bonded, move, move + 3, &s, NULL), GW_OK);
    return s;
}

static void axial_shear_at_the_sleeve_adds_up_to_the_axial_force(void **state)
{
    gw_annulus b = bush();
    gw_plain_bush p = { 10e-3, 20e-3, 40e-3, 1e6, HUGE_VAL };
    double shear = strain_at(&b, true, 2, 2e-3).travel_shear;

    (void)state;
    check_rel(1e6 * shear * 2.0 * GW_PI * 10e-3 * 40e-3, gw_handbook_axial(&p) * 2e-3, 1e-12, "force");
}

static void torsional_shear_at_the_sleeve_adds_up_to_the_moment(void **state)
{
    gw_annulus b = bush();
    gw_plain_bush p = { 10e-3, 20e-3, 40e-3, 1e6, HUGE_VAL };
    double shear = strain_at(&b, true, 5, 0.2).travel_shear;

    (void)state;
    check_rel(1e6 * shear * 2.0 * GW_PI * 10e-3 * 10e-3 * 40e-3, gw_handbook_torsional(&p) * 0.2, 1e-12,
              "moment");
}

static void axial_and_tilt_add_while_torsion_stands_square_to_them(void **state)
{
    gw_annulus b = bush();
    double u[3] = { 0.0, 0.0, 1e-3 }, theta[3] = { 0.03, 0.04, 0.1 };
    double axial = strain_at(&b, true, 2, 1e-3).travel_shear,
           tilt = strain_at(&b, true, 3, 0.05).travel_shear;
    double twist = strain_at(&b, true, 5, 0.1).travel_shear;
    gw_rubber_strain s;

    (void)state;
    assert_int_equal(gw_rubber_strain_of(&b, true, u, theta, &s, NULL), GW_OK);
    check_rel(s.travel_shear, hypot(axial + tilt, twist), 1e-12, "together");
}

static void compression_counts_the_end_where_tilt_adds(void **state)
{
    gw_annulus b = bush();
    double u[3] = { 1e-3, 0.0, 0.0 }, theta[3] = { 0.0, 0.05, 0.0 };
    gw_rubber_strain s;

    (void)state;
    check_rel(strain_at(&b, true, 1, -2e-3).compression, 0.2, 1e-12, "radial alone");
    assert_int_equal(gw_rubber_strain_of(&b, true, u, theta, &s, NULL), GW_OK);
    check_rel(s.compression, 0.2, 1e-12, "1 mm and 0.05 rad at 20 mm");
}

static void flow_in_a_thin_layer_is_the_parabola_of_lubrication(void **state)
{
    /* A flux R u through a gap t: bonded faces 6 R u/t^2, one face free 3 R u/t^2; the length makes tanh(s)
     * one. */
    gw_annulus b = bush();
    double want;

    (void)state;
    b.inner_radius = 20e-3;
    b.outer_radius = 20.4e-3;
    b.length = 0.5;
    want = 6.0 * 20.2e-3 * 1e-5 / (0.4e-3 * 0.4e-3);
    check_rel(strain_at(&b, true, 0, 1e-5).flow_shear, want, 0.02, "bonded");
    check_rel(strain_at(&b, false, 0, 1e-5).flow_shear, 0.5 * want, 0.04, "sliding");
}

/** Slope dv/dr of the shear at r = a of the plane field f = A r + B r ln r + C r^3 + D/r, solved on paper. */
static void flow_of_a_thick_wall_is_the_slope_of_the_plane_field(void **state)
{
    /*
     * u_r = f/r cos, u_theta = -f' sin with f(b) = f'(b) = 0, f(a) = a, f'(a) = 1: shear at a is
     * -f'' + f'/r - f/r^2, of which the last two cancel. For a = 1, b = 2 the system is solved here by Gauss'
     * elimination.
     */
    double m[4][5] = { { 1, 0, 1, 1, 1 },
                       { 1, 1, 3, -1, 1 },
                       { 2, 2 * log(2.0), 8, 0.5, 0 },
                       { 1, 1 + log(2.0), 12, -0.25, 0 } };
    gw_annulus b = bush();
    double curvature;

    (void)state;
    for (int i = 0; i < 4; i++) {
        int best = i;

        for (int j = i + 1; j < 4; j++)
            if (fabs(m[j][i]) > fabs(m[best][i])) best = j;
        for (int k = 0; k < 5; k++) {
            double hold = m[i][k];

            m[i][k] = m[best][k];
            m[best][k] = hold;
        }
        for (int j = 0; j < 4; j++) {
            double factor = m[j][i] / m[i][i];

            for (int k = 0; k < 5 && j != i; k++) m[j][k] -= factor * m[i][k];
        }
    }
    curvature = m[1][4] / m[1][1] + 6.0 * m[2][4] / m[2][2] + 2.0 * m[3][4] / m[3][3];
    b.length = 10.0; /* no ends */
    check_rel(strain_at(&b, true, 0, 1e-3).flow_shear, fabs(curvature) * 1e-3 / 10e-3, 1e-9, "shear");
}

static void a_short_bush_makes_its_rubber_flow_less(void **state)
{
    gw_annulus b = bush();
    double last = strain_at(&b, true, 0, 1e-3).flow_shear;

    (void)state;
    for (b.length = 20e-3; b.length > 1e-3; b.length *= 0.5) {
        double now = strain_at(&b, true, 0, 1e-3).flow_shear;

        assert_true(now < last);
        last = now;
    }
}

static void a_sliding_sleeve_shears_nothing_by_its_travel(void **state)
{
    gw_annulus b = bush();

    (void)state;
    check_abs(strain_at(&b, false, 2, 5e-3).travel_shear, 0.0, 0.0, "axial");
    check_abs(strain_at(&b, false, 5, 0.5).travel_shear, 0.0, 0.0, "torsional");
}

static void an_interleaf_shares_axial_travel_by_the_layers_compliance(void **state)
{
    /* A thin interleaf at the geometric mean halves the axial travel: the shear is as without it. */
    gw_annulus b = bush();
    double plain = strain_at(&b, true, 2, 2e-3).travel_shear,
           radial = strain_at(&b, true, 0, 1e-3).flow_shear;

    (void)state;
    b.has_interleaf = true;
    b.interleaf_radius = sqrt(10e-3 * 20e-3);
    b.interleaf_thickness = 1e-9;
    check_rel(strain_at(&b, true, 2, 2e-3).travel_shear, plain, 1e-5, "axial");
    assert_true(strain_at(&b, true, 0, 1e-3).flow_shear > radial);
}

/* Rubber from 10 to 12.5 and from 13.5 to 20 mm. */
static gw_annulus two_layers(void)
{
    gw_annulus b = bush();

    b.has_interleaf = true;
    b.interleaf_radius = 13e-3;
    b.interleaf_thickness = 1e-3;
    return b;
}

/*
 * Layers in series: each takes the share of the other's stiffness. Axially both carry one force F, the stress
 * is F/(2 pi r L), so the shear is u/(a (ln(b1/a) + ln(b/a2))), greatest at the inner sleeve; so too in
 * torsion, where it is 2 theta / a^2 / (1/a^2 - 1/b1^2 + 1/a2^2 - 1/b^2). Adkins and Gent (1954).
 */
static void layers_of_unlike_thickness_carry_one_force(void **state)
{
    gw_annulus b = two_layers();
    double logs = log(12.5 / 10.0) + log(20.0 / 13.5);
    double squares = 1 / 100.0 - 1 / (12.5 * 12.5) + 1 / (13.5 * 13.5) - 1 / 400.0;

    (void)state;
    check_from("J. E. Adkins and A. N. Gent, British Journal of Applied Physics 5 (1954) 354-358");
    check_rel(strain_at(&b, true, 2, 2e-3).travel_shear, 2e-3 / (10e-3 * logs), 1e-12, "axial shear [-]");
    check_rel(strain_at(&b, true, 5, 0.2).travel_shear, 2 * 0.2 / 100.0 / squares, 1e-12,
              "torsional shear [-]");
}

/* Radial travel at an end: the middle is shared by the radial rates, what tilt adds by the conical ones. */
static void ends_of_the_layers_close_by_their_shares_of_travel_and_tilt(void **state)
{
    gw_annulus b = two_layers();
    gw_plain_bush in = { 10e-3, 12.5e-3, 40e-3, 1e6, HUGE_VAL },
                  out = { 13.5e-3, 20e-3, 40e-3, 1e6, HUGE_VAL };
    double u[3] = { 1e-3, 0.0, 0.0 }, theta[3] = { 0.0, 0.03, 0.0 }, at_end = 0.03 * 20e-3;
    double radial = gw_handbook_radial(&in) / (gw_handbook_radial(&in) + gw_handbook_radial(&out));
    double conical = gw_handbook_conical(&in) / (gw_handbook_conical(&in) + gw_handbook_conical(&out));
    double inner = (1e-3 * (1 - radial) + at_end * (1 - conical)) / 2.5e-3;
    double outer = (1e-3 * radial + at_end * conical) / 6.5e-3;
    gw_rubber_strain s;

    (void)state;
    assert_int_equal(gw_rubber_strain_of(&b, true, u, theta, &s, NULL), GW_OK);
    assert_true(radial > 0.6 && fabs(radial - conical) > 0.01); /* or the shares could be swapped unseen */
    check_rel(s.compression, fmax(inner, outer), 1e-12, "the worse layer");
}

static void checks_compare_with_the_materials_limits_where_it_has_them(void **state)
{
    gw_material m = { .name = "trial" };
    gw_rubber_strain s = { 0.8, 0.2, 1.5, 2.5 };
    gw_verdict v[GW_STRAIN_CHECKS];

    (void)state;
    assert_int_equal(gw_rubber_check(&m, &s, v), 1);
    assert_true(v[0].holds);
    m.shear_strain_limit = (gw_value){ .known = true, .v = 0.75 };
    m.compressive_strain_limit = (gw_value){ .known = true, .v = 0.25 };
    assert_int_equal(gw_rubber_check(&m, &s, v), 3);
    assert_false(v[0].holds);
    assert_true(v[1].holds);
}

static void bad_shapes_and_deflections_are_named(void **state)
{
    gw_annulus b = bush();
    double u[3] = { 0 }, theta[3] = { 0 };
    gw_rubber_strain s = { .total = -7.0 };
    gw_error err = { 0 };

    (void)state;
    b.inner_radius = 21e-3;
    assert_int_equal(gw_rubber_strain_of(&b, true, u, theta, &s, &err), GW_E_RANGE);
    check_contains(err.msg, "inner_diameter_mm");
    b = bush();
    b.length = 0.0;
    assert_int_equal(gw_rubber_strain_of(&b, true, u, theta, &s, &err), GW_E_RANGE);
    check_contains(err.msg, "length_mm");
    b = bush();
    b.has_interleaf = true;
    b.interleaf_radius = 20e-3;
    assert_int_equal(gw_rubber_strain_of(&b, true, u, theta, &s, &err), GW_E_RANGE);
    check_contains(err.msg, "interleaf");
    b.interleaf_radius = 15e-3;
    b.material.shear_modulus.v = 0.0;
    assert_int_equal(gw_rubber_strain_of(&b, true, u, theta, &s, &err), GW_E_RANGE);
    check_contains(err.msg, "shear_modulus_MPa");
    b = bush();
    u[1] = HUGE_VAL;
    assert_int_equal(gw_rubber_strain_of(&b, true, u, theta, &s, &err), GW_E_RANGE);
    check_contains(err.msg, "finite");
    check_abs(s.total, -7.0, 0.0, "untouched output");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(axial_shear_at_the_sleeve_adds_up_to_the_axial_force),
        cmocka_unit_test(torsional_shear_at_the_sleeve_adds_up_to_the_moment),
        cmocka_unit_test(axial_and_tilt_add_while_torsion_stands_square_to_them),
        cmocka_unit_test(compression_counts_the_end_where_tilt_adds),
        cmocka_unit_test(flow_in_a_thin_layer_is_the_parabola_of_lubrication),
        cmocka_unit_test(flow_of_a_thick_wall_is_the_slope_of_the_plane_field),
        cmocka_unit_test(a_short_bush_makes_its_rubber_flow_less),
        cmocka_unit_test(a_sliding_sleeve_shears_nothing_by_its_travel),
        cmocka_unit_test(an_interleaf_shares_axial_travel_by_the_layers_compliance),
        cmocka_unit_test(layers_of_unlike_thickness_carry_one_force),
        cmocka_unit_test(ends_of_the_layers_close_by_their_shares_of_travel_and_tilt),
        cmocka_unit_test(checks_compare_with_the_materials_limits_where_it_has_them),
        cmocka_unit_test(bad_shapes_and_deflections_are_named),
    };
    return cmocka_run_group_tests_name("strain", tests, NULL, NULL);
}
