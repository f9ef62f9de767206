/* SPDX-License-Identifier: MIT */
/** Times the rates of rubber bushes: rows "what TAB value TAB unit". */
#include "giveway/annulus.h"

#include <gsl/gsl_errno.h>
#include <stdio.h>
#include <time.h>

static double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static void row(const char *what, const gw_annulus *annulus, int runs)
{
    gw_given_rates r;
    double start = now();
    for (int i = 0; i < runs; i++)
        if (gw_annulus_rates(annulus, NULL, &r, NULL) != GW_OK) return;
    printf("%s\t%.0f\tus\n", what, 1e6 * (now() - start) / runs);
}

int main(void)
{
    gsl_set_error_handler_off();
    gw_annulus bush = { .inner_radius = 10e-3, .outer_radius = 20e-3, .length = 40e-3 };
    bush.material.shear_modulus = (gw_value){ .known = true, .v = 1e6 };
    bush.material.bulk_modulus = (gw_value){ .known = true, .v = 2e9 };
    row("a bonded bush, four rates", &bush, 100);
    bush.has_voids = true;
    bush.voids = (gw_voids){ .half_angle = 0.5, .gap = 3e-3 };
    row("a voided bush, six rates", &bush, 3);
    return 0;
}
