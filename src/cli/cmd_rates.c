/* SPDX-License-Identifier: MIT */
/* giveway rates: how stiff is a bush, each way, and how does the handbook compare? */
#include "casefile/material_hint.h"
#include "cli/charting.h"
#include "cli/commands.h"
#include "cli/output.h"
#include "cli/session.h"
#include "giveway/units.h"
#include "show/rates.h"

#include <stdlib.h>
#include <string.h>

/* As the ride model takes it where a case does not say. */
static const double USUAL_AMPLITUDE = 0.1 * GW_MM;

static gw_method method_of(const gw_args *args)
{
    return gw_args_is(args, GW_OPT_METHOD, "handbook") ? GW_METHOD_HANDBOOK : GW_METHOD_SOLVED;
}

static gw_rates_view view_of(const gw_args *args)
{
    gw_rates_view view = { .explain = gw_args_has(args, GW_OPT_EXPLAIN),
                           .dynamic = gw_args_has(args, GW_OPT_FREQUENCY),
                           .hz = gw_args_number(args, GW_OPT_FREQUENCY),
                           .amplitude = USUAL_AMPLITUDE };
    if (gw_args_has(args, GW_OPT_AMPLITUDE)) view.amplitude = gw_args_number(args, GW_OPT_AMPLITUDE) * GW_MM;
    return view;
}

static gw_status format_rows(const gw_args *args, const gw_rates_row *rows, int n, gw_buf *out, gw_error *err)
{
    const gw_rates_view view = view_of(args);
    if (gw_args_is(args, GW_OPT_FORMAT, "json"))
        gw_rates_json(rows, n, &view, out);
    else if (gw_args_is(args, GW_OPT_FORMAT, "csv"))
        gw_rates_csv(rows, n, &view, out);
    else
        return gw_rates_text(rows, n, &view, gw_output_width(), gw_wants_bold(), out, err);
    return gw_buf_status(out, err);
}

/* The closed forms beside the solution: bonded rubber brings them along, unbonded has a law of them. */
static gw_status set_beside(gw_rates_row *row, gw_error *err)
{
    gw_bush_law law;
    gw_status st = GW_OK;
    if (row->report.method == GW_METHOD_HANDBOOK) return GW_OK;
    row->has_beside = row->report.has_handbook;
    row->beside = row->report.handbook;
    if (row->bush->type != GW_BUSH_UNBONDED) return GW_OK;
    st = gw_bush_law_make(row->bush, GW_METHOD_HANDBOOK, &law, err);
    if (st != GW_OK) return st;
    row->has_beside = true;
    row->beside = (gw_given_rates){ { law.k[0], law.k[1] }, law.k[2], { law.c[0], law.c[1] }, law.c[2] };
    return GW_OK;
}

static gw_status work_out(const gw_args *args, const gw_bush *bushes, int n, gw_rates_row *rows,
                          gw_error *err)
{
    bool quiet = gw_args_has(args, GW_OPT_QUIET);
    gw_status st = GW_OK;
    for (int i = 0; st == GW_OK && i < n; i++) {
        gw_progress(quiet, bushes[i].name);
        rows[i].bush = &bushes[i];
        st = gw_bush_report_make(&bushes[i], method_of(args), &rows[i].report, err);
        if (st == GW_OK) st = set_beside(&rows[i], err);
    }
    gw_progress(quiet, NULL);
    return st;
}

/* Of a whole case only what changes with frequency is drawn; a bush that was named always. */
static int draw(const gw_args *args, const gw_rates_row *rows, int n)
{
    gw_charts charts;
    gw_error err = { 0 };
    gw_status st = GW_OK;
    if (!gw_charting_begin(args, &charts)) return GW_EXIT_DONE;
    for (int i = 0; st == GW_OK && i < n; i++) {
        const gw_dynamic_law *law = &rows[i].report.law.dynamic;
        if (n == 1 || law->zener_gain > 0.0)
            st = gw_rates_charts(&rows[i], view_of(args).amplitude, &charts, &err);
    }
    return gw_charting_finish(args, &charts, st, &err);
}

static int show(const gw_args *args, const gw_bush *bushes, int n)
{
    gw_buf out = { 0 };
    gw_error err = { 0 };
    gw_rates_row *rows = calloc((size_t)n + 1, sizeof *rows);
    if (!rows) {
        gw_fail(&err, GW_E_NOMEM, "out of memory");
        return gw_complain("rates", &err);
    }
    gw_status st = work_out(args, bushes, n, rows, &err);
    if (st == GW_OK) st = format_rows(args, rows, n, &out, &err);
    int status = st == GW_OK ? gw_emit(&out) : gw_complain("rates", &err);
    if (status == GW_EXIT_DONE) status = draw(args, rows, n);
    gw_buf_free(&out);
    free(rows);
    return status;
}

static const char *bush_name(const gw_case *c, int i)
{
    return c->bushes[i].name;
}

static int no_such_bush(const gw_args *args, const gw_case *c, const char *name)
{
    const gw_name_list list = { c->n_bushes, c, bush_name };
    return gw_session_no_such(args, "bush", name, &list);
}

