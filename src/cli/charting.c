/* SPDX-License-Identifier: MIT */
#include "cli/charting.h"

#include "cli/output.h"

static int formats(const gw_args *args)
{
    if (gw_args_is(args, GW_OPT_FORMAT_CHARTS, "svg")) return GW_CHART_SVG;
    if (gw_args_is(args, GW_OPT_FORMAT_CHARTS, "png")) return GW_CHART_PNG;
    return GW_CHART_SVG | GW_CHART_PNG;
}

bool gw_charting_begin(const gw_args *args, gw_charts *charts)
{
    const char *dir = gw_args_text(args, GW_OPT_OUT, 0);
    *charts = (gw_charts){ 0 };
    if (dir) gw_charts_begin(charts, dir, formats(args));
    return dir != NULL;
}

static int draw(const gw_args *args, gw_charts *charts)
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

int gw_charting_finish(const gw_args *args, gw_charts *charts, gw_status status, const gw_error *err)
{
    int exit_status = status == GW_OK ? draw(args, charts) : gw_complain(args->command->name, err);
    gw_charts_free(charts);
    return exit_status;
}
