/* SPDX-License-Identifier: MIT */
/*
 * The solved annulus: published closed forms in its limits, convergence, shapes, refusals. Outside
 * comparisons with three-dimensional models are in tests/crosscheck/bush_vs_ccx.py.
 */
#include "bush/handbook.h"
#include "bush/layer.h"
#include "giveway/annulus.h"
#include "giveway/units.h"
#include "support/check.h"

#include <gsl/gsl_errno.h>
#include <math.h>

/* Radii and length in mm, bulk over shear modulus; G = 0.9 MPa. */
static gw_annulus tube(double a, double b, double length, double ratio)
{
    gw_annulus t = { .inner_radius = a * GW_MM, .outer_radius = b * GW_MM, .length = length * GW_MM };
    t.material.shear_modulus = (gw_value){ .known = true, .v = 0.9e6 };
    t.material.bulk_modulus = (gw_value){ .known = isfinite(ratio), .v = ratio * 0.9e6 };
    return t;
}

static gw_plain_bush plain(const gw_annulus *t)
{
    return (gw_plain_bush){ t->inner_radius, t->outer_radius, t->length, t->material.shear_modulus.v,
                            t->material.bulk_modulus.known ? t->material.bulk_modulus.v : (double)INFINITY };
}

static gw_given_rates solved(const gw_annulus *t, int refine)
{
    gw_annulus_options options = { .refine = refine };
    gw_given_rates r;
    gw_error err = { 0 };
    if (gw_annulus_rates(t, &options, &r, &err) != GW_OK) fail_msg("%s", err.msg);
    return r;
}

static void check_all(const gw_given_rates *got, const gw_given_rates *want, double tol)
{
    for (int i = 0; i < 2; i++) {
        check_rel(got->radial[i], want->radial[i], tol, "radial");
        check_rel(got->conical[i], want->conical[i], tol, "conical");
    }
    check_rel(got->axial, want->axial, tol, "axial");
    check_rel(got->torsional, want->torsional, tol, "torsional");
}

/* Adkins & Gent, Brit. J. Appl. Phys. 5 (1954) 354-358, long bush: what another length adds, without ends. */
static void added_length_of_a_long_bush_carries_the_adkins_gent_long_rates(void **state)
{
    (void)state;
    check_from("J. E. Adkins, A. N. Gent, Brit. J. Appl. Phys. 5 (1954) 354-358, long bush");
    gw_annulus one = tube(10, 20, 400, (double)INFINITY), two = tube(10, 20, 800, (double)INFINITY);
    gw_given_rates r1 = solved(&one, 0), r2 = solved(&two, 0);
    gw_plain_bush p = plain(&one);
    check_about("a 10, b 20, L 400 to 800 mm [N/m, N m/rad]");
    check_rel(r2.radial[0] - r1.radial[0], gw_handbook_radial_long(&p), 2e-3, "radial");
    check_rel(r2.axial - r1.axial, gw_handbook_axial(&p), 1e-3, "axial");
    check_rel(r2.torsional, 2.0 * gw_handbook_torsional(&p), 1e-6, "torsional");
}

/* The same paper, short bush. The bonds still hold a rim as wide as the length. */
static void a_disc_tends_to_the_adkins_gent_short_rate(void **state)
{
    (void)state;
    check_from("J. E. Adkins, A. N. Gent, Brit. J. Appl. Phys. 5 (1954) 354-358, short bush");
    gw_annulus disc = tube(10, 20, 0.1, (double)INFINITY);
    gw_plain_bush p = plain(&disc);
    gw_given_rates r = solved(&disc, 1);
    check_about("a 10, b 20, L 0.1 mm [N/m]");
    check_rel(r.radial[0], gw_handbook_radial_short(&p), 0.01, "plane stress");
    assert_true(r.axial > 0.0 && r.axial < gw_handbook_axial(&p));
}

/* The plane formula for any Kolosov constant, exact in plane strain: moderate and high bulk moduli. */
static void added_length_follows_the_plane_strain_formula_at_any_bulk_modulus(void **state)
{
    (void)state;
    static const double RATIO[] = { 1.5, 30.0, 1000.0, 5000.0 };
    for (size_t i = 0; i < sizeof RATIO / sizeof *RATIO; i++) {
        gw_annulus one = tube(20, 23, 500, RATIO[i]), two = tube(20, 23, 1000, RATIO[i]);
        gw_plain_bush p = plain(&one);
        double want = gw_handbook_radial_plane(&p, gw_handbook_kappa(p.g, p.k));
        check_rel(solved(&two, 0).radial[0] - solved(&one, 0).radial[0], want, 2e-3, "plane strain");
    }
}

