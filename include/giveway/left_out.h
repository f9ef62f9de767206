/* SPDX-License-Identifier: MIT */
/** What a case leaves out of the whole car. */
#ifndef GIVEWAY_LEFT_OUT_H
#define GIVEWAY_LEFT_OUT_H

#include "giveway/api.h"
#include "giveway/case.h"

GW_API_BEGIN

/** Each a line: what is left out and what that does. Owned by `arena`. */
typedef struct gw_left_out {
    gw_arena arena;
    int n;
    const char **text;
} gw_left_out;

/**
 * Parts that both wheels share and that the case does not have (rack, subframe, anti-roll bar, final drive),
 * and what its manoeuvres are solved without. Front axle, rear axle, then the car.
 *
 * @param[out] out  freed with gw_left_out_free; empty on failure.
 * @retval GW_OK, GW_E_NOMEM
 */
gw_status gw_study_left_out(const gw_case *c, gw_left_out *out, gw_error *err);
void gw_left_out_free(gw_left_out *left);

/** Whether a kit fits left and right of an axle apart while some manoeuvre tells the left wheel alone. */
bool gw_leaves_side_untold(const gw_case *c, int kit, gw_axle axle);

GW_API_END

#endif
