/* SPDX-License-Identifier: MIT */
/* The one place where a status becomes an exit status. */
#include "cli/command.h"

int gw_exit_of(gw_status status)
{
    switch (status) {
    case GW_OK:
        return GW_EXIT_DONE;
    case GW_E_USAGE:
        return GW_EXIT_USAGE;
    case GW_E_MECHANISM:
    case GW_E_NUMERIC:
        return GW_EXIT_MODEL;
    case GW_E_IO:
    case GW_E_NOMEM:
        return GW_EXIT_OUTPUT;
    default:
        return GW_EXIT_INPUT;
    }
}
