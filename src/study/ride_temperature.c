/* SPDX-License-Identifier: MIT */
/*
 * What the temperature of the case means for its figures of ride. No compound here has a law for it: rubber
 * stiffens and grows lossier towards its glass transition by a shift in frequency that differs from compound
 * to compound and is printed for few (Williams, Landel and Ferry, J. Am. Chem. Soc. 77 (1955) 3701-3707), so
 * a figure for another temperature would be guesswork. It is said instead.
 */
#include "study/ride_temperature.h"

#include "giveway/units.h"

#include <math.h>

/* Rubber is tested at 23 +- 2 degrees (ISO 23529, from memory): this near to 20 there is nothing to say. */
static const double NEAR_ROOM = 5.0;

static gw_status warn(gw_ride_study *study, const gw_error *text, int room, gw_error *err)
{
    if (!study->warning) study->warning = gw_arena_alloc(&study->arena, (size_t)room, sizeof *study->warning);
    char *copy = study->warning ? gw_arena_strdup(&study->arena, text->msg) : NULL;
    if (!copy) return gw_fail(err, GW_E_NOMEM, "out of memory for ride");
    study->warning[study->n_warnings++] = copy;
    return GW_OK;
}

static bool is_fitted(const gw_run *run, int bush)
{
    for (int k = 0; k < run->c->n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            if (!gw_run_wants_kit(run, k) || !gw_run_wants_axle(run, a)) continue;
            for (int j = 0; j < run->c->corners[a].n_joints; j++)
                if (run->c->kits[k].fits[a][j] == bush) return true;
        }
    return false;
}

/* The limit that the temperature is beyond; NULL: within what the compound is made for. */
static const gw_value *limit_passed(const gw_bush *bush, double temperature)
{
    const gw_value *low = &bush->annulus.material.temperature_min;
    const gw_value *high = &bush->annulus.material.temperature_max;
    if (!gw_bush_is_rubber(bush)) return NULL;
    if (low->known && temperature < low->v) return low;
    return high->known && temperature > high->v ? high : NULL;
}

static void say_passed(const gw_bush *bush, double temperature, const gw_value *limit, gw_error *text)
{
    gw_fail(text, GW_OK, "bush %s: %g degrees C is %s the %g that its material %s is made for", bush->name,
            temperature - GW_ZERO_C, temperature < limit->v ? "below" : "above", limit->v - GW_ZERO_C,
            bush->annulus.material.name);
}

gw_status gw_ride_temperature(const gw_run *run, gw_ride_study *study, gw_error *err)
{
    const gw_case *c = run->c;
    double temperature = c->ride.temperature;
    int room = c->n_bushes + 1;
    gw_status status = GW_OK;
    gw_error text;
    if (fabs(temperature - GW_RIDE_ROOM_TEMPERATURE) <= NEAR_ROOM) return GW_OK;
    gw_fail(&text, GW_OK,
            "ride.temperature_C is %g: no law of a bush follows the temperature, so every figure is for room "
            "temperature; rubber is stiffer than this in the cold and softer in the heat",
            temperature - GW_ZERO_C);
    status = warn(study, &text, room, err);
    for (int b = 0; b < c->n_bushes && status == GW_OK; b++) {
        const gw_value *limit = limit_passed(&c->bushes[b], temperature);
        if (!limit || !is_fitted(run, b)) continue;
        say_passed(&c->bushes[b], temperature, limit, &text);
        status = warn(study, &text, room, err);
    }
    return status;
}