/* So thin that the rubber cannot flow: uniform compression K + 4G/3 and shear G over the wall. */
static void a_thin_confined_layer_tends_to_its_bulk_modulus(void **state)
{
    (void)state;
    gw_annulus film = tube(50, 50.05, 60, 50.0);
    double g = film.material.shear_modulus.v, k = film.material.bulk_modulus.v;
    double limit = GW_PI * 50.025e-3 * 60e-3 * (k + 7.0 / 3.0 * g) / 0.05e-3;
    check_rel(solved(&film, 0).radial[0], limit, 0.01, "bulk limit");
}

static void finite_length_relations_keep_the_errors_they_state(void **state)
{
    (void)state;
    static const double SHAPES[][3] = { { 10, 20, 20 }, { 10, 20, 40 }, { 15, 25, 60 },
                                        { 12, 22, 50 }, { 10, 30, 40 }, { 20, 25, 50 } };
    for (size_t i = 0; i < sizeof SHAPES / sizeof *SHAPES; i++) {
        gw_annulus t = tube(SHAPES[i][0], SHAPES[i][1], SHAPES[i][2], (double)INFINITY);
        gw_plain_bush p = plain(&t);
        gw_given_rates r = solved(&t, 0);
        check_rel(gw_handbook_radial(&p), r.radial[0], 0.025, "radial relation");
        check_rel(gw_handbook_axial_ends(&p), r.axial, 0.008, "axial end correction");
    }
}

static void the_usual_mesh_is_converged_to_a_fifth_of_a_per_cent(void **state)
{
    (void)state;
    static const double SHAPES[][4] = {
        { 10, 12.5, 2.5, 5000 }, { 10, 12.5, 25, 1000 }, { 10, 20, 10, 5000 },
        { 10, 30, 200, 2000 },   { 10, 40, 15, 5000 },   { 20, 25, 50, 1000 }
    };
    for (size_t i = 0; i < sizeof SHAPES / sizeof *SHAPES; i++) {
        gw_annulus t = tube(SHAPES[i][0], SHAPES[i][1], SHAPES[i][2], SHAPES[i][3]);
        gw_given_rates usual = solved(&t, 0), fine = solved(&t, 2);
        check_all(&usual, &fine, 2e-3);
    }
}

/* A locking element would grow without bound with K/G; the true rates have a limit. */
static void rates_tend_to_a_limit_as_the_rubber_becomes_incompressible(void **state)
{
    (void)state;
    double before = 0.0;
    gw_annulus limit = tube(20, 25, 40, (double)INFINITY);
    gw_given_rates last = solved(&limit, 0);
    for (double ratio = 100.0; ratio < 2e6; ratio *= 10.0) {
        gw_annulus t = tube(20, 25, 40, ratio);
        gw_given_rates r = solved(&t, 0);
        assert_true(r.radial[0] > before);
        before = r.radial[0];
        if (ratio >= 0.9e5) check_all(&r, &last, 5e-3);
    }
}

static void a_round_bush_has_no_preferred_direction(void **state)
{
    (void)state;
    gw_annulus t = tube(11, 19, 33, 1500);
    gw_given_rates r = solved(&t, 0);
    check_rel(r.radial[0], r.radial[1], 0, "radial");
    check_rel(r.conical[0], r.conical[1], 0, "conical");
}

static void size_and_modulus_scale_rates_as_dimensions_demand(void **state)
{
    (void)state;
    gw_annulus t = tube(11, 19, 33, 1500), big = tube(22, 38, 66, 1500);
    gw_given_rates r = solved(&t, 0), s = solved(&big, 0);
    check_rel(s.radial[0], 2.0 * r.radial[0], 1e-9, "radial with size");
    check_rel(s.conical[0], 8.0 * r.conical[0], 1e-9, "conical with size cubed");
}

static gw_layer layer_of(const gw_annulus *t)
{
    gw_layer layers[2];
    assert_int_equal(gw_annulus_layers(t, layers), 1);
    return layers[0];
}

