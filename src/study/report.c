/* SPDX-License-Identifier: MIT */
#include "giveway/report.h"

#include "base/parallel.h"

/* Steps of 0.1 g: toe between two of them strays from a straight line by less than a minute of arc. */
static const gw_grid_plan GRID = { 1.0, 1.0, 11, 11, GW_OUTER, true, GW_PICTURE_STEP };

static gw_status sweep(const gw_case *c, const gw_selection *wanted, gw_sweep_axis axis, gw_sweep_study *out,
                       gw_error *err)
{
    const gw_sweep_plan plan = { .axis = axis, .to_g = 1.0, .n = 21, .along = { .side = GW_OUTER } };
    return gw_study_sweep(c, wanted, &plan, out, err);
}

gw_status gw_study_report_sweeps(const gw_selection *wanted, gw_report *r, gw_error *err)
{
    gw_selection known = *wanted;
    if (!r->c->has_vehicle) return GW_OK;
    known.laws = &r->laws;
    known.opened = r->deflect.opened;
    gw_status status = sweep(r->c, &known, GW_SWEEP_BRAKE, &r->brake, err);
    return status == GW_OK ? sweep(r->c, &known, GW_SWEEP_LATERAL, &r->lateral, err) : status;
}

static bool can_be_set(const gw_case *c, const gw_selection *wanted)
{
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        if (c->has_corner[a] && c->align[a].present && (!wanted->only_axle || wanted->axle == a)) return true;
    return false;
}

/* ---- studies that ask nothing of each other, side by side ---- */

typedef struct gw_report_work {
    const gw_case *c;
    const gw_selection *known;
    bool banded;
    gw_report *r;
} gw_report_work;

static gw_status ride(const gw_report_work *w, gw_error *err)
{
    const gw_ride_options everything = { 0 };
    return w->r->no_ride ? GW_OK : gw_study_ride(w->c, w->known, &everything, &w->r->ride, err);
}

/* Where the sliders may stand, and what the parts of each axle do there. */
static gw_status slide(const gw_report_work *w, gw_error *err)
{
    gw_report *r = w->r;
    gw_status status = w->c->has_vehicle ? gw_study_grid(w->c, w->known, &GRID, &r->grid, err) : GW_OK;
    return status == GW_OK ? gw_study_pictures(w->c, &r->laws, &r->deflect, &r->grid, &r->pictures, err)
                           : status;
}

/* No more of it than the page shows. */
static gw_status handle(const gw_report_work *w, gw_error *err)
{
    gw_selection brief = *w->known;
    brief.brief = true;
    return gw_study_handling(w->c, &brief, &w->r->handling, err);
}

static gw_status set(const gw_report_work *w, gw_error *err)
{
    return can_be_set(w->c, w->known) ? gw_study_align(w->c, w->known, &w->r->align, err) : GW_OK;
}

static gw_status bands(const gw_report_work *w, gw_error *err)
{
    return w->banded ? gw_study_bands(w->c, w->known, &w->r->bands, err) : GW_OK;
}

/* Long ones first: what is left at the end is small. */
static gw_status (*const STUDIES[])(const gw_report_work *w, gw_error *err) = { ride, bands, slide, set,
                                                                                handle };
enum { N_STUDIES = sizeof STUDIES / sizeof *STUDIES };

typedef struct gw_report_job {
    const gw_report_work *w;
    gw_status status;
    gw_error err;
} gw_report_job;

static void run_study(void *context, int index)
{
    gw_report_job *job = &((gw_report_job *)context)[index];
    job->status = STUDIES[index](job->w, &job->err);
}

/* Of several that fail the first of the list is told. */
static gw_status run_studies(const gw_report_work *w, gw_error *err)
{
    gw_report_job job[N_STUDIES] = { { 0 } };
    gw_status status = GW_OK;
    for (int i = 0; i < N_STUDIES; i++) job[i].w = w;
    gw_parallel(N_STUDIES, run_study, job);
    for (int i = 0; i < N_STUDIES && status == GW_OK; i++)
        if (job[i].status != GW_OK) status = gw_fail(err, job[i].status, "%s", job[i].err.msg);
    return status;
}

/* A page that shows nothing of the kit it compares with is none. */
static gw_status shows_anything(const gw_case *c, const gw_report *r, gw_error *err)
{
    const gw_deflection *item = r->deflect.item;
    for (int i = 0; i < r->deflect.n; i++)
        if (item[i].kit == r->baseline && !item[i].failed) return GW_OK;
    if (!r->deflect.n) return GW_OK;
    return gw_fail(err, GW_E_NUMERIC, "%s: load \"%s\", kit %s: %s", c->path, c->loads[item[0].load].name,
                   c->kits[item[0].kit].name, item[0].failed);
}

gw_status gw_study_report(const gw_case *c, const gw_selection *wanted, bool banded, gw_report *out,
                          gw_error *err)
{
    gw_report r = { .c = c,
                    .baseline = gw_selection_first_kit(c, wanted),
                    .no_ride = gw_ride_missing(c, wanted) };
    if (!c->has_corner[GW_FRONT] && !c->has_corner[GW_REAR])
        return gw_fail(err, GW_E_SCHEMA, "%s: corners: the case describes no corner to load", c->path);
    if (c->n_loads == 0)
        return gw_fail(err, GW_E_SCHEMA, "%s: loads: the case has no loads; add at least one", c->path);
    gw_selection known = *wanted;
    gw_status status = gw_laws_make(c, wanted->method, &r.laws, err);
    known.laws = &r.laws;
    if (status == GW_OK) status = gw_study_deflect(c, &known, &r.deflect, err);
    known.opened = r.deflect.opened;
    if (status == GW_OK) status = shows_anything(c, &r, err);
    if (status == GW_OK) status = gw_study_strength_peaks(c, &r.deflect, &r.strength, err);
    const gw_report_work work = { c, &known, banded, &r };
    if (status == GW_OK) status = run_studies(&work, err);
    r.banded = banded;
    if (status != GW_OK) {
        gw_report_free(&r);
        return status;
    }
    *out = r;
    return GW_OK;
}

/* Opened corners and cars are the most of it. */
static void free_part(void *context, int index)
{
    gw_report *r = context;
    if (index == 0) {
        gw_deflect_study_free(&r->deflect);
        return;
    }
    gw_grid_study_free(&r->grid);
    gw_strength_study_free(&r->strength);
    gw_ride_study_free(&r->ride);
    gw_sweep_study_free(&r->brake);
    gw_sweep_study_free(&r->lateral);
    gw_handling_study_free(&r->handling);
    gw_align_study_free(&r->align);
    gw_laws_free(&r->laws);
    gw_picture_study_free(&r->pictures);
    gw_bands_study_free(&r->bands);
}

void gw_report_free(gw_report *r)
{
    gw_parallel(2, free_part, r);
    *r = (gw_report){ 0 };
}
