/* SPDX-License-Identifier: MIT */
/** The same in C++: the headers compile there, and what they declare is found in the library. */
#include <giveway/giveway.h>

#include <cmath>
#include <cstdio>

int main()
{
    gw_bush bush = {};
    bush.name = "arm";
    bush.type = GW_BUSH_RATES;
    bush.dynamic_ratio = 1.0;
    bush.rates.radial[0] = bush.rates.radial[1] = bush.rates.axial = 400.0 * GW_N_PER_MM;
    gw_bush_law law;
    gw_error err = { GW_OK, "" };
    if (gw_bush_law_make(&bush, GW_METHOD_HANDBOOK, &law, &err) != GW_OK) {
        std::fprintf(stderr, "%s\n", err.msg);
        return 1;
    }
    /* Springs in series: 400 and 1200 N/mm are 300 N/mm. */
    law = gw_bush_law_on_bracket(&law, 1200.0 * GW_N_PER_MM);
    gw_vec3 turned = gw_cross(gw_v3(1, 0, 0), gw_v3(0, 1, 0));
    return std::fabs(law.k[0] / GW_N_PER_MM - 300.0) < 1e-9 && turned.z == 1.0 ? 0 : 1;
}
