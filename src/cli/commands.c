/* SPDX-License-Identifier: MIT */
#include "cli/commands.h"

#include <string.h>

const gw_command *const GW_COMMANDS[] = {
#define GW_AS_ENTRY(id) &GW_COMMAND_##id,
    GW_COMMAND_LIST(GW_AS_ENTRY)
#undef GW_AS_ENTRY
        NULL,
};

const gw_command *gw_command_find(const char *name)
{
    for (const gw_command *const *c = GW_COMMANDS; *c; c++)
        if (strcmp((*c)->name, name) == 0) return *c;
    return NULL;
}
