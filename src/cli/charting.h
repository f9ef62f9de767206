/* SPDX-License-Identifier: MIT */
/** What every command with -o DIR does with its charts. */
#ifndef CLI_CHARTING_H
#define CLI_CHARTING_H

#include "cli/command.h"
#include "show/chart.h"

/** Draws what was gathered, says on standard error where it is or why it was left out; an exit status. */
int gw_charting_finish(const gw_args *args, gw_charts *charts);

#endif
