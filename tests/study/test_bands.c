/* SPDX-License-Identifier: MIT */
/* Bands from slopes, against the closed form of one bush and against slopes of whole cars. Cases are
 * invented. */
#include "giveway/bands.h"
#include "giveway/units.h"
#include "support/case_sample.h"
#include "support/check.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* One bush holds the wheel, as good as rigid in rotation: pushed by F it goes by F / k. */
static const char ONE_BUSH[] =
    "{ \"format\": \"giveway-case-1\", \"title\": \"one bush (invented)\",\n"
    "  \"corners\": { \"front\": {\n"
    "    \"wheel\": { \"centre_mm\": [0, 700, 300], \"loaded_radius_mm\": 300, \"static_load_N\": 3000,\n"
    "               \"static_camber_deg\": 0, \"static_toe_deg\": 0 },\n"
    "    \"joints\": [ { \"name\": \"hub\", \"between\": [\"chassis\", \"upright\"], \"at\": [0, 700, 300],\n"
    "        \"axis\": [0, 1, 0], \"radial_axis\": [1, 0, 0], \"bush\": \"soft\" } ],\n"
    "    \"spring\": { \"on\": \"upright\", \"at\": [0, 700, 300], \"to\": [0, 700, 600], \"rate_N_per_mm\": "
    "40 }\n"
    "  } },\n"
    "  \"bushes\": { \"soft\": { \"type\": \"rates\", \"radial_N_per_mm\": [500, 0], \"axial_N_per_mm\": "
    "5e3,\n"
    "              \"conical_Nm_per_deg\": 3000, \"torsional_Nm_per_deg\": 1e7 },\n"
    "    \"hard\": { \"type\": \"rates\", \"radial_N_per_mm\": [700, 0], \"axial_N_per_mm\": 5e3,\n"
    "              \"conical_Nm_per_deg\": 3100, \"torsional_Nm_per_deg\": 1e7 } },\n"
    "  \"uncertain\": [ { \"of\": \"bushes\", \"percent\": 60 } ],\n"
    "  \"kits\": [ { \"name\": \"a\", \"fits\": {} }, { \"name\": \"b\", \"fits\": { \"front.hub\": \"hard\" "
    "} },\n"
    "            { \"name\": \"c\", \"fits\": { \"front.hub\": \"soft\" } } ],\n"
    "  \"loads\": [ { \"name\": \"pull\", \"corner\": \"front\", \"hub_force_N\": [-1000, 0, 0] },\n"
    "             { \"name\": \"turn\", \"corner\": \"front\", \"patch_moment_Nm\": [0, 0, 300] } ]\n"
    "}\n";

typedef struct loaded {
    gw_material_set materials;
    gw_case c;
    gw_faults faults;
} loaded;

static void bands_of(const char *text, loaded *l, gw_bands_study *out)
{
    gw_error err = { 0 };
    const gw_selection all = { 0 };
    *l = (loaded){ 0 };
    assert_int_equal(gw_materials_builtin(&l->materials, &l->faults), GW_OK);
    if (gw_case_read("sample.json", text, strlen(text), &l->materials, &l->c, &l->faults) != GW_OK)
        fail_msg("%s", gw_faults_text(&l->faults, 0));
    if (gw_study_bands(&l->c, &all, out, &err) != GW_OK) fail_msg("%s", err.msg);
}

static void release(loaded *l)
{
    gw_case_free(&l->c);
    gw_materials_free(&l->materials);
    gw_faults_free(&l->faults);
}

/* x = F/k exp(-s z), s = ln(1.6)/2: slope -s x, so the band is 2 s |x|; of two bushes the root of the sum of
 * squares. */
static void a_band_is_two_standard_deviations_of_the_slope(void **state)
{
    (void)state;
    loaded l;
    gw_bands_study s;
    const double sd = 0.5 * log(1.6), soft = -1000 / 500e3, hard = -1000 / 700e3;
    bands_of(ONE_BUSH, &l, &s);
    assert_int_equal(s.n, 6);
    assert_int_equal(s.n_figures, 2);
    check_rel(s.item[0].own[GW_SPREAD_FORE_AFT].value, soft, 1e-6, "value");
    check_rel(s.item[0].own[GW_SPREAD_FORE_AFT].half, -2 * sd * soft, 1e-4, "band");
    check_rel(s.item[2].difference[GW_SPREAD_FORE_AFT].value, hard - soft, 1e-6, "difference");
    check_rel(s.item[2].difference[GW_SPREAD_FORE_AFT].half, 2 * sd * hypot(soft, hard), 1e-4, "its band");
    check_abs(s.item[4].difference[GW_SPREAD_FORE_AFT].half, 0, 1e-15, "the same bush in the same car");
    assert_false(s.item[0].has_difference);
    gw_bands_study_free(&s);
    release(&l);
}

