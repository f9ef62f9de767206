/* SPDX-License-Identifier: MIT */
/* giveway align: what to set to reach the camber and toe target, and what else moves. */
#include "cli/charting.h"
#include "cli/commands.h"
#include "cli/output.h"
#include "cli/selection.h"
#include "cli/session.h"
#include "show/align.h"

typedef struct gw_work {
    gw_session session;
    gw_choice choice;
    gw_align_study study;
} gw_work;

static gw_status format(const gw_args *args, const gw_work *w, gw_buf *out, gw_error *err)
{
    if (gw_args_is(args, GW_OPT_FORMAT, "json"))
        gw_align_json(&w->session.c, &w->study, out);
    else if (gw_args_is(args, GW_OPT_FORMAT, "csv"))
        gw_align_csv(&w->session.c, &w->study, out);
    else
        return gw_align_text(&w->session.c, &w->study, gw_output_width(), gw_wants_bold(), out, err);
    return gw_buf_status(out, err);
}

static int draw(const gw_args *args, const gw_work *w)
{
    gw_charts charts;
    gw_error err = { 0 };
    if (!gw_charting_begin(args, &charts)) return GW_EXIT_DONE;
    gw_status status = gw_align_charts(&w->session.c, &w->study, &charts, &err);
    return gw_charting_finish(args, &charts, status, &err);
}

static int align(const gw_args *args, gw_work *w)
{
    gw_buf out = { 0 };
    gw_error err = { 0 };
    gw_status status = gw_study_align(&w->session.c, &w->choice.wanted, &w->study, &err);
    if (status == GW_OK) {
        gw_print_warnings(gw_args_has(args, GW_OPT_QUIET), w->study.warning, w->study.n_warnings);
        status = format(args, w, &out, &err);
    }
    int exit_status = status == GW_OK ? gw_emit(&out) : gw_complain("align", &err);
    gw_buf_free(&out);
    return exit_status == GW_EXIT_DONE ? draw(args, w) : exit_status;
}

static int run(const gw_args *args)
{
    gw_work work = { 0 };
    int status = gw_session_open(args, args->words[0], &work.session);
    if (status == GW_EXIT_DONE) status = gw_choice_make(args, &work.session.c, &work.choice);
    if (status == GW_EXIT_DONE) status = align(args, &work);
    gw_align_study_free(&work.study);
    gw_choice_free(&work.choice);
    gw_session_close(&work.session);
    return status;
}

const gw_command GW_COMMAND_ALIGN = {
    .name = "align",
    .args = "CASE",
    .summary = "what to set to reach the camber and toe target, and what else it moves",
    .options = GW_TAKES_COMMON | GW_TAKES_SELECTION | GW_TAKES_CHARTS,
    .min_words = 1,
    .max_words = 1,
    .run = run,
    .details =
        "Offset and clock angle of off-centre bushes, turns of arms and whole shims that reach the target of "
        "the case, toe first, with the smallest offsets; the alignment sheet; what else moves; and whether "
        "the parts fit and hold. --load narrows the loads that are compared before and after.",
    .examples = { "giveway align cases/fast-saloon.json --kit mixed --corner rear",
                  "giveway align cases/fast-saloon.json --format json" },
};
