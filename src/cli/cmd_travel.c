/* SPDX-License-Identifier: MIT */
/* giveway travel: camber, toe, caster and track through bump and rebound; joints against their limits. */
#include "cli/charting.h"
#include "cli/commands.h"
#include "cli/output.h"
#include "cli/selection.h"
#include "cli/session.h"
#include "giveway/units.h"
#include "show/travel.h"

static double or_usual(const gw_args *args, gw_option option, double usual_mm)
{
    return GW_MM * (gw_args_has(args, option) ? gw_args_number(args, option) : usual_mm);
}

/* What the command line alone shows to be wrong is a matter of usage. */
static gw_status make_plan(const gw_args *args, gw_travel_plan *plan, gw_error *err)
{
    plan->from = or_usual(args, GW_OPT_FROM, -60.0);
    plan->to = or_usual(args, GW_OPT_TO, 60.0);
    plan->step = or_usual(args, GW_OPT_STEP, 5.0);
    if (plan->from < plan->to) return GW_OK;
    return gw_fail(err, GW_E_USAGE, "travel from %g to %g mm: --from-mm must be below --to-mm",
                   plan->from / GW_MM, plan->to / GW_MM);
}

static gw_status work_out(const gw_case *c, const gw_selection *wanted, const gw_travel_plan *plan,
                          gw_travel_study *study, gw_error *err)
{
    if (!c->has_corner[GW_FRONT] && !c->has_corner[GW_REAR])
        return gw_fail(err, GW_E_SCHEMA, "%s: corners: the case describes no corner to move", c->path);
    return gw_study_travel(c, wanted, plan, study, err);
}

static gw_status format(const gw_args *args, const gw_case *c, const gw_travel_study *study, gw_buf *out,
                        gw_error *err)
{
    if (gw_args_is(args, GW_OPT_FORMAT, "json"))
        gw_travel_json(c, study, out);
    else if (gw_args_is(args, GW_OPT_FORMAT, "csv"))
        gw_travel_csv(c, study, out);
    else
        return gw_travel_text(c, study, gw_args_has(args, GW_OPT_DETAIL), gw_output_width(), gw_wants_bold(),
                              out, err);
    return gw_buf_status(out, err);
}

static int draw(const gw_args *args, const gw_case *c, const gw_travel_study *study)
{
    gw_charts charts;
    gw_error err = { 0 };
    if (!gw_charting_begin(args, &charts)) return GW_EXIT_DONE;
    gw_status status = gw_travel_charts(c, study, &charts, &err);
    return gw_charting_finish(args, &charts, status, &err);
}

static int travel(const gw_args *args, const gw_case *c, const gw_selection *wanted,
                  const gw_travel_plan *plan)
{
    gw_travel_study study = { 0 };
    gw_buf out = { 0 };
    gw_error err = { 0 };
    gw_status status = work_out(c, wanted, plan, &study, &err);
    if (status == GW_OK) {
        gw_print_warnings(gw_args_has(args, GW_OPT_QUIET), study.warning, study.n_warnings);
        status = format(args, c, &study, &out, &err);
    }
    int exit_status = status == GW_OK ? gw_emit(&out) : gw_complain("travel", &err);
    if (exit_status == GW_EXIT_DONE) exit_status = draw(args, c, &study);
    gw_buf_free(&out);
    gw_travel_study_free(&study);
    return exit_status;
}

static int run(const gw_args *args)
{
    gw_session session;
    gw_choice choice = { 0 };
    gw_travel_plan plan;
    gw_error err = { 0 };
    if (make_plan(args, &plan, &err) != GW_OK) return gw_complain("travel", &err);
    int status = gw_session_open(args, args->words[0], &session);
    if (status == GW_EXIT_DONE) status = gw_choice_make(args, &session.c, &choice);
    if (status == GW_EXIT_DONE) status = travel(args, &session.c, &choice.wanted, &plan);
    gw_choice_free(&choice);
    gw_session_close(&session);
    return status;
}

const gw_command GW_COMMAND_TRAVEL = {
    .name = "travel",
    .args = "CASE",
    .summary = "camber, toe, caster and track through bump and rebound; joints against their limits of tilt",
    .options = GW_TAKES_COMMON | GW_TAKES_SELECTION | GW_TAKES(FROM) | GW_TAKES(TO) | GW_TAKES(STEP) |
               GW_TAKES(DETAIL) | GW_TAKES_CHARTS,
    .min_words = 1,
    .max_words = 1,
    .run = run,
    .details =
        "The path of the wheel under vertical load, with the spring on its rate, for every kit and corner; "
        "then bump steer, roll centre, side-view swing arm and the share of the wheel rate that bushes add "
        "by "
        "being turned, and where a joint binds. With --load, besides, under the other forces of that load. "
        "Bushes that were tightened at another height (clamp_travel_mm of a corner or a joint) are set "
        "beside "
        "it. With -o DIR the charts are written there as SVG and PNG.",
    .examples = { "giveway travel cases/fast-saloon.json --kit rubber --corner front -o charts",
                  "giveway travel cases/fast-saloon.json --from-mm -40 --to-mm 40 --load \"hard stop\"" },
};
