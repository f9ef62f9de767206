/* SPDX-License-Identifier: MIT */
/* Readings against closed forms: one bush pulled, an arm on its circle. The cases are invented. */
#include "giveway/match.h"
#include "giveway/travel.h"
#include "giveway/units.h"
#include "support/case_sample.h"
#include "support/check.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Pulled back by F the wheel goes by F / (k - g), g the static load over the length of the leaning spring,
 * which is long here so that this is all. */
static const char ONE_BUSH[] =
    "{ \"format\": \"giveway-case-1\", \"title\": \"one bush (invented)\",\n"
    "  \"corners\": { \"front\": {\n"
    "    \"wheel\": { \"centre_mm\": [0, 700, 300], \"loaded_radius_mm\": 300, \"static_load_N\": 3000,\n"
    "               \"static_camber_deg\": 0, \"static_toe_deg\": 0 },\n"
    "    \"joints\": [ { \"name\": \"hub\", \"between\": [\"chassis\", \"upright\"], \"at\": [0, 700, 300],\n"
    "        \"axis\": [0, 1, 0], \"radial_axis\": [1, 0, 0], \"bush\": \"soft\" } ],\n"
    "    \"spring\": { \"on\": \"upright\", \"at\": [0, 700, 300], \"to\": [0, 700, 90300], "
    "\"rate_N_per_mm\": "
    "40 } } },\n"
    "  \"bushes\": { \"soft\": { \"type\": \"rates\", \"radial_N_per_mm\": [500, 0], \"axial_N_per_mm\": "
    "5e3,\n"
    "              \"conical_Nm_per_deg\": 1e7, \"torsional_Nm_per_deg\": 1e7 },\n"
    "    \"hard\": { \"type\": \"rates\", \"radial_N_per_mm\": [520, 0], \"axial_N_per_mm\": 5e3,\n"
    "              \"conical_Nm_per_deg\": 1e7, \"torsional_Nm_per_deg\": 1e7 } },\n"
    "  \"uncertain\": [ { \"of\": \"bushes\", \"percent\": 60 } ],\n"
    "  \"kits\": [ { \"name\": \"a\", \"fits\": {} }, { \"name\": \"b\", \"fits\": { \"front.hub\": \"hard\" "
    "} } ]\n"
    "}\n";

/* Pivot 400 mm ahead of the wheel centre and level with it; nearly rigid. */
static const char ARM[] =
    "{ \"format\": \"giveway-case-1\", \"title\": \"trailing arm (invented)\",\n"
    "  \"corners\": { \"rear\": {\n"
    "    \"wheel\": { \"centre_mm\": [0, 700, 300], \"loaded_radius_mm\": 290, \"static_load_N\": 3000,\n"
    "               \"static_camber_deg\": 0, \"static_toe_deg\": 0 },\n"
    "    \"joints\": [\n"
    "      { \"name\": \"inner\", \"between\": [\"chassis\", \"upright\"], \"at\": [400, 400, 300],\n"
    "        \"axis\": [0, 1, 0], \"bush\": \"arm\" },\n"
    "      { \"name\": \"outer\", \"between\": [\"chassis\", \"upright\"], \"at\": [400, 700, 300],\n"
    "        \"axis\": [0, 1, 0], \"bush\": \"arm\" } ],\n"
    "    \"spring\": { \"on\": \"upright\", \"at\": [0, 700, 300], \"to\": [0, 700, 600], \"rate_N_per_mm\": "
    "40 } } },\n"
    "  \"uncertain\": [ { \"of\": \"corners.rear.spring.rate_N_per_mm\", \"percent\": 20 } ],\n"
    "  \"bushes\": { \"arm\": { \"type\": \"rates\", \"radial_N_per_mm\": 5e6, \"axial_N_per_mm\": 5e6,\n"
    "              \"conical_Nm_per_deg\": 0, \"torsional_Nm_per_deg\": 0 } } }\n";

typedef struct loaded {
    gw_material_set materials;
    gw_case c;
    gw_faults faults;
    gw_readings readings;
    gw_match_study s;
} loaded;

