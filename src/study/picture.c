/* SPDX-License-Identifier: MIT */
#include "giveway/picture.h"

#include "base/parallel.h"
#include "giveway/casefile.h"
#include "giveway/corner_travel.h"
#include "study/opened.h"

#include <math.h>
#include <stdlib.h>

/* One kit on one axle. */
typedef struct gw_picture_job {
    const gw_case *c;
    const gw_laws *laws;
    const gw_deflect_study *deflect;
    const gw_grid_study *grid;
    const gw_grid *states; /* NULL: none */
    const gw_vec3 *mark;
    gw_axle_pictures *out;
    gw_corner_ws *ws;
    gw_state state, rest;
    bool near;               /* the next state starts from them */
    gw_corner_result result; /* its joints are where what is solved is put, and not kept */
    gw_status status;
    gw_error err;
} gw_picture_job;

/* A pose counts from the wheel centre of the left wheel in the design position. */
static gw_vec3 place(const gw_corner *pair, const gw_state *state, int body, gw_vec3 at)
{
    gw_vec3 datum = pair->wheel.centre;
    const gw_pose *pose = &state->pose[body];
    return gw_add(gw_add(gw_mul(&pose->r, gw_sub(at, datum)), pose->p), datum);
}

static gw_part_move move_of(const gw_picture_job *job, const gw_state *from, const gw_state *state, int body)
{
    const gw_corner *pair = gw_corner_of(job->ws);
    gw_mat3 turn = gw_matmul_nt(&state->pose[body].r, &from->pose[body].r);
    gw_vec3 mark = job->mark[body];
    return (gw_part_move){ gw_sub(place(pair, state, body, mark), place(pair, from, body, mark)),
                           gw_rot_log(&turn) };
}

static void put_moves(const gw_picture_job *job, const gw_state *from, const gw_state *state,
                      gw_part_move *out)
{
    for (int b = GW_UPRIGHT; b < gw_corner_of(job->ws)->n_bodies; b++) out[b] = move_of(job, from, state, b);
}

static double size(const double v[3])
{
    return sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
}

/* An axle that stands as somebody has found it: on the road, or, without one, on the ramp. */
typedef struct gw_stands {
    const gw_road *road;
    const gw_state *state;
} gw_stands;

static void report(gw_picture_job *job, const gw_stands *at, gw_wheel_side side)
{
    if (at->road)
        gw_road_report_kept(at->road, job->out->axle, side, at->state, &job->result);
    else
        gw_corner_report_of(job->ws, at->state, side, &job->result);
}

/* What ties the left to the right, as a bar's middle does, is told as the left wheel's, as in its results. */
static gw_wheel_side side_of(const gw_corner *pair, int joint)
{
    const gw_wheel_side a = gw_body_side(pair, pair->joints[joint].body_a);
    const gw_wheel_side b = gw_body_side(pair, pair->joints[joint].body_b);
    if (a == GW_WHEELS || b == GW_WHEELS) return b == GW_WHEELS ? a : b;
    return a == b ? a : GW_LEFT_WHEEL;
}

/* Each joint's share of what the wheel on its own side does. */
static void put_joints(gw_picture_job *job, const gw_stands *at, gw_picture *out)
{
    const gw_corner *pair = gw_corner_of(job->ws);
    for (int w = 0; w < GW_WHEELS; w++) {
        report(job, at, (gw_wheel_side)w);
        out->toe[w] = job->result.toe;
        out->camber[w] = job->result.camber;
        for (int j = 0; j < pair->n_joints; j++) {
            const gw_wheel_side side = side_of(pair, j);
            if ((side == GW_RIGHT_WHEEL) != (w == GW_RIGHT_WHEEL)) continue;
            out->toe_share[j] = job->result.joints[j].toe_share;
            out->given[j] = size(job->result.joints[j].u);
        }
    }
}

