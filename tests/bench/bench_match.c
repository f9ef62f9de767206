/* SPDX-License-Identifier: MIT */
/* Times a match, with what to read next, beside one evaluation of its model. Least of several runs. */
#include "bench/clock.h"

#include "giveway/casefile.h"
#include "giveway/match.h"
#include "study/match_parts.h"
#include "support/match_sample.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

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

int main(void)
{
    match_sample s;
    gsl_set_error_handler_off();
    if (!match_sample_open(&s)) return 1;
    printf("Match of %d figures to %d values (one thread)\n", s.c.uncertain.n - s.c.uncertain.n_ride,
           s.readings.n_values);
    double once = time_model(&s.c, &s.readings, &s.wanted);
    bench_row("its model once", 1e3 * once, 2, "ms");
    bench_row("the match, in times of its model", time_match(&s.c, &s.readings, &s.wanted, false) / once, 1,
              "(keep below 50)");
    bench_row("the same with what to read next", time_match(&s.c, &s.readings, &s.wanted, true) / once, 1,
              "");
    match_sample_close(&s);
    return 0;
}
