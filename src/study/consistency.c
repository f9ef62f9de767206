/* SPDX-License-Identifier: MIT */
/* Between which bounds toe and camber of the outer wheel move over the range in which the car is used. */
#include "study/handling_run.h"

static void widen(double x, double *low, double *high)
{
    *low = fmin(*low, x);
    *high = fmax(*high, x);
}

static bool band_of(const gw_sweep *s, gw_band_item *out)
{
    *out = (gw_band_item){ .kit = s->kit, .axle = s->axle };
    out->toe_low = out->camber_low = out->road_low = (double)INFINITY;
    out->toe_high = out->camber_high = out->road_high = -(double)INFINITY;
    for (int i = 0; i < s->n; i++) {
        const gw_sweep_point *p = &s->point[i];
        if (p->g < GW_BAND_FROM - 1e-9) continue;
        widen(p->toe, &out->toe_low, &out->toe_high);
        widen(p->camber, &out->camber_low, &out->camber_high);
        widen(p->camber_to_road, &out->road_low, &out->road_high);
        out->to = p->g;
    }
    return out->to > GW_BAND_FROM;
}

gw_status gw_handling_bands(gw_handling_study *out, gw_error *err)
{
    const gw_sweep_study *sweep = &out->sweep;
    out->band = gw_arena_alloc(&out->arena, (size_t)sweep->n, sizeof *out->band);
    if (!out->band) return gw_fail(err, GW_E_NOMEM, "out of memory for handling");
    for (int i = 0; i < sweep->n; i++)
        if (band_of(&sweep->item[i], &out->band[out->n_bands])) out->n_bands++;
    if (!out->n_bands) out->no_bands = "a car whose wheels stay on the road above 0.2 g";
    return GW_OK;
}
