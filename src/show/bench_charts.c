/* SPDX-License-Identifier: MIT */
/* The loop with the law through it; stiffness and loss angle over frequency with the fit. */
#include "chart/style.h"
#include "format/number.h"
#include "giveway/curve.h"
#include "giveway/units.h"
#include "show/bench.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

enum { DRAWN = 400, AMPLITUDES = 3, FIT = 60, ROWS = 200, NAME = 48 };

/** A line of the press thinned out, in trade units. */
typedef struct thin {
    double x[DRAWN], f[DRAWN];
    int n;
} thin;

static void thin_out(const gw_press_line *line, double unit, thin *out)
{
    int step = line->n / DRAWN + 1;
    out->n = 0;
    for (int i = 0; i < line->n; i += step) {
        out->x[out->n] = line->x[i] / unit;
        out->f[out->n++] = line->f[i];
    }
}

/* The law where the readings stand: back over the zero, and turned over where they were. */
static void law_line(const gw_press *p, double unit, thin *out)
{
    double x[2 * GW_PRESS_MOST], y[2 * GW_PRESS_MOST], sign = p->turned ? -1.0 : 1.0;
    gw_curve curve;
    out->n = 0;
    if (gw_curve_make(p->x, p->f, p->n, x, y, &curve, NULL, NULL) != GW_OK) return;
    const gw_curve_use use = { &curve, 1.0, 0.0 };
    double from = p->sides == 2 ? -p->stroke[0] : 0.0, to = p->stroke[1];
    for (int i = 0; i < 101; i++) {
        double at = from + (to - from) * i / 100.0;
        out->x[i] = (p->zero + sign * at) / unit;
        out->f[i] = sign * gw_curve_force(&use, at, NULL);
        out->n = i + 1;
    }
}

static void draw_press(const gw_bench_result *r, gw_charts *charts)
{
    const gw_press *p = &r->data.press;
    bool turns = r->data.kind == GW_BENCH_MOMENT;
    double unit = turns ? GW_DEG : GW_MM;
    thin *line = gw_charts_room(charts, 3, sizeof *line);
    if (!line) return;
    gw_chart_series series[3];
    int n = 0;
    law_line(p, unit, &line[0]);
    series[n++] = (gw_chart_series){ "law", line[0].x, line[0].f, line[0].n, GW_PARTS };
    thin_out(p->one_way ? &p->mean : &p->up, unit, &line[1]);
    series[n++] =
        (gw_chart_series){ p->one_way ? "read" : "up", line[1].x, line[1].f, line[1].n, GW_PARTS + 1 };
    if (!p->one_way) {
        thin_out(&p->down, unit, &line[2]);
        series[n++] = (gw_chart_series){ "down", line[2].x, line[2].f, line[2].n, GW_PARTS + 2 };
    }
    const char *title =
        gw_charts_fmt(charts, "The rate at zero is %s %s, the loss factor %s",
                      gw_significant(p->rate_zero / (turns ? GW_NM_PER_DEG : GW_N_PER_MM), 3).s,
                      turns ? "N m/deg" : "N/mm", gw_fixed(p->loss, 3).s);
    const gw_line_chart chart = { .words = { title, GW_BENCH_AS[r->as],
                                             turns ? "angle (deg)" : "deflection (mm)",
                                             turns ? "moment (N m)" : "force (N)", NULL,
                                             "Readings of the press and the law through them" },
                                  .series = series,
                                  .n_series = n,
                                  .with_zero = true };
    gw_charts_lines(charts, gw_charts_fmt(charts, "%s-loop", GW_BENCH_AS[r->as]), &chart);
}

/** Readings and fit at one amplitude. */
typedef struct sweep {
    double amplitude;
    int n;
    double hz[ROWS], size[ROWS], angle[ROWS];
    double fit_hz[FIT], fit_size[FIT], fit_angle[FIT];
    char read_name[NAME + 16], fit_name[NAME + 16];
} sweep;

static int by_hz(const void *a, const void *b)
{
    double p = ((const gw_rig_row *)a)->hz, q = ((const gw_rig_row *)b)->hz;
    return p < q ? -1 : p > q;
}

static void range_of(const gw_bench_file *file, double hz[2])
{
    hz[0] = HUGE_VAL;
    hz[1] = 0.0;
    for (int i = 0; i < file->n_rows; i++) {
        hz[0] = fmin(hz[0], file->row[i].hz);
        hz[1] = fmax(hz[1], file->row[i].hz);
    }
}

