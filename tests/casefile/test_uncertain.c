/* SPDX-License-Identifier: MIT */
/* `uncertain`: which figures there are, how far each goes, and the case that is made of a draw. */
#include "giveway/uncertain.h"
#include "giveway/units.h"
#include "support/case_sample.h"
#include "support/check.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef struct loaded {
    gw_material_set materials;
    gw_case c;
    gw_faults faults;
} loaded;

static gw_status read_with(const char *list, loaded *l)
{
    char entry[2000];
    *l = (loaded){ 0 };
    snprintf(entry, sizeof entry, "\"title\": \"everything\", %s%s%s", list ? "\"uncertain\": [" : "",
             list ? list : "", list ? "]," : "");
    char *text = sample_change(SAMPLE_FULL, "\"title\": \"everything\",", entry);
    assert_int_equal(gw_materials_builtin(&l->materials, &l->faults), GW_OK);
    gw_status st = gw_case_read("sample.json", text, strlen(text), &l->materials, &l->c, &l->faults);
    sample_keep("case", text, st, &l->faults);
    free(text);
    return st;
}

static void release(loaded *l)
{
    gw_case_free(&l->c);
    gw_materials_free(&l->materials);
    gw_faults_free(&l->faults);
}

static void read_sound(const char *list, loaded *l)
{
    gw_status st = read_with(list, l);
    const char *fault = gw_faults_text(&l->faults, 0);
    if (st != GW_OK) fail_msg("%s: %s", list ? list : "no list", fault ? fault : gw_status_text(st));
}

static const gw_unsure *figure(const loaded *l, const char *of)
{
    for (int i = 0; i < l->c.uncertain.n; i++)
        if (strcmp(l->c.uncertain.figure[i].of, of) == 0) return &l->c.uncertain.figure[i];
    fail_msg("no figure %s", of);
    return NULL;
}

/* The case as drawn with one z at `of`, 0 elsewhere. */
static void draw(const loaded *l, const char *of, double z, gw_case *out)
{
    gw_drawer *d;
    gw_error err = { 0 };
    double all[200] = { 0 };
    all[figure(l, of) - l->c.uncertain.figure] = z;
    assert_int_equal(gw_drawer_open(&l->c, &d, NULL), GW_OK);
    if (gw_drawer_make(d, all, out, &err) != GW_OK) fail_msg("%s", err.msg);
    gw_drawer_close(d);
}

