/* SPDX-License-Identifier: MIT */
/* The closed forms against printed numbers and against each other's limits. */
#include "bush/handbook.h"
#include "giveway/units.h"
#include "support/check.h"

#include <math.h>

/*
 * Adkins & Gent, Brit. J. Appl. Phys. 5 (1954) 354-358: formulas worked out for G = 1 MPa in N/mm and
 * N mm/rad by a second hand; tolerance half a unit of the last digit written down.
 */
static const struct {
    double a, b, length, radial_long, radial_short, axial, torsion, conical_long, conical_short;
} ADKINS_GENT[] = {
    { 10, 20, 40, 5396.3504, 842.7669, 362.5888, 67020.6433, 719513.386, 112368.923 },
    { 10, 20, 20, 2698.1752, 421.3835, 181.2944, 33510.3216, 89939.173, 14046.115 },
    { 8, 16, 30, 4047.2628, 632.0752, 271.9416, 32169.9088, 303544.710, 47405.639 },
    { 12, 22, 50, 9706.0801, 1222.3164, 518.2985, 128797.9068, 2022100.022, 254649.254 },
    { 15, 25, 60, 18738.3492, 1766.7291, 738.0035, 265071.8801, 5621504.766, 530018.721 },
};

static void adkins_and_gent_1954_limits_are_reproduced(void **state)
{
    (void)state;
    check_from("J. E. Adkins, A. N. Gent, Brit. J. Appl. Phys. 5 (1954) 354-358, formulas worked out by a "
               "second hand");
    for (size_t i = 0; i < sizeof ADKINS_GENT / sizeof *ADKINS_GENT; i++) {
        double a = ADKINS_GENT[i].a, b = ADKINS_GENT[i].b, length = ADKINS_GENT[i].length;
        gw_plain_bush p = { a, b, length, 1.0, (double)INFINITY };
        check_about("a %g, b %g, L %g mm, G 1 MPa [N/mm, N mm/rad]", a, b, length);
        check_abs(gw_handbook_radial_long(&p), ADKINS_GENT[i].radial_long, 1e-4, "radial, long");
        check_abs(gw_handbook_radial_short(&p), ADKINS_GENT[i].radial_short, 1e-4, "radial, short");
        check_abs(gw_handbook_axial(&p), ADKINS_GENT[i].axial, 1e-4, "axial, long");
        check_abs(gw_handbook_torsional(&p), ADKINS_GENT[i].torsion, 1e-4, "torsional");
        check_abs(gw_handbook_conical_strip(gw_handbook_radial_long(&p), length), ADKINS_GENT[i].conical_long,
                  1e-3, "conical, long strips");
        check_abs(gw_handbook_conical_strip(gw_handbook_radial_short(&p), length),
                  ADKINS_GENT[i].conical_short, 1e-3, "conical, short strips");
    }
}

/* The formulas as Adkins & Gent print them, written out again beside the rearranged ones. */
static void rearranged_radial_formula_equals_the_printed_one(void **state)
{
    (void)state;
    double a = 11.3, b = 23.85, length = 37.0, g = 0.71, a2 = a * a, b2 = b * b;
    gw_plain_bush p = { a, b, length, g, (double)INFINITY };
    double printed_long = 4 * GW_PI * g * length * (a2 + b2) / ((a2 + b2) * log(b / a) - (b2 - a2));
    double printed_short =
        80 * GW_PI * g * length * (a2 + b2) / (25 * (a2 + b2) * log(b / a) - 9 * (b2 - a2));
    check_rel(gw_handbook_radial_long(&p), printed_long, 1e-12, "long");
    check_rel(gw_handbook_radial_short(&p), printed_short, 1e-12, "short");
}

static void a_thin_layer_tends_to_twelve_pi_g_l_r3_over_t3(void **state)
{
    (void)state;
    double r = 50.0, t = 1e-3;
    gw_plain_bush p = { r - t / 2, r + t / 2, 10.0, 1.0, (double)INFINITY };
    check_rel(gw_handbook_radial_long(&p), 12 * GW_PI * 10.0 * pow(r / t, 3), 1e-6, "thin layer");
}