static int run_case(const gw_args *args)
{
    gw_session session;
    const char *name = args->n_words > 1 ? args->words[1] : NULL;
    int status = gw_session_open(args, args->words[0], &session);
    const gw_case *c = &session.c;
    if (status == GW_EXIT_DONE && name) {
        int i = gw_case_find_bush(c, name);
        status = i < 0 ? no_such_bush(args, c, name) : show(args, &c->bushes[i], 1);
    } else if (status == GW_EXIT_DONE) {
        status = show(args, c->bushes, c->n_bushes);
    }
    gw_session_close(&session);
    return status;
}

static int usage(const gw_args *args, const char *text)
{
    fprintf(stderr, "giveway rates: %s (see giveway help rates)\n", text);
    (void)args;
    return GW_EXIT_USAGE;
}

static int no_such_material(const gw_material_set *set, const char *name)
{
    char hint[GW_MATERIAL_HINT_MAX];
    fprintf(stderr, "giveway rates: there is no material \"%s\"%s\n", name,
            gw_material_hint(set, name, hint));
    return GW_EXIT_INPUT;
}

static gw_bush bush_of(const gw_args *args, const gw_material *material)
{
    gw_bush bush = { .name = "as given", .dynamic_ratio = 1.0, .price = -1.0, .fit_minutes = -1.0 };
    bush.type = gw_args_is(args, GW_OPT_TYPE, "unbonded") ? GW_BUSH_UNBONDED : GW_BUSH_BONDED;
    bush.annulus.material = *material;
    bush.annulus.inner_radius = gw_args_number(args, GW_OPT_INNER) / 2 * GW_MM;
    bush.annulus.outer_radius = gw_args_number(args, GW_OPT_OUTER) / 2 * GW_MM;
    bush.annulus.length = gw_args_number(args, GW_OPT_LENGTH) * GW_MM;
    return bush;
}

/* A bush from the command line instead of a case. */
static int run_given(const gw_args *args)
{
    static const gw_option NEEDED[] = { GW_OPT_MATERIAL, GW_OPT_INNER, GW_OPT_OUTER, GW_OPT_LENGTH };
    if (args->n_words > 0) return usage(args, "give either a case or a bush by --type, not both");
    for (size_t i = 0; i < sizeof NEEDED / sizeof *NEEDED; i++)
        if (!gw_args_has(args, NEEDED[i]))
            return usage(args, "--type needs --material, --inner-mm, --outer-mm and --length-mm");
    gw_session session;
    int status = gw_session_open(args, NULL, &session);
    if (status == GW_EXIT_DONE) {
        const char *name = gw_args_text(args, GW_OPT_MATERIAL, 0);
        const gw_material *material = gw_materials_find(&session.materials, name);
        if (material) {
            gw_bush bush = bush_of(args, material);
            status = show(args, &bush, 1);
        } else {
            status = no_such_material(&session.materials, name);
        }
    }
    gw_session_close(&session);
    return status;
}

static int run(const gw_args *args)
{
    static const gw_option OF_A_BUSH[] = { GW_OPT_MATERIAL, GW_OPT_INNER, GW_OPT_OUTER, GW_OPT_LENGTH };
    if (gw_args_has(args, GW_OPT_AMPLITUDE) && !gw_args_has(args, GW_OPT_FREQUENCY) &&
        !gw_args_has(args, GW_OPT_OUT))
        return usage(args, "--amplitude-mm needs --frequency-Hz, or -o for the charts");
    if (gw_args_has(args, GW_OPT_TYPE)) return run_given(args);
    for (size_t i = 0; i < sizeof OF_A_BUSH / sizeof *OF_A_BUSH; i++)
        if (gw_args_has(args, OF_A_BUSH[i]))
            return usage(args, "a bush from the command line begins with --type");
    if (args->n_words == 0) return usage(args, "give a case, or a bush by --type");
    return run_case(args);
}

const gw_command GW_COMMAND_RATES = {
    .name = "rates",
    .args = "CASE [BUSH]",
    .summary = "how stiff is a bush, each way, and how does the handbook compare?",
    .options = GW_TAKES_COMMON | GW_TAKES(METHOD) | GW_TAKES(EXPLAIN) | GW_TAKES(TYPE) | GW_TAKES(MATERIAL) |
               GW_TAKES(INNER) | GW_TAKES(OUTER) | GW_TAKES(LENGTH) | GW_TAKES(FREQUENCY) |
               GW_TAKES(AMPLITUDE) | GW_TAKES_CHARTS,
    .min_words = 0,
    .max_words = 2,
    .run = run,
    .details = "Every bush of the case, or the one named; a bush written in place at a joint is called "
               "AXLE.JOINT. Or, in place of a case, one bush by --type and its dimensions. With "
               "--frequency-Hz the complex stiffness as well; with -o DIR charts of stiffness and loss "
               "angle from 1 to 500 Hz.",
    .examples = { "giveway rates cases/fast-saloon.json lateral_rubber --frequency-Hz 30 -o charts",
                  "giveway rates --type bonded --material nr-55 --inner-mm 20 --outer-mm 50 --length-mm 60" },
};