static void faults_name_their_place_and_the_remedy(void **state)
{
    static const struct {
        const char *list, *at, *message;
    } LIST[] = {
        { "3", "uncertain[0]", "expected an object" },
        { "{ \"percent\": 3 }", "uncertain[0].of", "missing" },
        { "{ \"of\": \"bushes\" }", "uncertain[0]", "expected a band" },
        { "{ \"of\": \"bushes\", \"percent\": 3, \"mm\": 2 }", "uncertain[0]", "in 2 units" },
        { "{ \"of\": \"bushes\", \"percent\": -3 }", "uncertain[0].percent", "at least 0 and at most 1000" },
        { "{ \"of\": \"bushes\", \"percent\": 1001 }", "uncertain[0].percent",
          "at least 0 and at most 1000" },
        { "{ \"of\": \"bushes\", \"percent\": \"3\" }", "uncertain[0].percent", "found the text" },
        { "{ \"of\": \"bushes\", \"prcent\": 3 }", "uncertain[0]", "expected a band" },
        { "{ \"of\": \"bushes\", \"percent\": 3, \"togehter\": true }", "uncertain[0].togehter", "together" },
        { "{ \"of\": \"bushes\", \"percent\": 3, \"together\": 1 }", "uncertain[0].together",
          "true or false" },
        { "{ \"of\": \"bushes\", \"percent\": [1, 2, 3] }", "uncertain[0].percent", "found a list" },
        { "{ \"of\": \"corners.front.points_mm\", \"mm\": [1, 2] }", "uncertain[0].mm",
          "three for x, y and z" },
        { "{ \"of\": \"corners.front.points_mm\", \"mm\": [1, 2, -1] }", "uncertain[0].mm[2]", "at least 0" },
        { "{ \"of\": \"bushes.rubbr\", \"percent\": 3 }", "uncertain[0].of", "did you mean \"rubber\"" },
        { "{ \"of\": \"bushes..rubber\", \"percent\": 3 }", "uncertain[0].of", "expected a path" },
        { "{ \"of\": \"bushes[0]\", \"percent\": 3 }", "uncertain[0].of", "no entry [0]" },
        { "{ \"of\": \"corners.front.joints[99]\", \"percent\": 3 }", "uncertain[0].of", "no entry [99]" },
        { "{ \"of\": \"bushes\", \"mm\": 3 }", "uncertain[0].mm", "this is a bush" },
        { "{ \"of\": \"bushes.rubber\", \"deg\": 3 }", "uncertain[0].deg", "this is a bush" },
        { "{ \"of\": \"bushes.rubber\", \"hardness_points\": 3 }", "uncertain[0].hardness_points",
          "states no hardness" },
        { "{ \"of\": \"bushes.bearing\", \"hardness_points\": 3 }", "uncertain[0].hardness_points",
          "states no hardness" },
        { "{ \"of\": \"bushes.voided.material\", \"percent\": 3 }", "uncertain[0].percent",
          "hardness_points" },
        { "{ \"of\": \"corners.front.points_mm.tie_inner\", \"percent\": 3 }", "uncertain[0].percent",
          "this is a point" },
        { "{ \"of\": \"corners.front.wheel.static_toe_deg\", \"mm\": 3 }", "uncertain[0].mm",
          "no figure in mm" },
        { "{ \"of\": \"corners.front.wheel.static_camber_deg\", \"mm\": 3 }", "uncertain[0].mm",
          "expected \"deg\": this is no figure in mm" },
        { "{ \"of\": \"corners.front.wheel.loaded_radius_mm\", \"deg\": 3 }", "uncertain[0].deg",
          "expected \"mm\" or \"percent\": this is no figure in deg" },
        { "{ \"of\": \"vehicle.mass_kg\", \"mm\": 3 }", "uncertain[0].mm",
          "expected \"percent\": this is no figure in mm" },
        { "{ \"of\": \"corners.front.joints[0].axis[1]\", \"mm\": 3 }", "uncertain[0].mm",
          "this is no figure in mm, and one in percent would have to be above 0: leave it out" },
        { "{ \"of\": \"corners.front.wheel.static_toe_deg\", \"deg\": [1, 2, 3] }", "uncertain[0].deg",
          "found a list" },
        { "{ \"of\": \"corners.front.wheel.loaded_radius_mm\", \"mm\": [1, 2, 3] }", "uncertain[0].mm",
          "three numbers are for points" },
        { "{ \"of\": \"corners.front.wheel.static_camber_deg\", \"percent\": 3 }", "uncertain[0].percent",
          "above 0, found -1: a band in percent of it has no size; give \"deg\"" },
        { "{ \"of\": \"corners.front.wheel\", \"percent\": 3 }", "uncertain[0].of", "leads to an object" },
        { "{ \"of\": \"corners.front.joints[0].name\", \"percent\": 3 }", "uncertain[0].of",
          "leads to the text" },
        { "{ \"of\": \"corners.front.joints[0].at\", \"mm\": 3 }", "uncertain[0].of", "leads to the text" },
        { "{ \"of\": \"uncertain[0].percent\", \"percent\": 3 }", "uncertain[0].of",
          "what the car is made of" },
        { "{ \"of\": \"bushes\", \"percent\": 3 }, { \"of\": \"bushes\", \"percent\": 4 }", "uncertain[1].of",
          "the same path stands in uncertain[0]" },
        { "{ \"of\": \"bushes.voided.material\", \"hardness_points\": 3 }, { \"of\": "
          "\"bushes.voided.stiffness_factor\", \"percent\": 4 }",
          "uncertain[1].of", "uncertain[0] is about the same figure" },
    };
    (void)state;
    for (size_t i = 0; i < sizeof LIST / sizeof *LIST; i++) {
        loaded l;
        char start[200];
        if (read_with(LIST[i].list, &l) == GW_OK) fail_msg("no fault in %s", LIST[i].list);
        snprintf(start, sizeof start, "sample.json: %s: ", LIST[i].at);
        const char *said = gw_faults_text(&l.faults, 0);
        bool last = strstr(LIST[i].list, "prcent") != NULL;
        if (last) said = gw_faults_text(&l.faults, 1);
        if (strncmp(said, start, strlen(start)) != 0 || !strstr(said, LIST[i].message))
            fail_msg("%s: %s", LIST[i].list, said);
        assert_int_equal(gw_faults_count(&l.faults), last ? 2 : 1);
        release(&l);
    }
}

