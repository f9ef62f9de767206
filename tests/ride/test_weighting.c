/* SPDX-License-Identifier: MIT */
#include "giveway/ride.h"
#include "support/check.h"

#include <math.h>

/*
 * ISO 2631-1:1997, Table 3: weightings x 1000 as printed, each with one unit of its last digit. Below
 * 0.5 Hz and above 80 Hz from memory. The print belongs to the nominal frequencies. Wd at 10 Hz is
 * printed 212, but the transfer function that defines Wd gives 201.7 there; every other entry agrees,
 * so that one is checked against the function instead.
 */
static const struct row {
    double hz, wk, wk_unit, wd, wd_unit;
} TABLE[] = {
    { 0.1, 31.2, 0.1, 62.4, 0.1 },   { 0.125, 48.6, 0.1, 97.3, 0.1 }, { 0.16, 79, 1, 158, 1 },
    { 0.2, 121, 1, 243, 1 },         { 0.25, 182, 1, 365, 1 },        { 0.315, 263, 1, 530, 1 },
    { 0.4, 352, 1, 713, 1 },         { 0.5, 418, 1, 853, 1 },         { 0.63, 459, 1, 944, 1 },
    { 0.8, 477, 1, 992, 1 },         { 1, 482, 1, 1011, 1 },          { 1.25, 484, 1, 1008, 1 },
    { 1.6, 494, 1, 968, 1 },         { 2, 531, 1, 890, 1 },           { 2.5, 631, 1, 776, 1 },
    { 3.15, 804, 1, 642, 1 },        { 4, 967, 1, 512, 1 },           { 5, 1039, 1, 409, 1 },
    { 6.3, 1054, 1, 323, 1 },        { 8, 1036, 1, 253, 1 },          { 10, 988, 1, 212, 1 },
    { 12.5, 902, 1, 161, 1 },        { 16, 768, 1, 125, 1 },          { 20, 636, 1, 100, 1 },
    { 25, 513, 1, 80, 1 },           { 31.5, 405, 1, 63.2, 0.1 },     { 40, 314, 1, 49.4, 0.1 },
    { 50, 246, 1, 38.8, 0.1 },       { 63, 186, 1, 29.5, 0.1 },       { 80, 132, 1, 21.1, 0.1 },
    { 100, 88.7, 0.1, 14.1, 0.1 },   { 125, 54, 1, 8.63, 0.01 },      { 160, 28.5, 0.1, 4.55, 0.01 },
    { 200, 15.2, 0.1, 2.43, 0.01 },  { 250, 7.9, 0.1, 1.26, 0.01 },   { 315, 3.98, 0.01, 0.64, 0.01 },
    { 400, 1.95, 0.01, 0.31, 0.01 },
};

static void wk_matches_the_table_within_a_unit_of_the_last_digit(void **state)
{
    (void)state;
    check_printed_in("ISO 2631-1:1997, Table 3, column Wk (printed x 1000)");
    for (size_t i = 0; i < sizeof TABLE / sizeof *TABLE; i++) {
        check_about("%g Hz", TABLE[i].hz);
        check_abs(1000.0 * gw_weight_wk(TABLE[i].hz), TABLE[i].wk, TABLE[i].wk_unit, "Wk");
    }
}

static void wd_matches_the_table_within_a_unit_of_the_last_digit(void **state)
{
    (void)state;
    check_printed_in("ISO 2631-1:1997, Table 3, column Wd (printed x 1000)");
    for (size_t i = 0; i < sizeof TABLE / sizeof *TABLE; i++) {
        check_about("%g Hz", TABLE[i].hz);
        if (TABLE[i].hz != 10.0)
            check_abs(1000.0 * gw_weight_wd(TABLE[i].hz), TABLE[i].wd, TABLE[i].wd_unit, "Wd");
    }
    check_about("10 Hz");
    check_abs(1000.0 * gw_weight_wd(10.0), 201.7, 0.05, "Wd by its transfer function");
}