/* What the wheels' heights alone do: there, with no load but the weight that the wheels carry standing. */
static gw_status at_height(gw_picture_job *job, const gw_corner_load load[GW_WHEELS], gw_picture *out)
{
    gw_corner_load bare[GW_WHEELS] = { 0 };
    for (int w = 0; w < GW_WHEELS; w++) {
        bare[w].patch_force.z = gw_corner_of(job->ws)->wheel.static_load;
        bare[w].travel = load[w].travel;
    }
    gw_status status =
        gw_axle_solve_near(job->ws, bare, GW_AT_TRAVEL, job->near ? &job->rest : NULL, &job->rest, NULL);
    if (status == GW_OK) put_moves(job, gw_corner_reference(job->ws), &job->rest, out->by_travel);
    return status;
}

static void draw(gw_picture_job *job, const gw_stands *at, const gw_corner_load load[GW_WHEELS],
                 gw_picture *out)
{
    const gw_state *start =
        at->road ? gw_road_axle_start(at->road, job->out->axle) : gw_corner_reference(job->ws);
    if (at_height(job, load, out) != GW_OK) return;
    put_moves(job, start, at->state, out->moved);
    put_joints(job, at, out);
    out->solved = true;
}

/* On the ramp, under the loads and at the heights that a study has found. */
static void solve(gw_picture_job *job, const gw_corner_load load[GW_WHEELS], gw_picture *out)
{
    const gw_stands at = { NULL, &job->state };
    gw_status status =
        gw_axle_solve_near(job->ws, load, GW_AT_TRAVEL, job->near ? &job->state : NULL, &job->state, NULL);
    if (status == GW_OK) draw(job, &at, load, out);
}

/* How the body stands: it comes down as far as its wheels go up, and as far as its tyres give. */
static void stand_body(const gw_picture_job *job, double roll, const gw_corner_load both[GW_WHEELS],
                       bool on_road, gw_picture *out)
{
    const gw_wheel *wheel = &gw_corner_of(job->ws)->wheel;
    double travel = 0.5 * (both[GW_LEFT_WHEEL].travel + both[GW_RIGHT_WHEEL].travel);
    double load = 0.5 * (both[GW_LEFT_WHEEL].patch_force.z + both[GW_RIGHT_WHEEL].patch_force.z);
    out->roll = roll;
    out->rise = -travel - (on_road ? (load - wheel->static_load) / wheel->tyre_vertical : 0.0);
}

static void solve_load(gw_picture_job *job, int load)
{
    const gw_load *l = &job->c->loads[load];
    const gw_opened *opened = job->deflect->opened;
    const gw_deflection *item = gw_deflect_find(job->deflect, job->out->kit, job->out->axle, load);
    gw_picture *out = &job->out->load[load];
    gw_corner_load both[GW_WHEELS];
    if (!item) return;
    if (l->kind == GW_LOAD_DIRECT)
        gw_axle_loads(gw_corner_of(job->ws), &l->direct, l->other, both);
    else {
        both[item->wheel] = item->applied;
        both[gw_wheel_beside(item->wheel)] = item->beside;
    }
    const gw_road_mark *mark =
        item->on_road ? gw_opened_mark(opened, job->c, job->out->kit, &l->manoeuvre) : NULL;
    if (mark)
        draw(job, &(gw_stands){ opened->road[job->out->kit], &mark->state[job->out->axle] }, both, out);
    else
        solve(job, both, out);
    stand_body(job, item->manoeuvre ? item->roll : 0.0, both, item->on_road, out);
}

static void note_axle(gw_picture_job *job)
{
    for (int w = 0; w < GW_WHEELS; w++)
        job->out->static_camber[w] = gw_corner_static_camber_of(job->ws, (gw_wheel_side)w);
    gw_roll_rates rates;
    bool found = gw_axle_roll_rates(job->ws, &rates, NULL) == GW_OK;
    job->out->roll_centre =
        found ? 0.5 * (rates.centre[GW_LEFT_WHEEL] + rates.centre[GW_RIGHT_WHEEL]) : (double)NAN;
}

