/* SPDX-License-Identifier: MIT */
/* giveway compare: the kits side by side. The main job. */
#include "cli/command.h"
#include "cli/output.h"
#include "cli/run.h"
#include "cli/session.h"
#include "show/compare_charts.h"
#include "show/deflect.h"
#include "show/results.h"

/* Everything that one run works out. */
typedef struct gw_work {
    gw_compare_made made; /* first: the rows are over it */
    gw_selection wanted;
    gw_deflect_study deflect;
    gw_ride_study ride;
    gw_strength_study strength, peaks;
    gw_tolerance_study tolerance;
    gw_bands_study bands;
    gw_handling_study handling;
} gw_work;

static bool is_text(const gw_args *args)
{
    return !gw_args_is(args, GW_OPT_FORMAT, "json") && !gw_args_is(args, GW_OPT_FORMAT, "csv");
}

static void begin(const gw_job *job, gw_work *w)
{
    w->wanted = *job->wanted;
    w->made.cmp = (gw_comparison){ .c = job->c,
                                   .deflect = &w->deflect,
                                   .ride = &w->ride,
                                   .handling = &w->handling,
                                   .strength = &w->strength,
                                   .peaks = &w->peaks,
                                   .tolerance = &w->tolerance,
                                   .baseline = gw_selection_first_kit(job->c, job->wanted),
                                   .no_ride = gw_ride_missing(job->c, job->wanted),
                                   .detail = gw_args_has(job->args, GW_OPT_DETAIL) };
    if (!gw_args_has(job->args, GW_OPT_NO_BANDS)) w->made.cmp.bands = &w->bands;
}

static gw_status study(const gw_job *job, void *made, gw_error *err)
{
    gw_work *w = made;
    const gw_case *c = job->c;
    const bool charts = gw_args_has(job->args, GW_OPT_OUT);
    const gw_ride_options options = { .no_curve = !charts, .no_obstacle = true };
    begin(job, w);
    const gw_comparison *cmp = &w->made.cmp;
    gw_status status = gw_wants_loads(c, err);
    if (status == GW_OK) status = gw_study_deflect(c, &w->wanted, &w->deflect, err);
    w->wanted.opened = w->deflect.opened;
    if (status == GW_OK) status = gw_study_strength(c, &w->deflect, &w->strength, err);
    if (status == GW_OK) status = gw_study_strength_peaks(c, &w->deflect, &w->peaks, err);
    if (status == GW_OK && !cmp->no_ride) status = gw_study_ride(c, &w->wanted, &options, &w->ride, err);
    if (status == GW_OK) status = gw_study_tolerance(c, &w->wanted, &w->deflect, &w->tolerance, err);
    gw_selection summary = w->wanted;
    summary.brief = is_text(job->args) && !charts && !cmp->detail;
    if (status == GW_OK) status = gw_study_handling(c, &summary, &w->handling, err);
    if (status == GW_OK && cmp->bands) status = gw_study_bands(c, &w->wanted, &w->bands, err);
    return status == GW_OK ? gw_compare_gather(&w->made, err) : status;
}

static gw_status add_sweep(const gw_work *w, gw_sweep_axis axis, gw_charts *charts, gw_error *err)
{
    gw_sweep_study sweep = { 0 };
    const gw_sweep_plan plan = { .axis = axis, .to_g = 1.0, .n = 21, .along = { .side = GW_OUTER } };
    gw_status status = gw_study_sweep(w->made.cmp.c, &w->wanted, &plan, &sweep, err);
    if (status == GW_OK) gw_sweep_charts(&w->made.cmp, &sweep, charts);
    gw_sweep_study_free(&sweep);
    return status;
}

static gw_status add_axles(const gw_work *w, gw_charts *charts, gw_error *err)
{
    const gw_case *c = w->made.cmp.c;
    gw_picture_study pictures = { 0 };
    const gw_grid_study none = { 0 };
    gw_status status = gw_study_pictures(c, w->wanted.laws, &w->deflect, &none, &pictures, err);
    if (status == GW_OK) gw_behind_charts(c, &w->deflect, &pictures, charts);
    gw_picture_study_free(&pictures);
    return status;
}

/* Some charts are of what is worked out for them alone. */
static int draw(const gw_job *job, const gw_work *w)
{
    gw_charts charts;
    gw_error err = { 0 };
    if (!gw_charting_begin(job->args, &charts)) return GW_EXIT_DONE;
    gw_status status = GW_OK;
    gw_compare_charts(&w->made.cmp, &charts);
    gw_handling_charts(&w->made.cmp, &charts);
    if (job->c->has_vehicle) {
        status = add_axles(w, &charts, &err);
        if (status == GW_OK) status = add_sweep(w, GW_SWEEP_BRAKE, &charts, &err);
        if (status == GW_OK) status = add_sweep(w, GW_SWEEP_LATERAL, &charts, &err);
    }
    return gw_charting_finish(job->args, &charts, status, &err);
}

/* What is beyond a limit stands in the text, and is said here only beside figures for other programs. */
static void tell_overloads(const gw_job *job, const gw_strength_study *strength)
{
    for (int i = 0; i < strength->n && !gw_args_has(job->args, GW_OPT_QUIET); i++) {
        gw_buf line = { 0 };
        gw_overload_words(job->c, &strength->item[i], &line);
        fprintf(stderr, "warning: %s\n", gw_buf_str(&line));
        gw_buf_free(&line);
    }
}

static int finish(const gw_job *job, const void *made, int status)
{
    const gw_work *w = made;
    if (!is_text(job->args)) tell_overloads(job, &w->strength);
    if (status == GW_EXIT_DONE) status = draw(job, w);
    return gw_tell_failed("compare", job->c, &w->deflect, status);
}

static void release(void *made)
{
    gw_work *w = made;
    gw_arena_free(&w->made.arena);
    gw_handling_study_free(&w->handling);
    gw_ride_study_free(&w->ride);
    gw_strength_study_free(&w->strength);
    gw_strength_study_free(&w->peaks);
    gw_tolerance_study_free(&w->tolerance);
    gw_bands_study_free(&w->bands);
    gw_deflect_study_free(&w->deflect);
}

const gw_command GW_COMMAND_COMPARE = {
    .name = "compare",
    .args = "CASE",
    .summary = "the kits side by side: camber, toe, wheel movement, ride and harshness",
    .options = GW_TAKES_COMMON | GW_TAKES_SELECTION | GW_TAKES(DETAIL) | GW_TAKES(NO_BANDS) | GW_TAKES_CHARTS,
    .words = { 1, 1 },
    .run = gw_run_command,
    .details =
        "First what fits a screen: a sentence a kit (toe in a stop and in a corner, warnings), how near the "
        "kits are to a limit, the loads with toe, camber and wheel movement of every kit, and ride and "
        "prices. With --detail then a table a load and corner with the joints that move toe most, comfort, "
        "harshness and road noise with their ranges, the camber, toe and understeer budgets, braking, "
        "traction, consistency, and every figure beyond a limit with its source. With -o DIR the charts are "
        "written there as SVG and PNG.",
    .examples = { "giveway compare cases/fast-saloon.json -o charts",
                  "giveway compare cases/fast-saloon.json --kit rubber --kit bearing --load \"hard stop\"" },
    .size = sizeof(gw_work),
    .result = &GW_COMPARE_RESULT,
    .wide = true,
    .study = study,
    .text = gw_compare_text,
    .finish = finish,
    .release = release,
};
