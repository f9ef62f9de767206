/* SPDX-License-Identifier: MIT */
/* The smallest movement within limits: closed forms, and a search over a grid that no answer may lose to. */
#include "study/least.h"
#include "support/check.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { N = 4 };

typedef struct problem {
    gw_least_problem p;
    double row[GW_LEAST_ROWS][N], lo[N], hi[N], cost[N];
    gw_disc disc;
    double x[N];
    bool holds[N];
} problem;

/* n movements between -5 and 5 that cost alike; no rows. */
static void begin(problem *q, int n)
{
    memset(q, 0, sizeof *q);
    for (int i = 0; i < n; i++) {
        q->lo[i] = -5.0;
        q->hi[i] = 5.0;
        q->cost[i] = 1.0;
    }
    q->p = (gw_least_problem){
        .n = n, .lo = q->lo, .hi = q->hi, .cost = q->cost, .disc = &q->disc, .nothing = 1e-6, .exact = 1e-12
    };
}

static void add_row(problem *q, const double *a, double want)
{
    int r = q->p.n_rows++;
    memcpy(q->row[r], a, (size_t)q->p.n * sizeof *a);
    q->p.row[r] = q->row[r];
    q->p.want[r] = want;
}

static void solve(problem *q)
{
    gw_least *least = gw_least_open(q->p.n, q->p.n_discs);
    assert_non_null(least);
    gw_least_solve(least, &q->p, q->x, q->holds);
    gw_least_close(least);
}

static double value(const problem *q, int row, const double *x)
{
    double sum = 0.0;
    for (int i = 0; i < q->p.n; i++) sum += q->row[row][i] * x[i];
    return sum;
}

static void one_row_is_met_by_the_shortest_movement(void **unused)
{
    (void)unused;
    problem q;
    begin(&q, 3);
    add_row(&q, (double[]){ 0.3, -0.4, 1.2 }, 1.69);
    solve(&q);
    check_abs(q.x[0], 0.3, 1e-12, "along the row"); /* b a/|a|^2, |a|^2 = 1.69 */
    check_abs(q.x[1], -0.4, 1e-12, "along the row");
    check_abs(q.x[2], 1.2, 1e-12, "along the row");
}

static void a_cheap_movement_is_used_first(void **unused)
{
    (void)unused;
    problem q;
    begin(&q, 2);
    q.cost[1] = 1e-7;
    add_row(&q, (double[]){ 1.0, 0.2 }, 0.7);
    solve(&q);
    check_abs(q.x[1], 3.5, 1e-4, "the cheap one");
    check_abs(q.x[0], 0.0, 1e-5, "the dear one");
}

static void a_limit_hands_the_rest_to_the_next(void **unused)
{
    (void)unused;
    problem q;
    begin(&q, 2);
    q.cost[1] = 1e-7;
    add_row(&q, (double[]){ 1.0, 0.2 }, 1.6);
    solve(&q);
    check_abs(q.x[1], 5.0, 0.0, "at its limit");
    check_abs(q.x[0], 0.6, 1e-12, "the rest");
    assert_false(q.holds[0] || q.holds[1]); /* the row is met: nothing is held up */
}

static void out_of_reach_of_a_disc_is_its_nearest_edge(void **unused)
{
    (void)unused;
    problem q;
    begin(&q, 2);
    q.disc = (gw_disc){ .radius = 5.0 };
    q.p.n_discs = 1;
    add_row(&q, (double[]){ 0.6, 0.8 }, 17.0);
    solve(&q);
    check_abs(q.x[0], 3.0, 1e-4, "R a1/|a|");
    check_abs(q.x[1], 4.0, 1e-4, "R a2/|a|");
    check_abs(value(&q, 0, q.x), 5.0, 1e-8, "as near as it gets");
    assert_true(q.holds[0] && q.holds[1]);
}

static void the_second_row_gives_way_to_the_first(void **unused)
{
    (void)unused;
    problem q;
    begin(&q, 3);
    q.disc = (gw_disc){ .radius = 2.0 };
    q.p.n_discs = 1;
    add_row(&q, (double[]){ 1.0, 0.0, 0.5 }, 1.0); /* met by many */
    add_row(&q, (double[]){ 0.3, 1.0, 0.0 }, 9.0); /* out of reach: the disc's edge along (0.3, 1) */
    solve(&q);
    double edge = 2.0 * hypot(0.3, 1.0);
    check_abs(value(&q, 0, q.x), 1.0, 1e-10, "the first row");
    check_abs(value(&q, 1, q.x), edge, 1e-8, "the second, at the edge of the disc");
    check_abs(q.x[2], 2.0 * (1.0 - q.x[0]), 1e-9, "the third movement makes up for it");
    assert_false(q.holds[2]);
}

