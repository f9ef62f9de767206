/* SPDX-License-Identifier: MIT */
/**
 * Fixed-point iteration in fewer steps: the next point is the combination of the last few that leaves least
 * (D. G. Anderson, J. ACM 12 (1965) 547-560).
 */
#ifndef RIDE_ANDERSON_H
#define RIDE_ANDERSON_H

#include "giveway/arena.h"

#include <stdbool.h>

typedef struct gw_anderson gw_anderson;

/** Of `n` unknowns; memory is the arena's. NULL: there is none left. */
gw_anderson *gw_anderson_open(int n, gw_arena *arena);

/** Forget what was before: another function follows. */
void gw_anderson_restart(gw_anderson *a);

/** `now` [n] to the next point; `next` [n] is what the function makes of `now`. */
void gw_anderson_step(gw_anderson *a, double *now, const double *next);

#endif