/* Each from the one before, with more cornering; the first of a row from standing still. */
static void solve_state(gw_picture_job *job, const gw_picture_study *study, int i)
{
    int row = GW_PICTURE_STEP * (i / study->n_lateral), column = GW_PICTURE_STEP * (i % study->n_lateral);
    const int at = row * job->grid->plan.n_lateral + column;
    const gw_grid_state *s = &job->states->state[at];
    const gw_corner_load outer = job->grid->plan.side == GW_OUTER ? s->applied : s->beside;
    const gw_corner_load inner = job->grid->plan.side == GW_OUTER ? s->beside : s->applied;
    const gw_corner_load both[GW_WHEELS] = { outer, inner };
    const gw_stands stands = { job->grid->road[job->out->kit], &job->states->kept[at] };
    gw_picture *out = &job->out->state[i];
    job->near = column > 0 && job->out->state[i - 1].solved;
    if (!s->solved) return;
    if (stands.road && stands.state->pose)
        draw(job, &stands, both, out);
    else
        solve(job, both, out);
    stand_body(job, s->roll, both, gw_case_on_road(job->c), out);
}

typedef struct gw_picture_work {
    gw_picture_study *study;
    gw_picture_job *job;
} gw_picture_work;

static void run_axle(void *context, int index)
{
    const gw_picture_work *work = context;
    gw_picture_job *job = &work->job[index];
    const gw_corner *pair = &job->c->pairs[job->out->axle];
    const gw_corner_ws *like = gw_opened_pair(job->deflect->opened, job->c, job->out->kit, job->out->axle);
    gw_fit *fit = calloc(GW_MAX_JOINTS, sizeof *fit);
    gw_joint_result *joints = calloc(GW_MAX_JOINTS, sizeof *joints);
    job->status = fit && joints ? GW_OK : gw_fail(&job->err, GW_E_NOMEM, "out of memory for pictures");
    if (fit) gw_fit_pair(job->c, job->laws, job->out->kit, job->out->axle, fit);
    if (job->status == GW_OK) job->status = gw_corner_open_like(pair, fit, like, &job->ws, &job->err);
    if (job->status == GW_OK) job->status = gw_state_alloc(pair, &job->state, &job->err);
    if (job->status == GW_OK) job->status = gw_state_alloc(pair, &job->rest, &job->err);
    job->result.joints = joints;
    if (job->status == GW_OK) note_axle(job);
    for (int l = 0; l < job->c->n_loads && job->status == GW_OK; l++) solve_load(job, l);
    for (int i = 0; job->states && i < work->study->n_brake * work->study->n_lateral && job->status == GW_OK;
         i++)
        solve_state(job, work->study, i);
    gw_state_free(&job->state);
    gw_state_free(&job->rest);
    gw_corner_close(job->ws);
    free(fit);
    free(joints);
}

/* ---- memory, taken before the threads start ---- */

static bool get_picture(gw_arena *arena, const gw_corner *pair, gw_picture *out)
{
    out->by_travel = gw_arena_alloc(arena, (size_t)pair->n_bodies, sizeof *out->by_travel);
    out->moved = gw_arena_alloc(arena, (size_t)pair->n_bodies, sizeof *out->moved);
    out->toe_share = gw_arena_alloc(arena, (size_t)pair->n_joints, sizeof *out->toe_share);
    out->given = gw_arena_alloc(arena, (size_t)pair->n_joints, sizeof *out->given);
    return out->by_travel && out->moved && out->toe_share && out->given;
}

static gw_picture *get_pictures(gw_arena *arena, const gw_corner *pair, int n)
{
    gw_picture *list = gw_arena_alloc(arena, (size_t)n + 1, sizeof *list);
    for (int i = 0; i < n && list; i++)
        if (!get_picture(arena, pair, &list[i])) return NULL;
    return list;
}

