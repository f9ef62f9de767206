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

typedef struct gw_match_job {
    gw_match_made made; /* first: the rows are over it */
    gw_match_study study;
    gw_next_study next;
} gw_match_job;

static gw_status check_words(const gw_args *args, void *made, gw_error *err)
{
    const char *sheet = gw_args_text(args, GW_OPT_SHEET, 0);
    (void)made;
    if (sheet || gw_args_has(args, GW_OPT_READINGS)) return gw_refuse_existing(sheet, err);
    return gw_fail(err, GW_E_USAGE,
                   "give the readings with --readings FILE, or --sheet FILE.csv for a file to fill in");
}

/* Nothing is read yet: what to read next alone, for the sheet. */
static gw_status study(const gw_job *job, void *made, gw_error *err)
{
    gw_match_job *w = made;
    gw_status status = GW_OK;
    w->made = (gw_match_made){ job->readings, &w->study, &w->next };
    if (job->readings) status = gw_study_match(job->c, job->readings, job->wanted, false, &w->study, err);
    if (status != GW_OK) return status;
    return gw_study_read_next(job->c, job->wanted, job->readings ? &w->study : NULL, &w->next, err);
}

static bool nothing(const void *made)
{
    return !((const gw_match_made *)made)->readings;
}

static gw_status put_case(const gw_case *c, const gw_match_study *study, double *z, double *sd,
                          const char *path, gw_error *err)
{
    char *text = NULL;
    for (int j = 0; j < c->uncertain.n; j++) {
        sd[j] = j < study->n_case ? study->figure[j].sd : 1.0;
        z[j] = j < study->n_case ? study->figure[j].z : 0.0;
    }
    gw_status status = gw_case_rewritten(c, z, sd, &text, err);
    if (status == GW_OK) status = gw_file_write(path, text, strlen(text), err);
    free(text);
    return status;
}

/* The corrected case, with independent bands. */
static gw_status write_case(const gw_job *job, const gw_match_study *study, const char *path, gw_error *err)
{
    const size_t n = (size_t)job->c->uncertain.n + 1;
    double *room = calloc(2 * n, sizeof *room);
    gw_status status =
        room ? put_case(job->c, study, room, room + n, path, err) : gw_fail(err, GW_E_NOMEM, "out of memory");
    free(room);
    if (status == GW_OK && !gw_args_has(job->args, GW_OPT_QUIET))
        fprintf(
            stderr,
            "the corrected case is in %s; its bands stand each for itself: what the readings say of figures "
            "together is kept by spread --readings\n",
            path);
    return status;
}

static gw_status write_sheet(const gw_job *job, const gw_next_study *next, const char *path, gw_error *err)
{
    gw_buf text = { 0 };
    gw_match_sheet(job->c, next, &text);
    gw_status status = gw_file_write_text(path, &text, err);
    gw_buf_free(&text);
    if (status == GW_OK && !gw_args_has(job->args, GW_OPT_QUIET))
        fprintf(stderr, "%d readings to take are in %s, what tells most first\n", next->n, path);
    return status;
}

static gw_status write_files(const gw_job *job, const void *made, gw_error *err)
{
    const gw_match_job *w = made;
    const char *file = gw_args_text(job->args, GW_OPT_CASE, 0);
    const char *sheet = gw_args_text(job->args, GW_OPT_SHEET, 0);
    gw_status status = file && job->readings ? write_case(job, &w->study, file, err) : GW_OK;
    return sheet && status == GW_OK ? write_sheet(job, &w->next, sheet, err) : status;
}

static void release(void *made)
{
    gw_match_job *w = made;
    gw_next_study_free(&w->next);
    gw_match_study_free(&w->study);
}

const gw_command GW_COMMAND_MATCH = {
    .name = "match",
    .args = "CASE --readings FILE | CASE --sheet FILE.csv",
    .summary = "the case corrected by what the ramp says",
    .options = GW_TAKES_COMMON | GW_TAKES(READINGS) | GW_TAKES(CASE) | GW_TAKES(SHEET) | GW_TAKES(KIT) |
               GW_TAKES(CORNER) | GW_TAKES_CHARTS,
    .words = { 1, 1 },
    .run = gw_run_command,
    .details =
        "Pushes, travels and wheel rates read on the car, with the band of each, correct the uncertain "
        "figures of the case to the most probable ones; printed are what moved, what is now surer, of which "
        "figures no reading speaks, and which reading or figure does not go with the rest, and what to read "
        "next. --case FILE writes the corrected case, -o DIR draws the readings against it, --sheet FILE.csv "
        "writes the readings that would tell most as a table to fill in, with or without --readings.",
    .examples = { "giveway match cases/hatchback.json --readings cases/hatchback-ramp.csv",
                  "giveway match cases/hatchback.json --readings cases/hatchback-ramp.csv --format json" },
    .size = sizeof(gw_match_job),
    .result = &GW_MATCH_RESULT,
    .plan = check_words,
    .study = study,
    .nothing = nothing,
    .text = gw_match_text,
    .charts = gw_match_charts,
    .write = write_files,
    .release = release,
};
