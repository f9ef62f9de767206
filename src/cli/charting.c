/* SPDX-License-Identifier: MIT */
#include "cli/charting.h"

#include "cli/output.h"

int gw_charting_finish(const gw_args *args, gw_charts *charts)
{
    gw_error err = { 0 };
    bool quiet = gw_args_has(args, GW_OPT_QUIET);
    gw_progress(quiet, "drawing charts");
    gw_status status = gw_charts_draw(charts, &err);
    gw_progress(quiet, NULL);
    if (status != GW_OK) return gw_complain(args->command->name, &err);
    if (charts->left_out)
        fprintf(stderr, "%s\n", GW_CHARTS_LEFT_OUT);
    else if (!quiet)
        fprintf(stderr, "%d charts written to %s\n", charts->n_files, charts->dir);
    return GW_EXIT_DONE;
}
