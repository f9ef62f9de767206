/* SPDX-License-Identifier: MIT */
#include "support/check.h"

#include <math.h>
#include <string.h>

void check_abs(double got, double want, double tol, const char *what)
{
    if (!(fabs(got - want) <= tol)) fail_msg("%s: got %.12g, want %.12g +/- %.2g", what, got, want, tol);
}

void check_rel(double got, double want, double tol, const char *what)
{
    if (!(fabs(got - want) <= tol * fabs(want)))
        fail_msg("%s: got %.12g, want %.12g within %.2g of it", what, got, want, tol);
}

void check_contains(const char *text, const char *part)
{
    if (!text || !strstr(text, part))
        fail_msg("\"%s\" does not contain \"%s\"", text ? text : "(null)", part);
}
