/* SPDX-License-Identifier: MIT */
/*
 * Progressive rubber against large-strain finite elements: CalculiX 2.20, plane strain, CPE8R 12 x 48 on half
 * a ring, Yeoh with C20 = G/(4 Jm), C30 = G/(6 Jm^2), Jm = 30, K/G = 5000; a = 10 mm.
 * tests/crosscheck/progressive.py makes the rows anew. The law is a first-order one, so the tolerance of a
 * force is what its next term can be: a quarter of what has been gained, and one in two hundred for the bulk
 * modulus and for what a neo-Hookean ring gains itself.
 */
#include "bush/progressive.h"
#include "support/check.h"

#include <math.h>

static const double TRAVEL[] = { 0.05, 0.10, 0.20, 0.30 }; /* over the wall */

static const struct {
    double outer; /**< b [mm] */
    double gain[4];
} CALCULIX[] = {
    { 15.0, { 1.0083, 1.0337, 1.1402, 1.3370 } },
    { 20.0, { 1.0033, 1.0131, 1.0527, 1.1211 } },
};

static gw_annulus ring(double outer, double length)
{
    gw_annulus x = { .inner_radius = 10e-3, .outer_radius = outer * 1e-3, .length = length };

    x.material.shear_modulus = (gw_value){ .known = true, .v = 1e6 };
    return x;
}

static void a_long_bush_stiffens_as_large_strain_finite_elements_say(void **state)
{
    (void)state;
    check_solved_by("CalculiX 2.20, large strain, plane strain, Yeoh law");
    for (size_t i = 0; i < sizeof CALCULIX / sizeof *CALCULIX; i++)
        for (int j = 0; j < 4; j++) {
            gw_annulus x = ring(CALCULIX[i].outer, 10.0);
            double travel = TRAVEL[j] * (x.outer_radius - x.inner_radius);
            double gain = 1.0 + gw_progressive_stiffening(&x, true) * travel * travel;

            check_about("b %g mm, %g of the wall", CALCULIX[i].outer, TRAVEL[j]);
            check_abs(gain, CALCULIX[i].gain[j], 0.005 + 0.25 * (CALCULIX[i].gain[j] - 1.0),
                      "force over linear");
        }
}

static void a_thin_long_layer_has_the_mean_of_a_parabolic_flow(void **state)
{
    /* Shear 6 R u/t^2 times (2 y/t) sin: <J^2>/<J> = (3/5)(3/4)(6 R u/t^2)^2. */
    gw_annulus x = ring(10.1, 10.0);
    double flow = 6.0 * 10.05e-3 / (0.1e-3 * 0.1e-3);

    (void)state;
    check_rel(gw_progressive_stiffening(&x, true), 0.45 * flow * flow / GW_CHAIN_LIMIT, 0.01, "bonded");
    check_rel(gw_progressive_stiffening(&x, false), 0.25 * 0.45 * flow * flow / GW_CHAIN_LIMIT, 0.02,
              "sliding");
}

static void a_shorter_bush_stiffens_less(void **state)
{
    double last = HUGE_VAL;

    (void)state;
    for (double length = 0.2; length > 2e-3; length *= 0.5) {
        gw_annulus x = ring(20.0, length);
        double now = gw_progressive_stiffening(&x, true);

        assert_true(now > 0.0 && now < last);
        last = now;
    }
}

static void an_interleaf_of_no_thickness_near_the_wall_changes_little(void **state)
{
    gw_annulus x = ring(20.0, 40e-3);
    double plain = gw_progressive_stiffening(&x, true);

    (void)state;
    x.has_interleaf = true;
    x.interleaf_radius = 19.9e-3;
    x.interleaf_thickness = 1e-9;
    check_rel(gw_progressive_stiffening(&x, true), plain, 0.05, "outer layer next to rigid");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_long_bush_stiffens_as_large_strain_finite_elements_say),
        cmocka_unit_test(a_thin_long_layer_has_the_mean_of_a_parabolic_flow),
        cmocka_unit_test(a_shorter_bush_stiffens_less),
        cmocka_unit_test(an_interleaf_of_no_thickness_near_the_wall_changes_little),
    };
    return cmocka_run_group_tests_name("progressive", tests, NULL, NULL);
}
