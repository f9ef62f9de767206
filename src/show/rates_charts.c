/* SPDX-License-Identifier: MIT */
/* Dynamic stiffness and loss angle of a bush from 1 to 500 Hz, with the limits that its tolerances give. */
#include "show/rates.h"

#include "chart/style.h"
#include "format/number.h"

#include <math.h>
#include <stdio.h>

enum { POINTS = 82, LINES = 3 };

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

/* How it goes from the lowest frequency to the highest. */
static void say(const char *of, const char *bush, const double *y, const char *unit, int digits, gw_buf *out)
{
    double from = y[0], to = y[POINTS - 1];
    if (fabs(to - from) < 0.01 * fabs(from))
        gw_buf_fmt(out, "%s of %s stays at %s %s from 1 to 500 Hz", of, bush, gw_significant(from, digits).s,
                   unit);
    else
        gw_buf_fmt(out, "%s of %s %s from %s to %s %s between 1 and 500 Hz", of, bush,
                   to > from ? "rises" : "falls", gw_significant(from, digits).s,
                   gw_significant(to, digits).s, unit);
}

/* One chart: the expected line, and the band between its limits where there are any. */
static void add_chart(const gw_rates_row *row, double amplitude, const gw_sweep_figures *f,
                      double y[LINES][POINTS], const char *const words[4], gw_charts *charts)
{
    const char *bush = row->bush->label ? row->bush->label : row->bush->name;
    gw_buf title = { 0 };
    bool limits = y[2][0] > y[0][0] || y[1][0] < y[0][0];
    const gw_chart_mark mark[] = {
        { .kind = GW_MARK_AREA, .style = GW_PARTS, .x = f->hz, .low = y[1], .high = y[2], .n = POINTS },
        { .kind = GW_MARK_LINE,
          .style = GW_PARTS,
          .name = limits ? "expected, and its band" : "expected",
          .x = f->hz,
          .y = y[0],
          .n = POINTS },
    };
    const char *what = gw_charts_fmt(charts, "%s over frequency; amplitude %s mm, static radial rate %s N/mm",
                                     words[2], gw_significant(gw_unit_out(GW_UNIT_MM, amplitude), 3).s,
                                     gw_significant(gw_unit_out(GW_UNIT_N_PER_MM, row->own.radial[0]), 3).s);
    say(words[1], bush, y[0], words[3], 3, &title);
    gw_charts_figure(charts, gw_charts_fmt(charts, "%s-%.120s", words[0], row->bush->name),
                     &(gw_figure){ .words = { gw_charts_kept(charts, &title), NULL, "frequency (Hz)",
                                              words[2], note_of(row), what },
                                   .x = { .kind = GW_SCALE_LOG, .fixed = true, .from = FROM_HZ, .to = TO_HZ },
                                   .y = { .with_zero = true },
                                   .mark = limits ? mark : mark + 1,
                                   .n = limits ? 2 : 1 });
}

static void draw(const gw_rates_row *row, double amplitude, gw_charts *charts)
{
    static const char *const STIFFNESS[] = { "stiffness", "Dynamic stiffness",
                                             "radial stiffness along e1 (N/mm)", "N/mm" };
    static const char *const ANGLE[] = { "loss-angle", "Loss angle", "loss angle (deg)", "deg" };
    gw_sweep_figures f;
    work_out(row, amplitude, &f);
    add_chart(row, amplitude, &f, f.stiffness, STIFFNESS, charts);
    add_chart(row, amplitude, &f, f.angle, ANGLE, charts);
}

void gw_rates_charts(const gw_case *c, const void *it, gw_charts *charts)
{
    const gw_rates_made *made = it;
    (void)c;
    for (int i = 0; i < made->n; i++)
        if (made->n == 1 || made->row[i].report.law.dynamic.zener_gain > 0.0)
            draw(&made->row[i], made->plan.amplitude, charts);
}
