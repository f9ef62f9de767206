/* SPDX-License-Identifier: MIT */
/* giveway match: the case corrected by what the ramp says. */
#include "cli/commands.h"
#include "cli/output.h"
#include "cli/reading.h"
#include "cli/selection.h"
#include "format/file.h"
#include "show/match.h"

#include <stdlib.h>
#include <string.h>

static gw_status format(const gw_args *args, const gw_case *c, const gw_readings *readings,
                        const gw_match_study *study, gw_buf *out, gw_error *err)
{
    if (gw_args_is(args, GW_OPT_FORMAT, "json"))
        gw_match_json(c, readings, study, out);
    else if (gw_args_is(args, GW_OPT_FORMAT, "csv"))
        gw_match_csv(c, readings, study, out);
    else
        return gw_match_text(c, readings, study, gw_output_width(), gw_wants_bold(), out, err);
    return gw_buf_status(out, err);
}

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

static int work(const gw_args *args, const gw_session *session, const gw_readings *readings,
                const gw_choice *choice)
{
    gw_match_study study = { 0 };
    gw_buf out = { 0 };
    gw_error err = { 0 };
    gw_status st = gw_study_match(&session->c, readings, &choice->wanted, false, &study, &err);
    if (st == GW_OK) st = format(args, &session->c, readings, &study, &out, &err);
    int status = st == GW_OK ? GW_EXIT_DONE : gw_complain("match", &err);
    if (status == GW_EXIT_DONE) status = write_case(args, &session->c, &study);
    if (status == GW_EXIT_DONE) status = gw_emit(&out);
    gw_buf_free(&out);
    gw_match_study_free(&study);
    return status;
}

static int run(const gw_args *args)
{
    gw_session session;
    gw_choice choice = { 0 };
    gw_readings readings = { 0 };
    if (!gw_args_text(args, GW_OPT_READINGS, 0)) {
        fprintf(stderr, "giveway match: give the readings with --readings FILE\n");
        return GW_EXIT_USAGE;
    }
    int status = gw_session_open(args, args->words[0], &session);
    if (status == GW_EXIT_DONE) status = gw_choice_make(args, &session.c, &choice);
    if (status == GW_EXIT_DONE) status = gw_session_readings(args, &session, &readings);
    if (status == GW_EXIT_DONE) status = work(args, &session, &readings, &choice);
    gw_readings_free(&readings);
    gw_choice_free(&choice);
    gw_session_close(&session);
    return status;
}

const gw_command GW_COMMAND_MATCH = {
    .name = "match",
    .args = "CASE --readings FILE",
    .summary = "the case corrected by what the ramp says",
    .options = GW_TAKES_COMMON | GW_TAKES(READINGS) | GW_TAKES(CASE),
    .min_words = 1,
    .max_words = 1,
    .run = run,
    .details = "Pushes, travels and wheel rates read on the car, with the band of each, correct the "
               "uncertain figures of the "
               "case to the most probable ones; printed are what moved, what is now surer, of which figures no "
               "reading speaks, and "
               "which reading or figure does not go with the rest. --case FILE writes the corrected case.",
    .examples = { "giveway match cases/hatchback.json --readings cases/hatchback-ramp.csv",
                  "giveway match cases/hatchback.json --readings cases/hatchback-ramp.csv --format json" },
};