static void load(const char *text, loaded *l)
{
    *l = (loaded){ 0 };
    assert_int_equal(gw_materials_builtin(&l->materials, &l->faults), GW_OK);
    if (gw_case_read("sample.json", text, strlen(text), &l->materials, &l->c, &l->faults) != GW_OK)
        fail_msg("%s", gw_faults_text(&l->faults, 0));
}

static void match(const char *text, const char *readings, loaded *l)
{
    const gw_selection all = { 0 };
    gw_error err = { 0 };
    load(text, l);
    if (gw_readings_read("ramp", readings, strlen(readings), &l->c, &l->readings, &l->faults) != GW_OK)
        fail_msg("%s", gw_faults_text(&l->faults, 0));
    if (gw_study_match(&l->c, &l->readings, &all, false, &l->s, &err) != GW_OK) fail_msg("%s", err.msg);
}

static void release(loaded *l)
{
    gw_match_study_free(&l->s);
    gw_readings_free(&l->readings);
    gw_case_free(&l->c);
    gw_materials_free(&l->materials);
    gw_faults_free(&l->faults);
}

static const double SCALE = 0.23500181462286774; /* ln(1.6) / 2 */

static const double LEAN = 3000 / 90.0;

static double moved(double force, double k, double z)
{
    return force / (k * exp(SCALE * z) - LEAN);
}

static double slope(double force, double k, double z)
{
    return -moved(force, k, z) * SCALE * k * exp(SCALE * z) / (k * exp(SCALE * z) - LEAN);
}

/* Where z - (read - x) / sigma^2 dx/dz = 0, by bisection. */
static double most_probable(double read, double force, double k, double sigma)
{
    double lo = -10, hi = 10;
    for (int i = 0; i < 200; i++) {
        double z = 0.5 * (lo + hi), r = (read - moved(force, k, z)) / sigma;
        *(z - r * slope(force, k, z) / sigma > 0 ? &hi : &lo) = z;
    }
    return lo;
}

/* One figure, one reading: the mode by bisection; J = dr/dz, C = 1 / (1 + J^2), drops r^2 (1 + J^2) and
 * z^2 (1 + J^2) / J^2. */
static void one_pull_finds_the_mode(void **state)
{
    (void)state;
    loaded l;
    match(ONE_BUSH,
          "{ \"format\": \"giveway-readings-1\", \"readings\": [ { \"name\": \"pull\", \"load\": { "
          "\"hub_force_N\": "
          "[-1000, 0, 0] }, \"wheel_fore_aft_mm\": -2.6, \"within_mm\": 0.3 } ] }",
          &l);
    const double sigma = 0.15e-3, read = -2.6e-3, nominal = moved(-1000, 500e3, 0);
    const double z = most_probable(read, -1000, 500e3, sigma), x = moved(-1000, 500e3, z);
    const double j = -slope(-1000, 500e3, z) / sigma, r = (read - x) / sigma;
    assert_int_equal(l.s.n, 2);
    check_abs(l.s.figure[0].z, z, 1e-6, "z"); /* the wheel turns by 1e-8 rad: far below */
    check_rel(l.s.covariance[0], 1 / (1 + j * j), 1e-5, "C");
    check_abs(l.s.covariance[3], 1, 1e-9, "the other kit's bush");
    assert_true(l.s.figure[1].silent && !l.s.figure[0].silent);
    check_rel(l.s.value[0].residual, r, 1e-4, "residual");
    check_rel(l.s.value[0].before, nominal, 1e-6, "before");
    check_rel(l.s.value[0].after, x, 1e-6, "after");
    check_rel(l.s.chi_square, r * r + z * z, 1e-6, "chi-square");
    check_rel(l.s.probability, erfc(sqrt(0.5 * l.s.chi_square)), 1e-9, "upper probability, one degree");
    check_rel(l.s.reading[0].drop, r * r * (1 + j * j), 1e-4, "drop of the reading");
    check_rel(l.s.figure[0].drop, z * z * (1 + j * j) / (j * j), 1e-4, "drop of the figure");
    assert_int_equal(l.s.n_doubts, 0);
    release(&l);
}

