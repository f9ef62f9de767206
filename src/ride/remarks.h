/* SPDX-License-Identifier: MIT */
/** Warnings and notes of a ride result. */
#ifndef RIDE_REMARKS_H
#define RIDE_REMARKS_H

#include "ride/figures.h"

/** Which modes are body, wheel vertical and wheel fore-aft, and what is doubtful about them; where each part
 * that both wheels share moves most. */
gw_status gw_remark_modes(const gw_corner *corner, gw_ride_result *result, gw_error *err);

/** Modes with less than 1 % damping that carry more than half of the mean square of a figure. */
gw_status gw_remark_sharp(gw_ride_sweep *sweep, const gw_figures *all, gw_ride_result *result, gw_error *err);

/** Bushes on brackets that are too soft for them. */
gw_status gw_remark_brackets(const gw_corner *corner, gw_ride_result *result, gw_error *err);

/** Names a joint whose bearing has play: the linear corner takes it as tight, and its rattle is left out. */
gw_status gw_remark_play(const gw_corner *corner, const gw_fit *fit, gw_ride_result *result, gw_error *err);

/** Names a joint whose bush was measured slowly and not in motion. */
gw_status gw_remark_slow_test(const gw_corner *corner, const gw_fit *fit, gw_ride_result *result,
                              gw_error *err);

/** Friction and amplitudes come to no one state: `what` wavers. It is result->wavers, and a warning. */
gw_status gw_remark_wavers(const char *what, gw_ride_result *result, gw_error *err);

/** The part of the band for which the road's spectrum is extrapolated. */
gw_status gw_remark_road(const gw_ride *settings, gw_ride_result *result, gw_error *err);

#endif
