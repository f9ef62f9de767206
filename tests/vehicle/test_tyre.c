/* SPDX-License-Identifier: MIT */
/* A tyre given as a table: what a smooth law gives, between the points, beyond them, and in an axle. */
#include "support/check.h"

#include "giveway/balance.h"
#include "giveway/units.h"

#include <gsl/gsl_errno.h>
#include <math.h>

enum { SLIPS = 15, LOADS = 8, LEANS = 3 };

/* An invented law with load sensitivity: F = D sin(atan(B slip)) ..., smooth, odd in slip, linear in lean. */
static double law(double slip, double load, double lean)
{
    double peak = load * (1.25 - 4.5e-5 * load);
    return peak * sin(1.3 * atan(13.1 * slip)) + 0.95 * load * lean;
}

typedef struct grid {
    double slip[SLIPS], load[LOADS], lean[LEANS], force[SLIPS * LOADS * LEANS];
    gw_tyre_table table;
} grid;

static void make_grid(grid *g)
{
    for (int i = 0; i < SLIPS; i++) g->slip[i] = i * GW_DEG;
    for (int j = 0; j < LOADS; j++) g->load[j] = 1000.0 * (j + 1);
    for (int k = 0; k < LEANS; k++) g->lean[k] = (4 * k - 4) * GW_DEG;
    for (int k = 0; k < LEANS; k++)
        for (int j = 0; j < LOADS; j++)
            for (int i = 0; i < SLIPS; i++)
                g->force[(k * LOADS + j) * SLIPS + i] = law(g->slip[i], g->load[j], g->lean[k]);
    g->table = (gw_tyre_table){ SLIPS, LOADS, LEANS, g->slip, g->load, g->lean, g->force };
}

static gw_tyre *open_grid(grid *g)
{
    gw_tyre *tyre = NULL;
    gw_error err = { 0 };
    make_grid(g);
    const gw_tyre_data data = { .table = &g->table };
    if (gw_tyre_open(&data, &tyre, &err) != GW_OK) fail_msg("%s", err.msg);
    return tyre;
}

static gw_tyre_force force_at(const gw_tyre *tyre, double slip, double load, double lean)
{
    gw_tyre_force f;
    gw_error err = { 0 };
    if (gw_tyre_lateral(tyre, slip, load, lean, &f, &err) != GW_OK) fail_msg("%s", err.msg);
    return f;
}

static void table_is_exact_at_its_points(void **unused)
{
    (void)unused;
    grid g;
    gw_tyre *tyre = open_grid(&g);
    for (int k = 0; k < LEANS; k++)
        for (int j = 0; j < LOADS; j++)
            for (int i = 0; i < SLIPS; i++)
                check_rel(force_at(tyre, g.slip[i], g.load[j], g.lean[k]).force,
                          law(g.slip[i], g.load[j], g.lean[k]), 1e-12, "at a point");
    gw_tyre_close(tyre);
}

/* The error of a cubic through a degree of slip and 1 kN of load is of the order of 0.1 % here; the slope of
 * a natural spline at its ends is worse. */
static void table_follows_the_law_between_its_points(void **unused)
{
    (void)unused;
    grid g;
    gw_tyre *tyre = open_grid(&g);
    for (double slip = 2.385; slip < 11.0; slip += 1.37) {
        gw_tyre_force f = force_at(tyre, slip * GW_DEG, 4730, -1.7 * GW_DEG);
        double h = 1e-5, a = slip * GW_DEG, lean = -1.7 * GW_DEG;
        check_rel(f.force, law(a, 4730, lean), 2e-3, "force");
        check_abs(f.cornering, (law(a + h, 4730, lean) - law(a - h, 4730, lean)) / (2 * h), 900, "slope");
        check_rel(f.camber, 0.95 * 4730, 1e-9, "camber stiffness");
    }
    gw_tyre_close(tyre);
}

static void tyre_measured_from_zero_slip_is_mirrored(void **unused)
{
    (void)unused;
    grid g;
    gw_tyre *tyre = open_grid(&g);
    gw_tyre_force one = force_at(tyre, 2.385 * GW_DEG, 3300, 1.1 * GW_DEG);
    gw_tyre_force other = force_at(tyre, -2.385 * GW_DEG, 3300, -1.1 * GW_DEG);
    check_rel(other.force, -one.force, 1e-14, "force");
    check_rel(other.cornering, one.cornering, 1e-14, "slope");
    check_rel(other.camber, one.camber, 1e-14, "camber");
    gw_tyre_close(tyre);
}

