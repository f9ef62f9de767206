/* SPDX-License-Identifier: MIT */
/* Hardness to modulus for natural rubber, and the compression of a bonded block. */
#include "bush/handbook.h"
#include "giveway/units.h"

#include <math.h>
#include <stddef.h>

/* P. B. Lindley, "Engineering Design with Natural Rubber", NR Technical Bulletin, MRPRA, 4th ed.
 * 1974: IRHD, E0 [MPa], G [MPa], k [-], bulk modulus [MPa]. Values from memory. */
static const double LINDLEY[][5] = {
    { 30, 0.92, 0.30, 0.93, 1000 }, { 35, 1.18, 0.37, 0.89, 1000 }, { 40, 1.50, 0.45, 0.85, 1000 },
    { 45, 1.80, 0.54, 0.80, 1000 }, { 50, 2.20, 0.64, 0.73, 1030 }, { 55, 3.25, 0.81, 0.64, 1090 },
    { 60, 4.45, 1.06, 0.57, 1150 }, { 65, 5.85, 1.37, 0.54, 1210 }, { 70, 7.35, 1.73, 0.53, 1270 },
    { 75, 9.40, 2.22, 0.52, 1330 },
};
enum { LINDLEY_ROWS = sizeof LINDLEY / sizeof *LINDLEY };

static double between(const double *low, const double *high, int column, double t)
{
    return low[column] + t * (high[column] - low[column]);
}

gw_status gw_lindley_table(double irhd, gw_lindley *out, gw_error *err)
{
    double first = LINDLEY[0][0], last = LINDLEY[LINDLEY_ROWS - 1][0];
    if (!(irhd >= first && irhd <= last))
        return gw_fail(err, GW_E_RANGE,
                       "hardness %g IRHD is outside Lindley's table for natural rubber (%g to %g IRHD)", irhd,
                       first, last);
    size_t i = 0;
    while (i + 2 < LINDLEY_ROWS && irhd > LINDLEY[i + 1][0]) i++;
    const double *low = LINDLEY[i], *high = LINDLEY[i + 1];
    double t = (irhd - low[0]) / (high[0] - low[0]);
    *out = (gw_lindley){ .e0 = between(low, high, 1, t) * GW_MPA,
                         .g = between(low, high, 2, t) * GW_MPA,
                         .shape_k = between(low, high, 3, t),
                         .bulk = between(low, high, 4, t) * GW_MPA };
    return GW_OK;
}

gw_status gw_gent_young(double shore, double *young, gw_error *err)
{
    if (!(shore >= 20.0 && shore <= 80.0))
        return gw_fail(err, GW_E_RANGE, "hardness %g is outside Gent's relation (20 to 80 Shore A)", shore);
    *young = 0.0981 * (56.0 + 7.62336 * shore) / (0.137505 * (254.0 - 2.54 * shore)) * GW_MPA;
    return GW_OK;
}

double gw_compression_modulus(double e0, double shape_k, double shape_factor, double bulk)
{
    double ec = e0 * (1.0 + 2.0 * shape_k * shape_factor * shape_factor);
    return 1.0 / (1.0 / ec + 1.0 / bulk);
}
