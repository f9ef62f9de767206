/* SPDX-License-Identifier: MIT */
/** The commands there are, each defined in its own cmd_NAME.c. */
#ifndef CLI_COMMANDS_H
#define CLI_COMMANDS_H

#include "cli/command.h"

extern const gw_command GW_COMMAND_CHECK;
extern const gw_command GW_COMMAND_RATES;
extern const gw_command GW_COMMAND_DEFLECT;
extern const gw_command GW_COMMAND_COMPARE;
extern const gw_command GW_COMMAND_TRAVEL;
extern const gw_command GW_COMMAND_RIDE;
extern const gw_command GW_COMMAND_ALIGN;
extern const gw_command GW_COMMAND_SPREAD;
extern const gw_command GW_COMMAND_REPORT;

#endif
