/* SPDX-License-Identifier: MIT */
/* giveway compare: the kits side by side. The main job. */
#include "cli/command.h"
#include "cli/output.h"
#include "cli/run.h"
#include "cli/session.h"
#include "show/compare_charts.h"
#include "show/deflect.h"

/* Everything that one run works out, so that one function frees it. */
typedef struct gw_work {
    gw_session session;
    gw_choice choice;
    gw_deflect_study deflect;
    gw_ride_study ride;
    gw_strength_study strength, peaks;
    gw_tolerance_study tolerance;
    gw_bands_study bands;
    gw_laws laws; /**< worked out once for all studies */
    gw_handling_study handling;
    gw_comparison cmp;
} gw_work;

static gw_status work_out(gw_work *w, bool charts, bool brief, bool bands, gw_error *err)
{
    const gw_case *c = &w->session.c;
    const gw_selection *wanted = &w->choice.wanted;
    const gw_ride_options options = { .no_curve = !charts, .no_obstacle = true };
    gw_status status = gw_wants_loads(c, err);
    if (status == GW_OK) status = gw_laws_make(c, wanted->method, &w->laws, err);
    if (status != GW_OK) return status;
    w->choice.wanted.laws = &w->laws;
    status = gw_study_deflect(c, wanted, &w->deflect, err);
    w->choice.wanted.opened = w->deflect.opened;
    w->cmp = (gw_comparison){ .c = c, .deflect = &w->deflect, .ride = &w->ride, .handling = &w->handling };
    w->cmp.strength = &w->strength;
    w->cmp.peaks = &w->peaks;
    w->cmp.tolerance = &w->tolerance;
    w->cmp.baseline = gw_selection_first_kit(c, wanted);
    w->cmp.no_ride = gw_ride_missing(c, wanted);
    if (status == GW_OK) status = gw_study_strength(c, &w->deflect, &w->strength, err);
    if (status == GW_OK) status = gw_study_strength_peaks(c, &w->deflect, &w->peaks, err);
    if (status == GW_OK && !w->cmp.no_ride) status = gw_study_ride(c, wanted, &options, &w->ride, err);
    if (status == GW_OK) status = gw_study_tolerance(c, wanted, &w->deflect, &w->tolerance, err);
    gw_selection summary = *wanted;
    summary.brief = brief;
    if (status == GW_OK) status = gw_study_handling(c, &summary, &w->handling, err);
    if (status == GW_OK && bands) status = gw_study_bands(c, wanted, &w->bands, err);
    if (bands) w->cmp.bands = &w->bands;
    return status;
}

static gw_status add_sweep(const gw_work *w, gw_sweep_axis axis, gw_charts *charts, gw_error *err)
{
    gw_sweep_study sweep = { 0 };
    const gw_sweep_plan plan = { .axis = axis, .to_g = 1.0, .n = 21, .along = { .side = GW_OUTER } };
    gw_status status = gw_study_sweep(&w->session.c, &w->choice.wanted, &plan, &sweep, err);
    if (status == GW_OK) gw_sweep_charts(&w->cmp, &sweep, charts);
    gw_sweep_study_free(&sweep);
    return status;
}

static gw_status add_axles(const gw_work *w, gw_charts *charts, gw_error *err)
{
    gw_picture_study pictures = { 0 };
    const gw_grid_study none = { 0 };
    gw_status status = gw_study_pictures(&w->session.c, &w->laws, &w->deflect, &none, &pictures, err);
    if (status == GW_OK) gw_behind_charts(&w->session.c, &w->deflect, &pictures, charts);
    gw_picture_study_free(&pictures);
    return status;
}

static int draw(const gw_args *args, const gw_work *w)
{
    gw_charts charts;
    gw_error err = { 0 };
    if (!gw_charting_begin(args, &charts)) return GW_EXIT_DONE;
    gw_status status = GW_OK;
    gw_compare_charts(&w->cmp, &charts);
    gw_handling_charts(&w->cmp, &charts);
    if (w->session.c.has_vehicle) {
        status = add_axles(w, &charts, &err);
        if (status == GW_OK) status = add_sweep(w, GW_SWEEP_BRAKE, &charts, &err);
        if (status == GW_OK) status = add_sweep(w, GW_SWEEP_LATERAL, &charts, &err);
    }
    return gw_charting_finish(args, &charts, status, &err);
}

