/* SPDX-License-Identifier: MIT */
/* Slopes by one step from a car that was read, against differences of whole cars that are read anew. */
#include "study/match_parts.h"
#include "support/check.h"
#include "support/match_sample.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Without the spring what is told counts from travel 0 held so, which every figure moves too. */
static const char SPRING_OUT[] =
    "{ \"format\": \"giveway-readings-1\", \"readings\": ["
    "{ \"name\": \"out\", \"corner\": \"front\", \"travel_mm\": [-40, -20, 20, 40], \"spring\": \"out\","
    "  \"toe_change_deg\": [0, 0, 0, 0], \"camber_change_deg\": [0, 0, 0, 0], \"within_deg\": 0.03,"
    "  \"wheel_fore_aft_mm\": [0, 0, 0, 0], \"within_mm\": 0.2 },"
    "{ \"name\": \"in\", \"corner\": \"front\", \"travel_mm\": [-40, 40],"
    "  \"toe_change_deg\": [0, 0], \"within_deg\": 0.03 } ] }";

static match_sample sample;
static gw_readings readings;

typedef struct bench {
    gw_draws draws;
    gw_drawer *drawer;
    double *z;
    int n, m;
} bench;

static void read_at(bench *b, int figure, double by, double *y)
{
    gw_read_guide *guide = NULL;
    gw_error err = { 0 };
    b->z[figure] += by;
    if (gw_read_car(&b->draws, b->drawer, b->z, &readings, 1.0, false, &guide, y, &err) != GW_OK)
        fail_msg("%s", err.msg);
    b->z[figure] -= by;
    gw_read_guide_free(guide);
}

/* What was kept of a state was read off the one that took its place: no load, and nothing to count from. */
static void slopes_with_the_spring_out_are_those_of_the_whole_car(void **state)
{
    (void)state;
    bench b = { .n = sample.c.uncertain.n, .m = readings.n_values };
    const double near = 1e-5, wide = 1e-3;
    double up[64], down[64], base[64], moved[64], y[64];
    gw_read_guide *guide = NULL;
    assert_in_range(b.m, 1, 64);
    assert_int_equal(gw_draws_open(&sample.c, &sample.wanted, &b.draws, NULL), GW_OK);
    assert_int_equal(gw_drawer_open(&sample.c, &b.drawer, NULL), GW_OK);
    b.z = calloc((size_t)b.n, sizeof *b.z);
    assert_non_null(b.z);
    assert_int_equal(gw_read_car(&b.draws, b.drawer, b.z, &readings, 1.0, false, &guide, y, NULL), GW_OK);
    assert_int_equal(gw_read_near(guide, &b.draws, b.drawer, b.z, 1.0, -1, NULL, base, NULL), GW_OK);
    for (int v = 0; v < b.m; v++) check_abs(base[v], y[v], 1e-9, "no step at all is where it stood");
    for (int j = 0; j < b.n; j++) {
        double most = 0.0;
        read_at(&b, j, wide, up);
        read_at(&b, j, -wide, down);
        b.z[j] = near;
        assert_int_equal(gw_read_near(guide, &b.draws, b.drawer, b.z, 1.0, j, base, moved, NULL), GW_OK);
        b.z[j] = 0.0;
        for (int v = 0; v < b.m; v++) most = fmax(most, fabs(up[v] - down[v]) / (2.0 * wide));
        for (int v = 0; v < b.m; v++)
            check_abs((moved[v] - base[v]) / near, (up[v] - down[v]) / (2.0 * wide), 2e-4 * most + 1e-9,
                      sample.c.uncertain.figure[j].of);
    }
    gw_read_guide_free(guide);
    free(b.z);
    gw_drawer_close(b.drawer);
    gw_draws_close(&b.draws);
}

int main(void)
{
    gsl_set_error_handler_off();
    if (!match_sample_open(&sample) || gw_readings_read("ramp", SPRING_OUT, strlen(SPRING_OUT), &sample.c,
                                                        &readings, &sample.faults) != GW_OK)
        return 1;
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(slopes_with_the_spring_out_are_those_of_the_whole_car),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    gw_readings_free(&readings);
    match_sample_close(&sample);
    return failed;
}
