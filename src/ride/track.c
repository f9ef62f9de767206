/* SPDX-License-Identifier: MIT */
/*
 * Poles of D(p) x = 0 by Rayleigh quotient iteration in its symmetric form,
 *     y = D(p)^-1 D'(p) x,   p <- p - (y^T D y) / (y^T D' y) = p - (y^T D' x) / (y^T D' y),
 * for eight modes at once (Lancaster, Pacific Journal of Mathematics 11 (1961) 1229, generalised Rayleigh
 * quotients; from memory). It converges with the third power from close by, so the damping comes in steps.
 */
#include "ride/track.h"

#include "giveway/units.h"

#include <math.h>
#include <stdlib.h>

enum { MAX_STEPS = 30 };
/* Modes above are of no interest to a model that ends at 315 Hz [Hz]. */
static const double TRACK_HZ = 500.0;

typedef struct batch {
    int n;
    gw_lanes p;
    double tolerance;
    bool done[GW_LANES], good[GW_LANES];
    double last[GW_LANES]; /* size of the last step, relative */
    gw_lanes *x, *y, *b, *c;
} batch;

static void load(const gw_mode_set *set, int first, int end, batch *at)
{
    at->n = end - first < GW_LANES ? end - first : GW_LANES;
    for (int l = 0; l < GW_LANES; l++) {
        int mode = first + (l < at->n ? l : 0);
        gw_lanes_put(&at->p, l, set->pole[mode]);
        at->done[l] = l >= at->n;
        at->good[l] = false;
        at->last[l] = 1.0;
        for (int r = 0; r < set->n_dofs; r++) gw_lanes_put(&at->x[r], l, set->vector[mode * set->n_dofs + r]);
    }
}

static gw_lanes dot(const gw_lanes *a, const gw_lanes *b, int n)
{
    gw_lanes sum;
    gw_lanes_fill(&sum, 0.0);
    for (int r = 0; r < n; r++) gw_lanes_add_product(&sum, &a[r], &b[r]);
    return sum;
}

static double largest(const gw_lanes *x, int n, int lane)
{
    double most = 0.0;
    for (int r = 0; r < n; r++) {
        double square = x[r].re[lane] * x[r].re[lane] + x[r].im[lane] * x[r].im[lane];
        if (!(square <= most)) most = square; /* not a number stays, and is found out */
    }
    return sqrt(most);
}

/* A singular D is what is looked for: where the numbers overflow, the last p was as good as it gets. */
static void move_lane(batch *at, int lane, int n, double complex step)
{
    double size = largest(at->y, n, lane);
    double complex p = gw_lanes_get(&at->p, lane);
    if (!isfinite(creal(step)) || !isfinite(cimag(step)) || !isfinite(size) || size == 0.0) {
        at->done[lane] = true;
        at->good[lane] = at->last[lane] < 100.0 * at->tolerance;
        return;
    }
    for (int r = 0; r < n; r++) gw_lanes_put(&at->x[r], lane, gw_lanes_get(&at->y[r], lane) / size);
    gw_lanes_put(&at->p, lane, p - step);
    at->last[lane] = cabs(step) / cabs(p);
    at->done[lane] = at->good[lane] = at->last[lane] < at->tolerance;
}

static bool iterate(gw_ride_model *model, batch *at, gw_damping_share share)
{
    int n = model->n;
    gw_ride_slope_times(model, &at->p, share, at->x, at->b);
    for (int r = 0; r < n; r++) at->y[r] = at->b[r];
    gw_ride_factorise(model, &at->p, share);
    gw_ride_backsolve(model, 0, at->y);
    gw_ride_slope_times(model, &at->p, share, at->y, at->c);
    gw_lanes top = dot(at->y, at->b, n), below = dot(at->y, at->c, n);
    bool all = true;
    for (int l = 0; l < GW_LANES; l++) {
        if (!at->done[l]) move_lane(at, l, n, gw_lanes_get(&top, l) / gw_lanes_get(&below, l));
        all = all && at->done[l];
    }
    return all;
}

static void store(const batch *at, int first, gw_mode_set *set)
{
    for (int l = 0; l < at->n; l++) {
        double complex p = gw_lanes_get(&at->p, l);
        set->tracked[first + l] = at->good[l] && cimag(p) > 1e-3 * cabs(p);
        if (!set->tracked[first + l]) continue;
        set->pole[first + l] = p;
        for (int r = 0; r < set->n_dofs; r++)
            set->vector[(first + l) * set->n_dofs + r] = gw_lanes_get(&at->x[r], l);
    }
}

gw_status gw_track(gw_ride_model *model, gw_mode_set *set, int first, int end, gw_damping_share share,
                   double tolerance, gw_error *err)
{
    size_t n = (size_t)model->n;
    gw_lanes *memory = calloc(4 * n, sizeof *memory);
    if (!memory) return gw_fail(err, GW_E_NOMEM, "out of memory while working out the modes");
    batch at = {
        .tolerance = tolerance, .x = memory, .y = memory + n, .b = memory + 2 * n, .c = memory + 3 * n
    };
    for (; first < end; first += GW_LANES) {
        load(set, first, end, &at);
        for (int step = 0; step < MAX_STEPS; step++)
            if (iterate(model, &at, share)) break;
        store(&at, first, set);
    }
    free(memory);
    return GW_OK;
}

/* Two modes cannot have the same pole: the later one was lost on the way. */
static void drop_doubles(gw_mode_set *set)
{
    for (int i = 0; i < set->n; i++)
        for (int j = 0; j < i; j++)
            if (set->tracked[i] && set->tracked[j] &&
                cabs(set->pole[i] - set->pole[j]) < 1e-7 * cabs(set->pole[i]))
                set->tracked[i] = false;
}

static int count_of_interest(const gw_mode_set *set)
{
    int n = 0;
    while (n < set->n && set->hz[n] < TRACK_HZ) n++;
    return n;
}

gw_status gw_modes_damped(gw_ride_model *model, gw_mode_set *set, gw_error *err)
{
    const double steps[] = { 0.2, 0.6, 1.0 }, tolerance[] = { 1e-3, 1e-3, 1e-8 };
    int end = count_of_interest(set);
    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++) {
        gw_status st = gw_track(model, set, 0, end, steps[i], tolerance[i], err);
        if (st != GW_OK) return st;
    }
    drop_doubles(set);
    return GW_OK;
}

gw_status gw_modes_follow(gw_ride_model *model, gw_mode_set *set, gw_error *err)
{
    gw_status st = gw_track(model, set, 0, count_of_interest(set), 1.0, 1e-3, err);
    if (st == GW_OK) drop_doubles(set);
    return st;
}
