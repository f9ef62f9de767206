/* SPDX-License-Identifier: MIT */
/* One line a command, in the order in which help shows them. */
#include "cli/commands.h"

#include <string.h>

/* clang-format off */
const gw_command *const GW_COMMANDS[] = {
    &GW_COMMAND_CHECK,
    &GW_COMMAND_RATES,
    &GW_COMMAND_DEFLECT,
    &GW_COMMAND_COMPARE,
    &GW_COMMAND_TRAVEL,
    &GW_COMMAND_RIDE,
    &GW_COMMAND_ALIGN,
    &GW_COMMAND_SPREAD,
    &GW_COMMAND_REPORT,
    NULL,
};
/* clang-format on */

const gw_command *gw_command_find(const char *name)
{
    for (const gw_command *const *c = GW_COMMANDS; *c; c++)
        if (strcmp((*c)->name, name) == 0) return *c;
    return NULL;
}
