/* SPDX-License-Identifier: MIT */
/* The cars of a spread, in pieces on all processors: the nominal one, two for each slope, and the draws. */
#include "base/parallel.h"
#include "study/spread_parts.h"

#include <math.h>
#include <stdatomic.h>
#include <stdlib.h>
#include <string.h>

/* Of z, for central differences: the error of the third derivative is below 1e-5 of a slope, rounding far
 * lower. */
static const double STEP = 0.01;
/* The same by one step of Newton's iteration with the matrix of the case as written: an error of the order of
 * the step, below 1e-4 of a slope, while rounding is still far lower; and a stop that is nearly reached is
 * not. */
static const double NUDGE = 1e-6;
enum { PIECE = 16 };

typedef struct gw_spread_job {
    const gw_draws *draws;
    const gw_spread_options *options;
    gw_spread_table *table;
    gw_drawn nominal;   /**< the case as written: every other car is looked for from it */
    gw_car_guide guide; /**< its states                                                  */
    gw_car_lead lead;   /**< what figures do to them; of draws alone                     */
    double *by_roll_centre[GW_AXLES];
    atomic_long done;
    atomic_bool out_of_memory;
    atomic_flag telling;
} gw_spread_job;

/* What one thread has of its own. */
typedef struct gw_spread_bench {
    gw_drawer *drawer;
    gw_car_guide led; /**< states that a draw is looked for from; of draws alone */
    double *z, *by;   /**< [figure]                                              */
    double *rows;     /**< two of them                                           */
} gw_spread_bench;

static gw_status open_bench(const gw_spread_job *job, gw_spread_bench *out)
{
    const gw_spread_table *t = job->table;
    const size_t n = (size_t)t->n_all, columns = (size_t)t->plan.n_columns;
    *out = (gw_spread_bench){ .z = malloc((n + 1) * sizeof(double)),
                              .by = malloc((n + 1) * sizeof(double)),
                              .rows = malloc((2 * columns + 1) * sizeof(double)) };
    if (!out->z || !out->by || !out->rows) return GW_E_NOMEM;
    gw_status status = gw_drawer_open(t->plan.c, &out->drawer, NULL);
    return status == GW_OK && t->draws ? gw_car_led_open(&job->lead, &out->led, NULL) : status;
}

static void close_bench(gw_spread_bench *bench)
{
    gw_drawer_close(bench->drawer);
    gw_car_led_close(&bench->led);
    free(bench->z);
    free(bench->by);
    free(bench->rows);
}

/* A car of its own, at bench->z: NAN throughout where it cannot be made. */
static gw_status work(const gw_spread_job *job, gw_spread_bench *bench, const gw_car_guide *from, double *row)
{
    gw_drawn drawn;
    gw_status status = gw_drawn_make(job->draws, bench->drawer, bench->z, &drawn, NULL);
    if (status != GW_OK) {
        for (int i = 0; i < job->table->plan.n_columns; i++) row[i] = NAN;
        return status;
    }
    status = gw_car_work_out(&job->table->plan, &drawn.c, &drawn.wanted, from, NULL, row, NULL);
    gw_drawn_free(&drawn);
    return status;
}

static void centre_of(const gw_spread_job *job, double *z)
{
    const gw_spread_table *t = job->table;
    for (int j = 0; j < t->n_all; j++)
        z[j] = job->options->centre && j < t->n_figures ? job->options->centre[j] : 0.0;
}

/* One thread at a time tells; who finds another at it goes on working. */
static void tell_progress(gw_spread_job *job)
{
    long done = atomic_fetch_add(&job->done, 1) + 1;
    if (!job->options->progress || atomic_flag_test_and_set(&job->telling)) return;
    job->options->progress(job->options->context, (double)done / (double)job->table->draws);
    atomic_flag_clear(&job->telling);
}

static void work_draw(gw_spread_job *job, gw_spread_bench *bench, long draw)
{
    gw_spread_table *t = job->table;
    centre_of(job, bench->z);
    gw_spread_deviation(job->options, t->n_figures, draw, bench->by);
    for (int j = 0; j < t->n_figures; j++) bench->z[j] += bench->by[j];
    gw_car_lead_follow(&job->lead, bench->by, &bench->led);
    gw_status status = work(job, bench, &bench->led, t->value + draw * t->plan.n_columns);
    if (status == GW_E_NOMEM) atomic_store(&job->out_of_memory, true);
    tell_progress(job);
}

