/* SPDX-License-Identifier: MIT */
/* How far joints tilt over the travel, and where the limit is reached. */
#include "study/travel.h"

#include <math.h>

static const double FOUND = 1e-7; /* travel at which a limit is reached, met to [m] */

gw_status gw_bearings_begin(gw_travel_job *job, gw_travel_item *item, gw_error *err)
{
    const gw_run *run = &job->run;
    const gw_corner *corner = gw_corner_of(run->ws), *own = &run->c->corners[run->axle];
    item->bearing = gw_arena_alloc(&job->out->arena, (size_t)corner->n_joints, sizeof *item->bearing);
    if (!item->bearing) return gw_fail(err, GW_E_NOMEM, "out of memory for bearings");
    for (int j = 0; j < corner->n_joints; j++) {
        int fitted = gw_travel_fitted(job, j), shown = own->shared ? j : j % own->n_joints;
        job->limit[j] = 0.0;
        if (fitted < 0) continue;
        job->limit[j] = gw_tilt_limit(run->c, run->kit, &corner->joints[j], run->axle, fitted);
        if (job->limit[j] > 0.0)
            item->bearing[item->n_bearings++] =
                (gw_travel_bearing){ .joint = shown, .solved = j, .limit = job->limit[j] };
    }
    return GW_OK;
}

gw_status gw_bearings_point(gw_travel_job *job, const gw_travel_item *item, gw_travel_point *point,
                            gw_error *err)
{
    point->tilt = gw_arena_alloc(&job->out->arena, (size_t)item->n_bearings, sizeof *point->tilt);
    if (!point->tilt) return gw_fail(err, GW_E_NOMEM, "out of memory for bearings");
    gw_corner_tilt(job->run.ws, &job->run.state, job->limit, job->tilt);
    point->tilt_share = NAN;
    for (int b = 0; b < item->n_bearings; b++) {
        point->tilt[b] = job->tilt[item->bearing[b].solved];
        point->tilt_share = fmax(point->tilt_share, point->tilt[b] / item->bearing[b].limit);
    }
    return GW_OK;
}

static gw_status tilt_at(gw_travel_job *job, const gw_corner_load *load, double travel, int joint,
                         double *tilt, gw_error *err)
{
    gw_travel_rates rates;
    gw_status status = gw_travel_state(job, job->run.ws, load, travel, &rates, err);
    if (status != GW_OK) return status;
    gw_corner_tilt(job->run.ws, &job->run.state, job->limit, job->tilt);
    *tilt = job->tilt[joint];
    return GW_OK;
}

/* Between a travel that is within the limit and one that is past it, by bisection with solved states. */
static gw_status find_limit(gw_travel_job *job, const gw_corner_load *load, const gw_travel_bearing *bearing,
                            double within, double past, double *found, gw_error *err)
{
    while (fabs(past - within) > FOUND) {
        double middle = 0.5 * (within + past), tilt;
        gw_status status = tilt_at(job, load, middle, bearing->solved, &tilt, err);
        if (status != GW_OK) return status;
        if (tilt > bearing->limit)
            past = middle;
        else
            within = middle;
    }
    *found = 0.5 * (within + past);
    return GW_OK;
}

/* Going away from travel 0, upwards or downwards: the first place past the limit; NAN where there is none. */
static gw_status binds(gw_travel_job *job, const gw_corner_load *load, const gw_travel_item *item, int b,
                       int way, double *found, gw_error *err)
{
    const gw_travel_bearing *bearing = &item->bearing[b];
    double before = 0.0, goes = gw_wheel_goes(job->out->plan.wheels, job->wheel);
    *found = NAN;
    if (item->rest.tilt[b] > bearing->limit) {
        *found = 0.0;
        return GW_OK;
    }
    for (int i = 0; i < item->n; i++) {
        const gw_travel_point *point = &item->point[way * goes > 0 ? i : item->n - 1 - i];
        if (point->travel * way <= 0.0) continue;
        if (point->tilt[b] > bearing->limit) {
            gw_status status =
                find_limit(job, load, bearing, before * goes, point->travel * goes, found, err);
            *found *= goes;
            return status;
        }
        before = point->travel;
    }
    return GW_OK;
}

static void largest_tilt(const gw_travel_item *item, int b, gw_travel_bearing *bearing)
{
    bearing->tilt = -1.0;
    for (int i = 0; i < item->n; i++) {
        if (!(item->point[i].tilt[b] > bearing->tilt)) continue;
        bearing->tilt = item->point[i].tilt[b];
        bearing->at = item->point[i].travel;
    }
    bearing->holds = bearing->tilt <= bearing->limit;
    bearing->margin = bearing->limit - bearing->tilt;
}

gw_status gw_bearings_end(gw_travel_job *job, const gw_corner_load *load, gw_travel_item *item, gw_error *err)
{
    gw_status status = GW_OK;
    for (int b = 0; b < item->n_bearings && status == GW_OK; b++) {
        gw_travel_bearing *bearing = &item->bearing[b];
        largest_tilt(item, b, bearing);
        status = binds(job, load, item, b, 1, &bearing->binds_up, err);
        if (status == GW_OK) status = binds(job, load, item, b, -1, &bearing->binds_dn, err);
    }
    return status;
}