static void rows_that_say_the_same_leave_the_later_one_unmet(void **unused)
{
    (void)unused;
    problem q;
    begin(&q, 1);
    add_row(&q, (double[]){ 0.35 }, 0.7);
    add_row(&q, (double[]){ -0.01 }, 0.5);
    solve(&q);
    check_abs(q.x[0], 2.0, 1e-12, "the first row alone");
    assert_false(q.holds[0]); /* no limit is to blame */
}

static void what_moves_nothing_stays_at_rest(void **unused)
{
    (void)unused;
    problem q;
    begin(&q, 2);
    add_row(&q, (double[]){ 1e-9, 0.5 }, 20.0);
    solve(&q);
    check_abs(q.x[0], 0.0, 0.0, "a slope that is only rounding");
    check_abs(q.x[1], 5.0, 0.0, "the other at its limit");
}

/* ---- no point of a grid may be better ---- */

static unsigned seed = 2385;
static double drawn(double lo, double hi)
{
    seed = seed * 1664525u + 1013904223u;
    return lo + (hi - lo) * (seed >> 8) / 16777216.0;
}

static double movement(const problem *q, const double *x)
{
    double sum = 0.0;
    for (int i = 0; i < q->p.n; i++) sum += q->cost[i] * x[i] * x[i];
    return sum;
}

/* Moves a point of the grid onto the first row by its third coordinate, which no disc holds. */
static bool onto_first_row(const problem *q, double *x)
{
    x[2] += (q->p.want[0] - value(q, 0, x)) / q->row[0][2];
    return x[2] >= q->lo[2] && x[2] <= q->hi[2];
}

static void compare_with_grid(const problem *q)
{
    double best = fabs(q->p.want[1] - value(q, 1, q->x)), cost = movement(q, q->x);
    for (int i = -20; i <= 20; i++)
        for (int j = -20; j <= 20; j++) {
            const double *c = q->disc.centre, step = 0.05 * q->disc.radius;
            double x[N] = { c[0] + i * step, c[1] + j * step, 0 };
            if (hypot(x[0] - c[0], x[1] - c[1]) > q->disc.radius || !onto_first_row(q, x)) continue;
            double miss = fabs(q->p.want[1] - value(q, 1, x));
            if (miss < best - 1e-8) fail_msg("a point of the grid misses by %g, less than %g", miss, best);
            if (best < 1e-9 && miss < 1e-9 && movement(q, x) < cost - 1e-8)
                fail_msg("a point of the grid moves less");
        }
}

static void no_point_of_a_grid_is_better(void **unused)
{
    (void)unused;
    int met = 0;
    for (int k = 0; k < 200; k++) {
        problem q;
        begin(&q, 3);
        const double radius = drawn(0.5, 4.0), aside = 0.2 * radius;
        q.disc = (gw_disc){ 0, radius, { drawn(-aside, aside), drawn(-aside, aside) } };
        q.p.n_discs = 1;
        q.cost[2] = 1e-3;
        add_row(&q, (double[]){ drawn(-0.2, 0.2), drawn(-0.2, 0.2), drawn(0.2, 0.5) }, drawn(-0.5, 0.5));
        add_row(&q, (double[]){ drawn(-0.3, 0.3), drawn(-0.3, 0.3), drawn(-0.1, 0.1) }, drawn(-1.5, 1.5));
        solve(&q);
        const double *c = q.disc.centre;
        assert_true(hypot(q.x[0] - c[0], q.x[1] - c[1]) <= radius * (1.0 + 1e-9));
        assert_true(fabs(q.x[2]) <= 5.0);
        check_abs(value(&q, 0, q.x), q.p.want[0], 1e-9, "the first row");
        met += fabs(value(&q, 1, q.x) - q.p.want[1]) < 1e-9;
        compare_with_grid(&q);
    }
    assert_true(met > 20 && met < 180); /* both kinds were among them */
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(one_row_is_met_by_the_shortest_movement),
        cmocka_unit_test(a_cheap_movement_is_used_first),
        cmocka_unit_test(a_limit_hands_the_rest_to_the_next),
        cmocka_unit_test(out_of_reach_of_a_disc_is_its_nearest_edge),
        cmocka_unit_test(the_second_row_gives_way_to_the_first),
        cmocka_unit_test(rows_that_say_the_same_leave_the_later_one_unmet),
        cmocka_unit_test(what_moves_nothing_stays_at_rest),
        cmocka_unit_test(no_point_of_a_grid_is_better),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