/* Pulled twice on two kits with a load cell that is off: each reading alone would blame its bush; both blame
 * the cell, which they share. The minimum in three unknowns by coordinate bisection. */
static void a_load_cell_that_is_off_shows_in_both_kits(void **state)
{
    (void)state;
    loaded l;
    match(ONE_BUSH,
          "{ \"format\": \"giveway-readings-1\", \"load_percent\": 60, \"readings\": [ { \"name\": \"pull\", "
          "\"load\": "
          "{ \"patch_force_N\": [0, 0, null], \"hub_force_N\": [-1000, 0, 0] }, \"wheel_fore_aft_mm\": -2.4, "
          "\"within_mm\": 0.2 },"
          "{ \"name\": \"pull\", \"kit\": \"b\", \"load\": { \"hub_force_N\": [-1000, 0, 0] }, "
          "\"wheel_fore_aft_mm\": -2.3, "
          "\"within_mm\": 0.2 } ] }",
          &l);
    double z[3] = { 0, 0, 0 }, read[2] = { -2.4e-3, -2.3e-3 }, k[2] = { 500e3, 520e3 };
    for (int sweep = 0; sweep < 400; sweep++)
        for (int i = 0; i < 3; i++) {
            double lo = -5, hi = 5;
            for (int b = 0; b < 80; b++) {
                z[i] = 0.5 * (lo + hi);
                double g = z[i], force = -1000 * exp(SCALE * z[2]);
                for (int n = 0; n < 2; n++) {
                    double r = (read[n] - moved(force, k[n], z[n])) / 1e-4;
                    if (i == n) g -= r * slope(force, k[n], z[n]) / 1e-4;
                    if (i == 2) g -= r * SCALE * moved(force, k[n], z[n]) / 1e-4;
                }
                *(g > 0 ? &hi : &lo) = z[i];
            }
        }
    assert_int_equal(l.s.n, 3);
    assert_string_equal(l.s.figure[2].figure->of, "load");
    for (int i = 0; i < 3; i++) check_abs(l.s.figure[i].z, z[i], 1e-6, "z");
    assert_true(l.s.figure[2].z > 0.3);
    release(&l);
}

/* On its circle the wheel goes forward by 0.4 (1 - cos) whatever the spring; the wheel rate of a spring above
 * the wheel is its rate at design height. */
static void travel_with_the_spring_out_and_in(void **state)
{
    (void)state;
    loaded l;
    match(
        ARM,
        "{ \"format\": \"giveway-readings-1\", \"readings\": [ { \"name\": \"bump\", \"travel_mm\": [-60, "
        "50], \"spring\": "
        "\"out\", \"wheel_fore_aft_mm\": [4, 3], \"within_mm\": 1 }, { \"name\": \"in\", \"travel_mm\": 50, "
        "\"wheel_fore_aft_mm\": 3, \"caster_change_deg\": 7, \"within_mm\": 1, \"within_deg\": 1 }, { "
        "\"name\": \"rate\", "
        "\"wheel_rate_N_per_mm\": 44, \"within_N_per_mm\": 0.02 } ] }",
        &l);
    check_abs(l.s.value[0].before, 0.4 - sqrt(0.16 - 0.06 * 0.06), 1e-6, "60 mm of rebound");
    check_abs(l.s.value[1].before, 0.4 - sqrt(0.16 - 0.05 * 0.05), 1e-6, "50 mm of bump");
    check_abs(l.s.value[2].before, -asin(0.05 / 0.4), 1e-5, "the arm turns: its top goes forward in bump");
    check_abs(l.s.value[3].before, 0.4 - sqrt(0.16 - 0.05 * 0.05), 1e-6, "50 mm with the spring in");
    const gw_travel_plan plan = { .to = 0.01, .step = 0.01 };
    const gw_selection all = { 0 };
    gw_travel_study travel;
    assert_int_equal(gw_study_travel(&l.c, &all, &plan, &travel, NULL), GW_OK);
    check_rel(l.s.value[4].before, travel.item[0].point[0].rates.wheel_rate, 1e-9, "as travel tells it");
    gw_travel_study_free(&travel);
    release(&l);
}

