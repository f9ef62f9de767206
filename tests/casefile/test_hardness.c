/* SPDX-License-Identifier: MIT */
/* A compound known by its hardness alone lies between its neighbours in the materials. */
#include "support/case_sample.h"
#include "support/check.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static char *with_material(const char *material)
{
    static char text[700];
    snprintf(text, sizeof text,
             "{\"format\":\"giveway-case-1\",\"title\":\"t\",\"bushes\":{\"b\":{\"type\":\"bonded\","
             "\"material\":%s,"
             "\"inner_diameter_mm\":20,\"outer_diameter_mm\":40,\"length_mm\":50}}}",
             material);
    return text;
}

static gw_material material_of(const char *material)
{
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    gw_status st = sample_read(with_material(material), &c, &faults);
    if (st != GW_OK) fail_msg("%s", gw_faults_text(&faults, 0));
    gw_material m = c.bushes[0].annulus.material;
    gw_case_free(&c);
    gw_faults_free(&faults);
    return m;
}

/* The two rows of Lindley's table (see test_material_files.c) and the fitted laws beside them, by hand. */
static void figures_lie_between_the_neighbours(void **state)
{
    (void)state;
    gw_material m = material_of("{\"family\":\"natural_rubber\",\"hardness_points\":57}");
    check_rel(m.shear_modulus.v, 0.81e6 * pow(1.06 / 0.81, 0.4), 1e-12, "G");
    check_rel(m.bulk_modulus.v, 1090e6 * pow(1150.0 / 1090, 0.4), 1e-12, "bulk modulus");
    check_rel(m.young_modulus.v, 3.25e6 * pow(4.45 / 3.25, 0.4), 1e-12, "E0");
    check_rel(m.shape_k.v, 0.64 - 0.4 * 0.07, 1e-12, "k");
    check_rel(m.zener_gain.v, 3.061 + 0.4 * (4.207 - 3.061), 1e-12, "Zener gain");
    check_rel(m.zener_alpha.v, 0.2179 + 0.4 * (0.2319 - 0.2179), 1e-12, "Zener exponent");
    check_rel(m.payne_gain.v, 0.18 + 0.4 * 0.07, 1e-12, "Payne gain");
    check_rel(m.shear_strain_limit.v, 1.0 - 0.4 * 0.25, 1e-12, "shear strain limit");
    check_rel(m.compressive_strain_limit.v, 0.3 - 0.4 * 0.05, 1e-12, "compressive strain limit");
    check_rel(m.hardness_irhd.v, 57, 0, "hardness");
    assert_false(m.poisson_ratio.known);
    assert_string_equal(m.label, "Natural rubber, 57 Shore A");
}

static void at_a_compound_it_is_that_compound(void **state)
{
    (void)state;
    gw_material m = material_of("{\"family\":\"natural_rubber\",\"hardness_points\":55,\"gauge\":\"A\"}");
    gw_material known = material_of("\"nr-55\"");
    assert_memory_equal(&m.shear_modulus, &known.shear_modulus, sizeof m.shear_modulus);
    check_abs(m.zener_gain.v, known.zener_gain.v, 0, "Zener gain");
    m = material_of("{\"family\":\"polyurethane\",\"hardness_points\":75,\"gauge\":\"D\"}");
    check_abs(m.shear_modulus.v, 240e6, 0, "G at 75 D");
    assert_string_equal(m.label, "Polyurethane, 75 Shore D");
}

static void gauge_d_goes_on_where_gauge_a_ends(void **state)
{
    (void)state;
    gw_material a = material_of("{\"family\":\"polyurethane\",\"hardness_points\":87}");
    check_rel(a.shear_modulus.v, 4.9e6 * pow(7.5 / 4.9, 0.4), 1e-12, "G at 87 A");
    gw_material d = material_of("{\"family\":\"polyurethane\",\"hardness_points\":60,\"gauge\":\"D\"}");
    check_rel(d.shear_modulus.v, 1e6 * sqrt(15.7 * 240), 1e-12, "G half-way from 95 A (45 D) to 75 D");
    check_rel(d.hardness_shore_d.v, 60, 0, "hardness");
    assert_false(d.hardness_irhd.known);
    assert_false(d.payne_gain.known); /* only one of the neighbours has it */
}

static void expect_fault(const char *material, const char *part)
{
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    assert_int_equal(sample_read(with_material(material), &c, &faults), GW_E_SCHEMA);
    check_contains(gw_faults_text(&faults, 0), "bushes.b.material");
    check_contains(gw_faults_text(&faults, 0), part);
    gw_faults_free(&faults);
}

static void what_no_compound_is_near_is_refused(void **state)
{
    (void)state;
    expect_fault(
        "{\"family\":\"natural_rubber\",\"hardness_points\":80}",
        ".hardness_points: expected 30 to 75 points of gauge A, where there are compounds of natural_rubber, "
        "found 80");
    expect_fault(
        "{\"family\":\"natural_rubber\",\"hardness_points\":40,\"gauge\":\"D\"}",
        "there is no compound of natural_rubber to read with points of gauge D: use the other gauge");
    expect_fault(
        "{\"family\":\"polyurethane\",\"hardness_points\":97}",
        "expected 70 to 95 points of gauge A, where there are compounds of polyurethane, found 97: read it "
        "with gauge D");
    expect_fault("{\"family\":\"polyurethane\",\"hardness_points\":29,\"gauge\":\"D\"}",
                 "expected 30 to 75 points of gauge D");
    expect_fault("{\"family\":\"polyurethane\",\"hardness_points\":-1}", "at least 0 and at most 100");
    expect_fault("{\"family\":\"cork\",\"hardness_points\":50}", "\"natural_rubber\" or \"polyurethane\"");
    expect_fault("{\"family\":\"polyurethane\",\"hardness_points\":80,\"gauge\":\"C\"}",
                 "expected \"A\" or \"D\"");
    expect_fault("{\"family\":\"polyurethane\"}", ".hardness_points: this key is missing");
    expect_fault("{\"hardness_points\":60}", ".family: this key is missing");
    expect_fault("{\"family\":\"polyurethane\",\"hardness_points\":80,\"shear_modulus_MPa\":3}",
                 "shear_modulus_MPa");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(figures_lie_between_the_neighbours),
        cmocka_unit_test(at_a_compound_it_is_that_compound),
        cmocka_unit_test(gauge_d_goes_on_where_gauge_a_ends),
        cmocka_unit_test(what_no_compound_is_near_is_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
