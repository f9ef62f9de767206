/* SPDX-License-Identifier: MIT */
/* Every kit in every corner on the road of the case. */
#include "giveway/compare.h"

#include "base/parallel.h"
#include "study/opened.h"
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

const char *gw_ride_missing(const gw_case *c, const gw_selection *wanted)
{
    for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
        if (!c->has_corner[a] || (wanted->only_axle && wanted->axle != a)) continue;
        const char *missing = gw_ride_lacks(c, a);
        if (missing) return missing;
    }
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

/* One kit in one corner; the baseline of a corner is worked out even where it is not shown. */
typedef struct gw_ride_job {
    gw_run run; /**< a copy: laws are shared, the fit is its own */
    gw_ride_options options;
    bool changed[GW_MAX_JOINTS]; /**< its bush is not the first kit's */
    bool shown;
    gw_ride_item item;
    gw_status status;
    gw_error err;
} gw_ride_job;

static void solve(void *context, int index)
{
    gw_ride_job *job = &((gw_ride_job *)context)[index];
    const gw_case *c = job->run.c;
    const gw_corner *corner = &c->corners[job->item.axle];
    gw_error inner = { 0 };
    bool *changed = job->changed;
    gw_fit_kit(c, &job->run.laws, job->item.kit, job->item.axle, job->run.fit);
    for (int j = 0; j < corner->n_joints; j++)
        changed[j] = c->kits[job->item.kit].fits[job->item.axle][j] != c->kits[0].fits[job->item.axle][j];
    job->options.changed = changed;
    job->options.like = gw_opened_corner(job->run.wanted->opened, c, job->item.kit, job->item.axle, false);
    job->status = gw_ride_solve(corner, job->run.fit, &c->ride, &job->options, &job->item.result, &inner);
    if (job->status != GW_OK)
        gw_fail(&job->err, job->status, "%s: %s corner, kit %s: %s", c->path, corner->name,
                c->kits[job->item.kit].name, inner.msg);
}

/* Kit by kit, then corner by corner: the order of the items. */
static gw_status plan(const gw_run *run, const gw_ride_options *options, gw_ride_job *jobs, int *n,
                      gw_error *err)
{
    const gw_ride_options bare = { .no_curve = true, .no_obstacle = true };
    for (int k = 0; k < run->c->n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            bool shown = gw_run_wants_kit(run, k);
            if (!gw_run_wants_axle(run, a) || (!shown && k > 0)) continue;
            gw_status status = require_data(run, a, err);
            if (status != GW_OK) return status;
            gw_ride_job *job = &jobs[(*n)++];
            *job = (gw_ride_job){ .run = *run, .shown = shown, .item = { .kit = k, .axle = a } };
            job->options = !shown ? bare : options ? *options : (gw_ride_options){ 0 };
        }
    return GW_OK;
}

static gw_status first_failure(const gw_ride_job *jobs, int n, gw_error *err)
{
    for (int i = 0; i < n; i++)
        if (jobs[i].status != GW_OK) return gw_fail(err, jobs[i].status, "%s", jobs[i].err.msg);
    return GW_OK;
}

/* The first kit comes first, so each corner's baseline is the first job of that corner. */
static const gw_ride_result *baseline_of(const gw_ride_job *jobs, gw_axle axle)
{
    while (jobs->item.axle != axle) jobs++;
    return &jobs->item.result;
}

/* What is shown moves into the study; the rest is freed. */
static void collect(gw_ride_job *jobs, int n, gw_ride_study *out)
{
    for (int i = 0; i < n; i++)
        gw_ride_compare(&jobs[i].item.result, baseline_of(jobs, jobs[i].item.axle), &jobs[i].item.difference);
    for (int i = 0; i < n; i++)
        if (jobs[i].shown)
            out->item[out->n++] = jobs[i].item;
        else
            gw_ride_result_free(&jobs[i].item.result);
}

static void add_close(gw_ride_study *out, const gw_ride_item *a, const gw_ride_item *b, double low,
                      double high, bool heard)
{
    if (low <= 0.0 && high >= 0.0)
        out->close[out->n_close++] = (gw_ride_close){ a->axle, { a->kit, b->kit }, heard };
}

/* Every two kits of a corner. */
static gw_status find_close(gw_ride_study *out, gw_error *err)
{
    size_t room = (size_t)out->n * (size_t)out->n + 1;
    out->close = gw_arena_alloc(&out->arena, room, sizeof *out->close);
    if (!out->close) return gw_fail(err, GW_E_NOMEM, "out of memory for ride");
    for (gw_axle axle = GW_FRONT; axle < GW_AXLES; axle++)
        for (int i = 0; i < out->n; i++)
            for (int j = i + 1; j < out->n; j++) {
                const gw_ride_item *a = &out->item[i], *b = &out->item[j];
                gw_ride_difference d;
                if (a->axle != axle || b->axle != axle) continue;
                gw_ride_compare(&b->result, &a->result, &d);
                add_close(out, a, b, d.harshness_low, d.harshness_high, false);
                add_close(out, a, b, d.noise_low, d.noise_high, true);
            }
    return GW_OK;
}

static gw_status run_all(const gw_run *run, const gw_ride_options *options, gw_ride_study *out, gw_error *err)
{
    size_t room = (size_t)run->c->n_kits * GW_AXLES + 1;
    int n = 0;
    gw_ride_job *jobs = calloc(room, sizeof *jobs);
    out->item = calloc(room, sizeof *out->item);
    gw_status status = GW_OK;
    if (!jobs || !out->item) {
        status = gw_fail(err, GW_E_NOMEM, "out of memory for ride");
        goto done;
    }
    status = plan(run, options, jobs, &n, err);
    if (status == GW_OK) {
        gw_parallel(n, solve, jobs);
        status = first_failure(jobs, n, err);
    }
    if (status == GW_OK)
        collect(jobs, n, out);
    else
        for (int i = 0; i < n; i++) gw_ride_result_free(&jobs[i].item.result);
done:
    free(jobs);
    return status;
}

gw_status gw_study_ride(const gw_case *c, const gw_selection *wanted, const gw_ride_options *options,
                        gw_ride_study *out, gw_error *err)
{
    gw_run run;
    gw_ride_study study = { 0 };
    gw_status status = gw_run_open_on_ramp(&run, c, wanted, err);
    if (status == GW_OK) status = run_all(&run, options, &study, err);
    if (status == GW_OK && !(options && options->no_range)) status = find_close(&study, err);
    if (status == GW_OK) status = gw_ride_temperature(&run, &study, err);
    gw_run_close(&run);
    if (status != GW_OK) {
        gw_ride_study_free(&study);
        return status;
    }
    *out = study;
    return GW_OK;
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
