/* SPDX-License-Identifier: MIT */
/* Every kit in every corner that has a target: its sensitivities, its settings, and what else they do. */
#include "base/parallel.h"
#include "study/align_parts.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static bool wants(const gw_run *run, int kit, gw_axle axle)
{
    return gw_run_wants_kit(run, kit) && gw_run_wants_axle(run, axle) && run->c->align[axle].present;
}

static int count_items(const gw_run *run)
{
    int n = 0;
    for (int k = 0; k < run->c->n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
            if (wants(run, k, a)) n += run->c->align[a].measured ? 2 : 1;
    return n;
}

static gw_status make_room(const gw_run *run, gw_arena *arena, gw_align_item *item, gw_error *err)
{
    const gw_corner *corner = &run->c->corners[item->axle];
    size_t adjusters = (size_t)run->c->align[item->axle].n_adjusters, joints = (size_t)corner->n_joints;
    item->set = gw_arena_alloc(arena, adjusters + 1, sizeof *item->set);
    item->sensitivity = gw_arena_alloc(arena, 2 * adjusters + 1, sizeof *item->sensitivity);
    item->load = gw_arena_alloc(arena, (size_t)run->c->n_loads + 1, sizeof *item->load);
    item->tilt = gw_arena_alloc(arena, joints, sizeof *item->tilt);
    item->seat = gw_arena_alloc(arena, joints, sizeof *item->seat);
    item->check = gw_arena_alloc(arena, joints * GW_CHECKS_OF_A_JOINT, sizeof *item->check);
    if (!item->set || !item->sensitivity || !item->load || !item->tilt || !item->seat || !item->check)
        return gw_fail(err, GW_E_NOMEM, "out of memory for results");
    return GW_OK;
}

/* The kit alone: how it stands, what each movement does to it, and the loads and tilts to compare with. */
static gw_status look_before(gw_setup *s, gw_align_item *item, gw_peaks *peaks, gw_error *err)
{
    static const double NONE[GW_MAX_MOVES] = { 0 };
    gw_status status = gw_setup_slopes(s, NONE, GW_SENSITIVITY_STEP, true, true, err);
    if (status != GW_OK) return status;
    memcpy(item->sensitivity, s->slope, (size_t)s->n * sizeof *s->slope);
    item->n_sensitivities = s->n;
    if ((status = gw_setup_fit(s, NONE, err)) != GW_OK) return status;
    if ((status = gw_setup_stance(s, &item->before, err)) != GW_OK) return status;
    gw_align_tilts(s, item, false);
    return gw_align_loads(s, item, false, peaks, err);
}

static gw_status look_after(gw_setup *s, gw_align_item *item, gw_peaks *peaks, gw_error *err)
{
    gw_status status = gw_setup_stance(s, &item->after, err);
    if (status != GW_OK) return status;
    gw_align_tilts(s, item, true);
    return gw_align_loads(s, item, true, peaks, err);
}

/* Offsets and shims in, arms as they were: what the ramp shows before the toe is set again. */
static gw_status look_between(gw_setup *s, gw_align_item *item, gw_error *err)
{
    double x[GW_MAX_MOVES];
    for (int i = 0; i < s->n; i++) {
        bool arm = s->align->adjusters[s->of[i].adjuster].kind == GW_ADJUST_LENGTH;
        x[i] = arm ? 0.0 : s->x[i];
    }
    gw_status status = gw_setup_look(s, x, err);
    return status == GW_OK ? gw_setup_stance(s, &item->fitted, err) : status;
}

static void judge(const gw_align *align, const gw_corner_setting *at, gw_align_item *item)
{
    for (gw_target t = GW_TARGET_TOE; t < GW_TARGETS; t++) {
        bool given = gw_target_given(align, t);
        double tolerance = fmax(gw_target_tolerance(align, t), GW_ALIGN_EXACT);
        item->miss[t] = given ? gw_setting_of(at, t) - gw_target_of(align, t) : 0.0;
        item->reached[t] = fabs(item->miss[t]) <= GW_ALIGN_EXACT;
        item->tolerated[t] = fabs(item->miss[t]) <= tolerance;
    }
}

/* What the ramp reads less what the model has, side by side of the car. */
static gw_corner_setting apart(const gw_align *align, const gw_align_item *item)
{
    gw_corner_setting by = { 0 };
    if (item->side == GW_RAMP_BOTH) return by;
    const gw_measured *m = &align->side[item->side - GW_RAMP_LEFT];
    if (m->has_camber) by.camber = m->camber - item->before.setting.camber;
    if (m->has_toe) by.toe = m->toe - item->before.setting.toe;
    by.caster_change = -item->before.setting.caster_change; /* counted from the measured one */
    return by;
}

/* The targets as the model's corner has to meet them, so that the measured one does. */
static void shift_targets(gw_align *align, const gw_align_item *item, const gw_corner_setting *by)
{
    if (item->side == GW_RAMP_BOTH) return;
    if (align->has_caster_angle) {
        align->has_caster = true;
        align->caster = align->caster_angle - align->side[item->side - GW_RAMP_LEFT].caster;
    }
    align->camber -= by->camber;
    align->toe -= by->toe;
    align->caster -= by->caster_change;
}

static void shift(gw_corner_setting *setting, const gw_corner_setting *by)
{
    setting->camber += by->camber;
    setting->toe += by->toe;
    setting->caster_change += by->caster_change;
}

static void shift_item(gw_align_item *item, const gw_corner_setting *by)
{
    if (item->side == GW_RAMP_BOTH) return;
    shift(&item->before.setting, by);
    shift(&item->fitted.setting, by);
    shift(&item->after.setting, by);
    for (int i = 0; i < item->n_turned; i++) shift(&item->turned[i].reached, by);
}

static gw_status set_corner(gw_setup *s, gw_arena *arena, gw_align_item *item, gw_error *err)
{
    gw_status status = gw_setup_reach_in_steps(s, arena, err);
    if (status != GW_OK) return status;
    gw_corner_setting at = gw_corner_as_fitted(s->run->ws);
    gw_setup_read(s, s->x, item->set);
    judge(s->align, &at, item);
    if ((status = gw_setup_turn(s, arena, item, err)) != GW_OK) return status;
    if ((status = look_between(s, item, err)) != GW_OK) return status;
    return gw_setup_fit(s, s->x, err);
}

static gw_status run_item(gw_run *run, gw_align_study *study, gw_align_item *item, gw_error *err)
{
    gw_setup setup = { 0 };
    gw_error inner = { 0 };
    gw_peaks before = { 0 }, after = { 0 };
    gw_align own = run->c->align[item->axle];
    gw_corner_setting by = { 0 };
    gw_status status = make_room(run, &study->arena, item, &inner);
    item->shock_factor = run->c->align[item->axle].shock_factor;
    if (!(item->shock_factor > 0.0)) item->shock_factor = GW_SHOCK_FACTOR;
    if (status == GW_OK) status = gw_setup_open(run, item->kit, item->axle, &study->arena, &setup, &inner);
    setup.align = &own;
    if (status == GW_OK) status = look_before(&setup, item, &before, &inner);
    by = apart(&own, item);
    shift_targets(&own, item, &by);
    if (status == GW_OK) status = set_corner(&setup, &study->arena, item, &inner);
    if (status == GW_OK) status = look_after(&setup, item, &after, &inner);
    if (status == GW_OK) status = gw_align_checks(&setup, item, &after, &inner);
    if (status == GW_OK)
        status = gw_run_corner_warnings(run, " as set", &study->arena, &study->warning, &study->n_warnings,
                                        &inner);
    gw_setup_close(&setup);
    shift_item(item, &by);
    if (status != GW_OK)
        return gw_fail(err, status, "%s: align.%s, kit %s: %s", run->c->path,
                       run->c->corners[item->axle].name, run->c->kits[item->kit].name, inner.msg);
    return GW_OK;
}

/* One kit in one corner: works in a study of its own, which the others do not see. */
typedef struct align_job {
    gw_run run;
    gw_align_study part;
    gw_align_item *item; /* where the result goes */
    gw_status status;
    gw_error err;
} align_job;

static void work(void *context, int index)
{
    align_job *job = (align_job *)context + index;
    job->status = run_item(&job->run, &job->part, job->item, &job->err);
}

/* In the order of the case: what was found, or the first failure. */
static gw_status gather(align_job *jobs, gw_align_study *study, gw_error *err)
{
    gw_status status = GW_OK;
    for (int i = 0; i < study->n; i++) {
        gw_align_study *part = &jobs[i].part;
        if (status == GW_OK && jobs[i].status != GW_OK)
            status = gw_fail(err, jobs[i].status, "%s", jobs[i].err.msg);
        if (status == GW_OK)
            status = gw_run_add_warnings(&study->arena, &study->warning, &study->n_warnings, part->warning,
                                         part->n_warnings, err);
        gw_arena_absorb(&study->arena, &part->arena);
    }
    return status;
}

static gw_axle_line line_of(const gw_align_item *left, const gw_align_item *right, bool after)
{
    const gw_corner_setting *l = after ? &left->after.setting : &left->before.setting;
    const gw_corner_setting *r = after ? &right->after.setting : &right->before.setting;
    const bool caster = left->has_caster && right->has_caster;
    return (gw_axle_line){ .total_toe = l->toe + r->toe,
                           .camber_difference = l->camber - r->camber,
                           .caster_difference =
                               caster ? left->caster + l->caster_change - right->caster - r->caster_change
                                      : (double)NAN,
                           .thrust = 0.5 * (r->toe - l->toe),
                           .steering_wheel = (double)NAN };
}

static const gw_align_axle *rear_of(const gw_align_study *study, int kit)
{
    for (int i = 0; i < study->n_axles; i++)
        if (study->axle_lines[i].kit == kit && study->axle_lines[i].axle == GW_REAR)
            return &study->axle_lines[i];
    return NULL;
}

/* Running straight the front wheels point where the rear ones do, so the wheel is turned by the difference.
 */
static void set_wheel_off(const gw_case *c, const gw_align_study *study, gw_align_axle *front)
{
    const gw_align_axle *rear = rear_of(study, front->kit);
    const double ratio = c->has_vehicle ? c->vehicle.steering_ratio : 0.0;
    if (!(ratio > 0.0)) return;
    front->before.steering_wheel = ratio * ((rear ? rear->before.thrust : 0.0) - front->before.thrust);
    front->after.steering_wheel = ratio * ((rear ? rear->after.thrust : 0.0) - front->after.thrust);
}

static gw_status sum_axles(const gw_case *c, gw_align_study *study, gw_error *err)
{
    study->axle_lines = gw_arena_alloc(&study->arena, (size_t)study->n + 1, sizeof *study->axle_lines);
    if (!study->axle_lines) return gw_fail(err, GW_E_NOMEM, "out of memory for results");
    for (int i = 0; i + 1 < study->n; i++) {
        const gw_align_item *left = &study->item[i], *right = left + 1;
        if (left->side != GW_RAMP_LEFT) continue;
        study->axle_lines[study->n_axles++] =
            (gw_align_axle){ left->kit, left->axle, line_of(left, right, false), line_of(left, right, true) };
    }
    for (int i = 0; i < study->n_axles; i++)
        if (study->axle_lines[i].axle == GW_FRONT) set_wheel_off(c, study, &study->axle_lines[i]);
    return GW_OK;
}

static gw_status run_all(const gw_run *run, gw_align_study *study, gw_error *err)
{
    int room = count_items(run);
    if (!room)
        return gw_fail(err, GW_E_SCHEMA, "%s: align: missing%s; give a target and adjusters", run->c->path,
                       run->wanted->only_axle ? " for this corner" : "");
    study->item = gw_arena_alloc(&study->arena, (size_t)room, sizeof *study->item);
    align_job *jobs = calloc((size_t)room, sizeof *jobs);
    if (!study->item || !jobs) {
        free(jobs);
        return gw_fail(err, GW_E_NOMEM, "out of memory for results");
    }
    for (int k = 0; k < run->c->n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            if (!wants(run, k, a)) continue;
            const bool sides = run->c->align[a].measured;
            for (int side = sides; side <= 2 * sides; side++) {
                gw_align_item *item = &study->item[study->n];
                *item = (gw_align_item){ .kit = k, .axle = a, .side = (gw_ramp_side)side };
                if (sides) {
                    item->has_caster = run->c->align[a].side[side - 1].has_caster;
                    item->caster = run->c->align[a].side[side - 1].caster;
                }
                jobs[study->n++] = (align_job){ .run = *run, .item = item };
            }
        }
    gw_parallel(study->n, work, jobs);
    gw_status status = gather(jobs, study, err);
    free(jobs);
    return status == GW_OK ? sum_axles(run->c, study, err) : status;
}

gw_status gw_study_align(const gw_case *c, const gw_selection *wanted, gw_align_study *out, gw_error *err)
{
    gw_align_study study = { 0 };
    gw_run run;
    gw_status status = gw_run_open(&run, c, wanted, err);
    if (status == GW_OK) status = run_all(&run, &study, err);
    gw_run_close(&run);
    if (status != GW_OK) {
        gw_align_study_free(&study);
        return status;
    }
    *out = study;
    return GW_OK;
}

void gw_align_study_free(gw_align_study *study)
{
    gw_arena_free(&study->arena);
    *study = (gw_align_study){ 0 };
}
