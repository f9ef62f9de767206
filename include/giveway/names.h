/* SPDX-License-Identifier: MIT */
/** Which wheel is meant, and the words for it, the same in cases, results and messages. */
#ifndef GIVEWAY_NAMES_H
#define GIVEWAY_NAMES_H

#include "giveway/api.h"

GW_API_BEGIN

/** Index of an axle. */
typedef enum gw_axle { GW_FRONT, GW_REAR, GW_AXLES } gw_axle;

/** The wheel of an axle in a corner. */
typedef enum gw_side { GW_OUTER, GW_INNER } gw_side;

/** The words in the order of the enumeration, ended by NULL. */
extern const char *const GW_AXLE_NAMES[];
extern const char *const GW_SIDE_NAMES[];
extern const char *const GW_WHEEL_NAMES[]; /**< left, right: by gw_wheel_side */

extern const char *const GW_GOAL_FIGURES[]; /**< by gw_goal_figure of giveway/case.h */
extern const char *const GW_LIMIT_NAMES[]; /**< by gw_choose_limit */

const char *gw_axle_name(gw_axle axle); /**< "front" or "rear"  */
const char *gw_side_name(gw_side side); /**< "outer" or "inner" */

GW_API_END

#endif
