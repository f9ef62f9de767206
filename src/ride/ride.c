/* SPDX-License-Identifier: MIT */
/* One corner with one kit, from the model to everything that is reported of it. */
#include "giveway/ride.h"

#include "ride/outputs.h"
#include "ride/remarks.h"

#include <math.h>

typedef struct run {
    gw_ride_model model;
    gw_mode_set modes;
    gw_ride_sweep sweep;
    gw_figures figures;
    gw_arena scratch;
} run;

static gw_status no_memory(gw_error *err)
{
    return gw_fail(err, GW_E_NOMEM, "out of memory in the ride model");
}

static gw_status find_modes(run *r, gw_ride_result *out, gw_error *err)
{
    gw_status st = gw_modes_undamped(&r->model, &r->modes, &r->scratch, err);
    if (st == GW_OK) st = gw_modes_damped(&r->model, &r->modes, err);
    if (st != GW_OK) return st;
    out->modes = gw_arena_alloc(&out->arena, (size_t)r->modes.n, sizeof *out->modes);
    if (!out->modes) return no_memory(err);
    out->n_modes = r->modes.n;
    for (int i = 0; i < r->modes.n; i++) gw_mode_describe(&r->model, &r->modes, i, &out->modes[i]);
    r->sweep.n_poles = gw_modes_poles(&r->modes, r->sweep.poles);
    return gw_remark_modes(r->model.corner, out, err);
}

static gw_status find_figures(run *r, gw_ride_result *out, gw_error *err)
{
    gw_figures *f = &r->figures;
    f->path = gw_arena_alloc(&r->scratch, (size_t)r->model.n_paths, sizeof *f->path);
    out->paths = gw_arena_alloc(&out->arena, (size_t)r->model.n_paths, sizeof *out->paths);
    if (!f->path || !out->paths) return no_memory(err);
    gw_status st = gw_figures_all(&r->sweep, f, err);
    if (st != GW_OK) return st;
    out->comfort = sqrt(f->comfort);
    for (int i = 0; i < GW_BRACKET_STATES; i++) {
        out->harshness[i] = sqrt(f->harshness);
        out->noise[i] = sqrt(f->noise);
    }
    for (int b = 0; b < GW_BANDS; b++) out->band[b] = sqrt(f->band[b]);
    out->n_paths = r->model.n_paths;
    for (int p = 0; p < out->n_paths; p++) {
        out->paths[p] = r->model.paths[p];
        out->paths[p].force = sqrt(f->path[p] / gw_ride_one_wheel(&r->model));
        out->paths[p].share = f->path[p] / f->harshness;
    }
    return GW_OK;
}

/* The body's give is the least known of all that goes in, so the figures are taken with half and twice. */
static gw_status find_range(run *r, gw_ride_result *out, gw_error *err)
{
    const double factor[GW_BRACKET_STATES] = { 1.0, 0.5, 2.0 };
    gw_figures f = { .path = r->figures.path };
    for (int i = 1; i < GW_BRACKET_STATES; i++) {
        gw_ride_model_brackets(&r->model, factor[i]);
        gw_ride_model_belt(&r->model, false);
        gw_status st = gw_modes_follow(&r->model, &r->modes, err);
        gw_ride_model_belt(&r->model, true);
        if (st != GW_OK) return st;
        r->sweep.n_poles = gw_modes_poles(&r->modes, r->sweep.poles);
        if ((st = gw_figures_body_force(&r->sweep, &f, err)) != GW_OK) return st;
        out->harshness[i] = sqrt(f.harshness);
        out->noise[i] = sqrt(f.noise);
    }
    return GW_OK;
}

static gw_status solve(run *r, const gw_ride_options *options, gw_ride_result *out, gw_error *err)
{
    const gw_ride *settings = r->model.settings;
    gw_status st = gw_sweep_open(&r->sweep, &r->model, &r->scratch, err);
    if (st == GW_OK) st = find_modes(r, out, err);
    gw_ride_model_belt(&r->model, true);
    if (st == GW_OK) st = find_figures(r, out, err);
    if (st == GW_OK) st = gw_remark_sharp(&r->sweep, &r->figures, out, err);
    if (st == GW_OK) st = gw_ride_isolation(&r->model, &out->isolation, &out->n_isolation, &out->arena, err);
    if (st == GW_OK) st = gw_remark_brackets(r->model.corner, out, err);
    if (st == GW_OK) st = gw_remark_play(r->model.corner, r->model.fit, out, err);
    if (st == GW_OK) st = gw_remark_slow_test(r->model.corner, r->model.fit, out, err);
    if (st == GW_OK) st = gw_remark_road(settings, out, err);
    if (st == GW_OK && !options->no_curve) st = gw_ride_curves(&r->sweep, &out->curve, &out->arena, err);
    if (st == GW_OK && settings->has_obstacle && !options->no_obstacle)
        st = gw_ride_obstacle(&r->model, &out->obstacle, &out->arena, err);
    if (st == GW_OK && !options->no_range) st = find_range(r, out, err);
    out->chassis_mass = r->model.chassis_mass * gw_ride_one_wheel(&r->model);
    out->evaluations = r->model.evaluations;
    return st;
}

gw_status gw_ride_solve(const gw_corner *corner, const gw_fit *fit, const gw_ride *settings,
                        const gw_ride_options *options, gw_ride_result *out, gw_error *err)
{
    const gw_ride_options everything = { 0 };
    gw_ride_result result = { 0 };
    run r = { 0 };
    gw_status st = gw_ride_model_open(&r.model, corner, fit, settings, &r.scratch, err);
    if (st == GW_OK) st = solve(&r, options ? options : &everything, &result, err);
    gw_arena_free(&r.scratch);
    if (st == GW_OK)
        *out = result;
    else
        gw_ride_result_free(&result);
    return st;
}

void gw_ride_result_free(gw_ride_result *result)
{
    gw_arena_free(&result->arena);
    *result = (gw_ride_result){ 0 };
}

static double decibels(double value, double baseline)
{
    return 20.0 * log10(value / baseline);
}

static void range_of(const double *kit, const double *baseline, double *nominal, double *low, double *high)
{
    *nominal = *low = *high = decibels(kit[0], baseline[0]);
    for (int i = 1; i < GW_BRACKET_STATES; i++) {
        *low = fmin(*low, decibels(kit[i], baseline[i]));
        *high = fmax(*high, decibels(kit[i], baseline[i]));
    }
}

void gw_ride_compare(const gw_ride_result *kit, const gw_ride_result *baseline, gw_ride_difference *out)
{
    range_of(kit->harshness, baseline->harshness, &out->harshness, &out->harshness_low, &out->harshness_high);
    range_of(kit->noise, baseline->noise, &out->noise, &out->noise_low, &out->noise_high);
    for (int b = 0; b < GW_BANDS; b++) out->band[b] = decibels(kit->band[b], baseline->band[b]);
}

const char *gw_ride_caution(void)
{
    return "An estimate to compare kits with, not a prediction of a noise level in the cabin: the body "
           "passes "
           "every path and frequency alike here, and above 315 Hz a model of rigid parts has nothing to say.";
}
