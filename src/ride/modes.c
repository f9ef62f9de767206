/* SPDX-License-Identifier: MIT */
/* Undamped modes of the ride model. */
#include "ride/modes.h"

#include "giveway/units.h"
#include "ride/track.h"

#include <gsl/gsl_eigen.h>
#include <math.h>
#include <stdlib.h>

/* Frequency at which laws are first evaluated [Hz]: where fore-aft modes on rubber lie, common practice. */
static const double FIRST_HZ = 15.0;
/* Of a mode whose damping was not worked out: half of what rubber has does for grading panels [-]. */
static const double UNKNOWN_DAMPING = 0.1;
/* Lowest frequency that is a mode and not a rigid motion [Hz]. */
static const double RIGID_HZ = 0.01;

/* M and Re(K) + shift M, full. */
static void dense_matrices(gw_ride_model *model, double shift, gsl_matrix *m, gsl_matrix *k)
{
    gw_lanes p;
    double w = 2.0 * GW_PI * FIRST_HZ;
    gw_lanes_fill(&p, gw_complex(0.0, w));
    gw_ride_assemble(model, &p, 0.0);
    gsl_matrix_set_zero(m);
    gsl_matrix_set_zero(k);
    for (int r = 0; r < model->n; r++) {
        for (int c = model->start[r]; c <= r; c++) {
            double mass = model->mass[model->base[r] + c];
            double stiffness = model->factor[model->base[r] + c].re[0] + (w * w + shift) * mass;
            gsl_matrix_set(m, (size_t)r, (size_t)c, mass);
            gsl_matrix_set(m, (size_t)c, (size_t)r, mass);
            gsl_matrix_set(k, (size_t)r, (size_t)c, stiffness);
            gsl_matrix_set(k, (size_t)c, (size_t)r, stiffness);
        }
    }
}

static gw_status allocate_set(gw_mode_set *set, int n, int n_dofs, gw_arena *arena, gw_error *err)
{
    size_t modes = (size_t)n, entries = modes * (size_t)n_dofs;
    set->n = 0;
    set->n_dofs = n_dofs;
    set->hz = gw_arena_alloc(arena, modes, sizeof *set->hz);
    set->shape = gw_arena_alloc(arena, entries, sizeof *set->shape);
    set->pole = gw_arena_alloc(arena, modes, sizeof *set->pole);
    set->vector = gw_arena_alloc(arena, entries, sizeof *set->vector);
    set->tracked = gw_arena_alloc(arena, modes, sizeof *set->tracked);
    if (!set->hz || !set->shape || !set->pole || !set->vector || !set->tracked)
        return gw_fail(err, GW_E_NOMEM, "out of memory while working out the modes");
    return GW_OK;
}

/* M x = mu (K + shift M) x: massless motions have mu = 0, rigid ones mu = 1/shift; both are left out. */
static void collect(const gsl_vector *mu, const gsl_matrix *x, double shift, gw_mode_set *set)
{
    double rigid = 2.0 * GW_PI * RIGID_HZ, largest = gsl_vector_get(mu, 0);
    for (size_t i = 0; i < mu->size; i++) {
        double value = gsl_vector_get(mu, i);
        if (!(value > 1e-14 * largest)) return;
        double square = 1.0 / value - shift;
        if (!(square > rigid * rigid)) continue;
        double *shape = &set->shape[set->n * set->n_dofs];
        for (size_t r = 0; r < mu->size; r++) shape[r] = gsl_matrix_get(x, r, i);
        set->hz[set->n++] = sqrt(square) / (2.0 * GW_PI);
    }
}