/* A moment M turns the wheel by M / c: 300 Nm on 3000 and on 3100 Nm/deg, 60 % unsure each, cannot be told
 * apart; 60 % of one bush in both kits can be left out. */
static void what_the_band_of_the_difference_includes_is_too_close_to_call(void **state)
{
    (void)state;
    loaded l;
    gw_bands_study s;
    const double sd = 0.5 * log(1.6), soft = 0.1 * GW_DEG, hard = 300.0 / 3100 * GW_DEG;
    bands_of(ONE_BUSH, &l, &s);
    const gw_bands_item *a = gw_bands_find(&s, 0, GW_FRONT, 1, GW_LEFT_WHEEL),
                        *b = gw_bands_find(&s, 1, GW_FRONT, 1, GW_LEFT_WHEEL);
    check_rel(fabs(a->own[GW_SPREAD_TOE].value), soft, 1e-4, "toe of the softer");
    check_rel(a->own[GW_SPREAD_TOE].half, 2 * sd * soft, 2e-4, "its band");
    gw_half_band apart = gw_bands_between(&s, b, a);
    check_rel(apart.value, soft - hard, 1e-3, "the harder is the steadier");
    check_rel(apart.half, 2 * sd * hypot(soft, hard), 1e-3, "the band of that");
    assert_true(gw_is_close(&apart));
    assert_true(b->close);
    assert_true(gw_bands_kit_of(&s, 1)->close);
    const double together = sqrt(0.5) * hard; /* the pull turns nothing */
    check_rel(gw_bands_kit_of(&s, 1)->unsteadiness.value, together, 1e-3, "root mean square of both loads");
    check_rel(gw_bands_kit_of(&s, 1)->unsteadiness.half, 2 * sd * together, 1e-3, "its band");
    check_rel(s.share[0] + s.share[1], 1, 1e-12, "shares of all toe changes");
    check_rel(s.share[0] / s.share[1], 2 * soft * soft / (hard * hard), 2e-3,
              "two kits have the softer bush");
    assert_int_equal(s.n_needed, 2);
    gw_bands_study_free(&s);
    release(&l);
    char *sure = sample_change(ONE_BUSH, "\"percent\": 60", "\"percent\": 2");
    bands_of(sure, &l, &s);
    assert_false(gw_bands_find(&s, 1, GW_FRONT, 1, GW_LEFT_WHEEL)->close);
    assert_false(gw_bands_kit_of(&s, 1)->close);
    gw_bands_study_free(&s);
    release(&l);
    free(sure);
}

static const char *source(void)
{
    const char *s = getenv("SOURCE");
    return s ? s : ".";
}

/* Slopes by one step agree with differences of cars that are worked out whole, roll centres and all. */
static void slopes_are_those_of_whole_cars(void **state)
{
    (void)state;
    gw_case c;
    gw_bands_study s;
    gw_drawer *drawer;
    gw_error err = { 0 };
    const gw_selection all = { 0 };
    char path[500];
    snprintf(path, sizeof path, "%s/tests/cases/hatchback-by-rule.json", source());
    sample_load(path, &c);
    assert_int_equal(gw_study_bands(&c, &all, &s, &err), GW_OK);
    assert_int_equal(gw_drawer_open(&c, &drawer, &err), GW_OK);
    double *z = calloc((size_t)c.uncertain.n + 1, sizeof *z), worst = 0.0;
    for (int j = 0; j < s.n_figures; j += 7) {
        gw_deflect_study side[2];
        for (int i = 0; i < 2; i++) {
            gw_case drawn;
            z[j] = i ? -0.01 : 0.01;
            assert_int_equal(gw_drawer_make(drawer, z, &drawn, &err), GW_OK);
            assert_int_equal(gw_study_deflect(&drawn, &all, &side[i], &err), GW_OK);
            gw_case_free(&drawn);
        }
        z[j] = 0;
        for (int i = 0; i < s.n; i++) {
            double by = (side[0].item[i].result.toe_change - side[1].item[i].result.toe_change) / 0.02;
            double scale = 0.5 * s.item[i].own[GW_SPREAD_TOE].half;
            worst = fmax(worst, fabs(by - s.item[i].toe[j]) / scale);
        }
        for (int i = 0; i < 2; i++) gw_deflect_study_free(&side[i]);
    }
    check_abs(worst, 0, 1e-3, "largest error of a slope, over the standard deviation of its answer");
    free(z);
    gw_drawer_close(drawer);
    gw_bands_study_free(&s);
    gw_case_free(&c);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_band_is_two_standard_deviations_of_the_slope),
        cmocka_unit_test(what_the_band_of_the_difference_includes_is_too_close_to_call),
        cmocka_unit_test(slopes_are_those_of_whole_cars),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
