/* SPDX-License-Identifier: MIT */
/* A toy record with every kind of row, read as JSON, CSV, text and by key. */
#include "record/csv.h"
#include "record/json.h"
#include "record/paper.h"
#include "support/check.h"

#include <math.h>

typedef struct toy_bolt {
    double length; /* [m] */
    int turns;
} toy_bolt;

typedef struct toy_inner {
    double force; /* [N] */
    double rate[2];
} toy_inner;

typedef struct toy {
    double angle, ratio, unknown;
    int kit, load, n_notes, n_bolts, n_curve;
    gw_axle axle;
    bool holds, has_inner;
    const char *name;
    gw_vec3 at;
    double turned[3], spread[6], both[2], fitted[2];
    toy_inner inner, member;
    const char *note[2];
    const char **notes;
    toy_bolt *bolts;
    double *curve;
} toy;

typedef struct toys {
    int n;
    toy *item;
} toys;

static double twice(const gw_place *p)
{
    return 2.0 * GW_IT(p, toy)->angle;
}

static double nothing(const gw_place *p)
{
    (void)p;
    return NAN;
}

static double place_of_bolt(const gw_place *p)
{
    return GW_INDEX(p, toy_bolt);
}

static const char *toy_of_bolt(const gw_place *p)
{
    return GW_IT(p, toy)->name;
}

static const void *inner(const gw_place *p)
{
    return GW_IT(p, toy)->has_inner ? &GW_IT(p, toy)->inner : NULL;
}

static gw_unit in_mm(const gw_place *p)
{
    (void)p;
    return GW_UNIT_MM;
}

static void fit(const gw_place *p, double *x)
{
    for (int i = 0; i < 2; i++) x[i] = GW_IT(p, toy)->fitted[i];
}

static int corners(const gw_place *p)
{
    return GW_IT(p, toy)->n_curve;
}

static void corner(const gw_place *p, double *x)
{
    x[0] = GW_IT(p, toy)->curve[p->index];
    x[1] = 10.0 + p->index;
}

static GW_RECORD(INNER_RECORD, toy_inner,
    GW_MEMBER("force", KN, toy_inner, force, 0, "a force"),
    GW_MEMBER("rate", N_PER_MM, toy_inner, rate, 0, "two rates"));

static GW_RECORD(BOLT_RECORD, toy_bolt,
    GW_SAID("of", toy_of_bolt, 0, "whose it is"),
    GW_COUNTED("place", place_of_bolt, 0, "in the list"),
    GW_MEMBER("length", MM, toy_bolt, length, GW_AS_ASKED, "of the bolt"),
    GW_MEMBER("turns", PLAIN, toy_bolt, turns, 0, "whole ones"));

static GW_RECORD(TOY_RECORD, toy,
    GW_KIT("kit", toy, kit, 0, "a kit"),
    GW_LOADED("load", toy, load, GW_MAY_LACK, "a load"),
    GW_WORD("corner", toy, axle, GW_AXLE_NAMES, 0, "an axle"),
    GW_MEMBER("name", PLAIN, toy, name, 0, "a text"),
    GW_MEMBER("angle", DEG, toy, angle, 0, "an angle"),
    GW_WORKED_OUT("twice", DEG, twice, 0, "worked out"),
    GW_MEMBER("ratio", PERCENT, toy, ratio, 0, "a share"),
    GW_MEMBER("unknown", MM, toy, unknown, GW_MAY_LACK, "null"),
    GW_WORKED_OUT("rare", MM, nothing, GW_SOMETIMES | GW_NO_CSV, "left out"),
    GW_MEMBER("holds", PLAIN, toy, holds, 0, "a flag"),
    GW_MEMBER("at", MM, toy, at, 0, "a place"),
    GW_MEMBER("turned", DEG, toy, turned, GW_BUSH_AXES, "in the frame of the bush"),
    GW_BANDED("toe", DEG, toy, spread, 0, "a figure and its band"),
    GW_MEMBER("both", MM, toy, both, GW_MINUS_PLUS, "two sides"),
    GW_FILLED("fit", N_PER_MM, GW_FITTED, fit, 0, "a figure and within what it is known"),
    GW_CURVE("drawn", in_mm, corners, corner, 0, "points"),
    GW_PART_OF(toy, member, &INNER_RECORD),
    GW_INSIDE("inside", inner, &INNER_RECORD, GW_ON_LINE, "sometimes"),
    GW_SERIES("curve", MM, toy, n_curve, curve, 0, "numbers"),
    GW_TEXTS("notes", toy, n_notes, notes, 0, "lines"),
    GW_ROWS("bolts", toy, n_bolts, bolts, &BOLT_RECORD, GW_ON_LINE, "a list"));