static void beyond_the_table_load_is_held_and_slip_refused(void **unused)
{
    (void)unused;
    grid g;
    gw_tyre *tyre = open_grid(&g);
    gw_tyre_force f = { 0 };
    gw_error err = { 0 };
    check_rel(force_at(tyre, 0.05, 9500, 0).force, law(0.05, 8000, 0), 5e-3, "at the greatest load");
    assert_false(gw_tyre_within(tyre, 9500, 0));
    assert_false(gw_tyre_within(tyre, 4000, 5 * GW_DEG));
    assert_true(gw_tyre_within(tyre, 4000, -3.9 * GW_DEG));
    assert_int_equal(gw_tyre_lateral(tyre, 20 * GW_DEG, 4000, 0, &f, &err), GW_E_NUMERIC);
    check_contains(err.msg, "more slip angle than the tyre table holds");
    assert_int_equal(gw_tyre_lateral(tyre, (double)NAN, 4000, 0, &f, &err), GW_E_RANGE);
    check_abs(f.force, 0.0, 0.0, "output untouched");
    gw_tyre_close(tyre);
}

/* Load transfer costs grip: two tyres at 4 +- 1.2 kN need more slip than two at 4 kN. Closed form by
 * bisection on the law itself. */
static double slip_of_law(double outer, double inner, double force)
{
    double low = 0.0, high = 0.1;
    for (int i = 0; i < 60; i++) {
        double mid = 0.5 * (low + high);
        *(law(mid, outer, 0) + law(mid, inner, 0) < force ? &low : &high) = mid;
    }
    return low;
}

static void load_transfer_costs_slip_as_the_law_says(void **unused)
{
    (void)unused;
    grid g;
    gw_tyre *tyre = open_grid(&g);
    double level[GW_BUDGET_ENTRIES], moved[GW_BUDGET_ENTRIES];
    gw_axle_state s = { .g = 0.5, .force = 4000 };
    s.wheel[GW_OUTER].vertical = s.wheel[GW_INNER].vertical = 4000;
    assert_int_equal(gw_budget_entries(tyre, &s, level, NULL), GW_OK);
    s.wheel[GW_OUTER].vertical = 5200;
    s.wheel[GW_INNER].vertical = 2800;
    assert_int_equal(gw_budget_entries(tyre, &s, moved, NULL), GW_OK);
    check_rel(level[GW_BUDGET_TYRE] * 0.5, slip_of_law(4000, 4000, 4000), 3e-3, "even");
    check_rel(moved[GW_BUDGET_TYRE] * 0.5, slip_of_law(5200, 2800, 4000), 3e-3, "moved");
    assert_true(moved[GW_BUDGET_TYRE] > 1.01 * level[GW_BUDGET_TYRE]);
    check_abs(moved[GW_BUDGET_CURVE], 0.0, 1e-9, "nothing but the tyre");
    gw_tyre_close(tyre);
}

static void entries_of_a_curved_tyre_add_up_to_the_slip_of_all_together(void **unused)
{
    (void)unused;
    grid g;
    gw_tyre *tyre = open_grid(&g);
    gw_axle_state s = { .g = 0.6, .force = 4600, .aligning = 37 };
    double e[GW_BUDGET_ENTRIES], sum = 0.0;
    s.wheel[GW_OUTER] =
        (gw_wheel_state){ 5100, { 0.001, -0.002, 0.0004, -0.001, -0.0007 }, { -0.018, 0.011, 0.004 } };
    s.wheel[GW_INNER] =
        (gw_wheel_state){ 2900, { 0.001, 0.0015, -0.0002, 0.0003, 0.0002 }, { -0.018, -0.013, -0.002 } };
    assert_int_equal(gw_budget_entries(tyre, &s, e, NULL), GW_OK);
    for (int i = 0; i < GW_BUDGET_ENTRIES; i++) sum += e[i] * s.g;
    double toe_o = 0.001 - 0.002 + 0.0004 - 0.001 - 0.0007, toe_i = 0.001 + 0.0015 - 0.0002 + 0.0003 + 0.0002;
    double got =
        force_at(tyre, sum + toe_o, 5100, 0.003).force + force_at(tyre, sum - toe_i, 2900, -0.033).force;
    check_abs(got, 4637, 1e-6, "both tyres at that slip carry the axle");
    gw_tyre_close(tyre);
}