/* What one row holds when z of a figure is a step further; false where there is no such car. */
static bool nudged(gw_spread_job *job, gw_spread_bench *bench, int figure, double by, double *row,
                   double moved[GW_AXLES])
{
    gw_car_guide *there = job->table->draws ? &bench->led : NULL;
    gw_drawn drawn;
    centre_of(job, bench->z);
    bench->z[figure] += by;
    if (there) gw_car_lead_follow(&job->lead, NULL, there);
    gw_status status = gw_drawn_make(job->draws, bench->drawer, bench->z, &drawn, NULL);
    if (status == GW_OK) {
        gw_status found =
            gw_car_nudge(&job->table->plan, &drawn.c, &drawn.wanted, &job->guide, there, row, moved, NULL);
        if (found == GW_E_NOMEM) status = found;
        gw_drawn_free(&drawn);
    }
    if (status == GW_E_NOMEM) atomic_store(&job->out_of_memory, true);
    return status == GW_OK;
}

/* From one side, or less its opposite; where a side cannot be had the other serves. */
static void work_slope(gw_spread_job *job, gw_spread_bench *bench, int figure)
{
    gw_spread_table *t = job->table;
    const int n = t->plan.n_columns;
    double *up = bench->rows, *down = up + n, *slope = t->slope + (long)figure * n;
    double high[GW_AXLES] = { 0 }, low[GW_AXLES] = { 0 };
    bool above = nudged(job, bench, figure, NUDGE, up, high);
    if (above && t->draws) gw_car_lead_learn(&job->lead, figure, &bench->led, 1.0 / NUDGE);
    bool below = (t->draws || !above) && nudged(job, bench, figure, -NUDGE, down, low);
    if (below && !above && t->draws) gw_car_lead_learn(&job->lead, figure, &bench->led, -1.0 / NUDGE);
    const double width = NUDGE * (above + below);
    for (int i = 0; i < n; i++) {
        double far = above ? up[i] : t->nominal[i], near = below ? down[i] : t->nominal[i];
        double by = (far - near) / width;
        for (int a = 0; a < GW_AXLES; a++) by += job->by_roll_centre[a][i] * (high[a] - low[a]) / width;
        slope[i] = isnan(by) || isinf(by) ? 0.0 : by;
    }
}

/* Ride has no step to first order: whole cars on both sides. */
static void work_ride_slope(gw_spread_job *job, gw_spread_bench *bench, int figure)
{
    gw_spread_table *t = job->table;
    const int n = t->plan.n_columns;
    double *up = bench->rows, *down = up + n, *slope = t->slope + (long)figure * n;
    for (int side = 0; side < 2 && t->plan.ride; side++) {
        centre_of(job, bench->z);
        bench->z[figure] += side ? -STEP : STEP;
        if (work(job, bench, &job->guide, side ? down : up) == GW_E_NOMEM)
            atomic_store(&job->out_of_memory, true);
    }
    for (int s = 0; s < t->plan.n_slots && t->plan.ride; s++) {
        const int first = t->plan.slot[s].first;
        if (t->plan.slot[s].load >= 0) continue;
        for (int i = first; i < first + (int)GW_SPREAD_RIDE_QUANTITIES; i++) {
            double by = (up[i] - down[i]) / (2.0 * STEP);
            slope[i] = isnan(by) ? 0.0 : by;
        }
    }
}

/* A few of `all` slopes or draws, one after the other. */
static void work_piece(gw_spread_job *job, int index, long all, bool slopes)
{
    gw_spread_bench bench;
    if (open_bench(job, &bench) != GW_OK) atomic_store(&job->out_of_memory, true);
    const long first = (long)index * PIECE, end = first + PIECE < all ? first + PIECE : all;
    for (long i = first; i < end && !atomic_load(&job->out_of_memory); i++)
        if (slopes) {
            work_slope(job, &bench, (int)i);
            work_ride_slope(job, &bench, (int)i);
        } else
            work_draw(job, &bench, i);
    close_bench(&bench);
}

static void work_slopes(void *context, int index)
{
    gw_spread_job *job = context;
    work_piece(job, index, job->table->n_figures, true);
}

static void work_draws(void *context, int index)
{
    gw_spread_job *job = context;
    work_piece(job, index, job->table->draws, false);
}

