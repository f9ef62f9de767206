/* SPDX-License-Identifier: MIT */
/** Every result that is described by rows, for tests that walk them all and for what is made from them. */
#ifndef SHOW_RESULTS_H
#define SHOW_RESULTS_H

#include "base/buf.h"
#include "record/record.h"

#define GW_RESULT_LIST(X)                                                                                    \
    X(CHECK)                                                                                                 \
    X(RATES)                                                                                                 \
    X(DEFLECT)                                                                                               \
    X(TRAVEL)                                                                                                \
    X(RIDE)                                                                                                  \
    X(ALIGN)                                                                                                 \
    X(MATCH)                                                                                                 \
    X(SPREAD)                                                                                                \
    X(BENCH)                                                                                                 \
    X(CHOOSE)                                                                                                \
    X(COMPARE)

#define GW_AS_DECLARATION(id) extern const gw_result GW_##id##_RESULT;
GW_RESULT_LIST(GW_AS_DECLARATION)
#undef GW_AS_DECLARATION

extern const gw_record GW_DEFLECTION_RECORD; /**< compare has it as well */
extern const gw_record GW_BANDS_RECORD;
extern const gw_record GW_RIDE_FIGURES_RECORD; /**< of ride that compare shows as well */
extern const gw_record GW_RIDE_CLOSE_RECORD;   /**< kits that ride cannot tell apart */

/** The schema of all results: what their rows say. */
void gw_results_schema(gw_buf *out);

/** The keys of a command's result with what they mean; false where no rows describe it. */
bool gw_results_keys(const char *command, gw_buf *out);

#endif
