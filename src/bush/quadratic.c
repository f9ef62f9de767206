/* SPDX-License-Identifier: MIT */
#include "bush/quadratic.h"

#include <math.h>

const double GW_GAUSS3_X[3] = { -0.77459666924148337704, 0.0, 0.77459666924148337704 };
const double GW_GAUSS3_W[3] = { 5.0 / 9.0, 8.0 / 9.0, 5.0 / 9.0 };

void gw_parabolas(double xi, double value[3], double slope[3])
{
    value[0] = 0.5 * xi * (xi - 1.0);
    value[1] = 1.0 - xi * xi;
    value[2] = 0.5 * xi * (xi + 1.0);
    slope[0] = xi - 0.5;
    slope[1] = -2.0 * xi;
    slope[2] = xi + 0.5;
}

int gw_grade_count(double span, double first, double ratio)
{
    int n = 0;
    for (double reach = 0.0, step = first; reach < span * (1.0 - 1e-9); step *= ratio, n++) reach += step;
    return n < 1 ? 1 : n;
}

/* The ratio q >= 1 for which n terms of a geometric progression from `first` add up to one. */
static double progression(int n, double first)
{
    double low = 1.0, high = 1.0 / first;
    if (n * first >= 1.0) return 1.0;
    for (int k = 0; k < 100; k++) {
        double q = 0.5 * (low + high), sum = first * (pow(q, n) - 1.0) / (q - 1.0);
        if (sum > 1.0)
            high = q;
        else
            low = q;
    }
    return 0.5 * (low + high);
}

/* n cells over a span of `span` starting at `from`, smallest first. */
static void grow(double from, double span, int n, double first, double *node, int stride)
{
    double q = progression(n, first), at = 0.0, step = n * first >= 1.0 ? 1.0 / n : first;
    node[0] = from;
    for (int i = 0; i < n; i++, step *= q) {
        double next = i == n - 1 ? 1.0 : at + step;
        node[(2 * i + 1) * stride] = from + 0.5 * (at + next) * span;
        node[(2 * i + 2) * stride] = from + next * span;
        at = next;
    }
}

void gw_grade(double from, double to, int n, double first, gw_grading grading, double *node)
{
    double span = to - from;
    if (grading == GW_GRADE_START || n == 1) {
        grow(from, span, n, first, node, 1);
    } else if (grading == GW_GRADE_END) {
        grow(to, -span, n, first, node + 2 * n, -1);
    } else {
        int half = n / 2;
        double middle = from + 0.5 * span;
        grow(from, middle - from, half, fmin(2.0 * first, 1.0), node, 1);
        grow(to, middle - to, half, fmin(2.0 * first, 1.0), node + 2 * n, -1);
    }
}
