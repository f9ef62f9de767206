/* SPDX-License-Identifier: MIT */
/** Time of this thread's own work [s], whatever else the machine does; and one row of the table. */
#ifndef TESTS_BENCH_CLOCK_H
#define TESTS_BENCH_CLOCK_H

#include <stdio.h>
#include <time.h>

static inline double bench_seconds(void)
{
    struct timespec t;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
    return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

/** What, value and unit with tabs between, for scripts/bench.sh to set out; a line without tabs is a heading.
 */
static inline void bench_row(const char *what, double value, int decimals, const char *unit)
{
    printf("%s\t%.*f\t%s\n", what, decimals, value, unit);
}

#endif