/* A slip of a decimal place stands out against all the rest and comes first. */
static void a_reading_that_contradicts_is_named(void **state)
{
    (void)state;
    loaded l;
    match(ONE_BUSH,
          "name;kit;fore_aft_N;vertical_N;wheel_fore_aft_mm;within_mm\n"
          "a;a;-1000;;-2,0;0,1\nb;a;-2000;3000;-4,0;0,1\nc;a;-1500;;-3,0;0,1\nd;a;-500;;-3,0;0,1\n",
          &l);
    assert_int_equal(l.s.n_readings, 4);
    assert_true(l.s.n_doubts >= 1 && l.s.doubt[0].is_reading);
    assert_string_equal(l.readings.reading[l.s.doubt[0].index].name, "d");
    release(&l);
}

/* Patch forces turn the wheel about the rigid hub by nothing; so push and hub force agree, JSON and table
 * too. */
static void a_table_says_the_same_as_json(void **state)
{
    (void)state;
    loaded a, b;
    match(ONE_BUSH,
          "{ \"format\": \"giveway-readings-1\", \"readings\": [ { \"name\": \"p\", \"load\": { "
          "\"patch_force_N\": [-900, 0, "
          "null] }, \"wheel_fore_aft_mm\": -1.7, \"within_mm\": 0.2 }, { \"name\": \"q\", \"travel_mm\": "
          "[10, -10], "
          "\"wheel_fore_aft_mm\": [0, 0.1], \"within_mm\": 0.2 } ] }",
          &a);
    match(ONE_BUSH,
          "# from the ramp\nwithin_mm,wheel_fore_aft_mm,name,travel_mm,fore_aft_N,other\n0.2,-1.7,p,,-900,x\n"
          "0.2,0,q,10,,\n0.2,0.1,q,-10,,\n",
          &b);
    assert_int_equal(a.s.n_values, b.s.n_values);
    assert_int_equal(b.s.n_readings, 2);
    for (int j = 0; j < a.s.n; j++) check_abs(a.s.z[j], b.s.z[j], 1e-12, "z");
    for (int v = 0; v < 3; v++) check_abs(a.s.value[v].after, b.s.value[v].after, 1e-15, "model");
    release(&a);
    release(&b);
}