static GW_RECORD(TOYS_RECORD, toys, GW_ROWS("results", toys, n, item, &TOY_RECORD, 0, "toys"));
static const gw_result RESULT = { .command = "toy", .record = &TOYS_RECORD, .rows = "results" };

static gw_kit kits[] = { { .name = "soft" }, { .name = "ha,rd" } };
static gw_load loads[] = { { .name = "stop" } };
static const gw_case CASE = { .title = "Toys", .n_kits = 2, .kits = kits, .n_loads = 1, .loads = loads };

static const char *lines[] = { "one", "two" };
static toy_bolt bolts[] = { { 0.0371, 3 }, { 0.012345, 4 } };
static double numbers[] = { 0.001, 0.0025 };

static toy sample(void)
{
    return (
        toy){ .angle = 0.5 * GW_DEG,
              .ratio = 0.385,
              .unknown = NAN,
              .kit = 1,
              .load = -1,
              .axle = GW_REAR,
              .holds = true,
              .name = "a \"b\"",
              .at = { 0.001, -0.002, 0.003 },
              .turned = { GW_DEG, 2.0 * GW_DEG, -GW_DEG },
              .spread = { -0.5 * GW_DEG, -0.5 * GW_DEG, 0.25 * GW_DEG, -1.0 * GW_DEG, -0.5 * GW_DEG, 0.0 },
              .both = { 0.004, 0.005 },
              .fitted = { 7e3, 0.5e3 },
              .member = { 2385.0, { 400e3, 500e3 } },
              .inner = { 1e3, { 1e3, 2e3 } },
              .n_notes = 2,
              .notes = lines,
              .n_bolts = 2,
              .bolts = bolts,
              .n_curve = 2,
              .curve = numbers };
}

static void json_has_the_rows_in_their_order(void **state)
{
    (void)state;
    toy one = sample();
    const toys all = { 1, &one };
    gw_buf out = { 0 };
    gw_result_json(&RESULT, &CASE, &all, &out);
    assert_string_equal(
        gw_buf_str(&out),
        "{\n  \"format\": \"giveway-result-1\",\n  \"command\": \"toy\",\n  \"case\": \"Toys\",\n"
        "  \"results\": [\n    {\n      \"kit\": \"ha,rd\",\n      \"load\": null,\n"
        "      \"corner\": \"rear\",\n      \"name\": \"a \\\"b\\\"\",\n      \"angle_deg\": 0.5,\n"
        "      \"twice_deg\": 1,\n      \"ratio_percent\": 38.5,\n      \"unknown_mm\": null,\n"
        "      \"holds\": true,\n      \"at_mm\": [1, -2, 3],\n      \"turned_deg\": [1, 2, -1],\n"
        "      \"toe_deg\": {\"nominal\": -0.5, \"mean\": -0.5, \"sd\": 0.25, \"low\": -1, "
        "\"median\": -0.5, \"high\": 0},\n"
        "      \"both_mm\": [4, 5],\n"
        "      \"fit_N_per_mm\": {\"value\": 7, \"within\": 0.5},\n"
        "      \"drawn\": [\n        [1, 10],\n        [2.5, 11]\n      ],\n"
        "      \"force_kN\": 2.385,\n      \"rate_N_per_mm\": [400, 500],\n"
        "      \"curve_mm\": [1, 2.5],\n"
        "      \"notes\": [\n        \"one\",\n        \"two\"\n      ],\n"
        "      \"bolts\": [\n"
        "        {\"of\": \"a \\\"b\\\"\", \"place\": 0, \"length_mm\": 37.1, \"turns\": 3},\n"
        "        {\"of\": \"a \\\"b\\\"\", \"place\": 1, \"length_mm\": 12.345, \"turns\": 4}\n"
        "      ]\n    }\n  ]\n}\n");
    gw_buf_free(&out);
}

