/* SPDX-License-Identifier: MIT */
/* Times the solved rates of rubber bushes. Least of several runs: what is more is the machine's. */
#include "bench/clock.h"

#include "giveway/annulus.h"
#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <math.h>

/* Diameters and length [mm], half angle of the openings [degree; 0: none] and their depth [mm; 0: the wall].
 */
static void time_bush(const char *what, double inner, double outer, double length, double half_angle,
                      double depth)
{
    gw_annulus bush = { .inner_radius = 0.5 * inner * GW_MM,
                        .outer_radius = 0.5 * outer * GW_MM,
                        .length = length * GW_MM,
                        .has_voids = half_angle > 0.0,
                        .voids = {
                            .half_angle = half_angle * GW_DEG, .gap = GW_MM, .depth = depth * GW_MM } };
    const int runs = half_angle > 0.0 ? 5 : 50;
    double least = HUGE_VAL;
    bush.material.shear_modulus = (gw_value){ .known = true, .v = 1e6 };
    bush.material.bulk_modulus = (gw_value){ .known = true, .v = 2e9 };
    for (int i = 0; i < runs; i++) {
        gw_given_rates rates;
        double start = bench_seconds();
        if (gw_annulus_rates(&bush, NULL, &rates, NULL) != GW_OK) return;
        least = fmin(least, bench_seconds() - start);
    }
    bench_row(what, 1e3 * least, 2, "ms a bush");
}

int main(void)
{
    gsl_set_error_handler_off();
    puts("Rubber bushes, rates solved at finite length (one thread)");
    time_bush("plain, 20 x 40 x 40 mm", 20, 40, 40, 0, 0);
    time_bush("plain, slim wall, 40 x 50 x 50 mm", 40, 50, 50, 0, 0);
    time_bush("voids through the wall, 20 x 40 x 40 mm", 20, 40, 40, 30, 0);
    time_bush("voids through it, slim, 40 x 52 x 45 mm", 40, 52, 45, 40, 0);
    time_bush("voids part of it, 20 x 40 x 40 mm", 20, 40, 40, 35, 4);
    time_bush("voids part of it, slim, 40 x 48 x 40 mm", 40, 48, 40, 30, 2);
    time_bush("the largest mesh, 50 x 56 x 80 mm", 50, 56, 80, 70, 1);
    return 0;
}
