/* SPDX-License-Identifier: MIT */
#include "giveway/rig.h"

#include "bush/dynamic.h"
#include "fit/nonlinear.h"
#include "giveway/units.h"

#include <complex.h>
#include <math.h>
#include <stdlib.h>

static const double TAU = 1e-6;  /* as in materials/: far above the band */
static const double APART = 1.1; /* values that differ by less are one and the same setting of the rig */
static const double USUAL_EXPONENT = 0.55;
static const double ALPHA_MOST = 1.0, EXPONENT_MOST = 2.0;

/** A figure is sought as a number without bounds: its logarithm, or where it has two bounds the logit
 * between. */
typedef struct search {
    const gw_rig_row *row;
    int n;
    int n_sought;
    gw_rig_figure sought[GW_RIG_FIGURES];
    double value[GW_RIG_FIGURES];                     /**< of those that are held */
    double low[GW_RIG_FIGURES], high[GW_RIG_FIGURES]; /**< high infinite: one bound, 0 */
    bool natural;                                     /**< sought as they are: for their spread */
} search;

static double to_free(const search *s, gw_rig_figure f, double v)
{
    if (isinf(s->high[f])) return log(v);
    if (f == GW_RIG_PAYNE_AMPLITUDE) {
        double t = log(v / s->low[f]) / log(s->high[f] / s->low[f]);
        return log(t / (1.0 - t));
    }
    return log(v / (s->high[f] - v));
}

static double from_free(const search *s, gw_rig_figure f, double u)
{
    if (isinf(s->high[f])) return exp(u);
    double t = 1.0 / (1.0 + exp(-u));
    return f == GW_RIG_PAYNE_AMPLITUDE ? s->low[f] * pow(s->high[f] / s->low[f], t) : s->high[f] * t;
}

static gw_rig_law law_of(const double v[GW_RIG_FIGURES])
{
    return (gw_rig_law){ true,
                         v[GW_RIG_RATE],
                         v[GW_RIG_ZENER_GAIN],
                         TAU,
                         v[GW_RIG_ZENER_ALPHA],
                         v[GW_RIG_PAYNE_GAIN],
                         v[GW_RIG_PAYNE_AMPLITUDE],
                         v[GW_RIG_PAYNE_EXPONENT] };
}

static double complex stiffness(const gw_rig_law *law, double hz, double amplitude)
{
    double complex k = law->rate * gw_zener_factor(law->zener_gain, law->zener_tau, law->zener_alpha, hz);
    if (law->payne_gain > 0.0)
        k *= gw_kraus_factor(law->payne_gain, 0.0, law->payne_exponent, amplitude / law->payne_amplitude);
    return k;
}

void gw_rig_stiffness(const gw_rig_law *law, double hz, double amplitude, double *size, double *angle)
{
    double complex k = stiffness(law, hz, amplitude);
    *size = cabs(k);
    *angle = carg(k);
}

static void figures_at(const search *s, const double *p, double v[GW_RIG_FIGURES])
{
    for (int i = 0; i < GW_RIG_FIGURES; i++) v[i] = s->value[i];
    for (int i = 0; i < s->n_sought; i++)
        v[s->sought[i]] = s->natural ? p[i] : from_free(s, s->sought[i], p[i]);
}

static void residuals(const double *p, double *r, void *context)
{
    const search *s = context;
    double v[GW_RIG_FIGURES];
    figures_at(s, p, v);
    gw_rig_law law = law_of(v);
    for (int i = 0; i < s->n; i++) {
        double complex k = stiffness(&law, s->row[i].hz, s->row[i].amplitude);
        r[2 * i] = log(s->row[i].stiffness / cabs(k));
        r[2 * i + 1] = s->row[i].loss - carg(k);
    }
}

static int by_size(const void *a, const void *b)
{
    double p = *(const double *)a, q = *(const double *)b;
    return p < q ? -1 : p > q;
}

/* Values that are more than a tenth above the last that counted; sorts them. */
static int count_apart(double *v, int n)
{
    int count = 0;
    double last = 0.0;
    qsort(v, (size_t)n, sizeof *v, by_size);
    for (int i = 0; i < n; i++)
        if (count == 0 || v[i] > APART * last) {
            last = v[i];
            count++;
        }
    return count;
}

