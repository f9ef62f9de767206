/* SPDX-License-Identifier: MIT */
/*
 * Milliseconds a kit for the whole of ride in one corner: invented corners and those of a demonstration car.
 * Least of several runs: what is more is the machine's.
 */
#include "bench/clock.h"
#include "ride/corners.h"

#include "giveway/casefile.h"
#include "giveway/study.h"

#include <gsl/gsl_errno.h>
#include <math.h>

/* Least time of one solution [ms]; negative where it fails. */
static double least_ms(const gw_corner *corner, const gw_fit *fit, const gw_ride *ride,
                       const gw_ride_options *options, int *frequencies)
{
    double least = HUGE_VAL;
    for (int i = 0; i < 40; i++) {
        gw_ride_result r = { 0 };
        gw_error err = { 0 };
        double start = bench_seconds();
        if (gw_ride_solve(corner, fit, ride, options, &r, &err) != GW_OK) {
            fprintf(stderr, "%s\n", err.msg);
            return -1.0;
        }
        least = fmin(least, 1e3 * (bench_seconds() - start));
        *frequencies = r.evaluations;
        gw_ride_result_free(&r);
    }
    return least;
}

/* Friction, movements, crackle and the range, over a plain solve: nothing rubs, one amplitude, no range. */
static int time_depth(const char *name, const gw_corner *corner, const gw_fit *fit, const gw_ride *ride)
{
    const gw_ride_options deep = { .no_curve = true, .no_obstacle = true };
    const gw_ride_options plain = { .no_range = true, .no_curve = true, .no_obstacle = true };
    gw_corner smooth = *corner;
    gw_ride given = *ride;
    gw_fit bare[GW_MAX_JOINTS];
    char title[120];
    int unused;
    smooth.damper.friction = 0.0;
    given.left_out[GW_RIDE_AMPLITUDE] = false;
    for (int j = 0; j < corner->n_joints; j++) {
        bare[j] = fit[j];
        bare[j].law.slider = (gw_slider){ 0 };
    }
    double all = least_ms(corner, fit, ride, &deep, &unused),
           one = least_ms(&smooth, bare, &given, &plain, &unused);
    if (all < 0.0 || one < 0.0) return 1;
    snprintf(title, sizeof title, "%s: friction, movement, range", name);
    bench_row(title, all / one, 2, "times a plain solve (keep below 12)");
    return 0;
}

/* Everything; beside it the figures and their ranges alone, which is what `compare` shows. */
static int time_corner(const char *name, const gw_corner *corner, const gw_fit *fit, const gw_ride *ride)
{
    const gw_ride_options all = { 0 }, figures = { .no_curve = true, .no_obstacle = true };
    int frequencies = 0, fewer = 0;
    char unit[80];
    double ms = least_ms(corner, fit, ride, &all, &frequencies);
    double alone = least_ms(corner, fit, ride, &figures, &fewer);
    if (ms < 0.0 || alone < 0.0) return 1;
    snprintf(unit, sizeof unit, "ms, %d frequencies; figures alone %.2f ms", frequencies, alone);
    bench_row(name, ms, 2, unit);
    return 0;
}

static int time_test_corner(const char *name, test_corner *t)
{
    t->ride.has_obstacle = true;
    t->ride.obstacle_height = 0.02;
    t->ride.obstacle_length = 0.3;
    for (int j = 0; j < t->corner.n_joints; j++)
        t->fit[j].law.dynamic =
            (gw_dynamic_law){ .ratio = 1, .zener_gain = 0.9, .zener_tau = 3e-4, .zener_alpha = 0.4 };
    return time_corner(name, &t->corner, t->fit, &t->ride);
}

static int run_case(const gw_case *c, const gw_laws *laws, gw_axle axle)
{
    int failed = 0;
    for (int k = 0; k < c->n_kits && k < 3; k++) {
        gw_fit fit[GW_MAX_JOINTS];
        char name[80];
        gw_fit_kit(c, laws, k, axle, fit);
        snprintf(name, sizeof name, "demonstration car, %s, %.20s", c->corners[axle].name, c->kits[k].name);
        failed |= time_corner(name, &c->corners[axle], fit, &c->ride);
        failed |= time_depth(name, &c->corners[axle], fit, &c->ride);
    }
    return failed;
}

static int run_demonstration(void)
{
    gw_material_set materials = { 0 };
    gw_faults faults = { 0 };
    gw_laws laws;
    gw_case c;
    if (gw_materials_builtin(&materials, &faults) != GW_OK) return 1;
    if (gw_case_load("tests/cases/saloon-by-rule.json", &materials, &c, &faults) != GW_OK) return 1;
    if (gw_laws_make(&c, GW_METHOD_SOLVED, &laws, NULL) != GW_OK) return 1;
    int failed = run_case(&c, &laws, GW_FRONT) | run_case(&c, &laws, GW_REAR);
    gw_laws_free(&laws);
    gw_case_free(&c);
    gw_materials_free(&materials);
    gw_faults_free(&faults);
    return failed;
}

int main(void)
{
    test_corner t;
    int failed = 0;
    gsl_set_error_handler_off();
    puts("Ride, everything of one kit in one corner (one thread)");
    double_wishbone(&t, rubber_rates());
    failed |= time_test_corner("three members on rubber", &t);
    tension_corner(&t, rubber_rates());
    failed |= time_test_corner("four members on rubber", &t);
    return failed | run_demonstration();
}
