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

enum { IDLE = -1 };

/* A mode in each lane; where one is done, the next takes its place. */
typedef struct batch {
    int mode[GW_LANES], steps[GW_LANES]; /* IDLE: none is left */
    gw_lanes p;
    double tolerance;
    bool done[GW_LANES], good[GW_LANES];
    double last[GW_LANES]; /* size of the last step, relative */
    gw_lanes *x, *y, *b, *c;
} batch;

static void load(const gw_mode_set *set, int mode, batch *at, int lane)
{
    at->mode[lane] = mode;
    at->steps[lane] = 0;
    at->done[lane] = at->good[lane] = false;
    at->last[lane] = 1.0;
    gw_lanes_put(&at->p, lane, set->pole[mode]);
    for (int r = 0; r < set->n_dofs; r++) gw_lanes_put(&at->x[r], lane, set->vector[mode * set->n_dofs + r]);
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

static void iterate(gw_ride_model *model, batch *at, gw_damping_share share)
{
    int n = model->n;
    gw_ride_slope_times(model, &at->p, share, at->x, at->b);
    for (int r = 0; r < n; r++) at->y[r] = at->b[r];
    gw_ride_factorise(model, &at->p, share);
    gw_ride_backsolve(model, 0, at->y);
    gw_ride_slope_times(model, &at->p, share, at->y, at->c);
    gw_lanes top = dot(at->y, at->b, n), below = dot(at->y, at->c, n);
    for (int l = 0; l < GW_LANES; l++) {
        if (at->mode[l] == IDLE) continue;
        move_lane(at, l, n, gw_lanes_get(&top, l) / gw_lanes_get(&below, l));
        if (++at->steps[l] == MAX_STEPS) at->done[l] = true;
    }
}

static void store(const batch *at, int lane, gw_mode_set *set)
{
    int mode = at->mode[lane];
    double complex p = gw_lanes_get(&at->p, lane);
    set->tracked[mode] = at->good[lane] && cimag(p) > 1e-3 * cabs(p);
    if (!set->tracked[mode]) return;
    set->pole[mode] = p;
    for (int r = 0; r < set->n_dofs; r++) set->vector[mode * set->n_dofs + r] = gw_lanes_get(&at->x[r], lane);
}

/* Modes that are done go, the next ones come; is any left? Idle lanes go on with what they hold. */
static bool refill(batch *at, gw_mode_set *set, int *next, int end)
{
    bool any = false;
    for (int l = 0; l < GW_LANES; l++) {
        if (at->mode[l] == IDLE) continue;
        if (at->done[l]) {
            store(at, l, set);
            at->mode[l] = IDLE;
            if (*next < end) load(set, (*next)++, at, l);
        }
        any = any || at->mode[l] != IDLE;
    }
    return any;
}

static void begin(const gw_mode_set *set, int first, int end, int *next, batch *at)
{
    *next = first;
    for (int l = 0; l < GW_LANES; l++) {
        load(set, *next < end ? *next : first, at, l);
        if (*next >= end) at->mode[l] = IDLE;
        if (*next < end) ++*next;
    }
}

gw_status gw_track(gw_ride_model *model, gw_mode_set *set, int first, int end, gw_damping_share share,
                   double tolerance, gw_error *err)
{
    size_t n = (size_t)model->n;
    int next;
    if (first >= end) return GW_OK;
    gw_lanes *memory = calloc(4 * n, sizeof *memory);
    if (!memory) return gw_fail(err, GW_E_NOMEM, "out of memory while working out the modes");
    batch at = {
        .tolerance = tolerance, .x = memory, .y = memory + n, .b = memory + 2 * n, .c = memory + 3 * n
    };
    begin(set, first, end, &next, &at);
    do iterate(model, &at, share);
    while (refill(&at, set, &next, end));
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
