/* SPDX-License-Identifier: MIT */
/*
 * The most probable figures: sum of squares of (reading - model) / sigma and of z, least. Gauss-Newton steps,
 * with a secant correction for the curvature of the model (J. E. Dennis, D. M. Gay and R. E. Welsch, ACM
 * Transactions on Mathematical Software 7 (1981) 348), each with slopes taken anew where it stands; cut short
 * where the sum would rise.
 */
#include "giveway/match.h"

#include "base/parallel.h"
#include "study/match_parts.h"

#include <gsl/gsl_cdf.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Of z, for central differences of the slopes. */
static const double STEP = 5e-3;
static const double SETTLED = 1e-7;
enum { MAX_STEPS = 40, MAX_CUTS = 12 };

typedef struct gw_slope_job {
    gw_match_work *w;
    const double *z;
    atomic_int failed, out_of_memory;
} gw_slope_job;

static double factor_of(const gw_match_work *w, const double *z)
{
    return w->n > w->n_case ? gw_unsure_at(w->load, z[w->n_case]) : 1.0;
}

gw_status gw_match_model(const gw_match_work *w, gw_drawer *drawer, const double *z, double *y, gw_error *err)
{
    gw_drawn drawn;
    double *all = calloc((size_t)w->draws->c->uncertain.n + 1, sizeof *all);
    if (!all) return gw_fail(err, GW_E_NOMEM, "out of memory for readings");
    memcpy(all, z, (size_t)w->n_case * sizeof *all);
    gw_status status = gw_drawn_make(w->draws, drawer, all, &drawn, err);
    if (status == GW_OK) {
        status = gw_read_model(&drawn.c, &drawn.wanted, w->readings, factor_of(w, z), y, err);
        gw_drawn_free(&drawn);
    }
    free(all);
    return status;
}

/* One column of the slopes, dy/dz by central differences; one-sided where one side cannot be had. */
static void slope(void *context, int j)
{
    gw_slope_job *job = context;
    gw_match_work *w = job->w;
    gw_drawer *drawer = NULL;
    double *z = malloc((size_t)w->n * sizeof *z), *y = malloc(2 * (size_t)w->m * sizeof *y);
    gw_status status[2] = { GW_E_NOMEM, GW_E_NOMEM };
    if (z && y && gw_drawer_open(w->draws->c, &drawer, NULL) == GW_OK)
        for (int side = 0; side < 2; side++) {
            memcpy(z, job->z, (size_t)w->n * sizeof *z);
            z[j] += side ? -STEP : STEP;
            status[side] = gw_match_model(w, drawer, z, y + side * w->m, NULL);
        }
    if (status[0] == GW_E_NOMEM || status[1] == GW_E_NOMEM) atomic_store(&job->out_of_memory, 1);
    if (status[0] != GW_OK && status[1] != GW_OK) atomic_store(&job->failed, 1);
    for (int i = 0; i < w->m && (status[0] == GW_OK || status[1] == GW_OK); i++) {
        double up = status[0] == GW_OK ? y[i] : w->y[i], down = status[1] == GW_OK ? y[w->m + i] : w->y[i];
        double width = STEP * ((status[0] == GW_OK) + (status[1] == GW_OK));
        w->j[i * w->n + j] = -(up - down) / width / w->sigma[i]; /* dr/dz */
    }
    gw_drawer_close(drawer);
    free(z);
    free(y);
}

static gw_status no_memory(gw_error *err)
{
    return gw_fail(err, GW_E_NOMEM, "out of memory for readings");
}

static gw_status take_slopes(gw_match_work *w, const double *z, gw_error *err)
{
    gw_slope_job job = { .w = w, .z = z };
    gw_parallel(w->n, slope, &job);
    w->evaluations += 2 * w->n;
    if (atomic_load(&job.out_of_memory)) return no_memory(err);
    if (atomic_load(&job.failed))
        return gw_fail(err, GW_E_NUMERIC, "%s: the readings cannot be had with figures near these",
                       w->draws->c->path);
    return GW_OK;
}

/* Residuals and the sum at z; false where the car cannot be had. */
static bool evaluate(gw_match_work *w, const double *z, double *y, double *r, double *sum, gw_error *err)
{
    w->evaluations++;
    gw_status status = gw_match_model(w, w->drawer, z, y, err);
    if (status == GW_E_NOMEM) w->out_of_memory = true;
    if (status != GW_OK) return false;
    *sum = 0.0;
    for (int i = 0; i < w->m; i++) {
        r[i] = (w->reading[i] - y[i]) / w->sigma[i];
        *sum += r[i] * r[i];
    }
    for (int j = 0; j < w->n; j++) *sum += z[j] * z[j];
    return true;
}

