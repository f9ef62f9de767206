/* SPDX-License-Identifier: MIT */
/* giveway spread: how sure is each answer, and what to measure next? */
#include "cli/commands.h"
#include "cli/output.h"
#include "cli/reading.h"
#include "cli/run.h"
#include "cli/selection.h"
#include "giveway/match.h"
#include "show/results.h"
#include "show/spread.h"

#include <math.h>
#include <stdlib.h>

static void show_progress(void *context, double part)
{
    char text[80];
    snprintf(text, sizeof text, "drawing cars: %.0f %%", 100.0 * part);
    gw_progress(*(const bool *)context, text);
}

/* A whole number from an option, in a range; `usual` where it is not given. */
static gw_status whole(const gw_args *args, gw_option option, const char *name, double lo, double hi,
                       long usual, long *out, gw_error *err)
{
    *out = usual;
    if (!gw_args_has(args, option)) return GW_OK;
    double x = gw_args_number(args, option);
    if (x >= lo && x <= hi && x == floor(x)) {
        *out = (long)x;
        return GW_OK;
    }
    return gw_fail(err, GW_E_USAGE, "--%s takes a whole number from %.0f to %.0f", name, lo, hi);
}

static gw_status options(const gw_args *args, gw_spread_options *out, bool *quiet, gw_error *err)
{
    long seed = 1;
    *quiet = gw_args_has(args, GW_OPT_QUIET);
    *out = (gw_spread_options){ .ride = gw_args_has(args, GW_OPT_RIDE),
                                .progress = show_progress,
                                .context = quiet };
    gw_status status = whole(args, GW_OPT_DRAWS, "draws", GW_SPREAD_FEWEST, GW_SPREAD_MOST, GW_SPREAD_USUAL,
                             &out->draws, err);
    if (status == GW_OK) status = whole(args, GW_OPT_SEED, "seed", 0, 9007199254740992.0, 1, &seed, err);
    out->seed = (unsigned long)seed;
    return status;
}

/* With readings the car that they make most probable is in the middle, and what they say of figures together
 * stays. */
static gw_status centre_on(const gw_case *c, const gw_readings *readings, const gw_selection *wanted,
                           bool ride, gw_match_study *match, gw_spread_options *o, double **room,
                           gw_error *err)
{
    if (readings->n == 0) return GW_OK;
    gw_status status = gw_study_match(c, readings, wanted, ride, match, err);
    if (status != GW_OK) return status;
    const size_t n = (size_t)match->n_case;
    double *covariance = *room = calloc(2 * n * n + 1, sizeof *covariance), *lower = covariance + n * n;
    if (!covariance) return gw_fail(err, GW_E_NOMEM, "out of memory for readings");
    for (size_t i = 0; i < n; i++)
        for (size_t j = 0; j < n; j++)
            covariance[i * n + j] = lower[i * n + j] = match->covariance[i * (size_t)match->n + j];
    if (!gw_lower_factor(lower, (int)n)) return gw_fail(err, GW_E_NUMERIC, "the readings cannot be weighed");
    o->centre = match->z;
    o->covariance = covariance;
    o->lower = lower;
    return GW_OK;
}

/* Some of it could not be had: the rest was given. */
static int tell_not_carried(const gw_case *c, const gw_spread_study *study, int status)
{
    for (int i = 0; i < study->n; i++) {
        const gw_spread_item *item = &study->item[i];
        bool told = false;
        for (int j = 0; j < i; j++) told = told || (study->item[j].why && study->item[j].load == item->load);
        if (!item->why || told) continue;
        fprintf(stderr, "giveway spread: %s: load \"%s\", kit %s: %s\n", c->path, c->loads[item->load].name,
                c->kits[item->kit].name, item->why);
    }
    return study->n_not_carried && status == GW_EXIT_DONE ? GW_EXIT_MODEL : status;
}

static int work(const gw_args *args, const gw_session *session, const gw_choice *choice,
                const gw_readings *readings, gw_spread_options *o, bool quiet)
{
    gw_match_study match = { 0 };
    gw_spread_study study = { 0 };
    gw_buf out = { 0 };
    gw_error err = { 0 };
    double *room = NULL;
    gw_status st = centre_on(&session->c, readings, &choice->wanted, o->ride, &match, o, &room, &err);
    if (st == GW_OK) st = gw_study_spread(&session->c, &choice->wanted, o, &study, &err);
    gw_progress(quiet, NULL);
    if (st == GW_OK) {
        gw_print_warnings(quiet, study.warning, study.n_warnings);
        gw_run_format(args, &session->c, &GW_SPREAD_RESULT, &study, gw_spread_text, &out);
        st = gw_buf_status(&out, &err);
    }
    int status = st == GW_OK ? gw_emit(&out) : gw_complain("spread", &err);
    gw_buf_free(&out);
    if (status == GW_EXIT_DONE) status = gw_run_draw(args, &session->c, &study, gw_spread_charts);
    if (st == GW_OK) status = tell_not_carried(&session->c, &study, status);
    gw_spread_study_free(&study);
    gw_match_study_free(&match);
    free(room);
    return status;
}

static int run(const gw_args *args)
{
    gw_session session;
    gw_choice choice = { 0 };
    gw_readings readings = { 0 };
    gw_spread_options o;
    gw_error err = { 0 };
    bool quiet;
    if (options(args, &o, &quiet, &err) != GW_OK) return gw_complain("spread", &err);
    int status = gw_session_open(args, args->words[0], &session);
    if (status == GW_EXIT_DONE) status = gw_choice_make(args, &session.c, &choice);
    if (status == GW_EXIT_DONE && gw_args_text(args, GW_OPT_READINGS, 0))
        status = gw_session_readings(args, &session, &readings);
    if (status == GW_EXIT_DONE) status = work(args, &session, &choice, &readings, &o, quiet);
    gw_readings_free(&readings);
    gw_choice_free(&choice);
    gw_session_close(&session);
    return status;
}

const gw_command GW_COMMAND_SPREAD = {
    .name = "spread",
    .args = "CASE",
    .summary = "how sure each answer is, and what to measure next",
    .options = GW_TAKES_COMMON | GW_TAKES_SELECTION | GW_TAKES(DRAWS) | GW_TAKES(SEED) | GW_TAKES(RIDE) |
               GW_TAKES(READINGS) | GW_TAKES_CHARTS,
    .min_words = 1,
    .max_words = 1,
    .run = run,
    .details = "Draws cars whose uncertain figures (\"uncertain\" of the case; without it, common practice) "
               "each take another value, works every kit and load out in each, and gives the band that holds "
               "95 of 100, how often a kit is steadier than the first in the same car, and which figures the "
               "bands come from. The same draws whatever is narrowed, and whatever the number of processors.",
    .examples = { "giveway spread cases/hatchback.json --draws 200 --corner front -o charts",
                  "giveway spread cases/hatchback.json --draws 200 --format json" },
};