static void one_eighth_in_space_gives_the_rates_of_the_section(void **state)
{
    (void)state;
    static const double SHAPES[][4] = { { 10, 20, 40, 2000 }, { 20, 25, 40, 1000 }, { 10, 28, 20, 5000 } };
    for (size_t i = 0; i < sizeof SHAPES / sizeof *SHAPES; i++) {
        gw_annulus t = tube(SHAPES[i][0], SHAPES[i][1], SHAPES[i][2], SHAPES[i][3]);
        gw_layer layer = layer_of(&t);
        gw_given_rates flat = solved(&t, 1), space;
        assert_int_equal(gw_lobe_rates(&layer, 0, &space, NULL), GW_OK);
        check_all(&space, &flat, 3e-3);
    }
}

static void voids_of_no_angle_leave_the_bush_whole(void **state)
{
    (void)state;
    gw_annulus t = tube(10, 20, 40, 2000);
    gw_given_rates whole = solved(&t, 0);
    t.has_voids = true;
    gw_given_rates r = solved(&t, 0);
    check_all(&r, &whole, 0);
}

static void voids_soften_most_along_and_ever_more_with_their_angle(void **state)
{
    (void)state;
    gw_annulus t = tube(10, 20, 30, 2000);
    gw_given_rates before = solved(&t, 0);
    t.has_voids = true;
    t.voids.gap = 4e-3;
    for (double degrees = 15; degrees < 80; degrees += 30) {
        t.voids.half_angle = degrees * GW_DEG;
        gw_given_rates r = solved(&t, 0);
        assert_true(r.radial[0] < r.radial[1] && r.conical[1] < r.conical[0]);
        assert_true(r.radial[0] < before.radial[0] && r.radial[1] < before.radial[1]);
        assert_true(r.axial < before.axial && r.torsional < before.torsional);
        before = r;
    }
}

static void a_void_that_nearly_reaches_the_sleeve_is_a_full_one(void **state)
{
    (void)state;
    gw_annulus t = tube(10, 20, 30, 2000);
    t.has_voids = true;
    t.voids = (gw_voids){ .half_angle = 35 * GW_DEG, .gap = 4e-3 };
    gw_given_rates full = solved(&t, 0);
    t.voids.depth = 10e-3;
    gw_given_rates same = solved(&t, 0);
    check_all(&same, &full, 0);
    t.voids.depth = 9.99e-3;
    gw_given_rates nearly = solved(&t, 0);
    check_all(&nearly, &full, 0.01);
    t.voids.depth = 3e-3;
    assert_true(solved(&t, 0).radial[0] > full.radial[0]);
}

static void a_dish_of_nothing_changes_nothing_and_a_deep_one_softens(void **state)
{
    (void)state;
    gw_annulus t = tube(10, 22, 40, 2000);
    gw_given_rates flat = solved(&t, 0);
    t.end_dish = 1e-9;
    gw_given_rates same = solved(&t, 0);
    check_all(&same, &flat, 1e-4);
    t.end_dish = 6e-3;
    gw_given_rates dished = solved(&t, 0), fine = solved(&t, 2);
    check_all(&dished, &fine, 2e-3);
    assert_true(dished.radial[0] < flat.radial[0] && dished.torsional < flat.torsional);
}

static void an_interleaf_raises_the_radial_rate_far_more_than_the_torsional(void **state)
{
    (void)state;
    gw_annulus t = tube(10, 22, 40, 2000);
    gw_given_rates bare = solved(&t, 0);
    t.has_interleaf = true;
    t.interleaf_radius = 16e-3;
    t.interleaf_thickness = 1.5e-3;
    gw_given_rates r = solved(&t, 0);
    double radial = r.radial[0] / bare.radial[0], torsional = r.torsional / bare.torsional;
    assert_true(radial > 2.0 && torsional < 1.3);
    /* Torsion of two tubes in series is exact. */
    gw_plain_bush in = { 10e-3, 15.25e-3, 40e-3, 0.9e6, (double)INFINITY };
    gw_plain_bush out = { 16.75e-3, 22e-3, 40e-3, 0.9e6, (double)INFINITY };
    double ki = gw_handbook_torsional(&in), ko = gw_handbook_torsional(&out);
    check_rel(r.torsional, ki * ko / (ki + ko), 1e-12, "torsional");
}