static const char HEADS[] =
    "kit,load,corner,name,angle_deg,twice_deg,ratio_percent,unknown_mm,holds,at_x_mm,at_y_mm,at_z_mm,"
    "turned_e1_deg,turned_e2_deg,turned_e3_deg,toe_nominal_deg,toe_mean_deg,toe_sd_deg,toe_low_deg,"
    "toe_median_deg,toe_high_deg,both_minus_mm,both_plus_mm,fit_N_per_mm,fit_within_N_per_mm,force_kN,rate_"
    "e1_N_per_mm,rate_e2_N_per_mm,inside_force_kN,"
    "inside_rate_e1_N_per_mm,inside_rate_e2_N_per_mm\n";
static const char FIELDS[] = "\"ha,rd\",,rear,\"a \"\"b\"\"\",0.5,1,38.5,,true,1,-2,3,1,2,-1,"
                             "-0.5,-0.5,0.25,-1,-0.5,0,4,5,7,0.5,2.385,400,500,";

static void csv_has_a_field_below_every_head_also_of_what_is_absent(void **state)
{
    (void)state;
    toy two[] = { sample(), sample() };
    const toys all = { 2, two };
    gw_buf out = { 0 }, want = { 0 };
    two[1].has_inner = true;
    gw_result_csv(&RESULT, &CASE, &all, &out);
    gw_buf_fmt(&want, "%s%s,,\n%s1,1,2\n", HEADS, FIELDS, FIELDS);
    assert_string_equal(gw_buf_str(&out), gw_buf_str(&want));
    gw_buf_free(&out);
    gw_buf_free(&want);
}

static GW_RECORD(SHORT_RECORD, toy,
    GW_MEMBER("angle", DEG, toy, angle, 0, "an angle"),
    GW_ROWS("bolts", toy, n_bolts, bolts, &BOLT_RECORD, 0, "a list"),
    GW_MEMBER("holds", PLAIN, toy, holds, 0, "a flag"));
static GW_RECORD(LIST_RECORD, toys, GW_ROWS("results", toys, n, item, &SHORT_RECORD, 0, "toys"));
static const gw_result INNERMOST = { .command = "toy", .record = &LIST_RECORD, .rows = "results.bolts" };

static void a_row_an_element_of_an_inner_list_repeats_what_stands_above(void **state)
{
    (void)state;
    toy one = sample();
    one.name = "n";
    const toys all = { 1, &one };
    gw_buf out = { 0 };
    gw_result_csv(&INNERMOST, &CASE, &all, &out);
    assert_string_equal(gw_buf_str(&out), "angle_deg,of,place,length_mm,turns,holds\n"
                                          "0.5,n,0,37.1,3,true\n0.5,n,1,12.345,4,true\n");
    gw_buf_free(&out);
}

/* -- what a row can find without a function of its own -- */

typedef struct toy_ends {
    double low, high; /* [m] */
} toy_ends;

typedef struct toy_row {
    gw_axle axle;
    bool here, inside;
    int joint, n_along;
    toy_inner set;
    const toy_inner *behind;
    double in[2], *out, along[2];
    int n_bolts;
    toy_bolt bolt[2];
    toy_ends ends;
    char words[8];
} toy_row;

static double power(const gw_place *p)
{
    double x = 1.0;
    for (int i = 0; i < GW_WHICH(p); i++) x *= GW_IT(p, toy_row)->in[0];
    return x;
}

static void ends_of(const gw_place *p, double *x)
{
    x[0] = GW_IT(p, toy_row)->ends.low;
    x[1] = GW_IT(p, toy_row)->ends.high;
}

