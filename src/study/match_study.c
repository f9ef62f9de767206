/* SPDX-License-Identifier: MIT */
/* What the minimum says: covariance, what is surer, and what does not go with the rest. */
#include "giveway/match.h"

#include "study/match_parts.h"

#include <gsl/gsl_cdf.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* All memory of the work is one block. */
static gw_status take_room(gw_match_work *w, double **block, gw_error *err)
{
    size_t n = (size_t)w->n, m = (size_t)w->m, need = 8 * n + 8 * m + m * n + 2 * n * n + 1;
    double *p = *block = calloc(need, sizeof *p);
    if (!p) return gw_fail(err, GW_E_NOMEM, "out of memory for %d figures and %d values", w->n, w->m);
    double **const by_n[] = { &w->z, &w->next, &w->at, &w->g, &w->step, &w->old, &w->new, &w->scratch };
    double **const by_m[] = { &w->reading, &w->sigma,  &w->y,    &w->y_next,
                              &w->r,       &w->r_next, &w->base, &w->before };
    for (size_t i = 0; i < 8; i++, p += n) *by_n[i] = p;
    for (size_t i = 0; i < 8; i++, p += m) *by_m[i] = p;
    w->j = p;
    w->a = p += m * n;
    w->curve = p + n * n;
    return GW_OK;
}

static void list_values(gw_match_work *w)
{
    int at = 0;
    for (int i = 0; i < w->readings->n; i++)
        for (int v = 0; v < w->readings->reading[i].n_values; v++, at++) {
            w->reading[at] = w->readings->reading[i].value[v].reading;
            w->sigma[at] = w->readings->reading[i].value[v].sigma;
        }
}

/* Drop of a group of values: r_g^T V_gg^-1 r_g with V = 1 - J C J^T. NAN where V_gg says nothing. */
static double drop_of(const gw_match_work *w, const double *c, int first, int n)
{
    double *v = malloc(((size_t)n * (size_t)n + (size_t)n) * sizeof *v), *b = v ? v + (long)n * n : NULL,
           drop = 0.0;
    if (!v) return (double)NAN;
    for (int p = 0; p < n; p++)
        for (int q = 0; q < n; q++) {
            const double *jp = w->j + (long)(first + p) * w->n, *jq = w->j + (long)(first + q) * w->n;
            double sum = p == q;
            for (int a = 0; a < w->n; a++)
                for (int b2 = 0; b2 < w->n; b2++) sum -= jp[a] * c[a * w->n + b2] * jq[b2];
            v[p * n + q] = sum;
        }
    for (int p = 0; p < n; p++) b[p] = w->r[first + p];
    if (gw_cholesky(v, n)) {
        gw_cholesky_solve(v, n, b);
        for (int p = 0; p < n; p++) drop += b[p] * w->r[first + p];
    } else
        drop = (double)NAN;
    free(v);
    return drop;
}

static gw_status tell_values(const gw_match_work *w, gw_match_study *s, gw_error *err)
{
    int at = 0;
    s->value = gw_arena_alloc(&s->arena, (size_t)w->m + 1, sizeof *s->value);
    s->reading = gw_arena_alloc(&s->arena, (size_t)w->readings->n + 1, sizeof *s->reading);
    if (!s->value || !s->reading) return gw_fail(err, GW_E_NOMEM, "out of memory for results");
    s->n_values = w->m;
    s->n_readings = w->readings->n;
    for (int i = 0; i < w->readings->n; i++) {
        const gw_reading *r = &w->readings->reading[i];
        gw_match_reading *out = &s->reading[i];
        out->first = at;
        out->drop = drop_of(w, s->covariance, at, r->n_values);
        out->probability = gsl_cdf_chisq_Q(out->drop, r->n_values);
        for (int v = 0; v < r->n_values; v++, at++)
            s->value[at] = (gw_match_value){ i, v, w->before[at], w->y[at], w->r[at] };
    }
    return GW_OK;
}

static gw_status tell_figures(const gw_match_work *w, gw_match_study *s, gw_error *err)
{
    s->figure = gw_arena_alloc(&s->arena, (size_t)w->n + 1, sizeof *s->figure);
    s->z = gw_arena_alloc(&s->arena, (size_t)w->n + 1, sizeof *s->z);
    if (!s->figure || !s->z) return gw_fail(err, GW_E_NOMEM, "out of memory for results");
    for (int j = 0; j < w->n; j++) {
        gw_matched *f = &s->figure[j];
        double variance = s->covariance[j * w->n + j];
        f->figure = j < w->n_case ? &w->draws->c->uncertain.figure[j] : w->load;
        f->z = s->z[j] = w->z[j];
        f->sd = sqrt(variance);
        f->silent = 1.0 - f->sd < GW_MATCH_SILENT;
        f->drop = f->silent ? (double)NAN : f->z * f->z / (1.0 - variance);
        f->probability = f->silent ? (double)NAN : gsl_cdf_chisq_Q(f->drop, 1.0);
    }
    return GW_OK;
}

