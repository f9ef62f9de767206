/* SPDX-License-Identifier: MIT */
/*
 * What both wheels of an axle and the whole car cost beside one corner of the same parts, in the same run:
 * load cases from rest, each looked for anew.
 */
#include "bench/clock.h"
#include "giveway/casefile.h"
#include "giveway/materials.h"
#include "giveway/road_car.h"
#include "giveway/study.h"

#include <gsl/gsl_errno.h>
#include <stdlib.h>

enum { CASES = 400 };

static gw_corner_load load_of(const gw_corner *corner, int i)
{
    return (gw_corner_load){ .patch_force = { -2500.0 + 300.0 * (i % 9), -1800.0 + 500.0 * (i % 5),
                                              corner->wheel.static_load },
                             .travel = -0.02 + 0.004 * (i % 11) };
}

/* Seconds a load case, of a corner or of a pair of them; negative where it fails. */
static double time_axle(const gw_corner *corner, const gw_fit *fit)
{
    gw_corner_ws *ws = NULL;
    gw_state state = { 0 };
    double seconds = -1.0;
    if (gw_corner_open(corner, fit, &ws, NULL) == GW_OK && gw_state_alloc(corner, &state, NULL) == GW_OK) {
        double start = bench_seconds();
        bool solved = true;
        for (int i = 0; i < CASES; i++) {
            const gw_corner_load both[GW_WHEELS] = { load_of(corner, i), load_of(corner, i + 3) };
            solved = gw_axle_solve(ws, both, GW_AT_TRAVEL, &state, NULL) == GW_OK && solved;
        }
        if (solved) seconds = (bench_seconds() - start) / CASES;
    }
    gw_state_free(&state);
    gw_corner_close(ws);
    return seconds;
}

static double time_car(const gw_case *c, const gw_fit fit[GW_AXLES][GW_MAX_JOINTS])
{
    gw_road_part part[GW_AXLES];
    gw_road *road = NULL;
    for (int a = 0; a < GW_AXLES; a++) part[a] = (gw_road_part){ &c->pairs[a], fit[a], 0.0, NULL };
    if (gw_road_open(&c->vehicle, part, &road, NULL) != GW_OK) return -1.0;
    bool solved = true;
    double start = bench_seconds();
    for (int i = 0; i < CASES; i++) {
        const gw_manoeuvre m = { .brake_g = 0.05 * (i % 7), .lateral_g = 0.1 + 0.06 * (i % 9) };
        solved = gw_road_solve(road, &m, NULL) == GW_OK && solved;
    }
    double seconds = (bench_seconds() - start) / CASES;
    gw_road_close(road);
    return solved ? seconds : -1.0;
}

/* Corner, axle and car of a case with its first kit. */
typedef struct times {
    double corner, axle, car;
} times;

static int time_case(const char *path, const gw_material_set *materials, times *out)
{
    static gw_fit fit[GW_AXLES][GW_MAX_JOINTS], one[GW_MAX_JOINTS];
    gw_faults faults = { 0 };
    gw_laws laws;
    gw_case c;
    if (gw_case_load(path, materials, &c, &faults) != GW_OK) return 1;
    if (gw_laws_make(&c, GW_METHOD_SOLVED, &laws, NULL) != GW_OK) return 1;
    for (int a = 0; a < GW_AXLES; a++) gw_fit_pair(&c, &laws, 0, (gw_axle)a, fit[a]);
    gw_fit_kit(&c, &laws, 0, GW_FRONT, one);
    out->corner = time_axle(&c.corners[GW_FRONT], one);
    out->axle = time_axle(&c.pairs[GW_FRONT], fit[GW_FRONT]);
    out->car = time_car(&c, fit);
    gw_laws_free(&laws);
    gw_case_free(&c);
    gw_faults_free(&faults);
    return out->corner < 0.0 || out->axle < 0.0 || out->car < 0.0;
}

int main(void)
{
    gw_material_set materials = { 0 };
    gw_faults faults = { 0 };
    times plain, shared;
    gsl_set_error_handler_off();
    if (gw_materials_builtin(&materials, &faults) != GW_OK) return 1;
    int failed = time_case("tests/cases/saloon-by-rule.json", &materials, &plain) ||
                 time_case("cases/fast-saloon.json", &materials, &shared);
    gw_materials_free(&materials);
    gw_faults_free(&faults);
    if (failed) return 1;
    puts("Both wheels of an axle, and the whole car (one thread)");
    bench_row("load case on a corner of the saloon", 1e6 * plain.corner, 1, "microseconds");
    bench_row("axle of two such corners", plain.axle / plain.corner, 2, "corners (keep below 2.5)");
    bench_row("car of two such axles in a manoeuvre", plain.car / plain.corner, 2, "corners (keep below 6)");
    bench_row("front axle with subframe, rack and bar", shared.axle / plain.corner, 2, "such corners");
    bench_row("whole saloon in a manoeuvre", shared.car / plain.corner, 2, "such corners");
    return 0;
}
