/* SPDX-License-Identifier: MIT */
/* Which commands can run a case: what they refuse is found by the studies that refuse it. */
#include "giveway/plausible.h"

#include "giveway/align.h"
#include "giveway/choose.h"
#include "giveway/compare.h"
#include "giveway/travel.h"
#include "giveway/units.h"
#include "study/run.h"

#include <string.h>

typedef struct gw_uses_run {
    const gw_case *c;
    gw_uses *out;
    const gw_selection *wanted;
    bool no_memory;
} gw_uses_run;

/* Messages of studies begin with the file, which stands at the head of the output already. */
static const char *keep(gw_uses_run *r, const char *text)
{
    size_t n = strlen(r->c->path);
    if (strncmp(text, r->c->path, n) == 0 && strncmp(text + n, ": ", 2) == 0) text += n + 2;
    const char *kept = gw_arena_strdup(&r->out->arena, text);
    if (!kept) r->no_memory = true;
    return kept;
}

static void set(gw_uses_run *r, gw_use use, bool runs, const char *why)
{
    static const char *const COMMANDS[GW_USES] = { "rates", "deflect", "compare", "travel", "ride",
                                                   "align", "report",  "match",   "spread", "choose" };
    r->out->use[use] = (gw_use_verdict){ COMMANDS[use], runs, why ? keep(r, why) : NULL };
}

static void set_by(gw_uses_run *r, gw_use use, gw_status status, const gw_error *err)
{
    if (status == GW_E_NOMEM) r->no_memory = true;
    set(r, use, status == GW_OK, status == GW_OK ? NULL : err->msg);
}

/* "load "tip over", kit rubber: the inner wheel lifts ...", with how many more there are. */
static void put_failed(gw_uses_run *r, const gw_deflect_study *study)
{
    const gw_deflection *first = NULL;
    bool base = false;
    gw_error line = { 0 };
    for (int i = study->n - 1; i >= 0; i--) {
        if (study->item[i].failed) first = &study->item[i];
        base = base || (study->item[i].kit == 0 && !study->item[i].failed);
    }
    gw_fail(&line, GW_OK, "%d of %d results are not carried; load \"%s\", kit %s: %s", study->n_failed,
            study->n, r->c->loads[first->load].name, r->c->kits[first->kit].name, first->failed);
    set(r, GW_USE_DEFLECT, true, line.msg);
    set(r, GW_USE_COMPARE, true, line.msg);
    set(r, GW_USE_SPREAD, study->n > study->n_failed, line.msg);
    set(r, GW_USE_REPORT, base, line.msg);
}

/* Direct loads alone need nothing of what the vehicle says of its roll; what goes on from them does. */
static void try_more_than_loads(gw_uses_run *r)
{
    static const gw_use USES[] = { GW_USE_COMPARE, GW_USE_REPORT, GW_USE_SPREAD };
    gw_run run;
    gw_error err = { 0 };
    gw_status status = gw_run_open(&run, r->c, r->wanted, &err);
    for (size_t i = 0; i < sizeof USES / sizeof *USES && status != GW_OK; i++)
        set_by(r, USES[i], status, &err);
    gw_run_close(&run);
}

static void try_loads(gw_uses_run *r)
{
    static const gw_use USES[] = { GW_USE_DEFLECT, GW_USE_COMPARE, GW_USE_REPORT, GW_USE_SPREAD };
    gw_deflect_study study = { 0 };
    gw_error err = { 0 };
    gw_status status = GW_E_SCHEMA;
    if (r->c->n_loads == 0)
        gw_fail(&err, status, "loads: the case has no loads; add at least one");
    else
        status = gw_study_deflect(r->c, r->wanted, &study, &err);
    for (size_t i = 0; i < sizeof USES / sizeof *USES; i++) set_by(r, USES[i], status, &err);
    if (study.n_failed) put_failed(r, &study);
    if (status == GW_OK) try_more_than_loads(r);
    gw_deflect_study_free(&study);
}

static void try_travel(gw_uses_run *r)
{
    const gw_travel_plan usual = { .from = -60 * GW_MM, .to = 60 * GW_MM, .step = 10 * GW_MM };
    gw_travel_study study = { 0 };
    gw_error err = { 0 };
    set_by(r, GW_USE_TRAVEL, gw_study_travel(r->c, r->wanted, &usual, &study, &err), &err);
    gw_travel_study_free(&study);
}

static void try_ride(gw_uses_run *r)
{
    const gw_ride_options least = { .no_curve = true, .no_obstacle = true };
    gw_ride_study study = { 0 };
    gw_error err = { 0 };
    set_by(r, GW_USE_RIDE, gw_study_ride(r->c, r->wanted, &least, &study, &err), &err);
    gw_ride_study_free(&study);
}

/* Setting takes longer than all the rest together: only what it needs is looked at. */
static void try_align(gw_uses_run *r)
{
    bool any = false;
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        any = any || (r->c->has_corner[a] && r->c->align[a].present);
    if (!any) {
        set(r, GW_USE_ALIGN, false, "align: missing; give a target and adjusters");
        return;
    }
    gw_run run;
    gw_error err = { 0 };
    set_by(r, GW_USE_ALIGN, gw_run_open(&run, r->c, r->wanted, &err), &err);
    gw_run_close(&run);
}

/* What is on offer and what it costs, without a combination of it. */
static void try_choose(gw_uses_run *r)
{
    gw_error err = { 0 };
    set_by(r, GW_USE_CHOOSE, gw_study_choose_offer(r->c, r->wanted, &err), &err);
}

gw_status gw_study_uses(const gw_case *c, gw_uses *out, gw_error *err)
{
    gw_laws laws = { 0 };
    gw_uses uses = { 0 };
    gw_status status = gw_laws_make(c, GW_METHOD_SOLVED, &laws, err);
    if (status != GW_OK) return status;
    const gw_selection all = { .laws = &laws };
    gw_uses_run r = { .c = c, .out = &uses, .wanted = &all };
    set(&r, GW_USE_RATES, c->n_bushes > 0, c->n_bushes > 0 ? NULL : "bushes: the case has none");
    if (c->has_corner[GW_FRONT] || c->has_corner[GW_REAR]) {
        try_loads(&r);
        try_travel(&r);
        try_ride(&r);
        try_align(&r);
        try_choose(&r);
        set(&r, GW_USE_MATCH, true, NULL);
    } else {
        for (int u = GW_USE_DEFLECT; u < GW_USES; u++)
            set(&r, (gw_use)u, false, "corners: the case describes no corner");
    }
    gw_laws_free(&laws);
    if (r.no_memory) {
        gw_uses_free(&uses);
        return gw_fail(err, GW_E_NOMEM, "out of memory while trying commands");
    }
    *out = uses;
    return GW_OK;
}

void gw_uses_free(gw_uses *uses)
{
    gw_arena_free(&uses->arena);
    *uses = (gw_uses){ 0 };
}
