/* SPDX-License-Identifier: MIT */
/* The arithmetic of the planner: the front, its steps, what is recommended of it. */
#include "study/choose_parts.h"
#include "support/check.h"

#include <math.h>
#include <stdlib.h>

static int numbers_of(const gw_rated *front, int n, int *out)
{
    for (int i = 0; i < n; i++) out[i] = front[i].number;
    return n;
}

static void check_front(gw_rated *rated, int n, double tell_u, double tell_h, const int *want, int n_want)
{
    int got[64];
    int kept = numbers_of(rated, gw_front_of(rated, n, tell_u, tell_h), got);
    if (kept != n_want) fail_msg("%d members, expected %d", kept, n_want);
    for (int i = 0; i < kept; i++) assert_int_equal(got[i], want[i]);
}

/* Worked out by hand: 2 is beaten by 1 (as steady, as harsh, dearer); 4 by 3 in steadiness alone; 5 is dear
 * and harsh but the steadiest. */
static void the_front_is_what_none_beats_or_equals(void **state)
{
    gw_rated r[] = { { .unsteadiness = 0.40, .harshness = 0, .cost = 0, .number = 0 },
                     { .unsteadiness = 0.30, .harshness = 1, .cost = 50, .number = 1 },
                     { .unsteadiness = 0.30, .harshness = 1, .cost = 60, .number = 2 },
                     { .unsteadiness = 0.35, .harshness = -1, .cost = 50, .number = 3 },
                     { .unsteadiness = 0.36, .harshness = -1, .cost = 50, .number = 4 },
                     { .unsteadiness = 0.10, .harshness = 5, .cost = 500, .number = 5 },
                     { .unsteadiness = 0.41, .harshness = 0, .cost = 0, .number = 6 } };
    static const int WANT[] = { 0, 1, 3, 5 };
    (void)state;
    check_front(r, 7, 0, 0, WANT, 4);
    assert_true(r[0].step && r[1].step && !r[2].step && r[3].step);
}

/* Quieter for more money, but no steadier: on the front, and no step. */
static void a_step_is_steadier_than_all_that_is_as_cheap(void **state)
{
    gw_rated r[] = { { .unsteadiness = 0.4, .harshness = 2, .cost = 0, .number = 0 },
                     { .unsteadiness = 0.4, .harshness = 1, .cost = 50, .number = 1 },
                     { .unsteadiness = 0.3, .harshness = 3, .cost = 60, .number = 2 } };
    static const int WANT[] = { 0, 1, 2 };
    (void)state;
    check_front(r, 3, 0, 0, WANT, 3);
    assert_true(r[0].step && !r[1].step && r[2].step);
}

/* 0.304 and 0.296 are both 0.30 to a person who tells 0.01 apart; of the two the steadier stays, at one cost.
 */
static void what_cannot_be_told_apart_is_one(void **state)
{
    gw_rated r[] = { { .unsteadiness = 0.304, .harshness = 1.0, .cost = 50, .number = 0 },
                     { .unsteadiness = 0.296, .harshness = 1.2, .cost = 50.004, .number = 1 },
                     { .unsteadiness = 0.296, .harshness = 1.2, .cost = 50.02, .number = 2 } };
    static const int WANT[] = { 1 };
    (void)state;
    check_front(r, 3, 0.01, 0.5, WANT, 1);
}

static void of_what_is_equal_the_first_stays(void **state)
{
    gw_rated r[] = { { .unsteadiness = 0.3 + 4e-7, .harshness = 1, .cost = 50, .number = 7 },
                     { .unsteadiness = 0.3, .harshness = 1, .cost = 50, .number = 9 } };
    static const int WANT[] = { 7 };
    (void)state;
    check_front(r, 2, 0.01, 0.5, WANT, 1);
}

/* One variable, two aims, x^2 and (x - 2)^2: none is beaten between 0 and 2, all are outside. */
static void the_front_of_schaffer_is_from_zero_to_two(void **state)
{
    check_from(
        "J. D. Schaffer, Multiple objective optimization with vector evaluated genetic algorithms, Proc. 1st "
        "Int. Conf. on Genetic Algorithms (1985), 93, function f2: the front is 0 <= x <= 2");
    enum { N = 81 };
    gw_rated r[N];
    (void)state;
    for (int i = 0; i < N; i++) {
        double x = -3.0 + 0.1 * i;
        r[i] = (gw_rated){ .unsteadiness = x * x, .harshness = (x - 2) * (x - 2), .cost = 10, .number = i };
    }
    int n = gw_front_of(r, N, 0, 0);
    check_abs(n, 21, 0, "members of the front");
    double lo = 1e9, hi = -1e9;
    for (int i = 0; i < n; i++) {
        lo = fmin(lo, -3.0 + 0.1 * r[i].number);
        hi = fmax(hi, -3.0 + 0.1 * r[i].number);
    }
    check_abs(lo, 0.0, 1e-12, "least x");
    check_abs(hi, 2.0, 1e-12, "greatest x");
}