static gw_status solve_dense(gw_ride_model *model, gw_mode_set *set, gw_error *err)
{
    const double shift = 40.0; /* [1/s^2], about (2 pi 1 Hz)^2 */
    size_t n = (size_t)model->n;
    gw_status st = GW_OK;
    gsl_matrix *m = gsl_matrix_alloc(n, n), *k = gsl_matrix_alloc(n, n), *x = gsl_matrix_alloc(n, n);
    gsl_vector *mu = gsl_vector_alloc(n);
    gsl_eigen_gensymmv_workspace *work = gsl_eigen_gensymmv_alloc(n);
    if (!m || !k || !x || !mu || !work) {
        st = gw_fail(err, GW_E_NOMEM, "out of memory while working out the modes");
        goto done;
    }
    dense_matrices(model, shift, m, k);
    if (gsl_eigen_gensymmv(m, k, mu, x, work) || gsl_eigen_gensymmv_sort(mu, x, GSL_EIGEN_SORT_VAL_DESC)) {
        st = gw_fail(err, GW_E_NUMERIC,
                     "the natural frequencies could not be calculated: a part moves freely");
        goto done;
    }
    collect(mu, x, shift, set);
done:
    gsl_matrix_free(m);
    gsl_matrix_free(k);
    gsl_matrix_free(x);
    gsl_vector_free(mu);
    gsl_eigen_gensymmv_free(work);
    return st;
}

static void swap_modes(gw_mode_set *set, int a, int b)
{
    double hz = set->hz[a];
    double complex pole = set->pole[a];
    set->hz[a] = set->hz[b];
    set->hz[b] = hz;
    set->pole[a] = set->pole[b];
    set->pole[b] = pole;
    for (int r = 0; r < set->n_dofs; r++) {
        double *x = &set->shape[a * set->n_dofs + r], *y = &set->shape[b * set->n_dofs + r], t = *x;
        *x = *y;
        *y = t;
    }
}

static void sort_modes(gw_mode_set *set)
{
    for (int i = 1; i < set->n; i++)
        for (int j = i; j > 0 && set->hz[j] < set->hz[j - 1]; j--) swap_modes(set, j, j - 1);
}

/* An undamped mode is real up to a factor: turn it so that its largest entry is real. */
static void take_real_shapes(gw_mode_set *set)
{
    for (int i = 0; i < set->n; i++) {
        const double complex *v = &set->vector[i * set->n_dofs];
        int largest = 0;
        for (int r = 0; r < set->n_dofs; r++)
            if (cabs(v[r]) > cabs(v[largest])) largest = r;
        for (int r = 0; r < set->n_dofs; r++)
            set->shape[i * set->n_dofs + r] = creal(v[r] * (conj(v[largest]) / cabs(v[largest])));
        set->hz[i] = cimag(set->pole[i]) / (2.0 * GW_PI);
    }
}

static void start_from_shapes(gw_mode_set *set)
{
    for (int i = 0; i < set->n * set->n_dofs; i++) set->vector[i] = set->shape[i];
    for (int i = 0; i < set->n; i++) {
        set->pole[i] = gw_complex(0.0, 2.0 * GW_PI * set->hz[i]);
        set->tracked[i] = false; /* no damping in it yet */
    }
}

gw_status gw_modes_undamped(gw_ride_model *model, gw_mode_set *set, gw_arena *arena, gw_error *err)
{
    gw_status st = allocate_set(set, model->n, model->n, arena, err);
    if (st != GW_OK || (st = solve_dense(model, set, err)) != GW_OK) return st;
    start_from_shapes(set);
    if (model->n_zeners == 0) return GW_OK;
    if ((st = gw_track(model, set, 0, set->n, 0.0, 1e-6, err)) != GW_OK) return st;
    take_real_shapes(set);
    sort_modes(set);
    start_from_shapes(set);
    return GW_OK;
}

int gw_modes_poles(const gw_mode_set *set, gw_pole *out)
{
    int n = 0;
    for (int i = 0; i < set->n; i++) {
        double hz = cimag(set->pole[i]) / (2.0 * GW_PI), width = -creal(set->pole[i]) / (2.0 * GW_PI);
        if (!set->tracked[i]) hz = set->hz[i];
        if (!set->tracked[i] || !(width > 0.0)) width = set->tracked[i] ? 0.0 : UNKNOWN_DAMPING * hz;
        out[n++] = (gw_pole){ hz, width };
    }
    return n;
}
