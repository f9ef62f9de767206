/* SPDX-License-Identifier: MIT */
/** Ranges and ticks. Internal to the charts. */
#ifndef CHART_AXIS_H
#define CHART_AXIS_H

#include <stdbool.h>

enum { GW_MAX_TICKS = 64 };

/** One axis: its range, where that lies on the page, and its ticks. */
typedef struct gw_axis {
    double from, to;
    double start, end; /**< pixels of from and to */
    bool log;
    int n_ticks;
    struct {
        double at;
        bool minor; /**< without a figure */
    } ticks[GW_MAX_TICKS];
    int decimals; /**< of the figures, linear axis */
} gw_axis;

/** Ticks at 1, 2 or 5 times a power of ten, at most `most`; `widen` moves the ends to ticks. */
gw_axis gw_axis_linear(double from, double to, int most, bool widen);
/** Both ends > 0; figures at 1, 2, 5 where there is room, else at powers of ten. */
gw_axis gw_axis_log(double from, double to, bool widen);
/** The figure at a tick. */
void gw_axis_figure(const gw_axis *axis, int tick, char figure[32]);
/** Room of the widest figure. */
double gw_axis_figures_room(const gw_axis *axis);
/** Pixel of a value. */
double gw_axis_at(const gw_axis *axis, double value);

#endif
