/* SPDX-License-Identifier: MIT */
/** Is a case that has no fault plausible, and which commands can run it? */
#ifndef GIVEWAY_PLAUSIBLE_H
#define GIVEWAY_PLAUSIBLE_H

#include "giveway/api.h"
#include "giveway/study.h"

GW_API_BEGIN

/**
 * Adds to `faults` a warning for every figure that is possible and yet no car's: what it is, what is usual,
 * and where that is from. The case must stand (gw_study_standing).
 *
 * @retval GW_OK, GW_E_NOMEM, or that of a bush that cannot be worked out
 */
gw_status gw_study_plausible(const gw_case *c, gw_faults *faults, gw_error *err);

/** Commands that work on a case as it stands. */
typedef enum gw_use {
    GW_USE_RATES,
    GW_USE_DEFLECT,
    GW_USE_COMPARE,
    GW_USE_TRAVEL,
    GW_USE_RIDE,
    GW_USE_ALIGN,
    GW_USE_REPORT,
    GW_USE_MATCH, /**< given readings */
    GW_USE_SPREAD,
    GW_USE_CHOOSE,
    GW_USES
} gw_use;

typedef struct gw_use_verdict {
    const char *command;
    bool runs;
    const char *why; /**< why it does not run, or what it leaves out where it does; NULL: nothing */
} gw_use_verdict;

/** Strings are owned by `arena`; free it when done. */
typedef struct gw_uses {
    gw_arena arena;
    gw_use_verdict use[GW_USES];
} gw_uses;

/**
 * Which commands can run this case, by running them with what they need least.
 *
 * @param[out] out  freed with gw_uses_free; empty on failure.
 * @retval GW_OK, GW_E_NOMEM
 */
gw_status gw_study_uses(const gw_case *c, gw_uses *out, gw_error *err);
void gw_uses_free(gw_uses *uses);

GW_API_END

#endif