/* Three aims (1 + g) times a point of the sphere: the front is the sphere itself, where g is 0. */
static void the_front_of_dtlz2_is_the_unit_sphere(void **state)
{
    check_from("K. Deb, L. Thiele, M. Laumanns, E. Zitzler, Scalable multi-objective optimization test "
               "problems, Proc. "
               "CEC 2002, 825, problem DTLZ2: the front is f1^2 + f2^2 + f3^2 = 1");
    enum { K = 12, G = 4, N = K * K * G };
    static gw_rated r[N];
    int n = 0;
    (void)state;
    for (int g = 0; g < G; g++)
        for (int i = 0; i < K; i++)
            for (int j = 0; j < K; j++) {
                double a = (i + 0.5) / K * 1.5707963267948966, b = (j + 0.5) / K * 1.5707963267948966;
                double s = 1.0 + 0.4 * g;
                r[n] = (gw_rated){ .unsteadiness = s * cos(a) * cos(b),
                                   .harshness = s * cos(a) * sin(b),
                                   .cost = 1000 * s * sin(a),
                                   .number = n };
                n++;
            }
    int kept = gw_front_of(r, n, 0, 0);
    check_abs(kept, K * K, 0, "members of the front");
    for (int i = 0; i < kept; i++) {
        double f3 = r[i].cost / 1000,
               f = r[i].unsteadiness * r[i].unsteadiness + r[i].harshness * r[i].harshness;
        check_abs(f + f3 * f3, 1.0, 1e-12, "distance from the origin");
    }
}

/* The same from the definition, pair by pair, on numbers that are often equal. */
static bool beats(const gw_rated *b, const gw_rated *a, bool *equal)
{
    long long ub = llround(b->unsteadiness / 0.01), ua = llround(a->unsteadiness / 0.01);
    long long hb = llround(b->harshness / 0.5), ha = llround(a->harshness / 0.5);
    *equal = ub == ua && hb == ha && fabs(b->cost - a->cost) <= 0.005;
    return ub <= ua && hb <= ha && b->cost <= a->cost + 0.005;
}

static bool belongs(const gw_rated *all, int n, int a)
{
    for (int b = 0; b < n; b++) {
        bool equal;
        if (b == a || !beats(&all[b], &all[a], &equal)) continue;
        if (!equal) return false;
        double by = all[a].unsteadiness - all[b].unsteadiness;
        if (by > 1e-6 || (fabs(by) <= 1e-6 && b < a)) return false;
    }
    return true;
}

static void the_fast_way_finds_what_the_definition_says(void **state)
{
    enum { N = 400 };
    static gw_rated all[N], r[N];
    unsigned long seed = 12345;
    (void)state;
    for (int round = 0; round < 20; round++) {
        for (int i = 0; i < N; i++) {
            double x[3];
            for (int k = 0; k < 3; k++) {
                seed = seed * 6364136223846793005ul + 1442695040888963407ul;
                x[k] = (double)(seed >> 40) / 16777216.0;
            }
            all[i] = r[i] = (gw_rated){ .unsteadiness = 0.3 * x[0],
                                        .harshness = 8 * x[1] * (1 - 0.5 * x[0]),
                                        .cost = floor(60 * x[2] * (1 - 0.5 * x[0])),
                                        .number = i };
        }
        int n = gw_front_of(r, N, 0.01, 0.5), want = 0;
        for (int i = 0; i < N; i++) want += belongs(all, N, i);
        assert_int_equal(n, want);
        for (int i = 0; i < n; i++) assert_true(belongs(all, N, r[i].number));
        for (int i = 1; i < n; i++) assert_true(r[i - 1].cost <= r[i].cost);
    }
}

/* Gains 0.1, 0.2, 0.28, 0.3 of 0.5; two thirds of the best is 0.2. */
static void recommendations_follow_their_rules(void **state)
{
    gw_rated r[] = { { .unsteadiness = 0.40, .harshness = 0, .h = 0, .cost = 40 },
                     { .unsteadiness = 0.30, .harshness = 1, .h = 2, .cost = 100 },
                     { .unsteadiness = 0.22, .harshness = 3, .h = 6, .cost = 130 },
                     { .unsteadiness = 0.20, .harshness = 6, .h = 12, .cost = 600 } };
    int member[GW_RECOMMENDED];
    (void)state;
    assert_true(gw_recommend(r, 4, 0.5, member));
    assert_int_equal(member[GW_FOR_STEADY], 3);
    assert_int_equal(member[GW_FOR_QUIET], 1);
    assert_int_equal(member[GW_FOR_VALUE], 2); /* 0.933 less 0.217; then 0.5, 0.267, 0 */
}

static void nothing_is_recommended_where_nothing_gains(void **state)
{
    gw_rated r[] = { { .unsteadiness = 0.40, .cost = 0 } };
    int member[GW_RECOMMENDED];
    (void)state;
    assert_false(gw_recommend(r, 1, 0.4, member));
    assert_false(gw_recommend(r, 1, 0.3, member));
    assert_false(gw_recommend(r, 0, 0.3, member));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_front_is_what_none_beats_or_equals),
        cmocka_unit_test(a_step_is_steadier_than_all_that_is_as_cheap),
        cmocka_unit_test(what_cannot_be_told_apart_is_one),
        cmocka_unit_test(of_what_is_equal_the_first_stays),
        cmocka_unit_test(the_front_of_schaffer_is_from_zero_to_two),
        cmocka_unit_test(the_front_of_dtlz2_is_the_unit_sphere),
        cmocka_unit_test(the_fast_way_finds_what_the_definition_says),
        cmocka_unit_test(recommendations_follow_their_rules),
        cmocka_unit_test(nothing_is_recommended_where_nothing_gains),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