static void axle_beyond_its_tyres_is_told_so(void **unused)
{
    (void)unused;
    grid g;
    gw_tyre *tyre = open_grid(&g);
    double e[GW_BUDGET_ENTRIES];
    gw_error err = { 0 };
    gw_axle_state s = { .g = 1.4, .force = 11200 };
    s.wheel[GW_OUTER].vertical = s.wheel[GW_INNER].vertical = 4000;
    assert_int_equal(gw_budget_entries(tyre, &s, e, &err), GW_E_NUMERIC);
    check_contains(err.msg, "cannot carry 11200 N");
    check_contains(err.msg, "1.40 g");
    gw_tyre_close(tyre);
}

/* A table measured every quarter of a degree with 2 % of scatter, by a generator of our own with a fixed
 * seed, and with a force of an upright tyre at zero slip. */
enum { FINE = 57, BOTH = 2 * FINE - 1 };

typedef struct fine_grid {
    double slip[BOTH], load[LOADS], lean[1], force[BOTH * LOADS];
    gw_tyre_table table;
} fine_grid;

static double scatter(unsigned *state)
{
    *state = *state * 1103515245u + 12345u;
    return (double)(*state >> 16 & 0x7fff) / 16383.5 - 1.0;
}

static gw_tyre *open_fine(fine_grid *g, double noise, unsigned seed)
{
    gw_tyre *tyre = NULL;
    for (int i = 0; i < FINE; i++) g->slip[i] = 0.25 * i * GW_DEG;
    for (int j = 0; j < LOADS; j++) g->load[j] = 1000.0 * (j + 1);
    g->lean[0] = 0.0;
    for (int j = 0; j < LOADS; j++)
        for (int i = 0; i < FINE; i++)
            g->force[j * FINE + i] = law(g->slip[i], g->load[j], 0) * (1.0 + noise * scatter(&seed));
    g->table = (gw_tyre_table){ FINE, LOADS, 1, g->slip, g->load, g->lean, g->force };
    const gw_tyre_data data = { .table = &g->table };
    assert_int_equal(gw_tyre_open(&data, &tyre, NULL), GW_OK);
    return tyre;
}

/* The first slip at which two tyres of 5 and 3 kN carry a force, looked for in steps of a thousandth of a
 * degree and halved down; negative: nowhere. */
static double first_slip(const gw_tyre *tyre, double force)
{
    double step = 0.001 * GW_DEG, end = 0.25 * (FINE - 1) * GW_DEG;
    for (double x = 0.0; x + step <= end; x += step) {
        double low = x, high = x + step;
        if (force_at(tyre, high, 5000, 0).force + force_at(tyre, high, 3000, 0).force < force) continue;
        for (int k = 0; k < 60; k++) {
            double mid = 0.5 * (low + high);
            bool less = force_at(tyre, mid, 5000, 0).force + force_at(tyre, mid, 3000, 0).force < force;
            *(less ? &low : &high) = mid;
        }
        return low;
    }
    return -1.0;
}

static gw_axle_state loaded_axle(double force)
{
    gw_axle_state s = { .g = 0.5, .force = force };
    s.wheel[GW_OUTER].vertical = 5000;
    s.wheel[GW_INNER].vertical = 3000;
    return s;
}

/* Steps that stand still or fall on the way up ended the search: these tyres were said not to carry forces
 * that they do. */
static void scattered_table_carries_every_force_that_stands_in_it(void **unused)
{
    (void)unused;
    int falls = 0;
    for (unsigned seed = 1; seed <= 12; seed++) {
        fine_grid g;
        gw_tyre *tyre = open_fine(&g, 0.02, seed);
        for (int i = 1; i < FINE / 2; i++) falls += g.force[4 * FINE + i] < g.force[4 * FINE + i - 1];
        double peak = 0.0, e[GW_BUDGET_ENTRIES];
        for (double x = 0.0; x < 14 * GW_DEG; x += 0.01 * GW_DEG)
            peak = fmax(peak, force_at(tyre, x, 5000, 0).force + force_at(tyre, x, 3000, 0).force);
        for (double part = 0.05; part < 1.0; part += 0.0623) {
            gw_axle_state s = loaded_axle(part * peak);
            assert_int_equal(gw_budget_entries(tyre, &s, e, NULL), GW_OK);
            check_abs(e[GW_BUDGET_TYRE] * s.g, first_slip(tyre, part * peak), 1e-9, "smallest slip [rad]");
        }
        gw_axle_state most = loaded_axle(0.9999 * peak), more = loaded_axle(1.001 * peak);
        assert_int_equal(gw_budget_entries(tyre, &most, e, NULL), GW_OK);
        assert_int_equal(gw_budget_entries(tyre, &more, e, NULL), GW_E_NUMERIC);
        gw_tyre_close(tyre);
    }
    assert_true(falls > 12); /* or the tables would prove nothing */
}

