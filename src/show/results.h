/* SPDX-License-Identifier: MIT */
/** Every result that is described by rows, for tests that walk them all and for what is made from them. */
#ifndef SHOW_RESULTS_H
#define SHOW_RESULTS_H

#include "record/record.h"

#define GW_RESULT_LIST(X)                                                                                    \
    X(DEFLECT)                                                                                               \
    X(TRAVEL)

#define GW_AS_DECLARATION(id) extern const gw_result GW_##id##_RESULT;
GW_RESULT_LIST(GW_AS_DECLARATION)
#undef GW_AS_DECLARATION

#endif
