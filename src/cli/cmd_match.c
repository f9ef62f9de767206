/* SPDX-License-Identifier: MIT */
/* giveway match: the case corrected by what the ramp says. */
#include "cli/command.h"
#include "cli/output.h"
#include "cli/run.h"
#include "cli/session.h"
#include "format/file.h"
#include "show/match.h"
#include "show/results.h"

#include <stdlib.h>
#include <string.h>

/* The corrected case, with independent bands. */
static int write_case(const gw_args *args, const gw_case *c, const gw_match_study *study)
{
    const char *path = gw_args_text(args, GW_OPT_CASE, 0);
    gw_error err = { 0 };
    char *text = NULL;
    if (!path) return GW_EXIT_DONE;
    double *sd = calloc((size_t)c->uncertain.n + 1, sizeof *sd),
           *z = calloc((size_t)c->uncertain.n + 1, sizeof *z);
    gw_status status = sd && z ? GW_OK : gw_fail(&err, GW_E_NOMEM, "out of memory");
    for (int j = 0; j < c->uncertain.n && status == GW_OK; j++) {
        sd[j] = j < study->n_case ? study->figure[j].sd : 1.0;
        z[j] = j < study->n_case ? study->figure[j].z : 0.0;
    }
    if (status == GW_OK) status = gw_case_rewritten(c, z, sd, &text, &err);
    if (status == GW_OK) status = gw_file_write(path, text, strlen(text), &err);
    free(text);
    free(sd);
    free(z);
    if (status != GW_OK) return gw_complain("match", &err);
    if (!gw_args_has(args, GW_OPT_QUIET))
        fprintf(
            stderr,
            "the corrected case is in %s; its bands stand each for itself: what the readings say of figures "
            "together is kept by spread --readings\n",
            path);
    return GW_EXIT_DONE;
}

/* A file that is there is left alone. */
static int write_sheet(const gw_args *args, const gw_case *c, const gw_next_study *next)
{
    const char *path = gw_args_text(args, GW_OPT_SHEET, 0);
    gw_error err = { 0 };
    gw_buf text = { 0 };
    if (!path) return GW_EXIT_DONE;
    gw_match_sheet(c, next, &text);
    gw_status status = gw_file_write_text(path, &text, &err);
    gw_buf_free(&text);
    if (status != GW_OK) return gw_complain("match", &err);
    if (!gw_args_has(args, GW_OPT_QUIET))
        fprintf(stderr, "%d readings to take are in %s, what tells most first\n", next->n, path);
    return GW_EXIT_DONE;
}

static int work(const gw_args *args, const gw_session *session, const gw_readings *readings,
                const gw_choice *choice)
{
    gw_match_study study = { 0 };
    gw_next_study next = { 0 };
    gw_buf out = { 0 };
    gw_error err = { 0 };
    const gw_case *c = &session->c;
    const gw_match_made made = { readings, &study, &next };
    gw_status st = gw_study_match(c, readings, &choice->wanted, false, &study, &err);
    if (st == GW_OK) st = gw_study_read_next(c, &choice->wanted, &study, &next, &err);
    if (st == GW_OK) gw_run_format(args, c, &GW_MATCH_RESULT, &made, gw_match_text, &out);
    if (st == GW_OK) st = gw_buf_status(&out, &err);
    int status = st == GW_OK ? GW_EXIT_DONE : gw_complain("match", &err);
    if (status == GW_EXIT_DONE) status = write_case(args, c, &study);
    if (status == GW_EXIT_DONE) status = write_sheet(args, c, &next);
    if (status == GW_EXIT_DONE) status = gw_emit(&out);
    if (status == GW_EXIT_DONE) status = gw_run_draw(args, c, &made, gw_match_charts);
    gw_buf_free(&out);
    gw_next_study_free(&next);
    gw_match_study_free(&study);
    return status;
}

/* Nothing is read yet: the sheet alone. */
static int sheet_alone(const gw_args *args, const gw_session *session, const gw_choice *choice)
{
    gw_next_study next = { 0 };
    gw_error err = { 0 };
    gw_status st = gw_study_read_next(&session->c, &choice->wanted, NULL, &next, &err);
    int status = st == GW_OK ? write_sheet(args, &session->c, &next) : gw_complain("match", &err);
    gw_next_study_free(&next);
    return status;
}

/* Before anything is worked out. */
static int check_words(const gw_args *args)
{
    const char *sheet = gw_args_text(args, GW_OPT_SHEET, 0);
    if (!sheet && !gw_args_text(args, GW_OPT_READINGS, 0)) {
        fprintf(stderr,
                "giveway match: give the readings with --readings FILE, or --sheet FILE.csv for a file to "
                "fill in\n");
        return GW_EXIT_USAGE;
    }
    return sheet ? gw_refuse_existing("match", sheet) : GW_EXIT_DONE;
}

static int run(const gw_args *args)
{
    gw_session session;
    gw_choice choice = { 0 };
    gw_readings readings = { 0 };
    bool read = gw_args_text(args, GW_OPT_READINGS, 0) != NULL;
    int status = check_words(args);
    if (status != GW_EXIT_DONE) return status;
    status = gw_session_open(args, args->words[0], &session);
    if (status == GW_EXIT_DONE) status = gw_choice_make(args, &session.c, &choice);
    if (status == GW_EXIT_DONE && read) status = gw_session_readings(args, &session, &readings);
    if (status == GW_EXIT_DONE)
        status = read ? work(args, &session, &readings, &choice) : sheet_alone(args, &session, &choice);
    gw_readings_free(&readings);
    gw_choice_free(&choice);
    gw_session_close(&session);
    return status;
}

const gw_command GW_COMMAND_MATCH = {
    .name = "match",
    .args = "CASE --readings FILE | CASE --sheet FILE.csv",
    .summary = "the case corrected by what the ramp says",
    .options = GW_TAKES_COMMON | GW_TAKES(READINGS) | GW_TAKES(CASE) | GW_TAKES(SHEET) | GW_TAKES(KIT) |
               GW_TAKES(CORNER) | GW_TAKES_CHARTS,
    .words = { 1, 1 },
    .run = run,
    .details =
        "Pushes, travels and wheel rates read on the car, with the band of each, correct the uncertain "
        "figures of the case to the most probable ones; printed are what moved, what is now surer, of which "
        "figures no reading speaks, and which reading or figure does not go with the rest, and what to read "
        "next. --case FILE writes the corrected case, -o DIR draws the readings against it, --sheet FILE.csv "
        "writes the readings that would tell most as a table to fill in, with or without --readings.",
    .examples = { "giveway match cases/hatchback.json --readings cases/hatchback-ramp.csv",
                  "giveway match cases/hatchback.json --readings cases/hatchback-ramp.csv --format json" },
};
