/* SPDX-License-Identifier: MIT */
/* What to read next: every push, bump and wheel rate that a ramp can do, by what it would tell. */
#include "giveway/match.h"
#include "giveway/units.h"
#include "study/match_parts.h"

#include "base/parallel.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { PUSHES = 4, BUMPS = 4, CANDIDATES = GW_AXLES * (PUSHES + 2), MOST_STATES = 4, MOST_VALUES = 8 };
static const double STEP = 1e-5;       /* of z, for the slopes                                   */
static const double LEAST_BITS = 0.05; /* what tells less is not worth the walk                  */
/* Bands of a usual gauge, 95 %: common practice. */
static const double WITHIN_ANGLE = 0.03 * GW_DEG, WITHIN_LENGTH = 0.2 * GW_MM,
                    WITHIN_RATE = 0.6 * GW_N_PER_MM;

typedef struct gw_next_work {
    const gw_draws *draws;
    int n;                             /* figures */
    double *z, *c;                     /* [n], [n * n] covariance so far */
    gw_readings set;                   /* the candidates that can be had */
    gw_read_guide *guide;              /* the car as it is known */
    double *y, *base, *sigma, *slopes; /* [values], [values * n]: d(value / sigma) / dz */
    int first[CANDIDATES];             /* of its values */
    bool taken[CANDIDATES];
    atomic_bool out_of_memory; /**< in a thread */
} gw_next_work;

/* ---- the candidates ---- */

static const struct push {
    const char *name;
    double fore_aft, lateral; /* [N] */
} PUSH[PUSHES] = { { "push back 1 kN", -1000, 0 },
                   { "pull forward 1 kN", 1000, 0 },
                   { "push in 1 kN", 0, -1000 },
                   { "pull out 1 kN", 0, 1000 } };
static const double BUMP[BUMPS] = { -0.04, -0.02, 0.02, 0.04 }; /* [m] */

static double sigma_of(gw_read_figure figure)
{
    double within = figure == GW_READ_WHEEL_RATE                              ? WITHIN_RATE
                    : figure == GW_READ_FORE_AFT || figure == GW_READ_LATERAL ? WITHIN_LENGTH
                                                                              : WITHIN_ANGLE;
    return 0.5 * within;
}

static void add_value(gw_reading *r, gw_read_figure figure, int state)
{
    r->value[r->n_values++] = (gw_read_value){ figure, state, 0.0, sigma_of(figure) };
}

static void make_push(gw_reading *r, const struct push *push)
{
    r->name = push->name;
    r->state[r->n_states++] =
        (gw_read_state){ .has_load = true,
                         .static_vertical = true,
                         .load = { .patch_force = { push->fore_aft, push->lateral, 0 } } };
    add_value(r, GW_READ_TOE, 0);
    add_value(r, GW_READ_CAMBER, 0);
    add_value(r, push->fore_aft != 0.0 ? GW_READ_FORE_AFT : GW_READ_LATERAL, 0);
}

static void make_bump(gw_reading *r)
{
    r->name = "bump";
    for (int i = 0; i < BUMPS; i++) {
        r->state[r->n_states++] = (gw_read_state){ .has_travel = true, .travel = BUMP[i] };
        add_value(r, GW_READ_TOE, i);
        add_value(r, GW_READ_CAMBER, i);
    }
}

static void make_rate(gw_reading *r)
{
    r->name = "wheel rate";
    r->state[r->n_states++] = (gw_read_state){ .static_vertical = true };
    add_value(r, GW_READ_WHEEL_RATE, 0);
}

static gw_status add_candidate(gw_next_work *w, gw_arena *arena, gw_axle axle, int kit, int which,
                               gw_error *err)
{
    gw_reading r = { .axle = axle, .kit = kit };
    r.state = gw_arena_alloc(arena, MOST_STATES, sizeof *r.state);
    r.value = gw_arena_alloc(arena, MOST_VALUES, sizeof *r.value);
    if (!r.state || !r.value) return gw_fail(err, GW_E_NOMEM, "out of memory for readings");
    if (which < PUSHES)
        make_push(&r, &PUSH[which]);
    else if (which == PUSHES)
        make_bump(&r);
    else
        make_rate(&r);
    w->first[w->set.n] = w->set.n_values;
    w->set.n_values += r.n_values;
    w->set.reading[w->set.n++] = r;
    return GW_OK;
}

static gw_status list_candidates(gw_next_work *w, const gw_selection *wanted, gw_arena *arena, gw_error *err)
{
    const gw_case *c = w->draws->c;
    const int kit = gw_selection_first_kit(c, wanted);
    w->set.reading = gw_arena_alloc(arena, CANDIDATES, sizeof *w->set.reading);
    if (!w->set.reading) return gw_fail(err, GW_E_NOMEM, "out of memory for readings");
    gw_status status = GW_OK;
    for (int a = 0; a < GW_AXLES; a++) {
        if (!c->has_corner[a] || (wanted->only_axle && wanted->axle != (gw_axle)a)) continue;
        for (int i = 0; i < PUSHES + 2 && status == GW_OK; i++)
            status = add_candidate(w, arena, (gw_axle)a, kit, i, err);
    }
    w->set.path = c->path;
    return status;
}

