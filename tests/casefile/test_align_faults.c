/* SPDX-License-Identifier: MIT */
/* Faults of press fits, of an offset that no housing holds, and of the shock factor. */
#include "support/case_sample.h"
#include "support/check.h"

#include "giveway/units.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define RUBBER     "\"label\": \"Rubber\","
#define SIZES      "\"diameter_mm\": 45, \"length_mm\": 40, \"sleeve_wall_mm\": 2.5, \"housing_wall_mm\": 8"
#define SEAT(more) RUBBER " \"press_fit\": { " SIZES more " },"

static void expect(const char *from, const char *to, const char *path, const char *message)
{
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    char *text = sample_change(SAMPLE_FULL, from, to);
    assert_int_equal(sample_read(text, &c, &faults), GW_E_SCHEMA);
    if (gw_faults_count(&faults) != 1)
        fail_msg("%s: %d faults, the first: %s", to, gw_faults_count(&faults), gw_faults_text(&faults, 0));
    check_contains(gw_faults_text(&faults, 0), path);
    check_contains(gw_faults_text(&faults, 0), message);
    gw_faults_free(&faults);
    free(text);
}

static void expect_seat(const char *seat, const char *key, const char *message)
{
    char path[64];
    snprintf(path, sizeof path, "bushes.rubber.press_fit.%s", key);
    expect(RUBBER, seat, path, message);
}

static const gw_seat *read_seat(const char *seat, gw_case *c, gw_faults *faults)
{
    char *text = sample_change(SAMPLE_FULL, RUBBER, seat);
    if (sample_read(text, c, faults) != GW_OK) fail_msg("%s", gw_faults_text(faults, 0));
    free(text);
    return &c->bushes[gw_case_find_bush(c, "rubber")].seat;
}

static void a_press_fit_is_read_in_metres(void **unused)
{
    (void)unused;
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    const gw_seat *s = read_seat(SEAT(", \"interference_um\": [5, 31], \"bore_mm\": 12, "
                                      "\"housing_material\": \"aluminium\", \"friction\": 0.09"),
                                 &c, &faults);
    assert_true(s->given && s->housing_aluminium);
    check_abs(s->least, 5e-6, 1e-18, "least");
    check_abs(s->most, 31e-6, 1e-18, "greatest");
    check_abs(s->bore, 0.012, 1e-15, "bore");
    check_abs(s->friction, 0.09, 0.0, "friction");
    check_abs(s->sleeve_wall, 0.0025, 1e-15, "sleeve");
    gw_case_free(&c);
    gw_faults_free(&faults);
}

/* ISO 286-2: H7/s6 at 45 mm is 43 - 25 = 18 to 59 um. */
static void a_fit_of_the_standard_gives_its_interference(void **unused)
{
    (void)unused;
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    const gw_seat *s = read_seat(SEAT(", \"fit\": \"H7/s6\""), &c, &faults);
    check_abs(s->least, 18e-6, 1e-15, "least");
    check_abs(s->most, 59e-6, 1e-15, "greatest");
    check_abs(s->friction, 0.12, 0.0, "dry steel, unless told");
    check_abs(s->housing_yield / GW_MPA, 235.0, 1e-9, "plain steel, unless told");
    gw_case_free(&c);
    gw_faults_free(&faults);
}

static void faults_of_press_fits(void **unused)
{
    (void)unused;
    expect_seat(SEAT(", \"fit\": \"H7/x6\""), "fit", "H7/p6");
    expect_seat(SEAT(""), "fit", "missing");
    expect_seat(SEAT(", \"fit\": \"H7/p6\", \"interference_um\": [1, 2]"), "interference_um", "not both");
    expect_seat(SEAT(", \"interference_um\": [9, 3]"), "interference_um", "the least and then the greatest");
    expect_seat(SEAT(", \"interference_um\": [-9, -3]"), "interference_um", "above 0");
    expect_seat(SEAT(", \"interference_um\": [1, 9], \"bore_mm\": 45"), "bore_mm",
                "less than diameter_mm, 45");
    expect_seat(SEAT(", \"interference_um\": [1, 9], \"housing_material\": \"tin\""), "housing_material",
                "aluminium");
    expect_seat(SEAT(", \"interference_um\": [1, 9], \"frction\": 0.1"), "frction", "friction");
    expect_seat(RUBBER " \"press_fit\": { \"diameter_mm\": 25, \"length_mm\": 40, \"sleeve_wall_mm\": 2,"
                       " \"housing_wall_mm\": 8, \"fit\": \"H7/p6\" },",
                "fit", "interference_um");
    expect_seat(RUBBER " \"press_fit\": { \"diameter_mm\": 45, \"length_mm\": 40, \"sleeve_wall_mm\": 23,"
                       " \"housing_wall_mm\": 8, \"fit\": \"H7/p6\" },",
                "sleeve_wall_mm", "at most half of diameter_mm");
}

static void an_offset_larger_than_the_housing_is_a_fault(void **unused)
{
    (void)unused;
    char *text = sample_change(SAMPLE_FULL, "\"joint\": \"upper_front\", \"max_mm\": 5",
                               "\"joint\": \"upper_front\", \"max_mm\": 23");
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    assert_int_equal(sample_read(text, &c, &faults), GW_OK); /* nobody knows how large the bush is */
    gw_case_free(&c);
    gw_faults_free(&faults);
    free(text);
    text = sample_change(SAMPLE_FULL, RUBBER, SEAT(", \"fit\": \"H7/p6\""));
    char *both = sample_change(text, "\"joint\": \"upper_front\", \"max_mm\": 5",
                               "\"joint\": \"upper_front\", \"max_mm\": 23");
    assert_int_equal(sample_read(both, &c, &faults), GW_E_SCHEMA);
    check_contains(gw_faults_text(&faults, 0), "align.front.adjusters[0].max_mm");
    check_contains(gw_faults_text(&faults, 0), "larger than the housing");
    gw_faults_free(&faults);
    free(text);
    free(both);
}

static void a_shock_factor_is_at_least_one(void **unused)
{
    (void)unused;
    expect("\"align\": { \"front\": {", "\"align\": { \"front\": { \"shock_factor\": 0.9,",
           "align.front.shock_factor", "1");
}

static void a_caster_angle_needs_a_measured_one(void **unused)
{
    (void)unused;
    static const char AT[] = "\"target\": { \"camber_deg\": -1.9,";
    expect(AT, "\"target\": { \"caster_deg\": 6, \"camber_deg\": -1.9,", "align.front.target.caster_deg",
           "reached from the measured one");
    expect(AT,
           "\"measured\": { \"left\": { \"caster_deg\": 6 }, \"right\": {} }, \"target\": { \"camber_deg\": "
           "-1.9,",
           "align.front.measured", "caster is given on one side");
    expect(AT,
           "\"measured\": { \"left\": { \"caster_deg\": 6 }, \"right\": { \"caster_deg\": 5 } }, "
           "\"target\": { \"caster_deg\": 6, \"caster_change_deg\": 1, \"camber_deg\": -1.9,",
           "align.front.target.caster_deg", "keep one of them");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_press_fit_is_read_in_metres),
        cmocka_unit_test(a_fit_of_the_standard_gives_its_interference),
        cmocka_unit_test(faults_of_press_fits),
        cmocka_unit_test(an_offset_larger_than_the_housing_is_a_fault),
        cmocka_unit_test(a_shock_factor_is_at_least_one),
        cmocka_unit_test(a_caster_angle_needs_a_measured_one),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
