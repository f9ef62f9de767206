/* SPDX-License-Identifier: MIT */
/*
 * The front of what no other combination beats or equals in unsteadiness, harshness and cost at once, the
 * first two in steps that a person can tell apart. Numbers in, numbers out: units are the caller's business.
 *
 * By rising cost (a sort, then a binary indexed tree of the least harshness up to each unsteadiness: P. M.
 * Fenwick, Software Practice and Experience 24 (1994), 327), so that n combinations take n log n.
 */
#include "study/choose_parts.h"

#include <limits.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

static const double SAME = 1e-6;       /* of unsteadiness and harshness */
static const double SAME_COST = 0.005; /* half of the smallest coin      */

static int by_cost(const void *a, const void *b)
{
    const gw_rated *x = a, *y = b;
    if (x->cost != y->cost) return x->cost < y->cost ? -1 : 1;
    if (x->unsteadiness != y->unsteadiness) return x->unsteadiness < y->unsteadiness ? -1 : 1;
    return (x->number > y->number) - (x->number < y->number);
}

static int by_step(const void *a, const void *b)
{
    const gw_rated *x = a, *y = b;
    if (x->u != y->u) return x->u < y->u ? -1 : 1;
    if (x->h != y->h) return x->h < y->h ? -1 : 1;
    return (x->number > y->number) - (x->number < y->number);
}

static int by_size(const void *a, const void *b)
{
    const long long *x = a, *y = b;
    return (*x > *y) - (*x < *y);
}

/* The least harshness of all that is as steady as rank `i` or steadier, ranks from 1. */
typedef struct gw_fenwick {
    int n;
    long long *least;
} gw_fenwick;

static void lower(gw_fenwick *t, int i, long long h)
{
    for (; i <= t->n; i += i & -i)
        if (h < t->least[i]) t->least[i] = h;
}

static long long least_up_to(const gw_fenwick *t, int i)
{
    long long least = LLONG_MAX;
    for (; i > 0; i -= i & -i)
        if (t->least[i] < least) least = t->least[i];
    return least;
}

/* What is known at one unsteadiness: the least harshness, and what that costs at least. */
typedef struct gw_level {
    long long h;
    double cost;
} gw_level;

typedef struct gw_sorting {
    gw_fenwick tree;
    gw_level *level; /* [rank] */
    int *rank;       /* [combination] from 1 */
    bool *beaten;
} gw_sorting;

static void take_in(gw_sorting *s, const gw_rated *r, int rank)
{
    gw_level *level = &s->level[rank];
    lower(&s->tree, rank, r->h);
    if (r->h < level->h) *level = (gw_level){ r->h, r->cost };
}

static bool is_beaten(const gw_sorting *s, const gw_rated *r, int rank)
{
    const gw_level *level = &s->level[rank];
    if (least_up_to(&s->tree, rank - 1) <= r->h || level->h < r->h) return true;
    return level->h == r->h && level->cost < r->cost - SAME_COST;
}

static int find_rank(const long long *steps, int n, long long u)
{
    int lo = 0, hi = n - 1;
    while (lo < hi) {
        int middle = (lo + hi) / 2;
        if (steps[middle] < u)
            lo = middle + 1;
        else
            hi = middle;
    }
    return lo + 1;
}

static int find_ranks(const gw_rated *rated, int n, int *rank, long long *steps)
{
    int different = 0;
    for (int i = 0; i < n; i++) steps[i] = rated[i].u;
    qsort(steps, (size_t)n, sizeof *steps, by_size);
    for (int i = 0; i < n; i++)
        if (i == 0 || steps[i] != steps[different - 1]) steps[different++] = steps[i];
    for (int i = 0; i < n; i++) rank[i] = find_rank(steps, different, rated[i].u);
    return different;
}

/* Of those equal in all three the steadiest, then the first. */
static int keep_one_of_each(gw_rated *rated, int n)
{
    int kept = 0;
    qsort(rated, (size_t)n, sizeof *rated, by_step);
    for (int i = 0, next; i < n; i = next) {
        int best = i;
        for (int j = i; j < n && rated[j].u == rated[i].u && rated[j].h == rated[i].h; j++)
            if (rated[j].unsteadiness < rated[best].unsteadiness - SAME) best = j;
        for (next = i; next < n && rated[next].u == rated[i].u && rated[next].h == rated[i].h;) next++;
        rated[kept++] = rated[best];
    }
    return kept;
}

/* Nothing as cheap or cheaper is as steady: of all up to a cost the least unsteadiness, and how many have it.
 */
static void mark_steps(gw_rated *rated, int n)
{
    long long least = LLONG_MAX;
    int many = 0;
    for (int i = 0, seen = 0; i < n; i++) {
        for (; seen < n && rated[seen].cost <= rated[i].cost + SAME_COST; seen++) {
            if (rated[seen].u > least) continue;
            many = rated[seen].u == least ? many + 1 : 1;
            least = rated[seen].u;
        }
        rated[i].step = rated[i].u == least && many == 1;
    }
}

