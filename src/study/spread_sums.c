/* SPDX-License-Identifier: MIT */
/* From the values of all draws to bands, and from slopes to shares. */
#include "study/spread_parts.h"

#include <math.h>
#include <stdlib.h>

static int ascending(const void *a, const void *b)
{
    double l = *(const double *)a, r = *(const double *)b;
    return l < r ? -1 : l > r;
}

static double percentile(const double *sorted, long n, double p)
{
    double at = (double)(n - 1) * p;
    long i = (long)at;
    return i + 1 < n ? sorted[i] + (at - (double)i) * (sorted[i + 1] - sorted[i]) : sorted[n - 1];
}

void gw_spread_band_of(double *values, long n, gw_spread_band *out)
{
    double sum = 0.0, squares = 0.0;
    for (long i = 0; i < n; i++) sum += values[i];
    out->mean = sum / (double)n;
    for (long i = 0; i < n; i++) squares += (values[i] - out->mean) * (values[i] - out->mean);
    out->sd = n > 1 ? sqrt(squares / (double)(n - 1)) : 0.0;
    qsort(values, (size_t)n, sizeof *values, ascending);
    out->low = percentile(values, n, 0.025);
    out->median = percentile(values, n, 0.5);
    out->high = percentile(values, n, 0.975);
}

/* z of one draw about the centre: the normal numbers themselves, or L times them. */
void gw_spread_deviation(const gw_spread_options *o, int n_figures, long draw, double *out)
{
    for (int j = 0; j < n_figures; j++) out[j] = gw_normal_draw(o->seed, draw, j);
    for (int i = n_figures - 1; i >= 0 && o->lower; i--) {
        double sum = 0.0;
        for (int j = 0; j <= i; j++) sum += o->lower[i * n_figures + j] * out[j];
        out[i] = sum;
    }
}

void gw_spread_shares(const gw_spread_options *o, int n, const double *g, double *share, bool *moved)
{
    double whole = 0.0;
    for (int i = 0; i < n; i++) {
        double along = o->covariance ? 0.0 : g[i];
        for (int j = 0; j < n && o->covariance; j++) along += o->covariance[i * n + j] * g[j];
        whole += g[i] * along;
        share[i] = along * along / (o->covariance ? o->covariance[i * n + i] : 1.0);
    }
    *moved = whole > 0.0;
    for (int i = 0; i < n; i++) share[i] = *moved ? share[i] / whole : 0.0;
}

int gw_spread_rank(const double *share, int n, gw_spread_share *out)
{
    int many = 0;
    for (int i = 0; i < n; i++) {
        if (!(share[i] > 0.0)) continue;
        int at = many++;
        for (; at > 0 && out[at - 1].share < share[i]; at--) out[at] = out[at - 1];
        out[at] = (gw_spread_share){ i, share[i] };
    }
    return many;
}

double gw_spread_r2(const double *values, const double *linear, long n)
{
    double mx = 0.0, my = 0.0, xx = 0.0, yy = 0.0, xy = 0.0;
    for (long i = 0; i < n; i++) {
        mx += values[i];
        my += linear[i];
    }
    mx /= (double)n;
    my /= (double)n;
    for (long i = 0; i < n; i++) {
        double x = values[i] - mx, y = linear[i] - my;
        xx += x * x;
        yy += y * y;
        xy += x * y;
    }
    return xx > 0.0 && yy > 0.0 ? xy * xy / (xx * yy) : (double)NAN;
}