/* Half the slope of the sum: J^T r + z. */
static void gradient(const gw_match_work *w, const double *z, const double *r, double *out)
{
    memcpy(out, z, (size_t)w->n * sizeof *out);
    for (int i = 0; i < w->m; i++)
        for (int j = 0; j < w->n; j++) out[j] += w->j[i * w->n + j] * r[i];
}

/* 1 + J^T J. */
static void information(const gw_match_work *w, double *a)
{
    for (int j = 0; j < w->n; j++)
        for (int k = 0; k <= j; k++) {
            double sum = j == k;
            for (int i = 0; i < w->m; i++) sum += w->j[i * w->n + j] * w->j[i * w->n + k];
            a[j * w->n + k] = a[k * w->n + j] = sum;
        }
}

/* The step, with the curvature where that leaves the matrix positive definite. */
static void find_step(gw_match_work *w, const double *g, double *step)
{
    for (int with = 1; with >= 0; with--) {
        information(w, w->a);
        for (int k = 0; with && k < w->n * w->n; k++) w->a[k] += w->curve[k];
        if (!gw_cholesky(w->a, w->n)) continue;
        for (int j = 0; j < w->n; j++) step[j] = -g[j];
        gw_cholesky_solve(w->a, w->n, step);
        return;
    }
}

/* Symmetric rank-one secant update so that curve x step = change of J^T r at constant r. */
static void learn(gw_match_work *w, const double *step, const double *change)
{
    double along = 0.0, size = 0.0, left = 0.0;
    double *v = w->scratch;
    for (int j = 0; j < w->n; j++) {
        v[j] = change[j];
        for (int k = 0; k < w->n; k++) v[j] -= w->curve[j * w->n + k] * step[k];
        along += v[j] * step[j];
        size += step[j] * step[j];
        left += v[j] * v[j];
    }
    if (fabs(along) < 1e-8 * sqrt(size * left)) return;
    for (int j = 0; j < w->n; j++)
        for (int k = 0; k < w->n; k++) w->curve[j * w->n + k] += v[j] * v[k] / along;
}

static void copy(double *to, const double *from, int n)
{
    memcpy(to, from, (size_t)n * sizeof *to);
}

/* From w->z along the step to where the sum is no larger; true unless even a small part of it is. */
static bool go(gw_match_work *w, const double *step, double *sum, double *moved)
{
    double part = 1.0, next;
    for (int cut = 0; cut < MAX_CUTS; cut++, part *= 0.5) {
        for (int j = 0; j < w->n; j++) w->next[j] = w->z[j] + part * step[j];
        if (!evaluate(w, w->next, w->y_next, w->r_next, &next, NULL) || next > *sum * (1.0 + 1e-13)) continue;
        *moved = 0.0;
        for (int j = 0; j < w->n; j++) *moved = fmax(*moved, fabs(part * step[j]));
        copy(w->z, w->next, w->n);
        copy(w->y, w->y_next, w->m);
        copy(w->r, w->r_next, w->m);
        *sum = next;
        return true;
    }
    return false;
}

/* Old J^T at the new residuals, for the secant. */
static void times_residuals(const gw_match_work *w, double *out)
{
    memset(out, 0, (size_t)w->n * sizeof *out);
    for (int i = 0; i < w->m; i++)
        for (int j = 0; j < w->n; j++) out[j] += w->j[i * w->n + j] * w->r[i];
}

gw_status gw_match_find(gw_match_work *w, double *sum, gw_error *err)
{
    double *g = w->g, *step = w->step, *old = w->old, *new = w->new;
    copy(w->last, w->z, w->n);
    if (!evaluate(w, w->z, w->y, w->r, sum, err)) return err && err->code != GW_OK ? err->code : GW_E_NUMERIC;
    copy(w->before, w->y, w->m);
    gw_status status = take_slopes(w, w->z, err);
    for (int i = 0; i < MAX_STEPS && status == GW_OK; i++) {
        double moved = 0.0;
        gradient(w, w->z, w->r, g);
        find_step(w, g, step);
        bool gone = go(w, step, sum, &moved);
        if (w->out_of_memory) return no_memory(err);
        if (!gone) return GW_OK; /* at the level of rounding */
        if (moved < SETTLED) return take_slopes(w, w->z, err);
        times_residuals(w, old);
        status = take_slopes(w, w->z, err);
        times_residuals(w, new);
        for (int j = 0; j < w->n; j++) new[j] -= old[j];
        for (int j = 0; j < w->n; j++) step[j] = w->z[j] - w->last[j];
        learn(w, step, new);
        copy(w->last, w->z, w->n);
    }
    return status == GW_OK ? gw_fail(err, GW_E_NUMERIC,
                                     "%s: no most probable figures found in %d steps: do the "
                                     "readings belong to this car?",
                                     w->readings->path, MAX_STEPS)
                           : status;
}