static void a_sliding_inner_face_is_softer_and_carries_no_shear(void **state)
{
    (void)state;
    gw_annulus t = tube(8, 20, 30, 2000);
    gw_annulus_options sliding = { .inner_face = GW_INNER_SLIDING };
    gw_given_rates bonded = solved(&t, 0), r;
    assert_int_equal(gw_annulus_rates(&t, &sliding, &r, NULL), GW_OK);
    assert_true(r.radial[0] < bonded.radial[0] && r.conical[0] < bonded.conical[0]);
    check_abs(r.axial, 0, 0, "axial");
    check_abs(r.torsional, 0, 0, "torsional");
}

static void refuse(const gw_annulus *t, const char *word)
{
    gw_given_rates r = { .axial = 2.385 };
    gw_error err = { 0 };
    assert_int_equal(gw_annulus_rates(t, NULL, &r, &err), GW_E_RANGE);
    check_contains(err.msg, word);
    check_abs(r.axial, 2.385, 0, "output untouched");
}

static void shapes_that_cannot_be_made_are_refused_by_name(void **state)
{
    (void)state;
    gw_annulus t = tube(20, 20, 30, 2000);
    refuse(&t, "smaller than the outer");
    t = tube(-1, 20, 30, 2000), refuse(&t, "inner diameter");
    t = tube(10, 0, 30, 2000), refuse(&t, "outer diameter");
    t = tube(10, 20, 0, 2000), refuse(&t, "length");
    t = tube(10, 20, -30, 2000), refuse(&t, "length");
    t = tube(10, 20, (double)NAN, 2000), refuse(&t, "length");
    t = tube(10, 20, 30, -1), refuse(&t, "bulk modulus");
    t = tube(10, 20, 30, 2000), t.material.shear_modulus.v = 0, refuse(&t, "shear modulus");
    t = tube(10, 20, 30, 2000), t.end_dish = 15e-3, refuse(&t, "dish");
    t = tube(10, 20, 30, 2000), t.end_dish = -1e-3, refuse(&t, "dish");
    t = tube(10, 20, 30, 2000), t.has_interleaf = true, t.interleaf_radius = 19.9e-3,
    t.interleaf_thickness = 1e-3;
    refuse(&t, "interleaf");
    t = tube(10, 20, 30, 2000), t.has_voids = true, t.voids.half_angle = 90 * GW_DEG;
    refuse(&t, "voids would meet");
    t = tube(10, 20, 30, 2000), t.has_voids = true, t.voids.half_angle = 30 * GW_DEG, t.voids.depth = 11e-3;
    refuse(&t, "void depth");
    t.voids.depth = 0, t.voids.gap = -1e-3;
    refuse(&t, "void gap");
    t = tube(10, 20, 30, 2000);
    gw_annulus_options options = { .refine = 4 };
    gw_given_rates r;
    assert_int_equal(gw_annulus_rates(&t, &options, &r, NULL), GW_E_RANGE);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(added_length_of_a_long_bush_carries_the_adkins_gent_long_rates),
        cmocka_unit_test(a_disc_tends_to_the_adkins_gent_short_rate),
        cmocka_unit_test(added_length_follows_the_plane_strain_formula_at_any_bulk_modulus),
        cmocka_unit_test(a_thin_confined_layer_tends_to_its_bulk_modulus),
        cmocka_unit_test(finite_length_relations_keep_the_errors_they_state),
        cmocka_unit_test(the_usual_mesh_is_converged_to_a_fifth_of_a_per_cent),
        cmocka_unit_test(rates_tend_to_a_limit_as_the_rubber_becomes_incompressible),
        cmocka_unit_test(a_round_bush_has_no_preferred_direction),
        cmocka_unit_test(size_and_modulus_scale_rates_as_dimensions_demand),
        cmocka_unit_test(one_eighth_in_space_gives_the_rates_of_the_section),
        cmocka_unit_test(voids_of_no_angle_leave_the_bush_whole),
        cmocka_unit_test(voids_soften_most_along_and_ever_more_with_their_angle),
        cmocka_unit_test(a_void_that_nearly_reaches_the_sleeve_is_a_full_one),
        cmocka_unit_test(a_dish_of_nothing_changes_nothing_and_a_deep_one_softens),
        cmocka_unit_test(an_interleaf_raises_the_radial_rate_far_more_than_the_torsional),
        cmocka_unit_test(a_sliding_inner_face_is_softer_and_carries_no_shear),
        cmocka_unit_test(shapes_that_cannot_be_made_are_refused_by_name),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