static int by_probability(const void *a, const void *b)
{
    const gw_doubt *l = a, *r = b;
    if (l->probability != r->probability) return l->probability < r->probability ? -1 : 1;
    if (l->is_reading != r->is_reading) return l->is_reading ? -1 : 1;
    return l->index - r->index;
}

static gw_status tell_doubts(gw_match_study *s, gw_error *err)
{
    s->doubt = gw_arena_alloc(&s->arena, (size_t)(s->n + s->n_readings) + 1, sizeof *s->doubt);
    if (!s->doubt) return gw_fail(err, GW_E_NOMEM, "out of memory for results");
    for (int i = 0; i < s->n_readings; i++)
        if (s->reading[i].probability < GW_MATCH_DOUBT)
            s->doubt[s->n_doubts++] = (gw_doubt){ true, i, s->reading[i].probability };
    for (int j = 0; j < s->n; j++)
        if (!s->figure[j].silent && s->figure[j].probability < GW_MATCH_DOUBT)
            s->doubt[s->n_doubts++] = (gw_doubt){ false, j, s->figure[j].probability };
    if (s->n_doubts) qsort(s->doubt, (size_t)s->n_doubts, sizeof *s->doubt, by_probability);
    return GW_OK;
}

static gw_status tell(gw_match_work *w, double sum, gw_match_study *s, gw_error *err)
{
    s->n = w->n;
    s->n_case = w->n_case;
    s->chi_square = sum;
    s->probability = gsl_cdf_chisq_Q(sum, w->m);
    s->evaluations = w->evaluations;
    s->covariance = gw_arena_alloc(&s->arena, (size_t)w->n * (size_t)w->n, sizeof *s->covariance);
    if (!s->covariance) return gw_fail(err, GW_E_NOMEM, "out of memory for results");
    gw_match_information(w, w->a);
    if (!gw_cholesky(w->a, w->n)) return gw_fail(err, GW_E_NUMERIC, "the readings cannot be weighed");
    gw_cholesky_inverse(w->a, w->n, s->covariance);
    gw_status status = tell_values(w, s, err);
    if (status == GW_OK) status = tell_figures(w, s, err);
    return status == GW_OK ? tell_doubts(s, err) : status;
}

static gw_status make_load(const gw_readings *readings, gw_match_study *s, gw_unsure **load, gw_error *err)
{
    *load = gw_arena_alloc(&s->arena, 1, sizeof **load);
    if (!*load) return gw_fail(err, GW_E_NOMEM, "out of memory for results");
    **load = (gw_unsure){ .of = "load",
                          .unit = GW_UNSURE_FACTOR,
                          .value = 1.0,
                          .scale = 0.5 * log1p(0.01 * readings->load_percent) };
    return GW_OK;
}

static gw_status run(gw_match_work *w, gw_match_study *s, gw_error *err)
{
    double *block = NULL, sum = 0.0;
    gw_status status = take_room(w, &block, err);
    if (status == GW_OK) status = gw_drawer_open(w->draws->c, &w->drawer, err);
    if (status == GW_OK) {
        list_values(w);
        status = gw_match_find(w, &sum, err);
    }
    if (status == GW_OK) status = tell(w, sum, s, err);
    gw_drawer_close(w->drawer);
    free(block);
    return status;
}

gw_status gw_study_match(const gw_case *c, const gw_readings *readings, const gw_selection *wanted,
                         bool with_ride, gw_match_study *out, gw_error *err)
{
    gw_match_study study = { 0 };
    gw_draws draws = { 0 };
    gw_unsure *load = NULL;
    gw_match_work w = { .draws = &draws, .readings = readings, .m = readings->n_values };
    w.n_case = c->uncertain.n - (with_ride ? 0 : c->uncertain.n_ride);
    w.n = w.n_case + (readings->load_percent > 0.0);
    if (w.n_case == 0)
        return gw_fail(err, GW_E_SCHEMA,
                       "%s: uncertain: no figure is uncertain, so that readings correct nothing", c->path);
    gw_status status = make_load(readings, &study, &load, err);
    w.load = load;
    if (status == GW_OK) status = gw_draws_open(c, wanted, &draws, err);
    if (status == GW_OK) status = run(&w, &study, err);
    gw_draws_close(&draws);
    if (status != GW_OK) {
        gw_match_study_free(&study);
        return status;
    }
    *out = study;
    return GW_OK;
}

void gw_match_study_free(gw_match_study *study)
{
    gw_arena_free(&study->arena);
    *study = (gw_match_study){ 0 };
}
