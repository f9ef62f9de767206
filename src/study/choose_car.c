/* SPDX-License-Identifier: MIT */
/*
 * Every combination of the car in its own equilibrium. The axle with fewer kits is the inner one: its kits
 * are opened once and held ready. A first row, the outer axle's first kit with every inner one, is solved kit
 * by kit; every other car starts from where two that are known lead: what the inner kit did there, put on top
 * of what its own outer axle did with the first inner kit.
 */
#include "base/parallel.h"
#include "study/choose_parts.h"

#include <math.h>
#include <stdlib.h>

enum { ROW_BLOCK = 4, OUTER_BLOCKS = 512 };
static const double MOST_ROOM = 100e6; /* of the first row [byte] */

/* S0, then each manoeuvre. */
typedef struct gw_car_marks {
    gw_arena arena;
    bool known;
    gw_road_mark *at;
} gw_car_marks;

typedef struct gw_road_work {
    gw_planner *p;
    gw_axle outer, inner;
    int n_outer, n_inner;
    gw_corner_ws **ready; /* [inner kit]; NULL: it does not stand */
    gw_car_marks *row;    /* [inner kit] with the first outer kit; NULL: too many */
    gw_status *status;    /* [block] */
    gw_error *err;
    int outers_a_block;
} gw_road_work;

static int marks(const gw_planner *p)
{
    return 1 + p->n_drives;
}

static gw_status marks_make(const gw_planner *p, const gw_road *road, gw_car_marks *out, gw_error *err)
{
    out->at = gw_arena_alloc(&out->arena, (size_t)marks(p), sizeof *out->at);
    if (!out->at) return gw_fail(err, GW_E_NOMEM, "out of memory for cars");
    gw_status status = GW_OK;
    for (int i = 0; i < marks(p) && status == GW_OK; i++)
        status = gw_road_mark_make(road, &out->arena, &out->at[i], err);
    return status;
}

static gw_status frame(const gw_planner *p, gw_road **out, gw_error *err)
{
    const gw_road_part part[GW_AXLES] = { { &p->c->pairs[GW_FRONT], NULL, p->run.made_up[GW_FRONT], NULL },
                                          { &p->c->pairs[GW_REAR], NULL, p->run.made_up[GW_REAR], NULL } };
    return gw_road_frame(&p->run.vehicle, part, out, err);
}

/* Figures of the manoeuvre that was solved last. */
static void read_drive(const gw_planner *p, const gw_road *road, int drive, double *value)
{
    for (int f = 0; f < p->out->n_figures; f++) {
        const gw_chosen_figure *figure = &p->out->figure[f];
        gw_road_result r = { 0 };
        if (p->drive_of[f] != drive) continue;
        gw_road_attitude(road, figure->axle, figure->wheel, &r);
        value[f] = gw_figure_value(&r.wheel, r.camber_to_road, figure->figure);
    }
}

/* Stands and drives the car that is fitted, from `guess`, and marks where it was. Both may be NULL. */
static gw_status drive(const gw_planner *p, gw_road *road, const gw_car_marks *guess, gw_car_marks *mark,
                       double *value, gw_error *err)
{
    gw_status status = gw_road_stand_near(road, guess ? &guess->at[0] : NULL, err);
    if (status == GW_OK && mark) gw_road_mark_take(road, true, &mark->at[0]);
    for (int d = 0; d < p->n_drives && status == GW_OK; d++) {
        status = gw_road_solve_near(road, &p->drive[d], guess ? &guess->at[1 + d] : NULL, err);
        if (status != GW_OK) break;
        if (mark) gw_road_mark_take(road, false, &mark->at[1 + d]);
        read_drive(p, road, d, value);
    }
    return status;
}

gw_status gw_kit_on_road(const gw_planner *p, gw_bench_kit *kit, gw_road **road, double *value, gw_error *err)
{
    gw_status status = GW_OK;
    if (!p->on_road) return GW_OK;
    if (!*road) status = frame(p, road, err);
    for (int a = 0; a < GW_AXLES && status == GW_OK; a++) {
        gw_corner_close(kit->pair[a]);
        kit->pair[a] = NULL;
        status = gw_kit_pair(p, kit, (gw_axle)a, &kit->pair[a], err);
        if (status == GW_OK) gw_road_refit(*road, (gw_axle)a, kit->pair[a]);
    }
    return status == GW_OK ? drive(p, *road, NULL, NULL, value, err) : status;
}

static int number_of(const gw_road_work *w, int outer, int inner)
{
    return w->p->axle[w->outer].part[outer] + w->p->axle[w->inner].part[inner];
}

/* What both axles decide alone and the whole car together; NAN: a load is not carried. */
static void note(gw_road_work *w, int outer, int inner, gw_status status, const double *value)
{
    const gw_planner *p = w->p;
    double sum = p->axle[w->outer].unsteady[outer] + p->axle[w->inner].unsteady[inner];
    for (int f = 0; f < p->out->n_figures; f++)
        if (p->drive_of[f] >= 0) sum += gw_unsteady_part(&p->out->figure[f], value[f]);
    p->unsteadiness[number_of(w, outer, inner)] = status == GW_OK ? sqrt(sum / p->weights) : (double)NAN;
}

