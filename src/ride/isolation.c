/* SPDX-License-Identifier: MIT */
/* Each bush against its bracket: what the body's own give leaves of it (springs in series). */
#include "bush/dynamic.h"
#include "ride/outputs.h"

#include <math.h>

/* The middle of the harshness band, sqrt(20 x 200) [Hz]. */
static const double AT_HZ = 63.2;
/* Common practice; ISO 10846-1 asks for ten where the blocked force is to be right within a tenth (from
 * memory). */
static const double ENOUGH = 5.0;

static double stiffest_way(const gw_ride_model *model, int joint)
{
    const gw_bush_law *law = &model->fit[joint].law;
    const double *rate = model->at_rest[joint].rate;
    double static_rate = fmax(rate[0], fmax(rate[1], rate[2]));
    return static_rate * cabs(gw_dynamic_factor(&law->dynamic, AT_HZ, model->amplitude[joint]));
}

gw_status gw_ride_isolation(const gw_ride_model *model, gw_isolation **out, int *n, gw_arena *arena,
                            gw_error *err)
{
    gw_isolation *list = gw_arena_alloc(arena, (size_t)model->n_paths, sizeof *list);
    if (!list) return gw_fail(err, GW_E_NOMEM, "out of memory while comparing bushes with their brackets");
    int count = 0;
    for (int p = 0; p < model->n_paths; p++) {
        int j = model->paths[p].joint;
        if (model->paths[p].kind != GW_PATH_JOINT) continue;
        gw_isolation *i = &list[count];
        *i = (gw_isolation){ .joint = j, .bush = stiffest_way(model, j) };
        i->bracket = gw_ride_bracket(model->settings, &model->corner->joints[j]);
        if (!(i->bracket > 0.0) || !(i->bush > 0.0)) continue;
        i->ratio = i->bracket / i->bush;
        i->effective = i->ratio / (1.0 + i->ratio);
        i->weak = i->ratio < ENOUGH;
        count++;
    }
    *out = list;
    *n = count;
    return GW_OK;
}
