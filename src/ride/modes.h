/* SPDX-License-Identifier: MIT */
/** Modes of the ride model: undamped from Re(K), then followed as the damping is let in. */
#ifndef RIDE_MODES_H
#define RIDE_MODES_H

#include "ride/model.h"
#include "ride/panels.h"

typedef struct gw_mode_set {
    int n; /**< modes kept, in rising order of undamped frequency; rigid motion is left out */
    int n_dofs;
    double *hz;             /**< undamped [Hz]                                      */
    double *shape;          /**< undamped, [mode * n_dofs + dof]                    */
    double complex *pole;   /**< p of the damped mode [1/s]                         */
    double complex *vector; /**< its shape, [mode * n_dofs + dof]                   */
    bool *tracked;          /**< the pole was found; false: overdamped or lost      */
} gw_mode_set;

/** Undamped modes; where bush laws depend on frequency, each at its own frequency. */
gw_status gw_modes_undamped(gw_ride_model *model, gw_mode_set *set, gw_arena *arena, gw_error *err);

/** Poles with all the damping in, starting from the undamped modes. */
gw_status gw_modes_damped(gw_ride_model *model, gw_mode_set *set, gw_error *err);

/** The same modes after a change of the model (brackets), from where `set` has them. */
gw_status gw_modes_follow(gw_ride_model *model, gw_mode_set *set, gw_error *err);

/** Where the integrand has its poles; returns how many, at most set->n. */
int gw_modes_poles(const gw_mode_set *set, gw_pole *out);

/* shapes.c */

/** Shares of kinetic energy and a description of mode `index`. */
void gw_mode_describe(const gw_ride_model *model, const gw_mode_set *set, int index, gw_ride_mode *out);

#endif
