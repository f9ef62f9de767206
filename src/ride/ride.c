/* SPDX-License-Identifier: MIT */
/* One corner with one kit, from the model to everything that is reported of it. */
#include "giveway/ride.h"

#include "giveway/units.h"
#include "ride/outputs.h"
#include "ride/remarks.h"
#include "ride/settle.h"

#include <math.h>

enum { PASSES = 200 };
/* Draws tell a range, so they need not be as fine as the figure itself. */
static const double DRAW_SMOOTH = 0.1;

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

static gw_status tell_modes(run *r, gw_ride_result *out, gw_error *err)
{
    out->modes = gw_arena_alloc(&out->arena, (size_t)r->modes.n, sizeof *out->modes);
    if (!out->modes) return no_memory(err);
    out->n_modes = r->modes.n;
    for (int i = 0; i < r->modes.n; i++) gw_mode_describe(&r->model, &r->modes, i, &out->modes[i]);
    return gw_remark_modes(r->model.corner, out, err);
}

/* What is integrated is graded towards them; how well they are known decides how many panels that takes. */
static gw_status find_modes(run *r, bool told, gw_ride_result *out, gw_error *err)
{
    gw_status st = gw_modes_undamped(&r->model, &r->modes, &r->scratch, err);
    if (st == GW_OK && told) st = gw_modes_damped(&r->model, &r->modes, err);
    if (st == GW_OK && told) st = tell_modes(r, out, err);
    if (st == GW_OK) r->sweep.n_poles = gw_modes_poles(&r->modes, r->sweep.poles);
    return st;
}

/* The largest A-weighted force. */
static int heard_band(const double band[GW_BANDS])
{
    int most = 0;
    double loudest = 0.0;
    for (int b = 0; b < GW_BANDS; b++) {
        double heard = band[b] * gw_weight_a(gw_band_centre(GW_BAND_FIRST + b));
        if (heard > loudest) loudest = heard, most = b;
    }
    return most;
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
    for (int i = 0; i < GW_RIDE_STATES; i++) {
        out->harshness[i] = sqrt(f->harshness);
        out->noise[i] = sqrt(f->noise);
    }
    for (int i = 0; i < 2; i++) out->crackle[i] = sqrt(f->crackle[i]);
    for (int b = 0; b < GW_BANDS; b++) out->band[b] = sqrt(f->band[b]);
    out->heard_band = heard_band(out->band);
    out->n_paths = r->model.n_paths;
    for (int p = 0; p < out->n_paths; p++) {
        out->paths[p] = r->model.paths[p];
        out->paths[p].force = sqrt(f->path[p] / gw_ride_one_wheel(&r->model));
        out->paths[p].share = f->path[p] / f->harshness;
    }
    return GW_OK;
}

/* Sliders, amplitudes and reversals stay as they are in the case as given. */
static gw_status find_range(run *r, gw_ride_result *out, gw_error *err)
{
    gw_figures f = { .path = r->figures.path };
    for (int i = 0; i < GW_RIDE_DRAWS; i++) {
        double u[GW_UNKNOWNS];
        gw_draw_levels(i, u);
        gw_ride_draw draw = gw_draw_at(u);
        gw_ride_model_belt(&r->model, false);
        gw_ride_model_set(&r->model, &draw);
        gw_status st = gw_modes_follow(&r->model, &r->modes, err);
        gw_ride_model_belt(&r->model, true);
        if (st != GW_OK) return st;
        r->sweep.n_poles = gw_modes_poles(&r->modes, r->sweep.poles);
        if ((st = gw_figures_body_force(&r->sweep, DRAW_SMOOTH, &f, err)) != GW_OK) return st;
        out->harshness[1 + i] = sqrt(f.harshness);
        out->noise[1 + i] = sqrt(f.noise);
    }
    return GW_OK;
}

static gw_status keep_sliders(const gw_ride_model *model, gw_ride_result *out, gw_error *err)
{
    static const char *const damper[GW_WHEELS] = { "left.damper", "right.damper" };
    out->sliders = gw_arena_alloc(&out->arena, (size_t)model->n_sliders + 1, sizeof *out->sliders);
    if (!out->sliders) return no_memory(err);
    for (int i = 0; i < model->n_sliders; i++) {
        const gw_ride_slider *s = &model->sliders[i];
        const char *name = s->joint >= 0 ? model->corner->joints[s->joint].name : damper[s->wheel];
        if (s->joint < 0 && model->n_wheels == 1) name = "damper";
        out->sliders[out->n_sliders++] = (gw_ride_friction){ s->joint, name, s->c, s->speed, s->sticks };
    }
    return GW_OK;
}

static gw_status keep_movements(const gw_ride_model *model, gw_ride_result *out, gw_error *err)
{
    size_t joints = (size_t)model->corner->n_joints;
    int *joint = gw_arena_alloc(&out->arena, joints + 1, sizeof *joint);
    out->movements = gw_arena_alloc(&out->arena, joints + 1, sizeof *out->movements);
    if (!joint || !out->movements) return no_memory(err);
    out->n_movements = gw_rubber_joints(model, joint);
    for (int i = 0; i < out->n_movements; i++)
        out->movements[i] = (gw_ride_movement){ joint[i], model->amplitude[joint[i]] };
    return GW_OK;
}