/* Slopes first: they lead to where draws are looked for. */
static gw_status work_all(gw_spread_job *job, gw_error *err)
{
    gw_spread_table *t = job->table;
    gw_status status =
        t->draws ? gw_car_lead_open(&t->plan, &job->guide, t->n_figures, &job->lead, err) : GW_OK;
    if (status != GW_OK) return status;
    gw_parallel((t->n_figures + PIECE - 1) / PIECE, work_slopes, job);
    gw_parallel((int)((t->draws + PIECE - 1) / PIECE), work_draws, job);
    gw_car_lead_close(&job->lead);
    return atomic_load(&job->out_of_memory) ? gw_fail(err, GW_E_NOMEM, "out of memory for drawing cars")
                                            : GW_OK;
}

static gw_status work_nominal(gw_spread_job *job, gw_error *err)
{
    gw_drawer *drawer;
    double *z = calloc((size_t)job->table->n_all + 1, sizeof *z);
    if (!z) return gw_fail(err, GW_E_NOMEM, "out of memory for drawing cars");
    gw_status status = gw_drawer_open(job->table->plan.c, &drawer, err);
    if (status == GW_OK) {
        centre_of(job, z);
        status = gw_drawn_make(job->draws, drawer, z, &job->nominal, err);
        if (status == GW_OK)
            status = gw_car_work_out(&job->table->plan, &job->nominal.c, &job->nominal.wanted, NULL,
                                     &job->guide, job->table->nominal, err);
        gw_drawer_close(drawer);
    }
    free(z);
    return status;
}

/* A load that some kit does not carry in the case as written says nothing of kits side by side: sums leave it
 * out for all of them. False where nothing is left. */
static bool leave_out_failed(gw_spread_table *t)
{
    const gw_car_plan *plan = &t->plan;
    bool any = false;
    for (int s = 0; s < plan->n_slots; s++) {
        const bool had = !isnan(t->nominal[plan->slot[s].first]);
        any = any || (had && plan->slot[s].load >= 0);
        for (int i = 0; i < plan->n_slots && !had; i++)
            if (plan->slot[i].load == plan->slot[s].load) plan->slot[i].left_out = true;
    }
    return any;
}

static gw_status find_by_roll_centre(gw_spread_job *job, gw_error *err)
{
    const size_t columns = (size_t)job->table->plan.n_columns + 1;
    for (int a = 0; a < GW_AXLES; a++)
        if (!(job->by_roll_centre[a] = calloc(columns, sizeof(double))))
            return gw_fail(err, GW_E_NOMEM, "out of memory for drawing cars");
    return gw_car_by_roll_centre(&job->table->plan, &job->nominal.wanted, &job->guide, job->by_roll_centre,
                                 err);
}

static gw_status take_room(gw_spread_table *t, gw_error *err)
{
    size_t columns = (size_t)t->plan.n_columns + 1;
    t->nominal = calloc(columns, sizeof *t->nominal);
    t->slope = calloc(columns * ((size_t)t->n_figures + 1), sizeof *t->slope);
    t->value = calloc(columns * ((size_t)t->draws + 1), sizeof *t->value);
    if (t->nominal && t->slope && t->value) return GW_OK;
    return gw_fail(err, GW_E_NOMEM, "out of memory for %ld draws", t->draws);
}

gw_status gw_spread_fill(const gw_case *c, const gw_selection *wanted, const gw_spread_options *o,
                         gw_arena *arena, gw_spread_table *out, gw_error *err)
{
    gw_draws draws = { 0 };
    gw_spread_job job = { .draws = &draws, .options = o, .table = out, .telling = ATOMIC_FLAG_INIT };
    *out = (gw_spread_table){ .n_all = c->uncertain.n, .draws = o->draws };
    out->n_figures = c->uncertain.n - (o->ride ? 0 : c->uncertain.n_ride);
    gw_status status = gw_car_plan_make(c, o->ride, o->draws ? NULL : wanted, arena, &out->plan, err);
    if (status == GW_OK) status = take_room(out, err);
    if (status == GW_OK) status = gw_draws_open(c, wanted, &draws, err);
    if (status == GW_OK) status = work_nominal(&job, err);
    if (status == GW_E_NUMERIC && (o->draws == 0 || leave_out_failed(out)))
        status = GW_OK; /* what was had has a band */
    if (status == GW_OK) status = find_by_roll_centre(&job, err);
    if (status == GW_OK) status = work_all(&job, err);
    for (int a = 0; a < GW_AXLES; a++) free(job.by_roll_centre[a]);
    gw_car_guide_free(&job.guide);
    gw_drawn_free(&job.nominal);
    gw_draws_close(&draws);
    return status;
}

void gw_spread_table_free(gw_spread_table *t)
{
    free(t->nominal);
    free(t->slope);
    free(t->value);
    *t = (gw_spread_table){ 0 };
}
