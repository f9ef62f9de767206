/* SPDX-License-Identifier: MIT */
/* Every kit in every corner along its path through bump and rebound. */
#include "study/travel.h"

#include "base/parallel.h"
#include "giveway/units.h"
#include "giveway/vehicle_anti.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static const double SAME_TRAVEL = 1e-9; /* travels nearer than this are one [m] */

static int count_points(const gw_travel_plan *plan)
{
    double steps = floor((plan->to - plan->from) / plan->step + 1e-9);
    bool ends_on_step = plan->from + steps * plan->step > plan->to - SAME_TRAVEL;
    return (int)steps + (ends_on_step ? 1 : 2);
}

static double travel_of(const gw_travel_plan *plan, int index)
{
    double travel = plan->from + index * plan->step;
    if (travel > plan->to - SAME_TRAVEL) return plan->to;
    return fabs(travel) < SAME_TRAVEL ? 0.0 : travel;
}

static gw_status check_plan(const gw_travel_plan *plan, gw_error *err)
{
    if (!(plan->step > 0.0) || !(plan->from < plan->to))
        return gw_fail(err, GW_E_RANGE, "travel goes from %g to %g mm in steps of %g mm: it must go upwards",
                       plan->from / GW_MM, plan->to / GW_MM, plan->step / GW_MM);
    if (!((plan->to - plan->from) / plan->step < GW_TRAVEL_MOST - 1))
        return gw_fail(err, GW_E_RANGE, "travel from %g to %g mm in steps of %g mm is more than %d places",
                       plan->from / GW_MM, plan->to / GW_MM, plan->step / GW_MM, (int)GW_TRAVEL_MOST);
    return GW_OK;
}

/* Half the track of the vehicle, or, without one, the contact patch as it is drawn. */
static double half_track(const gw_travel_job *job)
{
    const gw_case *c = job->run.c;
    gw_axle axle = job->run.axle;
    return c->has_vehicle ? 0.5 * c->vehicle.track[axle] : c->corners[axle].wheel.centre.y;
}

static void fill_point(const gw_travel_job *job, double travel, gw_travel_point *point)
{
    const gw_corner_result *r = &job->report;
    gw_other_wheel other = job->out->plan.wheels;
    point->travel = gw_wheel_goes(other, job->wheel) * travel;
    point->other_travel = gw_wheel_goes(other, (gw_wheel_side)(1 - job->wheel)) * travel;
    point->camber = r->camber;
    point->toe = r->toe;
    point->camber_change = r->camber_change;
    point->toe_change = r->toe_change;
    point->caster_change = r->caster_change;
    point->wheel_centre = r->wheel_centre;
    point->contact_patch = r->contact_patch;
    point->track_change = 2.0 * r->contact_patch.y;
    point->wheelbase_change = job->run.axle == GW_FRONT ? r->wheel_centre.x : -r->wheel_centre.x;
    point->half_track = half_track(job) + r->contact_patch.y;
    point->roll_centre = gw_roll_centre_height(&point->rates, point->half_track);
    point->side_view = gw_side_view_centre(&point->rates);
    point->front_view = gw_front_view_centre(&point->rates);
    point->brake_angle = atan(point->rates.patch_forward);
    point->drive_angle = atan(point->rates.hub_forward);
    point->parasitic = NAN;
    if (other != GW_OTHER_SAME) point->track_change = point->roll_centre = point->rates.wheel_rate = NAN;
}

static gw_status run_point(gw_travel_job *job, const gw_corner_load *load, double travel,
                           const gw_travel_item *item, gw_travel_point *point, gw_error *err)
{
    gw_status status = gw_travel_state(job, job->run.ws, load, travel, &point->rates, err);
    if (status != GW_OK) return status;
    fill_point(job, travel, point);
    return gw_bearings_point(job, item, point, err);
}

static gw_status run_points(gw_travel_job *job, const gw_corner_load *load, gw_travel_item *item,
                            gw_error *err)
{
    const gw_travel_plan *plan = &job->out->plan;
    item->n = count_points(plan);
    item->point = gw_arena_alloc(&job->out->arena, (size_t)item->n, sizeof *item->point);
    if (!item->point) return gw_fail(err, GW_E_NOMEM, "out of memory for %d places of travel", item->n);
    gw_status status = run_point(job, load, 0.0, item, &item->rest, err);
    for (int i = 0; i < item->n && status == GW_OK; i++)
        status = run_point(job, load, travel_of(plan, i), item, &item->point[i], err);
    return status;
}

/* The path at S0 with the patch load held: what load transfer takes for the height, see run.c. */
static gw_status roll_centre_held(gw_travel_job *job, gw_travel_item *item, gw_error *err)
{
    gw_corner_ws *ws = job->run.ws;
    gw_path path[GW_WHEELS];
    gw_status status =
        gw_axle_path_at(ws, gw_corner_reference(ws), GW_AT_TRAVEL, GW_OTHER_OPPOSITE, path, err);
    const gw_path *own = &path[job->both ? job->wheel : GW_LEFT_WHEEL];
    if (status == GW_OK) item->roll_centre_held = half_track(job) * own->patch.y / own->patch.z;
    return status;
}

