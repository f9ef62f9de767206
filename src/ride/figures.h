/* SPDX-License-Identifier: MIT */
/** Comfort, harshness and road noise as integrals over the road's spectrum. */
#ifndef RIDE_FIGURES_H
#define RIDE_FIGURES_H

#include "ride/crackle.h"
#include "ride/modes.h"

/** Mean squares; path has one entry an attachment, owned by the caller. */
typedef struct gw_figures {
    double comfort;        /**< [m^2/s^4] */
    double harshness;      /**< [N^2]     */
    double noise;          /**< [N^2]     */
    double band[GW_BANDS]; /**< [N^2]     */
    double crackle[2];     /**< of harshness and noise, what crackle alone makes [N^2] */
    double *path;          /**< [N^2], over the harshness band */
} gw_figures;

/** What drives the corner: the road and, apart from it, the jumps of friction. */
enum { GW_BY_ROAD, GW_BY_CRACKLE, GW_DRIVES };

/** Scratch of the sweep. */
typedef struct gw_ride_sweep {
    gw_ride_model *model;
    gw_crackle crackle;
    double smooth;               /**< measure of gw_panel_is_smooth_to              */
    bool with_comfort;           /**< wanted                                        */
    gw_lanes *x, *by[GW_DRIVES]; /**< [n] each; x is that by the road               */
    double *squares;             /**< [drive][n_paths * lanes]                      */
    gw_pole *poles;              /**< [n]                                           */
    int n_poles;
    gw_figures *sum;
} gw_ride_sweep;

/** Mean square per hertz of one metre's response: road spectrum, averaged over the contact [m^2/Hz]. */
static inline double gw_ride_road_density(const gw_ride *s, double hz)
{
    double filter = gw_road_contact_filter(s->contact_length, s->speed, hz);
    return gw_road_spectrum(s->roughness, s->speed, hz) * filter * filter;
}

gw_status gw_sweep_open(gw_ride_sweep *sweep, gw_ride_model *model, gw_arena *arena, gw_error *err);

/** All figures, 0.5 Hz to the upper edge of the last third-octave. */
gw_status gw_figures_all(gw_ride_sweep *sweep, gw_figures *out, gw_error *err);

/** Harshness and road noise alone, to another measure of smoothness. */
gw_status gw_figures_body_force(gw_ride_sweep *sweep, double smooth, gw_figures *out, gw_error *err);

/** What low to high [Hz] adds to each figure. */
gw_status gw_figures_part(gw_ride_sweep *sweep, double low, double high, gw_figures *out, gw_error *err);

#endif
