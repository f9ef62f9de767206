/* SPDX-License-Identifier: MIT */
/** The commands there are, each defined in its own cmd_NAME.c. */
#ifndef CLI_COMMANDS_H
#define CLI_COMMANDS_H

#include "cli/command.h"

/** One line a command, in the order in which help shows them. */
#define GW_COMMAND_LIST(X)                                                                                   \
    X(CHECK)                                                                                                 \
    X(RATES)                                                                                                 \
    X(DEFLECT)                                                                                               \
    X(COMPARE)                                                                                               \
    X(TRAVEL)                                                                                                \
    X(RIDE)                                                                                                  \
    X(ALIGN)                                                                                                 \
    X(MATCH)                                                                                                 \
    X(SPREAD)                                                                                                \
    X(CHOOSE)                                                                                                \
    X(REPORT)                                                                                                \
    X(BENCH)                                                                                                 \
    X(START)

#define GW_AS_DECLARATION(id) extern const gw_command GW_COMMAND_##id;
GW_COMMAND_LIST(GW_AS_DECLARATION)
#undef GW_AS_DECLARATION

#endif
