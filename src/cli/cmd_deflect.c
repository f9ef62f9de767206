/* SPDX-License-Identifier: MIT */
/* giveway deflect: where does the wheel go under these loads, and which bush moves most? */
#include "cli/command.h"
#include "cli/output.h"
#include "cli/run.h"
#include "cli/session.h"
#include "show/compare_charts.h"
#include "show/deflect.h"

static gw_status study(const gw_job *job, void *made, gw_error *err)
{
    gw_deflect_made *m = made;
    const gw_case *c = job->c;
    gw_status status = gw_wants_loads(c, err);
    if (status == GW_OK) status = gw_study_deflect(c, job->wanted, &m->deflect, err);
    return status == GW_OK ? gw_study_strength(c, &m->deflect, &m->strength, err) : status;
}

static void charts(const gw_case *c, const void *made, gw_charts *out)
{
    gw_deflect_charts(c, &((const gw_deflect_made *)made)->deflect, out);
}

static int finish(const gw_job *job, const void *made, int status)
{
    return gw_tell_failed("deflect", job->c, &((const gw_deflect_made *)made)->deflect, status);
}

static void release(void *made)
{
    gw_deflect_made *m = made;
    gw_strength_study_free(&m->strength);
    gw_deflect_study_free(&m->deflect);
}

const gw_command GW_COMMAND_DEFLECT = {
    .name = "deflect",
    .args = "CASE",
    .summary = "where the wheel goes under each load, and which bush moves most",
    .options = GW_TAKES_COMMON | GW_TAKES_SELECTION | GW_TAKES(DETAIL) | GW_TAKES_CHARTS,
    .words = { 1, 1 },
    .run = gw_run_command,
    .details =
        "Camber, toe, caster and the movement of the wheel, from the car standing still, for every kit, "
        "corner and load; under them the joints that contribute most, or with --detail all of them with the "
        "strain of their rubber and the load of their bearings. What is beyond a limit is always reported. "
        "With -o DIR the contributions are drawn there as SVG and PNG, one chart an axle and load.",
    .examples = { "giveway deflect cases/fast-saloon.json --kit rubber --load \"hard stop\"",
                  "giveway deflect cases/fast-saloon.json --format json" },
    .size = sizeof(gw_deflect_made),
    .result = &GW_DEFLECT_RESULT,
    .study = study,
    .text = gw_deflect_text,
    .charts = charts,
    .finish = finish,
    .release = release,
};
