/* SPDX-License-Identifier: MIT */
/* Every kit in every corner under every load: where the wheel goes, and by which bush. */
#include "base/parallel.h"
#include "giveway/left_out.h"
#include "giveway/strength.h"
#include "study/opened.h"
#include "study/run.h"

#include <stdlib.h>
#include <string.h>

/* A direct load tells the left wheel, or both; a manoeuvre the one that it names, or both. */
int gw_wheels_told(const gw_case *c, int kit, gw_axle axle, int load)
{
    const gw_load *l = &c->loads[load];
    if (l->kind == GW_LOAD_MANOEUVRE) return l->both ? 2 : 1;
    return l->other != GW_OTHER_SAME || gw_kit_is_lopsided(c, kit, axle) ? 2 : 1;
}

static int count_items(const gw_run *run)
{
    int n = 0;
    for (int k = 0; k < run->c->n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++)
            for (int l = 0; l < run->c->n_loads; l++)
                if (gw_run_wants_kit(run, k) && gw_run_wants_axle(run, a) && gw_run_wants_load(run, l, a))
                    n += gw_wheels_told(run->c, k, a, l);
    return n;
}

/* One kit in one corner: its items lie one after the other from `first`. */
typedef struct gw_corner_job {
    gw_run run; /**< a copy: laws and vehicle are shared, the open corner is its own */
    int kit;
    gw_axle axle;
    gw_deflection *first;
    gw_arena arena; /**< reasons of what failed */
    gw_status status;
    gw_error err;
} gw_corner_job;

/* One kit on the road: the jobs of its corners, whose manoeuvres it fills in. */
typedef struct gw_road_job {
    const gw_corner_job *corner[GW_AXLES]; /**< NULL: not wanted */
    gw_run run;
    gw_opened *opened; /**< where the car stood is noted there */
    gw_arena arena;
    gw_status status;
    gw_error err;
} gw_road_job;

/* The other loads of the run are worth having: this one stands in its place with the reason. */
static gw_status mark_failed(const gw_run *run, gw_side side, gw_deflection *item, const char *why,
                             gw_arena *arena, gw_error *err)
{
    gw_joint_result *joints = item->result.joints;
    const gw_corner_ws *ws =
        run->ws ? run->ws : gw_opened_corner(run->wanted->opened, run->c, run->kit, run->axle, false);
    *item = (gw_deflection){ .kit = run->kit,
                             .axle = run->axle,
                             .load = item->load,
                             .failed = gw_arena_strdup(arena, why),
                             .side = side,
                             .off_centre = gw_kit_is_off_centre(run->c, run->kit, run->axle),
                             .static_camber = gw_corner_static_camber(ws),
                             .result = { .joints = joints } };
    return item->failed ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for results");
}

static gw_status solve_item(gw_run *run, int load, gw_deflection *item, gw_arena *arena, gw_error *err)
{
    const gw_load *l = &run->c->loads[load];
    gw_error inner = { 0 };
    gw_manoeuvre m = l->manoeuvre;
    item->load = load;
    if (l->both) m.side = gw_side_of_wheel(item->wheel);
    gw_status status = l->kind == GW_LOAD_MANOEUVRE ? gw_run_manoeuvre(run, &m, item, &inner)
                                                    : gw_run_direct(run, &l->direct, l->other, item, &inner);
    if (status == GW_E_NUMERIC) return mark_failed(run, m.side, item, inner.msg, arena, err);
    if (status != GW_OK)
        return gw_fail(err, status, "%s: load \"%s\", kit %s: %s", run->c->path, l->name,
                       run->c->kits[run->kit].name, inner.msg);
    return GW_OK;
}

static bool on_road(const gw_run *run, int load)
{
    return run->on_road && run->c->loads[load].kind == GW_LOAD_MANOEUVRE;
}

/* The items of one load of a corner, from `item` on; passed over where they are not `asked` for. */
static gw_status solve_load(gw_run *run, const gw_corner_job *job, int load, bool asked, gw_deflection **item,
                            gw_arena *arena, gw_error *err)
{
    int told =
        gw_run_wants_load(run, load, job->axle) ? gw_wheels_told(run->c, job->kit, job->axle, load) : 0;
    gw_status status = GW_OK;
    for (int w = 0; w < told && status == GW_OK; w++, ++*item)
        if (asked) status = solve_item(run, load, *item, arena, err);
    return status;
}

/* The corner stays open, for its warnings and for the car on the road. */
static void run_corner(void *context, int index)
{
    gw_corner_job *job = &((gw_corner_job *)context)[index];
    gw_run *run = &job->run;
    gw_deflection *item = job->first;
    job->status = gw_run_open_corner(run, job->kit, job->axle, &job->err);
    for (int l = 0; l < run->c->n_loads && job->status == GW_OK; l++)
        job->status = solve_load(run, job, l, !on_road(run, l), &item, &job->arena, &job->err);
}