/* Confined so thinly that nothing flows: uniform compression M = K + 4G/3 and shear G over the wall. */
static void a_confined_layer_tends_to_its_bulk_modulus(void **state)
{
    (void)state;
    double r = 50.0, t = 0.01, g = 1.0, k = 3.0;
    gw_plain_bush p = { r - t / 2, r + t / 2, 10.0, g, k };
    double limit = GW_PI * r * 10.0 * (k + 4.0 / 3.0 * g + g) / t;
    check_rel(gw_handbook_radial_plane(&p, gw_handbook_kappa(g, k)), limit, 1e-3, "confined layer");
}

static void finite_length_relation_gives_the_worked_example(void **state)
{
    (void)state;
    gw_plain_bush p = { 10, 20, 40, 1.0, (double)INFINITY };
    check_abs(gw_handbook_radial(&p), 2327.7, 0.05,
              "a 10, b 20, L 40"); /* derived, worked by a second hand */
    p.length = 1e-3;
    check_rel(gw_handbook_radial(&p), gw_handbook_radial_short(&p), 1e-6, "short end");
    p.length = 1e6;
    check_rel(gw_handbook_radial(&p), gw_handbook_radial_long(&p), 1e-4, "long end");
}

static void conical_estimate_lies_between_strips_and_never_above_the_long_one(void **state)
{
    (void)state;
    gw_plain_bush p = { 10, 20, 4000, 1.0, (double)INFINITY };
    check_rel(gw_handbook_conical(&p), gw_handbook_conical_strip(gw_handbook_radial_long(&p), p.length), 0.02,
              "long bush");
    p.length = 40;
    double strip = gw_handbook_conical_strip(gw_handbook_radial_long(&p), p.length);
    assert_true(gw_handbook_conical(&p) < 0.5 * strip);
}

/* P. B. Lindley, NR Technical Bulletin, MRPRA, 4th ed. 1974, from memory: rows as printed. */
static void lindley_rows_come_out_as_printed(void **state)
{
    (void)state;
    gw_lindley row;
    assert_int_equal(gw_lindley_table(62.5, &row, NULL), GW_OK);
    check_abs(row.g, 0.5 * (1.06e6 + 1.37e6), 1, "halfway between rows");
    check_copy_of("P. B. Lindley, Engineering Design with Natural Rubber, MRPRA, 4th ed. 1974 (from memory)");
    assert_int_equal(gw_lindley_table(30, &row, NULL), GW_OK);
    check_abs(row.g, 0.30e6, 1, "G at 30");
    assert_int_equal(gw_lindley_table(50, &row, NULL), GW_OK);
    check_abs(row.e0, 2.20e6, 1, "E0 at 50");
    check_abs(row.shape_k, 0.73, 1e-12, "k at 50");
    check_abs(row.bulk, 1030e6, 1, "K at 50");
    assert_int_equal(gw_lindley_table(75, &row, NULL), GW_OK);
    check_abs(row.g, 2.22e6, 1, "G at 75");
}

static void hardness_outside_the_table_is_refused_and_output_untouched(void **state)
{
    (void)state;
    gw_lindley row = { .g = 2.385 };
    gw_error err = { 0 };
    assert_int_equal(gw_lindley_table(29.9, &row, &err), GW_E_RANGE);
    check_contains(err.msg, "29.9");
    assert_int_equal(gw_lindley_table(75.1, &row, &err), GW_E_RANGE);
    assert_int_equal(gw_lindley_table((double)NAN, &row, &err), GW_E_RANGE);
    check_abs(row.g, 2.385, 0, "untouched");
    double e = 2.385;
    assert_int_equal(gw_gent_young(19, &e, &err), GW_E_RANGE);
    assert_int_equal(gw_gent_young(81, &e, &err), GW_E_RANGE);
    check_abs(e, 2.385, 0, "untouched");
}