static gw_status count_settings(const gw_rig_row *row, int n, gw_rig *out, search *s, gw_error *err)
{
    double *v = malloc(((size_t)n + 1) * sizeof *v);
    if (!v) return gw_fail(err, GW_E_NOMEM, "out of memory for readings");
    for (int i = 0; i < n; i++) v[i] = row[i].hz;
    out->n_frequencies = count_apart(v, n);
    for (int i = 0; i < n; i++) v[i] = row[i].amplitude;
    out->n_amplitudes = count_apart(v, n);
    s->low[GW_RIG_PAYNE_AMPLITUDE] = n ? 0.1 * v[0] : 0.0;
    s->high[GW_RIG_PAYNE_AMPLITUDE] = n ? 10.0 * v[n - 1] : 0.0;
    free(v);
    if (out->n_frequencies >= 3) return GW_OK;
    return gw_fail(err, GW_E_RANGE,
                   "readings at %d %s: a law over frequency needs three that differ by more than a tenth",
                   out->n_frequencies, out->n_frequencies == 1 ? "frequency" : "frequencies");
}

static void choose_figures(gw_rig *out, search *s)
{
    static const gw_rig_figure ALL[] = { GW_RIG_RATE,       GW_RIG_ZENER_GAIN,      GW_RIG_ZENER_ALPHA,
                                         GW_RIG_PAYNE_GAIN, GW_RIG_PAYNE_AMPLITUDE, GW_RIG_PAYNE_EXPONENT };
    for (int i = 0; i < GW_RIG_FIGURES; i++)
        if (i != GW_RIG_PAYNE_AMPLITUDE) s->high[i] = (double)INFINITY;
    s->high[GW_RIG_ZENER_ALPHA] = ALPHA_MOST;
    s->high[GW_RIG_PAYNE_EXPONENT] = EXPONENT_MOST;
    s->value[GW_RIG_PAYNE_EXPONENT] = USUAL_EXPONENT;
    s->value[GW_RIG_PAYNE_AMPLITUDE] = s->low[GW_RIG_PAYNE_AMPLITUDE];
    s->n_sought = out->n_amplitudes < 3 ? 3 : out->n_amplitudes == 3 ? 5 : 6;
    for (int i = 0; i < s->n_sought; i++) {
        s->sought[i] = ALL[i];
        out->fitted[ALL[i]] = true;
    }
    out->n_fitted = s->n_sought;
}

/** The best of several beginnings, as figures. */
typedef struct best {
    double sum, v[GW_RIG_FIGURES];
    bool found;
    bool starved; /**< memory ran out in one of them */
} best;

static void try_from(search *s, const double v[GW_RIG_FIGURES], best *b)
{
    const gw_nonlinear problem = { 2 * s->n, s->n_sought, residuals, s };
    double p[GW_RIG_FIGURES], sum;
    for (int i = 0; i < s->n_sought; i++) p[i] = to_free(s, s->sought[i], v[s->sought[i]]);
    gw_status st = gw_nonlinear_fit(&problem, p, &sum, NULL);
    b->starved = b->starved || st == GW_E_NOMEM;
    if (st != GW_OK || (b->found && !(sum < b->sum))) return;
    b->found = true;
    b->sum = sum;
    figures_at(s, p, b->v);
}

/* The rate that a Zener law of this kind needs for the mean of what was read. */
static double mean_rate(const search *s, double gain, double alpha)
{
    double sum = 0.0;
    for (int i = 0; i < s->n; i++)
        sum += log(s->row[i].stiffness / cabs(gw_zener_factor(gain, TAU, alpha, s->row[i].hz)));
    return exp(sum / s->n);
}

static void search_all(search *s, best *b)
{
    static const double ALPHA[] = { 0.15, 0.35, 0.7 }, GAIN[] = { 1.5, 8.0 };
    double low = s->low[GW_RIG_PAYNE_AMPLITUDE], high = s->high[GW_RIG_PAYNE_AMPLITUDE];
    for (int a = 0; a < 3; a++)
        for (int g = 0; g < 2; g++)
            for (int x = 0; x < (s->n_sought > 3 ? 2 : 1); x++) {
                double v[GW_RIG_FIGURES] = { 0.0, GAIN[g], ALPHA[a], 0.3, 0.0, 0.6 };
                v[GW_RIG_PAYNE_AMPLITUDE] = low * pow(high / low, x ? 0.65 : 0.35);
                v[GW_RIG_RATE] = mean_rate(s, GAIN[g], ALPHA[a]);
                try_from(s, v, b);
            }
}

