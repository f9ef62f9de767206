/* SPDX-License-Identifier: MIT */
/* Times a match, with what to read next, beside one evaluation of its model. Least of several runs. */
#include "bench/clock.h"

#include "giveway/casefile.h"
#include "giveway/match.h"
#include "study/match_parts.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { RUNS = 7 };

static double time_model(const gw_case *c, const gw_readings *readings, const gw_selection *wanted)
{
    gw_draws draws;
    gw_drawer *drawer = NULL;
    double least = HUGE_VAL, *z = calloc((size_t)c->uncertain.n + 1, sizeof *z),
           *y = calloc((size_t)readings->n_values + 1, sizeof *y);
    if (z && y && gw_draws_open(c, wanted, &draws, NULL) == GW_OK &&
        gw_drawer_open(c, &drawer, NULL) == GW_OK)
        for (int i = 0; i < RUNS; i++) {
            gw_read_guide *guide = NULL;
            double start = bench_seconds();
            if (gw_read_car(&draws, drawer, z, readings, 1.0, false, &guide, y, NULL) != GW_OK) break;
            gw_read_guide_free(guide);
            least = fmin(least, bench_seconds() - start);
        }
    gw_drawer_close(drawer);
    gw_draws_close(&draws);
    free(z);
    free(y);
    return least;
}

static double time_match(const gw_case *c, const gw_readings *readings, const gw_selection *wanted, bool next)
{
    double least = HUGE_VAL;
    for (int i = 0; i < RUNS; i++) {
        gw_match_study study;
        gw_next_study more;
        double start = bench_seconds();
        if (gw_study_match(c, readings, wanted, false, &study, NULL) != GW_OK) break;
        if (next && gw_study_read_next(c, wanted, &study, &more, NULL) == GW_OK) gw_next_study_free(&more);
        least = fmin(least, bench_seconds() - start);
        gw_match_study_free(&study);
    }
    return least;
}

/* The demonstration hatchback with twenty figures uncertain: points and bushes of both axles. */
static const char UNCERTAIN[] =
    "{ \"uncertain\": ["
    "{ \"of\": \"corners.front.points_mm.arm_front\", \"mm\": 2 }, { \"of\": "
    "\"corners.front.points_mm.arm_outer\", \"mm\": 2 },"
    "{ \"of\": \"corners.front.points_mm.tie_outer\", \"mm\": 2 }, { \"of\": "
    "\"corners.rear.points_mm.toe_inner\", \"mm\": 2 },"
    "{ \"of\": \"corners.front.spring.rate_N_per_mm\", \"percent\": 5 }, { \"of\": "
    "\"corners.rear.spring.rate_N_per_mm\", \"percent\": 5 },"
    "{ \"of\": \"bushes.arm_front_rubber\", \"percent\": 25 }, { \"of\": \"bushes.arm_rear_rubber\", "
    "\"percent\": 25 },"
    "{ \"of\": \"bushes.rack_rubber\", \"percent\": 25 }, { \"of\": \"bushes.toe_rubber\", \"percent\": 25 },"
    "{ \"of\": \"bushes.top_rubber\", \"percent\": 25 }, { \"of\": \"vehicle.mass_kg\", \"percent\": 2 } ],";

/* Twenty values. */
static const char READINGS[] =
    "{ \"format\": \"giveway-readings-1\", \"readings\": ["
    "{ \"name\": \"back\", \"corner\": \"front\", \"load\": { \"patch_force_N\": [-2000, 0, null] }, "
    "\"toe_change_deg\": -0.12, \"within_deg\": 0.03, \"wheel_fore_aft_mm\": -7.2, \"within_mm\": 0.2 },"
    "{ \"name\": \"in\", \"corner\": \"front\", \"load\": { \"patch_force_N\": [0, -1000, null] }, "
    "\"toe_change_deg\": 0.04, \"camber_change_deg\": 0.17, \"within_deg\": 0.03 },"
    "{ \"name\": \"bump\", \"corner\": \"front\", \"travel_mm\": [-40, -20, 20, 40], \"toe_change_deg\": "
    "[0.15, 0.06, -0.05, -0.11], \"camber_change_deg\": [0.83, 0.39, -0.31, -0.53], \"within_deg\": 0.03 },"
    "{ \"name\": \"rate\", \"corner\": \"front\", \"wheel_rate_N_per_mm\": 20, \"within_N_per_mm\": 3 },"
    "{ \"name\": \"back\", \"corner\": \"rear\", \"load\": { \"patch_force_N\": [-1000, 0, null] }, "
    "\"toe_change_deg\": -0.03, \"within_deg\": 0.1, \"wheel_fore_aft_mm\": -2, \"within_mm\": 2 },"
    "{ \"name\": \"in\", \"corner\": \"rear\", \"load\": { \"patch_force_N\": [0, -1000, null] }, "
    "\"toe_change_deg\": 0.04, \"within_deg\": 0.1 },"
    "{ \"name\": \"bump\", \"corner\": \"rear\", \"travel_mm\": [-30, 30], \"toe_change_deg\": [0, 0], "
    "\"camber_change_deg\": [0.4, -0.4], \"within_deg\": 0.3 } ] }";

static char *with_uncertain(const char *path, size_t *size)
{
    FILE *f = fopen(path, "rb");
    char *text = calloc(1, 1 << 20);
    size_t head = sizeof UNCERTAIN - 1;
    if (!f || !text) return NULL;
    memcpy(text, UNCERTAIN, head);
    while (fgetc(f) != '{' && !feof(f)) {
    }
    *size = head + fread(text + head, 1, (1 << 20) - 1 - head, f);
    fclose(f);
    return text;
}

int main(void)
{
    gw_material_set materials = { 0 };
    gw_faults faults = { 0 };
    gw_case c = { 0 };
    gw_readings readings = { 0 };
    gw_laws laws;
    size_t size = 0;
    gsl_set_error_handler_off();
    char *text = with_uncertain("tests/cases/hatchback-by-rule.json", &size);
    if (!text || gw_materials_builtin(&materials, &faults) != GW_OK ||
        gw_case_read("hatchback", text, size, &materials, &c, &faults) != GW_OK ||
        gw_readings_read("readings.json", READINGS, sizeof READINGS - 1, &c, &readings, &faults) != GW_OK ||
        gw_laws_make(&c, GW_METHOD_SOLVED, &laws, NULL) != GW_OK) {
        for (int i = 0; i < gw_faults_count(&faults); i++)
            fprintf(stderr, "%s\n", gw_faults_text(&faults, i));
        return 1;
    }
    const gw_selection wanted = { .method = GW_METHOD_SOLVED, .laws = &laws };
    printf("Match of %d figures to %d values (one thread)\n", c.uncertain.n - c.uncertain.n_ride,
           readings.n_values);
    double once = time_model(&c, &readings, &wanted);
    bench_row("its model once", 1e3 * once, 2, "ms");
    bench_row("the match, in times of its model", time_match(&c, &readings, &wanted, false) / once, 1,
              "(keep below 50)");
    bench_row("the same with what to read next", time_match(&c, &readings, &wanted, true) / once, 1, "");
    gw_laws_free(&laws);
    gw_readings_free(&readings);
    gw_case_free(&c);
    gw_materials_free(&materials);
    gw_faults_free(&faults);
    free(text);
    return 0;
}