/* For the studies after this one; of a load without a manoeuvre there is nothing to note. */
static gw_status note_road(gw_road_job *job, int load)
{
    const gw_run *run = &job->run;
    const bool stands = run->drives && gw_same_manoeuvre(&run->driven, &run->c->loads[load].manoeuvre);
    if (!on_road(run, load) || !stands) return GW_OK;
    return gw_opened_note(job->opened, run->road, run->kit, load, &job->arena, &job->err);
}

/* Both axles of a manoeuvre are one equilibrium, so a kit's car is stood up once and driven once a load. */
static void run_road(void *context, int index)
{
    gw_road_job *job = &((gw_road_job *)context)[index];
    gw_run *run = &job->run;
    gw_deflection *item[GW_AXLES] = { NULL };
    for (int a = 0; a < GW_AXLES; a++)
        if (job->corner[a]) item[a] = job->corner[a]->first;
    for (int l = 0; l < run->c->n_loads && job->status == GW_OK; l++) {
        for (int a = 0; a < GW_AXLES && job->status == GW_OK; a++) {
            const gw_corner_job *corner = job->corner[a];
            if (!corner) continue;
            run->kit = corner->kit;
            run->axle = (gw_axle)a;
            job->status = solve_load(run, corner, l, on_road(run, l), &item[a], &job->arena, &job->err);
        }
        if (job->status == GW_OK) job->status = note_road(job, l);
    }
}

/* Memory is taken before the threads start: the arena is not theirs to share. */
static gw_status plan_corner(const gw_run *run, gw_corner_job *job, int kit, gw_axle axle,
                             gw_deflect_study *out, gw_error *err)
{
    size_t joints = (size_t)run->c->corners[axle].n_joints;
    *job = (gw_corner_job){ .run = *run, .kit = kit, .axle = axle, .first = &out->item[out->n] };
    for (int l = 0; l < run->c->n_loads; l++) {
        int told = gw_run_wants_load(run, l, axle) ? gw_wheels_told(run->c, kit, axle, l) : 0;
        for (int w = 0; w < told; w++) {
            gw_deflection *item = &out->item[out->n++];
            item->sided = told == 2 && run->c->loads[l].kind == GW_LOAD_DIRECT;
            item->wheel = (gw_wheel_side)w;
            item->result.joints = gw_arena_alloc(&out->arena, joints, sizeof *item->result.joints);
            if (!item->result.joints) return gw_fail(err, GW_E_NOMEM, "out of memory for results");
        }
    }
    return GW_OK;
}

static gw_status plan_all(const gw_run *run, gw_corner_job *jobs, int *n, gw_deflect_study *out,
                          gw_error *err)
{
    out->item = gw_arena_alloc(&out->arena, (size_t)count_items(run), sizeof *out->item);
    if (!out->item) return gw_fail(err, GW_E_NOMEM, "out of memory for results");
    for (int k = 0; k < run->c->n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            if (!gw_run_wants_kit(run, k) || !gw_run_wants_axle(run, a)) continue;
            gw_status status = plan_corner(run, &jobs[(*n)++], k, a, out, err);
            if (status != GW_OK) return status;
        }
    return GW_OK;
}

/* A kit for one side shows on that side, and a manoeuvre may tell the other. */
static gw_status warn_of_sides(const gw_run *run, gw_deflect_study *out, gw_error *err)
{
    gw_error line;
    if (!gw_leaves_side_untold(run->c, run->kit, run->axle)) return GW_OK;
    gw_fail(&line, GW_OK,
            "%s axle: it fits left and right apart, and a manoeuvre tells its outer wheel, the left one; "
            "\"wheel\": \"both\" in the load tells both",
            gw_axle_name(run->axle));
    return gw_run_warn(run, "", line.msg, &out->arena, &out->warning, &out->n_warnings, err);
}

/* The first failure in the order of the case is the one reported, whichever came first in time. */
static gw_status gather(gw_corner_job *jobs, int n, gw_deflect_study *out, gw_error *err)
{
    gw_status status = GW_OK;
    for (int i = 0; i < n; i++) {
        gw_run *run = &jobs[i].run;
        const int at = jobs[i].kit * GW_AXLES + (int)jobs[i].axle;
        if (status == GW_OK && jobs[i].status != GW_OK)
            status = gw_fail(err, jobs[i].status, "%s", jobs[i].err.msg);
        if (status == GW_OK)
            status = gw_run_corner_warnings(run, "", &out->arena, &out->warning, &out->n_warnings, err);
        if (status == GW_OK) status = warn_of_sides(run, out, err);
        if (status == GW_OK) {
            out->opened->ws[at] = run->ws;
            out->opened->right[at] = run->right;
            run->ws = run->right = NULL;
        }
        gw_run_close_corner(run);
        gw_arena_absorb(&out->arena, &jobs[i].arena);
    }
    return status;
}

static int plan_roads(const gw_run *run, const gw_corner_job *jobs, int n, gw_opened *opened,
                      gw_road_job *out)
{
    int n_roads = 0;
    for (int i = 0; i < n; i++) {
        bool same = n_roads && jobs[i].kit == out[n_roads - 1].run.kit;
        gw_road_job *job = &out[same ? n_roads - 1 : n_roads++];
        if (!same) *job = (gw_road_job){ .run = *run, .opened = opened };
        job->run.kit = jobs[i].kit;
        job->corner[jobs[i].axle] = &jobs[i];
    }
    return n_roads;
}

