/* SPDX-License-Identifier: MIT */
/* giveway ride: what reaches the body, and how much a kit adds to it. */
#include "cli/charting.h"
#include "cli/commands.h"
#include "cli/output.h"
#include "cli/selection.h"
#include "cli/session.h"
#include "show/deflect.h"
#include "show/ride.h"

static gw_status work_out(const gw_args *args, const gw_case *c, const gw_selection *wanted,
                          gw_ride_study *study, gw_error *err)
{
    bool curves = gw_args_has(args, GW_OPT_OUT) || gw_args_has(args, GW_OPT_DETAIL);
    const gw_ride_options options = { .no_curve = !curves };
    if (!c->has_corner[GW_FRONT] && !c->has_corner[GW_REAR])
        return gw_fail(err, GW_E_SCHEMA, "%s: corners: the case describes no corner to drive over a road",
                       c->path);
    return gw_study_ride(c, wanted, &options, study, err);
}

static gw_status format(const gw_args *args, const gw_case *c, const gw_ride_study *study, gw_buf *out,
                        gw_error *err)
{
    bool all = gw_args_has(args, GW_OPT_DETAIL);
    if (gw_args_is(args, GW_OPT_FORMAT, "json"))
        gw_ride_json(c, study, all, out);
    else if (gw_args_is(args, GW_OPT_FORMAT, "csv"))
        gw_ride_csv(c, study, out);
    else
        return gw_ride_text(c, study, all, gw_output_width(), gw_wants_bold(), out, err);
    return gw_buf_status(out, err);
}

static void print_warnings(const gw_args *args, const gw_case *c, const gw_ride_study *study)
{
    if (gw_args_has(args, GW_OPT_QUIET)) return;
    for (int i = 0; i < study->n_warnings; i++) fprintf(stderr, "warning: %s\n", study->warning[i]);
    for (int i = 0; i < study->n; i++) {
        const gw_ride_item *item = &study->item[i];
        for (int w = 0; w < item->result.n_warnings; w++)
            fprintf(stderr, "warning: %s corner, kit %s: %s\n", gw_axle_name(item->axle),
                    c->kits[item->kit].name, item->result.warnings[w]);
    }
}

static int draw(const gw_args *args, const gw_case *c, const gw_ride_study *study)
{
    gw_charts charts;
    gw_error err = { 0 };
    if (!gw_charting_begin(args, &charts)) return GW_EXIT_DONE;
    gw_status status = gw_ride_charts(c, study, &charts, &err);
    return gw_charting_finish(args, &charts, status, &err);
}

static int ride(const gw_args *args, const gw_case *c, const gw_selection *wanted)
{
    gw_ride_study study = { 0 };
    gw_buf out = { 0 };
    gw_error err = { 0 };
    gw_status status = work_out(args, c, wanted, &study, &err);
    if (status == GW_OK) {
        print_warnings(args, c, &study);
        status = format(args, c, &study, &out, &err);
    }
    int exit_status = status == GW_OK ? gw_emit(&out) : gw_complain("ride", &err);
    if (exit_status == GW_EXIT_DONE) exit_status = draw(args, c, &study);
    gw_buf_free(&out);
    gw_ride_study_free(&study);
    return exit_status;
}

static int run(const gw_args *args)
{
    gw_session session;
    gw_choice choice = { 0 };
    int status = gw_session_open(args, args->words[0], &session);
    if (status == GW_EXIT_DONE) status = gw_choice_make(args, &session.c, &choice);
    if (status == GW_EXIT_DONE) status = ride(args, &session.c, &choice.wanted);
    gw_choice_free(&choice);
    gw_session_close(&session);
    return status;
}

const gw_command GW_COMMAND_RIDE = {
    .name = "ride",
    .args = "CASE",
    .summary =
        "what reaches the body from the road: comfort, harshness, road noise, and which bush carries it",
    .options = GW_TAKES_COMMON | GW_TAKES(KIT) | GW_TAKES(CORNER) | GW_TAKES(METHOD) | GW_TAKES(DETAIL) |
               GW_TAKES_CHARTS,
    .min_words = 1,
    .max_words = 1,
    .run = run,
    .details =
        "One wheel on a random road of the case's class and speed, for every kit and corner; harshness and "
        "road noise in decibels over the first kit, with the range that the unknown stiffness of the body "
        "leaves; modes in words; the share of each attachment; bushes against their brackets; a bump. "
        "Settings that the case leaves out are printed with their defaults. With --detail every mode, and "
        "in JSON the transfer functions. With -o DIR the charts are written there as SVG and PNG.",
    .examples = { "giveway ride cases/fast-saloon.json -o charts",
                  "giveway ride cases/fast-saloon.json --kit bearing --corner front --format json" },
};
