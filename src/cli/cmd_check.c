/* SPDX-License-Identifier: MIT */
/* giveway check: is the case free of faults? Every fault at once: those of the file, and then whether the car
 * stands.
 */
#include "cli/command.h"
#include "cli/output.h"
#include "cli/session.h"
#include "show/check.h"

static int look_further(const gw_args *args, gw_session *s, gw_check_made *f)
{
    gw_error err = { 0 };
    gw_status st = gw_study_uses(&s->c, &f->uses, &err);
    if (st == GW_OK) st = gw_study_left_out(&s->c, &f->left, &err);
    return st == GW_OK ? GW_EXIT_DONE : gw_complain(args->command->name, &err);
}

/* What of the case matters most: nothing where no load asks for it, or where the loads cannot be carried. */
static int look_how_sure(const gw_args *args, const gw_session *s, gw_bands_study *bands)
{
    const gw_selection all = { 0 };
    const gw_case *c = &s->c;
    gw_error err = { 0 };
    if (!c->n_loads || !(c->has_corner[GW_FRONT] || c->has_corner[GW_REAR])) return GW_EXIT_DONE;
    return gw_study_bands(c, &all, bands, &err) == GW_E_NOMEM ? gw_complain(args->command->name, &err)
                                                              : GW_EXIT_DONE;
}

static void say(const gw_args *args, const gw_check_made *made, gw_buf *out)
{
    if (gw_args_is(args, GW_OPT_FORMAT, "json"))
        gw_check_json(made, out);
    else if (gw_args_is(args, GW_OPT_FORMAT, "csv"))
        gw_check_csv(made, out);
    else
        gw_check_text(made, out);
}

static int look(const gw_args *args, gw_session *session, gw_check_made *made)
{
    gw_error err = { 0 };
    int status = look_further(args, session, made);
    if (status == GW_EXIT_DONE) status = look_how_sure(args, session, &made->bands);
    if (status == GW_EXIT_DONE && gw_check_gather(made, &err) != GW_OK)
        status = gw_complain(args->command->name, &err);
    return status;
}

static int check_one(const gw_args *args, const char *path, gw_faults *told, gw_buf *out)
{
    gw_session session;
    int status = gw_session_open_among(args, path, told, &session);
    if (status == GW_EXIT_DONE) status = gw_session_stand(args, &session);
    gw_check_made made = {
        .file = path, .c = &session.c, .faults = &session.faults, .clean = status == GW_EXIT_DONE
    };
    if (made.clean) status = look(args, &session, &made);
    if (status != GW_EXIT_OUTPUT) say(args, &made, out);
    gw_check_free(&made);
    gw_session_close(&session);
    return status;
}

/* Several results in JSON are a list. The worst of them is the exit status. */
static int run(const gw_args *args)
{
    gw_buf out = { 0 };
    gw_faults told = { 0 };
    int status = GW_EXIT_DONE;
    const bool list = args->n_words > 1 && gw_args_is(args, GW_OPT_FORMAT, "json");
    if (gw_args_is(args, GW_OPT_FORMAT, "csv")) gw_check_csv_heads(&out);
    if (list) gw_buf_add(&out, "[\n");
    for (int i = 0; i < args->n_words && status != GW_EXIT_OUTPUT; i++) {
        if (list && i) gw_buf_add(&out, ",\n");
        int one = check_one(args, args->words[i], &told, &out);
        if (one > status) status = one;
    }
    if (list) gw_buf_add(&out, "]\n");
    if (status != GW_EXIT_OUTPUT && gw_emit(&out) != GW_EXIT_DONE) status = GW_EXIT_OUTPUT;
    gw_faults_free(&told);
    gw_buf_free(&out);
    return status;
}

const gw_command GW_COMMAND_CHECK = {
    .name = "check",
    .args = "CASE ...",
    .summary = "is the case free of faults? every fault at once, each with its path and remedy",
    .options = GW_TAKES_COMMON,
    .words = { 1, 1000 },
    .run = run,
    .details =
        "Faults go to standard error, a line each. The other commands stop with the same list. A case that "
        "reads well is then loaded with its own weight, with every kit: a mechanism is reported with the "
        "bodies that move and the direction. Figures that no car has are warned of with what is usual; then "
        "each command is named that can run the case, or cannot, and why, and what the case leaves out of "
        "the whole car. A rack, a subframe, a beam or a bar on the chassis of one corner is warned of, with "
        "the JSON that shares it between both wheels. After a change on a shelf, several cases tell which of "
        "them no longer hold.",
    .examples = { "giveway check cases/fast-saloon.json",
                  "giveway check --materials my-materials cases/fast-saloon.json" },
};
