/* SPDX-License-Identifier: MIT */
/* The open corner, or both wheels of an axle, at one travel. */
#include "study/travel.h"

#include "giveway/units.h"

gw_status gw_travel_warn(gw_travel_job *job, const char *text, gw_error *err)
{
    gw_travel_study *out = job->out;
    return gw_run_warn(&job->run, "", text, &out->arena, &out->warning, &out->n_warnings, err);
}

/* Of both wheels, what is asked of the one that is told. */
static gw_status axle_state(gw_travel_job *job, gw_corner_ws *ws, const gw_corner_load *load, double travel,
                            gw_travel_rates *rates, gw_error *err)
{
    gw_corner_result result[GW_WHEELS];
    gw_travel_rates each[GW_WHEELS];
    result[job->wheel].joints = job->joints;
    result[1 - job->wheel].joints = job->joints_beside;
    gw_status status =
        gw_axle_travel_at(ws, load, job->out->plan.wheels, travel, &job->run.state, result, each, err);
    if (status != GW_OK) return status;
    job->report = result[job->wheel];
    *rates = each[job->wheel];
    return GW_OK;
}

gw_status gw_travel_state(gw_travel_job *job, gw_corner_ws *ws, const gw_corner_load *load, double travel,
                          gw_travel_rates *rates, gw_error *err)
{
    gw_error inner = { 0 };
    gw_status status = GW_OK;
    if (job->both)
        status = axle_state(job, ws, load, travel, rates, &inner);
    else
        status = gw_corner_travel_at(ws, load, travel, &job->run.state, &job->report, rates, &inner);
    if (status != GW_OK)
        return gw_fail(err, status, "%s: kit %s, travel %.4g mm: %s", job->run.c->path,
                       job->run.c->kits[job->run.kit].name, travel / GW_MM, inner.msg);
    return GW_OK;
}
