/* SPDX-License-Identifier: MIT */
/** What every command that shows a result does, in one place. */
#ifndef CLI_RUN_H
#define CLI_RUN_H

#include "chart/chart.h"
#include "cli/command.h"

/**
 * Options, case, choice, study, warnings, output in the format asked for, files, charts; returns the exit
 * status. The command says what differs: see gw_command.
 */
int gw_run_command(const gw_args *args);

/** Makes `charts` ready for what goes to DIR; false, and nothing to finish, without -o DIR. */
bool gw_charting_begin(const gw_args *args, gw_charts *charts);

/**
 * Draws what was gathered and frees it, and says on standard error where it is or why it was left out.
 *
 * @param status  of gathering; if it failed, `err` is complained of and nothing is drawn.
 * @return        an exit status.
 */
int gw_charting_finish(const gw_args *args, gw_charts *charts, gw_status status, const gw_error *err);

#endif