static gw_status say_wavers(const gw_ride_model *model, const gw_settled *s, gw_ride_result *out,
                            gw_error *err)
{
    int bush = s->wavers - model->n_sliders;
    const gw_ride_friction *slider = &out->sliders[s->wavers];
    gw_error what;
    if (bush >= 0)
        gw_fail(&what, GW_OK, "the movement of the bush at %s wavers between %.4g and %.4g mm",
                model->corner->joints[out->movements[bush].joint].name, s->from / GW_MM, s->to / GW_MM);
    else if (slider->joint < 0)
        gw_fail(&what, GW_OK, "the slip of %s wavers between %.4g and %.4g mm/s", slider->name,
                s->from / GW_MM, s->to / GW_MM);
    else
        gw_fail(&what, GW_OK, "the slip of %s wavers between %.4g and %.4g rad/s", slider->name, s->from,
                s->to);
    return gw_remark_wavers(what.msg, out, err);
}

static gw_status settle(run *r, int passes, gw_ride_result *out, gw_error *err)
{
    gw_settled settled;
    gw_status st = gw_settle(&r->sweep, passes, &r->scratch, &settled, err);
    if (st == GW_OK) st = keep_sliders(&r->model, out, err);
    if (st == GW_OK) st = keep_movements(&r->model, out, err);
    if (st != GW_OK) return st;
    out->settled = settled.settled;
    out->friction = r->model.friction;
    if (!settled.settled && (st = say_wavers(&r->model, &settled, out, err)) != GW_OK) return st;
    r->sweep.crackle = gw_crackle_of(&r->model, settled.wheel_speed, settled.wheel_acceleration);
    out->reversals = settled.wheel_acceleration / (GW_PI * settled.wheel_speed);
    return GW_OK;
}

/* In words that do for every kit of a corner. */
static const char NO_BELT[] = "The tyre has no belt here, for want of wheel.tyre_mass_kg: the A-weighted "
                              "force is too low, and its decibels "
                              "are mostly too high.";

static gw_status remark(run *r, gw_ride_result *out, gw_error *err)
{
    const gw_corner *corner = r->model.corner;
    if (!(corner->wheel.tyre_mass > 0.0)) out->belt_note = NO_BELT;
    gw_status st = gw_remark_sharp(&r->sweep, &r->figures, out, err);
    if (st == GW_OK) st = gw_ride_isolation(&r->model, &out->isolation, &out->n_isolation, &out->arena, err);
    if (st == GW_OK) st = gw_remark_brackets(corner, out, err);
    if (st == GW_OK) st = gw_remark_play(corner, r->model.fit, out, err);
    if (st == GW_OK) st = gw_remark_slow_test(corner, r->model.fit, out, err);
    return st == GW_OK ? gw_remark_road(r->model.settings, out, err) : st;
}

/* A state that is none has no figures. */
static void leave_out(gw_ride_result *out)
{
    const double none = NAN;
    out->comfort = out->crackle[0] = out->crackle[1] = none;
    for (int i = 0; i < GW_RIDE_STATES; i++) out->harshness[i] = out->noise[i] = none;
    for (int b = 0; b < GW_BANDS; b++) out->band[b] = none;
    for (int p = 0; p < out->n_paths; p++) out->paths[p].force = out->paths[p].share = none;
}

static gw_status solve(run *r, const gw_ride_options *options, gw_ride_result *out, gw_error *err)
{
    const gw_ride *settings = r->model.settings;
    gw_status st = gw_sweep_open(&r->sweep, &r->model, &r->scratch, err);
    gw_ride_model_belt(&r->model, true);
    if (st == GW_OK) st = settle(r, options->passes ? options->passes : PASSES, out, err);
    gw_ride_model_belt(&r->model, false);
    if (st == GW_OK) st = find_modes(r, !options->no_modes, out, err);
    gw_ride_model_belt(&r->model, true);
    if (st == GW_OK) st = find_figures(r, out, err);
    if (st == GW_OK) st = remark(r, out, err);
    if (st == GW_OK && !options->no_curve) st = gw_ride_curves(&r->sweep, &out->curve, &out->arena, err);
    if (st == GW_OK && settings->has_obstacle && !options->no_obstacle)
        st = gw_ride_obstacle(&r->model, &out->obstacle, &out->arena, err);
    if (st == GW_OK && !options->no_range && out->settled) st = find_range(r, out, err);
    out->chassis_mass = r->model.chassis_mass * gw_ride_one_wheel(&r->model);
    out->evaluations = r->model.evaluations;
    if (!out->settled) leave_out(out);
    return st;
}

gw_status gw_ride_solve(const gw_corner *corner, const gw_fit *fit, const gw_ride *settings,
                        const gw_ride_options *options, gw_ride_result *out, gw_error *err)
{
    const gw_ride_options everything = { 0 };
    gw_ride_result result = { 0 };
    run r = { 0 };
    gw_status st = gw_ride_model_open_like(&r.model, corner, fit, settings, options ? options->like : NULL,
                                           &r.scratch, err);
    r.model.changed = options ? options->changed : NULL;
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

const char *gw_ride_caution(void)
{
    return "An estimate to compare kits with, not a prediction of a noise level in the cabin: the body "
           "passes "
           "every path and frequency alike here, and above 315 Hz a model of rigid parts has nothing to say.";
}
