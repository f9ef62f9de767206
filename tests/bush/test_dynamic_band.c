/* SPDX-License-Identifier: MIT */
/* Limits of the dynamic stiffness that the tolerances of a compound give. */
#include "giveway/dynamic_band.h"
#include "support/check.h"

#include <math.h>

static gw_material compound(double zener_tolerance, double payne_tolerance)
{
    gw_material m = { .name = "compound" };
    m.zener_gain = (gw_value){ .known = true, .v = 1.0, .tolerance = zener_tolerance };
    m.payne_gain = (gw_value){ .known = true, .v = 0.4, .tolerance = payne_tolerance };
    return m;
}

/* Zener of order one half, gain 1, tau 1 ms; at 10 Hz 1169.3879 + 125.0565 i per 1000: worked by hand from
 * 1 + x/(1 + x), x = (i w tau)^(1/2). */
static gw_dynamic_law law_of(const gw_material *m)
{
    return (
        gw_dynamic_law){ .ratio = 1.0, .zener_gain = m->zener_gain.v, .zener_tau = 1e-3, .zener_alpha = 0.5 };
}

static void the_middle_is_size_and_loss_of_the_factor(void **state)
{
    (void)state;
    gw_material m = compound(0.5, 0.0);
    gw_dynamic_law law = law_of(&m);
    gw_dynamic_band b = gw_dynamic_band_of(&law, &m, 10.0, 0.0);
    check_abs(b.ratio, hypot(1.1693879, 0.1250565), 1e-7, "size");
    check_abs(b.loss, 0.1250565 / 1.1693879, 1e-7, "loss factor");
}

/* Half the gain halves what is added to one: 1.08469395 + 0.06252825 i; one and a half times likewise. */
static void a_tolerance_of_the_gain_moves_both_ways(void **state)
{
    (void)state;
    gw_material m = compound(0.5, 0.0);
    gw_dynamic_law law = law_of(&m);
    gw_dynamic_band b = gw_dynamic_band_of(&law, &m, 10.0, 0.0);
    check_abs(b.ratio_low, hypot(1.08469395, 0.06252825), 1e-7, "lowest size");
    check_abs(b.ratio_high, hypot(1.25408185, 0.18758475), 1e-7, "highest size");
    check_abs(b.loss_low, 0.06252825 / 1.08469395, 1e-7, "lowest loss");
    check_abs(b.loss_high, 0.18758475 / 1.25408185, 1e-7, "highest loss");
}

static void the_amplitude_law_has_its_own_tolerance(void **state)
{
    (void)state;
    gw_material m = compound(0.0, 0.5);
    gw_dynamic_law law = { .ratio = 1.0, .payne_gain = 0.4, .payne_amplitude = 1e-4, .payne_exponent = 0.5 };
    gw_dynamic_band b = gw_dynamic_band_of(&law, &m, 10.0, 0.0); /* at vanishing amplitude 1 + gain */
    check_abs(b.ratio_low, 1.2, 1e-12, "lowest size");
    check_abs(b.ratio_high, 1.6, 1e-12, "highest size");
    check_abs(b.loss_high, 0.0, 1e-12, "no loss without a Zener part");
}

static void constants_of_a_case_have_no_band(void **state)
{
    (void)state;
    gw_dynamic_law law = { .ratio = 1.4, .loss = 0.2 };
    gw_dynamic_band b = gw_dynamic_band_of(&law, NULL, 33.0, 1e-3);
    check_abs(b.ratio_low, 1.4 * hypot(1.0, 0.2), 1e-12, "size");
    check_abs(b.ratio_high, b.ratio_low, 0.0, "no band");
    check_abs(b.loss, 0.2, 1e-12, "loss");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_middle_is_size_and_loss_of_the_factor),
        cmocka_unit_test(a_tolerance_of_the_gain_moves_both_ways),
        cmocka_unit_test(the_amplitude_law_has_its_own_tolerance),
        cmocka_unit_test(constants_of_a_case_have_no_band),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
