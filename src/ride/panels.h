/* SPDX-License-Identifier: MIT */
/** Integrals over frequency of functions with known poles near the axis. */
#ifndef RIDE_PANELS_H
#define RIDE_PANELS_H

#include "giveway/status.h"
#include "ride/lanes.h"

#include <stdbool.h>

/** A pair of poles at hz +- i width [Hz]. */
typedef struct gw_pole {
    double hz, width;
} gw_pole;

/**
 * One panel: eight frequencies, with weights that hold everything of the integration. Returns false,
 * having added nothing, where the integrand is not smooth enough for eight points; the panel is then halved.
 */
typedef bool gw_panel_visit(void *context, const double hz[GW_LANES], const double weight[GW_LANES]);

/**
 * Do the eight weighted values belong to a function that eight points resolve well enough: are the last two
 * of its Legendre coefficients at most `part` of the first?
 */
bool gw_panel_is_smooth_to(const double weighted[GW_LANES], double part);

/** For figures that are printed. */
#define GW_PANEL_SMOOTH (1.0 / 80.0)

/**
 * Integrate from cuts[0] to cuts[n_cuts - 1], with a panel's end at every cut; cuts rise, above 0.
 * `poles` are sorted here. GW_E_NUMERIC where halving does not end: a pole on the axis.
 */
gw_status gw_panels_integrate(gw_pole *poles, int n_poles, const double *cuts, int n_cuts,
                              gw_panel_visit *visit, void *context, gw_error *err);

#endif
