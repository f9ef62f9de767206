/* SPDX-License-Identifier: MIT */
/** Kits side by side: what they let the wheel do, and what they let through to the body. SI units. */
#ifndef GIVEWAY_COMPARE_H
#define GIVEWAY_COMPARE_H

#include "giveway/api.h"
#include "giveway/ride.h"
#include "giveway/study.h"

GW_API_BEGIN

/** One kit in one corner on the road of the case. */
typedef struct gw_ride_item {
    int kit;
    gw_axle axle;
    gw_ride_result result;
    gw_ride_difference difference; /**< from the first kit of the case on the same corner */
} gw_ride_item;

/** Two kits whose order what nobody knows for sure may turn round: the range of one over the other holds
 * zero. */
typedef struct gw_ride_close {
    gw_axle axle;
    int kit[2];
    bool heard; /**< of the A-weighted force; else of harshness */
} gw_ride_close;

typedef struct gw_ride_study {
    int n_close;
    gw_ride_close *close; /**< by corner, then kits, harshness first; the arena's */
    int n;
    gw_ride_item *item; /**< by kit, then corner, in the order of the case; owned */
    gw_arena arena;     /**< owns the warnings                                    */
    int n_warnings;
    const char **warning; /**< of the settings; those of one kit and corner are its result's */
} gw_ride_study;

/** Laws of rubber and polyurethane are for about this temperature [K]; none follows another one. */
#define GW_RIDE_ROOM_TEMPERATURE 293.15

/** NULL where the case holds what `ride` needs of a corner, else what is missing. */
const char *gw_ride_lacks(const gw_case *c, gw_axle axle);

/** The same of the corners that are wanted: what the first that lacks anything lacks. */
const char *gw_ride_missing(const gw_case *c, const gw_selection *wanted);

/**
 * Ride of every kit and corner wanted. A temperature of the case that is not room temperature changes no
 * figure, and is a warning that says so; so is one outside what a compound is made for. The first kit of the
 * case is always worked out, since the decibels count from it; it is an item only where it is wanted.
 *
 * @retval GW_OK
 * @retval GW_E_SCHEMA  the case lacks what ride needs (names it).
 * @retval GW_E_RANGE, GW_E_NUMERIC, GW_E_NOMEM as gw_ride_solve, with kit and corner named.
 */
gw_status gw_study_ride(const gw_case *c, const gw_selection *wanted, const gw_ride_options *options,
                        gw_ride_study *out, gw_error *err);
void gw_ride_study_free(gw_ride_study *study);

/** The item of a kit and corner; NULL where there is none. */
const gw_ride_item *gw_ride_find(const gw_ride_study *study, int kit, gw_axle axle);

GW_API_END

#endif