static GW_RECORD(AXLE_ABOVE_RECORD, toy_bolt,
    GW_MEMBER("turns", PLAIN, toy_bolt, turns, 0, "its own"),
    GW_WORD("axle", toy_row, axle, GW_AXLE_NAMES, 0, "of the struct around it"),
    GW_ENTRY("in", MM, toy_row, in, toy_bolt, 0, "of an array around it"),
    GW_ENTRY("out", MM, toy_row, out, toy_bolt, 0, "behind a pointer around it"));
static GW_RECORD(SIDE_BY_SIDE_RECORD, toy_row, GW_ENTRY("is", MM, toy_row, along, toy_row, 0, "one of them"));
static GW_RECORD(SAME_RECORD, toy_row, GW_CONSTANT("always", KN, 2e3, 0, "the same"));

static GW_RECORD(FOUND_RECORD, toy_row,
    GW_JOINT("joint", toy_row, joint, toy_row, 0, "of the corner"),
    GW_MEMBER("words", PLAIN, toy_row, words, GW_NO_CSV, "in the struct itself"),
    GW_HERE("here", &SAME_RECORD, GW_ON_LINE, "more of it"),
    GW_HERE_IF("here_if", toy_row, here, &SAME_RECORD, GW_ON_LINE, "more of it"),
    GW_PART_IF(toy_row, inside, &SAME_RECORD),
    GW_WITHIN_IF("set", toy_row, inside, set, &INNER_RECORD, GW_ON_LINE, "a member"),
    GW_BEHIND("behind", toy_row, behind, &INNER_RECORD, GW_ON_LINE, "what it points to"),
    GW_PART_BEHIND(toy_row, behind, &INNER_RECORD, GW_NO_CSV),
    GW_WORKED_OUT_OF("square", PLAIN, power, 2, 0, "by one function"),
    GW_WORKED_OUT_OF("cube", PLAIN, power, 3, 0, "by the same"),
    GW_FILLED("ends", MM, GW_PAIR, ends_of, GW_LOW_HIGH, "least and greatest"),
    GW_ARRAY("bolts", toy_row, n_bolts, bolt, &AXLE_ABOVE_RECORD, GW_ON_LINE, "a list"),
    GW_ALONG("along", toy_row, n_along, &SIDE_BY_SIDE_RECORD, GW_ON_LINE, "an array"));
static const gw_result FOUND_RESULT = { .command = "toy", .record = &FOUND_RECORD, .rows = "" };

static double outs[] = { 0.007, 0.008 };
static gw_joint toy_joints[] = { { .name = "ball" }, { .name = "link" } };

static toy_row row_of(const toy_inner *behind, bool there)
{
    return (toy_row){ .axle = GW_REAR,
                      .here = there,
                      .inside = there,
                      .joint = 1,
                      .set = { 3e3, { 1e3, 2e3 } },
                      .behind = behind,
                      .in = { 0.5, 0.25 },
                      .out = outs,
                      .n_bolts = 2,
                      .bolt = { { 0.1, 5 }, { 0.2, 6 } },
                      .n_along = 2,
                      .along = { 0.003, 0.004 },
                      .ends = { -0.001, 0.002 },
                      .words = "in it" };
}

static const char ALWAYS_FOUND[] =
    "  \"square\": 0.25,\n  \"cube\": 0.125,\n  \"ends_mm\": [-1, 2],\n  \"bolts\": [\n"
    "    {\"turns\": 5, \"axle\": \"rear\", \"in_mm\": 500, \"out_mm\": 7},\n"
    "    {\"turns\": 6, \"axle\": \"rear\", \"in_mm\": 250, \"out_mm\": 8}\n  ],\n"
    "  \"along\": [\n    {\"is_mm\": 3},\n    {\"is_mm\": 4}\n  ]\n}\n";

