/* SPDX-License-Identifier: MIT */
/* giveway travel: camber, toe, caster and track through bump and rebound; joints against their limits. */
#include "cli/command.h"
#include "cli/run.h"
#include "cli/session.h"
#include "giveway/units.h"
#include "show/travel.h"

static double or_usual(const gw_args *args, gw_option option, double usual_mm)
{
    return GW_MM * (gw_args_has(args, option) ? gw_args_number(args, option) : usual_mm);
}

static gw_other_wheel other_wheel(const gw_args *args)
{
    if (gw_args_is(args, GW_OPT_WHEELS, "opposite")) return GW_OTHER_OPPOSITE;
    return gw_args_is(args, GW_OPT_WHEELS, "one") ? GW_OTHER_STILL : GW_OTHER_SAME;
}

/* What the command line alone shows to be wrong is a matter of usage. */
static gw_status make_plan(const gw_args *args, void *made, gw_error *err)
{
    gw_travel_plan *plan = &((gw_travel_study *)made)->plan;
    plan->from = or_usual(args, GW_OPT_FROM, -60.0);
    plan->to = or_usual(args, GW_OPT_TO, 60.0);
    plan->step = or_usual(args, GW_OPT_STEP, 5.0);
    plan->wheels = other_wheel(args);
    if (plan->from < plan->to) return GW_OK;
    return gw_fail(err, GW_E_USAGE, "travel from %g to %g mm: --from-mm must be below --to-mm",
                   plan->from / GW_MM, plan->to / GW_MM);
}

static gw_status study(const gw_job *job, void *made, gw_error *err)
{
    const gw_travel_plan plan = ((const gw_travel_study *)made)->plan;
    gw_status status = gw_wants_corner(job->c, "to move", err);
    return status == GW_OK ? gw_study_travel(job->c, job->wanted, &plan, made, err) : status;
}

static void release(void *made)
{
    gw_travel_study_free(made);
}

const gw_command GW_COMMAND_TRAVEL = {
    .name = "travel",
    .args = "CASE",
    .summary = "camber, toe, caster and track through bump and rebound; joints against their limits of tilt",
    .options = GW_TAKES_COMMON | GW_TAKES_SELECTION | GW_TAKES(FROM) | GW_TAKES(TO) | GW_TAKES(STEP) |
               GW_TAKES(WHEELS) | GW_TAKES(DETAIL) | GW_TAKES_CHARTS,
    .words = { 1, 1 },
    .run = gw_run_command,
    .details =
        "The path of the wheel under vertical load, with the spring on its rate, for every kit and corner; "
        "then bump steer, roll centre, side-view swing arm and the share of the wheel rate that bushes add "
        "by being turned, and where a joint binds. With --wheels opposite the other wheel goes as far the "
        "other way, as when the body rolls, and roll steer, roll camber and roll stiffness are printed; with "
        "--wheels one it stays where it is. With --load, also under the other forces of that load. Bushes "
        "that were tightened at another height (clamp_travel_mm of a corner or a joint) are set beside it. "
        "With -o DIR the charts are written there as SVG and PNG.",
    .examples = { "giveway travel cases/fast-saloon.json --kit rubber --corner front -o charts",
                  "giveway travel cases/fast-saloon.json --kit rubber --wheels opposite" },
    .size = sizeof(gw_travel_study),
    .result = &GW_TRAVEL_RESULT,
    .plan = make_plan,
    .study = study,
    .text = gw_travel_text,
    .charts = gw_travel_charts,
    .release = release,
};
