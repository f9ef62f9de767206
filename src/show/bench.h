/* SPDX-License-Identifier: MIT */
/** What a press and a test rig say, for people and for programs. */
#ifndef SHOW_BENCH_H
#define SHOW_BENCH_H

#include "base/buf.h"
#include "casefile/bench_file.h"
#include "chart/chart.h"
#include "record/paper.h"

enum { GW_BENCH_FILES = 9 };

/** Names of the curves on the command line and in results, in the order of gw_curve_way, then `dynamic`;
 * NULL. */
extern const char *const GW_BENCH_AS[GW_BENCH_FILES + 1];

/** One file and what it was taken as. */
typedef struct gw_bench_result {
    const char *file;
    int as; /**< into GW_BENCH_AS */
    gw_bench_file data;
} gw_bench_result;

/** All files: what GW_BENCH_RESULT describes. */
typedef struct gw_bench_made {
    int n;
    const gw_bench_result *result;
} gw_bench_made;

void gw_bench_text(const gw_case *c, const void *made, gw_paper *paper);
void gw_bench_charts(const gw_case *c, const void *made, gw_charts *charts);

/** The bush of a case that the files make; `missing` gets the keys that nobody measured, with commas. */
void gw_bench_bush(const gw_bench_result *results, int n, gw_buf *out, gw_buf *missing);

#endif