static gw_status format(const gw_args *args, gw_work *w, gw_buf *out, gw_error *err)
{
    w->cmp.detail = gw_args_has(args, GW_OPT_DETAIL);
    gw_paper paper = { .out = out,
                       .width = w->cmp.detail ? gw_output_width() : gw_output_wide(),
                       .bold = gw_wants_bold() };
    if (gw_args_is(args, GW_OPT_FORMAT, "json"))
        gw_compare_json(&w->cmp, out);
    else if (gw_args_is(args, GW_OPT_FORMAT, "csv"))
        gw_compare_csv(&w->cmp, out);
    else
        gw_compare_text(&w->cmp, &paper);
    return gw_buf_status(out, err);
}

/* What is beyond a limit stands in the text, and is said here only beside figures for other programs. */
static void print_warnings(const gw_args *args, const gw_work *w, bool text)
{
    bool quiet = gw_args_has(args, GW_OPT_QUIET);
    gw_print_warnings(quiet, w->deflect.warning, w->deflect.n_warnings);
    gw_print_warnings(quiet, w->ride.warning, w->ride.n_warnings);
    for (int i = 0; !quiet && !text && i < w->strength.n; i++) {
        gw_buf line = { 0 };
        gw_overload_words(&w->session.c, &w->strength.item[i], &line);
        fprintf(stderr, "warning: %s\n", gw_buf_str(&line));
        gw_buf_free(&line);
    }
}

static int compare(const gw_args *args, gw_work *w)
{
    gw_buf out = { 0 };
    gw_error err = { 0 };
    bool charts = gw_args_has(args, GW_OPT_OUT);
    bool text = !gw_args_is(args, GW_OPT_FORMAT, "json") && !gw_args_is(args, GW_OPT_FORMAT, "csv");
    gw_status status = work_out(w, charts, text && !charts && !gw_args_has(args, GW_OPT_DETAIL),
                                !gw_args_has(args, GW_OPT_NO_BANDS), &err);
    if (status == GW_OK) {
        print_warnings(args, w, text);
        status = format(args, w, &out, &err);
    }
    int exit_status = status == GW_OK ? gw_emit(&out) : gw_complain("compare", &err);
    gw_buf_free(&out);
    if (exit_status == GW_EXIT_DONE) exit_status = draw(args, w);
    return gw_tell_failed("compare", &w->session.c, &w->deflect, exit_status);
}

static int run(const gw_args *args)
{
    gw_work work = { 0 };
    int status = gw_session_open(args, args->words[0], &work.session);
    if (status == GW_EXIT_DONE) status = gw_choice_make(args, &work.session.c, &work.choice);
    if (status == GW_EXIT_DONE) status = compare(args, &work);
    gw_handling_study_free(&work.handling);
    gw_ride_study_free(&work.ride);
    gw_strength_study_free(&work.strength);
    gw_strength_study_free(&work.peaks);
    gw_tolerance_study_free(&work.tolerance);
    gw_bands_study_free(&work.bands);
    gw_laws_free(&work.laws);
    gw_deflect_study_free(&work.deflect);
    gw_choice_free(&work.choice);
    gw_session_close(&work.session);
    return status;
}

const gw_command GW_COMMAND_COMPARE = {
    .name = "compare",
    .args = "CASE",
    .summary = "the kits side by side: camber, toe, wheel movement, ride and harshness",
    .options = GW_TAKES_COMMON | GW_TAKES_SELECTION | GW_TAKES(DETAIL) | GW_TAKES(NO_BANDS) | GW_TAKES_CHARTS,
    .words = { 1, 1 },
    .run = run,
    .details =
        "First what fits a screen: a sentence a kit (toe in a stop and in a corner, warnings), how near the "
        "kits are to a limit, the loads with toe, camber and wheel movement of every kit, and ride and "
        "prices. With --detail then a table a load and corner with the joints that move toe most, comfort, "
        "harshness and road noise with their ranges, the camber, toe and understeer budgets, braking, "
        "traction, consistency, and every figure beyond a limit with its source. With -o DIR the charts are "
        "written there as SVG and PNG.",
    .examples = { "giveway compare cases/fast-saloon.json -o charts",
                  "giveway compare cases/fast-saloon.json --kit rubber --kit bearing --load \"hard stop\"" },
};
