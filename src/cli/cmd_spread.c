/* SPDX-License-Identifier: MIT */
/* giveway spread: how sure is each answer, and what to measure next? */
#include "cli/command.h"
#include "cli/output.h"
#include "cli/run.h"
#include "cli/session.h"
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

typedef struct gw_spread_made {
    gw_spread_study study; /* first: the rows are over it */
    gw_spread_options options;
    gw_match_study match;
    double *room;
    bool quiet;
} gw_spread_made;

static gw_status make_plan(const gw_args *args, void *made, gw_error *err)
{
    gw_spread_made *m = made;
    gw_spread_options *o = &m->options;
    long seed = 1;
    m->quiet = gw_args_has(args, GW_OPT_QUIET);
    *o = (gw_spread_options){ .ride = gw_args_has(args, GW_OPT_RIDE),
                              .progress = show_progress,
                              .context = &m->quiet };
    gw_status status =
        whole(args, GW_OPT_DRAWS, "draws", GW_SPREAD_FEWEST, GW_SPREAD_MOST, GW_SPREAD_USUAL, &o->draws, err);
    if (status == GW_OK) status = whole(args, GW_OPT_SEED, "seed", 0, 9007199254740992.0, 1, &seed, err);
    o->seed = (unsigned long)seed;
    return status;
}

/* With readings the car that they make most probable is in the middle, and what they say of figures together
 * stays. */
static gw_status centre_on(const gw_job *job, gw_spread_made *m, gw_error *err)
{
    if (!job->readings || job->readings->n == 0) return GW_OK;
    gw_status status = gw_study_match(job->c, job->readings, job->wanted, m->options.ride, &m->match, err);
    if (status != GW_OK) return status;
    const size_t n = (size_t)m->match.n_case;
    double *covariance = m->room = calloc(2 * n * n + 1, sizeof *covariance), *lower = covariance + n * n;
    if (!covariance) return gw_fail(err, GW_E_NOMEM, "out of memory for readings");
    for (size_t i = 0; i < n; i++)
        for (size_t j = 0; j < n; j++)
            covariance[i * n + j] = lower[i * n + j] = m->match.covariance[i * (size_t)m->match.n + j];
    if (!gw_lower_factor(lower, (int)n)) return gw_fail(err, GW_E_NUMERIC, "the readings cannot be weighed");
    m->options.centre = m->match.z;
    m->options.covariance = covariance;
    m->options.lower = lower;
    return GW_OK;
}

static gw_status study(const gw_job *job, void *made, gw_error *err)
{
    gw_spread_made *m = made;
    gw_status status = centre_on(job, m, err);
    if (status == GW_OK) status = gw_study_spread(job->c, job->wanted, &m->options, &m->study, err);
    gw_progress(m->quiet, NULL);
    return status;
}

/* Some of it could not be had: the rest was given. */
static int tell_not_carried(const gw_job *job, const void *made, int status)
{
    const gw_spread_study *spread = &((const gw_spread_made *)made)->study;
    const gw_case *c = job->c;
    for (int i = 0; i < spread->n; i++) {
        const gw_spread_item *item = &spread->item[i];
        bool told = false;
        for (int j = 0; j < i; j++)
            told = told || (spread->item[j].why && spread->item[j].load == item->load);
        if (!item->why || told) continue;
        fprintf(stderr, "giveway spread: %s: load \"%s\", kit %s: %s\n", c->path, c->loads[item->load].name,
                c->kits[item->kit].name, item->why);
    }
    return spread->n_not_carried && status == GW_EXIT_DONE ? GW_EXIT_MODEL : status;
}

static void release(void *made)
{
    gw_spread_made *m = made;
    gw_spread_study_free(&m->study);
    gw_match_study_free(&m->match);
    free(m->room);
}

const gw_command GW_COMMAND_SPREAD = {
    .name = "spread",
    .args = "CASE",
    .summary = "how sure each answer is, and what to measure next",
    .options = GW_TAKES_COMMON | GW_TAKES_SELECTION | GW_TAKES(DRAWS) | GW_TAKES(SEED) | GW_TAKES(RIDE) |
               GW_TAKES(READINGS) | GW_TAKES_CHARTS,
    .words = { 1, 1 },
    .run = gw_run_command,
    .details = "Draws cars whose uncertain figures (\"uncertain\" of the case; without it, common practice) "
               "each take another value, works every kit and load out in each, and gives the band that holds "
               "95 of 100, how often a kit is steadier than the first in the same car, and which figures the "
               "bands come from. The same draws whatever is narrowed, and whatever the number of processors.",
    .examples = { "giveway spread cases/hatchback.json --draws 200 --corner front -o charts",
                  "giveway spread cases/hatchback.json --draws 200 --format json" },
    .size = sizeof(gw_spread_made),
    .result = &GW_SPREAD_RESULT,
    .plan = make_plan,
    .study = study,
    .text = gw_spread_text,
    .charts = gw_spread_charts,
    .finish = tell_not_carried,
    .release = release,
};
