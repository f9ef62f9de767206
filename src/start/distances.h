/* SPDX-License-Identifier: MIT */
/** Places of points from distances between them. */
#ifndef START_DISTANCES_H
#define START_DISTANCES_H

#include "giveway/faults.h"
#include "giveway/status.h"
#include "start/car.h"

enum { GW_START_DISTANCES = 200 };

typedef struct gw_start_distance {
    int axle[2], point[2];
    double v, within;
    int line;
} gw_start_distance;

/**
 * Least sum of ((coordinate - reading or assumption)/sigma)^2 and ((distance - reading)/sigma)^2, sigma half
 * the band; the bands of the points become two standard deviations. Distances more than three of them off
 * what the others say are warned of, the worst first.
 */
gw_status gw_start_place_points(gw_start_car *car, const gw_start_distance *distance, int n, const char *path,
                                gw_faults *faults);

#endif
