/* SPDX-License-Identifier: MIT */
/* clamp_travel_mm: of the corner for every joint, unless a joint says it itself. */
#include "support/case_sample.h"
#include "support/check.h"

#include "giveway/units.h"

#include <stdlib.h>

static void read_changed(const char *from, const char *to, gw_case *c, gw_faults *faults)
{
    char *text = sample_change(SAMPLE_MINIMAL, from, to);
    *c = (gw_case){ 0 };
    *faults = (gw_faults){ 0 };
    sample_read(text, c, faults);
    free(text);
}

static void without_the_key_no_bush_is_clamped_elsewhere(void **state)
{
    (void)state;
    gw_case c = { 0 };
    gw_faults faults = { 0 };
    assert_int_equal(sample_read(SAMPLE_MINIMAL, &c, &faults), GW_OK);
    for (int j = 0; j < 2; j++) assert_false(c.corners[GW_REAR].joints[j].clamped);
    gw_case_free(&c);
    gw_faults_free(&faults);
}

static void a_corner_clamps_all_its_joints(void **state)
{
    (void)state;
    gw_case c;
    gw_faults faults;
    read_changed("\"rear\": {", "\"rear\": { \"clamp_travel_mm\": -62.5,", &c, &faults);
    assert_int_equal(gw_faults_count(&faults), 0);
    for (int j = 0; j < 2; j++) {
        assert_true(c.corners[GW_REAR].joints[j].clamped);
        check_abs(c.corners[GW_REAR].joints[j].clamp_travel, -62.5 * GW_MM, 1e-15, "clamped at");
    }
    gw_case_free(&c);
    gw_faults_free(&faults);
}

static void a_joint_overrules_its_corner(void **state)
{
    (void)state;
    gw_case c;
    gw_faults faults;
    char *both = sample_change(SAMPLE_MINIMAL, "\"rear\": {", "\"rear\": { \"clamp_travel_mm\": -62.5,");
    char *text = sample_change(both, "\"name\": \"outer\",", "\"name\": \"outer\", \"clamp_travel_mm\": 0,");
    c = (gw_case){ 0 };
    faults = (gw_faults){ 0 };
    assert_int_equal(sample_read(text, &c, &faults), GW_OK);
    check_abs(c.corners[GW_REAR].joints[0].clamp_travel, -62.5 * GW_MM, 1e-15, "the corner's");
    check_abs(c.corners[GW_REAR].joints[1].clamp_travel, 0.0, 0.0, "its own");
    gw_case_free(&c);
    gw_faults_free(&faults);
    free(both);
    free(text);
}

/* One fault each, at the place where the key stands; a bad one at a joint is not also the corner's. */
static void a_bad_clamp_is_one_fault_with_its_path(void **state)
{
    static const char *const ROWS[][4] = {
        { "\"rear\": {", "\"rear\": { \"clamp_travel_mm\": 501,", "corners.rear.clamp_travel_mm", "500" },
        { "\"rear\": {", "\"rear\": { \"clamp_travel_mm\": \"low\",", "corners.rear.clamp_travel_mm",
          "number" },
        { "\"name\": \"outer\",", "\"name\": \"outer\", \"clamp_travel_mm\": -501,",
          "corners.rear.joints[1].clamp_travel_mm", "-500" },
    };
    (void)state;
    for (size_t i = 0; i < sizeof ROWS / sizeof *ROWS; i++) {
        gw_case c;
        gw_faults faults;
        read_changed(ROWS[i][0], ROWS[i][1], &c, &faults);
        assert_int_equal(gw_faults_count(&faults), 1);
        check_contains(gw_faults_text(&faults, 0), ROWS[i][2]);
        check_contains(gw_faults_text(&faults, 0), ROWS[i][3]);
        gw_faults_free(&faults);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(without_the_key_no_bush_is_clamped_elsewhere),
        cmocka_unit_test(a_corner_clamps_all_its_joints),
        cmocka_unit_test(a_joint_overrules_its_corner),
        cmocka_unit_test(a_bad_clamp_is_one_fault_with_its_path),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