/* Toe and camber alone may give more than is asked for: then the axle slips outwards, and that is found as
 * well. */
static void axle_whose_toe_gives_too_much_slips_the_other_way(void **unused)
{
    (void)unused;
    grid g;
    gw_tyre *tyre = open_grid(&g);
    double e[GW_BUDGET_ENTRIES], sum = 0.0;
    gw_axle_state s = { .g = 0.1, .force = 700 };
    s.wheel[GW_OUTER] = (gw_wheel_state){ 4400, { 0.02 }, { 0 } };
    s.wheel[GW_INNER] = (gw_wheel_state){ 3600, { -0.02 }, { 0 } };
    assert_int_equal(gw_budget_entries(tyre, &s, e, NULL), GW_OK);
    for (int i = 0; i < GW_BUDGET_ENTRIES; i++) sum += e[i] * s.g;
    assert_true(sum < -0.005);
    double got = force_at(tyre, sum + 0.02, 4400, 0).force + force_at(tyre, sum + 0.02, 3600, 0).force;
    check_abs(got, 700, 1e-6, "both tyres at that slip");
    gw_tyre_close(tyre);
}

/* Opens a table of the law, of one side or of both, with a push and a shift that do not turn with the corner.
 */
static gw_tyre *open_crooked(fine_grid *g, bool both, double push, double shift)
{
    gw_tyre *tyre = NULL;
    int n = both ? BOTH : FINE;
    for (int i = 0; i < n; i++) g->slip[i] = 0.25 * (both ? i - FINE + 1 : i) * GW_DEG;
    for (int j = 0; j < LOADS; j++) g->load[j] = 1000.0 * (j + 1);
    g->lean[0] = 0.0;
    for (int j = 0; j < LOADS; j++)
        for (int i = 0; i < n; i++) g->force[j * n + i] = law(g->slip[i] + shift, g->load[j], 0) + push;
    g->table = (gw_tyre_table){ n, LOADS, 1, g->slip, g->load, g->lean, g->force };
    const gw_tyre_data data = { .table = &g->table };
    assert_int_equal(gw_tyre_open(&data, &tyre, NULL), GW_OK);
    return tyre;
}

static void crooked_entries(bool both, double push, double shift, double e[GW_BUDGET_ENTRIES])
{
    fine_grid g;
    gw_axle_state s = { .g = 0.2, .force = 1570 };
    gw_tyre *tyre = open_crooked(&g, both, push, shift);
    s.wheel[GW_OUTER].vertical = 5200;
    s.wheel[GW_INNER].vertical = 2800;
    s.wheel[GW_OUTER].toe[GW_TOE_LATERAL] = -0.0017;
    assert_int_equal(gw_budget_entries(tyre, &s, e, NULL), GW_OK);
    gw_tyre_close(tyre);
}

/* Ply steer shifts the curve: one way round the tyre needs so much more slip, the other way so much less.
 * 0.15 deg are 0.75 deg/g at 0.2 g. The slip wanted is the law's own, by bisection. */
static void ply_steer_does_not_reach_the_budget(void **unused)
{
    (void)unused;
    double e[GW_BUDGET_ENTRIES], bare[GW_BUDGET_ENTRIES];
    crooked_entries(true, 0.0, 0.0, bare);
    crooked_entries(true, 0.0, 0.15 * GW_DEG, e);
    check_abs(e[GW_BUDGET_TYRE] * 0.2, slip_of_law(5200, 2800, 1570), 0.001 * GW_DEG, "slip of the bare law");
    for (int i = 0; i < GW_BUDGET_ENTRIES; i++)
        check_abs(e[i] * 0.2, bare[i] * 0.2, 0.001 * GW_DEG, "every entry is that of the straight tyre");
}

/* Conicity pushes, 120 N a tyre: left over is the curvature of the law between 240 N less and 240 N more. So
 * too with a table of one side, whose other side is taken to push alike. */
