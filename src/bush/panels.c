/* SPDX-License-Identifier: MIT */
#include "bush/panels.h"

#include "base/wide.h"

#include <math.h>
#include <stdbool.h>

static double *at(const gw_lower *m, int row, int column)
{
    return m->data + (size_t)column * m->step + (size_t)(row - column);
}

/* gcc leaves loops of unknown length scalar at -O2; the results are the same to the last bit either way. */
#if defined(__GNUC__) && !defined(__clang__)
#define GW_VECTORISE __attribute__((optimize("tree-vectorize", "vect-cost-model=dynamic")))
#else
#define GW_VECTORISE
#endif

/* Column c, down to row `last`, less the product of column q. */
GW_WIDE GW_VECTORISE static void update_by_one(const gw_lower *m, int q, int c, int last)
{
    double *restrict target = at(m, c, c);
    const double *x = at(m, c, q), f = x[0];
    for (int i = 0; i <= last - c; i++) target[i] -= f * x[i];
}

/* The columns of one panel by themselves; `last` is the last row that any of them reaches. */
static bool factor_panel(const gw_lower *m, int from, int count, int last)
{
    for (int q = from; q < from + count; q++) {
        double *column = at(m, q, q);
        if (!(column[0] > 0.0)) return false;
        double pivot = column[0] = sqrt(column[0]);
        for (int i = 1; i <= last - q; i++) column[i] /= pivot;
        for (int c = q + 1; c < from + count; c++) update_by_one(m, q, c, last);
    }
    return true;
}

/* Column c, below a full panel, less the products of the panel's eight columns. */
GW_WIDE GW_VECTORISE static void update_column(const gw_lower *m, int from, int c, int last)
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

/* What lies right of columns `from` to before `end`, less their products. */
static void update_rest(const gw_lower *m, int from, int end, int last)
{
    int q = from;
    for (; q + GW_PANEL <= end; q += GW_PANEL)
        for (int c = end; c <= last; c++) update_column(m, q, c, last);
    for (; q < end; q++)
        for (int c = end; c <= last; c++) update_by_one(m, q, c, last);
}

gw_status gw_panels_factor(const gw_lower *m, int columns, gw_error *err)
{
    for (int from = 0; from < columns; from += GW_PANEL) {
        int end = from + GW_PANEL < columns ? from + GW_PANEL : columns;
        int last = end - 1 + m->reach < m->n - 1 ? end - 1 + m->reach : m->n - 1;
        if (!factor_panel(m, from, end - from, last))
            return gw_fail(err, GW_E_NUMERIC,
                           "the rubber's stiffness cannot be factorised: its shape is too extreme");
        update_rest(m, from, end, last);
    }
    return GW_OK;
}