/* -- what is fitted on the outer axle -- */

static gw_status open_outer(gw_road_work *w, gw_bench_kit *kit, int outer, gw_road *road, gw_error *err)
{
    gw_corner_close(kit->pair[w->outer]);
    kit->pair[w->outer] = NULL;
    gw_kit_options(w->p, w->outer, outer, kit->option);
    gw_bench_kit_fit(w->p, kit);
    gw_status status = gw_kit_pair(w->p, kit, w->outer, &kit->pair[w->outer], err);
    if (status == GW_OK) gw_road_refit(road, w->outer, kit->pair[w->outer]);
    return status;
}

/* -- inner kits, held ready -- */

static void ready_block(void *context, int index)
{
    gw_road_work *w = context;
    gw_bench_kit *kit = NULL;
    gw_status status = gw_bench_kit_open(w->p, &kit, &w->err[index]);
    for (int i = ROW_BLOCK * index; i < ROW_BLOCK * (index + 1) && i < w->n_inner && !gw_is_serious(status);
         i++) {
        for (int c = 0; c < gw_choices(w->p); c++) kit->option[c] = -1;
        gw_kit_options(w->p, w->inner, i, kit->option);
        gw_bench_kit_fit(w->p, kit);
        status = gw_kit_pair(w->p, kit, w->inner, &w->ready[i], &w->err[index]);
    }
    w->status[index] = gw_is_serious(status) ? status : GW_OK;
    gw_bench_kit_close(kit);
}

/* -- the first row -- */

static void row_kits(gw_road_work *w, int index, gw_bench_kit *kit, gw_road *road, double *value,
                     gw_status *status)
{
    const gw_car_marks *last = NULL;
    gw_status outer = open_outer(w, kit, 0, road, &w->err[index]);
    for (int i = ROW_BLOCK * index; i < ROW_BLOCK * (index + 1) && i < w->n_inner; i++) {
        gw_status carried = w->ready[i] ? outer : GW_E_NUMERIC;
        if (carried == GW_OK) {
            gw_road_refit(road, w->inner, w->ready[i]);
            *status = marks_make(w->p, road, &w->row[i], &w->err[index]);
            if (*status != GW_OK) return;
            carried = drive(w->p, road, last, &w->row[i], value, &w->err[index]);
        }
        if (gw_is_serious(carried)) *status = carried;
        if (*status != GW_OK) return;
        note(w, 0, i, carried, value);
        w->row[i].known = carried == GW_OK;
        if (w->row[i].known) last = &w->row[i];
    }
}

static void row_block(void *context, int index)
{
    gw_road_work *w = context;
    gw_bench_kit *kit = NULL;
    gw_road *road = NULL;
    double *value = calloc((size_t)w->p->out->n_figures, sizeof *value);
    gw_status status = gw_bench_kit_open(w->p, &kit, &w->err[index]);
    if (status == GW_OK) status = frame(w->p, &road, &w->err[index]);
    if (!value) status = gw_fail(&w->err[index], GW_E_NOMEM, "out of memory for figures");
    if (status == GW_OK) row_kits(w, index, kit, road, value, &status);
    w->status[index] = status;
    free(value);
    gw_road_close(road);
    gw_bench_kit_close(kit);
}

/* -- all other rows -- */

/* What one thread has for its rows. */
typedef struct gw_car_bench {
    gw_bench_kit *kit;
    gw_road *road;
    double *value;
    gw_car_marks own, guess;
    bool own_known;
} gw_car_bench;

static const gw_car_marks *guess_of(const gw_road_work *w, gw_car_bench *b, int inner)
{
    if (!w->row[inner].known || !w->row[0].known) return NULL;
    if (inner == 0) return b->own_known ? &b->own : &w->row[0];
    if (!b->own_known) return NULL;
    for (int i = 0; i < marks(w->p); i++)
        gw_road_mark_lead(b->road, &b->own.at[i], &w->row[inner].at[i], &w->row[0].at[i], &b->guess.at[i]);
    return &b->guess;
}

static gw_status do_row(gw_road_work *w, gw_car_bench *b, int outer, gw_error *err)
{
    gw_status opened = open_outer(w, b->kit, outer, b->road, err);
    if (gw_is_serious(opened)) return opened;
    for (int i = 0; i < w->n_inner; i++) {
        gw_status carried = w->ready[i] ? opened : GW_E_NUMERIC;
        if (carried == GW_OK) {
            const gw_car_marks *guess = guess_of(w, b, i);
            gw_road_refit(b->road, w->inner, w->ready[i]);
            carried = drive(w->p, b->road, guess, i == 0 ? &b->own : NULL, b->value, err);
            if (i == 0) b->own_known = carried == GW_OK;
        }
        if (gw_is_serious(carried)) return carried;
        note(w, outer, i, carried, b->value);
    }
    return GW_OK;
}

