/* SPDX-License-Identifier: MIT */
/** From readings in time to one loop of two ways. Private to src/fit. */
#ifndef FIT_PRESS_LOOP_H
#define FIT_PRESS_LOOP_H

#include "giveway/press.h"

/** Value on the straight line between readings; x within the line's range. */
double gw_press_line_at(const gw_press_line *line, double x);

/** Fills up, down and mean, or of one way mean alone, one_way, loss and wrong_way. */
gw_status gw_press_loop(const double *x, const double *f, int n, bool turns, gw_press *out, gw_error *err);

#endif
