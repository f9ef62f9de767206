/* SPDX-License-Identifier: MIT */
/** Readings from the ramp: pushes, travel and wheel rates, as a file has them. SI units. */
#ifndef GIVEWAY_READINGS_H
#define GIVEWAY_READINGS_H

#include "giveway/api.h"
#include "giveway/case.h"
#include "giveway/faults.h"
#include "giveway/status.h"

GW_API_BEGIN

/** What can be read: changes from standing still in the same kit, and the wheel rate. */
typedef enum gw_read_figure {
    GW_READ_TOE,        /**< [rad], toe-in positive                       */
    GW_READ_CAMBER,     /**< [rad]                                        */
    GW_READ_CASTER,     /**< [rad]                                        */
    GW_READ_FORE_AFT,   /**< of the wheel centre [m], forward positive    */
    GW_READ_LATERAL,    /**< of the wheel centre [m], to the left         */
    GW_READ_WHEEL_RATE, /**< [N/m]                                       */
    GW_READ_FIGURES
} gw_read_figure;

/** How the wheel is held or loaded while it is read. */
typedef struct gw_read_state {
    bool has_load;
    bool static_vertical; /**< the vertical force is the static load                             */
    gw_corner_load load;  /**< forces of `load`; vertical in patch_force.z unless static         */
    bool has_travel;
    double travel;        /**< [m]                                                               */
    bool spring_out;      /**< no spring; the vertical load is what holds the travel             */
    gw_other_wheel other; /**< of an axle whose wheels share parts: what the right one does meanwhile      */
} gw_read_state;

typedef struct gw_read_value {
    gw_read_figure figure;
    int state;      /**< index into the states of its reading */
    double reading; /**< SI                                    */
    double sigma;   /**< standard deviation, > 0               */
} gw_read_value;

typedef struct gw_reading {
    const char *name;
    gw_axle axle;
    int kit;
    int n_states;
    gw_read_state *state;
    int n_values;
    gw_read_value *value;
} gw_reading;

typedef struct gw_readings {
    gw_arena arena;
    const char *path;
    double load_percent; /**< band of the load cell, 0: it is trusted */
    int n;
    gw_reading *reading;
    int n_values; /**< of all readings */
} gw_readings;

enum { GW_MAX_READINGS = 1000, GW_MAX_READ_VALUES = 10000 };

/** Key and unit in a file of a figure that is read. */
const char *gw_read_key(gw_read_figure figure);
double gw_read_unit(gw_read_figure figure);

/**
 * Reads readings, JSON of format "giveway-readings-1" or a table, for a case.
 *
 * @param[out] out  names, corners and kits as of the case; freed with gw_readings_free.
 * @retval GW_OK, GW_E_IO, GW_E_PARSE, GW_E_SCHEMA, GW_E_NOMEM; faults as those of a case.
 */
gw_status gw_readings_load(const char *path, const gw_case *c, gw_readings *out, gw_faults *faults);
gw_status gw_readings_read(const char *file, const char *text, size_t size, const gw_case *c,
                           gw_readings *out, gw_faults *faults);
void gw_readings_free(gw_readings *readings);

GW_API_END

#endif