/* exp(2 s) is the upper end of the band: 25 % above. Slope of Gent's relation (1958) at 50 points by hand:
 * 2.5 (7.62336/437.168 + 1/50) = 0.0935951. */
static void bands_hold_two_standard_deviations(void **state)
{
    (void)state;
    loaded l;
    read_sound(
        "{ \"of\": \"bushes\", \"percent\": 25 }, { \"of\": \"bushes.voided\", \"hardness_points\": 5 },"
        "{ \"of\": \"corners.front.points_mm.tie_inner[2]\", \"mm\": 6 },"
        "{ \"of\": \"corners.front.wheel.static_toe_deg\", \"deg\": 0.03 }",
        &l);
    assert_int_equal(l.c.uncertain.n, 6 + 2);
    check_rel(gw_unsure_at(figure(&l, "bushes.rubber"), 2), 1.15 * 1.25, 1e-14, "percent");
    check_rel(gw_unsure_at(figure(&l, "bushes.rubber"), -2), 1.15 / 1.25, 1e-14, "percent, down");
    check_rel(gw_unsure_at(figure(&l, "bushes.poly"), 1), sqrt(1.25), 1e-14, "one standard deviation");
    check_rel(log(gw_unsure_at(figure(&l, "bushes.voided"), 1)), 0.0935951, 1e-6, "Gent's slope at 50");
    check_rel(gw_unsure_at(figure(&l, "corners.front.points_mm.tie_inner[2]"), 2), 236, 1e-14, "mm");
    check_rel(gw_unsure_at(figure(&l, "corners.front.wheel.static_toe_deg"), -2), 0.05, 1e-12, "deg");
    release(&l);
}

static void the_longer_path_wins_and_a_band_of_0_is_known(void **state)
{
    (void)state;
    loaded l;
    read_sound("{ \"of\": \"bushes.poly.stiffness_factor\", \"percent\": 40 }, { \"of\": \"bushes\", "
               "\"percent\": 10 },"
               "{ \"of\": \"bushes.ball\", \"percent\": 0 }, { \"of\": \"corners.front.points_mm\", \"mm\": "
               "[2, 0, 4] },"
               "{ \"of\": \"corners.front.points_mm.tie_inner\", \"mm\": 1 }",
               &l);
    assert_int_equal(l.c.uncertain.n, 5 + 9 * 2 + 3);
    check_rel(gw_unsure_at(figure(&l, "bushes.poly"), 2), 1.4, 1e-14, "the bush's own");
    check_rel(gw_unsure_at(figure(&l, "bushes.bearing"), 2), 1.1, 1e-14, "all others");
    check_abs(figure(&l, "corners.front.points_mm.tie_outer[2]")->scale, 2, 1e-15, "z");
    check_abs(figure(&l, "corners.front.points_mm.tie_inner[1]")->scale, 0.5, 1e-15, "its own");
    release(&l);
}

