/* SPDX-License-Identifier: MIT */
/** One workspace that takes over what many kits of the same corner have fitted, without opening each anew. */
#ifndef GIVEWAY_CORNER_TWIN_H
#define GIVEWAY_CORNER_TWIN_H

#include "giveway/corner.h"

/** Room for any kit of the corner; nothing is fitted yet. Closed with gw_corner_close. */
gw_status gw_corner_twin_open(const gw_corner *corner, gw_corner_ws **out, gw_error *err);

/**
 * Takes over the bushes, the setting and S0 of a workspace of the same corner, which is only read, so that
 * many may take from it at once. What shares need is left behind.
 */
void gw_corner_twin_take(gw_corner_ws *twin, const gw_corner_ws *from);

#endif