/* ---- what they depend on ---- */

/* Every so-and-so-many-th column of slopes, by one step of Newton's iteration; figures that cannot be moved
 * tell nothing. */
static void slopes(void *context, int piece)
{
    gw_next_work *w = context;
    const gw_match_work work = { .draws = w->draws, .readings = &w->set, .n = w->n, .n_case = w->n };
    const int m = w->set.n_values;
    gw_drawer *drawer = NULL;
    double *z = malloc((size_t)w->n * sizeof *z), *y = malloc((size_t)m * sizeof *y);
    bool ok = z && y && gw_drawer_open(w->draws->c, &drawer, NULL) == GW_OK;
    if (ok) memcpy(z, w->z, (size_t)w->n * sizeof *z);
    for (int j = piece; ok && j < w->n; j += GW_MATCH_PIECES) {
        z[j] = w->z[j] + STEP;
        gw_status status = gw_match_near(&work, w->guide, drawer, z, j, w->base, y, NULL);
        z[j] = w->z[j];
        if (status == GW_E_NOMEM) ok = false;
        for (int at = 0; at < m; at++) {
            double by = status == GW_OK ? (y[at] - w->base[at]) / STEP / w->sigma[at] : 0.0;
            w->slopes[at * w->n + j] = isfinite(by) ? by : 0.0;
        }
    }
    if (!ok) atomic_store(&w->out_of_memory, true);
    gw_drawer_close(drawer);
    free(z);
    free(y);
}

/* What the case as it is cannot be read for is left out. */
static void leave_out(gw_next_work *w)
{
    for (int i = 0; i < w->set.n; i++) w->taken[i] = isnan(w->y[w->first[i]]);
}

static gw_status take_slopes(gw_next_work *w, gw_error *err)
{
    const gw_match_work work = { .draws = w->draws, .readings = &w->set, .n = w->n, .n_case = w->n };
    gw_drawer *drawer = NULL;
    gw_status status = gw_drawer_open(w->draws->c, &drawer, err);
    if (status == GW_OK) status = gw_match_model(&work, drawer, w->z, true, &w->guide, w->y, err);
    if (status == GW_OK) status = gw_match_near(&work, w->guide, drawer, w->z, -1, NULL, w->base, err);
    gw_drawer_close(drawer);
    if (status == GW_OK) gw_parallel(w->n < GW_MATCH_PIECES ? w->n : GW_MATCH_PIECES, slopes, w);
    gw_read_guide_free(w->guide);
    if (atomic_load(&w->out_of_memory)) status = gw_fail(err, GW_E_NOMEM, "out of memory for readings");
    int at = 0;
    for (int i = 0; i < w->set.n && status == GW_OK; i++)
        for (int v = 0; v < w->set.reading[i].n_values; v++) w->set.reading[i].value[v].reading = w->y[at++];
    if (status == GW_OK) leave_out(w);
    return status;
}

/* ---- what each would tell ---- */

/* J C of a candidate, and the factor of 1 + J C J^T; false: nothing to be had of it. */
static bool weigh(const gw_next_work *w, int of, double *jc, double *s)
{
    const int m = w->set.reading[of].n_values, n = w->n;
    const double *j = w->slopes + (long)w->first[of] * n;
    for (int p = 0; p < m; p++)
        for (int k = 0; k < n; k++) {
            double sum = 0.0;
            for (int l = 0; l < n; l++) sum += j[p * n + l] * w->c[l * n + k];
            jc[p * n + k] = sum;
        }
    for (int p = 0; p < m; p++)
        for (int q = 0; q < m; q++) {
            double sum = p == q;
            for (int k = 0; k < n; k++) sum += jc[p * n + k] * j[q * n + k];
            s[p * m + q] = sum;
        }
    return gw_cholesky(s, m);
}

static double bits_of(const gw_next_work *w, int of, double *jc, double *s)
{
    const int m = w->set.reading[of].n_values;
    double sum = 0.0;
    if (!weigh(w, of, jc, s)) return 0.0;
    for (int p = 0; p < m; p++) sum += log2(s[p * m + p]);
    return sum; /* half of log2 of a square */
}

/* The figures whose bands it narrows most. */
static void tell_narrowed(const gw_next_work *w, const double *before, gw_next_reading *out)
{
    enum { ROOM = sizeof out->narrows / sizeof *out->narrows };
    for (int j = 0; j < w->n; j++) {
        struct gw_next_figure f = { j, 1.0 - sqrt(w->c[j * w->n + j] / before[j]) };
        int at = out->n_narrows;
        while (at > 0 && out->narrows[at - 1].narrowed < f.narrowed) at--;
        if (!(f.narrowed >= GW_MATCH_SILENT) || at == ROOM) continue;
        if (out->n_narrows < ROOM) out->n_narrows++;
        for (int k = out->n_narrows - 1; k > at; k--) out->narrows[k] = out->narrows[k - 1];
        out->narrows[at] = f;
    }
}