static void what_goes_together_is_one_figure(void **state)
{
    (void)state;
    loaded l;
    gw_case c;
    read_sound("{ \"of\": \"bushes\", \"percent\": 10, \"together\": true },"
               "{ \"of\": \"corners.front.points_mm\", \"mm\": 3, \"together\": true },"
               "{ \"of\": \"bushes.rubber.radial_N_per_mm\", \"percent\": 20 },"
               "{ \"of\": \"vehicle.track_mm\", \"mm\": 10 }",
               &l);
    assert_int_equal(l.c.uncertain.n, 1 + 3 + 1 + 2);
    assert_string_equal(l.c.uncertain.figure[0].of, "bushes");
    check_abs(l.c.uncertain.figure[0].value, 1, 0, "a factor from 1");
    check_abs(figure(&l, "corners.front.points_mm[1]")->value, 0, 0, "a shift from 0");
    draw(&l, "corners.front.points_mm[1]", 2, &c);
    for (int j = 0; j < 8; j++)
        check_abs(c.corners[0].joints[j].at.y - l.c.corners[0].joints[j].at.y, 3e-3, 1e-12, "all joints");
    gw_case_free(&c);
    draw(&l, "bushes.rubber.radial_N_per_mm", 2, &c);
    check_rel(c.bushes[0].rates.radial[0], 1.2 * 900e3, 1e-14, "a pair of rates is one factor");
    check_rel(c.bushes[0].rates.radial[1], 1.2 * 1800e3, 1e-14, "a pair of rates is one factor");
    check_rel(c.bushes[0].rates.axial, 300e3, 1e-14, "not axially");
    gw_case_free(&c);
    draw(&l, "vehicle.track_mm.rear", -2, &c);
    check_rel(c.vehicle.track[GW_REAR], 1.520, 1e-14, "an object of numbers: each on its own");
    check_rel(c.vehicle.track[GW_FRONT], 1.540, 1e-14, "an object of numbers: each on its own");
    gw_case_free(&c);
    release(&l);
}

/* Everything that stands on a point goes with it; the rest of the case is what it was. */
static void a_draw_is_the_case_written_with_other_figures(void **state)
{
    (void)state;
    loaded l;
    gw_case c;
    read_sound("{ \"of\": \"bushes\", \"percent\": 25 }, { \"of\": \"corners.front.points_mm\", \"mm\": 2 },"
               "{ \"of\": \"vehicle.mass_kg\", \"percent\": 20 },"
               "{ \"of\": \"bushes.poly.outer_diameter_mm\", \"mm\": 30 },"
               "{ \"of\": \"corners.front.joints[1].bush\", \"percent\": 50 }",
               &l);
    const gw_corner *was = &l.c.corners[0];
    draw(&l, "corners.front.points_mm.spring_seat[2]", 1, &c);
    check_abs(c.corners[0].spring.at.z - was->spring.at.z, 1e-3, 1e-12, "the spring's seat");
    check_abs(c.corners[0].damper.at.z - was->damper.at.z, 1e-3, 1e-12, "the damper's seat");
    check_abs(c.corners[0].spring.to.z - was->spring.to.z, 0, 0, "not its top");
    check_abs(c.corners[0].joints[4].at.z - was->joints[4].at.z, 0, 0, "no joint");
    check_abs(c.bushes[1].annulus.material.shear_modulus.v, l.c.bushes[1].annulus.material.shear_modulus.v, 0,
              "compound");
    gw_case_free(&c);
    draw(&l, "bushes.rubber", 1, &c);
    check_rel(c.bushes[0].stiffness_factor, 1.15 * sqrt(1.25), 1e-14, "the factor as written, times");
    check_abs(c.bushes[0].rates.axial, l.c.bushes[0].rates.axial, 0, "rates as written");
    gw_case_free(&c);
    draw(&l, "vehicle.mass_kg", 2, &c);
    check_rel(c.vehicle.mass, 1800, 1e-14, "mass: its agreement with the static load is not asked");
    gw_case_free(&c);
    draw(&l, "corners.front.joints[1].bush", 2, &c);
    int in_place = c.kits[1].fits[0][1];
    check_rel(c.bushes[in_place].stiffness_factor, 1.5, 1e-14, "a bush written in place");
    gw_case_free(&c);
    gw_drawer *d;
    double z[100] = { 0 };
    gw_error err = { 0 };
    assert_int_equal(gw_drawer_open(&l.c, &d, NULL), GW_OK);
    z[figure(&l, "bushes.poly.outer_diameter_mm") - l.c.uncertain.figure] = -1.7;
    assert_int_equal(gw_drawer_make(d, z, &c, &err), GW_E_RANGE);
    check_contains(err.msg, "expected more than inner_diameter_mm");
    z[figure(&l, "bushes.poly.outer_diameter_mm") - l.c.uncertain.figure] = 1;
    assert_int_equal(gw_drawer_make(d, z, &c, &err), GW_OK);
    check_rel(c.bushes[2].annulus.outer_radius, (44 + 15) * 0.5e-3, 1e-14, "a dimension");
    assert_true(gw_drawer_anew(d)[2]);
    assert_false(gw_drawer_anew(d)[0]);
    gw_case_free(&c);
    gw_drawer_close(d);
    release(&l);
}

