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

/* Of z, for slopes by one step of Newton's iteration: to one side while it moves by more than ROUGH, then to
 * both, which is right to the square of it. Where one step cannot be had, the model itself to both sides. */
static const double ONE_SIDE = 1e-5, BOTH_SIDES = 1e-4, STEP = 5e-3, ROUGH = 1e-3;
static const double NEARLY = 3e-7, SETTLED = 1e-7;
/* Over less than this what slopes differ by is more of their error than curvature. */
static const double LEARNED = 1e-4, LEARNED_BOTH = 1e-6;
static const double SHORT = 1e-5;  /* a step so short is gone whatever the sum says: rounding decides */
static const double LEVEL = 1e-13; /* of the sum: rounding */
enum { MAX_STEPS = 40, MAX_CUTS = 12 };

typedef struct gw_slope_job {
    gw_match_work *w;
    const double *z, *base; /* base: what one step gives at z itself; NULL: it gives nothing */
    bool both;              /* to both sides */
    atomic_int failed, out_of_memory;
} gw_slope_job;

static void copy(double *to, const double *from, int n)
{
    memcpy(to, from, (size_t)n * sizeof *to);
}

static double factor_of(const gw_match_work *w, const double *z)
{
    return w->n > w->n_case ? gw_unsure_at(w->load, z[w->n_case]) : 1.0;
}

/* The figures of the case, those that only ride knows of as written. */
static double *figures_of(const gw_match_work *w, const double *z)
{
    double *all = calloc((size_t)w->draws->c->uncertain.n + 1, sizeof *all);
    if (all) memcpy(all, z, (size_t)w->n_case * sizeof *all);
    return all;
}

static gw_status no_memory(gw_error *err)
{
    return gw_fail(err, GW_E_NOMEM, "out of memory for readings");
}

gw_status gw_match_model(const gw_match_work *w, gw_drawer *drawer, const double *z, bool skip,
                         gw_read_guide **guide, double *y, gw_error *err)
{
    double *all = figures_of(w, z);
    if (!all) return no_memory(err);
    gw_status status = gw_read_car(w->draws, drawer, all, w->readings, factor_of(w, z), skip, guide, y, err);
    free(all);
    return status;
}

gw_status gw_match_near(const gw_match_work *w, const gw_read_guide *guide, gw_drawer *drawer,
                        const double *z, int figure, const double *same, double *y, gw_error *err)
{
    double *all = figures_of(w, z);
    if (!all) return no_memory(err);
    if (figure >= w->n_case) figure = -1; /* the load cell's is none of the car's */
    gw_status status = gw_read_near(guide, w->draws, drawer, all, factor_of(w, z), figure, same, y, err);
    free(all);
    return status;
}

/* The model alone, from nothing. */
static gw_status model(const gw_match_work *w, gw_drawer *drawer, const double *z, double *y)
{
    gw_read_guide *guide = NULL;
    gw_status status = gw_match_model(w, drawer, z, false, &guide, y, NULL);
    gw_read_guide_free(guide);
    return status;
}

/* By central differences; one-sided where one side cannot be had. */
static gw_status slope_by_differences(gw_slope_job *job, gw_drawer *drawer, int j, double *z, double *y)
{
    gw_match_work *w = job->w;
    gw_status status[2];
    for (int side = 0; side < 2; side++) {
        z[j] = job->z[j] + (side ? -STEP : STEP);
        status[side] = model(w, drawer, z, y + side * w->m);
        if (status[side] == GW_E_NOMEM) return GW_E_NOMEM;
    }
    z[j] = job->z[j];
    if (status[0] != GW_OK && status[1] != GW_OK) return status[0];
    for (int i = 0; i < w->m; i++) {
        double up = status[0] == GW_OK ? y[i] : w->y[i], down = status[1] == GW_OK ? y[w->m + i] : w->y[i];
        double width = STEP * ((status[0] == GW_OK) + (status[1] == GW_OK));
        w->j[i * w->n + j] = -(up - down) / width / w->sigma[i]; /* dr/dz */
    }
    return GW_OK;
}

