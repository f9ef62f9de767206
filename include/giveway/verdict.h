/* SPDX-License-Identifier: MIT */
/** A figure beside its limit, and whether it holds. */
#ifndef GIVEWAY_VERDICT_H
#define GIVEWAY_VERDICT_H

#include "giveway/api.h"

#include <stdbool.h>

GW_API_BEGIN

/** What the limit bounds. */
typedef enum gw_bound { GW_AT_MOST, GW_AT_LEAST } gw_bound;

typedef enum gw_dimension { GW_RATIO, GW_FORCE, GW_STRESS, GW_LENGTH, GW_ANGLE } gw_dimension;

/** The figures that are judged, in the order of their words. */
typedef enum gw_judged {
    GW_JUDGED_AXIAL_HOLD,
    GW_JUDGED_COMPRESSION,
    GW_JUDGED_HOUSING_HOOP,
    GW_JUDGED_SLEEVE_HOOP,
    GW_JUDGED_PEAK_LOAD,
    GW_JUDGED_TRAVEL_SHEAR,
    GW_JUDGED_SPECIFIC_LOAD,
    GW_JUDGED_THINNEST_WALL,
    GW_JUDGED_TILT,
    GW_JUDGED_TILT_IN_TRAVEL,
    GW_JUDGED_TOTAL_STRAIN,
    GW_JUDGED_FIGURES
} gw_judged;

/** "total strain" and the like, GW_JUDGED_FIGURES texts and a NULL. */
extern const char *const GW_JUDGED_WORDS[GW_JUDGED_FIGURES + 1];

/** One check. Its texts are constants of the program. */
typedef struct gw_verdict {
    gw_judged what;
    const char *source; /**< where the limit comes from                                  */
    double value, limit;
    gw_bound bound;
    bool holds; /**< value within the limit                                       */
} gw_verdict;

/** What kind of figure it is: value and limit in SI, a ratio as such. */
extern const gw_dimension GW_JUDGED_DIMENSIONS[GW_JUDGED_FIGURES];

/** A check with `holds` filled in; a value that is not a number does not hold. */
static inline gw_verdict gw_verdict_of(gw_judged what, double value, gw_bound bound, double limit,
                                       const char *source)
{
    bool holds = bound == GW_AT_MOST ? value <= limit : value >= limit;
    gw_verdict made = { what, source, value, limit, bound, holds };

    return made;
}

GW_API_END

#endif