/* By the loads of the case that drive: which axle they drive, and by how much. NaN: there is none. */
static double drive_share(const gw_case *c, gw_axle axle)
{
    double share = (double)NAN;
    for (int l = 0; l < c->n_loads; l++) {
        const gw_manoeuvre *m = &c->loads[l].manoeuvre;
        if (c->loads[l].kind == GW_LOAD_MANOEUVRE && m->drive_g > 0.0)
            share = fmax(share, gw_vehicle_drive_share(m->driven, axle));
    }
    return share;
}

static gw_status find_friction(gw_travel_job *job, gw_travel_item *item, gw_error *err)
{
    gw_friction *friction = gw_arena_alloc(&job->out->arena, 1, sizeof *friction);
    if (!friction) return gw_fail(err, GW_E_NOMEM, "out of memory for friction");
    item->friction = friction;
    return gw_corner_friction(job->run.ws, friction, err);
}

static void fill_anti(const gw_travel_job *job, gw_travel_item *item)
{
    const gw_case *c = job->run.c;
    item->has_anti = c->has_vehicle;
    if (!c->has_vehicle) return;
    item->anti_brake = gw_vehicle_anti_brake(&c->vehicle, item->axle, item->rest.rates.patch_forward);
    item->drive_share = drive_share(c, item->axle);
    double share = isnan(item->drive_share) ? 1.0 : item->drive_share;
    item->anti_drive =
        share > 0.0 ? gw_vehicle_anti_drive(&c->vehicle, item->axle, item->rest.rates.drive_forward, share)
                    : (double)NAN;
}

/* What only vertical load alone has, with both wheels alike. */
static gw_status run_rest(gw_travel_job *job, gw_travel_item *item, gw_error *err)
{
    gw_status status = roll_centre_held(job, item, err);
    if (status == GW_OK) status = gw_travel_rate_rolling(job, item, err);
    if (status == GW_OK) status = find_friction(job, item, err);
    if (status == GW_OK) status = gw_travel_parasitic(job, item, err);
    return status == GW_OK ? gw_travel_clamped(job, item, err) : status;
}

/* Load -1 is vertical load alone, which is what parasitic rate and clamping are defined under. */
static gw_status run_item(gw_travel_job *job, int load, gw_error *err)
{
    gw_travel_item *item = &job->out->item[job->out->n];
    gw_other_wheel other = job->out->plan.wheels;
    const gw_corner_load *force = job->both ? job->force : &job->force[job->wheel];
    *item = (gw_travel_item){ .kit = job->run.kit, .load = load, .axle = job->run.axle };
    item->sided = job->sided;
    item->wheel = job->wheel;
    item->roll_centre_held = item->rate_rolling = NAN;
    gw_status status = gw_bearings_begin(job, item, err);
    if (status == GW_OK) status = run_points(job, force, item, err);
    if (status == GW_OK) status = gw_bearings_end(job, force, item, err);
    if (status != GW_OK) return status;
    if (other == GW_OTHER_SAME) fill_anti(job, item);
    job->out->n++;
    item->rolls = load < 0 && other == GW_OTHER_OPPOSITE;
    if (item->rolls) return gw_axle_roll_rates(job->run.ws, &item->roll, err);
    return load < 0 && other == GW_OTHER_SAME ? run_rest(job, item, err) : GW_OK;
}

static bool wants_load(const gw_run *run, int load, gw_axle axle)
{
    return load < 0 || (run->wanted->loads && gw_run_wants_load(run, load, axle));
}

/* A manoeuvre of one axle tells the wheel that it names, as the left or the right one of an axle that is
 * solved whole. */
static gw_wheel_side told_by(const gw_travel_job *job, int load)
{
    const gw_load *l = load < 0 ? NULL : &job->run.c->loads[load];
    bool inner = l && l->kind == GW_LOAD_MANOEUVRE && l->manoeuvre.side == GW_INNER;
    return job->both && inner ? GW_RIGHT_WHEEL : GW_LEFT_WHEEL;
}

/* Of a corner that shares nothing and whose wheels differ: run.ws and run.fit are those of the other wheel.
 */
static void change_wheel(gw_run *run)
{
    gw_corner_ws *other = run->right;
    run->right = run->ws;
    run->ws = other;
    run->on_right = !run->on_right;
    if (run->on_right)
        gw_fit_right(run->c, &run->laws, run->kit, run->axle, run->fit);
    else
        gw_fit_kit(run->c, &run->laws, run->kit, run->axle, run->fit);
}

static gw_status run_load(gw_travel_job *job, int load, gw_error *err)
{
    gw_status status = gw_travel_forces(job, load, err);
    job->wheel = told_by(job, load);
    if (!job->sided && status == GW_OK) return run_item(job, load, err);
    for (int w = 0; w < GW_WHEELS && status == GW_OK; w++) {
        job->wheel = (gw_wheel_side)w;
        if (!job->both && w == GW_RIGHT_WHEEL) change_wheel(&job->run);
        status = run_item(job, load, err);
    }
    if (job->run.on_right) change_wheel(&job->run);
    return status;
}

