/* SPDX-License-Identifier: MIT */
/* Bushes of type measured: what is read, in which units, and what is no curve. */
#include "giveway/bush_law.h"
#include "giveway/units.h"
#include "support/case_sample.h"
#include "support/check.h"

#include <stdio.h>
#include <string.h>

#define REST "\"axial_N_per_mm\":200,\"conical_Nm_per_deg\":3,\"torsional_Nm_per_deg\":1"

static const char *with_bush(const char *keys)
{
    static char text[2000];
    snprintf(text, sizeof text,
             "{\"format\":\"giveway-case-1\",\"title\":\"t\",\"bushes\":{\"b\":{\"type\":\"measured\",%s}}}",
             keys);
    return text;
}

static gw_bush_law law_of(const char *keys, int warnings)
{
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    gw_bush_law law;
    gw_status st = sample_read(with_bush(keys), &c, &faults);
    if (st != GW_OK) fail_msg("%s", gw_faults_text(&faults, 0));
    assert_int_equal(gw_faults_warnings(&faults), warnings);
    assert_int_equal(gw_bush_law_make(&c.bushes[0], GW_METHOD_SOLVED, &law, NULL), GW_OK);
    memset(law.curve, 0, sizeof law.curve); /* they go with the case */
    gw_case_free(&c);
    gw_faults_free(&faults);
    return law;
}

static void curves_and_rates_come_in_si(void **state)
{
    (void)state;
    gw_bush_law law = law_of(
        "\"radial_e1\":{\"points\":[[1,500],[2,1000]]},\"radial_e2\":{\"points\":[[-2,-1800],[3,2700]]},"
        "\"axial\":{\"points\":[[2,100],[4,200]]},\"conical\":{\"points\":[[1,4],[2,8]]},"
        "\"torsional_Nm_per_deg\":0.8,\"loss_factor\":0.07,\"dynamic_ratio\":1.2",
        0);
    check_rel(law.k[0], 500e3, 1e-12, "radial e1");
    check_rel(law.k[1], 900e3, 1e-12, "radial e2");
    check_rel(law.k[2], 50e3, 1e-12, "axial");
    check_rel(law.c[0], 4 / GW_DEG, 1e-12, "conical e1");
    check_rel(law.c[1], 4 / GW_DEG, 1e-12, "conical e2");
    check_rel(law.c[2], 0.8 / GW_DEG, 1e-12, "torsional");
    check_rel(law.dynamic.ratio, 1.2, 0, "dynamic ratio");
    check_rel(law.dynamic.loss, 0.07, 0, "loss factor");
}

#define DYNAMIC(rate, payne)                                                                                 \
    "\"dynamic\":{\"rate_N_per_mm\":" rate                                                                   \
    ",\"zener_gain\":2,\"zener_tau_s\":1e-6,\"zener_alpha\":0.2," payne "}"

static void a_dynamic_test_is_held_against_the_slow_one(void **state)
{
    (void)state;
    gw_bush_law law =
        law_of("\"radial\":{\"points\":[[1,500],[2,1000]]}," REST "," DYNAMIC("600", "\"payne_gain\":0"), 0);
    check_rel(law.dynamic.ratio, 1.2, 1e-12, "over the slow rate");
    law =
        law_of("\"radial\":{\"points\":[[1,500],[2,1000]]}," REST "," DYNAMIC("670", "\"payne_gain\":0"), 1);
    law =
        law_of("\"radial\":{\"points\":[[1,500],[2,1000]]}," REST "," DYNAMIC("330", "\"payne_gain\":0"), 1);
    law = law_of("\"radial_N_per_mm\":0,\"axial\":{\"points\":[[1,100],[2,200]]},\"conical_Nm_per_deg\":3,"
                 "\"torsional_Nm_per_deg\":1," DYNAMIC("110", "\"payne_gain\":0.3,\"payne_amplitude_mm\":0.2,"
                                                              "\"payne_exponent\":0.6"),
                 0);
    check_rel(law.dynamic.ratio, 1.1, 1e-12, "over the axial rate where there is none across");
    check_rel(law.dynamic.payne_amplitude, 0.2e-3, 1e-12, "amplitude");
}

