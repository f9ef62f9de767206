/* SPDX-License-Identifier: MIT */
/** The parts of the align study that look at a corner before and after: private to it. */
#ifndef STUDY_ALIGN_PARTS_H
#define STUDY_ALIGN_PARTS_H

#include "study/setup.h"

/** Wall, three of a press fit, three of a bearing. */
enum { GW_CHECKS_OF_A_JOINT = 7 };

#define GW_SENSITIVITY_STEP 1e-4 /**< of the differences of fourth order [m] */

/** The largest forces in each joint over the loads wanted [N]. */
typedef struct gw_peaks {
    bool known; /**< at least one load was looked at */
    double force[GW_MAX_JOINTS], axial[GW_MAX_JOINTS];
} gw_peaks;

/** Whether a result tells of a joint: one of a side not of the other side's, which is set otherwise. */
bool gw_align_tells(const gw_setup *setup, const gw_align_item *item, int joint);

/** Tilt of the open corner over bump and rebound, into `after` or `before` of the item. */
void gw_align_tilts(gw_setup *setup, gw_align_item *item, bool after);

/** Camber and toe that each load takes from the open corner. */
gw_status gw_align_loads(gw_setup *setup, gw_align_item *item, bool after, gw_peaks *peaks, gw_error *err);

/** Will the parts fit and hold. */
gw_status gw_align_checks(gw_setup *setup, gw_align_item *item, const gw_peaks *peaks, gw_error *err);

#endif