static void a_row_finds_what_flags_pointers_and_arrays_hold(void **state)
{
    (void)state;
    static gw_case car = { .title = "Toys" };
    const toy_inner behind = { 4e3, { 3e3, 4e3 } };
    const toy_row there = row_of(&behind, true), not_there = row_of(NULL, false);
    gw_buf out = { 0 }, want = { 0 };
    car.corners[GW_REAR].joints = toy_joints;
    gw_result_json(&FOUND_RESULT, &car, &there, &out);
    gw_buf_fmt(&want,
               "{\n  \"format\": \"giveway-result-1\",\n  \"command\": \"toy\",\n  \"case\": \"Toys\",\n"
               "  \"joint\": \"link\",\n  \"words\": \"in it\",\n  \"here\": {\"always_kN\": 2},\n  "
               "\"here_if\": {\"always_kN\": 2},\n"
               "  \"always_kN\": 2,\n  \"set\": {\"force_kN\": 3, \"rate_N_per_mm\": [1, 2]},\n"
               "  \"behind\": {\"force_kN\": 4, \"rate_N_per_mm\": [3, 4]},\n"
               "  \"force_kN\": 4,\n  \"rate_N_per_mm\": [3, 4],\n%s",
               ALWAYS_FOUND);
    assert_string_equal(gw_buf_str(&out), gw_buf_str(&want));
    out.n = want.n = 0;
    gw_result_json(&FOUND_RESULT, &car, &not_there, &out);
    gw_buf_fmt(&want,
               "{\n  \"format\": \"giveway-result-1\",\n  \"command\": \"toy\",\n  \"case\": \"Toys\",\n"
               "  \"joint\": \"link\",\n  \"words\": \"in it\",\n  \"here\": {\"always_kN\": 2},\n%s",
               ALWAYS_FOUND);
    assert_string_equal(gw_buf_str(&out), gw_buf_str(&want));
    gw_buf_free(&out);
    gw_buf_free(&want);
}

static GW_RECORD(KNOWN_RECORD, toy_row,
    GW_MEMBER_IF("high", MM, toy_row, inside, toy_row, ends.high, GW_SOMETIMES, "where a bool is set"),
    GW_MEMBER_IF("low", MM, gw_case, has_vehicle, toy_row, ends.low, GW_MAY_LACK, "where one of the case is"),
    GW_MEMBER("loads", PLAIN, gw_case, n_loads, 0, "of the case, which is above all"));
static const gw_result KNOWN_RESULT = { .command = "toy", .record = &KNOWN_RECORD, .rows = "" };

static void a_number_is_known_where_a_bool_says_so_and_the_case_is_above_all(void **state)
{
    (void)state;
    static gw_case car = { .title = "Toys", .n_loads = 7, .has_vehicle = true };
    static const char HEAD[] =
        "{\n  \"format\": \"giveway-result-1\",\n  \"command\": \"toy\",\n  \"case\": \"Toys\",\n";
    const toy_row inside = row_of(NULL, true), outside = row_of(NULL, false);
    gw_buf out = { 0 }, want = { 0 };
    gw_result_json(&KNOWN_RESULT, &car, &inside, &out);
    car.has_vehicle = false;
    gw_result_json(&KNOWN_RESULT, &car, &outside, &out);
    gw_buf_fmt(&want, "%s  \"high_mm\": 2,\n  \"low_mm\": -1,\n  \"loads\": 7\n}\n", HEAD);
    gw_buf_fmt(&want, "%s  \"low_mm\": null,\n  \"loads\": 7\n}\n", HEAD);
    assert_string_equal(gw_buf_str(&out), gw_buf_str(&want));
    gw_buf_free(&out);
    gw_buf_free(&want);
}

static void structs_one_after_the_other_are_lines_of_csv(void **state)
{
    (void)state;
    static gw_case car;
    const toy_inner behind = { 4e3, { 3e3, 4e3 } };
    const toy_row rows[] = { row_of(&behind, true), row_of(NULL, false) };
    gw_buf out = { 0 };
    car.corners[GW_REAR].joints = toy_joints;
    gw_records_csv(&FOUND_RECORD, &car, rows, 2, sizeof *rows, &out);
    assert_string_equal(
        gw_buf_str(&out),
        "joint,here_always_kN,here_if_always_kN,always_kN,set_force_kN,set_rate_e1_N_per_mm,"
        "set_rate_e2_N_per_mm,behind_force_kN,behind_rate_e1_N_per_mm,behind_rate_e2_N_per_mm,"
        "square,cube,ends_low_mm,ends_high_mm\n"
        "link,2,2,2,3,1,2,4,3,4,0.25,0.125,-1,2\n"
        "link,2,,,,,,,,,0.25,0.125,-1,2\n");
    gw_buf_free(&out);
}

