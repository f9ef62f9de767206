/* SPDX-License-Identifier: MIT */
/* Milliseconds a kit for the whole of ride in one corner: invented corners and those of a demonstration car.
 */
#include "ride/corners.h"

#include "giveway/casefile.h"
#include "giveway/study.h"

#include <gsl/gsl_errno.h>
#include <stdio.h>
#include <time.h>

static double milliseconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return 1e3 * (double)now.tv_sec + 1e-6 * (double)now.tv_nsec;
}

static int solve(const char *name, const gw_corner *corner, const gw_fit *fit, const gw_ride *ride,
                 const gw_ride_options *options)
{
    const int repeat = 100;
    int evaluations = 0;
    double best = 1e9;
    for (int i = 0; i < repeat; i++) {
        gw_ride_result r = { 0 };
        gw_error err = { 0 };
        double start = milliseconds();
        if (gw_ride_solve(corner, fit, ride, options, &r, &err) != GW_OK) {
            fprintf(stderr, "%s: %s\n", name, err.msg);
            return 1;
        }
        double took = milliseconds() - start;
        if (took < best) best = took;
        evaluations = r.evaluations;
        gw_ride_result_free(&r);
    }
    printf("ride, %s\t%.2f\tms a corner (%d frequencies)\n", name, best, evaluations);
    return 0;
}

static int run(const char *name, const test_corner *t, const gw_ride_options *options)
{
    return solve(name, &t->corner, t->fit, &t->ride, options);
}

/* Each kit of the demonstration car in one corner: figures as `compare` needs them, and everything. */
static int run_case(const gw_case *c, const gw_laws *laws, gw_axle axle)
{
    const gw_ride_options all = { 0 }, figures = { .no_curve = true, .no_obstacle = true };
    int failed = 0;
    for (int k = 0; k < c->n_kits && k < 3; k++) {
        gw_fit fit[GW_MAX_JOINTS];
        char name[80];
        gw_fit_kit(c, laws, k, axle, fit);
        snprintf(name, sizeof name, "saloon %s, %.20s, figures", c->corners[axle].name, c->kits[k].name);
        failed |= solve(name, &c->corners[axle], fit, &c->ride, &figures);
        snprintf(name, sizeof name, "saloon %s, %.20s, everything", c->corners[axle].name, c->kits[k].name);
        failed |= solve(name, &c->corners[axle], fit, &c->ride, &all);
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
    if (gw_case_load("cases/fast-saloon.json", &materials, &c, &faults) != GW_OK) return 1;
    if (gw_laws_make(&c, GW_METHOD_SOLVED, &laws, NULL) != GW_OK) return 1;
    int failed = run_case(&c, &laws, GW_FRONT) | run_case(&c, &laws, GW_REAR);
    gw_laws_free(&laws);
    gw_case_free(&c);
    gw_materials_free(&materials);
    gw_faults_free(&faults);
    return failed;
}

static void with_rubber_law(test_corner *t)
{
    for (int j = 0; j < t->corner.n_joints; j++)
        t->fit[j].law.dynamic =
            (gw_dynamic_law){ .ratio = 1, .zener_gain = 0.9, .zener_tau = 3e-4, .zener_alpha = 0.4 };
}

int main(void)
{
    const gw_ride_options all = { 0 }, figures = { .no_curve = true, .no_obstacle = true };
    test_corner t;
    int failed = 0;
    gsl_set_error_handler_off();
    double_wishbone(&t, rubber_rates());
    t.ride.has_obstacle = true;
    t.ride.obstacle_height = 0.02;
    t.ride.obstacle_length = 0.3;
    failed |= run("three members, figures and range", &t, &figures);
    failed |= run("three members, with curves and obstacle", &t, &all);
    with_rubber_law(&t);
    failed |= run("three members, rubber laws, everything", &t, &all);
    tension_corner(&t, rubber_rates());
    t.ride.has_obstacle = true;
    t.ride.obstacle_height = 0.02;
    t.ride.obstacle_length = 0.3;
    failed |= run("four members, figures and range", &t, &figures);
    failed |= run("four members, with curves and obstacle", &t, &all);
    with_rubber_law(&t);
    failed |= run("four members, rubber laws, everything", &t, &all);
    return failed | run_demonstration();
}
