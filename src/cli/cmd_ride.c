/* SPDX-License-Identifier: MIT */
/* giveway ride: what reaches the body, and how much a kit adds to it. */
#include "cli/command.h"
#include "cli/run.h"
#include "cli/session.h"
#include "show/ride.h"

static gw_status study(const gw_job *job, void *made, gw_error *err)
{
    gw_ride_made *ride = made;
    const gw_case *c = job->c;
    ride->explain = gw_args_has(job->args, GW_OPT_EXPLAIN);
    ride->all = gw_args_has(job->args, GW_OPT_DETAIL);
    const gw_ride_options options = { .no_curve = !ride->all && !gw_args_has(job->args, GW_OPT_OUT) };
    gw_status status = gw_wants_corner(c, "to drive over a road", err);
    if (status == GW_OK) status = gw_study_ride(c, job->wanted, &options, &ride->study, err);
    return status == GW_OK ? gw_ride_gather_warnings(c, ride, err) : status;
}

static void release(void *made)
{
    gw_ride_made *ride = made;
    gw_ride_study_free(&ride->study);
    gw_arena_free(&ride->arena);
}

const gw_command GW_COMMAND_RIDE = {
    .name = "ride",
    .args = "CASE",
    .summary =
        "what reaches the body from the road: comfort, harshness, road noise, and which bush carries it",
    .options = GW_TAKES_COMMON | GW_TAKES(KIT) | GW_TAKES(CORNER) | GW_TAKES(METHOD) | GW_TAKES(DETAIL) |
               GW_TAKES(EXPLAIN) | GW_TAKES_CHARTS,
    .words = { 1, 1 },
    .run = gw_run_command,
    .details =
        "One wheel on a random road of the case's class and speed, for every kit and corner; harshness and "
        "road noise in decibels over the first kit, with the range that brackets, bushes, links, lugs and "
        "the tyre's belt leave; modes in words; the share of each attachment; bushes against their brackets; "
        "a bump. Settings that the case leaves out are printed with their defaults. With --explain a page of "
        "what is in the model, what each of seven unknowns does to the figures, and what is left out. With "
        "--detail every mode, and in JSON the transfer functions. With -o DIR the charts are written there "
        "as SVG and PNG.",
    .examples = { "giveway ride cases/fast-saloon.json -o charts",
                  "giveway ride cases/fast-saloon.json --kit bearing --corner front --explain" },
    .size = sizeof(gw_ride_made),
    .result = &GW_RIDE_RESULT,
    .study = study,
    .text = gw_ride_text,
    .charts = gw_ride_charts,
    .release = release,
};
