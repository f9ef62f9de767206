/* SPDX-License-Identifier: MIT */
#include "cli/run.h"

#include "cli/output.h"
#include "cli/session.h"
#include "record/csv.h"
#include "record/json.h"

#include <stdlib.h>

/* Everything of one run, so that one function frees it. */
typedef struct gw_course {
    const gw_args *args;
    const gw_command *command;
    gw_session session;
    gw_choice choice;
    gw_readings readings;
    gw_job job;
    void *made;
} gw_course;

static int complain(const gw_course *run, const gw_error *err)
{
    return gw_complain(run->command->name, err);
}

/* The list "warnings" of the result, whatever the format. */
static void print_warnings(const gw_course *run)
{
    const gw_place top = gw_place_top(run->command->result, run->job.c, run->made);
    const gw_field *list = gw_row_if(&top, "warnings");
    if (gw_args_has(run->args, GW_OPT_QUIET)) return;
    for (int i = 0, n = list ? gw_place_count(list, &top) : 0; i < n; i++)
        fprintf(stderr, "warning: %s\n", gw_line_at(list, &top, i));
}

static void format(const gw_course *run, gw_buf *out)
{
    const gw_command *command = run->command;
    gw_paper paper = { .out = out, .bold = gw_wants_bold(), .detail = gw_args_has(run->args, GW_OPT_DETAIL) };
    paper.width = command->wide && !paper.detail ? gw_output_wide() : gw_output_width();
    if (gw_args_is(run->args, GW_OPT_FORMAT, "json"))
        gw_result_json(command->result, run->job.c, run->made, out);
    else if (gw_args_is(run->args, GW_OPT_FORMAT, "csv"))
        gw_result_csv(command->result, run->job.c, run->made, out);
    else
        command->text(run->job.c, run->made, &paper);
}

static int show(const gw_course *run)
{
    gw_buf out = { 0 };
    print_warnings(run);
    format(run, &out);
    int status = gw_emit(&out);
    gw_buf_free(&out);
    return status;
}

static int draw_all(const gw_course *run)
{
    gw_charts charts;
    if (!run->command->charts || !gw_charting_begin(run->args, &charts)) return GW_EXIT_DONE;
    run->command->charts(run->job.c, run->made, &charts);
    return gw_charting_finish(run->args, &charts, GW_OK, NULL);
}

/* Other files come first: where one cannot be written nothing is printed. */
static int make(gw_course *run)
{
    gw_error err = { 0 };
    const gw_command *command = run->command;
    gw_status made = command->study(&run->job, run->made, &err);
    if (made != GW_OK && err.code == GW_OK) return gw_exit_of(made); /* told already */
    if (made == GW_OK && command->write) made = command->write(&run->job, run->made, &err);
    if (made != GW_OK) return complain(run, &err);
    if (command->nothing && command->nothing(run->made)) return GW_EXIT_DONE;
    int status = show(run);
    if (status == GW_EXIT_DONE) status = draw_all(run);
    return command->finish ? command->finish(&run->job, run->made, status) : status;
}

static int open_run(gw_course *run)
{
    const bool with_case = run->args->n_words > 0;
    run->job = (gw_job){ .args = run->args, .materials = &run->session.materials };
    if (run->command->no_case) return GW_EXIT_DONE;
    int status = gw_session_open(run->args, with_case ? run->args->words[0] : NULL, &run->session);
    if (status != GW_EXIT_DONE || !with_case) return status;
    run->job.c = &run->session.c;
    run->job.wanted = &run->choice.wanted;
    status = gw_choice_make(run->args, &run->session.c, &run->choice);
    if (status != GW_EXIT_DONE || !gw_args_has(run->args, GW_OPT_READINGS)) return status;
    run->job.readings = &run->readings;
    return gw_session_readings(run->args, &run->session, &run->readings);
}

static int plan(gw_course *run)
{
    gw_error err = { 0 };
    run->made = calloc(1, run->command->size);
    if (!run->made) {
        gw_fail(&err, GW_E_NOMEM, "out of memory");
        return complain(run, &err);
    }
    if (run->command->plan && run->command->plan(run->args, run->made, &err) != GW_OK)
        return complain(run, &err);
    return GW_EXIT_DONE;
}

int gw_run_command(const gw_args *args)
{
    gw_course run = { .args = args, .command = args->command };
    int status = plan(&run);
    if (status == GW_EXIT_DONE) {
        status = open_run(&run);
        if (status == GW_EXIT_DONE) status = make(&run);
        gw_readings_free(&run.readings);
        gw_choice_free(&run.choice);
        gw_session_close(&run.session);
    }
    if (run.made) run.command->release(run.made);
    free(run.made);
    return status;
}

static int formats(const gw_args *args)
{
    if (gw_args_is(args, GW_OPT_FORMAT_CHARTS, "svg")) return GW_CHART_SVG;
    if (gw_args_is(args, GW_OPT_FORMAT_CHARTS, "png")) return GW_CHART_PNG;
    return GW_CHART_SVG | GW_CHART_PNG;
}

bool gw_charting_begin(const gw_args *args, gw_charts *charts)
{
    const char *dir = gw_args_text(args, GW_OPT_OUT, 0);
    *charts = (gw_charts){ 0 };
    if (dir) gw_charts_begin(charts, dir, formats(args));
    return dir != NULL;
}

static int draw(const gw_args *args, gw_charts *charts)
{
    gw_error err = { 0 };
    bool quiet = gw_args_has(args, GW_OPT_QUIET);
    gw_progress(quiet, "drawing charts");
    gw_status status = gw_charts_draw(charts, &err);
    gw_progress(quiet, NULL);
    if (status != GW_OK) return gw_complain(args->command->name, &err);
    if (charts->left_out)
        fprintf(stderr, "%s\n", GW_CHARTS_LEFT_OUT);
    else if (!quiet)
        fprintf(stderr, "%d charts written to %s\n", charts->n_files, charts->dir);
    return GW_EXIT_DONE;
}

int gw_charting_finish(const gw_args *args, gw_charts *charts, gw_status status, const gw_error *err)
{
    int exit_status = status == GW_OK ? draw(args, charts) : gw_complain(args->command->name, err);
    gw_charts_free(charts);
    return exit_status;
}
