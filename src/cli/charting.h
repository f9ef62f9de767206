/* SPDX-License-Identifier: MIT */
/** What every command with -o DIR does with its charts. */
#ifndef CLI_CHARTING_H
#define CLI_CHARTING_H

#include "chart/chart.h"
#include "cli/command.h"

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
