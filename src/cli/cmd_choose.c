/* SPDX-License-Identifier: MIT */
/* giveway choose: which bushes to fit for the money and the harshness that one allows? */
#include "cli/commands.h"
#include "cli/output.h"
#include "cli/run.h"
#include "cli/selection.h"
#include "show/choose.h"

enum { DRAWS = 1024 };

static gw_status make_plan(const gw_args *args, void *made, gw_error *err)
{
    gw_chosen *chosen = made;
    (void)err;
    chosen->quiet = gw_args_has(args, GW_OPT_QUIET);
    chosen->file = gw_args_text(args, GW_OPT_CASE, 0);
    return GW_OK;
}

static gw_status study(const gw_job *job, void *made, gw_error *err)
{
    gw_chosen *chosen = made;
    const gw_choose_options options = { .draws = DRAWS };
    return gw_study_choose(job->c, job->wanted, &options, &chosen->study, err);
}

static void release(void *made)
{
    gw_choose_study_free(&((gw_chosen *)made)->study);
}

const gw_command GW_COMMAND_CHOOSE = {
    .name = "choose",
    .args = "CASE",
    .summary = "which bushes to fit for the money and the harshness that one allows",
    .options = GW_TAKES_COMMON | GW_TAKES(LOAD) | GW_TAKES(CORNER) | GW_TAKES(METHOD) | GW_TAKES(CASE) |
               GW_TAKES(DETAIL),
    .min_words = 1,
    .max_words = 1,
    .run = gw_run_command,
    .details = "Works out every combination of the bushes on offer (\"choose\" of the case).",
    .examples = { "giveway choose cases/hatchback.json",
                  "giveway choose cases/hatchback.json --format json" },
    .size = sizeof(gw_chosen),
    .result = &GW_CHOOSE_RESULT,
    .plan = make_plan,
    .study = study,
    .text = gw_choose_text,
    .release = release,
};