static void conicity_does_not_reach_the_budget(void **unused)
{
    (void)unused;
    double e[GW_BUDGET_ENTRIES], less = slip_of_law(5200, 2800, 1330), more = slip_of_law(5200, 2800, 1810);
    for (int both = 0; both < 2; both++) {
        crooked_entries(both, 120.0, 0.0, e);
        check_abs(e[GW_BUDGET_TYRE] * 0.2, 0.5 * (less + more), 0.001 * GW_DEG, "mean of both ways");
        check_abs(e[GW_BUDGET_TYRE], slip_of_law(5200, 2800, 1570) / 0.2, 0.015 * GW_DEG,
                  "slip of the bare law");
        assert_true(more - less > 0.1 * GW_DEG); /* what one way alone would be off, twice */
    }
}

/* Half a degree to either side through points that scatter: within a fifth of the law's slope, where the
 * slope between neighbours may have the wrong sign. */
static void slopes_of_a_scattered_table_are_those_over_a_stretch(void **unused)
{
    (void)unused;
    fine_grid g;
    gw_tyre *tyre = open_fine(&g, 0.02, 7);
    const double a = 1.3 * GW_DEG, w = GW_TYRE_STRETCH;
    gw_tyre_force f;
    assert_int_equal(gw_tyre_chord(tyre, a, 4000, 0, w, &f, NULL), GW_OK);
    check_rel(f.force, force_at(tyre, a, 4000, 0).force, 1e-15, "force at the slip itself");
    check_rel(f.cornering,
              (force_at(tyre, a + w, 4000, 0).force - force_at(tyre, a - w, 4000, 0).force) / (2 * w), 1e-12,
              "slope");
    check_rel(f.cornering, (law(a + w, 4000, 0) - law(a - w, 4000, 0)) / (2 * w), 0.2, "the law's slope");
    double end = gw_tyre_reach(tyre);
    check_rel(end, 14 * GW_DEG, 1e-12, "reach");
    assert_int_equal(gw_tyre_chord(tyre, end, 4000, 0, w, &f, NULL), GW_OK);
    check_rel(f.cornering, (force_at(tyre, end, 4000, 0).force - force_at(tyre, end - w, 4000, 0).force) / w,
              1e-9, "cut off at the end");
    gw_tyre_close(tyre);
}

static void tables_that_are_none_are_refused(void **unused)
{
    (void)unused;
    grid g;
    gw_tyre *tyre = NULL;
    gw_error err = { 0 };
    make_grid(&g);
    gw_tyre_data data = { .table = &g.table };
    g.table.n_load = 3;
    assert_int_equal(gw_tyre_open(&data, &tyre, &err), GW_E_RANGE);
    check_contains(err.msg, "at least 4");
    /* The tyre reads the table through `data`. */
    /* cppcheck-suppress redundantAssignment */
    g.table.n_load = LOADS;
    g.load[2] = g.load[1];
    assert_int_equal(gw_tyre_open(&data, &tyre, &err), GW_E_RANGE);
    check_contains(err.msg, "must rise");
    make_grid(&g);
    g.slip[0] = 0.001;
    assert_int_equal(gw_tyre_open(&data, &tyre, &err), GW_E_RANGE);
    check_contains(err.msg, "slip angle 0");
    make_grid(&g);
    g.force[7] = (double)NAN;
    assert_int_equal(gw_tyre_open(&data, &tyre, &err), GW_E_RANGE);
    check_contains(err.msg, "no number");
    assert_null(tyre);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(table_is_exact_at_its_points),
        cmocka_unit_test(table_follows_the_law_between_its_points),
        cmocka_unit_test(tyre_measured_from_zero_slip_is_mirrored),
        cmocka_unit_test(beyond_the_table_load_is_held_and_slip_refused),
        cmocka_unit_test(load_transfer_costs_slip_as_the_law_says),
        cmocka_unit_test(entries_of_a_curved_tyre_add_up_to_the_slip_of_all_together),
        cmocka_unit_test(axle_beyond_its_tyres_is_told_so),
        cmocka_unit_test(scattered_table_carries_every_force_that_stands_in_it),
        cmocka_unit_test(axle_whose_toe_gives_too_much_slips_the_other_way),
        cmocka_unit_test(ply_steer_does_not_reach_the_budget),
        cmocka_unit_test(conicity_does_not_reach_the_budget),
        cmocka_unit_test(slopes_of_a_scattered_table_are_those_over_a_stretch),
        cmocka_unit_test(tables_that_are_none_are_refused),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests(tests, NULL, NULL);
}