/* A. N. Gent, IRI Transactions 34 (1958) 46-57; values worked out to four digits by a second hand. */
static void gent_1958_gives_its_moduli(void **state)
{
    (void)state;
    check_from("A. N. Gent, IRI Trans. 34 (1958) 46-57, formula worked out by a second hand");
    static const double GENT[][2] = { { 30, 1.142 }, { 40, 1.690 }, { 50, 2.456 }, { 60, 3.605 },
                                      { 70, 5.521 }, { 75, 7.053 }, { 80, 9.351 } };
    for (size_t i = 0; i < sizeof GENT / sizeof *GENT; i++) {
        double e = 0.0;
        assert_int_equal(gw_gent_young(GENT[i][0], &e, NULL), GW_OK);
        check_about("%g IRHD", GENT[i][0]);
        check_abs(e / GW_MPA, GENT[i][1], 5e-4, "Young's modulus [MPa]");
    }
}

/* Lindley and Gent are two readings of one property: they differ by less than a third (30 to 75 IRHD). */
static void lindley_and_gent_agree_within_their_spread(void **state)
{
    (void)state;
    for (double h = 30; h <= 75; h += 5) {
        gw_lindley row;
        double e = 0.0;
        assert_int_equal(gw_lindley_table(h, &row, NULL), GW_OK);
        assert_int_equal(gw_gent_young(h, &e, NULL), GW_OK);
        check_rel(e, row.e0, 1.0 / 3.0, "Gent against Lindley");
    }
}

/* Gent & Lindley 1959 with Lindley's values: S, without and with bulk modulus [MPa]. */
static void bonded_blocks_stiffen_as_gent_and_lindley_1959(void **state)
{
    (void)state;
    check_from(
        "A. N. Gent, P. B. Lindley, Proc. IMechE 173 (1959), with Lindley's moduli, worked out by hand");
    static const double BLOCKS[][4] = { { 50, 0.25, 2.4008, 2.3952 }, { 50, 1, 5.4120, 5.3837 },
                                        { 50, 4, 53.592, 50.942 },    { 60, 0.5, 5.7183, 5.6900 },
                                        { 60, 2, 24.7420, 24.2209 },  { 60, 8, 329.122, 255.889 } };
    for (size_t i = 0; i < sizeof BLOCKS / sizeof *BLOCKS; i++) {
        gw_lindley row;
        assert_int_equal(gw_lindley_table(BLOCKS[i][0], &row, NULL), GW_OK);
        double unit = BLOCKS[i][2] > 50 ? 5e-4 : 5e-5, s = BLOCKS[i][1];
        check_about("%g IRHD, S %g", BLOCKS[i][0], s);
        check_abs(gw_compression_modulus(row.e0, row.shape_k, s, (double)INFINITY) / GW_MPA, BLOCKS[i][2],
                  1.2 * unit, "modulus without bulk [MPa]");
        check_abs(gw_compression_modulus(row.e0, row.shape_k, s, row.bulk) / GW_MPA, BLOCKS[i][3], 1.2 * unit,
                  "modulus with bulk [MPa]");
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(adkins_and_gent_1954_limits_are_reproduced),
        cmocka_unit_test(rearranged_radial_formula_equals_the_printed_one),
        cmocka_unit_test(a_thin_layer_tends_to_twelve_pi_g_l_r3_over_t3),
        cmocka_unit_test(a_confined_layer_tends_to_its_bulk_modulus),
        cmocka_unit_test(finite_length_relation_gives_the_worked_example),
        cmocka_unit_test(conical_estimate_lies_between_strips_and_never_above_the_long_one),
        cmocka_unit_test(lindley_rows_come_out_as_printed),
        cmocka_unit_test(hardness_outside_the_table_is_refused_and_output_untouched),
        cmocka_unit_test(gent_1958_gives_its_moduli),
        cmocka_unit_test(lindley_and_gent_agree_within_their_spread),
        cmocka_unit_test(bonded_blocks_stiffen_as_gent_and_lindley_1959),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
