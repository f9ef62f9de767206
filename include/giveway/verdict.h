/* SPDX-License-Identifier: MIT */
/** A figure beside its limit, and whether it holds. */
#ifndef GIVEWAY_VERDICT_H
#define GIVEWAY_VERDICT_H

#include "giveway/api.h"

#include <stdbool.h>

GW_API_BEGIN

/** What the limit bounds. */
typedef enum gw_bound { GW_AT_MOST, GW_AT_LEAST } gw_bound;

/** One check. All texts are constants of the program. */
typedef struct gw_verdict {
    const char *what;   /**< the figure, for people: "peak load with shock factor"       */
    const char *unit;   /**< SI unit of value and limit: "N", "Pa", "m", "rad", "-"      */
    const char *source; /**< where the limit comes from                                  */
    double value, limit;
    gw_bound bound;
    bool holds; /**< value within the limit                                       */
} gw_verdict;

/** A check with `holds` worked out; a value that is not a number does not hold. */
static inline gw_verdict gw_verdict_of(const char *what, const char *unit, double value, gw_bound bound,
                                       double limit, const char *source)
{
    bool holds = bound == GW_AT_MOST ? value <= limit : value >= limit;
    gw_verdict made = { what, unit, source, value, limit, bound, holds };

    return made;
}

GW_API_END

#endif
