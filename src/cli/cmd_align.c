/* SPDX-License-Identifier: MIT */
/* giveway align: what to set to reach the camber and toe target, and what else moves. */
#include "cli/command.h"
#include "cli/run.h"
#include "cli/session.h"
#include "show/align.h"

static gw_status study(const gw_job *job, void *made, gw_error *err)
{
    return gw_study_align(job->c, job->wanted, made, err);
}

static void release(void *made)
{
    gw_align_study_free(made);
}

const gw_command GW_COMMAND_ALIGN = {
    .name = "align",
    .args = "CASE",
    .summary = "what to set to reach the camber and toe target, and what else it moves",
    .options = GW_TAKES_COMMON | GW_TAKES_SELECTION | GW_TAKES_CHARTS,
    .words = { 1, 1 },
    .run = gw_run_command,
    .details =
        "Offset and clock angle of off-centre bushes, turns of arms and whole shims that reach the target of "
        "the case, toe first, with the smallest offsets; the alignment sheet; what else moves; and whether "
        "the parts fit and hold. --load narrows the loads that are compared before and after.",
    .examples = { "giveway align cases/fast-saloon.json --kit mixed --corner rear",
                  "giveway align cases/fast-saloon.json --format json" },
    .size = sizeof(gw_align_study),
    .result = &GW_ALIGN_RESULT,
    .study = study,
    .text = gw_align_text,
    .charts = gw_align_charts,
    .release = release,
};
