/* SPDX-License-Identifier: MIT */
#include "giveway/report.h"

/* Steps of 0.1 g: toe between two of them strays from a straight line by less than a minute of arc. */
static const gw_grid_plan GRID = { 1.0, 1.0, 11, 11, GW_OUTER, true };

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

/* No more of it than the page shows. */
static gw_status handle(const gw_case *c, const gw_selection *known, gw_report *r, gw_error *err)
{
    gw_selection brief = *known;
    brief.brief = true;
    return gw_study_handling(c, &brief, &r->handling, err);
}

static bool can_be_set(const gw_case *c, const gw_selection *wanted)
{
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
        if (c->has_corner[a] && c->align[a].present && (!wanted->only_axle || wanted->axle == a)) return true;
    return false;
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
    const gw_ride_options everything = { 0 };
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
    if (status == GW_OK && !r.no_ride) status = gw_study_ride(c, &known, &everything, &r.ride, err);
    if (status == GW_OK && c->has_vehicle) status = gw_study_grid(c, &known, &GRID, &r.grid, err);
    if (status == GW_OK) status = handle(c, &known, &r, err);
    if (status == GW_OK && can_be_set(c, wanted)) status = gw_study_align(c, &known, &r.align, err);
    if (status == GW_OK) status = gw_study_pictures(c, &r.laws, &r.deflect, &r.grid, &r.pictures, err);
    if (status == GW_OK && banded) status = gw_study_bands(c, &known, &r.bands, err);
    r.banded = banded;
    if (status != GW_OK) {
        gw_report_free(&r);
        return status;
    }
    *out = r;
    return GW_OK;
}

void gw_report_free(gw_report *r)
{
    gw_deflect_study_free(&r->deflect);
    gw_strength_study_free(&r->strength);
    gw_ride_study_free(&r->ride);
    gw_grid_study_free(&r->grid);
    gw_sweep_study_free(&r->brake);
    gw_sweep_study_free(&r->lateral);
    gw_handling_study_free(&r->handling);
    gw_align_study_free(&r->align);
    gw_laws_free(&r->laws);
    gw_picture_study_free(&r->pictures);
    gw_bands_study_free(&r->bands);
    *r = (gw_report){ 0 };
}