static void common_practice_stands_in_for_a_list(void **state)
{
    (void)state;
    loaded l;
    read_sound(NULL, &l);
    assert_false(l.c.uncertain.given);
    assert_int_equal(l.c.uncertain.n, 3 + 10 * 3);
    check_rel(gw_unsure_at(figure(&l, "bushes.voided"), 2), 1.25, 1e-14, "bonded");
    check_abs(figure(&l, "corners.front.points_mm.spring_top[0]")->scale, 1, 1e-15, "2 mm");
    assert_int_equal(l.c.uncertain.n_ride, 0); /* its default bracket is null: rigid */
    release(&l);
    read_sound("", &l);
    assert_true(l.c.uncertain.given);
    assert_int_equal(l.c.uncertain.n, 0);
    release(&l);
}

static void a_case_is_written_again_with_its_figures(void **state)
{
    (void)state;
    loaded l;
    char *text;
    gw_case again;
    read_sound("{ \"of\": \"bushes\", \"percent\": 25 }, { \"of\": \"corners.front.points_mm.tie_inner\", "
               "\"mm\": 2 }",
               &l);
    double z[20] = { 0 }, sd[20];
    for (int i = 0; i < l.c.uncertain.n; i++) sd[i] = 0.5;
    z[0] = 2;
    z[l.c.uncertain.n - 1] = -1;
    assert_int_equal(gw_case_rewritten(&l.c, z, sd, &text, NULL), GW_OK);
    gw_faults faults = { 0 };
    if (gw_case_read("again.json", text, strlen(text), &l.materials, &again, &faults) != GW_OK)
        fail_msg("%s", gw_faults_text(&faults, 0));
    check_rel(again.bushes[0].stiffness_factor, 1.15 * 1.25, 1e-14, "factor");
    check_abs(again.corners[0].joints[6].at.z, 0.229, 1e-12, "point");
    assert_int_equal(again.uncertain.n, l.c.uncertain.n);
    check_rel(again.uncertain.figure[0].scale, 0.5 * l.c.uncertain.figure[0].scale, 1e-12, "half the band");
    gw_case_free(&again);
    free(text);
    release(&l);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(faults_name_their_place_and_the_remedy),
        cmocka_unit_test(bands_hold_two_standard_deviations),
        cmocka_unit_test(the_longer_path_wins_and_a_band_of_0_is_known),
        cmocka_unit_test(what_goes_together_is_one_figure),
        cmocka_unit_test(a_draw_is_the_case_written_with_other_figures),
        cmocka_unit_test(common_practice_stands_in_for_a_list),
        cmocka_unit_test(a_case_is_written_again_with_its_figures),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
