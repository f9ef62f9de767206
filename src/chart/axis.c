/* SPDX-License-Identifier: MIT */
#include "chart/axis.h"

#include "chart/style.h"
#include "chart/type.h"
#include "format/number.h"

#include <math.h>
#include <stdio.h>

static void add_tick(gw_axis *axis, double at, bool minor)
{
    if (axis->n_ticks >= GW_MAX_TICKS) return;
    axis->ticks[axis->n_ticks].at = at;
    axis->ticks[axis->n_ticks].minor = minor;
    axis->n_ticks++;
}

/* The smallest of 1, 2, 5 times a power of ten that is not below `least`. */
static double round_step(double least)
{
    double power = pow(10.0, floor(log10(least)));
    double part = least / power;
    double round = part <= 1.0 + 1e-9 ? 1 : part <= 2.0 + 1e-9 ? 2 : part <= 5.0 + 1e-9 ? 5 : 10;
    return round * power;
}

gw_axis gw_axis_linear(double from, double to, int most, bool widen)
{
    gw_axis axis = { .from = from, .to = to };
    if (!(to - from > 1e-12 * fmax(fabs(from), fabs(to)))) { /* a single value gets room on both sides */
        double half = from != 0.0 ? 0.1 * fabs(from) : 1.0;
        axis.from = from - half;
        axis.to = from + half;
    }
    double step = round_step((axis.to - axis.from) / most);
    double first = ceil(axis.from / step - 1e-6), last = floor(axis.to / step + 1e-6);
    if (widen) {
        first = floor(axis.from / step + 1e-6);
        last = ceil(axis.to / step - 1e-6);
        axis.from = first * step;
        axis.to = last * step;
    }
    for (double i = first; i <= last; i++) add_tick(&axis, i * step, false);
    axis.decimals = step < 1.0 ? (int)ceil(-log10(step) - 1e-9) : 0;
    if (axis.decimals > 12) axis.decimals = 12;
    return axis;
}

static bool has_figure(int digit, double decades)
{
    return digit == 1 || (decades <= 3.2 && (digit == 2 || digit == 5)) || decades < 0.8;
}

gw_axis gw_axis_log(double from, double to, bool widen)
{
    gw_axis axis = { .from = from, .to = to, .log = true };
    if (!(to > from * (1 + 1e-9))) {
        axis.from = from / 2;
        axis.to = from * 2;
    }
    if (widen) {
        axis.from = 1.0 / round_step(1.0 / axis.from); /* 1, 2 or 5 at either end */
        axis.to = round_step(axis.to);
    }
    double decades = log10(axis.to / axis.from);
    int low = (int)floor(log10(axis.from) - 1e-9), high = (int)ceil(log10(axis.to) + 1e-9);
    for (int k = low; k <= high; k++)
        for (int digit = 1; digit <= 9; digit++) {
            double at = digit * pow(10.0, k);
            if (at < axis.from * (1 - 1e-9) || at > axis.to * (1 + 1e-9)) continue;
            bool figure = has_figure(digit, decades);
            if (figure || decades <= 6) add_tick(&axis, at, !figure);
        }
    return axis;
}

void gw_axis_figure(const gw_axis *axis, int tick, char figure[32])
{
    double at = axis->ticks[tick].at;
    gw_number number;
    if (!axis->log)
        number = fabs(at) < 1e7 ? gw_fixed(at, axis->decimals) : gw_significant(at, 3);
    else if (at >= 1e-4 && at < 1e6)
        number = gw_exact((double)round(at * 1e6) / 1e6);
    else
        number = gw_significant(at, 1);
    snprintf(figure, 32, "%.31s", number.s);
}

double gw_axis_figures_room(const gw_axis *axis)
{
    double widest = 0.0;
    char figure[32];
    for (int i = 0; i < axis->n_ticks; i++) {
        if (axis->ticks[i].minor) continue;
        gw_axis_figure(axis, i, figure);
        widest = fmax(widest, gw_text_room(figure, GW_TYPE_TICK, false));
    }
    return widest;
}

double gw_axis_at(const gw_axis *axis, double value)
{
    double part = axis->log ? log(value / axis->from) / log(axis->to / axis->from)
                            : (value - axis->from) / (axis->to - axis->from);
    return axis->start + part * (axis->end - axis->start);
}