static void fill_fit(const gw_rig_law *law, const double hz[2], sweep *s)
{
    for (int i = 0; i < FIT; i++) {
        s->fit_hz[i] = hz[0] * pow(hz[1] / hz[0], i / (FIT - 1.0));
        gw_rig_stiffness(law, s->fit_hz[i], s->amplitude, &s->fit_size[i], &s->fit_angle[i]);
        s->fit_size[i] /= GW_N_PER_MM;
        s->fit_angle[i] /= GW_DEG;
    }
    snprintf(s->read_name, sizeof s->read_name, "read, %s mm", gw_significant(s->amplitude / GW_MM, 2).s);
    snprintf(s->fit_name, sizeof s->fit_name, "fit, %s mm", gw_significant(s->amplitude / GW_MM, 2).s);
}

/* Up to three amplitudes, from the least on, each with its rows in the order of frequency. */
static int find_sweeps(const gw_bench_file *file, gw_rig_row *row, sweep *out)
{
    int n = 0;
    double last = 0.0, hz[2];
    range_of(file, hz);
    for (int i = 0; i < file->n_rows; i++) row[i] = file->row[i];
    qsort(row, (size_t)file->n_rows, sizeof *row, by_hz);
    while (n < AMPLITUDES) {
        double next = HUGE_VAL;
        for (int i = 0; i < file->n_rows; i++)
            if (row[i].amplitude > 1.1 * last) next = fmin(next, row[i].amplitude);
        if (isinf(next)) break;
        sweep *s = &out[n++];
        *s = (sweep){ .amplitude = last = next };
        for (int i = 0; i < file->n_rows && s->n < ROWS; i++) {
            if (row[i].amplitude < next || row[i].amplitude > 1.1 * next) continue;
            s->hz[s->n] = row[i].hz;
            s->size[s->n] = row[i].stiffness / GW_N_PER_MM;
            s->angle[s->n++] = row[i].loss / GW_DEG;
        }
        fill_fit(&file->rig.law, hz, s);
    }
    return n;
}

static void add_chart(const sweep *s, int n, bool angle, gw_charts *charts)
{
    gw_chart_series series[2 * AMPLITUDES];
    for (int i = 0; i < n; i++) {
        series[2 * i] = (gw_chart_series){ s[i].fit_name, s[i].fit_hz, angle ? s[i].fit_angle : s[i].fit_size,
                                           FIT, GW_PARTS + 2 * i };
        series[2 * i + 1] = (gw_chart_series){ s[i].read_name, s[i].hz, angle ? s[i].angle : s[i].size,
                                               s[i].n, GW_PARTS + 2 * i + 1 };
    }
    const double *fit = angle ? s[0].fit_angle : s[0].fit_size;
    const char *title = gw_charts_fmt(
        charts, "%s goes from %s to %s %s between %s and %s Hz", angle ? "The loss angle" : "The stiffness",
        gw_significant(fit[0], 3).s, gw_significant(fit[FIT - 1], 3).s, angle ? "deg" : "N/mm",
        gw_significant(s[0].fit_hz[0], 3).s, gw_significant(s[0].fit_hz[FIT - 1], 3).s);
    const gw_line_chart chart = {
        .words = { title, NULL, "frequency (Hz)", angle ? "loss angle (deg)" : "stiffness (N/mm)", NULL,
                   "Readings of the test rig and the law through them, by amplitude" },
        .series = series,
        .n_series = 2 * n,
        .log_x = true,
        .with_zero = true
    };
    gw_charts_lines(charts, angle ? "dynamic-loss-angle" : "dynamic-stiffness", &chart);
}

static void draw_rig(const gw_bench_file *file, gw_charts *charts)
{
    sweep *s = gw_charts_room(charts, AMPLITUDES, sizeof *s);
    gw_rig_row *row = gw_charts_room(charts, file->n_rows, sizeof *row);
    int n = s && row ? find_sweeps(file, row, s) : 0;
    if (!n) return;
    add_chart(s, n, false, charts);
    add_chart(s, n, true, charts);
}

void gw_bench_charts(const gw_case *c, const void *it, gw_charts *charts)
{
    const gw_bench_result *results = ((const gw_bench_made *)it)->result;
    int n = ((const gw_bench_made *)it)->n;
    (void)c;
    for (int i = 0; i < n; i++) {
        if (results[i].data.kind == GW_BENCH_DYNAMIC)
            draw_rig(&results[i].data, charts);
        else
            draw_press(&results[i], charts);
    }
}