static void expect_fault(const char *keys, const char *path, const char *part)
{
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    assert_int_equal(sample_read(with_bush(keys), &c, &faults), GW_E_SCHEMA);
    check_contains(gw_faults_text(&faults, 0), path);
    check_contains(gw_faults_text(&faults, 0), part);
    gw_faults_free(&faults);
}

static void what_is_no_curve_is_told_with_its_place(void **state)
{
    (void)state;
    expect_fault(REST, "bushes.b.radial:",
                 "expected exactly one of \"radial\", \"radial_e1\" with \"radial_e2\", and "
                 "\"radial_N_per_mm\"");
    expect_fault("\"radial_N_per_mm\":500," REST, "bushes.b:", "expected at least one curve");
    expect_fault("\"radial_N_per_mm\":500,\"axial_N_per_mm\":1,\"axial\":{\"points\":[[1,2],[2,4]]},"
                 "\"conical_Nm_per_deg\":3,\"torsional_Nm_per_deg\":1",
                 "bushes.b.axial:", "expected exactly one of \"axial\" and \"axial_N_per_mm\"");
    expect_fault("\"radial_e1\":{\"points\":[[1,2],[2,4]]}," REST, "bushes.b.radial_e2:", "belong together");
    expect_fault("\"radial\":{\"points\":[[1,500],[2,400]]}," REST,
                 "bushes.b.radial.points[1]:", "rise strictly from point to point");
    expect_fault("\"radial\":{\"points\":[[1,-500],[2,400]]}," REST,
                 "bushes.b.radial.points[0]:", "rise strictly");
    expect_fault("\"radial\":{\"points\":[[0,0],[2,400]]}," REST,
                 "bushes.b.radial.points:", "expected two points or more, (0, 0) not counted");
    expect_fault("\"radial\":{\"points\":[[0,0,1],[2,400]]}," REST,
                 "bushes.b.radial.points[0]:", "expected a list of two numbers");
    expect_fault("\"radial\":{}," REST, "bushes.b.radial:", "expected either \"points\" or \"file\"");
    expect_fault("\"radial\":{\"file\":\"nowhere.csv\"}," REST, "nowhere.csv", "cannot be read");
    expect_fault("\"radial\":3," REST, "bushes.b.radial:", "an object { } with points or file");
    expect_fault("\"radial\":{\"points\":[[1,5],[2,10]]},\"stop\":{\"gap_mm\":1,\"rate_N_per_mm\":5}," REST,
                 "bushes.b.stop", "unknown key");
    expect_fault("\"radial\":{\"points\":[[1,500],[2,1000]]}," REST "," DYNAMIC("600", "\"payne_gain\":0.2"),
                 "bushes.b.dynamic.payne_amplitude_mm", "payne_gain above 0 needs it");
    expect_fault("\"radial\":{\"points\":[[1,500],[2,1000]]}," REST
                 "," DYNAMIC("600", "\"payne_gain\":0,"
                                    "\"payne_exponent\":0.5"),
                 "bushes.b.dynamic.payne_exponent", "belongs to a payne_gain above 0");
    expect_fault("\"radial_N_per_mm\":0,\"axial_N_per_mm\":0,\"conical\":{\"points\":[[1,5],[2,10]]},"
                 "\"torsional_Nm_per_deg\":1," DYNAMIC("600", "\"payne_gain\":0"),
                 "bushes.b.dynamic:", "no rate across or along it");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(curves_and_rates_come_in_si),
        cmocka_unit_test(a_dynamic_test_is_held_against_the_slow_one),
        cmocka_unit_test(what_is_no_curve_is_told_with_its_place),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