static int sift(gw_sorting *s, gw_rated *rated, int n)
{
    int kept = 0;
    for (int i = 0, seen = 0; i < n; i++) {
        for (; seen < n && rated[seen].cost <= rated[i].cost + SAME_COST; seen++)
            take_in(s, &rated[seen], s->rank[seen]);
        s->beaten[i] = is_beaten(s, &rated[i], s->rank[i]);
    }
    for (int i = 0; i < n; i++)
        if (!s->beaten[i]) rated[kept++] = rated[i];
    return kept;
}

int gw_front_of(gw_rated *rated, int n, double tell_unsteadiness, double tell_harshness)
{
    const double u = fmax(tell_unsteadiness, SAME), h = fmax(tell_harshness, SAME);
    size_t room = (size_t)n + 2;
    long long *steps = malloc(room * sizeof *steps);
    gw_sorting s = { { 0, malloc(room * sizeof *s.tree.least) },
                     malloc(room * sizeof *s.level),
                     malloc(room * sizeof *s.rank),
                     malloc(room * sizeof *s.beaten) };
    int kept = -1;
    if (steps && s.tree.least && s.level && s.rank && s.beaten) {
        for (int i = 0; i < n; i++) {
            rated[i].u = llround(rated[i].unsteadiness / u);
            rated[i].h = llround(rated[i].harshness / h);
        }
        qsort(rated, (size_t)n, sizeof *rated, by_cost);
        s.tree.n = find_ranks(rated, n, s.rank, steps);
        for (int i = 0; i <= s.tree.n; i++) {
            s.tree.least[i] = LLONG_MAX;
            s.level[i] = (gw_level){ LLONG_MAX, HUGE_VAL };
        }
        kept = keep_one_of_each(rated, sift(&s, rated, n));
        qsort(rated, (size_t)kept, sizeof *rated, by_cost);
        mark_steps(rated, kept);
    }
    free(steps);
    free(s.tree.least);
    free(s.level);
    free(s.rank);
    free(s.beaten);
    return kept;
}

/* -- what to recommend of it -- */

/* The smaller by the first figure in which they differ. */
static bool is_before(const double *a, const double *b, const double *same, int n)
{
    for (int i = 0; i < n; i++)
        if (fabs(a[i] - b[i]) > same[i]) return a[i] < b[i];
    return false;
}

static int find_steady(const gw_rated *front, int n)
{
    static const double ALIKE[] = { SAME, SAME_COST };
    int best = 0;
    for (int i = 1; i < n; i++) {
        const double a[] = { front[i].unsteadiness, front[i].cost },
                     b[] = { front[best].unsteadiness, front[best].cost };
        if (is_before(a, b, ALIKE, 2)) best = i;
    }
    return best;
}

static int find_quiet(const gw_rated *front, int n, double now, double gain)
{
    static const double ALIKE[] = { 0.5, SAME_COST, SAME };
    int best = -1;
    for (int i = 0; i < n; i++) {
        const gw_rated *r = &front[i], *q = best < 0 ? NULL : &front[best];
        if (now - r->unsteadiness < 2.0 / 3.0 * gain - SAME) continue;
        const double a[] = { (double)r->h, r->cost, r->unsteadiness };
        if (!q || is_before(a, (const double[]){ (double)q->h, q->cost, q->unsteadiness }, ALIKE, 3))
            best = i;
    }
    return best;
}

static double value_of(const gw_rated *r, double now, double gain, double cost)
{
    double share = cost > 0.0 ? r->cost / cost : r->cost > 0.0 ? HUGE_VAL : 0.0;
    return (now - r->unsteadiness) / gain - share;
}

static int find_value(const gw_rated *front, int n, double now, double gain, double cost)
{
    static const double ALIKE[] = { SAME, SAME_COST };
    int best = 0;
    for (int i = 1; i < n; i++) {
        const double a[] = { -value_of(&front[i], now, gain, cost), front[i].cost },
                     b[] = { -value_of(&front[best], now, gain, cost), front[best].cost };
        if (is_before(a, b, ALIKE, 2)) best = i;
    }
    return best;
}

bool gw_recommend(const gw_rated *front, int n, double now, int member[GW_RECOMMENDED])
{
    if (n == 0) return false;
    int steady = find_steady(front, n);
    double gain = now - front[steady].unsteadiness;
    if (!(gain > SAME)) return false;
    member[GW_FOR_STEADY] = steady;
    member[GW_FOR_QUIET] = find_quiet(front, n, now, gain);
    member[GW_FOR_VALUE] = find_value(front, n, now, gain, front[steady].cost);
    return true;
}
