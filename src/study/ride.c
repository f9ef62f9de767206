/* SPDX-License-Identifier: MIT */
/* Every kit in every corner on the road of the case. */
#include "giveway/compare.h"
#include "study/ride_temperature.h"
#include "study/run.h"

#include <stdlib.h>

const char *gw_ride_lacks(const gw_case *c, gw_axle axle)
{
    const gw_wheel *w = &c->corners[axle].wheel;
    if (!c->ride.present) return "ride: road class or roughness, and speed";
    if (!(w->mass > 0.0)) return "wheel.mass_kg";
    if (!(w->tilt_inertia > 0.0)) return "wheel.tilt_inertia_kgm2";
    if (!(w->pitch_inertia > 0.0)) return "wheel.pitch_inertia_kgm2";
    if (!(w->tyre_vertical > 0.0)) return "wheel.tyre_vertical_N_per_mm";
    return NULL;
}

static gw_status require_data(const gw_run *run, gw_axle axle, gw_error *err)
{
    const char *missing = gw_ride_lacks(run->c, axle);
    if (!missing) return GW_OK;
    if (!run->c->ride.present)
        return gw_fail(err, GW_E_SCHEMA, "%s: ride: missing; give road class or roughness, and speed",
                       run->c->path);
    return gw_fail(err, GW_E_SCHEMA, "%s: corners.%s.%s: missing; ride needs it", run->c->path,
                   run->c->corners[axle].name, missing);
}

static gw_status solve(gw_run *run, int kit, gw_axle axle, const gw_ride_options *options,
                       gw_ride_result *out, gw_error *err)
{
    gw_error inner = { 0 };
    gw_fit_kit(run->c, &run->laws, kit, axle, run->fit);
    gw_status status = gw_ride_solve(&run->c->corners[axle], run->fit, &run->c->ride, options, out, &inner);
    if (status != GW_OK)
        return gw_fail(err, status, "%s: %s corner, kit %s: %s", run->c->path, run->c->corners[axle].name,
                       run->c->kits[kit].name, inner.msg);
    return GW_OK;
}

/* One corner: the baseline first, kept as an item where it is wanted. */
static gw_status run_corner(gw_run *run, gw_axle axle, const gw_ride_options *options, gw_ride_item *items,
                            gw_error *err)
{
    gw_ride_result baseline = { 0 };
    const gw_ride_options bare = { .no_curve = true, .no_obstacle = true };
    gw_status status = require_data(run, axle, err);
    if (status != GW_OK) return status;
    if (!gw_run_wants_kit(run, 0)) status = solve(run, 0, axle, &bare, &baseline, err);
    for (int k = 0; k < run->c->n_kits && status == GW_OK; k++) {
        gw_ride_item *item = &items[k];
        if (!gw_run_wants_kit(run, k)) continue;
        status = solve(run, k, axle, options, &item->result, err);
        if (status != GW_OK) break;
        *item = (gw_ride_item){ .kit = k, .axle = axle, .result = item->result };
        const gw_ride_result *from = gw_run_wants_kit(run, 0) ? &items[0].result : &baseline;
        gw_ride_compare(&item->result, from, &item->difference);
    }
    gw_ride_result_free(&baseline);
    return status;
}

/* Corners were filled one after the other; items go kit by kit. */
static void collect(const gw_run *run, gw_ride_item *all, gw_ride_study *out)
{
    int kits = run->c->n_kits;
    for (int k = 0; k < kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
            if (gw_run_wants_kit(run, k) && gw_run_wants_axle(run, a))
                out->item[out->n++] = all[(int)a * kits + k];
}

gw_status gw_study_ride(const gw_case *c, const gw_selection *wanted, const gw_ride_options *options,
                        gw_ride_study *out, gw_error *err)
{
    gw_run run;
    size_t room = (size_t)c->n_kits * GW_AXLES + 1;
    gw_ride_study study = { .item = calloc(room, sizeof *study.item) };
    gw_ride_item *all = calloc(room, sizeof *all);
    gw_status status = gw_run_open(&run, c, wanted, err);
    if (status == GW_OK && (!all || !study.item)) status = gw_fail(err, GW_E_NOMEM, "out of memory for ride");
    for (gw_axle a = GW_FRONT; a < GW_AXLES && status == GW_OK; a++)
        if (gw_run_wants_axle(&run, a)) status = run_corner(&run, a, options, &all[(int)a * c->n_kits], err);
    if (status == GW_OK) status = gw_ride_temperature(&run, &study, err);
    if (status == GW_OK) {
        collect(&run, all, &study);
        *out = study;
    } else {
        for (size_t i = 0; all && i < room; i++) gw_ride_result_free(&all[i].result);
        gw_arena_free(&study.arena);
        free(study.item);
    }
    free(all);
    gw_run_close(&run);
    return status;
}

void gw_ride_study_free(gw_ride_study *study)
{
    for (int i = 0; i < study->n; i++) gw_ride_result_free(&study->item[i].result);
    free(study->item);
    gw_arena_free(&study->arena);
    *study = (gw_ride_study){ 0 };
}

const gw_ride_item *gw_ride_find(const gw_ride_study *study, int kit, gw_axle axle)
{
    for (int i = 0; i < study->n; i++)
        if (study->item[i].kit == kit && study->item[i].axle == axle) return &study->item[i];
    return NULL;
}