/* IEC 61672-1:2013, Table 3 (from memory), dB, at the exact base-ten frequencies; printed to 0.1 dB. */
static void a_weighting_matches_the_table(void **state)
{
    (void)state;
    check_printed_in("IEC 61672-1:2013, Table 3, weighting A (from memory)");
    const double table[] = { -70.4, -63.4, -56.7, -50.5, -44.7, -39.4, -34.6, -30.2, -26.2,
                             -22.5, -19.1, -16.1, -13.4, -10.9, -8.6,  -6.6,  -4.8,  -3.2,
                             -1.9,  -0.8,  0.0,   0.6,   1.0,   1.2,   1.3,   1.2,   1.0,
                             0.5,   -0.1,  -1.1,  -2.5,  -4.3,  -6.6,  -9.3 };
    for (int i = 0; i < (int)(sizeof table / sizeof *table); i++) {
        check_about("%.4g Hz", gw_band_centre(i + 10));
        check_abs(20.0 * log10(gw_weight_a(gw_band_centre(i + 10))), table[i], 0.0501, "A [dB]");
    }
}

/* The same standard prints the pole frequencies 20.60, 107.7, 737.9 and 12194 Hz. */
static void a_weighting_follows_from_the_printed_poles(void **state)
{
    (void)state;
    check_from("IEC 61672-1:2013, Annex E, poles of weighting A");
    const double f1 = 20.60 * 20.60, f2 = 107.7 * 107.7, f3 = 737.9 * 737.9, f4 = 12194.0 * 12194.0;
    for (double hz = 20; hz < 400; hz *= 1.3) {
        double s = hz * hz;
        double by_hand = f4 * s * s / ((s + f1) * sqrt((s + f2) * (s + f3)) * (s + f4));
        check_about("%.4g Hz", hz);
        check_abs(20 * log10(gw_weight_a(hz)), 20 * log10(by_hand) + 2.000, 0.005, "A [dB]");
    }
}

/* IEC 61260-1:2014: base-ten mid frequencies 10^(n/10), edges a twentieth of a decade off:
 * 0.891251, 1.122018. */
static void bands_are_base_ten(void **state)
{
    (void)state;
    check_from("IEC 61260-1:2014, third-octave bands, base ten");
    const double nominal[GW_BANDS] = { 10, 12.5, 16,  20,  25,  31.5, 40,  50,
                                       63, 80,   100, 125, 160, 200,  250, 315 };
    for (int n = GW_BAND_FIRST; n <= GW_BAND_LAST; n++) {
        check_about("band %g Hz", nominal[n - GW_BAND_FIRST]);
        check_rel(gw_band_nominal(n), nominal[n - GW_BAND_FIRST], 1e-12, "nominal");
        check_rel(gw_band_centre(n), nominal[n - GW_BAND_FIRST], 0.013, "exact beside nominal");
        check_abs(gw_band_low(n) / gw_band_centre(n), 0.891251, 5e-7, "lower edge");
        check_abs(gw_band_high(n) / gw_band_centre(n), 1.122018, 5e-7, "upper edge");
        check_rel(gw_band_high(n), gw_band_low(n + 1), 1e-14, "bands meet");
    }
    check_about("exact");
    check_rel(gw_band_centre(20), 100.0, 1e-14, "100 Hz");
    check_rel(gw_band_centre(15), 31.6227766, 1e-9, "31.5 Hz, exact");
    check_rel(gw_band_nominal(-3), 0.5, 1e-12, "0.5 Hz");
}

/* ISO 2631-1:1997, Annex C (from memory): the bands overlap on purpose. */
static void reactions_overlap_as_in_the_standard(void **state)
{
    (void)state;
    int found[GW_REACTIONS];
    assert_int_equal(gw_reactions_at(0.1, found), 1);
    assert_string_equal(gw_reaction_get(found[0])->text, "not uncomfortable");
    assert_int_equal(gw_reactions_at(0.55, found), 2);
    assert_string_equal(gw_reaction_get(found[0])->text, "a little uncomfortable");
    assert_string_equal(gw_reaction_get(found[1])->text, "fairly uncomfortable");
    assert_int_equal(gw_reactions_at(0.9, found), 2);
    assert_int_equal(gw_reactions_at(1.4, found), 2);
    assert_string_equal(gw_reaction_get(found[1])->text, "very uncomfortable");
    assert_int_equal(gw_reactions_at(7.0, found), 1);
    assert_string_equal(gw_reaction_get(found[0])->text, "extremely uncomfortable");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(wk_matches_the_table_within_a_unit_of_the_last_digit),
        cmocka_unit_test(wd_matches_the_table_within_a_unit_of_the_last_digit),
        cmocka_unit_test(a_weighting_matches_the_table),
        cmocka_unit_test(a_weighting_follows_from_the_printed_poles),
        cmocka_unit_test(bands_are_base_ten),
        cmocka_unit_test(reactions_overlap_as_in_the_standard),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