static gw_status run_corner(gw_travel_job *job, int kit, gw_axle axle, gw_error *err)
{
    gw_run *run = &job->run;
    job->sided = job->out->plan.wheels != GW_OTHER_SAME || gw_kit_is_lopsided(run->c, kit, axle);
    job->report.joints = job->joints;
    job->out->item =
        gw_arena_alloc(&job->out->arena, GW_WHEELS * ((size_t)run->c->n_loads + 1), sizeof *job->out->item);
    if (!job->out->item) return gw_fail(err, GW_E_NOMEM, "out of memory for results");
    gw_status status = gw_run_open_corner(run, kit, axle, err);
    if (status == GW_OK)
        status =
            gw_run_corner_warnings(run, "", &job->out->arena, &job->out->warning, &job->out->n_warnings, err);
    if (status == GW_OK) status = gw_travel_open_axle(job, err);
    for (int l = -1; l < run->c->n_loads && status == GW_OK; l++)
        if (wants_load(run, l, axle)) status = run_load(job, l, err);
    gw_run_close_corner(run);
    return status;
}

/* One kit in one corner: works in a study of its own, which the others do not see. */
typedef struct corner_piece {
    gw_travel_job job;
    gw_travel_study part;
    int kit;
    gw_axle axle;
    gw_status status;
    gw_error err;
} corner_piece;

static void work(void *context, int index)
{
    corner_piece *piece = (corner_piece *)context + index;
    piece->job.out = &piece->part;
    piece->status = run_corner(&piece->job, piece->kit, piece->axle, &piece->err);
}

/* In the order of the case: what was found, or the first failure. */
static gw_status gather(corner_piece *pieces, int n, gw_travel_study *out, gw_error *err)
{
    gw_status status = GW_OK;
    for (int i = 0; i < n; i++) {
        gw_travel_study *part = &pieces[i].part;
        if (status == GW_OK && pieces[i].status != GW_OK)
            status = gw_fail(err, pieces[i].status, "%s", pieces[i].err.msg);
        if (status == GW_OK)
            status = gw_run_add_warnings(&out->arena, &out->warning, &out->n_warnings, part->warning,
                                         part->n_warnings, err);
        if (status == GW_OK) {
            memcpy(out->item + out->n, part->item, (size_t)part->n * sizeof *part->item);
            out->n += part->n;
        }
        gw_arena_absorb(&out->arena, &part->arena);
    }
    return status;
}

static gw_status run_all(const gw_run *run, gw_travel_study *out, gw_error *err)
{
    const gw_case *c = run->c;
    size_t corners = (size_t)c->n_kits * GW_AXLES, most = GW_WHEELS * corners * ((size_t)c->n_loads + 1);
    int n = 0;
    corner_piece *pieces = calloc(corners + 1, sizeof *pieces);
    out->item = gw_arena_alloc(&out->arena, most, sizeof *out->item);
    gw_status status = GW_OK;
    if (!pieces || !out->item) {
        status = gw_fail(err, GW_E_NOMEM, "out of memory for results");
        goto done;
    }
    for (int k = 0; k < c->n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            if (!gw_run_wants_kit(run, k) || !gw_run_wants_axle(run, a)) continue;
            corner_piece *piece = &pieces[n++];
            piece->job.run = *run;
            piece->part.plan = out->plan;
            piece->kit = k;
            piece->axle = a;
        }
    gw_parallel(n, work, pieces);
    status = gather(pieces, n, out, err);
done:
    free(pieces);
    return status;
}

/* Without a manoeuvre what the vehicle says of its roll is nobody's business here, right or wrong. */
static gw_status open_run(gw_run *run, const gw_case *c, const gw_selection *wanted, gw_error *err)
{
    bool drives = false;
    for (int l = 0; l < c->n_loads && wanted->loads; l++)
        drives = drives || (wanted->loads[l] && c->loads[l].kind == GW_LOAD_MANOEUVRE);
    return drives ? gw_run_open(run, c, wanted, err) : gw_run_open_on_ramp(run, c, wanted, err);
}

gw_status gw_study_travel(const gw_case *c, const gw_selection *wanted, const gw_travel_plan *plan,
                          gw_travel_study *out, gw_error *err)
{
    gw_travel_study study = { .plan = *plan };
    gw_run run;
    gw_status status = check_plan(plan, err);
    if (status != GW_OK) return status;
    status = open_run(&run, c, wanted, err);
    if (status == GW_OK) status = run_all(&run, &study, err);
    gw_run_close(&run);
    if (status != GW_OK) {
        gw_travel_study_free(&study);
        return status;
    }
    *out = study;
    return GW_OK;
}

void gw_travel_study_free(gw_travel_study *study)
{
    gw_arena_free(&study->arena);
    *study = (gw_travel_study){ 0 };
}

const gw_travel_item *gw_travel_find(const gw_travel_study *study, int kit, gw_axle axle, int load)
{
    for (int i = 0; i < study->n; i++) {
        const gw_travel_item *item = &study->item[i];
        if (item->kit == kit && item->axle == axle && item->load == load) return item;
    }
    return NULL;
}