/* A wheel's carrier is marked at the wheel's centre, any other part in the middle of its joints. */
static gw_vec3 *marks(gw_arena *arena, const gw_corner *pair)
{
    gw_vec3 *mark = gw_arena_alloc(arena, (size_t)pair->n_bodies, sizeof *mark), centre = pair->wheel.centre;
    for (int b = GW_UPRIGHT; mark && b < pair->n_bodies; b++) {
        int n = 0;
        for (int j = 0; j < pair->n_joints; j++) {
            if (pair->joints[j].body_a != b && pair->joints[j].body_b != b) continue;
            mark[b] = gw_add(mark[b], pair->joints[j].at);
            n++;
        }
        if (n) mark[b] = gw_scale(1.0 / n, mark[b]);
    }
    if (mark) mark[GW_UPRIGHT] = centre;
    if (mark) mark[pair->right_upright] = gw_v3(centre.x, -centre.y, centre.z);
    return mark;
}

static bool kit_is_there(const gw_deflect_study *deflect, int kit, gw_axle axle)
{
    for (int i = 0; i < deflect->n; i++)
        if (deflect->item[i].kit == kit && deflect->item[i].axle == axle) return true;
    return false;
}

static bool get_axle(gw_picture_study *study, gw_picture_job *job)
{
    const gw_corner *pair = &job->c->pairs[job->out->axle];
    if (!study->mark[job->out->axle]) study->mark[job->out->axle] = marks(&study->arena, pair);
    job->mark = study->mark[job->out->axle];
    job->out->load = get_pictures(&study->arena, pair, job->c->n_loads);
    if (job->states) job->out->state = get_pictures(&study->arena, pair, study->n_brake * study->n_lateral);
    return job->mark && job->out->load && (job->out->state || !job->states);
}

static gw_status plan(const gw_picture_job *of, gw_picture_study *study, gw_picture_job *jobs, gw_error *err)
{
    for (int k = 0; k < of->c->n_kits; k++)
        for (gw_axle a = GW_FRONT; a < GW_AXLES; a++) {
            if (!kit_is_there(of->deflect, k, a)) continue;
            gw_picture_job *job = &jobs[study->n];
            *job = *of;
            job->out = &study->item[study->n++];
            *job->out = (gw_axle_pictures){ .kit = k, .axle = a };
            job->states = gw_grid_find(of->grid, k, a);
            if (!get_axle(study, job)) return gw_fail(err, GW_E_NOMEM, "out of memory for pictures");
        }
    return GW_OK;
}

static gw_status run_all(const gw_picture_job *of, gw_picture_study *study, gw_error *err)
{
    size_t most = (size_t)of->c->n_kits * GW_AXLES;
    gw_picture_job *jobs = calloc(most, sizeof *jobs);
    study->item = gw_arena_alloc(&study->arena, most, sizeof *study->item);
    gw_status status = jobs && study->item ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for pictures");
    if (status == GW_OK) status = plan(of, study, jobs, err);
    gw_picture_work work = { study, jobs };
    if (status == GW_OK) gw_parallel(study->n, run_axle, &work);
    for (int i = 0; i < study->n && status == GW_OK; i++)
        if (jobs[i].status != GW_OK) status = gw_fail(err, jobs[i].status, "%s", jobs[i].err.msg);
    free(jobs);
    return status;
}

gw_status gw_study_pictures(const gw_case *c, const gw_laws *laws, const gw_deflect_study *deflect,
                            const gw_grid_study *grid, gw_picture_study *out, gw_error *err)
{
    gw_picture_study study = { 0 };
    const gw_picture_job of = { .c = c, .laws = laws, .deflect = deflect, .grid = grid };
    if (grid->n) {
        study.n_brake = (grid->plan.n_brake - 1) / GW_PICTURE_STEP + 1;
        study.n_lateral = (grid->plan.n_lateral - 1) / GW_PICTURE_STEP + 1;
    }
    gw_status status = run_all(&of, &study, err);
    if (status == GW_OK)
        *out = study;
    else
        gw_picture_study_free(&study);
    return status;
}

void gw_picture_study_free(gw_picture_study *study)
{
    gw_arena_free(&study->arena);
    *study = (gw_picture_study){ 0 };
}

const gw_axle_pictures *gw_pictures_find(const gw_picture_study *study, int kit, gw_axle axle)
{
    for (int i = 0; i < study->n; i++)
        if (study->item[i].kit == kit && study->item[i].axle == axle) return &study->item[i];
    return NULL;
}
