/* SPDX-License-Identifier: MIT */
#include "cli/reading.h"

#include "cli/output.h"

int gw_session_readings(const gw_args *args, gw_session *session, gw_readings *out)
{
    gw_faults faults = { 0 };
    const char *path = gw_args_text(args, GW_OPT_READINGS, 0);
    gw_status st = gw_readings_load(path, &session->c, out, &faults);
    gw_print_faults(&faults, st != GW_OK || gw_args_has(args, GW_OPT_QUIET));
    if (st != GW_OK && gw_faults_count(&faults) == 0)
        fprintf(stderr, "giveway %s: %s\n", args->command->name, gw_status_text(st));
    gw_faults_free(&faults);
    if (st == GW_OK) return GW_EXIT_DONE;
    return st == GW_E_NOMEM ? GW_EXIT_OUTPUT : GW_EXIT_INPUT;
}