/* C less C J^T (1 + J C J^T)^-1 J C. */
static void learn(gw_next_work *w, int of, double *jc, double *s, double *column)
{
    const int m = w->set.reading[of].n_values, n = w->n;
    weigh(w, of, jc, s);
    for (int k = 0; k < n; k++) {
        for (int p = 0; p < m; p++) column[p] = jc[p * n + k];
        gw_cholesky_solve(s, m, column);
        for (int l = 0; l < n; l++)
            for (int p = 0; p < m; p++) w->c[l * n + k] -= jc[p * n + l] * column[p];
    }
}

static gw_status pick(gw_next_work *w, gw_next_study *out, gw_error *err)
{
    double *jc = malloc((size_t)MOST_VALUES * (size_t)w->n * sizeof *jc), s[MOST_VALUES * MOST_VALUES];
    double *before = malloc((size_t)w->n * sizeof *before), column[MOST_VALUES];
    out->next = gw_arena_alloc(&out->arena, CANDIDATES, sizeof *out->next);
    gw_status status =
        jc && before && out->next ? GW_OK : gw_fail(err, GW_E_NOMEM, "out of memory for readings");
    while (status == GW_OK) {
        int best = -1;
        double most = LEAST_BITS;
        for (int i = 0; i < w->set.n; i++) {
            double bits = w->taken[i] ? 0.0 : bits_of(w, i, jc, s);
            if (bits > most) most = bits, best = i;
        }
        if (best < 0) break;
        for (int j = 0; j < w->n; j++) before[j] = w->c[j * w->n + j];
        learn(w, best, jc, s, column);
        w->taken[best] = true;
        out->next[out->n] = (gw_next_reading){ .reading = &w->set.reading[best], .bits = most };
        tell_narrowed(w, before, &out->next[out->n++]);
    }
    free(before);
    free(jc);
    return status;
}

/* Figures as they are known, and how far they go together. */
static gw_status take_known(gw_next_work *w, const gw_match_study *known, gw_arena *arena, gw_error *err)
{
    const size_t n = (size_t)w->n;
    w->z = gw_arena_alloc(arena, n, sizeof *w->z);
    w->c = gw_arena_alloc(arena, n * n, sizeof *w->c);
    if (!w->z || !w->c) return gw_fail(err, GW_E_NOMEM, "out of memory for readings");
    for (int j = 0; j < w->n; j++) {
        w->z[j] = known ? known->z[j] : 0.0;
        for (int k = 0; k < w->n; k++)
            w->c[j * w->n + k] = known ? known->covariance[j * known->n + k] : j == k;
    }
    return GW_OK;
}

static gw_status run(gw_next_work *w, const gw_selection *wanted, const gw_match_study *known,
                     gw_next_study *out, gw_error *err)
{
    gw_status status = take_known(w, known, &out->arena, err);
    if (status == GW_OK) status = list_candidates(w, wanted, &out->arena, err);
    if (status != GW_OK) return status;
    size_t m = (size_t)w->set.n_values;
    w->y = gw_arena_alloc(&out->arena, m + 1, sizeof *w->y);
    w->base = gw_arena_alloc(&out->arena, m + 1, sizeof *w->base);
    w->sigma = gw_arena_alloc(&out->arena, m + 1, sizeof *w->sigma);
    w->slopes = gw_arena_alloc(&out->arena, m * (size_t)w->n + 1, sizeof *w->slopes);
    if (!w->y || !w->base || !w->sigma || !w->slopes)
        return gw_fail(err, GW_E_NOMEM, "out of memory for readings");
    for (int i = 0; i < w->set.n; i++)
        for (int v = 0; v < w->set.reading[i].n_values; v++)
            w->sigma[w->first[i] + v] = w->set.reading[i].value[v].sigma;
    if (w->set.n) status = take_slopes(w, err);
    return status == GW_OK ? pick(w, out, err) : status;
}

gw_status gw_study_read_next(const gw_case *c, const gw_selection *wanted, const gw_match_study *known,
                             gw_next_study *out, gw_error *err)
{
    gw_next_study study = { 0 };
    gw_draws draws = { 0 };
    gw_next_work w = { .draws = &draws, .n = c->uncertain.n - c->uncertain.n_ride };
    if (w.n == 0)
        return gw_fail(err, GW_E_SCHEMA,
                       "%s: uncertain: no figure is uncertain, so that readings tell nothing", c->path);
    gw_status status = gw_draws_open(c, wanted, &draws, err);
    if (status == GW_OK) status = run(&w, wanted, known, &study, err);
    gw_draws_close(&draws);
    if (status != GW_OK) {
        gw_next_study_free(&study);
        return status;
    }
    *out = study;
    return GW_OK;
}

void gw_next_study_free(gw_next_study *study)
{
    gw_arena_free(&study->arena);
    *study = (gw_next_study){ 0 };
}
