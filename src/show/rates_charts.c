/* SPDX-License-Identifier: MIT */
/* Dynamic stiffness and loss angle of a bush from 1 to 500 Hz, with the limits that its tolerances give. */
#include "show/rates.h"

#include "format/number.h"

#include <math.h>
#include <stdio.h>

enum { POINTS = 82, LINES = 3, TEXT = 200 };

static const double FROM_HZ = 1.0, TO_HZ = 500.0;

/* Expected, lowest and highest over frequency, of stiffness [N/mm] and loss angle [deg]. */
typedef struct gw_sweep_figures {
    double hz[POINTS], stiffness[LINES][POINTS], angle[LINES][POINTS];
} gw_sweep_figures;

static void work_out(const gw_rates_row *row, double amplitude, gw_sweep_figures *out)
{
    double rate = gw_unit_out(GW_UNIT_N_PER_MM, row->own.radial[0]);
    for (int i = 0; i < POINTS; i++) {
        out->hz[i] = FROM_HZ * pow(TO_HZ / FROM_HZ, (double)i / (POINTS - 1));
        gw_dynamic_band band =
            gw_dynamic_band_of(&row->report.law.dynamic, gw_rates_material(row->bush), out->hz[i], amplitude);
        out->stiffness[0][i] = rate * band.ratio;
        out->stiffness[1][i] = rate * band.ratio_low * row->report.low;
        out->stiffness[2][i] = rate * band.ratio_high * row->report.high;
        out->angle[0][i] = gw_unit_out(GW_UNIT_DEG, atan(band.loss));
        out->angle[1][i] = gw_unit_out(GW_UNIT_DEG, atan(band.loss_low));
        out->angle[2][i] = gw_unit_out(GW_UNIT_DEG, atan(band.loss_high));
    }
}

static const char *note_of(const gw_rates_row *row)
{
    if (gw_rates_material(row->bush))
        return "Lowest and highest by the tolerances of the compound; towards 500 Hz the law is an "
               "extrapolation.";
    return "Constant over frequency: as given in the case, or the static rate without loss.";
}

/* One chart: the expected line, and its limits where there are any. */
static void add_chart(const gw_rates_row *row, double amplitude, const gw_sweep_figures *f,
                      double y[LINES][POINTS], const char *const words[3], gw_charts *charts)
{
    static const char *const NAMES[LINES] = { "expected", "lowest", "highest" };
    char stem[TEXT], title[TEXT], subtitle[TEXT];
    gw_chart_series series[LINES];
    bool limits = y[2][0] > y[0][0] || y[1][0] < y[0][0];
    for (int s = 0; s < LINES; s++) series[s] = (gw_chart_series){ NAMES[s], f->hz, y[s], POINTS, s };
    snprintf(stem, sizeof stem, "%s-%.120s", words[0], row->bush->name);
    snprintf(title, sizeof title, "%s: %.120s", words[1],
             row->bush->label ? row->bush->label : row->bush->name);
    snprintf(subtitle, sizeof subtitle, "Amplitude %s mm; static radial rate %s N/mm",
             gw_significant(gw_unit_out(GW_UNIT_MM, amplitude), 3).s,
             gw_significant(gw_unit_out(GW_UNIT_N_PER_MM, row->own.radial[0]), 3).s);
    const gw_line_chart chart = { .words = { title, subtitle, "frequency (Hz)", words[2], note_of(row) },
                                  .series = series,
                                  .n_series = limits ? LINES : 1,
                                  .log_x = true,
                                  .has_x_range = true,
                                  .x_from = FROM_HZ,
                                  .x_to = TO_HZ,
                                  .with_zero = true };
    gw_charts_lines(charts, stem, &chart);
}

static void draw(const gw_rates_row *row, double amplitude, gw_charts *charts)
{
    static const char *const STIFFNESS[] = { "stiffness", "Dynamic stiffness",
                                             "radial stiffness along e1 (N/mm)" };
    static const char *const ANGLE[] = { "loss-angle", "Loss angle", "loss angle (deg)" };
    gw_sweep_figures f;
    work_out(row, amplitude, &f);
    add_chart(row, amplitude, &f, f.stiffness, STIFFNESS, charts);
    add_chart(row, amplitude, &f, f.angle, ANGLE, charts);
}

gw_status gw_rates_charts(const gw_case *c, const void *it, gw_charts *charts, gw_error *err)
{
    const gw_rates_made *made = it;
    (void)c;
    for (int i = 0; i < made->n; i++)
        if (made->n == 1 || made->row[i].report.law.dynamic.zener_gain > 0.0)
            draw(&made->row[i], made->plan.amplitude, charts);
    return charts->failed ? gw_fail(err, GW_E_NOMEM, "out of memory for a chart") : GW_OK;
}