static gw_status bench_open(gw_road_work *w, gw_car_bench *b, gw_error *err)
{
    gw_status status = gw_bench_kit_open(w->p, &b->kit, err);
    if (status == GW_OK) status = frame(w->p, &b->road, err);
    if (status == GW_OK) status = marks_make(w->p, b->road, &b->own, err);
    if (status == GW_OK) status = marks_make(w->p, b->road, &b->guess, err);
    b->value = calloc((size_t)w->p->out->n_figures, sizeof *b->value);
    return b->value || status != GW_OK ? status : gw_fail(err, GW_E_NOMEM, "out of memory for figures");
}

static void bench_close(gw_car_bench *b)
{
    gw_arena_free(&b->own.arena);
    gw_arena_free(&b->guess.arena);
    free(b->value);
    gw_road_close(b->road);
    gw_bench_kit_close(b->kit);
}

static void outer_block(void *context, int index)
{
    gw_road_work *w = context;
    gw_car_bench b = { 0 };
    int first = 1 + index * w->outers_a_block;
    if (!gw_plan_goes_on(w->p, 0)) return;
    gw_status status = bench_open(w, &b, &w->err[index]);
    for (int o = first; o < first + w->outers_a_block && o < w->n_outer && status == GW_OK; o++) {
        status = do_row(w, &b, o, &w->err[index]);
        if (!gw_plan_goes_on(w->p, w->n_inner)) break;
    }
    w->status[index] = status;
    bench_close(&b);
}

/* The first failure in the order of the work; none where all went well. */
static gw_status run(gw_road_work *w, int n, void (*work)(void *, int), gw_error *err)
{
    gw_status status = GW_OK;
    w->status = calloc((size_t)n + 1, sizeof *w->status);
    w->err = calloc((size_t)n + 1, sizeof *w->err);
    if (!w->status || !w->err) status = gw_fail(err, GW_E_NOMEM, "out of memory for cars");
    if (status == GW_OK) gw_parallel(n, work, w);
    for (int i = 0; i < n && status == GW_OK; i++)
        if (w->status[i] != GW_OK) status = gw_fail(err, w->status[i], "%s", w->err[i].msg);
    free(w->status);
    free(w->err);
    return status;
}

static gw_status make_room(gw_road_work *w, gw_error *err)
{
    double bodies = 0.0;
    for (int a = 0; a < GW_AXLES; a++) bodies += w->p->c->pairs[a].n_bodies;
    if (bodies * (double)sizeof(gw_pose) * marks(w->p) * w->n_inner > MOST_ROOM)
        return gw_fail(
            err, GW_E_RANGE,
            "%s: choose.goals: so many manoeuvres of %d combinations are more than memory is taken for: "
            "ask for fewer loads",
            w->p->c->path, w->p->out->combinations);
    w->ready = calloc((size_t)w->n_inner, sizeof(gw_corner_ws *));
    w->row = calloc((size_t)w->n_inner, sizeof *w->row);
    return w->ready && w->row ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for cars");
}

static void free_room(gw_road_work *w)
{
    for (int i = 0; i < w->n_inner; i++) {
        if (w->ready) gw_corner_close(w->ready[i]);
        if (w->row) gw_arena_free(&w->row[i].arena);
    }
    free(w->ready);
    free(w->row);
}

static gw_status all_rows(gw_road_work *w, gw_error *err)
{
    int blocks = (w->n_inner + ROW_BLOCK - 1) / ROW_BLOCK;
    gw_status status = make_room(w, err);
    if (status == GW_OK) status = run(w, blocks, ready_block, err);
    if (status == GW_OK) status = run(w, blocks, row_block, err);
    if (status != GW_OK) return status;
    gw_plan_goes_on(w->p, w->n_inner);
    w->outers_a_block = (w->n_outer + OUTER_BLOCKS - 1) / OUTER_BLOCKS;
    return run(w, (w->n_outer - 1 + w->outers_a_block - 1) / w->outers_a_block, outer_block, err);
}

/* Without a figure of the whole car every axle stands for itself. */
static void add_axles(gw_planner *p)
{
    for (int f = 0; f < p->axle[GW_FRONT].n; f++)
        for (int r = 0; r < p->axle[GW_REAR].n; r++) {
            double sum = p->axle[GW_FRONT].unsteady[f] + p->axle[GW_REAR].unsteady[r];
            p->unsteadiness[p->axle[GW_FRONT].part[f] + p->axle[GW_REAR].part[r]] = sqrt(sum / p->weights);
        }
}

gw_status gw_work_cars(gw_planner *p, gw_error *err)
{
    bool rear_inside = p->axle[GW_REAR].n <= p->axle[GW_FRONT].n;
    gw_road_work w = { .p = p,
                       .outer = rear_inside ? GW_FRONT : GW_REAR,
                       .inner = rear_inside ? GW_REAR : GW_FRONT };
    w.n_outer = p->axle[w.outer].n;
    w.n_inner = p->axle[w.inner].n;
    if (!p->on_road) {
        add_axles(p);
        return GW_OK;
    }
    gw_status status = all_rows(&w, err);
    free_room(&w);
    return status;
}