static void a_figure_is_found_by_its_key_in_si(void **state)
{
    (void)state;
    toy one = sample();
    const gw_place place = { .c = &CASE, .record = &TOY_RECORD, .it = &one };
    gw_unit unit;
    check_abs(gw_number_at(&place, "angle", &unit), 0.5 * GW_DEG, 0.0, "angle");
    assert_string_equal(gw_unit_word(unit), "deg");
    check_abs(gw_number_at(&place, "at.y", NULL), -0.002, 0.0, "a component");
    check_abs(gw_number_at(&place, "turned.e3", NULL), -GW_DEG, 0.0, "a component in the bush");
    check_abs(gw_number_at(&place, "toe.low", NULL), -GW_DEG, 0.0, "the low end");
    check_abs(gw_number_at(&place, "rate.e2", NULL), 500e3, 0.0, "of a part");
    assert_true(isnan(gw_number_at(&place, "inside.force", NULL)));
    one.has_inner = true;
    check_abs(gw_number_at(&place, "inside.force", NULL), 1e3, 0.0, "inside");
}

static void a_name_in_a_sentence_cannot_steer_the_terminal(void **state)
{
    (void)state;
    gw_buf out = { 0 };
    gw_buf_say(&out, "kit %s, %d joints", "a\x1B[1mb", 2);
    assert_string_equal(out.s, "kit a [1mb, 2 joints");
    gw_buf_free(&out);
}

static void a_table_has_units_below_its_heads_and_what_a_row_says(void **state)
{
    (void)state;
    static const gw_column COLUMNS[] = { GW_WORD_COLUMN("kit", "kit"),
                                         GW_FIGURE_COLUMN("angle", "turns\nby", GW_SIGNED, 2),
                                         GW_FIGURE_COLUMN("at", "moves", GW_FIXED, 1),
                                         GW_FIGURE_COLUMN("toe", "toe", GW_SIGNED, 1),
                                         GW_FIGURE_COLUMN("inside.force", "inside", GW_FIXED, 1) };
    toy one = sample();
    const toys all = { 1, &one };
    gw_buf out = { 0 };
    gw_paper paper = { .out = &out, .width = 100 };
    const gw_place top = gw_place_top(&RESULT, &CASE, &all);
    gw_paper_list(&paper, &top, "results", COLUMNS, GW_COLUMNS(COLUMNS), NULL);
    assert_string_equal(gw_buf_str(&out), "  kit    turns         moves                 toe  inside\n"
                                          "            by\n"
                                          "           deg            mm                 deg      kN\n"
                                          "  -----  -----  ------------  ------------------  ------\n"
                                          "  ha,rd  +0.50  1.0 -2.0 3.0  -0.5 (-1.0 to 0.0)       -\n");
    gw_buf_free(&out);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(json_has_the_rows_in_their_order),
        cmocka_unit_test(csv_has_a_field_below_every_head_also_of_what_is_absent),
        cmocka_unit_test(a_row_an_element_of_an_inner_list_repeats_what_stands_above),
        cmocka_unit_test(a_row_finds_what_flags_pointers_and_arrays_hold),
        cmocka_unit_test(a_number_is_known_where_a_bool_says_so_and_the_case_is_above_all),
        cmocka_unit_test(structs_one_after_the_other_are_lines_of_csv),
        cmocka_unit_test(a_figure_is_found_by_its_key_in_si),
        cmocka_unit_test(a_name_in_a_sentence_cannot_steer_the_terminal),
        cmocka_unit_test(a_table_has_units_below_its_heads_and_what_a_row_says),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
