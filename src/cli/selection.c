/* SPDX-License-Identifier: MIT */

#include "cli/output.h"
#include "cli/session.h"

#include <stdlib.h>

typedef struct gw_names {
    const char *what;
    gw_option option;
    int n;
    const char *(*name)(const gw_case *c, int i);
    int (*find)(const gw_case *c, const char *name);
} gw_names;

static const char *kit_name(const gw_case *c, int i)
{
    return c->kits[i].name;
}

static const char *load_name(const gw_case *c, int i)
{
    return c->loads[i].name;
}

static int no_such(const gw_args *args, const gw_case *c, const gw_names *names, const char *want)
{
    const gw_name_list list = { names->n, c, names->name };
    return gw_session_no_such(args, names->what, want, &list);
}

/* One flag for each name of the case, set where the option gives it; NULL where the option is not there. */
static int mark(const gw_args *args, const gw_case *c, const gw_names *names, bool **flags)
{
    int given = gw_args_count(args, names->option);
    if (!given) return GW_EXIT_DONE;
    *flags = calloc((size_t)names->n + 1, sizeof **flags);
    if (!*flags) {
        gw_error err = { 0 };
        gw_fail(&err, GW_E_NOMEM, "out of memory");
        return gw_complain(args->command->name, &err);
    }
    for (int i = 0; i < given; i++) {
        const char *want = gw_args_text(args, names->option, i);
        int found = names->find(c, want);
        if (found < 0) return no_such(args, c, names, want);
        (*flags)[found] = true;
    }
    return GW_EXIT_DONE;
}

static int work_out_bushes(const gw_args *args, const gw_case *c, gw_choice *out)
{
    gw_error err = { 0 };
    gw_status status = gw_laws_make(c, out->wanted.method, &out->laws, &err);
    if (status != GW_OK) return gw_complain(args->command->name, &err);
    out->wanted.laws = &out->laws;
    return GW_EXIT_DONE;
}

int gw_choice_make(const gw_args *args, const gw_case *c, gw_choice *out)
{
    const gw_names kits = { "kit", GW_OPT_KIT, c->n_kits, kit_name, gw_case_find_kit };
    const gw_names loads = { "load", GW_OPT_LOAD, c->n_loads, load_name, gw_case_find_load };
    *out = (gw_choice){ 0 };
    int status = mark(args, c, &kits, &out->kits);
    if (status == GW_EXIT_DONE) status = mark(args, c, &loads, &out->loads);
    out->wanted.kits = out->kits;
    out->wanted.loads = out->loads;
    out->wanted.only_axle = gw_args_has(args, GW_OPT_CORNER);
    out->wanted.axle = gw_args_is(args, GW_OPT_CORNER, "rear") ? GW_REAR : GW_FRONT;
    out->wanted.method = gw_args_is(args, GW_OPT_METHOD, "handbook") ? GW_METHOD_HANDBOOK : GW_METHOD_SOLVED;
    if (status == GW_EXIT_DONE && out->wanted.only_axle && !c->has_corner[out->wanted.axle]) {
        gw_error err = { 0 };
        gw_fail(&err, GW_E_RANGE, "%s has no %s corner", c->path, gw_args_text(args, GW_OPT_CORNER, 0));
        status = gw_complain(args->command->name, &err);
    }
    return status == GW_EXIT_DONE ? work_out_bushes(args, c, out) : status;
}

void gw_choice_free(gw_choice *choice)
{
    gw_laws_free(&choice->laws);
    free(choice->kits);
    free(choice->loads);
    *choice = (gw_choice){ 0 };
}

gw_status gw_wants_corner(const gw_case *c, const char *to_do, gw_error *err)
{
    if (c->has_corner[GW_FRONT] || c->has_corner[GW_REAR]) return GW_OK;
    return gw_fail(err, GW_E_SCHEMA, "%s: corners: the case describes no corner %s", c->path, to_do);
}

gw_status gw_wants_loads(const gw_case *c, gw_error *err)
{
    gw_status status = gw_wants_corner(c, "to load", err);
    if (status != GW_OK || c->n_loads > 0) return status;
    return gw_fail(err, GW_E_SCHEMA, "%s: loads: the case has no loads; add at least one", c->path);
}