/* The readings with one figure a little off, from the guide; false where that cannot be had. */
static bool one_step(gw_slope_job *job, gw_drawer *drawer, int j, double by, double *z, double *y,
                     gw_status *status)
{
    gw_match_work *w = job->w;
    if (!job->base) return false;
    z[j] = job->z[j] + by;
    *status = gw_match_near(w, w->guide, drawer, z, j, job->base, y, NULL);
    z[j] = job->z[j];
    bool finite = *status == GW_OK;
    for (int i = 0; i < w->m && finite; i++) finite = isfinite(y[i]);
    return finite;
}

/* One column of the slopes. */
static gw_status slope(gw_slope_job *job, gw_drawer *drawer, int j, double *z, double *y)
{
    gw_match_work *w = job->w;
    const double *down = job->both ? y + w->m : job->base;
    const double step = job->both ? BOTH_SIDES : ONE_SIDE, width = job->both ? 2.0 * step : step;
    gw_status status = GW_OK;
    bool had = one_step(job, drawer, j, step, z, y, &status);
    if (had && job->both) had = one_step(job, drawer, j, -step, z, y + w->m, &status);
    if (status == GW_E_NOMEM) return status;
    if (!had) return slope_by_differences(job, drawer, j, z, y);
    for (int i = 0; i < w->m; i++) w->j[i * w->n + j] = -(y[i] - down[i]) / width / w->sigma[i]; /* dr/dz */
    return GW_OK;
}

/* Every so-and-so-many-th column, with one drawer for all, which is kept. */
static void slopes(void *context, int piece)
{
    gw_slope_job *job = context;
    gw_match_work *w = job->w;
    gw_drawer **drawer = &w->of_piece[piece];
    double *z = malloc((size_t)w->n * sizeof *z), *y = malloc(2 * (size_t)w->m * sizeof *y);
    gw_status status = z && y ? GW_OK : GW_E_NOMEM;
    if (status == GW_OK && !*drawer) status = gw_drawer_open(w->draws->c, drawer, NULL);
    if (status == GW_OK) memcpy(z, job->z, (size_t)w->n * sizeof *z);
    for (int j = piece; j < w->n && status == GW_OK; j += GW_MATCH_PIECES)
        status = slope(job, *drawer, j, z, y);
    if (status == GW_E_NOMEM) atomic_store(&job->out_of_memory, 1);
    if (status != GW_OK) atomic_store(&job->failed, 1);
    free(z);
    free(y);
}

static gw_status take_slopes(gw_match_work *w, const double *z, bool both, gw_error *err)
{
    gw_slope_job job = { .w = w, .z = z, .both = both };
    if (gw_match_near(w, w->guide, w->drawer, z, -1, NULL, w->base, NULL) == GW_OK) job.base = w->base;
    for (int i = 0; i < w->m && job.base; i++)
        if (!isfinite(w->base[i])) job.base = NULL;
    gw_parallel(w->n < GW_MATCH_PIECES ? w->n : GW_MATCH_PIECES, slopes, &job);
    if (atomic_load(&job.out_of_memory)) return no_memory(err);
    if (atomic_load(&job.failed))
        return gw_fail(err, GW_E_NUMERIC, "%s: the readings cannot be had with figures near these",
                       w->draws->c->path);
    copy(w->at, z, w->n);
    return GW_OK;
}

