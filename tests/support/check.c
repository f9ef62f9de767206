/* SPDX-License-Identifier: MIT */
#include "support/check.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static check_kind kind_now = GW_CHECK_NONE;
static const char *source_now;
static char about_now[160];

int check_source_begin(check_kind kind, const char *source)
{
    kind_now = kind;
    source_now = source;
    about_now[0] = '\0';
    return 0;
}

void check_source_end(const int *unused)
{
    (void)unused;
    kind_now = GW_CHECK_NONE;
}

void check_about(const char *fmt, ...)
{
    va_list args;
    va_start(args, fmt);
    vsnprintf(about_now, sizeof about_now, fmt, args);
    va_end(args);
}

/* One write a row, so that tests that run side by side do not mix theirs. */
static void record(double got, double want, double allowed, const char *what)
{
    static const char *const BASES[] = { "", "formula", "print", "solver", "print" };
    const char *path = getenv("GIVEWAY_VALIDATION");
    if (kind_now == GW_CHECK_NONE || !path) return;
    FILE *file = fopen(path, "a");
    assert_non_null(file);
    fprintf(file, "%s\t%s\t%s\t%s%s%s\t%.12g\t%.12g\t%.6g\n",
            kind_now == GW_CHECK_COPIED ? "copied" : "computed",
            strstr(source_now, "from memory") ? "memory" : BASES[kind_now], source_now, about_now,
            about_now[0] ? ": " : "", what, want, got, allowed);
    assert_int_equal(fclose(file), 0);
}

void check_abs(double got, double want, double tol, const char *what)
{
    record(got, want, tol, what);
    if (!(fabs(got - want) <= tol)) fail_msg("%s: got %.12g, want %.12g +/- %.2g", what, got, want, tol);
}

void check_rel(double got, double want, double tol, const char *what)
{
    record(got, want, tol * fabs(want), what);
    if (!(fabs(got - want) <= tol * fabs(want)))
        fail_msg("%s: got %.12g, want %.12g within %.2g of it", what, got, want, tol);
}

void check_contains(const char *text, const char *part)
{
    if (!text || !strstr(text, part))
        fail_msg("\"%s\" does not contain \"%s\"", text ? text : "(null)", part);
}