static void faults_name_their_place(void **state)
{
    static const struct {
        const char *text, *says;
    } LIST[] = {
        { "{ \"format\": \"giveway-readings-1\", \"readings\": [] }",
          "ramp: readings: expected at least one reading" },
        { "{ \"format\": \"giveway-readings-1\", \"readings\": [ { \"name\": \"a\", \"toe_change_deg\": 1, "
          "\"within_deg\": 1 } ] }",
          "ramp: readings[0]: expected \"load\", \"travel_mm\" or a wheel rate" },
        { "{ \"format\": \"giveway-readings-1\", \"readings\": [ { \"name\": \"a\", \"load\": {}, "
          "\"toe_change_deg\": 1 } ] }",
          "ramp: readings[0].within_deg: this key is missing" },
        { "{ \"format\": \"giveway-readings-1\", \"readings\": [ { \"name\": \"a\", \"load\": {}, "
          "\"toe_change_deg\": 1, "
          "\"within_deg\": 1, \"within_mm\": 1 } ] }",
          "ramp: readings[0].within_mm: nothing is read in this unit" },
        { "{ \"format\": \"giveway-readings-1\", \"readings\": [ { \"name\": \"a\", \"load\": {} } ] }",
          "ramp: readings[0]: nothing is read" },
        { "{ \"format\": \"giveway-readings-1\", \"readings\": [ { \"name\": \"a\", \"travel_mm\": [1, 2], "
          "\"toe_change_deg\": [1], "
          "\"within_deg\": 1 } ] }",
          "ramp: readings[0].toe_change_deg: expected as many numbers as \"travel_mm\" has: a list of 2" },
        { "{ \"format\": \"giveway-readings-1\", \"readings\": [ { \"name\": \"a\", \"kit\": \"c\", "
          "\"load\": {}, "
          "\"toe_change_deg\": 1, \"within_deg\": 1 } ] }",
          "ramp: readings[0].kit: expected the name of a kit of the case, found the text \"c\"" },
        { "{ \"format\": \"giveway-readings-1\", \"readings\": [ { \"name\": \"a\", \"corner\": \"rear\", "
          "\"load\": {}, "
          "\"toe_change_deg\": 1, \"within_deg\": 1 } ] }",
          "ramp: readings[0].corner: the case has no rear corner" },
        { "{ \"format\": \"giveway-readings-1\", \"readings\": [ { \"name\": \"a\", \"load\": {}, "
          "\"spring\": \"out\", "
          "\"toe_change_deg\": 1, \"within_deg\": 1 } ] }",
          "ramp: readings[0].spring: the spring is out with \"travel_mm\" alone" },
        { "{ \"format\": \"giveway-readings-1\", \"readings\": [ { \"name\": \"a\", \"load\": {}, "
          "\"toe_change_deg\": 1, "
          "\"within_deg\": 1 }, { \"name\": \"a\", \"kit\": \"a\", \"travel_mm\": 3, \"toe_change_deg\": 1, "
          "\"within_deg\": 1 } ] }",
          "ramp: readings[1].name: readings[0] has the same name, corner and kit" },
        { "name,fore_aft_N,wheel_fore_aft_mm,within_mm\na,1000,2\n",
          "ramp: line 2, within_mm: this is missing" },
        { "name,fore_aft_N,wheel_fore_aft_mm,within_mm\n\na,10 kN,2,1\n", "ramp: line 3, fore_aft_N: " },
        { "name,wheel_fore_aft_mm,within_mm\na,2,1\n",
          "ramp: line 2, name: expected a force, travel_mm or a wheel rate" },
        { "fore_aft_N,wheel_fore_aft_mm,within_mm\n1,2,1\n", "ramp: line 1: there is no head \"name\"" },
        { "name,fore_aft_N\na,2\n",
          "ramp: line 1: expected the heads name and at least one of toe_change_deg" },
    };
    (void)state;
    for (size_t i = 0; i < sizeof LIST / sizeof *LIST; i++) {
        loaded l;
        load(ONE_BUSH, &l);
        if (gw_readings_read("ramp", LIST[i].text, strlen(LIST[i].text), &l.c, &l.readings, &l.faults) ==
            GW_OK)
            fail_msg("no fault in %s", LIST[i].text);
        if (strncmp(gw_faults_text(&l.faults, 0), LIST[i].says, strlen(LIST[i].says)) != 0)
            fail_msg("%s: %s", LIST[i].text, gw_faults_text(&l.faults, 0));
        release(&l);
    }
}

static void nothing_uncertain_is_told(void **state)
{
    (void)state;
    loaded l;
    const gw_selection all = { 0 };
    gw_error err = { 0 };
    const char *readings = "name,fore_aft_N,wheel_fore_aft_mm,within_mm\na,1000,2,1\n";
    char *text = sample_change(ONE_BUSH, "{ \"of\": \"bushes\", \"percent\": 60 }", "");
    load(text, &l);
    assert_int_equal(gw_readings_read("ramp", readings, strlen(readings), &l.c, &l.readings, &l.faults),
                     GW_OK);
    assert_int_equal(gw_study_match(&l.c, &l.readings, &all, false, &l.s, &err), GW_E_SCHEMA);
    check_contains(err.msg, "no figure is uncertain");
    release(&l);
    free(text);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(one_pull_finds_the_mode),
        cmocka_unit_test(a_load_cell_that_is_off_shows_in_both_kits),
        cmocka_unit_test(travel_with_the_spring_out_and_in),
        cmocka_unit_test(a_reading_that_contradicts_is_named),
        cmocka_unit_test(a_table_says_the_same_as_json),
        cmocka_unit_test(faults_name_their_place),
        cmocka_unit_test(nothing_uncertain_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