/* Residuals and the sum at z; false where the car cannot be had. */
static bool evaluate(gw_match_work *w, const double *z, gw_read_guide **guide, double *y, double *r,
                     double *sum, gw_error *err)
{
    w->evaluations++;
    gw_status status = gw_match_model(w, w->drawer, z, false, guide, y, err);
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

void gw_match_information(const gw_match_work *w, double *a)
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
        gw_match_information(w, w->a);
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

static double longest(const double *step, int n)
{
    double most = 0.0;
    for (int j = 0; j < n; j++) most = fmax(most, fabs(step[j]));
    return most;
}

/* From w->z along the step to where the sum is no larger, or the step so short that rounding decides; true
 * unless even a small part of it is. With slopes from elsewhere the whole step or none: new ones tell more
 * than parts of an old step. */
static bool go(gw_match_work *w, const double *step, bool fresh, double *sum, double *moved)
{
    const double whole = longest(step, w->n);
    double part = 1.0, next;
    for (int cut = 0; cut < (fresh ? MAX_CUTS : 1); cut++, part *= 0.5) {
        gw_read_guide *guide = NULL;
        for (int j = 0; j < w->n; j++) w->next[j] = w->z[j] + part * step[j];
        bool had = evaluate(w, w->next, &guide, w->y_next, w->r_next, &next, NULL);
        if (!had || (next > *sum * (1.0 + LEVEL) && whole > SHORT)) {
            gw_read_guide_free(guide);
            continue;
        }
        gw_read_guide_free(w->guide);
        w->guide = guide;
        *moved = part * whole;
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

/* Slopes where it stands, and what they tell of the curvature. */
static gw_status renew_slopes(gw_match_work *w, bool were_both, bool both, gw_error *err)
{
    double *old = w->old, *new = w->new, *step = w->step;
    for (int j = 0; j < w->n; j++) step[j] = w->z[j] - w->at[j];
    times_residuals(w, old);
    gw_status status = take_slopes(w, w->z, both, err);
    times_residuals(w, new);
    for (int j = 0; j < w->n; j++) new[j] -= old[j];
    if (longest(step, w->n) > (were_both ? LEARNED_BOTH : LEARNED)) learn(w, step, new);
    return status;
}

/* By how much the slopes are behind where it stands. */
static void add_curvature(const gw_match_work *w, double *g)
{
    for (int j = 0; j < w->n; j++)
        for (int k = 0; k < w->n; k++) g[j] += w->curve[j * w->n + k] * (w->z[k] - w->at[k]);
}

static gw_status not_found(const gw_match_work *w, gw_error *err)
{
    return gw_fail(err, GW_E_NUMERIC,
                   "%s: no most probable figures found in %d steps: do the readings belong to this car?",
                   w->readings->path, MAX_STEPS);
}

/* What another step with slopes of its own would still move: as much shorter again as this one was. */
static double left_over(double moved, double before)
{
    return before > 0.0 ? moved * fmin(1.0, moved / before) : moved;
}

/* New slopes until what they would still move is NEARLY nothing, or the sum is level: what they tell of the
 * curvature makes up for the rest. */
static gw_status find(gw_match_work *w, double *sum, gw_error *err)
{
    bool both = false, fresh = true;
    double before = 0.0;
    gw_status status = take_slopes(w, w->z, both, err);
    for (int i = 0; i < MAX_STEPS && status == GW_OK; i++) {
        const double high = *sum;
        double moved = 0.0;
        gradient(w, w->z, w->r, w->g);
        add_curvature(w, w->g);
        find_step(w, w->g, w->step);
        if (both && longest(w->step, w->n) < SETTLED) return GW_OK;
        bool gone = go(w, w->step, fresh, sum, &moved);
        if (w->out_of_memory) return no_memory(err);
        bool level = !gone || (moved < SHORT && high * (1.0 - LEVEL) < *sum);
        const bool were_both = both;
        if (both && fresh && level) return GW_OK;
        fresh = !both || !gone || left_over(moved, before) > NEARLY;
        before = moved;
        both = both || moved < ROUGH;
        if (fresh) status = renew_slopes(w, were_both, both, err);
    }
    return status == GW_OK ? not_found(w, err) : status;
}

gw_status gw_match_find(gw_match_work *w, double *sum, gw_error *err)
{
    if (!evaluate(w, w->z, &w->guide, w->y, w->r, sum, err))
        return err && err->code != GW_OK ? err->code : GW_E_NUMERIC;
    copy(w->before, w->y, w->m);
    gw_status status = find(w, sum, err);
    gw_read_guide_free(w->guide);
    for (int i = 0; i < GW_MATCH_PIECES; i++) gw_drawer_close(w->of_piece[i]);
    return status;
}
