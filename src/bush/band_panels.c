/* SPDX-License-Identifier: MIT */
#include "bush/band_panels.h"

#include <math.h>

/* Entry (row, column) of the lower triangle. */
static double *at(gsl_matrix *m, int row, int column)
{
    return m->data + (size_t)column * m->tda + (size_t)(row - column);
}

/* The columns of one panel by themselves; `last` is the last row that any of them reaches. */
static bool factor_panel(gsl_matrix *m, int from, int count, int last)
{
    for (int q = from; q < from + count; q++) {
        double *column = at(m, q, q);
        if (!(column[0] > 0.0)) return false;
        double pivot = column[0] = sqrt(column[0]);
        for (int i = 1; i <= last - q; i++) column[i] /= pivot;
        for (int c = q + 1; c < from + count; c++) {
            double f = column[c - q], *target = at(m, c, c);
            for (int i = 0; i <= last - c; i++) target[i] -= f * column[c - q + i];
        }
    }
    return true;
}

/* gcc leaves loops of unknown length scalar at -O2; the results are the same to the last bit either way. */
#if defined(__GNUC__) && !defined(__clang__)
#define GW_VECTORISE __attribute__((optimize("tree-vectorize", "vect-cost-model=dynamic")))
#else
#define GW_VECTORISE
#endif

/* Column c, below a full panel, less the products of the panel's eight columns. */
GW_VECTORISE static void update_column(gsl_matrix *m, int from, int c, int last)
{
    double *restrict target = at(m, c, c);
    const double *x0 = at(m, c, from), *x1 = at(m, c, from + 1), *x2 = at(m, c, from + 2),
                 *x3 = at(m, c, from + 3);
    const double *x4 = at(m, c, from + 4), *x5 = at(m, c, from + 5), *x6 = at(m, c, from + 6),
                 *x7 = at(m, c, from + 7);
    const double f0 = x0[0], f1 = x1[0], f2 = x2[0], f3 = x3[0], f4 = x4[0], f5 = x5[0], f6 = x6[0],
                 f7 = x7[0];
    for (int i = 0; i <= last - c; i++)
        target[i] -= (f0 * x0[i] + f1 * x1[i]) + (f2 * x2[i] + f3 * x3[i]) + (f4 * x4[i] + f5 * x5[i]) +
                     (f6 * x6[i] + f7 * x7[i]);
}

bool gw_band_panels(gsl_matrix *lower, int width)
{
    int n = (int)lower->size1;
    for (int from = 0; from < n; from += GW_PANEL) {
        int count = n - from < GW_PANEL ? n - from : GW_PANEL;
        int last = from + count - 1 + width < n - 1 ? from + count - 1 + width : n - 1;
        if (!factor_panel(lower, from, count, last)) return false;
        /* An incomplete panel is the last one: nothing is below it. */
        for (int c = from + count; c <= last; c++) update_column(lower, from, c, last);
    }
    return true;
}
