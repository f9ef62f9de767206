/* SPDX-License-Identifier: MIT */
#include "giveway/dynamic_band.h"

#include "bush/dynamic.h"

#include <math.h>

static double loss_of(double complex factor)
{
    return cimag(factor) / creal(factor);
}

/* The law with its gains off by their tolerances, upwards (+1) or downwards (-1). */
static gw_dynamic_law shifted(const gw_dynamic_law *law, const gw_material *material, double way)
{
    gw_dynamic_law out = *law;

    out.zener_gain *= fmax(1.0 + way * material->zener_gain.tolerance, 0.0);
    out.payne_gain *= fmax(1.0 + way * material->payne_gain.tolerance, 0.0);
    return out;
}

gw_dynamic_band gw_dynamic_band_of(const gw_dynamic_law *law, const gw_material *material, double hz,
                                   double amplitude)
{
    double complex factor = gw_dynamic_factor(law, hz, amplitude);
    double size = cabs(factor), loss = loss_of(factor);
    gw_dynamic_band band = { size, size, size, loss, loss, loss };

    if (!material) return band;
    for (double way = -1.0; way < 2.0; way += 2.0) {
        gw_dynamic_law other = shifted(law, material, way);

        factor = gw_dynamic_factor(&other, hz, amplitude);
        band.ratio_low = fmin(band.ratio_low, cabs(factor));
        band.ratio_high = fmax(band.ratio_high, cabs(factor));
        band.loss_low = fmin(band.loss_low, loss_of(factor));
        band.loss_high = fmax(band.loss_high, loss_of(factor));
    }
    return band;
}
