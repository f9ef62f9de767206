/* SPDX-License-Identifier: MIT */
/* giveway deflect: where does the wheel go under these loads, and which bush lets it? */
#include "cli/charting.h"
#include "cli/commands.h"
#include "cli/output.h"
#include "cli/selection.h"
#include "cli/session.h"
#include "show/compare_charts.h"
#include "show/deflect.h"

static gw_status format_text(const gw_args *args, const gw_case *c, const gw_deflect_study *study,
                             gw_buf *out, gw_error *err)
{
    gw_strength_study strength = { 0 };
    gw_status st = gw_study_strength(c, study, &strength, err);
    if (st == GW_OK)
        st = gw_deflect_text(c, study, &strength, gw_args_has(args, GW_OPT_DETAIL), gw_output_width(),
                             gw_wants_bold(), out, err);
    gw_strength_study_free(&strength);
    return st;
}

static gw_status format(const gw_args *args, const gw_case *c, const gw_deflect_study *study, gw_buf *out,
                        gw_error *err)
{
    if (gw_args_is(args, GW_OPT_FORMAT, "json"))
        gw_deflect_json(c, study, "deflect", out);
    else if (gw_args_is(args, GW_OPT_FORMAT, "csv"))
        gw_deflect_csv(c, study, out);
    else
        return format_text(args, c, study, out, err);
    return gw_buf_status(out, err);
}

static gw_status work_out(const gw_case *c, const gw_selection *wanted, gw_deflect_study *study,
                          gw_error *err)
{
    if (!c->has_corner[GW_FRONT] && !c->has_corner[GW_REAR])
        return gw_fail(err, GW_E_SCHEMA, "%s: corners: the case describes no corner to load", c->path);
    if (c->n_loads == 0)
        return gw_fail(err, GW_E_SCHEMA, "%s: loads: the case has no loads; add at least one", c->path);
    return gw_study_deflect(c, wanted, study, err);
}

static int draw(const gw_args *args, const gw_case *c, const gw_deflect_study *study)
{
    gw_charts charts;
    gw_error err = { 0 };
    if (!gw_charting_begin(args, &charts)) return GW_EXIT_DONE;
    gw_status status = gw_deflect_charts(c, study, &charts, &err);
    return gw_charting_finish(args, &charts, status, &err);
}

static int run(const gw_args *args)
{
    gw_session session;
    gw_choice choice = { 0 };
    gw_deflect_study study = { 0 };
    gw_buf out = { 0 };
    gw_error err = { 0 };
    int status = gw_session_open(args, args->words[0], &session);
    if (status == GW_EXIT_DONE) status = gw_choice_make(args, &session.c, &choice);
    if (status == GW_EXIT_DONE) {
        gw_status st = work_out(&session.c, &choice.wanted, &study, &err);
        if (st == GW_OK) {
            gw_print_warnings(gw_args_has(args, GW_OPT_QUIET), study.warning, study.n_warnings);
            st = format(args, &session.c, &study, &out, &err);
        }
        status = st == GW_OK ? gw_emit(&out) : gw_complain("deflect", &err);
        if (status == GW_EXIT_DONE) status = draw(args, &session.c, &study);
        status = gw_tell_failed("deflect", &session.c, &study, status);
    }
    gw_buf_free(&out);
    gw_deflect_study_free(&study);
    gw_choice_free(&choice);
    gw_session_close(&session);
    return status;
}

const gw_command GW_COMMAND_DEFLECT = {
    .name = "deflect",
    .args = "CASE",
    .summary = "where the wheel goes under each load, and which bush lets it",
    .options = GW_TAKES_COMMON | GW_TAKES_SELECTION | GW_TAKES(DETAIL) | GW_TAKES_CHARTS,
    .min_words = 1,
    .max_words = 1,
    .run = run,
    .details =
        "Camber, toe, caster and the movement of the wheel, from the car standing still, for every kit, "
        "corner and load; under them the joints that contribute most, or with --detail all of them with the "
        "strain of their rubber and the load of their bearings. What is beyond a limit is always told. With "
        "-o DIR the contributions are drawn there as SVG and PNG, one chart an "
        "axle and load.",
    .examples = { "giveway deflect cases/fast-saloon.json --kit rubber --load \"hard stop\"",
                  "giveway deflect cases/fast-saloon.json --format json" },
};
