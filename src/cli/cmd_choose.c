/* SPDX-License-Identifier: MIT */
/* giveway choose: which bushes to fit for the money and the harshness that one allows? */
#include "cli/command.h"
#include "cli/output.h"
#include "cli/run.h"
#include "cli/session.h"
#include "format/file.h"
#include "giveway/spread.h"
#include "show/choose.h"

#include <math.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { DRAWS = 200 }; /* enough to tell 95 of 100 from less, in a fraction of the time of the rest */

static volatile sig_atomic_t interrupted;

static void note_interrupt(int signal)
{
    (void)signal;
    interrupted = 1;
}

static gw_status make_plan(const gw_args *args, void *made, gw_error *err)
{
    gw_chosen *chosen = made;
    chosen->quiet = gw_args_has(args, GW_OPT_QUIET);
    chosen->file = gw_args_text(args, GW_OPT_CASE, 0);
    chosen->draws = DRAWS;
    if (gw_args_has(args, GW_OPT_DRAWS)) {
        double n = gw_args_number(args, GW_OPT_DRAWS);
        if (!(n >= GW_SPREAD_FEWEST && n <= GW_SPREAD_MOST && n == floor(n)))
            return gw_fail(err, GW_E_USAGE, "--draws takes a whole number from %d to %d",
                           (int)GW_SPREAD_FEWEST, (int)GW_SPREAD_MOST);
        chosen->draws = (long)n;
    }
    return gw_refuse_existing(chosen->file, err);
}

typedef struct gw_watch {
    bool quiet;
    struct timespec start;
} gw_watch;

static double seconds_since(const struct timespec *start)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)(now.tv_sec - start->tv_sec) + 1e-9 * (double)(now.tv_nsec - start->tv_nsec);
}

/* A bar of twenty places, how many of how many, and the time that is left. */
static bool show_progress(void *context, int done, int of)
{
    const gw_watch *watch = context;
    char bar[21], text[120];
    double part = of ? (double)done / of : 1.0, spent = seconds_since(&watch->start);
    for (int i = 0; i < 20; i++) bar[i] = i < (int)(20.0 * part) ? '#' : '.';
    bar[20] = '\0';
    snprintf(text, sizeof text, "[%s] %d of %d combinations", bar, done, of);
    if (done > 0 && spent > 1.0)
        snprintf(text + strlen(text), sizeof text - strlen(text), ", %.0f s left",
                 ceil(spent / part - spent));
    gw_progress(watch->quiet, text);
    return !interrupted;
}

/* An interrupt is asked for between combinations, so that nothing is left half done. */
static gw_status study(const gw_job *job, void *made, gw_error *err)
{
    gw_chosen *chosen = made;
    gw_watch watch = { .quiet = chosen->quiet };
    const gw_choose_options options = { .draws = chosen->draws,
                                        .progress = show_progress,
                                        .context = &watch };
    struct sigaction catch = { 0 }, before;
    catch.sa_handler = note_interrupt;
    sigemptyset(&catch.sa_mask);
    clock_gettime(CLOCK_MONOTONIC, &watch.start);
    sigaction(SIGINT, NULL, &before);
    if (before.sa_handler != SIG_IGN) sigaction(SIGINT, &catch, NULL);
    gw_status status = gw_study_choose(job->c, job->wanted, &options, &chosen->study, err);
    gw_progress(chosen->quiet, NULL);
    sigaction(SIGINT, &before, NULL);
    if (interrupted && status != GW_OK) {
        gw_complain("choose", err);
        raise(SIGINT); /* as any program that is interrupted */
    }
    return status;
}

/* The first kit and the recommendations, the same combination once. */
static int list_kits(const gw_case *c, const gw_choose_study *s, const gw_kit *kits[1 + GW_RECOMMENDED])
{
    int n = 0;
    kits[n++] = &c->kits[0];
    for (int r = 0; r < GW_RECOMMENDED && s->has_recommended; r++)
        if (s->recommended[r].n_order && gw_choose_is_first(s, r)) kits[n++] = &s->recommended[r].kit;
    return n;
}

static gw_status write_case(const gw_job *job, const void *made, gw_error *err)
{
    const gw_chosen *chosen = made;
    const gw_kit *kits[1 + GW_RECOMMENDED];
    char *text = NULL;
    if (!chosen->file) return GW_OK;
    int n = list_kits(job->c, &chosen->study, kits);
    gw_status status = gw_case_with_kits(job->c, kits, n, &text, err);
    if (status == GW_OK) status = gw_file_write(chosen->file, text, strlen(text), err);
    free(text);
    if (status == GW_OK && !chosen->quiet)
        fprintf(stderr, "%d kits are in %s: giveway compare %s sets them side by side\n", n, chosen->file,
                chosen->file);
    return status;
}

static void release(void *made)
{
    gw_choose_study_free(&((gw_chosen *)made)->study);
}

const gw_command GW_COMMAND_CHOOSE = {
    .name = "choose",
    .args = "CASE",
    .summary = "which bushes to fit for the money and the harshness that one allows",
    .options = GW_TAKES_COMMON | GW_TAKES(LOAD) | GW_TAKES(CORNER) | GW_TAKES(METHOD) | GW_TAKES(CASE) |
               GW_TAKES(DRAWS) | GW_TAKES(DETAIL) | GW_TAKES_CHARTS,
    .words = { 1, 1 },
    .run = gw_run_command,
    .details =
        "Calculates every combination of the bushes on offer (\"choose\" of the case; without it, what its "
        "kits fit) as compare calculates a kit, and tells those that no other beats in unsteadiness, "
        "harshness and cost at once; the steadiest, the quietest and the best value with what to fit first; "
        "what each step of money buys; every single change; and what a limit costs. --case FILE writes the "
        "recommendations as kits of a new case, --detail prints the whole front, -o DIR draws it.",
    .examples = { "giveway choose cases/hatchback.json --corner front",
                  "giveway choose cases/hatchback.json --corner front --format csv" },
    .size = sizeof(gw_chosen),
    .result = &GW_CHOOSE_RESULT,
    .plan = make_plan,
    .study = study,
    .text = gw_choose_text,
    .charts = gw_choose_charts,
    .write = write_case,
    .release = release,
};
