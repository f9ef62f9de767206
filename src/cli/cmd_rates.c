/* SPDX-License-Identifier: MIT */
/* giveway rates: how stiff is a bush, each way, and how does the handbook compare? */
#include "casefile/material_hint.h"
#include "cli/command.h"
#include "cli/output.h"
#include "cli/run.h"
#include "cli/session.h"
#include "giveway/units.h"
#include "show/rates.h"
#include "show/results.h"

#include <stdlib.h>

/* As the ride model takes it where a case does not say. */
static const double USUAL_AMPLITUDE = 0.1 * GW_MM;

static const gw_option OF_A_BUSH[] = { GW_OPT_MATERIAL, GW_OPT_INNER, GW_OPT_OUTER, GW_OPT_LENGTH };
enum { OF_A_BUSH_N = sizeof OF_A_BUSH / sizeof *OF_A_BUSH };

/* How many of the options that describe a bush are there. */
static int described(const gw_args *args)
{
    int n = 0;
    for (int i = 0; i < OF_A_BUSH_N; i++) n += gw_args_has(args, OF_A_BUSH[i]);
    return n;
}

static const char *misuse(const gw_args *args)
{
    if (gw_args_has(args, GW_OPT_AMPLITUDE) && !gw_args_has(args, GW_OPT_FREQUENCY) &&
        !gw_args_has(args, GW_OPT_OUT))
        return "--amplitude-mm needs --frequency-Hz, or -o for the charts";
    if (gw_args_has(args, GW_OPT_TYPE)) {
        if (args->n_words > 0) return "give either a case or a bush by --type, not both";
        return described(args) < OF_A_BUSH_N
                   ? "--type needs --material, --inner-mm, --outer-mm and --length-mm"
                   : NULL;
    }
    if (described(args)) return "a bush from the command line begins with --type";
    return args->n_words == 0 ? "give a case, or a bush by --type" : NULL;
}

static gw_status make_plan(const gw_args *args, void *it, gw_error *err)
{
    gw_rates_plan *plan = &((gw_rates_made *)it)->plan;
    const char *wrong = misuse(args);
    if (wrong) return gw_fail(err, GW_E_USAGE, "%s (see giveway help rates)", wrong);
    bool handbook = gw_args_is(args, GW_OPT_METHOD, "handbook");
    bool dynamic = gw_args_has(args, GW_OPT_FREQUENCY), size = gw_args_has(args, GW_OPT_AMPLITUDE);
    *plan = (gw_rates_plan){ .method = handbook ? GW_METHOD_HANDBOOK : GW_METHOD_SOLVED,
                             .explain = gw_args_has(args, GW_OPT_EXPLAIN),
                             .hz = dynamic ? gw_args_number(args, GW_OPT_FREQUENCY) : 0.0,
                             .amplitude =
                                 size ? gw_args_number(args, GW_OPT_AMPLITUDE) * GW_MM : USUAL_AMPLITUDE };
    return GW_OK;
}

/* A bush from the command line instead of a case. */
static gw_status bush_of(const gw_job *job, gw_bush *bush, gw_error *err)
{
    char hint[GW_MATERIAL_HINT_MAX];
    const gw_args *args = job->args;
    const char *name = gw_args_text(args, GW_OPT_MATERIAL, 0);
    const gw_material *material = gw_materials_find(job->materials, name);
    if (!material)
        return gw_fail(err, GW_E_SCHEMA, "there is no material \"%s\"%s", name,
                       gw_material_hint(job->materials, name, hint));
    *bush = (gw_bush){ .name = "as given", .dynamic_ratio = 1.0, .price = -1.0, .fit_minutes = -1.0 };
    bush->type = gw_args_is(args, GW_OPT_TYPE, "unbonded") ? GW_BUSH_UNBONDED : GW_BUSH_BONDED;
    bush->annulus.material = *material;
    bush->annulus.inner_radius = gw_args_number(args, GW_OPT_INNER) / 2 * GW_MM;
    bush->annulus.outer_radius = gw_args_number(args, GW_OPT_OUTER) / 2 * GW_MM;
    bush->annulus.length = gw_args_number(args, GW_OPT_LENGTH) * GW_MM;
    return GW_OK;
}

static const char *bush_name(const gw_case *c, int i)
{
    return c->bushes[i].name;
}

/* What is asked of: the bush that was given, the one named, all of the case. */
static gw_status find_bushes(const gw_job *job, gw_rates_made *made, const gw_bush **first, gw_error *err)
{
    const gw_case *c = job->c;
    *first = c ? c->bushes : &made->given;
    made->n = c ? c->n_bushes : 1;
    if (!c) return bush_of(job, &made->given, err);
    if (job->args->n_words < 2) return GW_OK;
    const char *name = job->args->words[1];
    const gw_name_list all = { c->n_bushes, c, bush_name };
    int i = gw_case_find_bush(c, name);
    if (i < 0) return gw_session_missing("bush", name, &all, err);
    *first = &c->bushes[i];
    made->n = 1;
    return GW_OK;
}

static gw_status study(const gw_job *job, void *it, gw_error *err)
{
    gw_rates_made *made = it;
    const gw_bush *bush;
    const bool quiet = gw_args_has(job->args, GW_OPT_QUIET);
    gw_status status = find_bushes(job, made, &bush, err);
    if (status != GW_OK) return status;
    made->row = calloc((size_t)made->n + 1, sizeof *made->row);
    if (!made->row) return gw_fail(err, GW_E_NOMEM, "out of memory");
    for (int i = 0; status == GW_OK && i < made->n; i++) {
        gw_progress(quiet, bush[i].name);
        status = gw_study_rates(&bush[i], &made->plan, &made->row[i], err);
    }
    gw_progress(quiet, NULL);
    return status;
}

static void release(void *made)
{
    free(((gw_rates_made *)made)->row);
}

const gw_command GW_COMMAND_RATES = {
    .name = "rates",
    .args = "CASE [BUSH]",
    .summary = "how stiff is a bush, each way, and how does the handbook compare?",
    .options = GW_TAKES_COMMON | GW_TAKES(METHOD) | GW_TAKES(EXPLAIN) | GW_TAKES(TYPE) | GW_TAKES(MATERIAL) |
               GW_TAKES(INNER) | GW_TAKES(OUTER) | GW_TAKES(LENGTH) | GW_TAKES(FREQUENCY) |
               GW_TAKES(AMPLITUDE) | GW_TAKES_CHARTS,
    .words = { 0, 2 },
    .run = gw_run_command,
    .details = "Every bush of the case, or the one named; a bush written in place at a joint is called "
               "AXLE.JOINT. Or, in place of a case, one bush by --type and its dimensions. With "
               "--frequency-Hz the complex stiffness as well; with -o DIR charts of stiffness and loss "
               "angle from 1 to 500 Hz.",
    .examples = { "giveway rates cases/fast-saloon.json lateral_rubber --frequency-Hz 30 -o charts",
                  "giveway rates --type bonded --material nr-55 --inner-mm 20 --outer-mm 50 --length-mm 60" },
    .size = sizeof(gw_rates_made),
    .result = &GW_RATES_RESULT,
    .plan = make_plan,
    .study = study,
    .text = gw_rates_text,
    .charts = gw_rates_charts,
    .release = release,
};
