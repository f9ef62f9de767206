/* SPDX-License-Identifier: MIT */
/** A program of somebody else's: built against the installed library, by what pkg-config says. */
#include <giveway/giveway.h>

#include <gsl/gsl_errno.h>

#include <math.h>
#include <stdio.h>

int main(void)
{
    gsl_set_error_handler_off();

    /* A bush of 400 N/mm on a bracket of 1200 N/mm is one of 300 N/mm: springs in series. */
    gw_bush bush = { .name = "arm", .type = GW_BUSH_RATES, .dynamic_ratio = 1.0 };
    bush.rates.radial[0] = bush.rates.radial[1] = bush.rates.axial = 400.0 * GW_N_PER_MM;
    gw_bush_law law;
    gw_error err = { GW_OK, "" };
    if (gw_bush_law_make(&bush, GW_METHOD_HANDBOOK, &law, &err) != GW_OK) {
        fprintf(stderr, "%s\n", err.msg);
        return 1;
    }
    law = gw_bush_law_on_bracket(&law, 1200.0 * GW_N_PER_MM);
    double rate = law.k[0] / GW_N_PER_MM;
    printf("giveway %s: %.1f N/mm\n", GW_VERSION, rate);
    return fabs(rate - 300.0) < 1e-9 ? 0 : 1;
}
