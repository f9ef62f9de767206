/* SPDX-License-Identifier: MIT */
/*
 * The wheel rate of a wheel that rolls, or stands locked: of either the contact stays below the wheel centre, while
 * the point of the upright at which the ramp's load is drawn goes along with its pitch (caster). On links that
 * hardly pitch the two are one; on an arm that is a quarter stiffer and more.
 */
#include "study/travel.h"

#include "giveway/units.h"

#include <math.h>

static const double AROUND = 1 * GW_MM; /* half the step of the difference */
static const int ROUNDS = 4;            /* each leaves less than a hundredth of the one before */

/* Vertical load at a travel with the moment that moves it from the upright's point to below the centre. */
static gw_status load_below_centre(gw_travel_job *job, double travel, double *vertical, gw_error *err)
{
    gw_corner_load load[GW_WHEELS] = { { .travel = 0.0 } };
    gw_travel_rates rates;
    gw_status status = GW_OK;
    for (int round = 0; round < ROUNDS && status == GW_OK; round++) {
        status = gw_travel_state(job, job->run.ws, load, travel, &rates, err);
        if (status != GW_OK) return status;
        const double ahead = job->report.contact_patch.x - job->report.wheel_centre.x;
        for (int w = 0; w < GW_WHEELS; w++) load[w].patch_moment.y = ahead * rates.vertical_load;
    }
    *vertical = rates.vertical_load;
    return status;
}

gw_status gw_travel_rate_rolling(gw_travel_job *job, gw_travel_item *item, gw_error *err)
{
    double up, down;
    gw_status status = load_below_centre(job, AROUND, &up, err);
    if (status == GW_OK) status = load_below_centre(job, -AROUND, &down, err);
    if (status == GW_OK) item->rate_rolling = (up - down) / (2.0 * AROUND);
    return status;
}