/* Manoeuvres of the whole car, with its axles as the corners' jobs have opened them. */
static gw_status run_roads(const gw_run *run, const gw_corner_job *jobs, int n, gw_deflect_study *out,
                           gw_error *err)
{
    gw_status status = GW_OK;
    gw_run with = *run;
    gw_selection wanted = *run->wanted;
    gw_road_job *road = calloc((size_t)n + 1, sizeof *road);
    if (!road) return gw_fail(err, GW_E_NOMEM, "out of memory for results");
    wanted.opened = out->opened;
    with.wanted = &wanted;
    int n_roads = plan_roads(&with, jobs, n, out->opened, road);
    gw_parallel(n_roads, run_road, road);
    for (int i = 0; i < n_roads; i++) {
        if (status == GW_OK && road[i].status != GW_OK)
            status = gw_fail(err, road[i].status, "%s", road[i].err.msg);
        out->opened->road[road[i].run.kit] = road[i].run.road;
        road[i].run.road = NULL;
        gw_run_close_corner(&road[i].run);
        gw_arena_absorb(&out->arena, &road[i].arena);
    }
    free(road);
    return status;
}

static gw_status add_strength(const gw_case *c, gw_deflect_study *out, gw_error *err)
{
    for (int i = 0; i < out->n; i++) {
        gw_deflection *item = &out->item[i];
        int n = c->corners[item->axle].n_joints;
        gw_strength *strength = gw_arena_alloc(&out->arena, (size_t)n, sizeof *strength);
        if (!strength) return gw_fail(err, GW_E_NOMEM, "out of memory for strength");
        for (int j = 0; j < n && !item->failed; j++) strength[j] = gw_strength_of(c, item, j);
        item->strength = strength;
    }
    return GW_OK;
}

static gw_status run_all(const gw_run *run, gw_deflect_study *out, gw_error *err)
{
    int n = 0;
    gw_corner_job *jobs = calloc((size_t)run->c->n_kits * GW_AXLES + 1, sizeof *jobs);
    if (!jobs) return gw_fail(err, GW_E_NOMEM, "out of memory for results");
    gw_status status = plan_all(run, jobs, &n, out, err);
    if (status == GW_OK && !(out->opened = gw_opened_make(run->c)))
        status = gw_fail(err, GW_E_NOMEM, "out of memory for results");
    if (status == GW_OK) {
        gw_parallel(n, run_corner, jobs);
        status = gather(jobs, n, out, err);
    }
    if (status == GW_OK && run->on_road) status = run_roads(run, jobs, n, out, err);
    for (int i = 0; status == GW_OK && i < out->n; i++) out->n_failed += out->item[i].failed != NULL;
    if (status == GW_OK) status = add_strength(run->c, out, err);
    if (status == GW_OK) status = gw_run_beyond(run, out, err);
    memcpy(out->roll_centre, run->vehicle.roll_centre, sizeof out->roll_centre);
    free(jobs);
    return status;
}

/* Without a manoeuvre what the vehicle says of its roll is nobody's business, right or wrong. */
static bool drives(const gw_case *c, const gw_selection *wanted)
{
    bool any = false;
    for (int l = 0; l < c->n_loads; l++)
        any = any || (c->loads[l].kind == GW_LOAD_MANOEUVRE && (!wanted->loads || wanted->loads[l]));
    return any;
}

gw_status gw_study_deflect(const gw_case *c, const gw_selection *wanted, gw_deflect_study *out, gw_error *err)
{
    gw_deflect_study study = { 0 };
    gw_run run;
    gw_status status =
        drives(c, wanted) ? gw_run_open(&run, c, wanted, err) : gw_run_open_on_ramp(&run, c, wanted, err);
    if (status == GW_OK) status = run_all(&run, &study, err);
    gw_run_close(&run);
    if (status != GW_OK) {
        gw_deflect_study_free(&study);
        return status;
    }
    *out = study;
    return GW_OK;
}

void gw_deflect_study_free(gw_deflect_study *study)
{
    gw_opened_free(study->opened);
    gw_arena_free(&study->arena);
    *study = (gw_deflect_study){ 0 };
}

bool gw_deflect_failed_before(const gw_deflect_study *study, int item)
{
    const gw_deflection *it = &study->item[item];
    for (int i = 0; it->failed && i < item; i++) {
        const gw_deflection *known = &study->item[i];
        if (known->failed && known->kit == it->kit && known->load == it->load &&
            strcmp(known->failed, it->failed) == 0)
            return true;
    }
    return false;
}

const gw_deflection *gw_deflect_find(const gw_deflect_study *study, int kit, gw_axle axle, int load)
{
    for (int i = 0; i < study->n; i++) {
        const gw_deflection *item = &study->item[i];
        if (item->kit == kit && item->axle == axle && item->load == load) return item->failed ? NULL : item;
    }
    return NULL;
}
