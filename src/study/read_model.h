/* SPDX-License-Identifier: MIT */
/** What the model says where a reading was taken; and of a car that differs little, from where this one
 * stood. */
#ifndef STUDY_READ_MODEL_H
#define STUDY_READ_MODEL_H

#include "giveway/readings.h"
#include "study/drawn.h"

/** What can be read of one state [SI]. */
typedef struct gw_read_changes {
    double v[GW_READ_FIGURES];
} gw_read_changes;

/** Where a car stood when it was read; the rest is for the spring out alone. */
typedef struct gw_read_spot {
    gw_state state;
    double load;                     /**< that holds the travel [N]                      */
    double force_by_load;            /**< what the spring would need, per newton of it   */
    double by_load[GW_READ_FIGURES]; /**< the same of the changes                        */
} gw_read_spot;

/** One state of a reading into the values that are of it, the corner open; `near` NULL: from S0. */
gw_status gw_read_at(gw_run *run, const gw_reading *r, int state, double factor, const gw_read_changes *from,
                     const gw_read_spot *near, double *y, gw_error *err);

/** The wheel held at a travel with no force in the spring: changes since S0. */
gw_status gw_read_spring_out(gw_run *run, double travel, const gw_read_spot *near, gw_read_changes *out,
                             gw_error *err);

/** Fills in how force and changes go on with the load, where state and load are known. */
gw_status gw_read_spring_out_goes_on(gw_run *run, double travel, gw_read_spot *spot, gw_error *err);

/** A car that was read, with all its balances. */
typedef struct gw_read_guide gw_read_guide;

/**
 * Read a car: every value of every reading, in their order.
 *
 * @param[in]  z       of its figures.
 * @param[in]  factor  of the load cell, on all that is added to standing still.
 * @param[in]  skip    readings that cannot be had are left out (their values NaN); else the first is an
 * error.
 * @param[out] y       readings->n_values numbers, SI.
 * @retval GW_OK; else the first reading that could not be had, named.
 */
gw_status gw_read_car(const gw_draws *draws, gw_drawer *drawer, const double *z, const gw_readings *readings,
                      double factor, bool skip, gw_read_guide **out, double *y, gw_error *err);

/**
 * The same of a car that differs by a small step of one figure (-1: of none): by one step of Newton's
 * iteration from each balance of the guide, which is right to first order (the implicit function theorem).
 * What the figures that differ do not touch is taken over from `same`.
 *
 * @param[in] z     the guide's, but for the figure.
 * @param[in] same  what this gives for the guide's own z and factor; NULL: everything is worked out.
 */
gw_status gw_read_near(const gw_read_guide *guide, const gw_draws *draws, gw_drawer *drawer, const double *z,
                       double factor, int figure, const double *same, double *y, gw_error *err);

void gw_read_guide_free(gw_read_guide *guide);

#endif