/* A figure that has run up to a bound is put on it, and the others sought once more. */
static void settle_bounds(search *s, best *b)
{
    for (int i = 0; i < s->n_sought; i++) {
        gw_rig_figure f = s->sought[i];
        double high = s->high[f], low = s->low[f], v = b->v[f];
        bool top = isfinite(high) && v > high * (1.0 - 1e-3), bottom = low > 0.0 && v < low * (1.0 + 1e-3);
        if (!top && !bottom) continue;
        search held = *s;
        best there = { 0 };
        for (int k = i; k + 1 < held.n_sought; k++) held.sought[k] = held.sought[k + 1];
        held.n_sought--;
        held.value[f] = top ? high : low;
        try_from(&held, b->v, &there);
        there.starved = b->starved = b->starved || there.starved;
        if (there.found && there.sum <= b->sum * (1.0 + 1e-12)) *b = there;
    }
}

static void find_worst(const search *s, gw_rig *out)
{
    double most = -1.0;
    for (int i = 0; i < s->n; i++) {
        double complex k = stiffness(&out->law, s->row[i].hz, s->row[i].amplitude);
        double size = log(s->row[i].stiffness / cabs(k)), angle = s->row[i].loss - carg(k);
        if (hypot(size, angle) <= most) continue;
        most = hypot(size, angle);
        out->worst = i;
        out->worst_stiffness = s->row[i].stiffness / cabs(k) - 1.0;
        out->worst_loss = angle;
    }
}

static gw_status find_within(search *s, const best *b, gw_rig *out, gw_error *err)
{
    const gw_nonlinear problem = { 2 * s->n, s->n_sought, residuals, s };
    double p[GW_RIG_FIGURES], spread[GW_RIG_FIGURES];
    int free_rows = 2 * s->n - s->n_sought;
    out->scatter = free_rows > 0 ? sqrt(b->sum / free_rows) : (double)NAN;
    for (int i = 0; i < GW_RIG_FIGURES; i++) out->within[i] = NAN;
    for (int i = 0; i < s->n_sought; i++) p[i] = b->v[s->sought[i]];
    s->natural = true;
    gw_status status = gw_nonlinear_spread(&problem, p, spread, NULL);
    if (status == GW_E_NOMEM) return gw_fail(err, status, "out of memory for readings");
    if (status != GW_OK) return GW_OK; /* no curvature: how far they are known cannot be told */
    for (int i = 0; i < s->n_sought; i++) out->within[s->sought[i]] = 2.0 * spread[i] * out->scatter;
    return GW_OK;
}

gw_status gw_rig_fit(const gw_rig_row *row, int n, gw_rig *out, gw_error *err)
{
    gw_rig rig = { 0 };
    search s = { .row = row, .n = n };
    best b = { 0 };
    if (n > GW_RIG_MOST)
        return gw_fail(err, GW_E_RANGE, "more than %d rows: keep one a frequency and amplitude", GW_RIG_MOST);
    gw_status st = count_settings(row, n, &rig, &s, err);
    if (st != GW_OK) return st;
    choose_figures(&rig, &s);
    if (2 * n < s.n_sought)
        return gw_fail(err, GW_E_RANGE, "%d rows are too few for %d figures: read more", n, s.n_sought);
    search_all(&s, &b);
    if (!b.found && !b.starved)
        return gw_fail(err, GW_E_NUMERIC, "no law fits these readings: check columns and units");
    if (b.found) settle_bounds(&s, &b);
    if (b.starved) return gw_fail(err, GW_E_NOMEM, "out of memory for readings");
    if (s.n_sought == 3) b.v[GW_RIG_PAYNE_GAIN] = 0.0;
    rig.law = law_of(b.v);
    find_worst(&s, &rig);
    st = find_within(&s, &b, &rig, err);
    if (st == GW_OK) *out = rig;
    return st;
}
